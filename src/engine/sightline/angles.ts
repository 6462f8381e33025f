/** Trigonometry in degrees, and the wrapping and clamping of angles, in one place. */
import type { Degrees, Radians } from "../quantity";

export const toRadians = (degrees: Degrees): Radians => (degrees * Math.PI) / 180;
export const toDegrees = (radians: Radians): Degrees => (radians * 180) / Math.PI;

export const sinDeg = (degrees: Degrees): number => Math.sin(toRadians(degrees));
export const cosDeg = (degrees: Degrees): number => Math.cos(toRadians(degrees));
export const tanDeg = (degrees: Degrees): number => Math.tan(toRadians(degrees));

/** acos that forgives a cosine a rounding error beyond ±1. */
export const acosDeg = (cosine: number): Degrees => toDegrees(Math.acos(Math.min(1, Math.max(-1, cosine))));
/** asin that forgives a sine a rounding error beyond ±1. */
export const asinDeg = (sine: number): Degrees => toDegrees(Math.asin(Math.min(1, Math.max(-1, sine))));

/** Into 0 ≤ angle < 360. */
export const wrap360 = (degrees: Degrees): Degrees => {
  const wrapped = ((degrees % 360) + 360) % 360;
  return wrapped === 360 ? 0 : wrapped;
};
/** Into −180 < angle ≤ 180. */
export const wrap180 = (degrees: Degrees): Degrees => {
  const wrapped = wrap360(degrees);
  return wrapped > 180 ? wrapped - 360 : wrapped;
};
