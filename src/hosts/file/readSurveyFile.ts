/** A site survey out of a file: text with commas, semicolons or tabs, or a workbook. */
import { isBookError, type BookResult, type BookSheet, type Look } from "../../workbooks/book";
import { parseAddress } from "../../formula/address";
import { findHead, textOf, type SurveyCell, type SurveyLine } from "../../workbooks/survey/heads";
import { readSurvey, type Survey, type SurveyTable } from "../../workbooks/survey/readSurvey";
import { shownName } from "../../workbooks/typed/shownName";
import { writingOf } from "../../workbooks/typed/writing";
import { decodedText } from "./decodedText";
import { stop, troubles } from "./fileTrouble";
import { unclosedQuote } from "./unclosedQuote";
import { readCsv } from "./readCsv";
import { readXlsx } from "./readXlsx";

/** A survey is a few hundred lines; more than this is some other file. */
const MOST_BYTES = 20 * 1024 * 1024;
const DELIMITERS = { commas: ",", semicolons: ";", tabs: "\t" } as const;

/**
 * @param unit of the workbook's lengths
 * @param writing how the workbook's people write numbers: a locale's tag, or the words of the workbook's own field
 * @returns what was understood; a file that is no survey at all rejects with a FileTrouble
 */
export async function readSurveyFile(bytes: Uint8Array, unit: "m" | "ft", writing?: string): Promise<Survey> {
  if (bytes.length > MOST_BYTES) stop(troubles.surveyTooLarge(bytes.length, MOST_BYTES));
  const tables = isWorkbook(bytes) ? await workbookTables(bytes) : textTables(bytes);
  const table = best(tables);
  if (table.open !== undefined) stop(troubles.surveyQuoteOpen(table.open));
  return readSurvey(table, unit, writingOf(writing));
}

interface FileTable extends SurveyTable {
  /** The line that opens a quoted cell which is never closed. */
  readonly open?: number;
}

/** ZIP archives and the older container begin so; readXlsx says what is wrong with either. */
const isWorkbook = (bytes: Uint8Array): boolean =>
  (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2]! < 9) || (bytes[0] === 0xd0 && bytes[1] === 0xcf);

function textTables(bytes: Uint8Array): FileTable[] {
  const decoded = decodedText(bytes) ?? stop(troubles.surveyNotText());
  // Another program's blank lines are still blank when its commas are read as text.
  const blank = !/[^\s,;]/.test(decoded.text);
  // Every system's line ends as one, an old one's single returns among them.
  const text = decoded.text.replace(/\r\n?/g, "\n");
  return Object.entries(DELIMITERS).map(([name, delimiter]) => ({
    source: `text, ${name}, ${decoded.encoding}`,
    lines: blank ? [] : readCsv(text, delimiter),
    open: unclosedQuote(text, delimiter),
  }));
}

async function workbookTables(bytes: Uint8Array): Promise<FileTable[]> {
  const { sheets, looks } = await readXlsx(bytes);
  return sheets
    .filter(({ hidden }) => !hidden)
    .map((sheet) => ({
      source: `sheet "${sheet.name}" of a workbook`,
      lines: linesOf(sheet, looks),
    }));
}

function linesOf({ cells, results }: BookSheet, looks: readonly Look[]): SurveyLine[] {
  const rows = new Map<number, SurveyCell[]>();
  for (const at of new Set([...Object.keys(cells), ...Object.keys(results)])) {
    const held = results[at] ?? cells[at]?.value;
    const place = parseAddress(at);
    if (held === undefined || held === "" || !place) continue;
    const row = rows.get(place.row) ?? [];
    rows.set(place.row, row);
    row[place.column] = surveyCell(held, looks[cells[at]?.look ?? -1]?.format);
  }
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, sparse]) => ({ line: row + 1, cells: Array.from(sparse, (cell) => cell ?? "") }));
}

/** A name that was typed as a number is the text that its format shows. */
function surveyCell(held: BookResult, format: string | undefined): SurveyCell {
  if (isBookError(held)) return held.error;
  if (typeof held === "string") return held;
  const shown = shownName(held, format);
  return typeof held === "boolean" ? shown! : { number: held, shown };
}

/** The first with a head row that fits; else the one that comes nearest to it. */
function best(tables: readonly FileTable[]): FileTable {
  const judged = tables.map((table) => {
    const head = findHead(table.lines.filter(({ cells }) => cells.some((cell) => textOf(cell) !== "")));
    return { table, fits: head?.fits, heads: head?.columns.size ?? 0, width: head?.line.cells.length ?? 0 };
  });
  const nearest = [...judged].sort((a, b) => b.heads - a.heads || b.width - a.width)[0]!;
  return (judged.find(({ fits }) => fits) ?? nearest).table;
}
