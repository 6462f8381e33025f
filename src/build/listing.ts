/** A workbook as text, for whoever reads a change: a line for each name, rule, mark and cell. */
import { parseAddress } from "../formula/address";
import {
  isBookError,
  type Book,
  type BookResult,
  type BookSheet,
  type BookValidation,
} from "../workbooks/book";

/** @param book computed; what its formulas come to is listed too */
export function listingOf(book: Book): string {
  const names = book.names
    .map(({ name, sheet, range }) => `${name}\t${sheet}!${range}`)
    .sort((a, b) => (a < b ? -1 : 1));
  return [
    `${book.title}: ${book.template}, version ${book.templateVersion}`,
    "",
    "Names",
    ...names,
    ...book.sheets.flatMap((sheet) => ["", ...sheetLines(book, sheet)]),
    "",
  ].join("\n");
}

function sheetLines(book: Book, sheet: BookSheet): string[] {
  const { orientation, area, onePage } = sheet.print ?? {};
  return [
    `Sheet ${sheet.name}`,
    [
      sheet.protected ? "protected" : "open",
      `frozen ${sheet.frozenRows} by ${sheet.frozenColumns}`,
      orientation && `prints ${orientation}${area ? ` ${area}` : ""}${onePage ? " on one page" : ""}`,
    ]
      .filter(Boolean)
      .join(", "),
    ...sheet.validations.map((one) => `${one.range}\t${ruleText(one)}\t${JSON.stringify(one.prompt ?? "")}`),
    ...(sheet.pictures ?? []).map(({ at, title, description }) => `${at}\tpicture ${title}: ${description}`),
    ...sheet.marks.map(
      ({ range, words, overList }) =>
        `${range}\tmarks ${overList ? `what is filled over ${overList.list}` : words.join(", ")}`,
    ),
    ...Object.keys(sheet.cells)
      .sort(byPlace)
      .flatMap((at) => cellLine(book, sheet, at) ?? []),
  ];
}

/** @returns undefined for a cell that only looks like something */
function cellLine({ looks }: Book, { cells, results }: BookSheet, at: string): string | undefined {
  const { value, formula, spill, note, look } = cells[at]!;
  if (value === undefined && formula === undefined && note === undefined) return undefined;
  const { format, locked } = looks[look ?? -1] ?? {};
  const held = formula === undefined ? shown(value) : `=${formula}`;
  const about = [
    spill && `fills ${spill.rows} by ${spill.columns}`,
    format,
    locked === false && "unlocked",
    note !== undefined && `note ${JSON.stringify(note)}`,
  ].filter(Boolean);
  const result = formula === undefined ? [] : [shown(results[at])];
  return [at, held, ...result, about.join(", ")].join("\t").trimEnd();
}

const shown = (value: BookResult | undefined): string =>
  isBookError(value) ? value.error : value === undefined ? "" : JSON.stringify(value);

function ruleText({ rule, warnOnly }: BookValidation): string {
  const { kind, ...limits } = rule;
  const listed = Object.entries(limits).map(
    ([limit, of]) => `${limit} ${Array.isArray(of) ? of.join("|") : String(of)}`,
  );
  return [kind, ...listed, warnOnly && "warns only"].filter(Boolean).join(", ");
}

function byPlace(a: string, b: string): number {
  const [one, other] = [parseAddress(a)!, parseAddress(b)!];
  return one.row - other.row || one.column - other.column;
}
