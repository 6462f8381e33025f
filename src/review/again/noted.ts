/** What of a finding is kept, so that a later review of the same job knows it again. */
import { address, parseAddress, parseRange, type Zone } from "../../formula/address";
import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import type { Block } from "../../workbooks/definition";
import { namedColumn } from "../../workbooks/named";
import { rowKey } from "../../workbooks/rowKey";
import { templateOf } from "../../workbooks/templates";
import { BESIDE_THE_CELLS } from "../besideTheCells";
import { isSamePlace, type Finding, type FindingPlace, type Weight } from "../finding";
import { plainWord } from "../namedCells";

export interface Noted {
  /** Those that say it of its cell. */
  readonly rules: readonly string[];
  readonly weight: Weight;
  readonly place?: FindingPlace;
  /** What its cell is, wherever the row lies now: the name of the column or field, and what the row is called. */
  readonly subject: string;
  /** The column that names its row, and what the row is called. */
  readonly row?: string;
  /** What stands there, by which a settled finding is no longer settled once another figure does. */
  readonly held: string | number;
  /** Nobody typed that figure: it moves a little whenever anything does. */
  readonly isComputed?: true;
  readonly message: string;
}

/** Longer ones are cut where they are kept. */
export const LONGEST_NOTED = 1000;

export interface NotedOf {
  /** One for each finding, in their order. */
  readonly noted: readonly Noted[];
  /** The rows of the job, each by the column that names it and what it is called. */
  readonly rows: readonly string[];
}

/** @param book computed */
export function notedIn(book: Book, findings: readonly Finding[]): NotedOf {
  const called = calledIn(book);
  const noted = findings.map((finding): Noted => {
    const { rule = "", weight, place, message, leadsTo = [], check } = finding;
    const ofItsCell = leadsTo.filter((one) => isSamePlace(one.place, place)).map((one) => one.rule ?? "");
    const { name, row } = (!check && place && called.at(place)) || {};
    return {
      rules: [...new Set([rule, ...ofItsCell])],
      weight,
      ...(place && { place }),
      // Of the whole workbook the figures of its sentence may be others the next time.
      subject: check
        ? `check ${check.id}`
        : name === undefined
          ? withoutFigures(message)
          : nameOfRow(name, row),
      ...(row !== undefined && { row }),
      ...heldIn(book, finding, rule),
      message: cut(message),
    };
  });
  return { noted, rows: called.rows };
}

/** @returns where a cell lies now that was noted in an earlier review; undefined where its row is gone */
export function placesNow(book: Book): (noted: Noted) => FindingPlace | undefined {
  let called: Called | undefined;
  return ({ place, row, subject }) => {
    if (row === undefined || !place) return place;
    called ??= calledIn(book);
    return called.cellOf(place.sheet, subject, row);
  };
}

const nameOfRow = (name: string, row: string | undefined): string =>
  row === undefined ? name : `${name} of ${row}`;

const cut = (text: string): string => text.slice(0, LONGEST_NOTED);

/** They may be others the next time. */
const withoutFigures = (message: string): string => cut(message.replace(/\d[\d.,]*/g, "#"));

function heldIn(
  book: Book,
  { place, message, check }: Finding,
  rule: string,
): Pick<Noted, "held" | "isComputed"> {
  const sheet = book.sheets.find((one) => one.name === place?.sheet);
  const at = place && parseAddress(place.cell);
  // What is found of a page or a file has to do with the cell's value only in part.
  if (!sheet || !at || BESIDE_THE_CELLS.has(rule)) return { held: withoutFigures(message) };
  const valueAt = (cell: string): BookResult | undefined => sheet.results[cell] ?? sheet.cells[cell]?.value;
  // A check's word is the same of one outlet and of twenty; beside it stands how many.
  if (check) return { held: plainly(valueAt(address(at.row, at.column - 1))) };
  const { formula } = sheet.cells[place.cell] ?? {};
  if (formula !== undefined && rule.startsWith("formula ")) return { held: `=${formula}` };
  return { held: plainly(valueAt(place.cell)), ...(formula !== undefined && { isComputed: true }) };
}

function plainly(value: BookResult | undefined): string | number {
  if (typeof value === "number") return value;
  return cut(isBookError(value) ? value.error : String(value ?? ""));
}

interface Called {
  readonly rows: readonly string[];
  /** What a cell is called, the same whatever row it lies in. */
  at(place: FindingPlace): { readonly name: string; readonly row?: string };
  cellOf(sheet: string, subject: string, row: string): FindingPlace | undefined;
}

function calledIn(book: Book): Called {
  const zones = new Map<string, { readonly name: string; readonly zone: Zone }[]>();
  for (const { name, sheet, range } of book.names) {
    const zone = parseRange(range);
    if (zone) zones.set(sheet, [...(zones.get(sheet) ?? []), { name, zone }]);
  }
  const width = ({ left, right }: Zone): number => right - left;
  for (const named of zones.values())
    named.sort((a, b) => width(a.zone) - width(b.zone) || (a.name < b.name ? -1 : 1));
  const keys = keysOf(book);
  const rowAt = (sheet: string, row: number): string | undefined => {
    const key = keys.find((one) => one.sheet === sheet && one.top <= row && row < one.top + one.names.length);
    return key?.names[row - key.top];
  };
  return {
    rows: [...new Set(keys.flatMap(({ names }) => names))].filter((name) => name !== ""),
    at: ({ sheet, cell }) => {
      const place = parseAddress(cell);
      const found = place && zones.get(sheet)?.find(({ zone }) => isWithin(place, zone));
      if (!place || !found) return { name: `${sheet}!${cell}` };
      const { name, zone } = found;
      if (zone.top === zone.bottom) return { name: `${name} ${place.column - zone.left}` };
      const row = rowAt(sheet, place.row);
      return row ? { name, row } : { name: `${name} row ${place.row - zone.top}` };
    },
    cellOf: (sheet, subject, row) => {
      const found = zones.get(sheet)?.find(({ name }) => nameOfRow(name, row) === subject);
      const key = found && keys.find((one) => one.sheet === sheet && one.names.includes(row));
      if (!found || !key) return undefined;
      return { sheet, cell: address(key.top + key.names.indexOf(row), found.zone.left) };
    },
  };
}

const isWithin = ({ row, column }: { row: number; column: number }, zone: Zone): boolean =>
  zone.top <= row && row <= zone.bottom && zone.left <= column && column <= zone.right;

/** The columns that say what rows are called; the second of one name is told from the first. */
function keysOf(
  book: Book,
): { readonly sheet: string; readonly top: number; readonly names: readonly string[] }[] {
  const blocks = (templateOf(book.template)?.definition.sheets ?? []).flatMap(({ parts }) =>
    parts.filter((part): part is Block => part.kind === "block"),
  );
  return blocks.flatMap(({ name, columns }) => {
    const wanted = `${name}_${rowKey(columns) ?? columns[0]!.key}`;
    const named = book.names.find((one) => one.name === wanted);
    const zone = named && parseRange(named.range);
    if (!named || !zone) return [];
    const times = new Map<string, number>();
    const names = namedColumn(book, wanted).map((value) => {
      const word = plainWord(value);
      const nth = (times.get(word) ?? 0) + 1;
      times.set(word, nth);
      return word === "" ? "" : `${wanted} ${word}${nth > 1 ? ` (${nth})` : ""}`;
    });
    return [{ sheet: named.sheet, top: zone.top, names }];
  });
}
