/** How numbers are drawn and which are drawn again, in sets of one or two plain questions. */
import { clashIn } from "../../src/training/clashIn";
import {
  anybodysDraw,
  drawFor,
  exampleOf,
  TRAINING_VERSION,
  whoseText,
} from "../../src/training/drawNumbers";
import type { Random } from "../../src/training/random";
import { sheetCode } from "../../src/training/sheetCode";
import { sheetFileName } from "../../src/training/sheetFileName";
import { choice, count, number, question, setOf, type Numbers } from "./madeUpSet";

const ADA = { name: "Ada", occurrence: 1 };
/** The example is kept by a set's name, so each set has one of its own. */
let made = 0;
const own = (questions: Parameters<typeof setOf>[0], more: object = {}) =>
  setOf(questions, { id: `made-up-${++made}`, ...more });
const n = (drawn: { numbers: object }): number => (drawn.numbers as Numbers).n!;
const wide = { draw: (random: Random) => ({ n: random.whole(1, 1_000_000) }) };
const asIs = question("a", (numbers) => numbers.n!, { answer: count() });

describe("whose numbers", () => {
  test("depend on the set, the seed, the name and which of that name it is, and on nothing else", () => {
    const set = own([asIs], wide);
    const first = drawFor(set, 1, ADA);
    expect(drawFor(set, 1, { ...ADA })).toEqual(first);
    const others = [
      drawFor(set, 2, ADA),
      drawFor(set, 1, { name: "Ben", occurrence: 1 }),
      drawFor(set, 1, { name: "Ada", occurrence: 2 }),
      drawFor(own([asIs], wide), 1, ADA),
      exampleOf(set),
      anybodysDraw(set, 1),
      anybodysDraw(set, 2),
    ].map(n);
    expect(new Set([n(first), ...others]).size).toBe(8);
    expect(first.key).toEqual({ a: n(first) });
  });
  test("an accent typed in one letter or in two is one name", () => {
    const [one, two] = ["Zoë".normalize("NFC"), "Zoë".normalize("NFD")];
    expect(one).not.toBe(two);
    expect(whoseText(3, { name: one, occurrence: 2 })).toBe(whoseText(3, { name: two, occurrence: 2 }));
    const set = own([asIs], wide);
    expect(sheetCode(set, 3, { name: one, occurrence: 1 })).toBe(
      sheetCode(set, 3, { name: two, occurrence: 1 }),
    );
  });
  test("a sheet's code has ten digits of sixteen, and is another for each name, seed, set and turn", () => {
    const sets = [own([asIs], wide), own([asIs], wide)];
    const codes = sets.flatMap((set) =>
      [1, 2].flatMap((seed) =>
        ["Ada", "Ben"].flatMap((name) =>
          [1, 2].map((occurrence) => sheetCode(set, seed, { name, occurrence })),
        ),
      ),
    );
    expect(new Set(codes).size).toBe(16);
    for (const code of codes) expect(code).toMatch(/^[0-9A-F]{10}$/);
    expect(TRAINING_VERSION).toMatch(/^\d+$/);
  });
  test("a file's name has the number, as long as the greatest, and letters that every disk takes", () => {
    expect(sheetFileName({ name: "Ada North", occurrence: 1 }, 3, 9)).toBe("3-Ada-North.xlsx");
    expect(sheetFileName({ name: "Ada North", occurrence: 1 }, 3, 10)).toBe("03-Ada-North.xlsx");
    expect(sheetFileName({ name: " ..\\x/: O'Neil? ", occurrence: 1 }, 12, 100)).toBe("012-x-O-Neil.xlsx");
    expect(sheetFileName({ name: "***", occurrence: 1 }, 1, 1)).toBe("1.xlsx");
    expect(sheetFileName({ name: "é".repeat(50), occurrence: 1 }, 1, 1)).toBe(`1-${"é".repeat(40)}.xlsx`);
    expect(sheetFileName({ name: "李小龙 7", occurrence: 1 }, 1, 1)).toBe("1-李小龙-7.xlsx");
  });
});

describe("drawn again", () => {
  test("until they could be a real job's, and that with what was chosen once", () => {
    const once: number[] = [];
    const again: number[] = [];
    const set = own([asIs], {
      draw: (random: Random, same: Random) => {
        once.push(same.below(1_000_000));
        again.push(random.below(1_000_000));
        return { n: again.length };
      },
      plausible: (_: Numbers, { a }: Numbers) => a! % 10 === 0,
    });
    expect(n(anybodysDraw(set, 1))).toBe(10);
    expect(once).toHaveLength(10);
    expect(new Set(once).size).toBe(1);
    expect(new Set(again).size).toBe(10);
    expect(once[0]).not.toBe(again[0]);
  });
  test("where a question has no answer with them", () => {
    let turn = 0;
    const set = own(
      [
        question("a", () => (++turn < 4 ? { kind: "fault", code: "#N/A", message: "none" } : 5)),
        question("b", (_, { a }) => 2 * a!, { needs: ["a"] }),
      ],
      wide,
    );
    expect(anybodysDraw(set, 1).key).toEqual({ a: 5, b: 10 });
    expect(turn).toBe(4);
  });
  test("and given up after 20,000, by the set's name", () => {
    const set = own([asIs], { ...wide, id: "hopeless", plausible: () => false });
    expect(() => anybodysDraw(set, 1)).toThrow("the set hopeless found no numbers in 20000 draws");
  });
});

describe("unlike the worked example", () => {
  const seeds = Array.from({ length: 30 }, (_, seed) => seed);
  test("in every question's figures", () => {
    const set = own([{ ...asIs, given: (numbers) => [{ label: "n", value: numbers.n! }] }], {
      draw: (random: Random) => ({ n: random.whole(1, 3) }),
    });
    const example = n(exampleOf(set));
    const drawn = new Set(seeds.map((seed) => n(drawFor(set, seed, ADA))));
    expect([...drawn].sort()).toEqual([1, 2, 3].filter((one) => one !== example));
  });
  test("in every measured answer, by more than twice the tolerance", () => {
    // In steps of 0.15, of which one lies within twice 0.1 and two do not.
    const set = own([question("a", (numbers) => 10 + 0.15 * numbers.n!)], {
      draw: (random: Random) => ({ n: random.whole(1, 9) }),
    });
    const example = n(exampleOf(set));
    const drawn = new Set(seeds.map((seed) => n(drawFor(set, seed, ADA))));
    expect([...drawn].sort()).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8, 9].filter((one) => Math.abs(one - example) > 1),
    );
  });
  test("but counts may be the same, and so may choices of the same figures, and questions without any", () => {
    const set = own(
      [
        question("a", () => 4, { answer: count() }),
        question("b", () => "ok", {
          answer: choice("low", "ok"),
          given: () => [{ label: "Limit", value: 47 }],
        }),
      ],
      wide,
    );
    expect(drawFor(set, 1, ADA).key).toEqual({ a: 4, b: "ok" });
  });
});

describe("mistakes that could be taken for something else", () => {
  const at = (...values: readonly number[]) => ({
    slips: values.map((value, index) => ({ name: `mistake ${index + 1}`, wrong: () => value })),
  });
  const clash = (...values: readonly number[]) =>
    clashIn(setOf([question("q", () => 50, at(...values))]), {}, { q: 50 });
  test("for the right answer: within twice the tolerance of it", () => {
    expect(clash(50.15)).toEqual({ withKey: 'q: "mistake 1"', pairs: 0 });
    expect(clash(60, 49.85)).toEqual({ withKey: 'q: "mistake 2"', pairs: 0 });
    expect(clash(50.25)).toEqual({ pairs: 0 });
  });
  test("for a coarse rounding", () => {
    const set = setOf([question("q", () => 50.44, at(50.1))]);
    // To a whole number 50, which is 0.1 from 50.1.
    expect(clashIn(set, {}, { q: 50.44 })).toEqual({ withKey: 'q: "mistake 1"', pairs: 0 });
    expect(clashIn(setOf([question("q", () => 50.44, at(49.7))]), {}, { q: 50.44 })).toEqual({ pairs: 0 });
  });
  test("for each other: counted by pairs, but not where they are one whatever the numbers", () => {
    expect(clash(60, 60.15, 60.3)).toEqual({ pairs: 2 });
    expect(clash(60, 60.15, 60.19)).toEqual({ pairs: 3 });
    expect(clash(60, 60)).toEqual({ pairs: 0 });
    expect(clash(60, 60.25)).toEqual({ pairs: 0 });
    const two = {
      slips: [60, 60.1].map((value) => ({ name: "one by one name", wrong: () => value })),
    };
    expect(clashIn(setOf([question("q", () => 50, two)]), {}, { q: 50 })).toEqual({ pairs: 0 });
    // What was counted before is told beside what could be taken for right.
    expect(clash(60, 60.1, 50.1)).toEqual({ withKey: 'q: "mistake 3"', pairs: 1 });
  });
  test("the point and the sign: a number so small that they lead nowhere else", () => {
    const small = (key: number) => clashIn(setOf([question("q", () => key)]), {}, { q: key });
    expect(small(0.05)).toEqual({ withKey: 'q: "decimal point in the wrong place"', pairs: 0 });
    // Ten times 0.15 is 1.35 away, a tenth of it 0.135: within 0.2.
    expect(small(0.15)).toEqual({ withKey: 'q: "decimal point in the wrong place"', pairs: 0 });
    expect(small(0.3)).toEqual({ pairs: 0 });
  });
  test("those met now and then are no reason, nor is a word", () => {
    const rare = { slips: [{ name: "rare", wrong: () => 50, seldom: true }] };
    expect(clashIn(setOf([question("q", () => 50, rare)]), {}, { q: 50 })).toEqual({ pairs: 0 });
    const word = question("w", () => "ok", {
      answer: choice("low", "ok"),
      slips: [{ name: "common", wrong: () => "ok" }],
    });
    expect(clashIn(setOf([word]), {}, { w: "ok" })).toEqual({ pairs: 0 });
  });

  /** A set that notes what is drawn: three mistakes, of which by n one pair or all three lie together. */
  function noting(slips: (numbers: Numbers) => readonly number[]) {
    const drawn: number[] = [];
    const set = own(
      [
        question("q", () => 50, {
          answer: number("dB", 1),
          slips: [0, 1, 2].map((at) => ({
            name: `mistake ${at}`,
            wrong: (numbers: Numbers) => slips(numbers)[at],
          })),
        }),
      ],
      {
        draw: (random: Random) => {
          drawn.push(random.whole(1, 1000));
          return { n: drawn.at(-1)! };
        },
      },
    );
    return { set, drawn };
  }
  test("of five usable draws the first with the fewest pairs is taken", () => {
    const seen = new Set<number>();
    for (let turn = 0; turn < 12; turn++) {
      const { set, drawn } = noting(({ n: one }) => (one! % 2 === 0 ? [60, 60.1, 70] : [60, 60.1, 60.19]));
      const taken = n(exampleOf(set));
      expect(drawn).toHaveLength(5);
      const best = drawn.findIndex((one) => one % 2 === 0);
      expect(drawn.indexOf(taken)).toBe(Math.max(best, 0));
      seen.add(best);
    }
    expect(seen.size).toBeGreaterThan(1);
  });
  test("one without any is taken at once, and one that could be taken for right never", () => {
    for (let turn = 0; turn < 12; turn++) {
      const { set, drawn } = noting(({ n: one }) => (one! % 2 === 0 ? [60, 70, 80] : [60, 60.1, 80]));
      const taken = n(exampleOf(set));
      const first = drawn.findIndex((one) => one % 2 === 0);
      expect(drawn.indexOf(taken)).toBe(Math.max(first, 0));
      expect(drawn).toHaveLength(first < 0 ? 5 : first + 1);
      const strict = noting(({ n: one }) => (one! % 2 === 0 ? [60, 70, 80] : [50, 70, 80]));
      expect(n(exampleOf(strict.set)) % 2).toBe(0);
      expect(strict.drawn.filter((one) => one % 2 === 0)).toHaveLength(1);
    }
  });
});
