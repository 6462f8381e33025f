/**
 * A thin writer over the PDF library: pages with text, lines, pictures, and a
 * structure for who can't see them. Measures are points from the upper left.
 * The same calls give the same bytes, wherever they run.
 */
import PDFDocument, { type StructureElement, type StructureOptions } from "pdfkit";
import svgToPdf from "svg-to-pdfkit";
import type { PrintFont } from "./printFonts";
import type { PrintType } from "./printType";

/** What a PDF says of itself. */
export interface PdfFacts {
  readonly title: string;
  /** Empty where nobody is named. */
  readonly author: string;
  readonly subject: string;
  /** Of its words, as BCP 47. */
  readonly language: string;
  /** When it was made. */
  readonly at: Date;
}

export interface TextLook {
  readonly size: number;
  readonly face: PrintFont;
  /** With its `#`. */
  readonly color: string;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** What was drawn, in the order in which it was. */
export type Mark =
  | {
      readonly kind: "text";
      readonly text: string;
      readonly left: number;
      readonly baseline: number;
      readonly look: TextLook;
    }
  | { readonly kind: "fill"; readonly box: Box; readonly color: string }
  | {
      readonly kind: "line";
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly width: number;
      readonly color: string;
    }
  | { readonly kind: "svg"; readonly svg: string; readonly box: Box }
  | { readonly kind: "image"; readonly bytes: Uint8Array; readonly box: Box };

/** A page by the very calls that wrote it into the PDF. */
export interface DrawnPage {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

const MADE_BY = "Rigsheet";
/** Of what is said to who asks what a picture shows, and is not drawn. */
const NOT_DRAWN = /<(title|desc)>[^<]*<\/\1>/g;
/** The library fits a picture into a box only where it names no size itself. */
const OWN_SIZE = /^(<svg[^>]*?) width="[^"]*" height="[^"]*"/;

const MS_PER_SECOND = 1000;

export class PdfPages {
  private readonly document: PDFDocument;
  private readonly chunks: Uint8Array[] = [];
  private readonly pages: (DrawnPage & { readonly marks: Mark[] })[] = [];
  private readonly root: StructureElement;
  private readonly ended: Promise<void>;

  constructor(
    readonly type: PrintType,
    { title, author, subject, language, at }: PdfFacts,
  ) {
    // A PDF tells seconds (ISO 32000-1, 7.9.4), and its identifier would differ by what it does not tell.
    const made = new Date(Math.floor(at.getTime() / MS_PER_SECOND) * MS_PER_SECOND);
    this.document = new PDFDocument({
      autoFirstPage: false,
      font: null,
      pdfVersion: "1.7",
      tagged: true,
      lang: language,
      displayTitle: true,
      info: {
        Title: title,
        ...(author !== "" && { Author: author }),
        ...(subject !== "" && { Subject: subject }),
        Creator: MADE_BY,
        Producer: MADE_BY,
        CreationDate: made,
        ModDate: made,
      },
    });
    this.ended = new Promise((resolve, reject) => {
      this.document.on("end", resolve).on("error", reject);
    });
    this.document.on("data", (chunk) => this.chunks.push(chunk));
    // Read anew for each: a font forgets the text of a letter that a subset took as a part of another.
    for (const [face, bytes] of Object.entries(type.fonts)) this.document.registerFont(face, bytes);
    this.root = this.document.struct("Document", { title });
    this.document.addStructure(this.root);
  }

  addPage(width: number, height: number): void {
    this.document.addPage({ size: [width, height], margin: 0 });
    this.pages.push({ width, height, marks: [] });
  }

  /** For whoever wants to see them before they are on paper. */
  get drawn(): readonly DrawnPage[] {
    return this.pages;
  }

  private note(mark: Mark): void {
    this.pages.at(-1)!.marks.push(mark);
  }

  /** A line in the list beside the pages, to the page that was added last. */
  addToOutline(title: string): void {
    this.document.outline.addItem(title);
  }

  /** An element of the structure, below another or at the top. */
  element(type: string, options: StructureOptions = {}, above = this.root): StructureElement {
    const made = this.document.struct(type, options);
    above.add(made);
    return made;
  }

  /** What is drawn is no part of what is read: lines, fills, and what is repeated. */
  artifact(type: "Pagination" | "Layout", draw: () => void): void {
    this.document.markContent("Artifact", { type });
    draw();
    this.document.endMarkedContent();
  }

  text(text: string, left: number, baseline: number, look: TextLook): void {
    if (text === "") return;
    const { size, face, color } = look;
    this.note({ kind: "text", text, left, baseline, look });
    this.document.font(face).fontSize(size).fillColor(color);
    this.document.text(text, left, baseline, { lineBreak: false, baseline: "alphabetic" });
  }

  fill(box: Box, color: string): void {
    const { left, top, width, height } = box;
    this.note({ kind: "fill", box, color });
    this.document.rect(left, top, width, height).fill(color);
  }

  line(from: readonly [number, number], to: readonly [number, number], width: number, color: string): void {
    this.note({ kind: "line", from, to, width, color });
    this.document.lineWidth(width).strokeColor(color);
    this.document
      .moveTo(...from)
      .lineTo(...to)
      .stroke();
  }

  /** A picture of ours; its shape is kept. */
  svg(picture: string, box: Box): void {
    const { left, top, width, height } = box;
    const svg = picture.replace(NOT_DRAWN, "").replace(OWN_SIZE, "$1");
    this.note({ kind: "svg", svg, box });
    this.document.save();
    svgToPdf(this.document, svg, left, top, {
      width,
      height,
      preserveAspectRatio: "xMinYMin meet",
      fontCallback: (_, bold, italic): PrintFont => (bold ? "strong" : italic ? "italic" : "regular"),
      warningCallback: (words) => {
        throw new Error(`A picture can't be drawn into a PDF: ${words}`);
      },
    });
    this.document.restore();
  }

  /** @param bytes of a PNG or JPEG file */
  image(bytes: Uint8Array, box: Box): void {
    const { left, top, width, height } = box;
    this.note({ kind: "image", bytes, box });
    this.document.image(bytes, left, top, { width, height });
  }

  async bytes(): Promise<Uint8Array> {
    this.root.end();
    this.document.end();
    await this.ended;
    const whole = new Uint8Array(this.chunks.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const chunk of this.chunks) {
      whole.set(chunk, at);
      at += chunk.length;
    }
    return whole;
  }
}
