/** Where figures and answers that are mixed up lead, in a set of two plain questions, worked out by hand. */
import type { Fault } from "../../src/engine/faults";
import type { Family } from "../../src/training/exercise";
import { slipValues, unanswerable, type Rank } from "../../src/training/slips/slipValues";
import { keyOf, numbersAmong, solved } from "../../src/training/solve";
import { choice, question, setOf, type Numbers } from "./madeUpSet";

const NONE: Fault = { kind: "fault", code: "#N/A", message: "There is none." };
const leftOut: Family = (_, what) => [{ name: `${what} left out`, as: 0 }];
const doubled: Family = (value, what) => [{ name: `${what} doubled`, as: 2 * value, seldom: true }];

/** a = x + y, 5; b = 10·z + a, 75. */
const first = question("a", ({ x, y }) => x! + y!, {
  given: ({ x, y }) => [
    { label: "Length of it", value: x!, unit: "m", of: "x", invites: [leftOut, doubled] },
    { label: "Other length", called: "the other", value: y!, unit: "m", of: "y", invites: [leftOut] },
    { label: "Kind", value: "drop" },
    { label: "Shown only", value: 9, unit: "m" },
  ],
  slips: [
    { name: "multiplied", wrong: ({ x, y }) => x! * y! },
    { name: "by a rule of old", wrong: () => 8, seldom: true },
    { name: "not with these", wrong: () => undefined },
    { name: "refused", wrong: () => NONE },
    { name: "root of less than nothing", wrong: () => NaN },
  ],
});
const second = question("b", ({ z }, { a }) => 10 * z! + a!, {
  given: ({ z }) => [{ label: "Third", value: z!, unit: "m", of: "z" }],
  before: ({ x }) => [{ label: "Length of it", value: x!, unit: "m", of: "x", invites: [leftOut] }],
  needs: ["a"],
  uses: { a: [leftOut] },
});
const set = setOf([first, second]);
const numbers: Numbers = { x: 2, y: 3, z: 7 };
const key = { a: 5, b: 75 };
const led = (of: typeof first, most?: Rank, earlier: Numbers = key) =>
  slipValues(set, of as never, numbers, earlier, most).map(({ name, value, rank }) => [name, value, rank]);

describe("mistakes of the first question", () => {
  const OFTEN = [
    ["multiplied", 6, "often"],
    ["length of it left out", 3, "often"],
    ["the other left out", 2, "often"],
  ];
  const SELDOM = [
    ["by a rule of old", 8, "seldom"],
    ["length of it doubled", 7, "seldom"],
  ];
  test("common ones alone, or with those met now and then; what gives no number is none", () => {
    expect(led(first, "often")).toEqual(OFTEN);
    expect(led(first)).toHaveLength(5);
    expect(led(first)).toEqual(expect.arrayContaining([...OFTEN, ...SELDOM]));
  });
  test("mixed up: two parts forgotten, and one figure for another of its unit, of whichever question", () => {
    expect(led(first, "mixed up").filter(([, , rank]) => rank === "mixed up")).toEqual([
      ["length of it and the other left out", 0, "mixed up"],
      ["the other taken for length of it", 6, "mixed up"],
      ["third taken for length of it", 10, "mixed up"],
      ["length of it taken for the other", 4, "mixed up"],
      ["third taken for the other", 9, "mixed up"],
    ]);
  });
  test("what a spreadsheet makes an error of is told apart, each once", () => {
    expect(unanswerable(set, first as never, numbers, key)).toEqual(["root of less than nothing"]);
    expect(unanswerable(set, second as never, numbers, key)).toEqual([]);
    const twice = { ...first, slips: [...first.slips, ...first.slips] };
    expect(unanswerable(setOf([twice, second]), twice as never, numbers, key)).toEqual([
      "root of less than nothing",
    ]);
  });
});

describe("mistakes of the second question, which uses the first", () => {
  test("figures that stood before, and the earlier answer", () => {
    expect(led(second, "often")).toEqual([
      // The length stood in the first question, and plays no part in this one's sum.
      ["length of it left out", 75, "often"],
      ["answer to 1 left out", 70, "often"],
    ]);
  });
  test("mixed up: figures for its own, and a common mistake of the first made anew", () => {
    expect(led(second, "mixed up").filter(([, , rank]) => rank === "mixed up")).toEqual([
      ["length of it and answer to 1 left out", 70, "mixed up"],
      ["length of it taken for third", 25, "mixed up"],
      ["the other taken for third", 35, "mixed up"],
      ["the other taken for length of it", 75, "mixed up"],
      ["third taken for length of it", 75, "mixed up"],
      ["multiplied", 76, "mixed up"],
      ["length of it left out", 73, "mixed up"],
      ["the other left out", 72, "mixed up"],
    ]);
  });
  test("another answer for the one it uses, by their numbers", () => {
    const third = question("c", (_, { b }) => 2 * b!, { needs: ["b"] });
    const all = setOf([first, second, third]);
    const found = slipValues(all, third as never, numbers, { a: 5, b: 75, c: 150 }, "mixed up");
    expect(found.filter(({ name }) => name.startsWith("answer"))).toEqual([
      { name: "answer to 1 used instead of 2", value: 10, rank: "mixed up" },
      // The second question's own, 70, carried on.
      { name: "answer to 1 left out", value: 140, rank: "mixed up" },
    ]);
  });
  test("an earlier answer that is missing invites nothing", () => {
    const without = { ...second, solve: () => 70 };
    expect(led(without, "often", {}).map(([name]) => name)).toEqual(["length of it left out"]);
  });
  test("two figures of one name are told apart", () => {
    const other = question("d", ({ v }) => v!, {
      given: ({ v }) => [{ label: "Third", value: v!, unit: "m", of: "v" }],
    });
    const names = slipValues(
      setOf([first, second, other]),
      second as never,
      { ...numbers, v: 4 },
      key,
      "mixed up",
    );
    expect(names).toContainEqual({
      name: "that of another question taken for third",
      value: 45,
      rank: "mixed up",
    });
  });
  test("a formula of its own is used where there is one", () => {
    const own = { ...first, formula: ({ x, y }: Numbers) => 100 + x! + y! };
    expect(led(own, "often")).toContainEqual(["length of it left out", 103, "often"]);
  });
});

describe("the key", () => {
  test("each answer from those before", () => {
    expect(keyOf(set, numbers)).toEqual(key);
    expect(solved(second as never, numbers, { a: 6 })).toBe(76);
  });
  test("none where an answer is refused, is no number, or one that it needs is missing", () => {
    expect(solved(second as never, numbers, {})).toBeUndefined();
    for (const bad of [NONE, NaN, Infinity]) {
      const broken = question("a", () => bad);
      expect(solved(broken as never, numbers, {})).toBeUndefined();
      expect(keyOf(setOf([broken, second]), numbers)).toBeUndefined();
    }
  });
  test("words are answers, and are carried nowhere", () => {
    const word = question("w", () => "ok", { answer: choice("ok") });
    const after = question("z", (_, earlier) => Object.keys(earlier).length);
    expect(keyOf(setOf([word, first, after]), numbers)).toEqual({ w: "ok", a: 5, z: 1 });
    expect(numbersAmong({ w: "ok", a: 5 })).toEqual({ a: 5 });
  });
});
