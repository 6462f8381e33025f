/**
 * User bands: those that are kept, then receivers that can use the fewest bands, in the order of the rows, each the lowest
 * free number. A receiver uses bands of its own control standard; one of EN 50607 those of EN 50494 too.
 */
import { isFilled, isSame, plain, type Row } from "../job";
import { listIn, numberIn, rowNamed, wordIn, type Tables } from "./tables";
import type { HeadUnit, Thing } from "./tree";

export interface Band {
  readonly band: number;
  /** Megahertz; not known without a plan. */
  readonly mhz: number | undefined;
  /** Megahertz; not known where the plan does not state it. */
  readonly width: number | undefined;
  /** In small letters; not known where neither a plan nor the kind states one. */
  readonly standard: string | undefined;
}

const MOST_OF_BASIC = 8;
const byNumber = (band: number): string => (band <= MOST_OF_BASIC ? "en 50494" : "en 50607");

/** The bands of each output of a head unit, from the lowest. */
export function bandsOf(tables: Tables, { kind }: HeadUnit): Band[] {
  const count = numberIn(kind, "bands");
  const standard = wordIn(kind, "standard");
  /** Of a kind that does not say how it is commanded any receiver may use any; a maker's own are its own. */
  const usual = (band: number): string | undefined =>
    standard.startsWith("en ") ? byNumber(band) : standard || undefined;
  const rows = tables.band_plans.filter(
    (row) => isFilled(kind, "plan") && isSame(row.plan, kind.plan) && isFilled(row, "band"),
  );
  if (isFilled(kind, "plan"))
    return rows
      .map((row) => ({
        band: numberIn(row, "band"),
        mhz: numberIn(row, "mhz"),
        width: isFilled(row, "width") ? numberIn(row, "width") : undefined,
        standard: wordIn(row, "standard") || usual(numberIn(row, "band")),
      }))
      .sort((a, b) => a.band - b.band);
  return Array.from({ length: count }, (_, index) => ({
    band: index + 1,
    mhz: undefined,
    width: undefined,
    standard: usual(index + 1),
  }));
}

export interface Receiver {
  readonly tuners: number;
  readonly standard: string;
  readonly restVolts: number;
  readonly commandVolts: number;
  readonly amps: number;
  readonly appliedMost: number;
  readonly noiseFigure: number;
}

/** @returns nothing for a spare outlet */
export function receiverOf(tables: Tables, outlet: Row): Receiver | undefined {
  if (!isFilled(outlet, "receiver") || numberIn(outlet, "how_many", 1) === 0) return undefined;
  const row = rowNamed(tables.receivers, "kind", outlet.receiver) ?? {};
  const [, counted] = /(\d+) tuners?$/.exec(plain(outlet.receiver)) ?? [];
  return {
    tuners: numberIn(row, "tuners", Number(counted ?? 1)),
    standard: wordIn(row, "standard", "en 50494"),
    restVolts: numberIn(row, "rest_volts", 13),
    commandVolts: numberIn(row, "command_volts", 18),
    amps: numberIn(row, "amps", 0.4),
    appliedMost: numberIn(row, "applied_most", 19),
    noiseFigure: numberIn(row, "noise_figure", 10),
  };
}

export const howMany = (outlet: Row): number => numberIn(outlet, "how_many", 1);
export const tunersAt = (tables: Tables, outlet: Row): number =>
  (receiverOf(tables, outlet)?.tuners ?? 0) * howMany(outlet);

const canUse = (standard: string, band: Band): boolean =>
  band.standard === undefined ||
  band.standard === standard ||
  (standard === "en 50607" && band.standard === "en 50494");

/** The widest carrier of the job in megahertz: its symbol rate with a roll-off of 0.35 (EN 300 421). */
const takenBy = ({ slots }: Tables): number =>
  1.35 *
  Math.max(0, ...slots.map((slot) => (isFilled(slot, "symbol_rate") ? numberIn(slot, "symbol_rate") : 0)));

export interface Allotted {
  readonly bands: readonly Band[];
  readonly isBad: boolean;
}

/** @returns the bands of each outlet with a receiver */
export function allotted(tables: Tables, outlets: readonly Thing[]): Map<Thing, Allotted> {
  const result = new Map<Thing, Allotted>();
  const outputs = new Map<string, Thing[]>();
  for (const outlet of outlets) {
    const key = `${outlet.head.index} ${outlet.output}`;
    outputs.set(key, [...(outputs.get(key) ?? []), outlet]);
  }
  for (const together of outputs.values()) {
    const all = bandsOf(tables, together[0]!.head);
    const taken = new Set<number>();
    const kept = new Map<Thing, Band[]>();
    /** Numbers that are kept and can't be had: nothing is handed out in their stead. */
    const refused = new Map<Thing, number>();
    const bad = new Set<Thing>();
    for (const outlet of together) {
      const details = tables.outlet_details[outlet.index] ?? {};
      const receiver = receiverOf(tables, outlet.row);
      const tuners = tunersAt(tables, outlet.row);
      const numbers = listIn(details, "kept").map(Number);
      const bands = numbers.flatMap((number): Band[] => {
        const band = all.find((one) => one.band === number);
        if (!band || !receiver || taken.has(number) || !canUse(receiver.standard, band)) bad.add(outlet);
        if (!band || taken.has(number)) return [];
        taken.add(number);
        return [band];
      });
      if (numbers.length > tuners) bad.add(outlet);
      kept.set(outlet, bands);
      refused.set(outlet, numbers.length - bands.length);
    }
    const usable = (outlet: Thing): Band[] =>
      all.filter((band) => canUse(receiverOf(tables, outlet.row)!.standard, band));
    const waiting = together
      .filter((outlet) => receiverOf(tables, outlet.row))
      .sort((a, b) => usable(a).length - usable(b).length || a.index - b.index);
    for (const outlet of waiting) {
      const own = [...kept.get(outlet)!];
      const wanted = tunersAt(tables, outlet.row) - refused.get(outlet)!;
      for (const band of usable(outlet)) {
        if (own.length >= wanted) break;
        if (taken.has(band.band)) continue;
        taken.add(band.band);
        own.push(band);
      }
      if (own.length < tunersAt(tables, outlet.row)) bad.add(outlet);
      if (own.some(({ width }) => width !== undefined && width < takenBy(tables))) bad.add(outlet);
      result.set(outlet, { bands: own.sort((a, b) => a.band - b.band), isBad: bad.has(outlet) });
    }
  }
  return result;
}
