/** Books for tests of the hosts. */
import type { Book, BookSheet } from "../../src/workbooks/book";

export const emptySheet = (name: string): BookSheet => ({
  name,
  cells: {},
  results: {},
  rowCount: 1,
  columnCount: 1,
  columnWidths: {},
  rowHeights: {},
  frozenRows: 0,
  frozenColumns: 0,
  validations: [],
  marks: [],
  protected: false,
});

export const bookOf = (...sheets: BookSheet[]): Book => ({
  template: "",
  templateVersion: "",
  title: "",
  looks: [],
  sheets,
  names: [],
});
