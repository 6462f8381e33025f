/**
 * A small quote with one mistake in each of its four parts.
 *
 * The right rows come from the engine's own counting and prices; the mistakes
 * are of the kinds that the review looks for in real quotes.
 */
import { isFault } from "../../engine/faults";
import { sellPrice } from "../../engine/estimate/sellPrice";
import { roundMoney } from "../../engine/estimate/roundMoney";
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
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
  added: "price and tax added up wrongly",
} as const;
export type Kind = (typeof KINDS)[keyof typeof KINDS];
export const TOTAL_KINDS = [KINDS.left, KINDS.markup, KINDS.tax, KINDS.added] as const;

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
const MINUTES_AN_HOUR = 60;

/** The mistakes of each part and the rows in which they can stand. */
const POSSIBLE: Readonly<Record<Part, readonly { readonly kind: Kind; readonly rows: readonly number[] }[]>> =
  {
    reception: [
      { kind: KINDS.tuners, rows: [1, 2] },
      { kind: KINDS.sum, rows: [1, 2, 3] },
    ],
    cable: [
      { kind: KINDS.feet, rows: [4, 5] },
      { kind: KINDS.tuners, rows: [6] },
      { kind: KINDS.sum, rows: [4, 5, 6] },
    ],
    labour: [
      { kind: KINDS.minutes, rows: [7, 8] },
      { kind: KINDS.tuners, rows: [8] },
      { kind: KINDS.sum, rows: [7, 8, 9] },
    ],
    totals: [
      { kind: KINDS.left, rows: [10] },
      { kind: KINDS.markup, rows: [11] },
      { kind: KINDS.tax, rows: [12] },
      { kind: KINDS.added, rows: [13] },
    ],
  };

/** @param once chooses the mistakes: each of a part as likely, whatever the numbers allow */
export function drawQuote(random: Random, once: Random): QuoteNumbers {
  const mistake = (part: Part): Mistake => {
    const { kind, rows } = once.pick(POSSIBLE[part]);
    return { row: once.pick(rows), kind };
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
    off: { reception: off(), cable: off(), labour: off(), totals: off() },
  };
}

/** The survey read in another way than it should be. */
export interface Reading {
  /** Tuners that a recorder is counted with. */
  readonly recorder?: number;
  /** Head units are rounded down. */
  readonly down?: boolean;
  readonly metresPerFoot?: number;
  readonly minutesAnHour?: number;
  readonly trips?: number;
}

/** To the cent as an office has it: the product in its decimals, which binary fractions may lie beside. */
const money = (amount: number): number => roundMoney(Number(amount.toPrecision(12)), 2);
const tunersOf = (n: QuoteNumbers, each: number): number =>
  n.receivers * (tunersOfKind("receiver") as number) + n.recorders * each;

/** The rows with a quantity, as they should be. */
function rightLines(n: QuoteNumbers, reading: Reading = {}): QuoteRow[] {
  const tuners = tunersOf(n, reading.recorder ?? (tunersOfKind("recorder, 2 tuners") as number));
  const units = reading.down ? Math.floor(tuners / SERVES) : headUnits(tuners, SERVES);
  // As the quote prints them.
  const metres = (feet: number): number =>
    Number((feet * (reading.metresPerFoot ?? METRES_PER_FOOT)).toFixed(1));
  const hours = (minutes: number): number =>
    Number((minutes / (reading.minutesAnHour ?? MINUTES_AN_HOUR)).toFixed(2));
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
    line("Travel", reading.trips ?? 2, "trips", travel),
  ];
}

/** One line with its part's mistake in it. */
function spoilt(n: QuoteNumbers, row: QuoteRow, at: number, { kind }: Mistake, part: Part): QuoteRow {
  const quantity = wrongQuantity(n, at, kind);
  if (quantity === undefined) return { ...row, sum: money(row.sum + n.off[part]) };
  return { ...row, quantity, sum: money(quantity * row.price!) };
}

function wrongQuantity(n: QuoteNumbers, at: number, kind: Kind): number | undefined {
  const reading: Partial<Record<Kind, Reading>> = {
    [KINDS.tuners]: { recorder: 1 },
    [KINDS.feet]: { metresPerFoot: 1 },
    [KINDS.minutes]: { minutesAnHour: 1 },
  };
  return reading[kind] && rightLines(n, reading[kind])[at - 1]!.quantity;
}

function totals(n: QuoteNumbers, lines: readonly QuoteRow[], kind?: Kind): QuoteRow[] {
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
    row("Total, price and tax", "", money(price + tax + (kind === KINDS.added ? n.off.totals : 0))),
  ];
}

const partOf = (row: number): Part =>
  (Object.keys(PARTS) as Part[]).find((part) => (PARTS[part] as readonly number[]).includes(row))!;

/** Marking asks for the same quotes again and again. */
const kept = (rows: (n: QuoteNumbers) => QuoteRow[]): ((n: QuoteNumbers) => readonly QuoteRow[]) => {
  const known = new WeakMap<QuoteNumbers, readonly QuoteRow[]>();
  return (n) => {
    const found = known.get(n) ?? rows(n);
    known.set(n, found);
    return found;
  };
};

/** The quote as it is handed out; rows after a wrong one go on from it. */
export const quoteRows = kept((n) => {
  const lines = rightLines(n).map((row, index) => {
    const part = partOf(index + 1);
    const mistake = n.mistakes[part];
    return mistake.row === index + 1 ? spoilt(n, row, index + 1, mistake, part) : row;
  });
  return [...lines, ...totals(n, lines, n.mistakes.totals.kind)];
});

const asItShouldBe = kept((n) => rowsAsRead(n));

function rowsAsRead(n: QuoteNumbers, reading?: Reading): QuoteRow[] {
  const lines = rightLines(n, reading);
  return [...lines, ...totals(n, lines)];
}

/** The quote as it should be, or as somebody who reads the survey in another way thinks. */
export const rightRows = (n: QuoteNumbers, reading?: Reading): readonly QuoteRow[] =>
  reading === undefined ? asItShouldBe(n) : rowsAsRead(n, reading);
