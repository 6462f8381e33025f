/** Directions at a site as vectors of east, north and up parts. */
import type { Degrees } from "../quantity";
import { toDegrees } from "./angles";

export interface Vector {
  readonly east: number;
  readonly north: number;
  readonly up: number;
}

export const dot = (a: Vector, b: Vector): number => a.east * b.east + a.north * b.north + a.up * b.up;

export const add = (a: Vector, b: Vector, factor = 1): Vector => ({
  east: a.east + factor * b.east,
  north: a.north + factor * b.north,
  up: a.up + factor * b.up,
});

export const lengthOf = ({ east, north, up }: Vector): number => Math.hypot(east, north, up);

export const unit = (vector: Vector): Vector => {
  const length = lengthOf(vector);
  return { east: vector.east / length, north: vector.north / length, up: vector.up / length };
};

/** Angle between two unit vectors; by the chord, which keeps its digits for small angles. */
export const angleBetween = (a: Vector, b: Vector): Degrees =>
  toDegrees(2 * Math.atan2(lengthOf(add(a, b, -1)), lengthOf(add(a, b))));
