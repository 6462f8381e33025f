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

/** How a figure is mistyped, the commonest first: common practice, no source. */
const SLIPS: readonly (readonly number[])[] = [[-1], [10, 1 / 10], [100, 1 / 100], [1000, 1 / 1000]];
const OF_A_UNIT: Readonly<Record<NonNullable<Usual["unit"]>, readonly number[]>> = {
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
  /** Of the figure: a length may be in feet, minutes in hours. */
  readonly unit?: "length" | "minutes";
  /** To how many decimals such figures are given; any number of them where absent. */
  readonly decimals?: number;
}

/** @returns undefined where no slip leads to what is usual, or two of one kind do */
export function slipOf(
  value: number,
  { low, high, unit, decimals = MOST_DECIMALS }: Usual,
): number | undefined {
  const isNear = value > 0 && value <= high * OUT_OF_THE_WAY && value >= low / OUT_OF_THE_WAY;
  if (value === 0 || isNear) return undefined;
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
  for (const { cells, input, unit } of inputsIn(book, definition)) {
    if (input.rule.kind !== "number") continue;
    for (const { place, value, inRow } of cells) {
      const finding = asked.get(keyOf(place));
      if (!finding || typeof value !== "number" || !inRow) continue;
      const others = cells.flatMap((one) =>
        one.place !== place && one.inRow && typeof one.value === "number" && !asked.has(keyOf(one.place))
          ? [one.value]
          : [],
      );
      const range: Usual | undefined =
        others.length >= FEWEST_OTHERS
          ? {
              ...(finding.usual ?? { low: Math.min(...others), high: Math.max(...others) }),
              decimals: Math.max(...others.map(decimalsOf)),
            }
          : finding.usual;
      const of = unit === "m or ft" ? "length" : unit?.startsWith("min") ? "minutes" : undefined;
      const meant = range && slipOf(value, { ...range, ...(of && { unit: of }) });
      if (meant !== undefined) slips.set(finding, meant);
    }
  }
  return slips;
}

const keyOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
