/**
 * What some of the add-in's functions give, worked out from what the sheets say they do (About!A29, Site!F65, the
 * prompts of Parts, headings), never from their code; on the untouched demonstration they give its saved results.
 */
import { Fault, type Matrix, type Value, round } from "./formulas";
import type { Call } from "./recalculate";

const is = (value: Value): value is number => typeof value === "number";
const row = (matrix: Matrix | undefined, r: number): Value[] => matrix?.[matrix.length === 1 ? 0 : r] ?? [];

/** Rows of the parts list whose figures in the given columns are all blank: read as 0, they count as given. */
function blankParts(table: Matrix | undefined, columns: number[]): Set<string> {
  const found = new Set<string>();
  for (const part of table ?? [])
    if (typeof part[0] === "string" && part[0] !== "" && columns.every((c) => part[c] === null))
      found.add(part[0].toLowerCase());
  return found;
}

/** Names in the first argument that use a part with blanks lose all: their numbers become 0. */
function zeroed(call: Call, blank: Set<string>): Matrix {
  return call.saved.map((values, r) =>
    values.map((value, c) => {
      const names = row(call.args[0], r);
      const name = names[names.length === 1 ? 0 : c] ?? null;
      return is(value) && typeof name === "string" && blank.has(name.toLowerCase()) ? 0 : value;
    }),
  );
}

/** Sums from the head unit down to each branch, of each column of figures by itself. */
function treeSums(call: Call): Matrix {
  const [ids, from, sums, heads] = call.args;
  const key = (value: Value): string => (typeof value === "string" ? value.toLowerCase() : "");
  const names = (ids ?? []).map((r) => key(r[0] ?? null));
  const roots = new Set((heads ?? []).map((r) => key(r[0] ?? null)).filter((name) => name !== ""));
  const sum = (r: number, c: number, deep: number): Value => {
    const own = sums?.[r]?.[c] ?? null;
    if (own instanceof Fault) return own;
    if (!is(own) || deep > names.length) return call.saved[r]?.[c] ?? null;
    const parent = key(from?.[r]?.[0] ?? null);
    if (roots.has(parent)) return own;
    const up = names.indexOf(parent);
    if (up < 0) return call.saved[r]?.[c] ?? null;
    const above = sum(up, c, deep + 1);
    return is(above) ? own + above : above;
  };
  return call.saved.map((values, r) =>
    values.map((value, c) => (names[r] === "" || names[r] === undefined ? value : sum(r, c, 0))),
  );
}

/** low below the first limit, high above the second, else ok. */
function window(call: Call): Matrix {
  return call.saved.map((values, r) =>
    values.map((value, c) => {
      const measured = row(call.args[0], r)[c] ?? null;
      const low = row(call.args[1], r)[0] ?? null;
      const high = row(call.args[2], r)[0] ?? null;
      if (!is(measured) || !is(low) || !is(high)) return value;
      return measured < low - 1e-9 ? "low" : measured > high + 1e-9 ? "high" : "ok";
    }),
  );
}

/** Volts at the end: U - I·R for amperes; for watts the larger root of U·V - V² = P·R. */
function loadVolts(call: Call): Matrix {
  return call.saved.map((values, r) =>
    values.map((value) => {
      const [volts, draw, ohms, kind] = call.args.map((arg) => row(arg, r)[0] ?? null);
      if (!is(volts ?? null) || !is(draw ?? null) || !is(ohms ?? null)) return value;
      const [u, load, path] = [Number(volts), Number(draw), Number(ohms)];
      if (kind !== "W") return u - load * path;
      const square = u * u - 4 * load * path;
      return square < 0 ? value : (u + Math.sqrt(square)) / 2;
    }),
  );
}

/** One exact sum for each argument. */
function addMoney(call: Call): Matrix {
  return call.saved.map((values, r) =>
    values.map((value) => {
      const numbers = (call.args[r] ?? []).flat();
      if (call.args[r] === undefined || numbers.some((n) => n instanceof Fault)) return value;
      return numbers.filter(is).reduce((sum, n) => sum + n, 0);
    }),
  );
}

/** Price = cost / (1 - margin). */
function sellPrice(call: Call): Matrix {
  const [cost, margin] = call.args.map((arg) => row(arg, 0)[0] ?? null);
  return is(cost ?? null) && is(margin ?? null) ? [[Number(cost) / (1 - Number(margin))]] : call.saved;
}

/** Each sum, times its factor, rounded to the digits; ties away from zero or to even, as Site says. */
function roundMoney(call: Call): Matrix {
  return call.saved.map((values, r) =>
    values.map((value) => {
      const [sum, digits, rule, times] = call.args.map((arg) => row(arg, r)[0] ?? null);
      if (!is(sum ?? null) || !is(digits ?? null) || !is(times ?? null)) return value;
      const exact = Number(sum) * Number(times);
      const away = round(exact, Number(digits));
      const cents = Number((Math.abs(exact) * 10 ** Number(digits)).toPrecision(15));
      const tie = rule === "half even" && cents % 1 === 0.5 && Math.floor(cents) % 2 === 0;
      return tie ? (Math.sign(exact) * Math.floor(cents)) / 10 ** Number(digits) : away;
    }),
  );
}

/** Functions that run on what natives give: what they say of other figures. All others keep their results. */
export function byMeaning(call: Call): Matrix | undefined {
  if (call.name === "TREELOSS") return treeSums(call);
  if (call.name === "WINDOW") return window(call);
  if (call.name === "LOADVOLTS") return loadVolts(call);
  if (call.name === "ADDMONEY") return addMoney(call);
  if (call.name === "SELLPRICE") return sellPrice(call);
  return call.name === "ROUNDMONEY" ? roundMoney(call) : undefined;
}

/** Where an old build of Excel hands over 0 for a blank. */
export function blanksAsZero(call: Call): Matrix | undefined {
  if (call.name === "CABLELOSS") return zeroed(call, blankParts(call.args[5], [2, 3, 4]));
  if (call.name === "LOOPOHMS") return zeroed(call, blankParts(call.args[4], [5]));
  // The workbook's own look at it came later than these cases; its words are of the function's help.
  if (call.name === "VERSION") return [[`${String(call.saved[0]![0])}, blanks read as 0`]];
  return byMeaning(call);
}
