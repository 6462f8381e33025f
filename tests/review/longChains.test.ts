/** Many formulas, each reading the last: what hangs on what is found in one pass, not in one for each formula. */
import type { Book } from "../../src/workbooks/book";
import { followersOf } from "../../src/review/followersOf";
import { sliced } from "../../src/review/sliced";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";

/** More than the trees of formulas that are kept: neither chain finds its own again. */
const SHORT = 6_000;
const LONG = 4 * SHORT;
/** Of four times the length: one pass takes 4 times as long, a pass for each formula 16 times. */
const MOST_TIMES = 10;

const { sheets, ...empty } = layOut(multiRoom);

function chain(formula: (row: number) => string, length: number): Book {
  const cells = Object.fromEntries(
    Array.from({ length }, (_, index) => [
      `A${index + 1}`,
      index === 0 ? { value: 1 } : { formula: formula(index + 1) },
    ]),
  );
  return {
    ...empty,
    names: [{ name: "the_end", sheet: "Chain", range: `$A$${length}` }],
    sheets: [{ ...sheets[0]!, name: "Chain", cells: { ...cells, B1: { formula: "1+1" } } }],
  };
}

/** Of the processor, which others may have most of. */
function microseconds(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return user + system;
}

describe.each([
  ["the cell above", (row: number) => `A${row - 1}+1`],
  ["all cells above", (row: number) => `SUM(A$1:A${row - 1})`],
])("a chain that reads %s", (_, formula) => {
  const [short, long] = [chain(formula, SHORT), chain(formula, LONG)];

  test("follows from its first cell to its last, and not back", () => {
    const follows = followersOf(long, [{ sheet: "Chain", cell: "A1" }]);
    expect(follows("Chain", { row: LONG - 1, column: 0 })).toBe(true);
    expect(follows("Chain", { row: 0, column: 1 })).toBe(false);
    const late = followersOf(long, [{ sheet: "Chain", cell: `A${LONG - 1}` }]);
    expect(late("Chain", { row: LONG - 1, column: 0 })).toBe(true);
    expect(late("Chain", { row: LONG - 3, column: 0 })).toBe(false);
  });

  test("stays whole where its end is wanted, and nothing else does", () => {
    const { cells } = sliced(long, ["the_end"]).sheets[0]!;
    expect(Object.keys(cells)).toHaveLength(LONG);
    expect(cells["B1"]).toBeUndefined();
  });

  test.each([
    ["followed", (book: Book) => followersOf(book, [{ sheet: "Chain", cell: "A1" }])],
    ["sliced", (book: Book) => sliced(book, ["the_end"])],
  ])("is %s in a time that grows as it does", (_name, work) => {
    const least = (book: Book) => Math.min(...[1, 2, 3].map(() => microseconds(() => work(book))));
    expect(least(long) / least(short)).toBeLessThan(MOST_TIMES);
  });
});
