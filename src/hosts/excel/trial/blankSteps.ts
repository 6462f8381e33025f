/** How blank cells reach our functions: in a range, alone, and what a person sees of it. */
import { BLANKS_AS_ZERO } from "../../../functions/core/blanksAsZero";
import { NAMESPACE } from "../../../formula/namespace";
import { RIGSHEET_VERSION } from "../../../version";
import { azimuthFormula, azimuthOf, drawn } from "./drawn";
import {
  bad,
  calculated,
  entered,
  good,
  look,
  sameNumber,
  settled,
  sheetOf,
  shown,
  type Found,
  type Ground,
  type Step,
} from "./steps";

/** The kinds of blank cell that a sheet can hold, in rows from 20 of column A; the column H has them as a row. */
const KINDS = ["untouched", "cleared", "formatted as number", "formatted as text", "unlocked"] as const;
const FIRST_ROW = 20;
const LAST_ROW = FIRST_ROW + KINDS.length - 1;
const ROW = "H20:L20";
const COLUMN = `A${FIRST_ROW}:A${LAST_ROW}`;
/** Nothing was ever written there. */
const BEYOND = "AZ380:AZ384";

/** Makes one cell of each kind, and a true zero, an empty text and a text below and beside. */
async function prepared(context: Excel.RequestContext, ground: Ground): Promise<void> {
  const sheet = sheetOf(context, ground);
  for (const cells of [
    [0, 1, 2, 3, 4].map((by) => `A${FIRST_ROW + by}`),
    ["H20", "I20", "J20", "K20", "L20"],
  ]) {
    const [, cleared, number, text, unlocked] = cells.map((at) => sheet.getRange(at));
    cleared!.values = [[7]];
    number!.numberFormat = [["0.00"]];
    text!.numberFormat = [["@"]];
    unlocked!.format.protection.locked = false;
  }
  await context.sync();
  for (const at of [`A${FIRST_ROW + 1}`, "I20"]) sheet.getRange(at).clear("Contents");
  sheet.getRange(`A${LAST_ROW + 1}:A${LAST_ROW + 3}`).formulas = [[0], ['=""'], ["x"]];
  await context.sync();
}

/** What the pane heard of one call, cell by cell; nothing where it hears none. */
async function arrivedAt(
  context: Excel.RequestContext,
  ground: Ground,
  at: string,
  range: string,
): Promise<{ cells: unknown[] | undefined; said: string }> {
  const before = ground.heard.length;
  const { values } = await entered(context, ground, { at, formula: `=${NAMESPACE}.VERSION(${range})` });
  const call = ground.heard.slice(before).findLast(({ name }) => name === "VERSION");
  // Entered no longer than it is read: whatever else is computed, the next call heard is the next one entered.
  sheetOf(context, ground).getRange(at).clear("Contents");
  await context.sync();
  return { cells: call && [call.args[0]].flat(2), said: shown(values[0]![0]) };
}

const kindOf = (value: unknown): string =>
  value === "" ? '""' : value === undefined ? "nothing" : JSON.stringify(value);

interface Reading {
  readonly where: string;
  readonly cell: string;
  readonly value: unknown;
}

const ZERO_IS = "a blank arrives as 0";
const NOT_SEEN =
  "as a blank; whether as null or as empty text is not seen, as the functions do not run in this pane";

function verdictOf(readings: readonly Reading[], said: readonly string[], read: string): Found {
  const zeros = readings.filter(({ value }) => value !== null && value !== undefined && value !== "");
  if (zeros.length > 0) {
    const cells = [...new Set(zeros.map(({ cell }) => cell))].join(", ");
    return bad(
      `${ZERO_IS} (${cells}): do not trust levels and volts of our workbooks here, though the price may agree. Update this Excel, or use the desk`,
      read,
    );
  }
  if (said.some((one) => one.includes(BLANKS_AS_ZERO)))
    return bad(`${ZERO_IS}: do not trust levels and volts of our workbooks here`, read);
  if (said.some((one) => one !== RIGSHEET_VERSION))
    return bad("a blank does not arrive as such: the function refuses it", read);
  if (readings.length === 0) return good(NOT_SEEN, read);
  const kinds = new Set(readings.map(({ value }) => (value === "" ? 'empty text ("")' : "null")));
  return kinds.size === 1
    ? good(`as ${[...kinds].join()}, whichever kind of blank`, read)
    : look("partly as null, partly as empty text", read);
}

export const blankInRange: Step = {
  what: "Blank in a range",
  needs: "functions",
  run: async (context, ground) => {
    await prepared(context, ground);
    const readings: Reading[] = [];
    const said: string[] = [];
    const raw: string[] = [];
    const tried = [
      ["a column", "C20", COLUMN, KINDS],
      ["a row", "C21", ROW, KINDS],
      ["beyond what is used", "C22", BEYOND, KINDS.map(() => "untouched")],
    ] as const;
    for (const [where, at, range, cells] of tried) {
      const arrived = await arrivedAt(context, ground, at, range);
      said.push(arrived.said);
      raw.push(`${where}: ${arrived.cells?.map(kindOf).join(" ") ?? arrived.said}`);
      arrived.cells?.forEach((value, index) => readings.push({ where, cell: cells[index]!, value }));
    }
    // A zero that was typed, a formula's empty text and a text must stay what they are.
    const others = await arrivedAt(context, ground, "C23", `A${LAST_ROW + 1}:A${LAST_ROW + 3}`);
    raw.push(`0, ="", x: ${others.cells?.map(kindOf).join(" ") ?? others.said}`);
    if (others.cells && (others.cells[0] !== 0 || others.cells[2] !== "x"))
      return bad("a zero or a text that was typed does not arrive as such", raw.join("; "));
    return verdictOf(readings, said, raw.join("; "));
  },
};

export const blankAlone: Step = {
  what: "Blank alone",
  needs: "functions",
  run: async (context, ground) => {
    const readings: Reading[] = [];
    const said: string[] = [];
    const raw: string[] = [];
    for (const [index, cell] of KINDS.entries()) {
      const arrived = await arrivedAt(context, ground, `C${24 + index}`, `A${FIRST_ROW + index}`);
      said.push(arrived.said);
      raw.push(`${cell}: ${arrived.cells?.map(kindOf).join(" ") ?? arrived.said}`);
      for (const value of arrived.cells ?? []) readings.push({ where: "alone", cell, value });
    }
    return verdictOf(readings, said, raw.join("; "));
  },
};

export const blankRows: Step = {
  what: "Blank row among full ones",
  needs: "spill",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    const latitudes = [drawn(), drawn()];
    sheet.getRange("A30").values = [[latitudes[0]!]];
    sheet.getRange("A32").values = [[latitudes[1]!]];
    sheet.getRange("C30").formulas = [[azimuthFormula("A30:A32")]];
    calculated(context, ground);
    const wanted = latitudes.map(azimuthOf);
    const { values } = await settled(context, sheet.getRange("C30:C32"), ([first, , third]) =>
      [first, third].every((row, index) => sameNumber(row![0], wanted[index])),
    );
    const cells = values.map(([value]) => value);
    const read = `${cells.map(shown).join(", ")}; expected ${wanted[0]}, (blank), ${wanted[1]}`;
    if (typeof cells[1] === "number") return bad("a number stands in a row that is blank", read);
    return sameNumber(cells[0], wanted[0]) && cells[1] === "" && sameNumber(cells[2], wanted[1])
      ? good("it stays blank, and its neighbours are right", read)
      : bad("its neighbours are not right", read);
  },
};
