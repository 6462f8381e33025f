/** The parts of a document as pieces to be set below each other. */
import type { StructureElement } from "pdfkit";
import { ALERT, FAINT, INK, QUIET } from "../../pictures/ink";
import type { DocumentPart, DocumentRow } from "../../proposal/document";
import { columnWidths } from "./columnWidths";
import { stacked, type Piece } from "./flow";
import { lines } from "./lines";
import type { PdfPages, TextLook } from "./pdfPages";
import type { PrintFont } from "./printFonts";
import type { Setter } from "./unset";

/** Points. */
const SIZES = { title: 20, heading: 12.5, text: 10, small: 8.5 } as const;
const LEADING = 1.32;
/** From the top of a line to its base, in sizes. */
const BASE = 0.98;
const PARAGRAPH_GAP = 6;
const HEADING_GAP = 18;
const RULE = 0.5;
const STRONG_RULE = 1;
const COLUMN_GAP = 10;
const ROW_PADDING = 3;
const BULLET = "•";
const BULLET_ROOM = 12;
const TICK_BOX = "☐";
const TICK_BOX_ROOM = 16;
/** A table of so many rows is never parted. */
const WHOLE_ROWS = 6;
const LOGO = { width: 150, height: 54 } as const;
const CAUTION_BAR = 2;
const CAUTION_ROOM = 10;
/** Over a line to write on. */
const WRITING_ROOM = 34;
const WRITING_LINE_GAP = 24;
/** Beside a picture there may have to be its heading and caption. */
const PICTURE_SHARE = 0.86;
const POINTS_PER_PIXEL = 0.75;
/** The share of its half that a label may take. */
const LABEL_SHARE = 0.42;

interface Room {
  readonly left: number;
  readonly width: number;
}

type Part<Kind extends DocumentPart["kind"]> = Extract<DocumentPart, { kind: Kind }>;

const look = (size: number, face: PrintFont = "regular", color = INK): TextLook => ({ size, face, color });
const TEXT = look(SIZES.text);
const STRONG = look(SIZES.text, "strong");
const SMALL = look(SIZES.small, "regular", QUIET);
const LABEL = look(SIZES.small, "strong", QUIET);

export class DocumentParts {
  /** The heading that stands above, for what is said of a place. */
  private under = "";

  constructor(
    private readonly pages: PdfPages,
    private readonly setter: Setter,
    private readonly room: Room,
    private readonly down: number,
  ) {}

  pieces(parts: readonly DocumentPart[]): Piece[] {
    return parts.flatMap((part, index) => this.piecesOf(part, parts[index + 1]));
  }

  private piecesOf(part: DocumentPart, next: DocumentPart | undefined): Piece[] {
    switch (part.kind) {
      case "letterhead":
        return [this.letterhead(part)];
      case "title":
        return this.textPieces(this.set(part.text, "The title"), {
          tag: "H1",
          look: look(SIZES.title, "strong"),
          above: 26,
          leading: 1.15,
          isKept: true,
        });
      case "facts":
        return this.facts(part);
      case "heading":
        return this.heading(part);
      case "paragraph":
        // What introduces a table stands above it, and what a caution is about above that.
        return this.paragraph(
          part,
          next?.kind === "table" || (next?.kind === "paragraph" && next.is === "caution"),
        );
      case "list":
        return this.list(part);
      case "table":
        return this.table(part);
      case "picture":
        return [this.picture(part)];
      case "signature":
        return [this.signature(part)];
    }
  }

  private set(text: string, place: string): string {
    return this.setter.set(text, place);
  }

  private place(what: string): string {
    return this.under === "" ? what : `${what} under “${this.under}”`;
  }

  private broken(text: string, width: number, { size, face }: TextLook): string[] {
    return lines(text, width, (line) => this.setter.type.width(line, size, face));
  }

  private drawLines(
    set: readonly string[],
    room: Room,
    top: number,
    text: TextLook,
    { align = "left", leading = LEADING }: { align?: "left" | "right"; leading?: number } = {},
  ): void {
    set.forEach((line, index) => {
      const shown = line.trimEnd();
      const width = this.setter.type.width(shown, text.size, text.face);
      const left = align === "right" ? room.left + room.width - width : room.left;
      this.pages.text(
        shown,
        left,
        top + (index * leading + BASE - (LEADING - leading) / 2) * text.size,
        text,
      );
    });
  }

  /** A line for each piece, two of which never stand alone on a page. */
  private textPieces(
    text: string,
    options: {
      readonly tag: string;
      readonly look: TextLook;
      readonly above: number;
      readonly leading?: number;
      /** With what comes after. */
      readonly isKept?: boolean;
      readonly newPage?: boolean;
      readonly indent?: number;
      /** The element above; the document itself where absent. */
      readonly within?: () => StructureElement;
      readonly beside?: (top: number, height: number) => void;
    },
  ): Piece[] {
    const {
      tag,
      above,
      leading = LEADING,
      isKept = false,
      newPage = false,
      indent = 0,
      within,
      beside,
    } = options;
    const room = { left: this.room.left + indent, width: this.room.width - indent };
    const set = this.broken(text, room.width, options.look);
    const height = options.look.size * leading;
    let element: StructureElement | undefined;
    return set.map((line, index): Piece => ({
      height,
      above: index === 0 ? above : 0,
      keep: index === set.length - 1 ? isKept : isKept || index === 0 || index === set.length - 2,
      ...(index === 0 && newPage && { newPage }),
      draw: (top) => {
        element ??= this.pages.element(tag, {}, within?.());
        element.add(() => this.drawLines([line], room, top, options.look, { leading }));
        if (beside) this.pages.artifact("Layout", () => beside(top, height));
      },
    }));
  }

  private letterhead({ name, lines: told, logo }: Part<"letterhead">): Piece {
    // No larger than a screen shows it: a few pixels are no picture.
    const scale = logo ? Math.min(LOGO.width / logo.width, LOGO.height / logo.height, POINTS_PER_PIXEL) : 0;
    const picture = { width: scale * (logo?.width ?? 0), height: scale * (logo?.height ?? 0) };
    const room = {
      left: this.room.left,
      width: this.room.width - (logo ? picture.width + 2 * COLUMN_GAP : 0),
    };
    const nameLook = look(SIZES.heading, "strong");
    const setName = this.broken(this.set(name, "The firm's name"), room.width, nameLook);
    const below = told.map((line) => this.broken(this.set(line, "The letterhead"), room.width, SMALL));
    const textHeight = setName.length * nameLook.size * LEADING + below.flat().length * SMALL.size * LEADING;
    const inner = Math.max(picture.height, textHeight);
    return {
      height: inner + 8,
      above: 0,
      draw: (top) => {
        if (logo) {
          const box = { left: this.room.left + this.room.width - picture.width, top, ...picture };
          const bbox = [box.left, top, box.left + box.width, top + box.height] as const;
          const alt = this.set(logo.alt, "The words for the logo");
          const figure = this.pages.element("Figure", { alt, bbox });
          figure.add(() => this.pages.image(logo.bytes, box));
        }
        const element = this.pages.element("P");
        element.add(() => this.drawLines(setName, room, top, nameLook));
        let at = top + setName.length * nameLook.size * LEADING;
        for (const line of below) {
          const from = at;
          this.pages.element("P").add(() => this.drawLines(line, room, from, SMALL));
          at += line.length * SMALL.size * LEADING;
        }
        this.rule(top + inner + 8, STRONG_RULE, INK);
      },
    };
  }

  private rule(top: number, width: number, color: string, room: Room = this.room): void {
    this.pages.artifact("Layout", () =>
      this.pages.line([room.left, top], [room.left + room.width, top], width, color),
    );
  }

  private heading({ text, onNewPage }: Part<"heading">): Piece[] {
    this.under = text;
    return this.textPieces(this.set(text, "A heading"), {
      tag: "H2",
      look: look(SIZES.heading, "strong"),
      above: HEADING_GAP,
      isKept: true,
      newPage: onNewPage === true,
    });
  }

  private paragraph({ text, is }: Part<"paragraph">, isKept: boolean): Piece[] {
    const set = this.set(text, this.place("A paragraph"));
    if (is !== "caution")
      return this.textPieces(set, {
        tag: "P",
        look: is === "note" ? SMALL : TEXT,
        above: PARAGRAPH_GAP,
        isKept,
      });
    const { left } = this.room;
    return this.textPieces(set, {
      tag: "P",
      look: STRONG,
      above: PARAGRAPH_GAP,
      isKept,
      indent: CAUTION_ROOM,
      beside: (top, height) =>
        this.pages.fill({ left, top, width: CAUTION_BAR, height: height + RULE }, ALERT),
    });
  }

  private list({ items }: Part<"list">): Piece[] {
    let list: StructureElement | undefined;
    return items.flatMap((item, index) => {
      let marked = false;
      return this.textPieces(this.set(item, this.place("A line of the list")), {
        tag: "LBody",
        look: TEXT,
        above: index === 0 ? PARAGRAPH_GAP : PARAGRAPH_GAP / 2,
        indent: BULLET_ROOM,
        within: () => this.pages.element("LI", {}, (list ??= this.pages.element("L"))),
        beside: (top) => {
          if (!marked) this.drawLines([BULLET], this.room, top, TEXT);
          marked = true;
        },
      });
    });
  }

  private facts({ rows }: Part<"facts">): Piece[] {
    const half = (this.room.width - 2 * COLUMN_GAP) / 2;
    const told = rows.map(({ label, value }) => ({
      label: this.set(label, this.place("A label")),
      value: this.set(value, this.place(`“${label}”`)),
    }));
    const widest = Math.max(
      0,
      ...told.map(({ label }) => this.setter.type.width(label, LABEL.size, LABEL.face)),
    );
    const labelWidth = Math.min(widest + COLUMN_GAP, LABEL_SHARE * half);
    // A long value has the width of the page.
    const isShort = (value: string): boolean => this.broken(value, half - labelWidth, TEXT).length <= 2;
    const lined: (typeof told)[] = [];
    for (const one of told) {
      const last = lined.at(-1);
      if (last?.length === 1 && isShort(last[0]!.value) && isShort(one.value)) last.push(one);
      else lined.push([one]);
    }
    let table: StructureElement | undefined;
    return lined.map((pair, row): Piece => {
      const set = pair.map(({ label, value }, index) => {
        const left = this.room.left + index * (half + 2 * COLUMN_GAP);
        const width = pair.length === 1 && !isShort(value) ? this.room.width : half;
        return {
          label: this.broken(label, labelWidth - COLUMN_GAP / 2, LABEL),
          value: this.broken(value, width - labelWidth, TEXT),
          labelRoom: { left, width: labelWidth },
          valueRoom: { left: left + labelWidth, width: width - labelWidth },
        };
      });
      const count = Math.max(...set.flatMap(({ label, value }) => [label.length, value.length]));
      return {
        height: count * TEXT.size * LEADING,
        above: row === 0 ? PARAGRAPH_GAP : 2,
        keep: row === 0 && lined.length > 1,
        draw: (top) => {
          table ??= this.pages.element("Table");
          const line = this.pages.element("TR", {}, table);
          for (const { label, value, labelRoom, valueRoom } of set) {
            // On one base line with what it is the label of.
            const leading = (LEADING * TEXT.size) / LABEL.size;
            const drop = BASE * TEXT.size - (BASE + (leading - LEADING) / 2) * LABEL.size;
            this.pages.element("TH", { scope: "Row" }, line).add(() =>
              this.drawLines(label, labelRoom, top + drop, LABEL, {
                leading,
              }),
            );
            this.pages.element("TD", {}, line).add(() => this.drawLines(value, valueRoom, top, TEXT));
          }
        },
      };
    });
  }

  private table({ columns, rows }: Part<"table">): Piece[] {
    const hasBox = rows.some(({ box }) => box);
    const labels = columns.map(({ label }) => this.set(label, this.place("A column's head")));
    const texts = rows.map(({ cells }) => cells.map((cell) => this.set(cell, this.place("The table"))));
    const { width } = this.setter.type;
    const longest = (text: string, { size, face }: TextLook): number =>
      Math.max(...text.split(/[ \n]/).map((word) => width.call(this.setter.type, word, size, face)));
    const least = columns.map((_, column) =>
      Math.max(
        longest(labels[column]!, LABEL),
        ...texts.map((cells, row) => longest(cells[column] ?? "", rowLook(rows[row]!))),
      ),
    );
    const inset = hasBox ? TICK_BOX_ROOM : 0;
    const gaps = COLUMN_GAP * (columns.length - 1);
    const capped = least.map((points) => Math.min(points, (this.room.width - gaps) / 2));
    const widths = columnWidths(
      columns.map(({ share }) => share),
      capped,
      this.room.width - gaps - inset,
    );
    const rooms = widths.map((points, column): Room => ({
      left:
        this.room.left +
        inset +
        widths.slice(0, column).reduce((sum, one) => sum + one, 0) +
        column * COLUMN_GAP,
      width: points,
    }));
    let table: StructureElement | undefined;
    const tableElement = (): StructureElement => (table ??= this.pages.element("Table"));

    const setRow = (cells: readonly string[], text: TextLook): string[][] =>
      rooms.map((room, column) => this.broken(cells[column] ?? "", room.width, text));
    const heightOf = (set: readonly (readonly string[])[], { size }: TextLook): number =>
      Math.max(1, ...set.map(({ length }) => length)) * size * LEADING + 2 * ROW_PADDING;
    const drawCell = (set: readonly string[], column: number, top: number, text: TextLook): void =>
      this.drawLines(set, rooms[column]!, top + ROW_PADDING, text, { align: columns[column]!.align });

    const headSet = setRow(labels, LABEL);
    const headHeight = heightOf(headSet, LABEL);
    const head: Piece = {
      height: headHeight,
      above: PARAGRAPH_GAP,
      keep: true,
      draw: (top, isRepeated) => {
        if (isRepeated)
          this.pages.artifact("Pagination", () =>
            headSet.forEach((set, column) => drawCell(set, column, top, LABEL)),
          );
        else {
          const line = this.pages.element("TR", {}, tableElement());
          headSet.forEach((set, column) =>
            this.pages.element("TH", { scope: "Column" }, line).add(() => drawCell(set, column, top, LABEL)),
          );
        }
        this.rule(top + headHeight, STRONG_RULE, INK);
      },
    };
    const hasHead = labels.some((label) => label !== "");
    /** What stands again above a row that goes on over the page: the heads, and the name of its group. */
    let repeated: readonly Piece[] = hasHead ? [head] : [];
    const body = rows.map((row, index): Piece => {
      if (row.is) repeated = repeated.filter((piece) => piece === head);
      const text = rowLook(row);
      const set = setRow(texts[index]!, text);
      const height = heightOf(set, text);
      const next = rows[index + 1];
      const isSum = row.is === "sum" || row.is === "total";
      const above = stacked(repeated);
      const piece: Piece = {
        height,
        above: row.is === "group" && index > 0 ? ROW_PADDING : 0,
        // A head goes with what is under it, a sum with what it sums.
        keep:
          row.is === "group" ||
          next?.is === "sum" ||
          next?.is === "total" ||
          (rows.length <= WHOLE_ROWS && next !== undefined),
        ...(above && { head: above }),
        draw: (top, isRepeated) => {
          if (isRepeated) {
            this.pages.artifact("Pagination", () =>
              set.forEach((cell, column) => drawCell(cell, column, top, text)),
            );
            return this.rule(top + height, RULE, FAINT);
          }
          if (row.is === "total") this.rule(top, STRONG_RULE, INK);
          const line = this.pages.element("TR", {}, tableElement());
          set.forEach((cell, column) => {
            const isLabel = column === 0 && (row.is === "group" || isSum);
            const element = isLabel
              ? this.pages.element("TH", { scope: "Row" }, line)
              : this.pages.element("TD", {}, line);
            element.add(() => {
              if (column === 0 && row.box)
                this.drawLines([TICK_BOX], this.room, top + ROW_PADDING, look(SIZES.heading));
              drawCell(cell, column, top, text);
            });
          });
          if (next?.is !== "total") this.rule(top + height, RULE, FAINT);
        },
      };
      if (row.is === "group") repeated = [...repeated, piece];
      return piece;
    });
    return hasHead ? [head, ...body] : body;
  }

  private picture({ svg, alt, caption = "" }: Part<"picture">): Piece {
    const set = this.set(svg, this.place("The picture"));
    const [, ownWidth, ownHeight] = / width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
    const [width, height] = [Number(ownWidth ?? 0), Number(ownHeight ?? 0)];
    if (!(width > 0 && height > 0))
      throw new Error("A picture for a document must say its width and height.");
    const below =
      caption === ""
        ? []
        : this.broken(this.set(caption, "The words under a picture"), this.room.width, SMALL);
    const captionHeight = below.length * SMALL.size * LEADING + (below.length > 0 ? PARAGRAPH_GAP : 0);
    const scale = Math.min(
      POINTS_PER_PIXEL,
      this.room.width / width,
      (PICTURE_SHARE * this.down - captionHeight) / height,
    );
    const box = { left: this.room.left, width: width * scale, height: height * scale };
    return {
      height: box.height + captionHeight,
      above: 2 * PARAGRAPH_GAP,
      draw: (top) => {
        const bbox = [box.left, top, box.left + box.width, top + box.height] as const;
        const figure = this.pages.element("Figure", { alt: this.set(alt, "The words for a picture"), bbox });
        figure.add(() => this.pages.svg(set, { ...box, top }));
        if (below.length > 0)
          this.pages
            .element("Caption")
            .add(() => this.drawLines(below, this.room, top + box.height + PARAGRAPH_GAP, SMALL));
      },
    };
  }

  private signature({ text, lines: labels }: Part<"signature">): Piece {
    const set = this.broken(this.set(text, this.place("The text to sign")), this.room.width, TEXT);
    const told = labels.map((label) => this.set(label, this.place("A line to sign on")));
    const across = Math.min(2, Math.max(1, told.length));
    const width = (this.room.width - (across - 1) * WRITING_LINE_GAP) / across;
    const textHeight = set.length * TEXT.size * LEADING;
    const broken = told.map((label) => this.broken(label, width, SMALL));
    const lineHeight =
      WRITING_ROOM + Math.max(1, ...broken.map(({ length }) => length)) * SMALL.size * LEADING;
    return {
      height: textHeight + Math.ceil(told.length / across) * lineHeight,
      above: PARAGRAPH_GAP,
      draw: (top) => {
        this.pages.element("P").add(() => this.drawLines(set, this.room, top, TEXT));
        broken.forEach((label, index) => {
          if (told[index] === "") return;
          const left = this.room.left + (index % across) * (width + WRITING_LINE_GAP);
          const line = top + textHeight + Math.floor(index / across) * lineHeight + WRITING_ROOM;
          this.rule(line, RULE, INK, { left, width });
          this.pages.element("P").add(() => this.drawLines(label, { left, width }, line + 2, SMALL));
        });
      },
    };
  }
}

const rowLook = ({ is }: DocumentRow): TextLook => (is === undefined ? TEXT : STRONG);
