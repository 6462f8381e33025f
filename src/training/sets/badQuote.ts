/**
 * A small quote with one mistake in each of its four parts.
 *
 * The right rows come from the engine's own counting and prices; the mistakes
 * are of the kinds that the review looks for in real quotes.
 */
import { isFault } from "../../engine/faults";
import { sellPrice } from "../../engine/estimate/sellPrice";
import { roundMoney } from "../../engine/estimate/roundMoney";
import { toMetres } from "../../engine/signal/lengthUnits";
import { headUnits } from "../../engine/tuners/headUnits";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import type { Random } from "../random";

export const KINDS = {
  sum: "sum is not quantity x price",
  tuners: "recorder counted as one tuner",
  feet: "feet taken for metres",
  minutes: "minutes taken for hours",
  left: "a row is missing from the cost",
  markup: "margin reckoned as markup",
  tax: "tax on the cost",
} as const;
export type Kind = (typeof KINDS)[keyof typeof KINDS];

/** The four parts and the rows of each, counted from 1. */
export const PARTS = {
  reception: [1, 2, 3],
  cable: [4, 5, 6],
  labour: [7, 8, 9],
  totals: [10, 11, 12, 13],
} as const;
export type Part = keyof typeof PARTS;

interface Mistake {
  readonly row: number;
  readonly kind: Kind;
}

export interface QuoteNumbers {
  readonly receivers: number;
  readonly recorders: number;
  readonly dropFeet: number;
  readonly trunkFeet: number;
  readonly outlets: number;
  readonly outletMinutes: number;
  readonly unitMinutes: number;
  readonly prices: readonly number[];
  readonly rate: number;
  readonly margin: number;
  readonly tax: number;
  readonly mistakes: Readonly<Record<Part, Mistake>>;
  /** By how much a sum is off where it is not quantity x price. */
  readonly off: Readonly<Record<Part, number>>;
}

export interface QuoteRow {
  readonly what: string;
  /** Absent in the totals. */
  readonly quantity?: number;
  readonly unit: string;
  readonly price?: number;
  readonly sum: number;
}

/** Tuners that one head unit of the quote serves: the basic kind of EN 50494. */
export const SERVES = 8;

const FIRST: Readonly<Record<Part, readonly (readonly [number, Kind])[]>> = {
  reception: [
    [1, KINDS.tuners],
    [1, KINDS.sum],
    [2, KINDS.sum],
    [3, KINDS.sum],
  ],
  cable: [
    [4, KINDS.feet],
    [5, KINDS.feet],
    [4, KINDS.sum],
    [6, KINDS.sum],
  ],
  labour: [
    [7, KINDS.minutes],
    [8, KINDS.minutes],
    [7, KINDS.sum],
    [9, KINDS.sum],
  ],
  totals: [
    [10, KINDS.left],
    [11, KINDS.markup],
    [12, KINDS.tax],
  ],
};

export function drawQuote(random: Random): QuoteNumbers {
  const mistake = (part: Part): Mistake => {
    const [row, kind] = random.pick(FIRST[part]);
    return { row, kind };
  };
  const off = (): number => random.stepped(9, 90, 9) * random.pick([1, -1]);
  return {
    receivers: random.whole(5, 14),
    recorders: random.whole(4, 9),
    dropFeet: random.stepped(400, 1200, 50),
    trunkFeet: random.stepped(150, 500, 50),
    outlets: random.whole(9, 23),
    outletMinutes: random.pick([30, 45, 60]),
    unitMinutes: random.pick([60, 90, 120]),
    prices: [
      random.stepped(90, 240, 5),
      random.stepped(35, 90, 2.5),
      random.stepped(120, 320, 10),
      random.stepped(0.4, 1.2, 0.05),
      random.stepped(0.9, 2.4, 0.1),
      random.stepped(12, 38, 0.5),
      random.stepped(20, 60, 5),
    ],
    rate: random.stepped(38, 72, 1),
    margin: random.whole(15, 35),
    tax: random.pick([7, 8, 10, 19, 20, 21, 25]),
    mistakes: {
      reception: mistake("reception"),
      cable: mistake("cable"),
      labour: mistake("labour"),
      totals: mistake("totals"),
    },
    off: { reception: off(), cable: off(), labour: off(), totals: 0 },
  };
}

const tunersOf = ({ receivers, recorders }: QuoteNumbers, each: number): number =>
  receivers * (tunersOfKind("receiver") as number) + recorders * each;
const money = (amount: number): number => roundMoney(amount, 2);
/** As the quote prints it. */
const metres = (feet: number): number => Number(toMetres(feet, "ft").toFixed(1));
const hours = (minutes: number): number => Number((minutes / 60).toFixed(2));

/** The rows with a quantity, as they should be. */
function rightLines(n: QuoteNumbers): QuoteRow[] {
  const units = headUnits(tunersOf(n, tunersOfKind("recorder, 2 tuners") as number), SERVES);
  const [unit, supply, dish, drop, trunk, splitter, travel] = n.prices as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const line = (what: string, quantity: number, of: string, price: number): QuoteRow => ({
    what,
    quantity,
    unit: of,
    price,
    sum: money(quantity * price),
  });
  return [
    line("Head unit", units, "pieces", unit),
    line("Power supply, one for each head unit", units, "pieces", supply),
    line("Dish and mount", 1, "pieces", dish),
    line("Drop cable", metres(n.dropFeet), "m", drop),
    line("Trunk cable", metres(n.trunkFeet), "m", trunk),
    line("Splitter, one for each head unit", units, "pieces", splitter),
    line("Fitting the outlets", hours(n.outlets * n.outletMinutes), "hours", n.rate),
    line("Fitting the head units", hours(units * n.unitMinutes), "hours", n.rate),
    line("Travel", 2, "trips", travel),
  ];
}

/** One line with its part's mistake in it. */
function spoilt(n: QuoteNumbers, row: QuoteRow, at: number, { kind }: Mistake, part: Part): QuoteRow {
  const quantity = wrongQuantity(n, at, kind);
  if (quantity === undefined) return { ...row, sum: money(row.sum + n.off[part]) };
  return { ...row, quantity, sum: money(quantity * row.price!) };
}

function wrongQuantity(n: QuoteNumbers, at: number, kind: Kind): number | undefined {
  switch (kind) {
    case KINDS.tuners:
      return headUnits(tunersOf(n, 1), SERVES);
    case KINDS.feet:
      return at === 4 ? n.dropFeet : n.trunkFeet;
    case KINDS.minutes:
      return at === 7 ? n.outlets * n.outletMinutes : rightLines(n)[0]!.quantity! * n.unitMinutes;
    default:
      return undefined;
  }
}

function totals(n: QuoteNumbers, lines: readonly QuoteRow[], { kind }: { readonly kind?: Kind }): QuoteRow[] {
  const all = lines.reduce((sum, row) => sum + row.sum, 0);
  const cost = money(kind === KINDS.left ? all - lines[7]!.sum : all);
  const sold = sellPrice(cost, n.margin / 100);
  const price = money(kind === KINDS.markup || isFault(sold) ? cost * (1 + n.margin / 100) : sold);
  const tax = money(((kind === KINDS.tax ? cost : price) * n.tax) / 100);
  const row = (what: string, unit: string, sum: number): QuoteRow => ({ what, unit, sum });
  return [
    row("Cost, rows 1 to 9", "", cost),
    row(`Price with a margin of ${n.margin} % of the price`, "", price),
    row(`Tax, ${n.tax} % of the price`, "", tax),
    row("Total, price and tax", "", money(price + tax)),
  ];
}

const partOf = (row: number): Part =>
  (Object.keys(PARTS) as Part[]).find((part) => (PARTS[part] as readonly number[]).includes(row))!;

/** The quote as it is handed out; rows after a wrong one go on from it. */
export function quoteRows(n: QuoteNumbers): QuoteRow[] {
  const lines = rightLines(n).map((row, index) => {
    const part = partOf(index + 1);
    const mistake = n.mistakes[part];
    return mistake.row === index + 1 ? spoilt(n, row, index + 1, mistake, part) : row;
  });
  return [...lines, ...totals(n, lines, n.mistakes.totals)];
}

/** The quote as it should be. */
export function rightRows(n: QuoteNumbers): QuoteRow[] {
  const lines = rightLines(n);
  return [...lines, ...totals(n, lines, {})];
}
