/** Holds the sums that a survey gives of itself against its lines: a sum that fits neither tells of a lost line. */
import { textOf, type ImportedLine } from "../imported/table";
import { OUTLETS_SAID } from "./lineKinds";
import type { LengthRead } from "./lengthCell";
import { readLength } from "./lengthCell";
import type { ColumnReader } from "./columnReader";
import { inWords } from "./survey";

/** A run as it was read, or one that was not. */
export interface CountedLine {
  readonly length: LengthRead | undefined;
  readonly floor: string | undefined;
  readonly quantity: number;
  /** It was left out, by its own words: a sum may have it or not. */
  readonly struck?: boolean;
}

/** How far an estimate may be off; common practice, no source. */
const ESTIMATE_SHARE = 0.15;
/** Of a sum in another unit than the lines: each was rounded. */
const ROUNDED_EACH = 0.05;

export type Checked =
  /** A sentence where no sum fits. */
  | { readonly trouble: string }
  /** What it was held against, in words; empty where it holds nothing that can be held. */
  | { readonly note: string };

export class Totals {
  /** Since the beginning, and since the last sum. */
  private all: CountedLine[] = [];
  private group: CountedLine[] = [];

  add(line: CountedLine): void {
    this.all.push(line);
    this.group.push(line);
  }

  check(
    line: ImportedLine,
    name: string,
    columns: ReadonlyMap<string, number>,
    run: ColumnReader,
    unit: string,
  ): Checked {
    const groups = [this.group, this.all, this.ofFloor(name)].filter((group) => group.length > 0);
    this.group = [];
    const { counts, sums } = saidIn(line, columns, run, sumOf(this.all));
    const wrong: string[] = [];
    const held: string[] = [];
    for (const said of counts) {
      if (groups.some((group) => countsOf(group).includes(said))) held.push(inWords(said, "outlet"));
      else wrong.push(inWords(said, "outlet"));
    }
    // A run measured in two parts has a sum below each.
    if (sums.length > 1 && columns.has("further"))
      sums.splice(0, sums.length, {
        value: sums.reduce((total, { value }) => total + value, 0),
        decimals: Math.max(...sums.map(({ decimals }) => decimals)),
      });
    let isNear = false;
    let unknown = false;
    for (const { value, decimals } of sums) {
      const fits = groups.map((group) => fit(group, value, decimals));
      if (fits.includes("exact")) held.push(`${round(value)} ${unit}`);
      else if (fits.includes("near")) {
        isNear = true;
        held.push(`${round(value)} ${unit}`);
      } else if (fits.includes("unknown")) unknown = true;
      else wrong.push(`${round(value)} ${unit}`);
    }
    const inTotal = (lines: readonly CountedLine[]): string => {
      const sum = sumOf(lines);
      return `${inWords(lines.length, "outlet")}${sum === undefined ? "" : ` with ${round(sum)} ${unit}`}`;
    };
    const since = groups[0] ?? [];
    const found = `${inTotal(this.all)}${since.length < this.all.length ? `, ${inTotal(since)} of them since the last sum` : ""}`;
    if (wrong.length > 0)
      return {
        trouble: `“${name}” says ${wrong.join(" and ")}; the lines above it are ${found}. Look whether a line is missing.`,
      };
    if (unknown)
      return { note: `“${name}” can't be held against its lines while a run among them is not known.` };
    return {
      note: isNear
        ? `“${name}” (${held.join(", ")}) agrees with its lines (${found}) as nearly as their ranges and estimates let it.`
        : "",
    };
  }

  /** A sum may name its floor and stand at the end, with those of all floors. */
  private ofFloor(name: string): CountedLine[] {
    const words = name.toLowerCase();
    const floors = [...new Set(this.all.map(({ floor }) => floor))];
    const named = floors.filter((floor) => floor !== undefined && words.includes(floor.toLowerCase()));
    const longest = named.sort((a, b) => b!.length - a!.length)[0];
    return longest === undefined ? [] : this.all.filter(({ floor }) => floor === longest);
  }
}

interface Said {
  readonly counts: number[];
  readonly sums: { readonly value: number; readonly decimals: number }[];
}

/** The counts and the sums of lengths that a line of totals gives, wherever they stand. */
function saidIn(
  { cells }: ImportedLine,
  columns: ReadonlyMap<string, number>,
  run: ColumnReader,
  about: number | undefined,
): Said {
  const said: Said = { counts: [], sums: [] };
  const counting = new Set(
    ["outlet", "room", "quantity", "outlets", "receiver"].map((key) => columns.get(key)),
  );
  for (const [index, cell] of cells.entries()) {
    const text = textOf(cell);
    if (text === "") continue;
    const inRuns = index === columns.get("run") || index === columns.get("further");
    const count = OUTLETS_SAID.exec(text);
    if (count && !(inRuns && /^\d+$/.test(text)) && (counting.has(index) || /\D/.test(text))) {
      said.counts.push(Number(count[1] ?? count[2]));
      continue;
    }
    if (inRuns) {
      const reading = readSum(cell, text, run, about);
      if (reading !== undefined) said.sums.push({ value: reading, decimals: decimalsOf(text) });
      continue;
    }
    for (const part of text.matchAll(
      /(\d{1,5}) (?:outlets?|points?|sockets?|dosen|prises?|prese|tomas?)\b/gi,
    ))
      said.counts.push(Number(part[1]));
    const length = /(?:^|[\s:=])(\d[\d.,' ]*) ?(m|mtrs?|metres?|meters?|ft|feet)\b\.?/i.exec(text);
    const value = length && readSum(`${length[1]!.trim()} ${length[2]!}`, length[0], run, about);
    if (value) said.sums.push({ value, decimals: decimalsOf(length[1]!) });
    if (count && index === cells.length - 1 && !counting.has(index))
      said.counts.push(Number(count[1] ?? count[2]));
  }
  return said;
}

/** A sum goes beyond what one run may be. */
function readSum(
  cell: ImportedLine["cells"][number],
  text: string,
  run: ColumnReader,
  about: number | undefined,
): number | undefined {
  if (typeof cell === "object") return run.convert(cell.number);
  const reading = readLength(cell, run);
  if (!("refused" in reading)) {
    const value = reading.value?.run;
    const grouped = groupedIn(cell, run);
    // "2,700" is no run of 2700 m, and can be the sum of many.
    const isGrouped =
      grouped !== undefined &&
      value !== undefined &&
      about !== undefined &&
      Math.abs(grouped - about) < Math.abs(value - about);
    return isGrouped ? grouped : value;
  }
  const [, digits] = /(\d[\d.,' ]*\d|\d)/.exec(text) ?? [];
  if (digits === undefined) return undefined;
  const plain = digits.replace(/[' ]/g, "");
  const decimal = /[.,]\d{1,2}$/.exec(plain)?.[0] ?? "";
  const value = Number(
    plain.slice(0, plain.length - decimal.length).replace(/[.,]/g, "") + decimal.replace(",", "."),
  );
  return Number.isFinite(value) ? run.convert(value) : undefined;
}

function groupedIn(cell: string, run: ColumnReader): number | undefined {
  const [, before, behind, unit] = /^(\d{1,3})[.,](\d{3})( ?m)?$/.exec(cell.trim()) ?? [];
  if (before === undefined || behind === undefined || (unit !== undefined && run.unit !== "m"))
    return undefined;
  return run.convert(Number(before + behind));
}

const decimalsOf = (text: string): number => /[.,](\d{1,2})(?!\d)/.exec(text)?.[1]?.length ?? 0;

const countsOf = (group: readonly CountedLine[]): number[] => {
  const live = group.filter(({ struck }) => !struck);
  const receivers = live.reduce((sum, { quantity }) => sum + quantity, 0);
  return [live.length, group.length, receivers];
};

function fit(
  group: readonly CountedLine[],
  said: number,
  decimals: number,
): "exact" | "near" | "unknown" | "no" {
  const variants = [group.filter(({ struck }) => !struck), group];
  const tolerance = 0.5 * 10 ** -decimals + 0.001;
  let isNear = false;
  for (const lines of variants) {
    const sum = sumOf(lines);
    if (sum === undefined) continue;
    if (Math.abs(sum - said) <= Math.max(tolerance, 0.051)) return "exact";
    const doubt = lines.reduce((total, { length }) => total + doubtOf(length!), 0);
    const counted = lines.some(({ length }) => doubtOf(length!) > 0);
    if (counted && Math.abs(sum - said) <= doubt + tolerance + lines.length * ROUNDED_EACH) isNear = true;
  }
  if (isNear) return "near";
  return variants.every((lines) => sumOf(lines) === undefined) ? "unknown" : "no";
}

const doubtOf = ({ run, shortest, longest, approximate }: LengthRead): number =>
  Math.max(
    approximate ? run * ESTIMATE_SHARE : 0,
    longest === undefined ? 0 : longest - run,
    run - (shortest ?? run),
  );

const sumOf = (lines: readonly CountedLine[]): number | undefined =>
  lines.some(({ length }) => length === undefined)
    ? undefined
    : lines.reduce((sum, { length }) => sum + length!.run, 0);

const round = (value: number): string => String(Math.round(value * 1000) / 1000);
