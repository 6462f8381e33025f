/** A workbook that was read from a file, as whoever prints it by himself asks for it (paperSheet.ts). */
import type { Book } from "./book";

/** @returns the book with hidden rows and columns of no size, and its merged cells as one */
export const hiddenOnPaper = (book: Book): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) => {
    const { rowHeights, columnWidths, hiddenRows = [], hiddenColumns = [], merged } = sheet;
    const none = (places: readonly number[]): Record<number, number> =>
      Object.fromEntries(places.map((place) => [place, 0]));
    return {
      ...sheet,
      rowHeights: { ...rowHeights, ...none(hiddenRows) },
      columnWidths: { ...columnWidths, ...none(hiddenColumns) },
      ...(merged && { merges: merged }),
    };
  }),
});
