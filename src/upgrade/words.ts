/** An upgrade in plain lines: what was carried over, what was not, and what the job comes to. */
import { isBookError, type BookResult } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { hasMoved, type Figure } from "./figures";
import type { NotCarried } from "./notCarried";
import type { Upgrade } from "./upgrade";

/** Figures that a list names. */
const MOST_MOVED = 12;

export interface UpgradeWords {
  /** What it is, in a sentence or two. */
  readonly head: string;
  /** Figure by figure; a name, before, after and difference. */
  readonly figures: readonly string[];
  /** Checks of the new workbook that fail or note something, and did not before. */
  readonly checks: readonly string[];
  /** What the reader should know of the figures. */
  readonly notes: readonly string[];
  readonly elsewhere: readonly string[];
  readonly notCarried: readonly string[];
}

export function inWords(upgrade: Upgrade): UpgradeWords {
  const { from, to, title, carried, changes, begun, figures, notCarried, elsewhere } = upgrade;
  const { knownBy, moved, ofRows, checks, price, currency } = figures;
  const lost = notCarried.filter(({ valueCarried }) => !valueCarried).length;
  return {
    head: `From version ${from || "unknown"} of “${title}” to version ${to}: ${counted(carried, "filled cell")} carried over, ${lost === 0 ? "nothing left behind" : `${counted(lost, "thing")} not carried over`}.${changes ? ` Since then: ${changes}` : ""}`,
    figures: [
      ...knownBy.map((one) => figureInWords(one, currency)),
      ...moved.slice(0, MOST_MOVED).map((one) => `${one.sheet}, ${figureInWords(one, "")}`),
      ...(moved.length > MOST_MOVED ? [`and ${counted(moved.length - MOST_MOVED, "more figure")}`] : []),
      ...ofRows.map((one) => `${one.sheet}, ${figureInWords(one, "")}`),
    ],
    checks: checks.map(
      ({ what, result, found, where }) =>
        `${what}: ${shown(found ?? undefined)} (${where}), ${result === "note" ? "noted" : "fails now"}`,
    ),
    notes: [
      ...(price === "out of date"
        ? [
            "The total in the file is not what its inputs come to by its own formulas: it was not worked out since its last change.",
          ]
        : price === "not stored"
          ? [
              "The file shows no total of its own, as after a program without our functions has saved it; “before” is worked out from its own formulas.",
            ]
          : []),
      ...(begun.length > 0
        ? [
            `New since then, and filled with the usual figures of a new workbook; look at them: ${begun.join("; ")}.`,
          ]
        : []),
    ],
    elsewhere: elsewhere.map(({ became, ...one }) => lineOf({ ...one, why: became })),
    notCarried: notCarried.map(lineOf),
  };
}

/** Whether a person has something to look at: what was left behind, a figure that is another, or a check that fails now. */
export const asksForALook = ({ notCarried, figures: { moved, ofRows, checks, knownBy } }: Upgrade): boolean =>
  notCarried.length > 0 ||
  moved.length > 0 ||
  ofRows.length > 0 ||
  checks.some(({ result }) => result !== "note") ||
  knownBy.some(hasMoved);

const lineOf = ({ sheet, cell, value, why }: NotCarried): string =>
  `${[sheet, cell].filter((part) => part).join(" ")}${sheet ? ": " : ""}${value}. ${why}`;

function figureInWords({ label, before, after, difference, name }: Figure, currency: string): string {
  const unit = MONEY.has(name) && currency ? ` ${currency}` : "";
  if (after === undefined) return `${label}: ${shown(before)}${unit}`;
  const same =
    difference === undefined ? shown(before) === shown(after) : !hasMoved({ before, after } as Figure);
  if (same) return `${label}: ${shown(after)}${unit}, as before`;
  const by =
    difference === undefined ? "" : `, difference ${difference > 0 ? "+" : ""}${rounded(difference)}`;
  return `${label}: ${shown(before)} -> ${shown(after)}${unit}${by}`;
}

const MONEY: ReadonlySet<string> = new Set([
  estimate.quote.total.name,
  estimate.quote.net.name,
  estimate.quote.tax.name,
  estimate.price.direct.name,
]);

function shown(value: BookResult | undefined): string {
  if (isBookError(value)) return value.message ?? value.error;
  if (typeof value === "number") return rounded(value);
  return value === undefined || value === "" ? "nothing" : String(value);
}

const DECIMALS = 2;
const rounded = (value: number): string => {
  const text = value.toFixed(DECIMALS);
  return Number.isInteger(value)
    ? String(value)
    : text === "0.00"
      ? String(Number(value.toPrecision(2)))
      : text;
};

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;
