/**
 * Plays a job that was made from outside through the functions of a distribution: what must be said is said at its row
 * with its words, nothing else is said, and the numbers are right.
 */
import type { Matrix } from "../../src/functions/core/cells";
import { answersOf, tablesOf, type PartRows } from "./distributionTables";
import { LABOUR_RATES, type Inputs } from "./jobsAsBuilt";

export interface OutsiderCase {
  readonly id: string;
  readonly why: string;
  readonly inputs: Inputs;
  readonly parts?: PartRows;
  readonly fails?: readonly {
    readonly rows: readonly string[];
    readonly about: string;
    readonly words: readonly string[];
  }[];
  readonly passes?: readonly string[];
  readonly numbers?: readonly {
    readonly what: string;
    readonly value: number | string;
    readonly tolerance: number;
  }[];
}

/** What a sentence is about, in the words of the cases. The first that fits counts. */
const ABOUT: readonly (readonly [string, RegExp])[] = [
  ["below", /whose own row has a fault\.$|has a fault in its own row/],
  ["loop", /in a loop|fed from itself/],
  ["name", /^The name|stands in two rows/],
  ["slot", /the slot|below|horizon/],
  ["dish", /the dish|dish size is|off the focus/],
  ["feeder", /feeder|cables? comes? to/],
  ["port", /\bport \d|no port left|through port of .* which has none|is on the through port|: port is/],
  ["fed from", /is fed from/],
  ["length", /(?:^|: )(run|length|shortest run|longest run) is/],
  ["user bands", /user bands?|User band/],
  ["carrier to noise", /carrier to noise/],
  ["level", /dBµV .*it must be from .*(run|attenuator)/],
  ["slope", /differs by/],
  ["amplifier output", /puts out/],
  ["switch input", /^An input of/],
  ["end resistor", /^The end resistor/],
  ["open through port", /through port of .* is open/],
  ["one connector", /receivers and \d+ connector/],
  ["commands", /command/],
  ["volts on a receiver", /stand on the receiver/],
  ["volts at a feed", /^The feed for/],
  ["supply", /feeds nothing|fed backwards|the supply/],
  ["current", /carries .* A;/],
  ["volts at an amplifier", /a supply behind the amplifier/],
  ["volts at a head unit", /gets .* V|operating point/],
  ["part", /names the/],
];

export interface Sentence {
  readonly row: string;
  readonly about: string;
  readonly text: string;
}

const SENTENCES = [
  ["OUTLETCHECKS", "rooms", "outlet", 0],
  ["DEVICECHECKS", "devices", "device", 0],
  ["HEADCHECKS", "heads", "head", 0],
  ["DISHCHECKS", "dishes", "dish", 0],
  ["FEEDERCHECKS", "feeders", "to", 0],
] as const;

/** What is wrong stands before what to do; only the first is about something. */
const PIECES = /(?<=[.)]) (?=["A-Z0-9])/;

export function saidIn(tables: readonly Matrix[], inputs: Inputs): Sentence[] {
  return SENTENCES.flatMap(([name, list, key]) => {
    const rows = inputs[list] as readonly Readonly<Record<string, unknown>>[];
    return answersOf(name, tables).flatMap((cells, index): Sentence[] => {
      const last = cells.at(-1);
      const isFault = typeof last === "object" && last !== null;
      const whole = isFault ? last.message : String(last ?? "");
      if (whole === "") return [];
      const row = isFault ? "Site" : String(rows[index]![key]);
      const abouts = whole
        .split(PIECES)
        .flatMap((piece) => ABOUT.find(([, words]) => words.test(piece))?.[0] ?? []);
      return [...new Set(abouts.length > 0 ? abouts : ["other"])].map((about) => ({
        row,
        about,
        text: whole,
      }));
    });
  });
}

export interface Played {
  readonly missing: readonly string[];
  readonly extra: readonly string[];
  readonly wrong: readonly string[];
}

export function play({ inputs, parts, fails = [], passes = [], numbers = [] }: OutsiderCase): Played {
  const tables = tablesOf(inputs, parts);
  const said = saidIn(tables, inputs);
  const namesOf = (row: string): string[] => {
    // A bundle of feeders has no name of its own; a slot is said at its dish or head unit.
    const ends = inputs.feeders.filter(({ to }) => String(to) === row).map(({ from }) => String(from));
    return [row, ...ends];
  };
  const isSlot = (row: string): boolean => inputs.slots.some(({ slot }) => String(slot) === row);
  const at = (row: string): Sentence[] =>
    said.filter(
      (one) =>
        namesOf(one.row).includes(row) ||
        (isSlot(row) && one.text.includes(row)) ||
        (one.row === "Site" && row === "Site"),
    );
  const holds = (one: Sentence, words: readonly string[]): boolean =>
    words.every((word) => one.text.includes(word));
  const missing = fails.flatMap(({ rows, about, words }) => {
    const first = at(rows[0]!).find((one) => holds(one, words));
    if (!first) return [`${about} at ${rows[0]} with ${words.join(", ")}`];
    return rows
      .slice(1)
      .filter((row) => at(row).length === 0 && !first.text.includes(row))
      .map((row) => `${about} at ${row}`);
  });
  const extra = said.filter(
    (one) =>
      // What the case neither expects nor excludes may be said.
      (passes.includes(one.about) || fails.some(({ about }) => about === one.about)) &&
      !fails.some(
        ({ rows, about, words }) =>
          rows.some((row) => at(row).includes(one)) && (about === one.about || holds(one, words)),
      ),
  );
  return {
    missing,
    extra: extra.map(({ row, about, text }) => `${row} (${about}): ${text}`),
    wrong: numbers.flatMap((one) => wrongNumber(tables, inputs, one)),
  };
}

type NumberWanted = NonNullable<OutsiderCase["numbers"]>[number];

function wrongNumber(tables: readonly Matrix[], inputs: Inputs, one: NumberWanted): string[] {
  const found = numberOf(tables, inputs, one.what);
  const isRight =
    typeof one.value === "number" && typeof found === "number"
      ? Math.abs(found - one.value) <= one.tolerance + 1e-9
      : String(found) === String(one.value);
  return isRight ? [] : [`${one.what}: ${String(found)} where ${one.value} is right`];
}

const CORNERS: Readonly<Record<string, number>> = { low_cold: 0, low_hot: 1, high_cold: 2, high_hot: 3 };

function numberOf(tables: readonly Matrix[], inputs: Inputs, what: string): unknown {
  const rowOf = (list: "rooms" | "devices" | "heads" | "dishes", key: string, name: string): number =>
    inputs[list].findIndex((row) => String(row[key]) === name);
  const outlet = (name: string): number => rowOf("rooms", "outlet", name);
  const cell = (fn: string, row: number, column: number): unknown => answersOf(fn, tables)[row]?.[column];
  const lines = needed(tables);
  const match = (pattern: RegExp): string[] | null => pattern.exec(what)?.slice(1) ?? null;
  let m: string[] | null;
  if ((m = match(/^level (\w+) at outlet (.+)$/)))
    return cell("OUTLETLEVELS", outlet(m[1]!), CORNERS[m[0]!]!);
  if ((m = match(/^level hot at band \d+ of outlet (.+)$/))) return cell("OUTLETLEVELS", outlet(m[0]!), 4);
  if ((m = match(/^carrier to noise clear at outlet (.+)$/))) return cell("OUTLETNOISE", outlet(m[0]!), 1);
  if ((m = match(/^carrier to noise needed at outlet (.+)$/))) return cell("OUTLETNOISE", outlet(m[0]!), 3);
  if ((m = match(/^bands of (.+)$/)))
    return String(cell("OUTLETPLACES", outlet(m[0]!), 3)).replaceAll(", ", " ");
  if ((m = match(/^band MHz of (.+)$/))) return cell("OUTLETPLACES", outlet(m[0]!), 4);
  if ((m = match(/^volts all off at (.+)$/))) return cell("HEADVOLTS", rowOf("heads", "head", m[0]!), 0);
  if ((m = match(/^volts least with one on at (.+)$/)))
    return cell("HEADVOLTS", rowOf("heads", "head", m[0]!), 1);
  if ((m = match(/^amps all off at (.+)$/))) return cell("HEADVOLTS", rowOf("heads", "head", m[0]!), 5);
  if ((m = match(/^amps most of supply of (.+)$/)))
    return cell("HEADVOLTS", rowOf("heads", "head", m[0]!), 6);
  if ((m = match(/^amps most of (.+)$/))) return cell("DEVICECHECKS", rowOf("devices", "device", m[0]!), 1);
  if ((m = match(/^volts least of (.+)$/))) return cell("DEVICECHECKS", rowOf("devices", "device", m[0]!), 0);
  if ((m = match(/^output most of (.+)$/))) return cell("DEVICELEVELS", rowOf("devices", "device", m[0]!), 8);
  if ((m = match(/^output limit of (.+)$/)))
    return cell("DEVICELEVELS", rowOf("devices", "device", m[0]!), 9);
  if ((m = match(/^volts standing at outlet (.+)$/))) return cell("OUTLETVOLTS", outlet(m[0]!), 2);
  if ((m = match(/^volts at feed (.+)$/))) return cell("DISHCHECKS", rowOf("dishes", "dish", m[0]!), 3);
  if ((m = match(/^metres of (.+)$/))) return lines("cable").get(m[0]!) ?? 0;
  if ((m = match(/^minutes of cable, (.+)$/)))
    return (lines("route").get(m[0]!) ?? 0) * (LABOUR_RATES.route.get(m[0]!) ?? NaN);
  if (what === "minutes of terminations")
    return (lines("work").get("connector") ?? 0) * LABOUR_RATES.termination;
  if (what === "minutes together") return minutes(tables, inputs);
  if ((m = match(/^pieces of (.+?)(?:, by others)?$/)))
    return (lines("work").get(m[0]!) ?? 0) || (lines("part").get(m[0]!) ?? 0);
  throw new Error(`nothing is known of ${what}`);
}

/** All lines of work at the fixture's rates; floors and job are not stretched. */
function minutes(tables: readonly Matrix[], { site }: Inputs): number {
  const rates: Readonly<Record<string, number>> = {
    connector: LABOUR_RATES.termination,
    "grounding block": LABOUR_RATES.groundingBlock,
    "end resistor": LABOUR_RATES.endResistor,
    dish: LABOUR_RATES.dish,
    "further slot on a dish": LABOUR_RATES.furtherSlot,
    feed: LABOUR_RATES.feed,
    "head unit on a dish": LABOUR_RATES.headUnitOnDish,
    switch: LABOUR_RATES.switch,
    splitter: LABOUR_RATES.device.splitter,
    tap: LABOUR_RATES.device.tap,
    amplifier: LABOUR_RATES.device.amplifier,
    equaliser: LABOUR_RATES.device.equaliser,
    supply: LABOUR_RATES.supply,
    "wall plate": LABOUR_RATES.plate,
    "dish bonding conductor": LABOUR_RATES.dishBond,
    "outlet to measure": LABOUR_RATES.measuredOutlet,
  };
  let stretched = 0;
  let floors = 0;
  for (const [kind, name, quantity] of answersOf("NEEDED", tables) as [string, string, number][]) {
    if (kind === "route") stretched += quantity * (LABOUR_RATES.route.get(name) ?? NaN);
    if (kind === "work") stretched += quantity * (rates[name] ?? 0);
    if (kind === "work" && name === "floor") floors = quantity;
  }
  return stretched * Number(site.difficulty ?? 1) + floors * LABOUR_RATES.floor + LABOUR_RATES.job;
}

/** The lines of NEEDED: by kind, then by name. */
export function needed(tables: readonly Matrix[]): (kind: string) => ReadonlyMap<string, number> {
  const lines = answersOf("NEEDED", tables) as unknown as readonly (readonly [string, string, number])[];
  return (kind) => new Map(lines.flatMap(([of, name, quantity]) => (of === kind ? [[name, quantity]] : [])));
}
