/** What the columns of a typed quote are: by their heads, else by what stands below them. */
import { isBlank, textOf, type ImportedLine } from "../../imported/table";
import type { DecimalSign } from "../../prices/listNumbers";
import { figureOf, type Figure } from "./quoteNumbers";
import { roleOf, UNIT, type Role } from "./quoteWords";

export interface QuoteColumns {
  readonly roles: readonly (Role | undefined)[];
  /** The head's line; undefined for a list without. */
  readonly head?: ImportedLine;
}

/** A quote begins with an address and a few words. */
const HEAD_WITHIN = 60;
/** Products of figures that were rounded to cents before. */
export const ROUNDING = 0.0151;
const SAMPLE = 200;

export const comesTo = (quantity: number, each: number, sum: number): boolean =>
  Math.abs(quantity * each - sum) <= ROUNDING;

const isFigure = (found: ReturnType<typeof figureOf>): found is Figure => typeof found === "object";

/** @returns undefined where its cells make no table */
export function quoteColumns(
  lines: readonly ImportedLine[],
  style: DecimalSign | undefined,
): QuoteColumns | undefined {
  const filled = lines.filter((line) => !isBlank(line));
  const head = filled.slice(0, HEAD_WITHIN).find(isHead);
  const body = (head ? filled.slice(filled.indexOf(head) + 1) : filled).slice(0, SAMPLE);
  const width = Math.max(0, ...body.map(({ cells }) => cells.length), head?.cells.length ?? 0);
  if (width < 2) return undefined;
  const figures = body.map(({ cells }) =>
    Array.from({ length: width }, (_, column) => {
      const found = figureOf(cells[column], style);
      return isFigure(found) ? found : undefined;
    }),
  );
  const roles: (Role | undefined)[] = Array.from({ length: width }, (_, column) =>
    head ? roleOf(textOf(head.cells[column])) : undefined,
  );
  const columns = roles.map((_, column) => column);
  const count = (column: number): number => figures.filter((row) => row[column]).length;
  const words = (column: number): number =>
    body.filter(
      ({ cells }) =>
        /\p{L}{2}/u.test(textOf(cells[column])) && !UNIT.test(textOf(cells[column]).toLowerCase()),
    ).length;
  const units = (column: number): number =>
    body.filter(({ cells }) => UNIT.test(textOf(cells[column]).toLowerCase())).length;
  // "Item" above running numbers beside "Description": of two heads for the part the one above more words.
  const parts = roles.flatMap((role, column) => (role === "part" ? [column] : []));
  const wordiest = [...parts].sort((a, b) => words(b) - words(a))[0];
  for (const column of parts)
    if (column !== wordiest) roles[column] = words(column) === 0 ? "position" : "other";
  once(roles);
  const best = (score: (column: number) => number): number | undefined => {
    const [first] = columns
      .filter((column) => roles[column] === undefined)
      .map((column) => [column, score(column)] as const)
      .filter(([, points]) => points > 0)
      .sort(([, a], [, b]) => b - a);
    return first?.[0];
  };
  // "Item" above running numbers, "Position" above words.
  const part = roles.indexOf("part");
  const numbered = roles.indexOf("position");
  if (part >= 0 && words(part) === 0) roles[part] = count(part) > 0 ? "position" : undefined;
  else if (part < 0 && numbered >= 0 && words(numbered) > body.length / 3) roles[numbered] = "part";
  if (!roles.includes("part")) {
    const found = best(words);
    if (found !== undefined) roles[found] = "part";
  }
  if (!roles.includes("unit")) {
    const found = best((column) => (units(column) > body.length / 4 ? units(column) : 0));
    if (found !== undefined) roles[found] = "unit";
  }
  // "No." above other than running numbers: how many.
  const numbers = roles.indexOf("position");
  if (!roles.includes("quantity") && count(numbers) > 0 && !isRunning(figures, numbers))
    roles[numbers] = "quantity";
  byArithmetic(roles, figures, head !== undefined);
  const isTable = (["quantity", "each", "sum"] as const).some((role) => roles.includes(role));
  return roles.includes("part") && isTable ? { roles, ...(head && { head }) } : undefined;
}

function isHead({ cells }: ImportedLine): boolean {
  const texts = cells.map((cell) => textOf(cell)).filter((text) => text !== "");
  const roles = new Set(texts.map(roleOf).filter((role) => role !== undefined));
  return (
    roles.size >= 2 && roles.size >= texts.length / 2 && !texts.some((text) => /\d[.,]\d\d$|^\d+$/.test(text))
  );
}

export const isHeadAgain = (line: ImportedLine): boolean => isHead(line);

/** Of two columns with one head the later sum and the earlier of all else is meant. */
function once(roles: (Role | undefined)[]): void {
  // "Unit cost" and "Cost": the one behind is the sum.
  const prices = roles.flatMap((one, column) => (one === "each" ? [column] : []));
  if (prices.length > 1 && !roles.includes("sum")) roles[prices.at(-1)!] = "sum";
  for (const role of ["quantity", "unit", "each", "sum"] as const) {
    const places = roles.flatMap((one, column) => (one === role ? [column] : []));
    const kept = role === "sum" ? places.at(-1) : places[0];
    for (const column of places)
      if (column !== kept) roles[column] = role === "sum" && !roles.includes("each") ? "each" : "other";
  }
}

type Row = readonly (Figure | undefined)[];

/** Of all ways to call the columns of figures quantity, price and sum the one by which most lines come out. */
function byArithmetic(roles: (Role | undefined)[], rows: readonly Row[], hasHead: boolean): void {
  const MONEY = ["quantity", "each", "sum"] as const;
  const free = roles.flatMap((role, column) =>
    (role === undefined || (MONEY as readonly string[]).includes(role)) && rows.some((row) => row[column])
      ? [column]
      : [],
  );
  const fits = (q: number, e: number, s: number): number =>
    rows.filter((row) => {
      const [quantity, each, sum] = [row[q], row[e], row[s]];
      return quantity && each && sum && comesTo(quantity.value, each.value, sum.value);
    }).length;
  const [q, e, s] = MONEY.map((role) => roles.indexOf(role)) as [number, number, number];
  let most = q >= 0 && e >= 0 && s >= 0 ? fits(q, e, s) + 0.5 : 0;
  let chosen: readonly [number, number, number] | undefined;
  const isKept = (column: number, role: Role): boolean => {
    const own = roles[column];
    return own === undefined || own === role;
  };
  for (const quantity of free)
    for (const each of free)
      for (const sum of free) {
        if (quantity === each || quantity === sum || each === sum) continue;
        const asNamed = [isKept(quantity, "quantity"), isKept(each, "each"), isKept(sum, "sum")].filter(
          Boolean,
        ).length;
        const inOrder = Number(sum > each) + Number(quantity < each);
        const many = fits(quantity, each, sum);
        const score = many + (asNamed + inOrder / 4 + cents(rows, each) / 2 - cents(rows, quantity) / 2) / 20;
        // A head goes before one line that comes out by chance.
        if (many >= (hasHead && asNamed < 3 ? 2 : 1) && score > most) {
          most = score;
          chosen = [quantity, each, sum];
        }
      }
  if (chosen) {
    for (const [index, role] of roles.entries())
      if ((MONEY as readonly (Role | undefined)[]).includes(role)) roles[index] = "other";
    for (const [index, column] of chosen.entries()) roles[column] = MONEY[index];
    return;
  }
  const open = free.filter((column) => roles[column] === undefined);
  if (hasHead && s >= 0) return;
  // Without a line that comes out: the last column with figures is the sum, a column of counts the quantity.
  const last = open.filter((column) => cents(rows, column) > 0).at(-1) ?? open.at(-1);
  if (s < 0 && e < 0 && last !== undefined) roles[last] = "sum";
  const counts = open.find(
    (column) => column !== last && cents(rows, column) === 0 && !isRunning(rows, column),
  );
  if (q < 0 && counts !== undefined) roles[counts] = "quantity";
  if (e < 0) {
    const price = open.find(
      (column) => roles[column] === undefined && column !== last && cents(rows, column) > 0,
    );
    if (price !== undefined) roles[price] = "each";
  }
}

const cents = (rows: readonly Row[], column: number): number => {
  const filled = rows.filter((row) => row[column]);
  return filled.length === 0 ? 0 : filled.filter((row) => row[column]!.isMoney).length / filled.length;
};

/** 1, 2, 3 … */
const isRunning = (rows: readonly Row[], column: number): boolean => {
  const values = rows.flatMap((row) => row[column]?.value ?? []);
  return values.length > 2 && values.every((value, index) => index === 0 || value > values[index - 1]!);
};
