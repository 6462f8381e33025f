import fc from "fast-check";
import { findPatterns } from "../../../src/engine/packing/findPatterns";
import { firstFit } from "../../../src/engine/packing/firstFit";
import { fullestFirst } from "../../../src/engine/packing/fullestFirst";
import { lowerBound } from "../../../src/engine/packing/lowerBound";
import { pack } from "../../../src/engine/packing/pack";
import { relaxation } from "../../../src/engine/packing/relaxation";
import { countBySize } from "../../../src/engine/packing/stock";
import { leastBinsByTrying } from "../../support/leastBinsByTrying";
import { tries } from "../../support/tries";

const descending = (sizes: readonly number[]): number[] => [...sizes].sort((a, b) => b - a);

const job = fc
  .integer({ min: 1, max: 32 })
  .chain((capacity) =>
    fc.tuple(
      fc.constant(capacity),
      fc.array(fc.integer({ min: 1, max: capacity }), { minLength: 1, maxLength: 8 }),
    ),
  );

function loadsOf(sizes: readonly number[], bins: readonly number[]): number[] {
  const loads: number[] = [];
  sizes.forEach((size, index) => (loads[bins[index]!] = (loads[bins[index]!] ?? 0) + size));
  return loads;
}

describe("packing into the fewest bins", () => {
  test("equals trying every way on small sets", () => {
    fc.assert(
      fc.property(job, ([capacity, sizes]) => {
        const packing = pack(sizes, capacity);
        expect(packing.proved).toBe(true);
        expect(packing.count).toBe(leastBinsByTrying(sizes, capacity));
        const loads = loadsOf(sizes, packing.bins);
        expect(loads).toHaveLength(packing.count);
        expect(Math.max(...loads)).toBeLessThanOrEqual(capacity);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("finds what first-fit decreasing misses", () => {
    // By hand: 4+3+3 twice fills two bins of 10; first-fit decreasing opens with 4+4, then 3+3+3, then 3.
    const sizes = [4, 4, 3, 3, 3, 3];
    expect(Math.max(...firstFit(sizes, 10)) + 1).toBe(3);
    expect(pack(sizes, 10)).toMatchObject({ count: 2, proved: true });
  });

  test("also beside more sizes than are searched through", () => {
    // A hundred sizes that each take a bin, and the same six again: a hundred bins and two.
    const large = Array.from({ length: 100 }, (_, index) => 9900 + index);
    const sizes = [...large, ...[4, 4, 3, 3, 3, 3].map((size) => 1000 * size)];
    expect(Math.max(...firstFit(descending(sizes), 10_000)) + 1).toBe(103);
    expect(pack(sizes, 10_000)).toMatchObject({ count: 102, proved: true });
  });

  test("the search alone agrees with trying every way, on both sides of the least number", () => {
    fc.assert(
      fc.property(job, ([capacity, sizes]) => {
        const least = leastBinsByTrying(sizes, capacity);
        const stock = countBySize(descending(sizes));
        const patterns = findPatterns(stock, capacity, least, { steps: 1e6 });
        const used = patterns!.reduce((sum, { times }) => sum + times, 0);
        expect(used).toBe(least);
        stock.forEach(({ count }, index) =>
          expect(patterns!.reduce((sum, { taken, times }) => sum + taken[index]! * times, 0)).toBe(count),
        );
        if (least > 0) expect(findPatterns(stock, capacity, least - 1, { steps: 1e6 })).toBeUndefined();
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("the lower bound never passes the least number", () => {
    fc.assert(
      fc.property(job, ([capacity, sizes]) => {
        const bound = lowerBound(countBySize(descending(sizes)), capacity);
        expect(bound).toBeLessThanOrEqual(leastBinsByTrying(sizes, capacity));
        expect(bound * capacity).toBeGreaterThanOrEqual(sizes.reduce((sum, size) => sum + size, 0));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("never needs more than first-fit decreasing, nor fewer than the bound, in large sets", () => {
    const sizes = fc.array(fc.integer({ min: 50_000, max: 600_000 }), { minLength: 100, maxLength: 200 });
    fc.assert(
      fc.property(sizes, (some) => {
        const sorted = descending(some);
        const { count, bins } = pack(some, 1_000_000);
        expect(count).toBeLessThanOrEqual(1 + Math.max(...firstFit(sorted, 1_000_000)));
        expect(count).toBeGreaterThanOrEqual(lowerBound(countBySize(sorted), 1_000_000));
        const loads = loadsOf(some, bins);
        expect(loads).toHaveLength(count);
        expect(Math.max(...loads)).toBeLessThanOrEqual(1_000_000);
      }),
      { numRuns: tries(10, 50) },
    );
  });

  test("does not depend on the order", () => {
    fc.assert(
      fc.property(job, ([capacity, sizes]) => {
        expect(pack([...sizes].reverse(), capacity).count).toBe(pack(sizes, capacity).count);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("huge: 3,000 items of 3 in bins of 8 need 1,500, which the plain total does not show", () => {
    // By hand: two of 3 fit into 8, a third does not; the total alone would say 1,125.
    expect(pack(Array<number>(3000).fill(3), 8)).toMatchObject({ count: 1500, proved: true });
  });

  test("huge: 500 items of 4 and 500 of 3 in bins of 10 need 375", () => {
    // By hand: 4+3+3 fills 250 bins, the 250 fours left go in pairs. No less: worth half a bin a four and
    // a quarter a three, no bin holds more than one bin's worth (4+3+3, 4+4, 3+3+3), and all are worth 375.
    const sizes = Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? 4 : 3));
    expect(pack(sizes, 10)).toMatchObject({ count: 375, proved: true });
  });

  test("the lower bound is never below the total over the capacity, in fine units too", () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 100_000_000 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(sizes, (some) => {
        const total = some.reduce((sum, size) => sum + size, 0);
        const bound = lowerBound(countBySize(descending(some)), 100_000_000);
        expect(bound).toBeGreaterThanOrEqual(Math.ceil(total / 100_000_000));
        expect(bound).toBeLessThanOrEqual(some.length);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("the relaxation's bound never passes the least number", () => {
    fc.assert(
      fc.property(job, ([capacity, sizes]) => {
        const { bound } = relaxation(countBySize(descending(sizes)), capacity);
        expect(bound).toBeLessThanOrEqual(leastBinsByTrying(sizes, capacity));
        expect(bound * capacity).toBeGreaterThanOrEqual(sizes.reduce((sum, size) => sum + size, 0));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("empty", () => {
    expect(pack([], 8)).toEqual({ bins: [], count: 0, proved: true });
  });

  test("a search that has spent its steps says so", () => {
    const budget = { steps: 1 };
    expect(findPatterns(countBySize([6, 5, 4, 3, 2, 2, 2, 1]), 10, 3, budget)).toBeUndefined();
    expect(budget.steps).toBeLessThanOrEqual(0);
  });
});

describe("fullest first", () => {
  test("places every item once and no bin beyond its capacity", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 97 }), { maxLength: 60 }), (unsorted) => {
        const sizes = descending(unsorted);
        const { bins, count } = fullestFirst(countBySize(sizes), 97);
        expect(bins).toHaveLength(sizes.length);
        const loads = loadsOf(sizes, bins);
        expect(loads).toHaveLength(count);
        for (const load of loads) expect(load).toBeLessThanOrEqual(97);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("by hand: 6 takes 4 and not 3, and 5 takes 3 + 2", () => {
    expect(fullestFirst(countBySize([6, 5, 4, 3, 2]), 10)).toEqual({ bins: [0, 1, 0, 1, 1], count: 2 });
  });
});

describe("first fit", () => {
  test("places by hand", () => {
    expect(firstFit([5, 6, 4, 3, 2], 10)).toEqual([0, 1, 0, 1, 2]);
    expect(firstFit([], 10)).toEqual([]);
  });

  test("equals looking through the bins one by one", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 60 }), (sizes) => {
        const loads: number[] = [];
        const plain = sizes.map((size) => {
          let bin = loads.findIndex((load) => load + size <= 20);
          if (bin < 0) bin = loads.push(0) - 1;
          loads[bin] = loads[bin]! + size;
          return bin;
        });
        expect(firstFit(sizes, 20)).toEqual(plain);
      }),
      { numRuns: tries(100, 1000) },
    );
  });
});
