/** The parts of the grid library's commands and places that the page uses. */
export interface GridZone {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface GridPosition {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

/** A command as a plugin sees it; which fields it has depends on its type. */
export interface GridCommand {
  readonly type: string;
  readonly sheetId?: string;
  readonly row?: number;
  readonly col?: number;
  readonly content?: string;
  readonly target?: readonly GridZone[];
  readonly dimension?: "ROW" | "COL";
  readonly base?: number;
  readonly position?: "before" | "after";
  readonly elements?: readonly number[];
  readonly additions?: readonly RowAddition[];
  readonly quantity?: number;
  readonly cells?: readonly GridPosition[];
  readonly contents?: readonly CellContent[];
  readonly targetSheetId?: string;
  readonly zone?: GridZone;
  readonly name?: string;
  readonly oldRangeName?: string;
  readonly sortDirection?: "asc" | "desc";
}

export interface CellContent extends GridPosition {
  readonly content: string;
  /** Given where the cell is to look like another. */
  readonly style?: object | null;
  readonly format?: string;
}

/** A block that rows are put into. */
export interface RowAddition {
  /** The block's name. */
  readonly block: string;
  /** Where the first new row comes to stand, counted from the thin row above the block's data. */
  readonly offset: number;
  /** How many, where the additions of one command differ in that. */
  readonly quantity?: number;
}
