/**
 * Seeded jobs with three switches on one dish, the third behind the second, through DIAGNOSE: one dish is one dish.
 * Faults are planted by arithmetic of the tests' own on readings of tests/support/simulateFaults.ts, which knows
 * nothing of the diagnosis; sizes as there.
 */
import type { Matrix } from "../../src/functions/core/cells";
import { call } from "../support/functionGroup";
import { randomFrom, simulateJob, type SimulatedOutlet } from "../support/simulateFaults";
import { tries } from "../support/tries";

const BAND = [950, 2150] as const;
const JOBS = tries(40, 300);
const HEADS = ["H1", "H2", "H3"] as const;
const list = (cells: readonly (number | string)[]): Matrix => cells.map((cell) => [cell]);

interface Found {
  readonly cause: string;
  readonly where: string;
  readonly probability: number;
}

/** A job without a fault below each switch. */
const soundJob = (seed: number): SimulatedOutlet[][] =>
  HEADS.map((head, index) =>
    simulateJob(seed * 10 + index, 0, BAND).outlets.map((outlet) => ({
      ...outlet,
      name: `${head}-${outlet.name}`,
      branch: `${head}-${outlet.branch}`,
    })),
  );

const losing = (outlets: readonly SimulatedOutlet[], loss: (f: number) => number): SimulatedOutlet[] =>
  outlets.map((outlet) => ({
    ...outlet,
    measured: outlet.measured.map((level, k) => Math.max(level - loss(BAND[k]!), 20)),
  }));

function diagnosed(below: readonly (readonly SimulatedOutlet[])[], withDish = true): Found[] {
  const outlets = below.flat();
  const branches = HEADS.flatMap((head) => [
    [`${head}-B1`, head],
    [`${head}-B2`, `${head}-B1`],
  ]) as [string, string][];
  const rows = call(
    "DIAGNOSE",
    list(outlets.map(({ name }) => name)),
    list(outlets.map(({ branch }) => branch)),
    outlets.map(({ predicted }) => predicted),
    outlets.map(({ measured }) => measured),
    [[...BAND]],
    list(outlets.map(({ volts }) => volts)),
    list(outlets.map(() => 18)),
    list(branches.map(([name]) => name)),
    list(branches.map(([, from]) => from)),
    null,
    1.5,
    list(HEADS),
    list(["", "", ""]),
    list([18, 18, 18]),
    ...(withDish
      ? ([list(["", "", ""]), list(["D1", "D1", "H2"]), list(["H1", "H2", "H3"]), list(["D1"])] as const)
      : []),
  ) as Matrix;
  return rows.map(([cause, where, probability]) => ({
    cause: String(cause),
    where: String(where),
    probability: Number(probability),
  }));
}

const seeds = Array.from({ length: JOBS }, (_, index) => index + 1);
const percent = (count: number): string => `${((100 * count) / JOBS).toFixed(1)} %`;

test(`${JOBS} jobs with a dish off its aim: it stands there once, under the dish's name`, () => {
  let [first, before] = [0, 0];
  for (const seed of seeds) {
    const loss = 3 + 6 * randomFrom(seed + 7)();
    const job = soundJob(seed).map((outlets) => losing(outlets, () => loss));
    const found = diagnosed(job);
    const misaligned = found.filter(({ cause }) => cause === "misaligned");
    expect(misaligned.map(({ where }) => where)).toEqual(misaligned.length > 0 ? ["D1"] : []);
    if (found[0]!.cause === "misaligned") first += 1;
    if (diagnosed(job, false)[0]!.cause === "misaligned") before += 1;
  }
  process.stdout.write(
    `Dish off its aim, three switches: first, at the dish ${percent(first)}; as three head units for themselves, first at one of them ${percent(before)}\n`,
  );
  expect(first / JOBS).toBeGreaterThanOrEqual(0.9);
});

test(`${JOBS} jobs with a wet feeder between two switches: the feeder is named; a trunk to all that is behind it takes the same`, () => {
  let [first, three] = [0, 0];
  for (const seed of seeds) {
    const loss = 4 + 8 * randomFrom(seed + 11)();
    const job = soundJob(seed);
    const found = diagnosed([job[0]!, job[1]!, losing(job[2]!, (f) => loss * Math.sqrt(f / 2150))]);
    const place = found.findIndex(
      ({ cause, where }) => cause === "wrong or wet cable" && where === "H2 to H3",
    );
    if (place === 0) first += 1;
    if (place >= 0 && place < 3) three += 1;
    // The dish also feeds the other two, which read as they should.
    expect(found.some(({ where, probability }) => where === "D1" && probability > 0.05)).toBe(false);
  }
  process.stdout.write(`Wet feeder: first ${percent(first)}, in the first three ${percent(three)}\n`);
  expect(three / JOBS).toBeGreaterThanOrEqual(0.85);
});

test(`${JOBS} jobs with one bad outlet, and none: the dish is left alone`, () => {
  let [right, clear] = [0, 0];
  for (const seed of seeds) {
    const job = soundJob(seed);
    if (diagnosed(job)[0]!.cause === "nothing stands out") clear += 1;
    const [bad] = job[0]!;
    const wet = losing([bad!], (f) => 9 * Math.sqrt(f / 2150))[0]!;
    const [found] = diagnosed([[wet, ...job[0]!.slice(1)], job[1]!, job[2]!]);
    if (found!.where === wet.name) right += 1;
  }
  process.stdout.write(
    `One bad outlet of three switches: named first ${percent(right)}; no fault: nothing stands out ${percent(clear)}\n`,
  );
  expect(right / JOBS).toBeGreaterThanOrEqual(0.9);
  expect(clear / JOBS).toBeGreaterThanOrEqual(0.85);
});

test("a bad run to the first of four outlets in a loop is named at it, not at each of them", () => {
  const predicted = [
    [66, 62],
    [64, 59],
    [66, 60],
    [64, 56],
  ];
  const measured = predicted.map(([low, high]) => [low! - 5, high! - 8]);
  const rows = call(
    "DIAGNOSE",
    list(["R1", "R2", "R3", "R4", "S1", "S2"]),
    list(["H1", "R1", "R2", "R3", "H1", "H1"]),
    [...predicted, [70, 66], [68, 64]],
    [...measured, [70.3, 65.8], [67.8, 64.4]],
  ) as Matrix;
  expect(rows[0]!.slice(0, 2)).toEqual(["wrong or wet cable", "R1"]);
});
