import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { packReels, type ReelPacking } from "../../../src/engine/estimate/packReels";
import { leastBinsByTrying } from "../../support/leastBinsByTrying";
import { publishedCheck } from "../../support/published";
import { tries } from "../../support/tries";

const runs = (lengths: readonly number[]) =>
  lengths.map((length, index) => ({ label: `Run ${index + 1} of lengths`, length }));

const packed = (lengths: readonly number[], reel: number, slack = 0, waste = 0): ReelPacking => {
  const packing = packReels(runs(lengths), reel, slack, waste);
  if (isFault(packing)) throw new Error(packing.message);
  return packing;
};

const count = (...args: Parameters<typeof packed>): number => packed(...args).reels.length;

const tenths = fc.integer({ min: 1, max: 1000 }).map((value) => value / 10);

describe("runs onto whole reels", () => {
  test("the worked example of five runs", () => {
    const { inputs, expected } = publishedCheck("waste-and-reel");
    const { runs_ft, slack_ft_each, waste, box_ft } = inputs as {
      runs_ft: number[];
      slack_ft_each: number;
      waste: number;
      box_ft: number;
    };
    const { reels, proved } = packed(runs_ft, box_ft, slack_ft_each, waste);
    expect(proved).toBe(true);
    expect(reels).toHaveLength(expected.boxes_by_total as number);
    const left = reels.reduce((sum, { remainder }) => sum + remainder, 0);
    expect(reels.length * box_ft - left).toBeCloseTo(expected.order_ft as number, 6);
  });

  test("equals trying every way on small sets, and never fewer than the total needs", () => {
    fc.assert(
      fc.property(fc.array(tenths, { maxLength: 8 }), (lengths) => {
        const { reels, proved } = packed(lengths, 100);
        // In tenths, where the sums of the oracle are exact.
        expect(reels).toHaveLength(
          leastBinsByTrying(
            lengths.map((value) => Math.round(value * 10)),
            1000,
          ),
        );
        expect(proved).toBe(true);
        const total = lengths.reduce((sum, length) => sum + length, 0);
        expect(reels.length).toBeGreaterThanOrEqual(Math.ceil(total / 100 - 1e-6));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("every run is on one reel, and what is cut and what is left make the reel", () => {
    fc.assert(
      fc.property(fc.array(tenths, { maxLength: 40 }), fc.integer({ min: 0, max: 5 }), (lengths, slack) => {
        const { reels } = packed(lengths, 150, slack, 0.1);
        expect(reels.flatMap((reel) => reel.runs.map(({ label }) => label)).sort()).toEqual(
          runs(lengths)
            .map(({ label }) => label)
            .sort(),
        );
        for (const reel of reels) {
          const cut = reel.runs.reduce((sum, { length }) => sum + (length + slack) * 1.1, 0);
          expect(cut).toBeLessThanOrEqual(150 + 1e-4);
          expect(reel.remainder).toBeCloseTo(150 - cut, 4);
        }
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("doesn't depend on the order of the runs, and more runs never need fewer reels", () => {
    fc.assert(
      fc.property(fc.array(tenths, { minLength: 1, maxLength: 12 }), (lengths) => {
        expect(count([...lengths].reverse(), 100)).toBe(count(lengths, 100));
        expect(count(lengths.slice(1), 100)).toBeLessThanOrEqual(count(lengths, 100));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("boundary: runs that fill a reel exactly fit, though their sum in binary is more", () => {
    // 0.1 + 0.2 is more than 0.3 in doubles; thirty runs of 0.1 with 10 % fill 3.3.
    expect(count([0.1, 0.2], 0.3)).toBe(1);
    expect(count(Array<number>(30).fill(0.1), 3.3, 0, 0.1)).toBe(1);
    expect(count([100], 100)).toBe(1);
    expect(count([50, 50.001], 100)).toBe(2);
  });

  test("empty: no run, or runs of 0, need no reel", () => {
    expect(count([], 100)).toBe(0);
    expect(count([0, 0], 100, 3)).toBe(0);
  });

  test("no solution: a run longer than the reel is named with its cut and the reel", () => {
    expect(packReels(runs([20, 95]), 100, 3, 0.1)).toMatchObject({
      message:
        "Run 2 of lengths is 95, cut at 107.8 with slack and waste, and the reel holds 100. A run is not spliced: choose a longer reel, or put in a joint on purpose and enter two runs.",
    });
  });

  test("huge: 10,000 runs that pair off exactly", () => {
    // By hand: n/100 and 100 - n/100 fill a reel of 100, so 5,000 reels and nothing left.
    const lengths = Array.from({ length: 5000 }, (_, n) => [(n + 1) / 100, 100 - (n + 1) / 100]).flat();
    const { reels, proved } = packed(lengths, 100);
    expect({ reels: reels.length, proved }).toEqual({ reels: 5000, proved: true });
  });
});
