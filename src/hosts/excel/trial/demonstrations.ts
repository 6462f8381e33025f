/**
 * The demonstrations, in this workbook for a moment, and compared cell by cell
 * with what the desk computed. Inputs are moved first to where the desk's total
 * is known too, so that no figure stored in the file can pass for a computed one.
 */
import { address, parseAddress, parseRange } from "../../../formula/address";
import { isBookError, type Book, type BookResult } from "../../../workbooks/book";
import { templates } from "../../../workbooks/templates";
import { HostTrouble } from "../../../pane/host";
import { readXlsx } from "../../file/readXlsx";
import { buildingBook, takeBookBack } from "../buildBook";
import { changeExcel, hasApi } from "../inExcel";
import { insertingFile } from "../insertFile";
import { factsOf, usedCells } from "../readWorkbook";
import { INSERT_SHEETS, readyFile } from "../readyFile";
import { noteInserted, removeInserted, type Inserted } from "./ownSheet";
import { bad, good, look, notRun, sameNumber, settled, shown, type Found, type Ground } from "./steps";

interface Key {
  /** The cell whose figure people look at first. */
  readonly total: string;
  /** Their first numbers are each made one more. */
  readonly inputs: readonly string[];
  /** The desk's total then; a test works it out anew. */
  readonly moved: number;
}

export interface Demonstration extends Key {
  readonly title: string;
  readonly file: string;
  readonly book: () => Book;
}

const KEYS: Readonly<Record<string, Key>> = {
  "multi-room-demonstration": {
    total: "quote_total",
    inputs: ["rooms_run", "cables_price"],
    moved: 11092.68,
  },
  "multi-room-apartment-block": {
    total: "quote_total",
    inputs: ["rooms_run", "cables_price"],
    moved: 42480.38,
  },
  // Of its rows but one, the runs are their types'.
  "multi-room-hostel": {
    total: "quote_total",
    inputs: ["types_run", "cables_price"],
    moved: 11232.4,
  },
  // At another price than Parts has it, the first offer fails a check.
  "standards-demonstration": { total: "checks_failed", inputs: ["offers_pack_price"], moved: 1 },
  "single-drop-demonstration": { total: "drop_volts", inputs: ["drop_length"], moved: 12.374715623295806 },
  "alignment-card-demonstration": { total: "pair_tilt", inputs: ["card_latitude"], moved: 7.772976562195967 },
  "quote-review-demonstration": { total: "review_net_again", inputs: ["review_price"], moved: 4456.66 },
};

export const demonstrations: readonly Demonstration[] = templates.flatMap(
  ({ id, title, demonstration, more }) =>
    [
      { title, name: `${id}-demonstration`, book: demonstration },
      ...more.map((one) => ({ title: `${title}, ${one.title}`, name: `${id}-${one.id}`, book: one.book })),
    ].map(({ name, ...one }) => ({ ...one, ...KEYS[name]!, file: `${name}.xlsx` })),
);

export async function tryDemonstration(demonstration: Demonstration, ground: Ground): Promise<Found> {
  if (await isJob())
    return notRun(
      "this workbook is a job made from a template, which is left alone: try it in a new workbook",
    );
  const bytes = await readyFile(demonstration.file);
  if (!bytes)
    return notRun(`${demonstration.file} does not lie with the add-in: its server gives no such file`);
  const desk = await readXlsx(bytes);
  const book = demonstration.book();
  let inserted: Inserted = [];
  try {
    const began = performance.now();
    const taken = hasApi(INSERT_SHEETS) ? await changeExcel(insertingFile(book, bytes)) : undefined;
    const isBuilt = typeof taken !== "string";
    if (isBuilt) await changeExcel(buildingBook(book));
    if (isBuilt) ground.files.built += 1;
    else ground.files.taken.push(taken);
    inserted = await idsOf(book);
    await noteInserted(ground.sheet, inserted);
    const how = `${isBuilt ? "built in this workbook cell by cell" : "its sheets inserted"} in ${Math.round(performance.now() - began)} ms`;
    const found = await Excel.run((context) => compared(context, ground, demonstration, desk));
    const read = `${how}; ${found.read}`;
    return isBuilt && found.verdict === "good"
      ? look(`${found.found}, but Excel did not take the file: built in this workbook cell by cell`, read)
      : { ...found, read };
  } catch (error) {
    // What is in the way is no fault of this Excel's.
    if (error instanceof HostTrouble) return notRun(`in this workbook: ${error.message}`);
    throw error;
  } finally {
    if (inserted.length > 0) await takenOut(ground, book, inserted);
  }
}

/** A job's mark would be overwritten by a demonstration's. */
const isJob = (): Promise<boolean> =>
  Excel.run(async (context) => {
    const facts = factsOf(context.workbook);
    await context.sync();
    return facts().template !== "";
  });

async function takenOut(ground: Ground, book: Book, inserted: Inserted): Promise<void> {
  const isOut = await Excel.run(async (context) => {
    const isOut = await removeInserted(context, inserted);
    // What names are left.
    await takeBookBack(context, { ...book, sheets: [] });
    return isOut;
  }).catch(() => false);
  if (isOut) await noteInserted(ground.sheet, []);
  else ground.leftIn = inserted.map(([name]) => name);
}

const idsOf = ({ sheets }: Book): Promise<Inserted> =>
  Excel.run(async (context) => {
    const loaded = sheets.map(({ name }) => context.workbook.worksheets.getItem(name));
    for (const sheet of loaded) sheet.load("name,id");
    await context.sync();
    return loaded.map(({ name, id }) => [name, id] as const);
  });

interface Place {
  readonly sheet: string;
  readonly at: string;
}

async function compared(
  context: Excel.RequestContext,
  ground: Ground,
  { total, inputs, moved }: Demonstration,
  desk: Book,
): Promise<Found> {
  const cellAt = ({ sheet, at }: Place): Excel.Range =>
    context.workbook.worksheets.getItem(sheet).getRange(at);
  const { sheet, zone } = placeOf(desk, total);
  const at = address(zone.top, zone.left);
  const cell = cellAt({ sheet, at });
  const wanted = desk.sheets.find(({ name }) => name === sheet)!.results[at];
  const changed = inputs.map((name) => firstNumber(desk, name));
  const move = (by: number): void => {
    for (const one of changed) cellAt(one).values = [[one.value + by]];
    // Only its own sheets, which are the trial's.
    if (ground.manual)
      for (const { name } of desk.sheets) context.workbook.worksheets.getItem(name).calculate(true);
  };
  const before = (await settled(context, cell)).values[0]![0];
  move(1);
  const other = await settled(context, cell, ([row]) => sameNumber(row![0], moved));
  const then = other.values[0]![0];
  const movedCells = (await differences(context, desk)).differing.length;
  move(0);
  const back = await settled(context, cell, ([row]) => sameNumber(row![0], wanted));
  const now = back.values[0]![0];
  const places = changed.map((one) => `${one.sheet} ${one.at}`).join(" and ");
  const figures = `${total} ${shown(before)} (desk ${shown(wanted)}); with ${places} one more ${shown(then)} (desk ${moved}) after ${other.milliseconds} ms, ${movedCells} cells otherwise; back ${shown(now)} (desk ${shown(wanted)}) after ${back.milliseconds} ms`;
  if (then === before && !other.done)
    return bad(
      "the total does not follow its inputs: what stands there is what was stored in the file, not computed",
      figures,
    );
  const off = [
    [then, moved],
    [now, wanted],
  ].find(([value, expected]) => !sameNumber(value, expected));
  if (off)
    return bad(
      `${total} is ${shown(off[0])}, and the desk has ${shown(off[1])}: a difference of ${Math.round((Number(off[0]) - Number(off[1])) * 1e6) / 1e6}`,
      figures,
    );
  const { cells, differing } = await differences(context, desk);
  const counted = `${cells - differing.length} of ${cells} cells as on the desk`;
  return differing.length > 0
    ? bad(`${counted}; ${differing.slice(0, 5).join("; ")}`, figures)
    : good(`${counted}; the total followed its inputs, there and back`, figures);
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

const agrees = (value: unknown, wanted: BookResult): boolean =>
  typeof wanted === "number" ? sameNumber(value, wanted) : value === bare(wanted);

function placeOf(book: Book, name: string) {
  const { sheet, range } = book.names.find((one) => one.name === name)!;
  return { sheet, zone: parseRange(range)!, cells: book.sheets.find((one) => one.name === sheet)! };
}

export function firstNumber(book: Book, name: string): Place & { readonly value: number } {
  const { sheet, zone, cells } = placeOf(book, name);
  for (let row = zone.top; row <= zone.bottom; row++) {
    const at = address(row, zone.left);
    const value = cells.cells[at]?.value;
    if (typeof value === "number") return { sheet, at, value };
  }
  throw new Error(`${name} holds no number`);
}
