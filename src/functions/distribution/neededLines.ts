import { workOf } from "../../engine/distribution/work";
import { fromMetres } from "../../engine/signal/lengthUnits";
import type { Solved } from "./solved";

export const NEEDED_KINDS = ["part", "cable", "route", "work"] as const;

export interface NeededLine {
  readonly kind: (typeof NEEDED_KINDS)[number];
  readonly name: string;
  /** Pieces, or a length in the job's unit. */
  readonly quantity: number;
}

/** A hundred times less than a tape measure shows, so that feet come out as they were typed. */
const DIGITS = 9;

/** @returns a line for each part, cable, route and kind of work */
export function neededLines({ found: { tree, counts }, floors, settings }: Solved): NeededLine[] {
  const lengths = (kind: "cable" | "route", metres: ReadonlyMap<string, number>): NeededLine[] =>
    [...metres].map(([name, length]) => ({
      kind,
      name: name || "none named",
      quantity: Number(fromMetres(length, settings.unit).toFixed(DIGITS)),
    }));
  return [
    ...[...counts.parts].map(([name, quantity]): NeededLine => ({ kind: "part", name, quantity })),
    ...lengths("cable", counts.metresByCable),
    ...lengths("route", counts.metresByRoute),
    ...[...workOf(tree, counts, floors)].map(([name, quantity]): NeededLine => ({
      kind: "work",
      name,
      quantity,
    })),
  ];
}
