/**
 * Outlets whose readings stand in one another's columns: low end, high end and volts.
 *
 * Source: the loss of a cable rises with frequency, so a level that rises where a fall is predicted, and falls into
 *   place with the columns exchanged, was written into the wrong one. By how much it must fit better is our
 *   assumption, no source.
 */
import type { TypedOutlet } from "./typedOutlet";

/** Sum of the misses, in dB and volts alike, that the exchange must save. */
const SAVED = 12;
/** Left over for each reading when the columns are exchanged back. */
const LEFT_EACH = 4;

export interface Exchange {
  readonly outlet: TypedOutlet;
  /** Which columns, in words. */
  readonly columns: string;
}

/** @returns undefined where the readings fit best as they stand, or fit no way */
export function exchangeOf(outlet: TypedOutlet): Exchange | undefined {
  const last = outlet.frequencies.length - 1;
  const cells = [
    { name: "lowest frequency", typed: outlet.levels[0], due: outlet.predicted[0] ?? null },
    { name: "highest frequency", typed: outlet.levels[last], due: outlet.predicted[last] ?? null },
    { name: "volts", typed: outlet.volts, due: outlet.voltsPredicted },
  ].filter(({ due }) => due !== null);
  if (last < 1 || cells.length < 2) return undefined;
  const values = cells.map(({ typed }) => (typed?.kind === "value" ? typed.value : undefined));
  // A column left blank by the exchange says nothing.
  if (values.some((value) => value === undefined)) return undefined;
  const missed = (order: readonly number[]): number =>
    order.reduce((sum, from, to) => sum + Math.abs(values[from]! - cells[to]!.due!), 0);
  const orders =
    cells.length === 3
      ? ORDERS
      : [
          [0, 1],
          [1, 0],
        ];
  const asTyped = missed(orders[0]!);
  const best = orders.reduce((a, b) => (missed(b) < missed(a) ? b : a));
  if (best === orders[0] || asTyped - missed(best) < SAVED || missed(best) > LEFT_EACH * cells.length)
    return undefined;
  const moved = cells.filter((_, at) => best[at] !== at).map(({ name }) => name);
  return { outlet, columns: `${moved.slice(0, -1).join(", ")} and ${moved.at(-1)}` };
}

/** Of three columns; the first is as they stand. */
const ORDERS: readonly (readonly number[])[] = [
  [0, 1, 2],
  [1, 0, 2],
  [2, 1, 0],
  [0, 2, 1],
  [1, 2, 0],
  [2, 0, 1],
];
