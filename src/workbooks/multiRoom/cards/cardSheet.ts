/** A sheet of cards to be cut apart: a fixed grid of rows and columns, so many cards to a page. */
import { address, rangeOf } from "../../../formula/address";
import type { Named } from "../../../formula/build";
import { lookIndex, type Book, type BookSheet, type BookValue, type Look } from "../../book";
import { LOOKS } from "../../looks";

const LINE_POINTS = 15.5;
const TITLE_POINTS = 22;
/** Between cards. */
const GAP_POINTS = 11;
/** Characters: what, predicted, within, measured; a gap; and the same again. */
const HALF = [19, 12, 8, 10] as const;
export const COLUMNS = [...HALF, 1.5, ...HALF] as const;
/** Where the right half begins. */
export const RIGHT = HALF.length + 1;

const quiet = { ...LOOKS.fieldUnit, size: 9 } as const satisfies Look;
const box = { top: "medium", right: "medium", bottom: "medium", left: "medium" } as const;

/** The looks of a card's cells. */
export const CARD = {
  title: { bold: true, size: 14, color: LOOKS.title.color },
  heading: { ...LOOKS.strongLabel, edges: { bottom: "thin" } },
  label: { ...LOOKS.label, size: 9 },
  quiet,
  head: { ...quiet, align: "right" },
  figure: { ...LOOKS.label, align: "right" },
  /** To be written into by hand. */
  box: { edges: box },
} as const satisfies Record<string, Look>;

/** Cells of the workbook into which what a hand wrote is typed, in one row of a list. */
export interface TypedInto {
  readonly columns: readonly Named[];
  /** Counted from the first row of data. */
  readonly row: number;
}

export interface CardPart {
  readonly row: number;
  readonly column: number;
  readonly value?: BookValue;
  readonly look: Look;
  /** Of a box. */
  readonly into?: TypedInto;
}

/** A box to be written into: whatever is written has its place in the workbook. */
export const boxAt = (row: number, column: number, into: TypedInto): CardPart => ({
  row,
  column,
  look: CARD.box,
  into,
});

/** What one card says, counted from its own upper left. */
export type Card = readonly CardPart[];

export interface CardShape {
  /** Rows of a card without the gap below it. */
  readonly rows: number;
  /** Columns of one card. */
  readonly columns: number;
  readonly across: number;
  readonly down: number;
}

/**
 * @param book takes the looks
 * @param name of the sheet
 * @param cards in reading order
 */
export function cardSheet(
  book: Pick<Book, "looks">,
  name: string,
  cards: readonly Card[],
  { rows, columns, across, down }: CardShape,
): BookSheet {
  const cells: BookSheet["cells"] = {};
  const rowHeights: BookSheet["rowHeights"] = {};
  const lines = Math.ceil(cards.length / across);
  cards.forEach((card, index) => {
    const top = Math.floor(index / across) * (rows + 1);
    const left = (index % across) * RIGHT;
    const looks = new Map<string, CardPart>(
      card.map((part) => [address(top + part.row, left + part.column), part]),
    );
    for (let row = 0; row < rows; row++) {
      rowHeights[top + row] = row === 0 ? TITLE_POINTS : LINE_POINTS;
      for (let column = 0; column < columns; column++) {
        const at = address(top + row, left + column);
        const part = looks.get(at);
        const edges = {
          ...(row === 0 && { top: "thin" as const }),
          ...(row === rows - 1 && { bottom: "thin" as const }),
          ...(column === 0 && { left: "thin" as const }),
          ...(column === columns - 1 && { right: "thin" as const }),
          ...part?.look.edges,
        };
        if (!part && Object.keys(edges).length === 0) continue;
        cells[at] = {
          ...(part?.value !== undefined && { value: part.value }),
          look: lookIndex(book, { ...part?.look, edges }),
        };
      }
    }
    rowHeights[top + rows] = GAP_POINTS;
  });
  const rowCount = Math.max(1, lines * (rows + 1));
  const pages = Math.ceil(lines / down);
  return {
    name,
    cells,
    results: {},
    rowCount,
    columnCount: COLUMNS.length,
    columnWidths: Object.fromEntries(COLUMNS.map((width, column) => [column, width])),
    rowHeights,
    frozenRows: 0,
    frozenColumns: 0,
    validations: [],
    marks: [],
    protected: true,
    print: {
      orientation: "portrait",
      paper: "a4",
      area: rangeOf({ top: 0, left: 0, bottom: rowCount - 1, right: COLUMNS.length - 1 }),
      breaks: Array.from({ length: Math.max(0, pages - 1) }, (_, page) => (page + 1) * down * (rows + 1)),
      footLeft: name,
      footRight: "",
    },
  };
}
