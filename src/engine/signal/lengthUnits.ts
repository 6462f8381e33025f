/** Lengths as people give them, in metres or feet, into metres and back. */
import type { Metres } from "../quantity";

export const LENGTH_UNITS = ["m", "ft"] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** The international foot, exact by definition (1959). */
export const METRES_PER_FOOT = 0.3048;

/** @returns metres, from a length in `unit` */
export const toMetres = (length: number, unit: LengthUnit): Metres =>
  unit === "ft" ? length * METRES_PER_FOOT : length;

/** @returns the length in `unit`, from metres */
export const fromMetres = (length: Metres, unit: LengthUnit): number =>
  unit === "ft" ? length / METRES_PER_FOOT : length;
