/** Bounds worked by hand, and packings whose least number is known because they were cut from full bins. */
import { lowerBound } from "../../../src/engine/packing/lowerBound";
import { pack } from "../../../src/engine/packing/pack";
import { relaxation } from "../../../src/engine/packing/relaxation";
import { tries } from "../../support/tries";

describe("the lower bound by hand", () => {
  // How many of a size fit one bin decides, where the total alone says less.
  test.each([
    ["3 of 8: two fit, the total says 1,125", [[3, 3000]], 8, 1500],
    ["34 of 100: two fit", [[34, 10]], 100, 5],
    ["26 of 100: three fit", [[26, 10]], 100, 4],
    ["25 of 100: four fit exactly", [[25, 8]], 100, 2],
    ["50 of 100: two fit exactly", [[50, 7]], 100, 4],
    ["51 of 100: one fits", [[51, 7]], 100, 7],
    [
      "60 and 41: none beside the other",
      [
        [60, 3],
        [41, 2],
      ],
      100,
      4,
    ],
    [
      "60 and 40 go in pairs",
      [
        [60, 3],
        [40, 3],
      ],
      100,
      3,
    ],
    ["8 of 100: twelve fit", [[8, 24]], 100, 2],
    // Nothing fits beside a 97, and 45 + 12·5 = 105.
    [
      "97, 45 and 5",
      [
        [97, 20],
        [45, 1],
        [5, 12],
      ],
      100,
      22,
    ],
  ] as const)("%s", (_, stock, capacity, bins) => {
    expect(
      lowerBound(
        stock.map(([size, count]) => ({ size, count })),
        capacity,
      ),
    ).toBe(bins);
  });

  test("the relaxation finds the same where parts of a bin are as good as bins", () => {
    // Two of 34 in each of five bins.
    expect(relaxation([{ size: 34, count: 10 }], 100)).toEqual({
      bound: 5,
      whole: [{ taken: [2], times: 5 }],
    });
    expect(
      relaxation(
        [
          { size: 60, count: 3 },
          { size: 40, count: 3 },
        ],
        100,
      ),
    ).toMatchObject({ bound: 3 });
  });
});

test("500 of 4 and 500 of 3 in bins of 10: each in its bin, 375 of them, none too full", () => {
  // By hand: 4+3+3 fills 250 bins, and the 250 fours left go in pairs.
  const sizes = Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? 4 : 3));
  const { bins, count } = pack(sizes, 10);
  const loads = new Array<number>(375).fill(0);
  bins.forEach((bin, item) => (loads[bin]! += sizes[item]!));
  expect(count).toBe(375);
  expect(bins).toHaveLength(1000);
  expect(loads).toHaveLength(375);
  expect(Math.max(...loads)).toBeLessThanOrEqual(10);
  expect(loads.reduce((sum, load) => sum + load, 0)).toBe(3500);
});

describe("cut from full bins, so that no fewer can do", () => {
  /** Integers by a linear congruence (Park and Miller's), from 0 to below. */
  function numbers(seed: number): (below: number) => number {
    let state = seed;
    return (below) => {
      state = (state * 48_271) % 2_147_483_647;
      return state % below;
    };
  }
  function cut(seed: number, bins: number, capacity: number): number[] {
    const draw = numbers(seed);
    return Array.from({ length: bins }, () => {
      const cuts = [...new Set(Array.from({ length: 2 + draw(3) }, () => 1 + draw(capacity - 1)))].sort(
        (a, b) => a - b,
      );
      return [...cuts, capacity].map((end, at) => end - (cuts[at - 1] ?? 0));
    }).flat();
  }

  // In 60 units parts of bins are tried first, in 1,800 only whole ones are searched for.
  test.each([60, 1800])(
    "%d units: loads never pass the capacity, and what is called proved is that number",
    (capacity) => {
      let proved = 0;
      const jobs = tries(60, 300);
      for (let seed = 1; seed <= jobs; seed += 1) {
        const sizes = cut(seed, 8, capacity);
        const packing = pack(sizes, capacity);
        const loads = new Array<number>(packing.count).fill(0);
        packing.bins.forEach((bin, item) => (loads[bin]! += sizes[item]!));
        expect(packing.bins).toHaveLength(sizes.length);
        expect(Math.max(...loads)).toBeLessThanOrEqual(capacity);
        expect(Math.min(...loads)).toBeGreaterThan(0);
        expect(packing.count).toBeGreaterThanOrEqual(8);
        if (packing.proved) expect(packing.count).toBe(8);
        if (packing.proved) proved += 1;
      }
      // Were few of them proved, the property would say little.
      expect(proved / jobs).toBeGreaterThan(capacity === 60 ? 0.9 : 0.5);
    },
  );
});
