/** Thresholds of the workbook itself: its template, formulas, stored values, texts and what is hidden. */
import { address, parseAddress, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { bookOf, emptySheet } from "../../support/books";
import { cellAt, GONE, sheetOf, valueAt, type Pair, type Side } from "./pair";

const formulaAt = (book: Book, name: string): string => {
  const { sheet, cell } = cellAt(book, name);
  return sheetOf(book, sheet).cells[cell]!.formula!;
};

/** What is stored in a cell is off by so much. */
const off =
  (name: string, by: number): Side =>
  (book) => {
    const { sheet, cell } = cellAt(book, name);
    sheetOf(book, sheet).results[cell] = valueAt(book, name) + by;
  };

const textIn =
  (sheet: string, line: RegExp, to?: (text: string) => string): Side =>
  (book) => {
    const { cells } = sheetOf(book, sheet);
    const [at, cell] = Object.entries(cells).find(
      ([where, { value }]) => /^A\d+$/.test(where) && line.test(String(value)),
    )!;
    cells[at] = {
      ...(cell.look === undefined ? {} : { look: cell.look }),
      ...(to && { value: to(String(cell.value)) }),
    };
  };

const CAUTION = /^Falls/;
const CHECK = /^Outlets/;

export const workbookPairs: readonly Pair[] = [
  {
    rule: "not our template",
    limit: "a workbook of ours, and one that somebody made by hand",
    stored: true,
    inside: {},
    beyond: (book) =>
      void Object.assign(book, bookOf({ ...emptySheet("Sheet1"), cells: { A1: { value: 1 } } })),
  },
  {
    rule: "earlier version",
    limit: "today's version, and the one before it",
    inside: {},
    beyond: (book) => void Object.assign(book, { templateVersion: String(Number(book.templateVersion) - 1) }),
  },
  {
    rule: "formula typed over",
    limit: "a number is no formula, be it the right one",
    inside: {},
    beyond: (book) => ({ price_contingency: valueAt(book, "price_contingency") }),
    at: "price_contingency",
  },
  {
    rule: "formula changed",
    limit: "other case and spaces are the same formula; a term more is another",
    inside: (book) => ({
      price_cost: { formula: ` ${formulaAt(book, "price_cost").toUpperCase().replaceAll("+", " + ")} ` },
    }),
    beyond: (book) => ({ price_cost: { formula: `${formulaAt(book, "price_cost")}+0` } }),
    at: "price_cost",
  },
  {
    rule: "stale value",
    limit: "a cent is another value; a billionth is the noise of another program",
    stored: true,
    inside: off("quote_total", 1e-9),
    beyond: off("quote_total", 0.01),
    at: "quote_total",
  },
  {
    rule: "row missing beside another list",
    limit: "Labour has a row for each row of Work on Parts",
    inside: {},
    beyond: (book) => {
      const names = book.names.map((one) => {
        if (!one.name.startsWith("labour_") || one.name === "labour_rate") return one;
        const zone = parseRange(one.range)!;
        return { ...one, range: `${address(zone.top, zone.left)}:${address(zone.bottom - 1, zone.right)}` };
      });
      Object.assign(book, { names });
    },
    at: "work_name",
    row: true,
  },
  {
    rule: "check deleted",
    limit: "a check's words are there, or not",
    stored: true,
    inside: {},
    beyond: textIn("Checks", CHECK),
    at: "checks_result",
  },
  {
    rule: "caution or exclusion removed",
    limit: "a caution is there, or not",
    stored: true,
    inside: {},
    beyond: textIn("About", CAUTION),
  },
  {
    rule: "caution or exclusion removed",
    limit: "an exclusion more is the office's own; one fewer is not told to who signs",
    inside: { "exclusions_text free": "Scaffolding." },
    beyond: (book) => ({
      [`exclusions_text of ${String(sheetOf(book, "Terms").cells[cellAt(book, "exclusions_text free").cell]?.value ?? "")}`]:
        GONE,
    }),
    at: "exclusions_text",
  },
  {
    rule: "hidden",
    limit: "a row with an outlet; an empty one hides nothing",
    stored: true,
    inside: (book) => {
      const { sheet, cell } = cellAt(book, "rooms_outlet last");
      sheetOf(book, sheet).hiddenRows = [parseAddress(cell)!.row];
    },
    beyond: (book) => {
      const { sheet, cell } = cellAt(book, "rooms_outlet of G-01");
      sheetOf(book, sheet).hiddenRows = [parseAddress(cell)!.row];
    },
    at: "rooms_outlet of G-01",
    row: true,
  },
];
