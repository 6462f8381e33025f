/** Diagnosis against jobs with planted faults, from a simulator that shares nothing with it. */
import { diagnose, NOTHING, NOT_MEASURED, type HeadReadings } from "../../../src/engine/diagnosis/diagnose";
import { simulateJob, SIMULATED_CAUSES } from "../../support/simulateFaults";
import { tries } from "../../support/tries";

const FOUR = [950, 1350, 1750, 2150];
const ENDS = [950, 2150];

function headsOf(
  job: ReturnType<typeof simulateJob>,
  frequencies: readonly number[],
  withVolts = true,
): HeadReadings[] {
  return [
    {
      head: "H1",
      readings: job.outlets.map(({ name, branch, predicted, measured, volts }) => ({
        outlet: name,
        path: branch === "B2" ? ["B2", "B1"] : ["B1"],
        frequencies,
        predicted,
        measured,
        volts: withVolts ? volts : null,
        voltsPredicted: 18,
      })),
    },
  ];
}

function rates(jobs: number, frequencies: readonly number[], withVolts = true) {
  const confusion = new Map<string, Map<string, number>>();
  let first = 0;
  let three = 0;
  for (let seed = 1; seed <= jobs; seed += 1) {
    const job = simulateJob(seed, 1, frequencies);
    const [planted] = job.planted;
    const found = diagnose(headsOf(job, frequencies, withVolts));
    const place = found.findIndex(({ cause, where }) => cause === planted!.cause && where === planted!.where);
    if (place === 0) first += 1;
    if (place >= 0 && place < 3) three += 1;
    const row = confusion.get(planted!.cause) ?? new Map<string, number>();
    row.set(found[0]!.cause, (row.get(found[0]!.cause) ?? 0) + 1);
    confusion.set(planted!.cause, row);
  }
  return { first: first / jobs, three: three / jobs, confusion };
}

function printed(title: string, { first, three, confusion }: ReturnType<typeof rates>): void {
  const heads = [
    ...new Set([...SIMULATED_CAUSES, ...[...confusion.values()].flatMap((row) => [...row.keys()])]),
  ];
  const lines = [...confusion].map(
    ([cause, row]) =>
      `  ${cause.padEnd(30)}${heads.map((head) => String(row.get(head) ?? 0).padStart(6)).join("")}`,
  );
  process.stdout.write(
    `${title}: cause and place first ${(100 * first).toFixed(1)} %, in the first three ${(100 * three).toFixed(1)} %\n` +
      `  planted \\ first named: ${heads.map((head, i) => `${i + 1} ${head}`).join(", ")}\n${lines.join("\n")}\n`,
  );
}

const SOME = tries(200, 400);
const JOBS = tries(400, 2000);

describe("seeded jobs, meter error ±1.5 dB", () => {
  test(`one planted fault, four frequencies, ${SOME} jobs`, () => {
    const found = rates(SOME, FOUR);
    printed("Single faults, 4 frequencies", found);
    expect(found.first).toBeGreaterThanOrEqual(0.85);
    expect(found.three).toBeGreaterThanOrEqual(0.95);
  });

  test(`one planted fault, the two ends of the band, ${JOBS} jobs`, () => {
    const found = rates(JOBS, ENDS);
    printed("Single faults, 2 frequencies", found);
    expect(found.first).toBeGreaterThanOrEqual(0.85);
    expect(found.three).toBeGreaterThanOrEqual(0.95);
  });

  test(`one planted fault and no volts read, ${SOME} jobs: below the target, and printed as it is`, () => {
    const found = rates(SOME, ENDS, false);
    printed("Single faults, 2 frequencies, no volts", found);
    // A leg without power and its like can't be seen without volts.
    expect(found.first).toBeGreaterThanOrEqual(0.6);
    expect(found.three).toBeGreaterThanOrEqual(0.75);
  });

  test(`two planted faults, ${JOBS} jobs: both among the first three in three of four`, () => {
    let both = 0;
    let one = 0;
    for (let seed = 1; seed <= JOBS; seed += 1) {
      const job = simulateJob(seed + 50_000, 2, ENDS);
      const found = diagnose(headsOf(job, ENDS)).slice(0, 3);
      const hits = job.planted.filter(({ cause, where }) =>
        found.some((row) => row.cause === cause && row.where === where),
      ).length;
      if (hits === 2) both += 1;
      if (hits >= 1) one += 1;
    }
    process.stdout.write(
      `Two faults, 2 frequencies: both in the first three ${((100 * both) / JOBS).toFixed(1)} %, at least one ${((100 * one) / JOBS).toFixed(1)} %\n`,
    );
    expect(one / JOBS).toBeGreaterThanOrEqual(0.9);
    expect(both / JOBS).toBeGreaterThanOrEqual(0.75);
  });

  test("no fault: nothing stands out comes first in at least 95 % of 200 jobs", () => {
    let clear = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      if (diagnose(headsOf(simulateJob(seed, 0, ENDS), ENDS))[0]!.cause === NOTHING) clear += 1;
    }
    process.stdout.write(`No fault: nothing stands out first ${(clear / 2).toFixed(1)} %\n`);
    expect(clear / 200).toBeGreaterThanOrEqual(0.95);
  });
});

test("readings equal to the prediction: nothing stands out", () => {
  const job = simulateJob(1, 0, ENDS);
  for (const outlet of job.outlets) outlet.measured = [...outlet.predicted];
  expect(diagnose(headsOf(job, ENDS))[0]!.cause).toBe(NOTHING);
});

test("nothing measured: a sentence that says what to measure", () => {
  expect(diagnose([])).toMatchObject([
    { cause: NOT_MEASURED, next: expect.stringMatching(/Measure every outlet/) as string },
  ]);
});

test("an absurd reading is no exception", () => {
  const job = simulateJob(1, 0, ENDS);
  job.outlets[0]!.measured = [0, 140];
  for (const { probability } of diagnose(headsOf(job, ENDS))) expect(Number.isFinite(probability)).toBe(true);
});
