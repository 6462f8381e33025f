/**
 * The figure that was likely meant where one is out of the way: a sign, a nought or a point, or a unit away from what
 * stands there, and among what is usual.
 */
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import type { Finding, FindingPlace } from "./finding";
import { inputsIn } from "./inputsIn";

const FOOT = 0.3048;
const MINUTES = 60;
/** A quarter of an hour and the like: who thinks in hours types these. */
const QUARTERS = 4;
const FREEZING_F = 32;
const CELSIUS_OF_F = 5 / 9;

/** How a figure is mistyped, the commonest first: common practice, no source. */
const SLIPS: readonly (readonly number[])[] = [[-1], [10, 1 / 10], [100, 1 / 100], [1000, 1 / 1000]];
const OF_A_UNIT: Readonly<Record<NonNullable<Usual["unit"]>, readonly number[]>> = {
  // No factor leads from one to the other.
  temperature: [],
  length: [FOOT, 1 / FOOT],
  minutes: [MINUTES, 1 / MINUTES],
};
/** Fewer others say nothing of what is usual. */
const FEWEST_OTHERS = 4;
/** What is nearer to the usual than this may well be so. */
const OUT_OF_THE_WAY = 2;
const MOST_DECIMALS = 6;

export interface Usual {
  readonly low: number;
  readonly high: number;
  /** Of the figure: a length may be in feet, minutes in hours, degrees Celsius in Fahrenheit. */
  readonly unit?: "length" | "minutes" | "temperature";
  /** To how many decimals such figures are given; any number of them where absent. */
  readonly decimals?: number;
}

/** @returns undefined where no slip leads to what is usual, or two of one kind do */
export function slipOf(
  value: number,
  { low, high, unit, decimals = MOST_DECIMALS }: Usual,
): number | undefined {
  if (unit === "temperature" && value > high) {
    const celsius = Number(((value - FREEZING_F) * CELSIUS_OF_F).toFixed(decimals));
    if (celsius >= low && celsius <= high) return celsius;
  }
  const isNear = value > 0 && value <= high * OUT_OF_THE_WAY && value >= low / OUT_OF_THE_WAY;
  if (value === 0 || isNear) return undefined;
  const ofHours = value * MINUTES;
  if (unit === "minutes" && isPartOfAnHour(value) && ofHours >= low && ofHours <= high) return ofHours;
  for (const factors of [...SLIPS, ...(unit === undefined ? [] : [OF_A_UNIT[unit]])]) {
    const meant = factors
      .map((factor) => ({ exact: value * factor, isUnit: factor === FOOT || factor === 1 / FOOT }))
      // The digits stay when a point slips; another unit is rounded as such figures are.
      .filter(
        ({ exact, isUnit }) => exact >= low && exact <= high && (isUnit || decimalsOf(exact) <= decimals),
      );
    if (meant.length === 1) return Number(meant[0]!.exact.toFixed(Math.min(decimals, MOST_DECIMALS)));
  }
  return undefined;
}

const isPartOfAnHour = (value: number): boolean =>
  value > 0 && value < 1 && Number.isInteger(value * QUARTERS);

const decimalsOf = (value: number): number =>
  (String(Number(value.toPrecision(12))).split(".")[1] ?? "").length;

/**
 * @param findings those of which it is not known what was meant
 * @returns what was likely meant, by finding
 */
export function likelySlips(
  book: Book,
  definition: WorkbookDefinition,
  findings: readonly Finding[],
): Map<Finding, number> {
  const asked = new Map(findings.flatMap((one) => (one.place ? [[keyOf(one.place), one] as const] : [])));
  const slips = new Map<Finding, number>();
  const inputs = inputsIn(book, definition);
  for (const { name, cells, input, unit } of inputs) {
    if (input.rule.kind !== "number") continue;
    // What a type says stands in the rooms of the other types too.
    const alike = name.startsWith("types_")
      ? (inputs.find((one) => one.name === name.replace("types_", "rooms_"))?.cells ?? [])
      : [];
    for (const { place, value, inRow } of cells) {
      const finding = asked.get(keyOf(place));
      if (!finding || typeof value !== "number" || !inRow) continue;
      const others = cells.flatMap((one) =>
        one.place !== place && one.inRow && typeof one.value === "number" && !asked.has(keyOf(one.place))
          ? [one.value]
          : [],
      );
      for (const one of alike)
        if (one.inRow && typeof one.value === "number" && one.value !== value) others.push(one.value);
      const range: Usual | undefined =
        others.length >= FEWEST_OTHERS
          ? {
              ...(finding.usual ?? { low: Math.min(...others), high: Math.max(...others) }),
              decimals: Math.max(...others.map(decimalsOf)),
            }
          : finding.usual;
      const of =
        unit === "m or ft"
          ? "length"
          : unit?.startsWith("min")
            ? "minutes"
            : unit === "°C"
              ? "temperature"
              : undefined;
      const meant = range && slipOf(value, { ...range, ...(of && { unit: of }) });
      if (meant !== undefined) slips.set(finding, meant);
    }
  }
  return slips;
}

const keyOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
