/**
 * How well a set of causes explains the readings of one head unit.
 *
 * A level read is predicted + the head unit's own offset + the outlet's own
 * offset + meter error − what the causes take, all normal; causes enter as
 * columns with a normal prior on their size. The evidence is the density of
 * all readings with every unknown size integrated out.
 *
 * Source: Bayesian linear regression, e.g. Bishop, Pattern Recognition and
 *   Machine Learning (2006), section 3.5 (from memory); the covariance of an
 *   outlet's readings, σ²·I + ρ²·1·1ᵀ, inverted by Sherman and Morrison.
 * Accuracy: exact for the model stated.
 */
import type { Decibels, DecibelMicrovolts, Megahertz, Volts } from "../quantity";
import {
  DEAD_DBUV,
  HEAD_SPREAD_DB,
  NO_VOLTS,
  OUTLET_SPREAD_DB,
  SLIP,
  VOLTS_SPREAD,
  type Power,
} from "./causes";

export interface Reading {
  readonly outlet: string;
  /** Names of the branches above it, nearest first. */
  readonly path: readonly string[];
  /** Only the frequencies that were measured; the three lists go together. */
  readonly frequencies: readonly Megahertz[];
  readonly predicted: readonly DecibelMicrovolts[];
  readonly measured: readonly DecibelMicrovolts[];
  readonly volts: Volts | null;
  readonly voltsPredicted: Volts | null;
}

/** A cause's effect: a size with mean and standard deviation times dB at each reading of the outlets named. */
export interface Column {
  readonly mean: number;
  readonly sd: number;
  readonly effect: ReadonlyMap<number, readonly Decibels[]>;
}

export interface Effects {
  readonly columns: readonly Column[];
  /** What becomes of the supply, by outlet. */
  readonly power: ReadonlyMap<number, Power>;
  readonly dead: ReadonlySet<number>;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const LN_2PI = Math.log(2 * Math.PI);
const normal = (x: number, sd: number): number =>
  Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));

function voltsLog({ volts, voltsPredicted }: Reading, power: Power): number {
  if (volts === null || voltsPredicted === null || voltsPredicted <= NO_VOLTS) return 0;
  const density =
    power === "kept"
      ? normal(volts - voltsPredicted, VOLTS_SPREAD)
      : power === "lost"
        ? 2 * normal(volts, NO_VOLTS / 2)
        : volts <= voltsPredicted
          ? 1 / voltsPredicted
          : 0;
  return Math.log((1 - SLIP) * density + SLIP / voltsPredicted);
}

const deadLog = ({ measured }: Reading): number =>
  sum(measured.map((level) => Math.log(level <= DEAD_DBUV ? 1 / DEAD_DBUV : SLIP / DEAD_DBUV)));

/** @returns a function from effects to the natural logarithm of the evidence */
export function evidenceOf(readings: readonly Reading[], meterSd: Decibels): (effects: Effects) => number {
  const variance = meterSd ** 2;
  const own = OUTLET_SPREAD_DB ** 2;
  /** a·C⁻¹·b for one outlet's readings. */
  const dot = (a: readonly number[], b: readonly number[]): number => {
    // Called some thousand times a job, so without lists made on the way.
    let [product, sumA, sumB] = [0, 0, 0];
    for (let i = 0; i < a.length; i += 1) {
      product += a[i]! * b[i]!;
      sumA += a[i]!;
      sumB += b[i]!;
    }
    return (product - (own / (variance + a.length * own)) * sumA * sumB) / variance;
  };
  const off = readings.map(({ measured, predicted }) => measured.map((level, i) => level - predicted[i]!));
  const ones = off.map((row) => row.map(() => 1));
  const rows = readings.map((reading, at) => {
    const k = off[at]!.length;
    const logDet = k === 0 ? 0 : (k - 1) * Math.log(variance) + Math.log(variance + k * own);
    return {
      yy: dot(off[at]!, off[at]!),
      y1: dot(off[at]!, ones[at]!),
      oneOne: dot(ones[at]!, ones[at]!),
      constant: -0.5 * (k * LN_2PI + logDet),
      volts: {
        kept: voltsLog(reading, "kept"),
        low: voltsLog(reading, "low"),
        lost: voltsLog(reading, "lost"),
      } satisfies Record<Power, number>,
      dead: deadLog(reading),
    };
  });
  const whole = {
    yy: sum(rows.map(({ yy }) => yy)),
    y1: sum(rows.map(({ y1 }) => y1)),
    oneOne: sum(rows.map(({ oneOne }) => oneOne)),
    constant: sum(rows.map(({ constant, volts }) => constant + volts.kept)),
  };

  return ({ columns, power, dead }) => {
    let { yy, y1, oneOne, constant } = whole;
    for (const at of dead) {
      const row = rows[at]!;
      yy -= row.yy;
      y1 -= row.y1;
      oneOne -= row.oneOne;
      constant += row.dead - row.constant;
    }
    for (const [at, state] of power) constant += rows[at]!.volts[state] - rows[at]!.volts.kept;
    const size = columns.length + 1;
    const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
    const vector = new Array<number>(size).fill(0);
    matrix[0]![0] = oneOne + 1 / HEAD_SPREAD_DB ** 2;
    vector[0] = y1;
    let prior = Math.log(HEAD_SPREAD_DB ** 2);
    columns.forEach((column, index) => {
      const c = index + 1;
      matrix[c]![c] = 1 / column.sd ** 2;
      vector[c] = column.mean / column.sd ** 2;
      prior += Math.log(column.sd ** 2);
      yy += (column.mean / column.sd) ** 2;
      for (const [at, effect] of column.effect) {
        if (dead.has(at)) continue;
        vector[c]! += dot(effect, off[at]!);
        matrix[c]![c]! += dot(effect, effect);
        matrix[0]![c]! += dot(effect, ones[at]!);
        for (let before = 0; before < index; before += 1) {
          const other = columns[before]!.effect.get(at);
          if (other) matrix[before + 1]![c]! += dot(effect, other);
        }
      }
    });
    const { logDet, square } = solved(matrix, vector);
    return constant - 0.5 * (yy - square + logDet + prior);
  };
}

/** ln|M| and vᵀ·M⁻¹·v by Cholesky, from the upper triangle. */
function solved(matrix: readonly number[][], vector: readonly number[]): { logDet: number; square: number } {
  const factor: number[][] = [];
  const forward: number[] = [];
  let logDet = 0;
  let square = 0;
  for (let i = 0; i < vector.length; i += 1) {
    factor.push([]);
    for (let j = 0; j <= i; j += 1) {
      let value = matrix[j]![i]!;
      for (let k = 0; k < j; k += 1) value -= factor[i]![k]! * factor[j]![k]!;
      factor[i]!.push(i === j ? Math.sqrt(value) : value / factor[j]![j]!);
    }
    let value = vector[i]!;
    for (let k = 0; k < i; k += 1) value -= factor[i]![k]! * forward[k]!;
    forward.push(value / factor[i]![i]!);
    logDet += 2 * Math.log(factor[i]![i]!);
    square += forward[i]! ** 2;
  }
  return { logDet, square };
}
