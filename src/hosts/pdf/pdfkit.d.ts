/** What is used of the libraries that write PDF; their own types are Node's, or missing. */
declare module "fontkit" {
  export interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string): { readonly advanceWidth: number };
  }
  export function create(bytes: Uint8Array): Font;
}

declare module "pdfkit" {
  export interface StructureOptions {
    readonly title?: string;
    readonly alt?: string;
    readonly scope?: "Column" | "Row" | "Both";
    readonly bbox?: readonly [left: number, top: number, right: number, bottom: number];
    readonly placement?: string;
  }

  export interface StructureElement {
    add(child: StructureElement | (() => void)): StructureElement;
    end(): void;
  }

  export interface OutlineItem {
    addItem(title: string): OutlineItem;
  }

  export default class PDFDocument {
    constructor(options: Readonly<Record<string, unknown>>);
    readonly outline: OutlineItem;
    readonly page: { readonly width: number; readonly height: number };
    on(event: "data", listener: (chunk: Uint8Array) => void): this;
    on(event: "end", listener: () => void): this;
    on(event: "error", listener: (error: Error) => void): this;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    end(): void;

    registerFont(name: string, font: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    fillColor(color: string): this;
    text(
      text: string,
      x: number,
      y: number,
      options: { readonly lineBreak: false; readonly baseline: "alphabetic" },
    ): this;

    rect(x: number, y: number, width: number, height: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    lineWidth(points: number): this;
    strokeColor(color: string): this;
    fill(color: string): this;
    stroke(): this;
    save(): this;
    restore(): this;
    image(
      bytes: Uint8Array,
      x: number,
      y: number,
      options: { readonly width: number; readonly height: number },
    ): this;

    struct(type: string, options?: StructureOptions): StructureElement;
    addStructure(element: StructureElement): this;
    markContent(tag: "Artifact", options?: { readonly type?: "Pagination" | "Layout" }): this;
    endMarkedContent(): this;
  }
}

declare module "svg-to-pdfkit" {
  import type PDFDocument from "pdfkit";

  export default function svgToPdf(
    document: PDFDocument,
    svg: string,
    x: number,
    y: number,
    options: {
      readonly width: number;
      readonly height: number;
      readonly preserveAspectRatio: string;
      readonly fontCallback: (family: string, bold: boolean, italic: boolean) => string;
      readonly warningCallback: (words: string) => void;
    },
  ): void;
}
