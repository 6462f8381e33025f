/**
 * The demonstrations, opened in this Excel and compared cell by cell with what
 * the desk computed. An input is moved first, so that it is Excel that computes.
 */
import { address, parseAddress, parseRange } from "../../../formula/address";
import { isBookError, type Book, type BookResult } from "../../../workbooks/book";
import { templates } from "../../../workbooks/templates";
import { HostTrouble } from "../../../pane/host";
import type { TrialLine } from "../../../pane/trial";
import { readXlsx } from "../../file/readXlsx";
import { buildingBook, takeBookBack } from "../buildBook";
import { changeExcel, hasApi } from "../inExcel";
import { insertingFile } from "../insertFile";
import { usedCells } from "../readWorkbook";
import { INSERT_SHEETS, readyFile } from "../readyFile";
import { bad, good, look, notRun, settled, shown, type Found } from "./steps";

export interface Demonstration {
  readonly title: string;
  readonly file: string;
  readonly book: () => Book;
  /** The cell whose figure people look at first, and a column or cell that moves it. */
  readonly total: string;
  readonly input: string;
}

const KEYS: Readonly<Record<string, { readonly total: string; readonly input: string }>> = {
  "multi-room": { total: "quote_total", input: "rooms_run" },
  "single-drop": { total: "drop_volts", input: "drop_length" },
  "alignment-card": { total: "pair_tilt", input: "card_latitude" },
  "quote-review": { total: "review_net_again", input: "review_materials" },
};

export const demonstrations: readonly Demonstration[] = templates.flatMap(
  ({ id, title, demonstration, more }) => [
    { title, file: `${id}-demonstration.xlsx`, book: demonstration, ...KEYS[id]! },
    ...more.map((one) => ({
      title: `${title}, ${one.title}`,
      file: `${id}-${one.id}.xlsx`,
      book: one.book,
      ...KEYS[id]!,
    })),
  ],
);

/**
 * @param begin called before anything is put into the workbook, with what will be
 * @param end called when it is out again
 */
export async function tryDemonstration(
  demonstration: Demonstration,
  begin: (book: Book) => Promise<void>,
  end: () => Promise<void>,
): Promise<TrialLine> {
  const line = (found: Found): TrialLine => ({ what: `Demonstration: ${demonstration.title}`, ...found });
  const bytes = await readyFile(demonstration.file);
  if (!bytes)
    return line(notRun(`${demonstration.file} does not lie with the add-in: its server gives no such file`));
  const desk = await readXlsx(bytes);
  const book = demonstration.book();
  try {
    await begin(book);
    const began = performance.now();
    const inserted = hasApi(INSERT_SHEETS) ? await changeExcel(insertingFile(book, bytes)) : undefined;
    if (inserted === undefined) await changeExcel(buildingBook(book));
    const how = `${inserted === undefined ? "built cell by cell" : "its sheets inserted"} in ${Math.round(performance.now() - began)} ms`;
    const found = await Excel.run((context) => compared(context, demonstration, desk));
    return line({ ...found, found: `${how}; ${found.found}${inserted ? `. ${inserted}` : ""}` });
  } catch (error) {
    // What is in the way is no fault of this Excel's.
    if (error instanceof HostTrouble) return line(notRun(error.message));
    throw error;
  } finally {
    await Excel.run((context) => takeBookBack(context, book)).then(end, () => undefined);
  }
}

async function compared(
  context: Excel.RequestContext,
  { total, input }: Demonstration,
  desk: Book,
): Promise<Found> {
  const totalCell = rangeOfName(context, desk, total);
  const wanted = totalCell.wanted;
  const before = await settled(context, totalCell.range);
  const moved = firstNumber(desk, input);
  const cell = context.workbook.worksheets.getItem(moved.sheet).getRange(moved.at);
  cell.values = [[moved.value + 1]];
  const other = await settled(context, totalCell.range, (values) => values[0]![0] !== before.values[0]![0]);
  cell.values = [[moved.value]];
  const back = await settled(context, totalCell.range, (values) => values[0]![0] !== other.values[0]![0]);
  const figure = back.values[0]![0];
  const moves = `${total} ${shown(before.values[0]![0])}, ${shown(other.values[0]![0])} with ${moved.sheet} ${moved.at} one more, ${shown(figure)} again after ${other.milliseconds + back.milliseconds} ms`;
  if (!other.done) return bad(`${moves}: it does not move. Is calculation set to manual?`);
  const { cells, differing } = await differences(context, desk);
  const counted = `${cells - differing.length} of ${cells} cells as on the desk`;
  if (differing.length > 0) return bad(`${moves}; ${counted}; ${differing.slice(0, 5).join("; ")}`);
  return agrees(figure, wanted)
    ? good(`${moves}; ${counted}`)
    : look(`${moves}, on the desk ${shown(wanted)}; ${counted}`);
}

async function differences(
  context: Excel.RequestContext,
  desk: Book,
): Promise<{ cells: number; differing: string[] }> {
  const used = new Map((await usedCells(context)).map((one) => [one.name, one]));
  let cells = 0;
  const differing: string[] = [];
  for (const { name, results } of desk.sheets) {
    const { top = 0, left = 0, values = [] } = used.get(name) ?? {};
    for (const [at, wanted] of Object.entries(results)) {
      const { row, column } = parseAddress(at)!;
      const value = values[row - top]?.[column - left] ?? "";
      cells += 1;
      if (!agrees(value, wanted))
        differing.push(`${name} ${at} ${shown(value)}, on the desk ${shown(bare(wanted))}`);
    }
  }
  return { cells, differing };
}

const bare = (result: BookResult): unknown => (isBookError(result) ? result.error : result);

/** Two programs may round the last digits apart. */
function agrees(value: unknown, wanted: BookResult | undefined): boolean {
  if (typeof wanted === "number" && typeof value === "number")
    return Math.abs(value - wanted) <= 1e-9 * Math.max(1, Math.abs(wanted));
  return value === (wanted === undefined ? "" : bare(wanted));
}

function placeOf(book: Book, name: string) {
  const { sheet, range } = book.names.find((one) => one.name === name)!;
  return { sheet, zone: parseRange(range)!, cells: book.sheets.find((one) => one.name === sheet)! };
}

function rangeOfName(context: Excel.RequestContext, book: Book, name: string) {
  const { sheet, zone, cells } = placeOf(book, name);
  const at = address(zone.top, zone.left);
  return { range: context.workbook.worksheets.getItem(sheet).getRange(at), wanted: cells.results[at] };
}

function firstNumber(book: Book, name: string): { sheet: string; at: string; value: number } {
  const { sheet, zone, cells } = placeOf(book, name);
  for (let row = zone.top; row <= zone.bottom; row++) {
    const at = address(row, zone.left);
    const value = cells.cells[at]?.value;
    if (typeof value === "number") return { sheet, at, value };
  }
  throw new Error(`${name} holds no number`);
}
