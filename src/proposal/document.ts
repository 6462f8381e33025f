/**
 * A document in the order in which it is read. Who writes one knows no page,
 * and who lays it out on pages knows no job: between them stand only words,
 * figures as they are shown, and pictures.
 */

/** A picture file as it came, PNG or JPEG; checked before it gets here. */
export interface Logo {
  readonly bytes: Uint8Array;
  readonly format: "png" | "jpeg";
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** What stands in the place of it for who cannot see it. */
  readonly alt: string;
}

export interface DocumentColumn {
  readonly label: string;
  readonly align: "left" | "right";
  /** Of the table's width, beside the other columns' shares. */
  readonly share: number;
}

export interface DocumentRow {
  /** One for each column, as shown. */
  readonly cells: readonly string[];
  /** A head over the rows that follow, or a sum of those above. */
  readonly is?: "group" | "sum" | "total";
  /** A box to tick in ink stands before its first cell. */
  readonly box?: true;
}

export type DocumentPart =
  | {
      readonly kind: "letterhead";
      readonly name: string;
      readonly lines: readonly string[];
      readonly logo?: Logo;
    }
  | { readonly kind: "title"; readonly text: string }
  /** Pairs of a label and what it is, two beside each other where there is room. */
  | { readonly kind: "facts"; readonly rows: readonly { readonly label: string; readonly value: string }[] }
  | { readonly kind: "heading"; readonly text: string; readonly onNewPage?: true }
  | { readonly kind: "paragraph"; readonly text: string; readonly is?: "caution" | "note" }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | {
      readonly kind: "table";
      readonly columns: readonly DocumentColumn[];
      readonly rows: readonly DocumentRow[];
    }
  | {
      readonly kind: "picture";
      readonly svg: string;
      /** Says what it shows. */
      readonly alt: string;
      readonly caption?: string;
    }
  /** Lines to write on, each over its label, two beside each other; an empty label leaves its place free. They stay together on a page. */
  | { readonly kind: "signature"; readonly text: string; readonly lines: readonly string[] };

export interface PaperDocument {
  readonly title: string;
  /** The firm. */
  readonly author: string;
  readonly subject: string;
  /** Of its words, as BCP 47. */
  readonly language: string;
  /** At the foot of each page; beside it stands which page of how many. */
  readonly foot: string;
  readonly parts: readonly DocumentPart[];
}
