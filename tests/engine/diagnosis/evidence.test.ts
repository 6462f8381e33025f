/**
 * The evidence of the stated model, against the density of a multivariate normal distribution written out: levels
 * are predicted + causes + the head unit's offset + each outlet's offset + meter error, all normal. The covariance
 * is filled cell by cell and solved by elimination, which shares nothing with the code's way round.
 */
import {
  DEAD_DBUV,
  HEAD_SPREAD_DB,
  NO_VOLTS,
  OUTLET_SPREAD_DB,
  SLIP,
  VOLTS_SPREAD,
} from "../../../src/engine/diagnosis/causes";
import { evidenceOf, type Effects, type Reading } from "../../../src/engine/diagnosis/evidence";

const METER_SD = 1.5 / Math.sqrt(3);

const reading = (outlet: string, measured: readonly number[], more: Partial<Reading> = {}): Reading => ({
  outlet,
  path: [],
  frequencies: [950, 2150].slice(0, measured.length),
  predicted: [64, 55].slice(0, measured.length),
  measured,
  volts: null,
  voltsPredicted: null,
  ...more,
});
const effects = (more: Partial<Effects> = {}): Effects => ({
  columns: [],
  power: new Map(),
  dead: new Set(),
  ...more,
});

/** Logarithm of the density of N(0, covariance) at x, by elimination without square roots. */
function normalLog(x: readonly number[], covariance: readonly (readonly number[])[]): number {
  const rows = covariance.map((row, at) => [...row, x[at]!]);
  let log = -0.5 * x.length * Math.log(2 * Math.PI);
  for (let at = 0; at < rows.length; at += 1) {
    const pivot = rows[at]!;
    log -= 0.5 * (Math.log(pivot[at]!) + pivot.at(-1)! ** 2 / pivot[at]!);
    for (const row of rows.slice(at + 1)) {
      const factor = row[at]! / pivot[at]!;
      pivot.forEach((value, column) => (row[column]! -= factor * value));
    }
  }
  return log;
}

/** The model in words, line by line. */
function byDensity(readings: readonly Reading[], { columns, dead }: Effects): number {
  const cells = readings.flatMap(({ measured, predicted, silent }, at) =>
    dead.has(at)
      ? []
      : measured.flatMap((level, i) => (silent?.[i] ? [] : [{ at, i, level, due: predicted[i]! }])),
  );
  const effectAt = (column: Effects["columns"][number], { at, i }: { at: number; i: number }): number =>
    column.effect.get(at)?.[i] ?? 0;
  const off = cells.map((cell) =>
    columns.reduce((rest, column) => rest - column.mean * effectAt(column, cell), cell.level - cell.due),
  );
  const covariance = cells.map((one) =>
    cells.map((other) => {
      const common = HEAD_SPREAD_DB ** 2 + (one.at === other.at ? OUTLET_SPREAD_DB ** 2 : 0);
      const meter = one === other ? METER_SD ** 2 : 0;
      return columns.reduce(
        (sum, column) => sum + column.sd ** 2 * effectAt(column, one) * effectAt(column, other),
        common + meter,
      );
    }),
  );
  return normalLog(off, covariance);
}

const R1 = reading("R1", [63.2, 54.1]);
const R2 = reading("R2", [58.9, 47.3]);
const R3 = reading("R3", [64.8]);
const loss = { mean: 1, sd: 0.5, effect: new Map([[1, [-4.5, -7]]]) };
const tilt = { mean: 0, sd: 0.6, effect: new Map([[1, [-0.5, 0.5]]]) };
const dish = {
  mean: 1,
  sd: 0.4,
  effect: new Map([
    [0, [-5, -5]],
    [1, [-5, -5]],
    [2, [-5]],
  ]),
};

describe("levels", () => {
  test.each([
    ["of one outlet", [R1], effects()],
    ["of three, one of them with one level", [R1, R2, R3], effects()],
    ["with a run's loss", [R1, R2, R3], effects({ columns: [loss] })],
    ["with a run's loss and its tilt", [R1, R2, R3], effects({ columns: [loss, tilt] })],
    ["with a dish off its aim and a run's loss", [R1, R2, R3], effects({ columns: [dish, loss, tilt] })],
  ] as const)("%s", (_, readings, what) => {
    expect(evidenceOf(readings, METER_SD)(what)).toBeCloseTo(byDensity(readings, what), 9);
  });

  test("of a dead outlet lie anywhere in the meter's noise; above it, a slip of the pen", () => {
    const readings = [R1, reading("R2", [22, 29.9]), reading("R3", [30, 41])];
    const what = effects({ columns: [dish], dead: new Set([1, 2]) });
    const noise = Math.log(1 / DEAD_DBUV);
    const slip = Math.log(SLIP / DEAD_DBUV);
    expect(evidenceOf(readings, METER_SD)(what)).toBeCloseTo(byDensity(readings, what) + 3 * noise + slip, 9);
  });

  test("that were not heard: nothing more of a dead outlet, the chance of it of a living one", () => {
    const readings = [R1, reading("R2", [60, 30], { predicted: [62, 33], silent: [false, true] })];
    const dead = effects({ dead: new Set([1]) });
    expect(evidenceOf(readings, METER_SD)(dead)).toBeCloseTo(
      byDensity(readings, dead) + Math.log(SLIP / DEAD_DBUV),
      9,
    );
    // Φ of a standard normal table: Φ(1) = 0.8413447, Φ(−1) = 0.1586553, Φ(−2) = 0.0227501.
    const spread = Math.sqrt(METER_SD ** 2 + OUTLET_SPREAD_DB ** 2 + HEAD_SPREAD_DB ** 2);
    for (const [z, phi] of [
      [-1, 0.1586553],
      [1, 0.8413447],
      [-2, 0.0227501],
    ] as const) {
      const near = [
        R1,
        reading("R2", [60, 30], { predicted: [62, DEAD_DBUV - z * spread], silent: [false, true] }),
      ];
      expect(evidenceOf(near, METER_SD)(effects())).toBeCloseTo(
        byDensity(near, effects()) + Math.log(phi),
        5,
      );
    }
    // A loss of 10 ± 3 dB brings 40 to the noise: half the chance; never below a slip of the pen.
    const run = { mean: 1, sd: 0.3, effect: new Map([[1, [0, -10]]]) };
    const lost = [R1, reading("R2", [60, 30], { predicted: [62, 40], silent: [false, true] })];
    const what = effects({ columns: [run] });
    expect(evidenceOf(lost, METER_SD)(what)).toBeCloseTo(byDensity(lost, what) + Math.log(0.5), 6);
    const loud = [R1, reading("R2", [60, 30], { predicted: [62, 90], silent: [false, true] })];
    expect(evidenceOf(loud, METER_SD)(effects())).toBeCloseTo(byDensity(loud, effects()) + Math.log(SLIP), 9);
    // The loss widens the chance: (30 − 36)/√(spread² + 3²) with its mean at 36.
    const wide = [R1, reading("R2", [60, 30], { predicted: [62, 46], silent: [false, true] })];
    const z = 6 / Math.sqrt(spread ** 2 + 9);
    // By Simpson's rule over the tail.
    const steps = 20_000;
    const density = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    let tail = 0;
    for (let at = 0; at <= steps; at += 1) {
      tail += density(z + (at * 12) / steps) * (at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2);
    }
    tail *= 12 / steps / 3;
    expect(evidenceOf(wide, METER_SD)(what)).toBeCloseTo(byDensity(wide, what) + Math.log(tail), 4);
  });
});

describe("volts", () => {
  const density = (x: number, sd: number) => Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
  const log = (likely: number, due: number) => Math.log((1 - SLIP) * likely + SLIP / due);
  const evidence = (volts: number | null, due: number | null, state?: "kept" | "low" | "lost"): number => {
    const readings = [reading("R1", [63.2, 54.1], { volts, voltsPredicted: due })];
    const what = effects({ power: new Map(state ? [[0, state]] : []) });
    return evidenceOf(readings, METER_SD)(what) - byDensity(readings, what);
  };

  test("kept, they lie about the prediction", () => {
    expect(evidence(17.4, 18)).toBeCloseTo(log(density(0.6, VOLTS_SPREAD), 18), 9);
    expect(evidence(17.4, 18, "kept")).toBeCloseTo(log(density(0.6, VOLTS_SPREAD), 18), 9);
  });
  test("lost, they lie near nought and above it", () => {
    expect(evidence(0.3, 18, "lost")).toBeCloseTo(log(2 * density(0.3, NO_VOLTS / 2), 18), 9);
  });
  test("low, anywhere below the prediction, up to it and not above", () => {
    expect(evidence(9, 18, "low")).toBeCloseTo(log(1 / 18, 18), 9);
    expect(evidence(18, 18, "low")).toBeCloseTo(log(1 / 18, 18), 9);
    expect(evidence(18.1, 18, "low")).toBeCloseTo(log(0, 18), 9);
  });
  test.each([
    ["none read", null, 18],
    ["none predicted", 12, null],
    ["no supply predicted", 0.2, NO_VOLTS],
  ] as const)("say nothing: %s", (_, volts, due) => {
    for (const state of ["kept", "low", "lost"] as const)
      expect(evidence(volts, due, state)).toBeCloseTo(0, 9);
  });
  test("a little more than none predicted says something", () => {
    expect(evidence(0.2, NO_VOLTS + 0.1, "lost")).toBeCloseTo(log(2 * density(0.2, 0.5), 1.1), 9);
  });
});
