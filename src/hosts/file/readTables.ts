/**
 * The tables of somebody else's file: text parted by commas, semicolons, tabs, strokes or aligned blanks, each way
 * in which it could be parted; or the sheets of a workbook. What they mean is for the reader of surveys, or of price lists, to say.
 */
import { parseAddress, parseRange } from "../../formula/address";
import { isBookError, type BookResult, type BookSheet, type Look } from "../../workbooks/book";
import {
  isBlank,
  type ImportedCell,
  type ImportedLine,
  type ImportedTable,
} from "../../workbooks/imported/table";
import { shownName } from "../../workbooks/typed/shownName";
import { alignedLines } from "./alignedLines";
import { decodedText } from "./decodedText";
import { stop, troubles } from "./fileTrouble";
import { MAX_TABLE_BYTES, MAX_TABLE_LINES } from "./limits";
import { unclosedQuote } from "./unclosedQuote";
import { readCsv } from "./readCsv";
import { readXlsx } from "./readXlsx";

const DELIMITERS = { commas: ",", semicolons: ";", tabs: "\t", strokes: "|" } as const;
const LONE_MARK = {
  commas: /(^|,)[ ]*"[ ]*(?=,|$)/gm,
  semicolons: /(^|;)[ ]*"[ ]*(?=;|$)/gm,
  tabs: /(^|\t)[ ]*"[ ]*(?=\t|$)/gm,
  strokes: /(^|\|)[ ]*"[ ]*(?=\||$)/gm,
} as const;
/** Beyond so many lines only the likeliest way is given: each holds all of the file. */
const SHORT_LINES = 5_000;

/**
 * @returns the likeliest first; at least one
 * @throws FileTrouble for a file that is neither, or too long
 */
export async function readTables(bytes: Uint8Array): Promise<ImportedTable[]> {
  if (bytes.length > MAX_TABLE_BYTES) stop(troubles.tableTooLarge(bytes.length, MAX_TABLE_BYTES));
  const tables = isWorkbook(bytes) ? await workbookTables(bytes) : textTables(bytes);
  for (const { lines } of tables)
    if (lines.length > MAX_TABLE_LINES) stop(troubles.tableTooLong(lines.length, MAX_TABLE_LINES));
  return tables;
}

/** ZIP archives and the older container begin so; readXlsx says what is wrong with either. */
const isWorkbook = (bytes: Uint8Array): boolean =>
  (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2]! < 9) || (bytes[0] === 0xd0 && bytes[1] === 0xcf);

function textTables(bytes: Uint8Array): ImportedTable[] {
  const decoded = decodedText(bytes) ?? stop(troubles.tableNotText());
  // Another program's blank lines are still blank when its commas are read as text.
  const blank = !/[^\s,;|]/.test(decoded.text);
  // Every system's line ends as one, an old one's single returns among them.
  const text = decoded.text.replace(/\r\n?/g, "\n").replace(BULLETS, "");
  const count = linesIn(text);
  if (count > MAX_TABLE_LINES) stop(troubles.tableTooLong(count, MAX_TABLE_LINES));
  if (blank) return [{ source: `text, commas, ${decoded.encoding}`, lines: [] }];
  if (count <= SHORT_LINES) return parted(text, decoded.encoding, WAYS).map(({ table }) => table);
  // Its first lines tell how a long file is parted.
  const beginning = text.split("\n", SHORT_LINES).join("\n");
  const [{ way }] = parted(beginning, decoded.encoding, WAYS) as [PartedText];
  return parted(text, decoded.encoding, [way]).map(({ table }) => table);
}

type Way = keyof typeof DELIMITERS | "aligned";
const WAYS: readonly Way[] = [...(Object.keys(DELIMITERS) as (keyof typeof DELIMITERS)[]), "aligned"];

interface PartedText {
  readonly way: Way;
  readonly table: ImportedTable;
}

/** @returns the likeliest first */
function parted(text: string, encoding: string, ways: readonly Way[]): PartedText[] {
  const tables = ways.flatMap((way): PartedText[] => {
    if (way === "aligned") {
      const lines = text.includes("\t") ? undefined : alignedLines(text);
      return lines ? [{ way, table: { source: `text, aligned by blanks, ${encoding}`, lines } }] : [];
    }
    const delimiter = DELIMITERS[way];
    const { plain, opened } = withoutOpenQuotes(text, delimiter);
    const lines = readCsv(plain, delimiter);
    const dittoed = plain.replace(LONE_MARK[way], "$1〃");
    const others = dittoed === plain ? lines : readCsv(dittoed, delimiter);
    const table = {
      source: `text, ${way}, ${encoding}`,
      // A lone mark stands for "the same as above", unless it is half of a quoted cell.
      lines: (weightOf(others) > weightOf(lines) ? others : lines).map(withoutFormulas),
      ...(opened.length > 0 && { open: opened[0]!, opened }),
    };
    return [{ way, table }];
  });
  const weighed = tables.map((one) => ({ one, weight: weightOf(one.table.lines) }));
  return weighed.sort((a, b) => b.weight - a.weight).map(({ one }) => one);
}

/** Before a line of a note: a bullet, or a box to tick. */
const BULLETS = /^[ \t]*[•·▪‣◦●○☐☑☒✓✔✗] +/gm;
const MOST_OPEN = 20;

/** A mark that opens a cell and is never closed would take all below it along: it is taken as a plain sign. */
function withoutOpenQuotes(text: string, delimiter: string): { plain: string; opened: number[] } {
  let plain = text;
  const opened: number[] = [];
  for (let round = 0; round < MOST_OPEN; round++) {
    const open = unclosedQuote(plain, delimiter);
    if (open === undefined) break;
    const isDitto = (cell: string): boolean => cell.trim() === '"';
    const lines = plain.split("\n");
    const cells = lines[open - 1]!.split(delimiter);
    if (!cells.some(isDitto)) opened.push(open);
    const at = cells.findIndex(
      (cell) => /^ *"/.test(cell) && (isDitto(cell) || (cell.match(/"/g)?.length ?? 0) % 2 === 1),
    );
    if (at < 0) break;
    cells[at] = isDitto(cells[at]!) ? "〃" : cells[at]!.replace('"', "");
    lines[open - 1] = cells.join(delimiter);
    plain = lines.join("\n");
  }
  return { plain, opened };
}

/** `="007"` is how programs keep a text as it is. */
const withoutFormulas = (line: ImportedLine): ImportedLine =>
  line.cells.some((cell) => typeof cell === "string" && KEPT_TEXT.test(cell))
    ? {
        ...line,
        cells: line.cells.map((cell) => (typeof cell === "string" ? cell.replace(KEPT_TEXT, "$1") : cell)),
      }
    : line;

const KEPT_TEXT = /^="([^"]*)"$/;

/** Without taking the text apart, which a file of a million lines would not survive. */
function linesIn(text: string): number {
  let count = 0;
  for (let at = 0; at >= 0; at = text.indexOf("\n", at + 1)) count++;
  return count;
}

/** How much of a table it makes: lines of many cells, as many of them as have the usual number. */
function weightOf(lines: readonly ImportedLine[]): number {
  const widths = new Map<number, number>();
  for (const line of lines) {
    const { length } = line.cells;
    if (length > 1 && !isBlank(line)) widths.set(length, (widths.get(length) ?? 0) + 1);
  }
  return Math.max(0, ...[...widths].map(([width, count]) => width * count));
}

async function workbookTables(bytes: Uint8Array): Promise<ImportedTable[]> {
  const { sheets, looks } = await readXlsx(bytes);
  return sheets
    .filter(({ hidden }) => !hidden)
    .map((sheet) => ({
      source: `sheet "${sheet.name}" of a workbook`,
      sheet: sheet.name,
      lines: linesOf(sheet, looks),
      ...(sheet.hiddenColumns && { hiddenColumns: sheet.hiddenColumns }),
    }));
}

function linesOf(
  { cells, results, merged = [], hiddenRows = [] }: BookSheet,
  looks: readonly Look[],
): ImportedLine[] {
  const rows = new Map<number, ImportedCell[]>();
  const put = (row: number, column: number, cell: ImportedCell): void => {
    const line = rows.get(row) ?? [];
    rows.set(row, line);
    line[column] = cell;
  };
  for (const at of new Set([...Object.keys(cells), ...Object.keys(results)])) {
    const held = results[at] ?? cells[at]?.value;
    const place = parseAddress(at);
    if (held === undefined || held === "" || !place) continue;
    put(place.row, place.column, importedCell(held, looks[cells[at]?.look ?? -1]?.format));
  }
  // One cell over several rows stands for each of them.
  let left = MAX_TABLE_LINES;
  for (const range of merged) {
    const zone = parseRange(range);
    const first = zone && rows.get(zone.top)?.[zone.left];
    if (!zone || first === undefined) continue;
    for (let row = zone.top + 1; row <= zone.bottom && left > 0; row++, left--)
      if (rows.has(row)) put(row, zone.left, first);
  }
  const hidden = new Set(hiddenRows);
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, sparse]) => ({
      line: row + 1,
      cells: Array.from(sparse, (cell) => cell ?? ""),
      ...(hidden.has(row) && { hidden: true }),
    }));
}

/** A name that was typed as a number is the text that its format shows. */
function importedCell(held: BookResult, format: string | undefined): ImportedCell {
  if (isBookError(held)) return held.error;
  if (typeof held === "string") return held;
  const shown = shownName(held, format);
  if (typeof held === "boolean") return shown!;
  const unit = unitOf(format);
  return {
    number: held,
    shown,
    ...(unit !== undefined && { unit }),
    ...(format !== undefined && /[$€£¥₹%"]/.test(format) && { format }),
  };
}

/** `0.0" m"` and `0.0\ "m"` write a unit behind every number. */
function unitOf(format: string | undefined): string | undefined {
  const words = /[0#?](?:\\ | )*"([^"]*)"\s*(?:;|$)/.exec(format?.split(";")[0] ?? "")?.[1]?.trim();
  return words === undefined || words === "" ? undefined : words;
}
