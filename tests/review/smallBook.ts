/** A workbook of a few named columns and fields, for one rule to look at: nothing of it is computed. */
import type { Finding, FindingPlace } from "../../src/review/finding";
import { DEFAULT_MARGIN_FLOOR, type Reviewed, type Rule } from "../../src/review/rule";
import type { Book, BookResult } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { bookOf, emptySheet } from "../support/books";

/** By the keys of columns, or the names of fields. */
export type Row = Readonly<Record<string, BookResult | undefined>>;

/**
 * @param blocks rows by their block, each as values by its columns' keys
 * @param fields values by their whole names
 */
export function smallBook(blocks: Readonly<Record<string, readonly Row[]>>, fields: Row = {}): Book {
  const columns = Object.entries(blocks).flatMap(([block, rows]) =>
    [...new Set(rows.flatMap((row) => Object.keys(row)))].map((key) => ({
      name: `${block}_${key}`,
      // Between the two thin rows of a block.
      values: [undefined, ...rows.map((row) => row[key]), undefined],
    })),
  );
  const all = [...columns, ...Object.entries(fields).map(([name, value]) => ({ name, values: [value] }))];
  return {
    ...bookOf(
      ...all.map(({ name, values }) => {
        const sheet = emptySheet(name);
        values.forEach((value, index) => {
          if (typeof value === "object") sheet.results[`A${index + 1}`] = value;
          else if (value !== undefined) sheet.cells[`A${index + 1}`] = { value };
        });
        return sheet;
      }),
    ),
    templateVersion: multiRoom.version,
    names: all.map(({ name, values }) => ({ name, sheet: name, range: `A1:A${values.length}` })),
  };
}

/** Where a small book has it: each column is a sheet of its own. @param row of the block, counted from 1 */
export const at = (column: string, row: number): FindingPlace => ({ sheet: column, cell: `A${row + 1}` });
export const atField = (name: string): FindingPlace => ({ sheet: name, cell: "A1" });

export const found = (rule: Rule, book: Book, more: Partial<Reviewed> = {}): Finding[] =>
  rule.find({
    read: book,
    own: book,
    computed: book,
    definition: multiRoom,
    differences: [],
    labelAt: (sheet) => sheet,
    options: { marginFloor: DEFAULT_MARGIN_FLOOR },
    ...more,
  });

export const messages = (rule: Rule, book: Book, more: Partial<Reviewed> = {}): string[] =>
  found(rule, book, more).map(({ message }) => message);
