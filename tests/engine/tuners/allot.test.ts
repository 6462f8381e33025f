import fc from "fast-check";
import { faults, isFault } from "../../../src/engine/faults";
import { allot, NONE } from "../../../src/engine/tuners/allot";
import { leastBinsByTrying } from "../../support/leastBinsByTrying";
import { tries } from "../../support/tries";

const rooms = fc.record({
  capacity: fc.integer({ min: 1, max: 32 }),
  rows: fc.array(
    fc.record({
      tuners: fc.integer({ min: 0, max: 9 }),
      room: fc.option(fc.constantFrom("101", "102", "103", "104")),
    }),
    { minLength: 1, maxLength: 8 },
  ),
});

type Job = typeof rooms extends fc.Arbitrary<infer T> ? T : never;

const run = ({ capacity, rows }: Job) =>
  allot(
    rows.map(({ tuners }) => tuners),
    capacity,
    rows.map(({ room }) => room),
  ) as (number | string | object)[];

/** Tuners of each room or lone row, by a route of the test's own. */
function sizesOf({ rows }: Job): Map<string, number> {
  const sizes = new Map<string, number>();
  rows.forEach(({ tuners, room }, row) => {
    const key = room ?? `row ${row}`;
    sizes.set(key, (sizes.get(key) ?? 0) + tuners);
  });
  return sizes;
}

describe("allotment of rooms to head units", () => {
  test("uses as few head units as trying every way does, and none beyond its capacity", () => {
    fc.assert(
      fc.property(rooms, (job) => {
        const answers = run(job);
        const loads = new Map<number, number>();
        answers.forEach((answer, row) => {
          if (typeof answer !== "number") return;
          loads.set(answer, (loads.get(answer) ?? 0) + job.rows[row]!.tuners);
        });
        const fitting = [...sizesOf(job).values()].filter((size) => size > 0 && size <= job.capacity);
        expect(loads.size).toBe(leastBinsByTrying(fitting, job.capacity));
        for (const load of loads.values()) expect(load).toBeLessThanOrEqual(job.capacity);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("never splits a room, and faults every row of a room that is too large", () => {
    fc.assert(
      fc.property(rooms, (job) => {
        const answers = run(job);
        const sizes = sizesOf(job);
        const seen = new Map<string, unknown>();
        job.rows.forEach(({ room, tuners }, row) => {
          const key = room ?? `row ${row}`;
          if (tuners === 0) return expect(answers[row]).toBe(NONE);
          if (seen.has(key)) expect(answers[row]).toEqual(seen.get(key));
          seen.set(key, answers[row]);
          expect(isFault(answers[row])).toBe(sizes.get(key)! > job.capacity);
        });
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("numbers head units from 1 in the order of the rows that first use them", () => {
    fc.assert(
      fc.property(rooms, (job) => {
        const first = run(job).filter(
          (answer, at, all) => typeof answer === "number" && all.indexOf(answer) === at,
        );
        expect(first).toEqual(first.map((_, index) => index + 1));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("the number of head units doesn't depend on the order of the rows", () => {
    const most = (answers: unknown[]): number =>
      Math.max(0, ...answers.filter((answer) => typeof answer === "number"));
    fc.assert(
      fc.property(rooms, (job) => {
        expect(most(run({ ...job, rows: [...job.rows].reverse() }))).toBe(most(run(job)));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("neighbours stay together where that costs no head unit", () => {
    // By hand: eight single tuners a head unit, in row order.
    const answers = allot(Array<number>(20).fill(1), 8);
    expect(answers).toEqual([...Array<number>(8).fill(1), ...Array<number>(8).fill(2), 3, 3, 3, 3]);
  });

  test("row order is given up where it would cost a head unit", () => {
    // By hand: 3, 3, 4, 4, 3, 3 in row order needs three of ten; 4 + 3 + 3 twice needs two.
    const answers = allot([3, 3, 4, 4, 3, 3], 10) as number[];
    expect(new Set(answers)).toEqual(new Set([1, 2]));
    expect(answers[2]).not.toBe(answers[3]);
  });

  test("blank rows, rows without a tuner, and bad rows leave their neighbours alone", () => {
    const bad = faults.notANumber("tuners", "two", {});
    expect(allot([1, null, 0, bad, 1], 8)).toEqual([1, null, NONE, bad, 1]);
    expect(allot([1, 0, 2], 8, ["A", "a", bad])).toEqual([1, NONE, bad]);
    expect(allot([0, 0], 8, ["A", "A"])).toEqual([NONE, NONE]);
    // A row of no tuners in a room that is too large is not what is wrong with it.
    expect(allot([9, 0], 8, ["A", "A"])).toMatchObject([{ kind: "fault" }, NONE]);
  });

  test("a room that is too large is named with its tuners and the capacity", () => {
    const answers = allot([5, 4, 2], 8, ["Lounge", "lounge", "Bar"]) as { message: string }[];
    expect(answers[0]!.message).toBe(
      'Group "Lounge" needs 9 tuners, more than the 8 that one head unit serves. Split it into groups of 8 or fewer, or use a head unit with more user bands.',
    );
    expect(answers[1]).toEqual(answers[0]);
    expect(answers[2]).toBe(1);
    expect(allot([9], 8)).toMatchObject([{ message: expect.stringMatching(/^Row 1 needs 9 tuners/) }]);
  });

  test("lists of two lengths are refused", () => {
    expect(allot([1, 2], 8, ["A"])).toEqual(faults.shortColumn("groups", 1, 2));
  });

  test("empty", () => {
    expect(allot([], 8, [])).toEqual([]);
    expect(allot([null, null], 8)).toEqual([null, null]);
  });

  test("huge: 10,000 rows in rooms of three, none split, near the bound of the total", () => {
    const tuners = Array.from({ length: 10_000 }, (_, row) => 1 + (row % 3 === 0 ? 1 : 0));
    const groups = tuners.map((_, row) => `room ${Math.floor(row / 3)}`);
    const answers = allot(tuners, 32, groups) as number[];
    // By hand: 3,333 rooms of 2 + 1 + 1 = 4 tuners and a last row of 2: eight rooms a head unit, 417 in all.
    expect(Math.max(...answers)).toBe(417);
  });
});
