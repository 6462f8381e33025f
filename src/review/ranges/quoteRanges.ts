/** The ranges that a quote review begins with: of accepted quotes where the firm learned from some, else what is usual. */
import { ratio } from "../../workbooks/quoteReview/names";
import { estimate } from "../../workbooks/multiRoom/names";
import { allowed, FEWEST_QUOTES, type Learned } from "./learned";
import { sizeOf, WHOLE } from "./measures";
import { USUAL } from "./usual";

type Row = Readonly<Record<string, number | string>>;

const PRACTICE = "common practice, no source";
/** And currencies whose unit buys about as much. */
const LIKE_THE_EURO: ReadonlySet<string> = new Set([..."EUR GBP USD CAD AUD NZD CHF SGD $".split(" ")]);
const METRES_PER_FOOT = 0.3048;

interface QuoteRatio {
  readonly label: string;
  /** The figure of whole jobs that it is, and by what that is divided to be it. */
  readonly learned?: readonly [name: string, by: number];
  /** Bounds that no usual job comes near, in metres and in a currency like the euro, pound or dollar. */
  readonly low: number;
  readonly high: number;
  readonly basis?: string;
  readonly lengths?: "of" | "each";
  /** Bounds that hold in some currencies only. */
  readonly isMoney?: true;
  /** Learned as the share of the rest. */
  readonly isRest?: true;
}

const words = (of: { readonly words: { readonly label: string } }): string => of.words.label;
const most = (name: string): number => USUAL.find((one) => one.name === name)!.most!;

const RATIOS: readonly QuoteRatio[] = [
  { label: words(ratio.per_outlet), learned: [WHOLE.price, 1], low: 40, high: 1500, isMoney: true },
  { label: words(ratio.cable_each), learned: [WHOLE.cable, 1], low: 4, high: 80, lengths: "of" },
  { label: words(ratio.hours_each), learned: [WHOLE.minutes, 60], low: 0.25, high: 6 },
  { label: words(ratio.tuners_each), learned: [WHOLE.tuners, 1], low: 1, high: 4 },
  { label: words(ratio.tuners_head), low: 1, high: 32, basis: "EN 50607: 32 bands at most" },
  { label: words(ratio.materials), learned: [WHOLE.labour, 1], low: 0.15, high: 0.9, isRest: true },
  { label: words(ratio.margin), low: 0.03, high: most(estimate.site.margin.name) },
  { label: words(ratio.cable_price), low: 0.1, high: 4, lengths: "each", isMoney: true },
];

/**
 * @param learned of the firm's standards; none where there are none
 * @param currency as its lines name it
 * @param outlets of the quote; jobs of like size are compared
 */
export function quoteRanges(
  learned: readonly Learned[],
  outlets: number | undefined,
  inFeet: boolean,
  currency?: string,
): Row[] {
  const size = outlets === undefined || outlets <= 0 ? undefined : sizeOf(outlets);
  return RATIOS.map(({ label, learned: of, low, high, basis = PRACTICE, lengths, isRest, isMoney }): Row => {
    const scale = !inFeet || !lengths ? 1 : lengths === "of" ? 1 / METRES_PER_FOOT : METRES_PER_FOOT;
    const own =
      of &&
      learned.find(
        (one) => one.name === of[0] && one.quotes >= FEWEST_QUOTES && (one.of === "" || one.of === size),
      );
    const shown = (value: number): number => Number(value.toPrecision(3));
    if (!own && isMoney && currency !== undefined && !LIKE_THE_EURO.has(currency)) return { ratio: label };
    if (!own) return { ratio: label, low: shown(low * scale), high: shown(high * scale), basis };
    const range = allowed(own);
    const [from, to] = isRest
      ? [1 - range.high, 1 - range.low]
      : [(range.low * scale) / of![1], (range.high * scale) / of![1]];
    return {
      ratio: label,
      low: shown(Math.max(0, from)),
      high: shown(to),
      basis: `learned from ${own.quotes} accepted quotes${own.of === "" ? "" : `, ${own.of}`}`,
    };
  });
}
