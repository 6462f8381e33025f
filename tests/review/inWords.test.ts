/** What the review says in sentences: the texts are those that the comments and types of each part ask for, the sums by hand. */
import { amountInWords, headlineOf } from "../../src/review/amountInWords";
import { differ, isSamePlace, type Finding, type Measures } from "../../src/review/finding";
import { grouped, undoingOf } from "../../src/review/grouped";
import { leadsToInWords } from "../../src/review/leadsToInWords";
import { valueInWords, listInWords, whyInWords } from "../../src/review/whyInWords";
import { leftOutInWords, notLookedInWords } from "../../src/review/facts";
import { WRITINGS } from "../../src/workbooks/typed/writing";

const told = (before: Measures, after: Measures, isAbout = false): string =>
  amountInWords({ before, after, isAbout });

test.each<[string, Measures, Measures, string]>([
  ["nothing", { total: 10 }, { total: 10 }, ""],
  ["less than half a cent", { total: 10 }, { total: 10.004 }, ""],
  ["too low", { total: 1000 }, { total: 1234.5 }, "The total of 1,000.00 is 234.50 too low."],
  ["too high", { total: 1234.5 }, { total: 1000 }, "The total of 1,234.50 is 234.50 too high."],
  ["no total", {}, { total: 1000 }, "There is no total; without this it is 1,000.00."],
  ["no total either way", {}, {}, ""],
  ["none after", { total: 5 }, {}, ""],
  ["the margin", { margin: 5 }, { margin: 7.25 }, "The margin is 5.00; it should be 7.25."],
  ["the same margin", { margin: 5 }, { margin: 5 }, ""],
  ["outlets", { outlets: 2 }, { outlets: 0 }, "2 outlets are not good; without this 0 would be."],
  ["one outlet", { outlets: 1 }, { outlets: 3 }, "1 outlet is not good; without this 3 would be."],
  ["as many outlets", { outlets: 2 }, { outlets: 2 }, ""],
  ["outlets unknown before", {}, { outlets: 2 }, ""],
  ["outlets unknown after", { outlets: 2 }, {}, ""],
  ["head units", { volts: 3 }, { volts: 1 }, "3 head units are short of volts; without this 1 would be."],
  ["one head unit", { volts: 1 }, { volts: 0 }, "1 head unit is short of volts; without this 0 would be."],
])("what is moved: %s", (_, before, after, text) => expect(told(before, after)).toBe(text));

test("where what was meant is a guess, sums are about", () => {
  expect(told({ total: 10, margin: 1 }, { total: 12, margin: 2 }, true)).toBe(
    "The total of 10.00 is about 2.00 too low. The margin is 1.00; it should be about 2.00.",
  );
  expect(told({}, { total: 12 }, true)).toBe("There is no total; without this it is about 12.00.");
});

describe("the headline", () => {
  const moves = (message: string, to: number | undefined, cell?: string): Finding => ({
    weight: "wrong",
    message,
    remedy: "Look.",
    ...(cell !== undefined && { place: { sheet: "Site", cell } }),
    ...(to !== undefined && { amount: { before: { total: 100 }, after: { total: to }, isAbout: false } }),
  });
  test.each<[string, Parameters<typeof headlineOf>[0], string, object]>([
    [
      "no total",
      { quoted: undefined, shouldBe: undefined, ends: [], told: [] },
      "There is no total, and what it should be is not known.",
      { unknown: 0 },
    ],
    [
      "nothing found",
      { quoted: 100, shouldBe: undefined, ends: [], told: [] },
      "Quoted 100.00: nothing was found that would move it.",
      { quoted: 100, unknown: 0 },
    ],
    [
      "nothing known to move it",
      { quoted: 100, shouldBe: 100.004, ends: [], told: [moves("A.", undefined)] },
      "Quoted 100.00: nothing that was found is known to move it. What one finding would move is not known.",
      { quoted: 100, shouldBe: 100.004, unknown: 1 },
    ],
    [
      "two unknown",
      { quoted: 100, shouldBe: undefined, ends: [], told: [moves("A.", undefined), moves("B.", undefined)] },
      "Quoted 100.00: nothing that was found is known to move it. What 2 findings would move is not known.",
      { quoted: 100, unknown: 2 },
    ],
    [
      "known",
      { quoted: 100, shouldBe: 120, ends: [], told: [moves("A is off.", 120, "B2"), moves("Same.", 100)] },
      "Quoted 100.00; should be about 120.00, because Site B2: A is off.",
      { quoted: 100, shouldBe: 120, unknown: 0 },
    ],
    [
      "no more than three reasons",
      {
        quoted: 100,
        shouldBe: 120,
        ends: [120, 120],
        told: ["A.", "B.", "C.", "D."].map((one) => moves(one, 105)),
      },
      "Quoted 100.00; should be about 120.00, because A; B; C.",
      { quoted: 100, shouldBe: 120, unknown: 0 },
    ],
    [
      "between two",
      { quoted: 100, shouldBe: 120, ends: [110, 130], told: [] },
      "Quoted 100.00; should be about 120.00, between 110.00 and 130.00.",
      { quoted: 100, shouldBe: 120, between: [110, 130], unknown: 0 },
    ],
    [
      "no total, but what it should be",
      { quoted: undefined, shouldBe: 120, ends: [], told: [moves("A.", undefined)] },
      "There is no total; it should be about 120.00. What one finding would move is not known.",
      { shouldBe: 120, unknown: 1 },
    ],
  ])("%s", (_, asked, sentence, rest) => expect(headlineOf(asked)).toEqual({ ...rest, sentence }));
});

describe("the same said of many cells", () => {
  const said = (cell: string | undefined, more: Partial<Finding> = {}): Finding => ({
    rule: "unit slip",
    weight: "wrong",
    ...(cell !== undefined && { place: { sheet: "Rooms", cell } }),
    message: "In feet.",
    remedy: "Look.",
    ...more,
  });
  test("is said once, at the first", () => {
    expect(grouped([said("D5"), said("D7")])).toEqual([
      { ...said("D5"), message: "In feet, here and in D7 of this column." },
    ]);
    expect(grouped([said("D5"), said("D7"), said("D19")])).toEqual([
      { ...said("D5"), message: "In feet, here and in 2 more cells of this column." },
    ]);
    expect(grouped([said("D5")])).toEqual([said("D5")]);
  });
  test.each<[string, Finding]>([
    ["another column", said("E5")],
    ["another sheet", said("D7", { place: { sheet: "Site", cell: "D7" } })],
    ["other words", said("D7", { message: "In miles." })],
    ["another answer", said("D7", { expected: "5." })],
    ["another weight", said("D7", { weight: "doubtful" })],
    ["another rule", said("D7", { rule: "other" })],
    ["the whole workbook", said(undefined)],
  ])("%s is another", (_, other) => expect(grouped([said("D5"), other])).toEqual([said("D5"), other]));
  test("two of the whole workbook are two", () =>
    expect(grouped([said(undefined), said(undefined)])).toHaveLength(2));
  test("all are undone together, where it is known of each", () => {
    const at = (cell: string) => ({ sheet: "Rooms", cell });
    const cleared = { undoing: [{ place: at("D7") }] };
    expect(grouped([said("D5", { meant: 3 }), said("D7", cleared)])[0]!.undoing).toEqual([
      { place: at("D5"), value: 3 },
      { place: at("D7") },
    ]);
    expect(grouped([said("D5", { meant: 3 }), said("D7")])[0]!.undoing).toBeUndefined();
    expect(undoingOf(said("D5"))).toBeUndefined();
    expect(undoingOf(said(undefined, { meant: 3 }))).toBeUndefined();
    expect(undoingOf(said("D7", { meant: 3, ...cleared }))).toEqual(cleared.undoing);
  });
});

describe("what follows from a finding", () => {
  const line = (message: string, weight: Finding["weight"], cell?: string): Finding => ({
    message,
    weight,
    remedy: "Look.",
    ...(cell !== undefined && { place: { sheet: "Price", cell } }),
  });
  const lines = [
    line("note", "worth knowing"),
    line("doubt", "doubtful", "A1"),
    line("first", "wrong", "B2"),
    line("second", "wrong"),
    line("late", "doubtful"),
  ];
  test("the weightiest three in their order, the rest as a count", () => {
    expect(leadsToInWords(lines)).toEqual([
      "Price!B2: first",
      "second",
      "Price!A1: doubt",
      "2 more lines of errors, checks and limits.",
    ]);
    expect(leadsToInWords(lines.slice(1))).toContain("1 more line of errors, checks and limits.");
    expect(leadsToInWords(lines.slice(2))).toEqual(["Price!B2: first", "second", "late"]);
    expect(leadsToInWords([])).toEqual([]);
  });
});

const german = WRITINGS.find(({ tag }) => tag === "de-DE")!;

test.each([
  [undefined, "", "(blank)"],
  ["", "", "(blank)"],
  ["thin drop", "", "“thin drop”"],
  [true, "", "TRUE"],
  [false, "", "FALSE"],
  [1.5, "", "1.5"],
  [0.125, "0.0%", "12.5 %"],
  // 2 November 2026 is day 46,328 of the sheet's count.
  [46_328, "yyyy-mm-dd", "2026-11-02"],
  [46_328, "DD.MM.YY", "2026-11-02"],
  [{ error: "#VALUE!" }, "", "#VALUE!"],
  [{ error: "#VALUE!", message: "No such cable." }, "", "#VALUE! No such cable."],
] as const)("%j with the format “%s” reads %s", (value, format, text) =>
  expect(valueInWords(value, format)).toBe(text),
);

test("as its reader writes figures and dates", () => {
  expect(valueInWords(1.5, "", german)).toBe("1,5");
  expect(valueInWords(0.125, "0%", german)).toBe("12,5 %");
  expect(valueInWords(46_328, "yyyy-mm-dd", german)).toBe("02.11.2026");
});

test("a list, and a chain of reasons", () => {
  const list = {
    sheet: "Price",
    range: "A1:A9",
    words: "Sum",
    filled: 2,
    sum: 3.5,
    told: [],
    toldBy: "largest",
  } as const;
  expect(listInWords(list)).toBe("Sum: 2 entries, together 3.5");
  expect(listInWords({ ...list, filled: 1, sum: undefined })).toBe("Sum: 1 entry");
  expect(listInWords({ ...list, told: [{} as never] }, german)).toBe(
    "Sum: 2 entries, together 3,5; the largest:",
  );
  const leaf = { words: "Run", value: 5, from: [] };
  const tree = {
    words: "Cost",
    value: 7,
    formula: "A1+A2",
    from: [
      leaf,
      { ...list, told: [leaf] },
      { words: "Deep", value: 1, formula: "B1", isCut: true, from: [] },
    ],
  };
  expect(whyInWords(tree as never)).toEqual([
    "Cost: 7",
    "  = A1+A2",
    "  Run: 5",
    "  Sum: 2 entries, together 3.5; the largest:",
    "    Run: 5",
    "  Deep: 1 …",
  ]);
});

test("what was not looked for, and what was left out", () => {
  const facts = { version: "1", passed: [] };
  expect(notLookedInWords(facts)).toBeUndefined();
  expect(notLookedInWords({ ...facts, notLooked: [] })).toBeUndefined();
  expect(
    notLookedInWords({
      ...facts,
      notLooked: [
        { rule: "a", what: "a list" },
        { rule: "b", what: "a day" },
      ],
    }),
  ).toBe("Not looked for: a (without a list), b (without a day).");
  expect(leftOutInWords(facts)).toBeUndefined();
  expect(leftOutInWords({ ...facts, leftOut: 1 })).toBe(
    "The job is large: what one finding, the least in money, does to outlets and volts was not computed.",
  );
  expect(leftOutInWords({ ...facts, leftOut: 3 })).toBe(
    "The job is large: what 3 findings, the least in money, do to outlets and volts was not computed.",
  );
});

test("two sums differ by half a cent at least, and only where both are known", () => {
  expect([
    differ(1, 1.005001),
    differ(1, 1.004),
    differ(1.01, 1),
    differ(undefined, 1),
    differ(1, undefined),
  ]).toEqual([true, false, true, false, false]);
});

test("a place is the same on one sheet in one cell", () => {
  const at = { sheet: "Site", cell: "B2" };
  expect(isSamePlace(at, { ...at })).toBe(true);
  expect(isSamePlace(at, { ...at, cell: "B3" })).toBe(false);
  expect(isSamePlace(at, { ...at, sheet: "Price" })).toBe(false);
  expect(isSamePlace(at, undefined)).toBe(false);
  expect(isSamePlace(undefined, undefined)).toBe(false);
});
