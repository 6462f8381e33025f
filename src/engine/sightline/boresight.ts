/**
 * The picture that a person at the dish has when facing along its aim: which
 * way is to the right, which way is up, and how far a line leans in it.
 */
import type { Degrees } from "../quantity";
import { toDegrees } from "./angles";
import { dot, type Vector } from "./vectors";

export interface Picture {
  /** Level, to the right of the person. */
  readonly right: Vector;
  /** Square to the aim and to `right`. */
  readonly up: Vector;
}

/** Nearer to the zenith than this (as a sine) there is no right and left. */
const ZENITH_SINE = 1e-9;

/** @returns the picture along a unit vector; nothing when it points at the zenith */
export function pictureAlong(aim: Vector): Picture | undefined {
  const level = Math.hypot(aim.east, aim.north);
  if (level < ZENITH_SINE) return undefined;
  const right = { east: aim.north / level, north: -aim.east / level, up: 0 };
  const up = {
    east: (-aim.up * aim.east) / level,
    north: (-aim.up * aim.north) / level,
    up: level,
  };
  return { right, up };
}

/**
 * Clockwise lean of a line from a direction of the picture, −90 to 90. A line
 * has no head, so both of its senses give one answer; a line square to the
 * direction leans by 90 to the side where `vector` points.
 *
 * @param vector along the line
 * @param from the direction from which the lean counts
 * @param clockwise that direction turned clockwise by a right angle
 */
export function leanOfLine(vector: Vector, from: Vector, clockwise: Vector): Degrees {
  const along = dot(vector, from);
  const across = dot(vector, clockwise);
  if (Math.abs(along) < ZENITH_SINE * Math.abs(across)) return across > 0 ? 90 : -90;
  return toDegrees(Math.atan(across / along));
}

export const opposite = ({ east, north, up }: Vector): Vector => ({ east: -east, north: -north, up: -up });
