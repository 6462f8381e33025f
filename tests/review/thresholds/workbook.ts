/** Thresholds of the workbook itself: its template, formulas, stored values, texts and what is hidden. */
import { address, parseAddress, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { standardExclusions } from "../../../src/workbooks/multiRoom/startingPoint";
import { bookOf, emptySheet } from "../../support/books";
import { cellAt, GONE, lineOf, sheetOf, valueAt, type Pair, type Side } from "./pair";

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

const reworded =
  (sheet: string, begin: string, to: (text: string) => string | undefined): Side =>
  (book) => {
    const { cells } = sheetOf(book, sheet);
    const at = lineOf(book, sheet, begin);
    const { look, value } = cells[at]!;
    const text = to(String(value));
    cells[at] = { ...(look === undefined ? {} : { look }), ...(text !== undefined && { value: text }) };
  };

const made =
  (by: number): Side =>
  (book) =>
    void Object.assign(book, { templateVersion: String(Number(book.templateVersion) + by) });

const hide =
  (name: string): Side =>
  (book) => {
    const { sheet, cell } = cellAt(book, name);
    sheetOf(book, sheet).hiddenRows = [parseAddress(cell)!.row];
  };

/** Labour's rows, or those of another list, end earlier by so many. */
const shorter =
  (block: string, by: number): Side =>
  (book) => {
    const names = book.names.map((one) => {
      const zone = parseRange(one.range)!;
      return one.name.startsWith(`${block}_`) && zone.bottom > zone.top
        ? { ...one, range: `${address(zone.top, zone.left)}:${address(zone.bottom - by, zone.right)}` }
        : one;
    });
    Object.assign(book, { names });
  };

const EXCLUSION = standardExclusions[0]!.text;

export const workbookPairs: readonly Pair[] = [
  {
    rule: "not our template",
    limit: "a workbook of ours, and one that somebody made by hand",
    whole: true,
    stored: true,
    inside: {},
    beyond: (book) =>
      void Object.assign(book, bookOf({ ...emptySheet("Sheet1"), cells: { A1: { value: 1 } } })),
  },
  {
    rule: "not our template",
    limit: "today's version, and one after it",
    whole: true,
    stored: true,
    inside: {},
    beyond: made(1),
  },
  {
    rule: "earlier version",
    limit: "today's version, and the one before it",
    whole: true,
    inside: {},
    beyond: made(-1),
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
    limit: "other case and spaces are the same formula; a term more, of 0, is another",
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
    rule: "stale value",
    limit: "a ten-millionth of 10.5 V is noise (the rule's own bound), two are not",
    stored: true,
    inside: off("heads_least of H1", 1.0e-6),
    beyond: off("heads_least of H1", 2.2e-6),
    at: "heads_least of H1",
  },
  {
    rule: "row missing beside another list",
    limit: "Labour has a row for each row of work on Parts: both shorter by one, or Labour alone",
    stored: true,
    given: shorter("work", 1),
    inside: shorter("labour", 1),
    beyond: {},
    at: "labour_name",
  },
  {
    rule: "check deleted",
    limit: "a check's words are there, or not",
    stored: true,
    inside: {},
    beyond: (book) => {
      delete sheetOf(book, "Checks").cells[lineOf(book, "Checks", "Outlets that nothing feeds")];
    },
    at: "check outlets unfed",
    row: true,
  },
  {
    rule: "caution or exclusion removed",
    limit: "a caution is there, or not",
    stored: true,
    inside: {},
    beyond: reworded("About", "Falls", () => undefined),
    at: "line About Falls",
  },
  {
    rule: "caution or exclusion removed",
    limit: "an exclusion more is the office's own; one fewer is not told to who signs",
    inside: { "exclusions_text free": "Scaffolding." },
    beyond: { [`exclusions_text of ${EXCLUSION}`]: GONE },
    at: `exclusions_text of ${EXCLUSION}`,
  },
  {
    rule: "hidden",
    limit: "a row with an outlet; an empty one hides nothing",
    stored: true,
    inside: hide("rooms_outlet last"),
    beyond: hide("rooms_outlet of G-01"),
    at: "rooms_outlet of G-01",
    row: true,
  },
  {
    rule: "hidden",
    limit: "a row with one word in it",
    stored: true,
    given: hide("rooms_outlet last"),
    inside: {},
    beyond: { "rooms_note last": "x" },
    at: "rooms_outlet last",
    row: true,
  },
  {
    rule: "hidden",
    limit: "a sheet is shown, or not",
    stored: true,
    inside: {},
    beyond: (book) => void (sheetOf(book, "Price").hidden = true),
    at: "line Price Price",
  },
];
