/**
 * Whether the readings of a job can be what they are taken for, asked before any cause is looked for: the likeliest
 * cause of levels in dBmV would still be a wrong one.
 *
 * Accuracy: a doubt is a question and no cause. What may be a fault is left to the ranking.
 */
import type { DecibelMicrovolts, Decibels, Volts } from "../quantity";
import { NO_VOLTS } from "./causes";
import { exchangeOf } from "./exchangedColumns";
import { FEWEST, mistakenUnit, MOST_LEVEL, shown, slipOf } from "./mistakenUnit";
import {
  ASK,
  columnInWords,
  levelsOf,
  type Doubt,
  type Level,
  type TypedHead,
  type TypedOutlet,
} from "./typedOutlet";
import type { TypedReading } from "./typedReading";

export interface Plausible {
  readonly doubts: readonly Doubt[];
  /** The levels as a whole are not what they should be, so no cause can be told from them. */
  readonly refused: boolean;
  /** What is left for the ranking: doubted readings are blank. */
  readonly outlets: readonly TypedOutlet[];
  readonly heads: readonly TypedHead[];
}

/** Lost or gained at one end alone: more than any usual fault. */
const FAR_DB: Decibels = 20;
/** As it should be, at the other end. */
const FINE_DB: Decibels = 6;
/** More than another port or a stronger head unit gives. */
const MUCH_MORE_DB: Decibels = 15;
/** No supply on such a cable is above it; what is may be mains. */
const MOST_VOLTS: Volts = 60;
const LEAST_LEVEL: DecibelMicrovolts = -20;
const HALF = 0.5;
const ALL = "all readings";

const BLANK: TypedReading = { kind: "blank" };

export function plausible(given: readonly TypedOutlet[], givenHeads: readonly TypedHead[]): Plausible {
  const doubts: Doubt[] = [];
  const refuse = (): Plausible => ({ doubts, refused: true, outlets: [], heads: [] });

  const exchanged = given.flatMap((outlet) => exchangeOf(outlet) ?? []);
  const both = given.filter((outlet) => levelsOf([outlet]).length > 1).length;
  if (exchanged.length >= FEWEST - 1 && exchanged.length > HALF * both) {
    doubts.push({
      where: ALL,
      message: `The columns seem to be swapped: at ${exchanged.length} outlets the ${exchanged[0]!.columns} fit the prediction only in one another's place.`,
      next: "Enter lowest frequency, highest frequency and volts each in its own column. Until then no cause is told from them.",
    });
    return refuse();
  }
  const levels = levelsOf(given);
  const ends = given[0]?.frequencies.map((_, column) => levels.filter((one) => one.column === column)) ?? [];
  const whole =
    mistakenUnit(levels, ALL, "job") ??
    typedUnit(given, ALL) ??
    ends
      .map((end) => mistakenUnit(end, `all at the ${columnInWords(given[0]!, end[0]?.column ?? 0)}`, "part"))
      .find((doubt) => doubt !== undefined);
  if (whole) {
    doubts.push(whole);
    return refuse();
  }

  let outlets: readonly TypedOutlet[] = given;
  const drop = (name: string, change: (outlet: TypedOutlet) => TypedOutlet): void => {
    outlets = outlets.map((one) => (one.outlet === name ? change(one) : one));
  };
  const dropLevels = (one: TypedOutlet): TypedOutlet => ({ ...one, levels: one.levels.map(() => BLANK) });

  for (const { outlet, columns } of exchanged) {
    doubts.push({
      where: outlet.outlet,
      message: `${outlet.outlet}: ${columns} seem to be swapped: they fit the prediction in one another's place.`,
      next: ASK,
    });
    drop(outlet.outlet, (one) => ({
      ...dropLevels(one),
      volts: columns.includes("volts") ? BLANK : one.volts,
    }));
  }
  const groups = [
    ...groupedBy(outlets, ({ head }) => head).map(([name, members]) => ({
      name,
      members,
      of: "part" as const,
    })),
    ...outlets.map((one) => ({ name: one.outlet, members: [one], of: "outlet" as const })),
  ];
  // Of two with one name the first.
  const placeOf = new Map(outlets.map(({ outlet }, place) => [outlet, place] as const).reverse());
  for (const { name, members, of } of groups) {
    const now = members.map(({ outlet }) => outlets[placeOf.get(outlet)!]!);
    const doubt = mistakenUnit(levelsOf(now), name, of) ?? typedUnit(now, name);
    if (!doubt) continue;
    doubts.push(doubt);
    for (const { outlet } of members) drop(outlet, dropLevels);
  }
  for (const one of outlets) {
    for (const { column, message } of oddLevels(one)) {
      doubts.push({ where: one.outlet, message, next: ASK });
      drop(one.outlet, (now) => ({
        ...now,
        levels: now.levels.map((level, at) => (at === column ? BLANK : level)),
      }));
    }
  }
  const volts = doubtedVolts([...outlets, ...givenHeads.map((head) => ({ ...head, outlet: head.head }))]);
  doubts.push(...volts.doubts);
  outlets = outlets.map((one) => (volts.names.has(one.outlet) ? { ...one, volts: BLANK } : one));
  let heads = givenHeads.map((one) => (volts.names.has(one.head) ? { ...one, volts: BLANK } : one));
  for (const { head, message } of contradicted(heads, outlets)) {
    doubts.push({ where: head, message, next: ASK });
    heads = heads.map((one) => (one.head === head ? { ...one, volts: BLANK } : one));
  }
  return { doubts: [...doubts, ...unreadCells(given, givenHeads)], refused: false, outlets, heads };
}

/** A unit that was typed beside the number and is not the cell's. */
function typedUnit(outlets: readonly TypedOutlet[], where: string): Doubt | undefined {
  const typed = outlets.flatMap(({ levels }) => levels.filter(({ kind }) => kind === "value"));
  const foreign = typed.flatMap((level) =>
    level.kind === "value" && level.unit !== undefined && !["dBµV", "dB"].includes(level.unit)
      ? [level.unit]
      : [],
  );
  if (foreign.length === 0 || foreign.length < HALF * typed.length) return undefined;
  const unit = foreign[0] === "%" ? "percent" : foreign[0]!;
  return {
    where,
    message: `These readings do not look like dBµV: they were typed in ${unit}.`,
    next: "Enter levels in dBµV. Until then no cause is told from them.",
  };
}

/** Single levels that no fault explains, with what they may have been. */
function oddLevels(outlet: TypedOutlet): { column: number; message: string }[] {
  const levels = levelsOf([outlet]);
  const offOf = ({ value, predicted }: Level): Decibels => value - predicted;
  return levels.flatMap((level) => {
    const { column, value, predicted } = level;
    const off = offOf(level);
    const others = levels.filter((one) => one !== level);
    const alone = others.length > 0 && others.every((one) => Math.abs(offOf(one)) <= FINE_DB);
    const typed = outlet.levels[column]!;
    const foreign =
      typed.kind === "value" && typed.unit !== undefined && !["dBµV", "dB"].includes(typed.unit);
    const odd =
      foreign ||
      value === 0 ||
      value > MOST_LEVEL ||
      value < LEAST_LEVEL ||
      off > MUCH_MORE_DB ||
      // At the low end alone: a cable or a splitter loses more at the high end.
      (off < -FAR_DB && alone && (column === 0 || slipOf(level) !== undefined));
    if (!odd) return [];
    const slip = slipOf(level);
    const why = foreign
      ? `was typed in ${(typed as { unit: string }).unit}`
      : value === 0
        ? "is no level: enter “no signal” if the meter found none, or leave it blank"
        : slip
          ? `where ${shown(predicted)} is predicted: ${slip.what.replace("they are", "it is")}`
          : `where ${shown(predicted)} is predicted: a digit or the unit may be wrong`;
    return [
      { column, message: `${outlet.outlet}, ${columnInWords(outlet, column)}: ${shown(value)} ${why}.` },
    ];
  });
}

interface WithVolts {
  readonly outlet: string;
  readonly volts: TypedReading;
  readonly voltsPredicted: Volts | null;
}

function doubtedVolts(places: readonly WithVolts[]): { doubts: Doubt[]; names: Set<string> } {
  const read = places.flatMap(({ outlet, volts, voltsPredicted }) =>
    volts.kind === "value" ? [{ outlet, value: volts.value, unit: volts.unit, due: voltsPredicted }] : [],
  );
  const odd = read.filter(
    ({ value, unit }) =>
      value < 0 || value > MOST_VOLTS || (unit !== undefined && unit.toUpperCase() !== "V"),
  );
  const doubts: Doubt[] = [];
  const mostly = odd.length >= FEWEST - 1 && odd.length > HALF * read.length;
  if (mostly) {
    const { value } = odd[0]!;
    const why =
      value < 0 ? "a minus sign means that the probes were the other way round" : "they may be millivolts";
    doubts.push({
      where: "all volts",
      message: `These volts are not what a supply gives: ${shown(value)} V, for instance; ${why}.`,
      next: "Enter volts, inner conductor against screen. Until then they are left out.",
    });
  } else {
    for (const { outlet, value, unit } of odd) {
      const mains = value > MOST_VOLTS && value < 500 && unit?.toLowerCase() !== "mv";
      doubts.push({
        where: outlet,
        message: `${outlet}: ${shown(value)} ${unit ?? "V"} cannot come from a supply on this cable${mains ? ", so it is a slip or mains on the cable: keep off it until a licensed electrician has made sure" : ""}.`,
        next: ASK,
      });
    }
  }
  return { doubts, names: new Set(odd.map(({ outlet }) => outlet)) };
}

/** A head unit without volts gives no levels. */
function contradicted(
  heads: readonly TypedHead[],
  outlets: readonly TypedOutlet[],
): { head: string; message: string }[] {
  return heads.flatMap(({ head, volts }) => {
    if (volts.kind !== "no signal" && !(volts.kind === "value" && volts.value <= NO_VOLTS)) return [];
    const levels = levelsOf(outlets.filter((one) => one.head === head));
    const fine = levels.filter(({ value, predicted }) => Math.abs(value - predicted) <= FINE_DB);
    if (levels.length < 2 || fine.length <= HALF * levels.length) return [];
    return [
      {
        head,
        message: `${head}: no volts at the head unit, yet its outlets have their levels. Both cannot be.`,
      },
    ];
  });
}

/** What stands in the cells and is no reading, in one line. */
function unreadCells(outlets: readonly TypedOutlet[], heads: readonly TypedHead[]): Doubt[] {
  const cells = [
    ...outlets.flatMap((one) => [
      ...one.levels.map((cell, column) => ({ place: `${one.outlet}, ${columnInWords(one, column)}`, cell })),
      { place: `${one.outlet}, volts`, cell: one.volts },
    ]),
    ...heads.map(({ head, volts }) => ({ place: `${head}, volts`, cell: volts })),
  ].flatMap(({ place, cell }) => (cell.kind === "unread" ? [`${place} (“${cell.text}”)`] : []));
  if (cells.length === 0) return [];
  const listed = cells.slice(0, 6).join("; ");
  return [
    {
      where: "",
      message: `Not a reading, and taken as not measured: ${listed}${cells.length > 6 ? `; and ${cells.length - 6} more` : ""}.`,
      next: "Enter a number, “no signal” where the meter found none, or leave the cell blank.",
    },
  ];
}

function groupedBy<T>(items: readonly T[], keyOf: (item: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups];
}
