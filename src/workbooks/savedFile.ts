/** What a file that was read says beside its cells: how it prints, what lies on it, where it leads, who left words in it. */

export interface SavedFile {
  /** The program that saved it, as the file says. */
  readonly application?: string;
  /** The workbook says of itself that it holds macros. */
  readonly macros?: true;
  /** Days are counted from 1904. */
  readonly dates1904?: true;
  /** All defined names as they are stored, those of one sheet and the hidden ones too. */
  readonly names: readonly SavedName[];
  readonly links: readonly SavedLink[];
  /** What stands in the document's properties. */
  readonly properties: readonly { readonly name: string; readonly text: string; readonly own?: true }[];
  /** Who changed it while changes were tracked; empty where nobody is named. */
  readonly trackedBy?: readonly string[];
  readonly sheets: readonly SavedSheet[];
}

export interface SavedName {
  readonly name: string;
  /** As it is stored: `'Site'!$B$5`, `#REF!`, `0.2`. */
  readonly text: string;
  /** The sheet on which alone it is known. */
  readonly sheet?: string;
  readonly hidden?: true;
}

export interface SavedLink {
  readonly kind: "workbook" | "DDE" | "OLE" | "connection";
  /** A path, an address, or the name of a service. */
  readonly target: string;
  /** How formulas speak of it: the number in `[1]Sheet!A1`. */
  readonly number?: number;
  /** A password is stored with it. */
  readonly password?: true;
}

/** A part of the head or the foot of a page, its codes as they are stored: `&L&Z&F`. */
export interface SavedMargin {
  readonly at: "header" | "footer";
  readonly pages: "odd" | "even" | "first";
  readonly text: string;
}

/** Something that lies on the cells. */
export interface SavedDrawing {
  readonly kind: "picture" | "text box" | "shape" | "chart" | "object";
  readonly name: string;
  /** Its text; of a picture the one that is read in its place. */
  readonly text: string;
  /** The cells under it; of one whose size is not told in cells only the first. 0-based. */
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  /** It lets the cells be seen through. */
  readonly clear?: true;
}

export interface SavedNote {
  readonly cell: string;
  readonly text: string;
  readonly author: string;
  readonly thread?: true;
}

/** A conditional format that is more than a mark of ours. */
export interface SavedCondition {
  readonly ranges: readonly string[];
  readonly kind: string;
  readonly operator?: string;
  readonly formulas: readonly string[];
  readonly color?: string;
  readonly fill?: string;
  readonly format?: string;
}

export interface SavedRule {
  readonly ranges: readonly string[];
  readonly formulas: readonly string[];
  /** It says nothing when it is broken. */
  readonly silent?: true;
}

export interface SavedSheet {
  readonly name: string;
  /** It is chosen together with others: what is done to one is done to all. */
  readonly chosen?: true;
  /** No menu shows it again. */
  readonly veryHidden?: true;
  readonly showsFormulas?: true;
  readonly zerosHidden?: true;
  /** Rows without a height of their own are hidden. */
  readonly rowsHidden?: true;
  /** The range of a filter that leaves rows out. */
  readonly filtered?: string;
  readonly page: SavedPage;
  readonly margins: readonly SavedMargin[];
  readonly drawings: readonly SavedDrawing[];
  readonly notes: readonly SavedNote[];
  readonly hyperlinks: readonly { readonly cell: string; readonly target: string }[];
  readonly conditions: readonly SavedCondition[];
  /** Whether there is any conditional format. */
  readonly marked: boolean;
  readonly rules: readonly SavedRule[];
  readonly scenarios: readonly { readonly name: string; readonly cell: string }[];
}

export interface SavedPage {
  /** All of it is made as small as so many pages need; 0 is any number. */
  readonly fit?: { readonly wide: number; readonly tall: number };
  /** In percent, where it is not fitted. */
  readonly scale?: number;
  /** The format's number of the paper, where it is neither A4 nor Letter. */
  readonly otherPaper?: number;
  readonly firstNumber?: number;
  readonly headings?: true;
  readonly gridLines?: true;
  readonly errorsAs?: string;
  readonly notesPrinted?: true;
  /** 1-based: after these a page ends. */
  readonly rowBreaks: readonly number[];
}
