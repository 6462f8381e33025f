/**
 * What a part of a supply network can deliver: the current out of it as a
 * function of the volts where it comes out. With sources, resistances and
 * diodes of constant drop that is a chain of straight pieces that never rises,
 * so two parts joined are a sum, and a resistance or a diode before one moves
 * its points. No set of conducting diodes has to be guessed.
 *
 * Source: Kirchhoff's laws; diodes that carry nothing below their drop and
 *   anything at it.
 * Accuracy: exact for such elements.
 */
import type { Amperes, Ohms, Volts } from "../quantity";

interface Point {
  readonly volts: Volts;
  readonly amperes: Amperes;
}

/** Volts rise from point to point, amperes never do; beyond the ends the outer pieces go on. */
export type SupplyCurve = readonly Point[];

/** Further from 0 than any supply: the pieces that go on begin there. */
const FAR: Volts = 1e3;

/** Carries nothing at any volts. */
export const DEAD: SupplyCurve = [
  { volts: -FAR, amperes: 0 },
  { volts: FAR, amperes: 0 },
];

/** A resistance to the return. */
export const leak = (ohms: Ohms): SupplyCurve => line(0, ohms);

const line = (volts: Volts, ohms: Ohms): SupplyCurve =>
  [-FAR, FAR].map((at) => ({ volts: at, amperes: (volts - at) / ohms }));

/** @param drop of the diode behind which the source stands; null where it can be fed backwards */
export const source = (volts: Volts, ohms: Ohms, drop: Volts | null): SupplyCurve =>
  drop === null ? line(volts, ohms) : towards(line(volts, ohms), 0, drop);

/** @returns the amperes at these volts */
export function amperesAt(curve: SupplyCurve, volts: Volts): Amperes {
  let next = curve.findIndex((point) => point.volts >= volts);
  if (next === -1) next = curve.length - 1;
  next = Math.max(1, next);
  const [from, to] = [curve[next - 1]!, curve[next]!];
  const share = (volts - from.volts) / (to.volts - from.volts);
  return from.amperes + share * (to.amperes - from.amperes);
}

/** The volts between which it carries nothing; one value twice where that is a point. */
interface Silent {
  readonly from: Volts;
  readonly to: Volts;
}

/** @returns undefined where it carries something at all volts */
function silentOf(curve: SupplyCurve): Silent | undefined {
  const last = curve.length - 1;
  // Of the outer pieces what lies beyond the points counts too.
  const crossing = (from: Point, to: Point): Volts =>
    from.volts + ((to.volts - from.volts) * from.amperes) / (from.amperes - to.amperes);
  const firstNot = curve.findIndex(({ amperes }) => amperes <= 0);
  if (firstNot === -1) {
    const [from, to] = [curve[last - 1]!, curve[last]!];
    if (from.amperes === to.amperes) return undefined;
    const at = crossing(from, to);
    return { from: at, to: at };
  }
  if (firstNot === 0 && curve[0]!.amperes < 0) {
    const [from, to] = [curve[0]!, curve[1]!];
    if (from.amperes === to.amperes) return undefined;
    const at = crossing(from, to);
    return { from: at, to: at };
  }
  const point = curve[firstNot]!;
  if (point.amperes < 0) {
    const at = crossing(curve[firstNot - 1]!, point);
    return { from: at, to: at };
  }
  let end = firstNot;
  while (end < last && curve[end + 1]!.amperes === 0) end += 1;
  return {
    from: firstNot === 0 ? -Infinity : point.volts,
    to: end === last ? Infinity : curve[end]!.volts,
  };
}

/**
 * The volts at which it carries nothing. What nothing holds lies at 0, or as
 * near to it as a diode lets it: a connector that is fed and draws nothing.
 *
 * @returns undefined where there are none: more is drawn than can come
 */
export function restingVolts(curve: SupplyCurve): Volts | undefined {
  const silent = silentOf(curve);
  return silent && Math.min(Math.max(0, silent.from), silent.to);
}

/** Both ends joined. */
export function joined(curves: readonly SupplyCurve[]): SupplyCurve {
  const [first, ...others] = curves;
  if (others.length === 0) return first ?? DEAD;
  const volts = [...new Set(curves.flat().map((point) => point.volts))].sort((a, b) => a - b);
  return volts.map((at) => ({
    volts: at,
    amperes: curves.reduce((sum, curve) => sum + amperesAt(curve, at), 0),
  }));
}

/** What is left when a load takes its current whatever the volts. */
export const lessLoad = (curve: SupplyCurve, amperes: Amperes): SupplyCurve =>
  amperes === 0 ? curve : curve.map((point) => ({ ...point, amperes: point.amperes - amperes }));

/** Beyond a resistance. */
export const beyond = (curve: SupplyCurve, ohms: Ohms): SupplyCurve =>
  ohms === 0 ? curve : curve.map(({ volts, amperes }) => ({ volts: volts - amperes * ohms, amperes }));

/** Beyond a resistance and a diode that lets current out of it only. */
export function towards(curve: SupplyCurve, ohms: Ohms, drop: Volts): SupplyCurve {
  const silent = silentOf(curve);
  const giving = curve.filter(({ amperes }) => amperes > 0);
  if (giving.length === 0 || !silent) return silent ? DEAD : beyond(shifted(curve, -drop), ohms);
  const end = silent.from - drop;
  return [
    ...shifted(beyond(giving, ohms), -drop),
    { volts: end, amperes: 0 },
    { volts: Math.max(FAR, end + 1), amperes: 0 },
  ];
}

/** Beyond a resistance and a diode that lets current into it only. */
export function away(curve: SupplyCurve, ohms: Ohms, drop: Volts): SupplyCurve {
  const turned = (one: SupplyCurve): SupplyCurve =>
    one.map(({ volts, amperes }) => ({ volts: 0 - volts, amperes: 0 - amperes })).reverse();
  return turned(towards(turned(curve), ohms, drop));
}

const shifted = (curve: SupplyCurve, by: Volts): SupplyCurve =>
  curve.map(({ volts, amperes }) => ({ volts: volts + by, amperes }));
