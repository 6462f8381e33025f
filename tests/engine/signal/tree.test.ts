import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { distributionTree, type TreeRow } from "../../../src/engine/signal/distributionTree";
import { treeLoss } from "../../../src/engine/signal/treeLoss";
import { tries } from "../../support/tries";

/** Follows one row's feeds up to the top, adding as it goes: slow and plain. */
function walkedByHand(
  row: number,
  ids: readonly string[],
  fed: readonly (string | null)[],
  own: readonly number[],
): { loss: number; root: string } | "bad" {
  let loss = own[row]!;
  let at = row;
  for (let steps = 0; steps <= ids.length; steps += 1) {
    if (ids.filter((id) => id === ids[at]).length > 1) return "bad";
    const from = fed[at] ?? null;
    if (from === null) return { loss, root: ids[at]! };
    if (from === "TOP") return { loss, root: from };
    at = ids.indexOf(from);
    if (at < 0) return "bad";
    loss += own[at]!;
  }
  return "bad";
}

test("every row agrees with a naive walk, in good trees and in bad ones", () => {
  const size = fc.integer({ min: 1, max: 25 });
  const tree = size.chain((n) =>
    fc.tuple(
      fc.array(fc.integer({ min: 0, max: n + 1 }), { minLength: n, maxLength: n }),
      fc.array(fc.integer({ min: -2, max: n + 1 }), { minLength: n, maxLength: n }),
      fc.array(fc.integer({ min: -20, max: 200 }), { minLength: n, maxLength: n }),
      fc.boolean(),
    ),
  );
  let bad = 0;
  let good = 0;
  fc.assert(
    fc.property(tree, ([names, feeds, own, distinct]) => {
      const ids = names.map((name, row) => `n${distinct ? row : name}`);
      const fed = feeds.map((feed) => (feed === -2 ? null : feed === -1 ? "TOP" : `n${feed}`));
      const found = distributionTree(ids, fed, ["TOP"]);
      const sums = treeLoss(
        found,
        ids,
        own.map((loss) => [loss, 2 * loss]),
      );
      ids.forEach((_, row) => {
        const expected = walkedByHand(row, ids, fed, own);
        if (expected === "bad") {
          bad += 1;
          expect(isFault(found.rows[row])).toBe(true);
          expect(sums[row]!.every(isFault)).toBe(true);
        } else {
          good += 1;
          expect((found.rows[row] as TreeRow).root).toBe(expected.root);
          expect(sums[row]).toEqual([expected.loss, 2 * expected.loss]);
        }
      });
    }),
    { numRuns: tries(100, 1000) },
  );
  // Neither kind may be so rare that the property says nothing about it.
  expect(Math.min(bad, good)).toBeGreaterThan(tries(100, 1000));
});

describe("huge", () => {
  const n = 10_000;
  const ids = Array.from({ length: n }, (_, i) => `r${i}`);

  test.each([
    ["fed from the row before", (i: number) => (i === 0 ? null : `r${i - 1}`), (i: number) => i + 1],
    ["fed from the row after", (i: number) => (i === n - 1 ? null : `r${i + 1}`), (i: number) => n - i],
    ["all from the first", (i: number) => (i === 0 ? null : "r0"), (i: number) => (i === 0 ? 1 : 2)],
  ])("10 000 rows, %s", (_, feed, expected) => {
    const tree = distributionTree(
      ids,
      ids.map((_, i) => feed(i)),
      [],
    );
    const sums = treeLoss(
      tree,
      ids,
      ids.map(() => [1]),
    );
    expect(sums.map(([sum]) => sum)).toEqual(ids.map((_, i) => expected(i)));
  });

  test("one loop of 10 000 rows is named in a sentence of readable length", () => {
    const tree = distributionTree(
      ids,
      ids.map((_, i) => `r${(i + 1) % n}`),
      [],
    );
    const first = tree.rows[5_000];
    if (!isFault(first)) throw new Error("no fault");
    expect(first.message).toContain('The rows "r0", "r1", "r2"');
    expect(first.message).toContain("9992 more");
    expect(first.message.length).toBeLessThan(300);
    expect(tree.rows.every(isFault)).toBe(true);
    expect(tree.order).toEqual([]);
  });
});

describe("coincident and empty", () => {
  test("no rows", () => {
    expect(distributionTree([], [], [])).toEqual({ rows: [], order: [] });
    expect(treeLoss(distributionTree([], [], []), [], [])).toEqual([]);
  });
  test("a row that feeds itself", () => {
    const [row] = distributionTree(["a"], ["A"], []).rows;
    expect(row).toMatchObject({
      kind: "fault",
      message: expect.stringContaining('"a" is fed from itself') as string,
    });
  });
  test("an id twice is a fault even where the second has an unreadable feed", () => {
    const unreadable = { kind: "fault", code: "#VALUE!", message: "unreadable" } as const;
    const { rows } = distributionTree(["a", "a"], [null, unreadable], []);
    expect(rows.every(isFault)).toBe(true);
  });
  test("a row below two bad ones is told of the upper, in which the trouble starts", () => {
    const { rows } = distributionTree(["a", "b", "c"], ["x", "a", "b"], []);
    expect(rows[2]).toMatchObject({ message: expect.stringContaining('hangs below "a"') as string });
  });
});
