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
  /** Where the meter found no signal, the most that it could have overlooked. */
  readonly measured: readonly DecibelMicrovolts[];
  /** Which of the levels were read as no signal; none where absent. */
  readonly silent?: readonly boolean[];
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

/** A meter that found no signal says no more of a dead outlet than that it is dead. */
const deadLog = ({ measured, silent }: Reading): number =>
  sum(
    measured.map((level, i) =>
      silent?.[i] ? 0 : Math.log(level <= DEAD_DBUV ? 1 / DEAD_DBUV : SLIP / DEAD_DBUV),
    ),
  );

/** Standard normal distribution, to 1e-7: Abramowitz and Stegun 26.2.17 (from memory). */
function normalUpTo(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const tail =
    normal(Math.abs(x), 1) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return x < 0 ? tail : 1 - tail;
}

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
  // A level that was not heard has no value to fit; that it was not heard is weighed by itself.
  const heard = readings.map(({ silent }) =>
    silent?.includes(true) ? silent.map((one) => !one) : undefined,
  );
  const heardOf = (values: readonly number[], at: number): readonly number[] =>
    heard[at] ? values.filter((_, i) => heard[at]![i]) : values;
  const off = readings.map(({ measured, predicted }, at) =>
    heardOf(
      measured.map((level, i) => level - predicted[i]!),
      at,
    ),
  );
  const withSilence = readings.flatMap((_, at) => (heard[at] ? [at] : []));
  /** Logarithm of the chance that a living outlet is not heard where it was not. */
  const silenceLog = (at: number, columns: readonly Column[]): number => {
    const { predicted, silent } = readings[at]!;
    return sum(
      predicted.map((due, i) => {
        if (!silent![i]) return 0;
        let mean = due;
        let spread = variance + own + HEAD_SPREAD_DB ** 2;
        for (const column of columns) {
          const effect = column.effect.get(at)?.[i] ?? 0;
          mean += column.mean * effect;
          spread += (column.sd * effect) ** 2;
        }
        return Math.log(Math.max(SLIP, normalUpTo((DEAD_DBUV - mean) / Math.sqrt(spread))));
      }),
    );
  };
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
  const together = {
    yy: sum(rows.map(({ yy }) => yy)),
    y1: sum(rows.map(({ y1 }) => y1)),
    oneOne: sum(rows.map(({ oneOne }) => oneOne)),
    constant: sum(rows.map(({ constant, volts }) => constant + volts.kept)),
  };

  return ({ columns, power, dead }) => {
    let { yy, y1, oneOne, constant } = together;
    for (const at of dead) {
      const row = rows[at]!;
      yy -= row.yy;
      y1 -= row.y1;
      oneOne -= row.oneOne;
      constant += row.dead - row.constant;
    }
    for (const at of withSilence) if (!dead.has(at)) constant += silenceLog(at, columns);
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
      for (const [at, whole] of column.effect) {
        if (dead.has(at)) continue;
        const effect = heardOf(whole, at);
        vector[c]! += dot(effect, off[at]!);
        matrix[c]![c]! += dot(effect, effect);
        matrix[0]![c]! += dot(effect, ones[at]!);
        for (let before = 0; before < index; before += 1) {
          const other = columns[before]!.effect.get(at);
          if (other) matrix[before + 1]![c]! += dot(effect, heardOf(other, at));
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
