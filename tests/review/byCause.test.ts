/**
 * The review by cause and by money, without the rules: what they say is played, each finding with when it is said, in a
 * book whose total is the sum of Z1 to Z9. Sums and sentences are worked out by hand from the comments of reviewInFull.ts.
 */
import type { Finding, Undoing } from "../../src/review/finding";
import { review, lookInto, saidOf, symptomsOf } from "../../src/review/review";
import { reviewInFull, type FullReview } from "../../src/review/reviewInFull";
import { withChanges } from "../../src/review/withChanges";
import type { Book, BookCell } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { bookOf, emptySheet } from "../support/books";

jest.mock("../../src/review/review", () => ({
  lookInto: jest.fn(),
  review: jest.fn(),
  saidOf: jest.fn(),
  symptomsOf: jest.fn(),
}));

type Values = Readonly<Record<string, number | string>>;
/** What a rule says, and while what stands it says so; always where nothing is told. */
interface Said {
  readonly one: Finding;
  readonly while?: (at: (cell: string) => BookCell["value"]) => boolean;
}

const at = (cell: string) => ({ sheet: "S", cell });
const said = (rule: string, cell: string | undefined, more: Partial<Finding> = {}): Finding => ({
  rule,
  weight: "wrong",
  message: `${rule} is off.`,
  remedy: "Look.",
  ...(cell !== undefined && { place: at(cell) }),
  ...more,
});

const valueIn = (book: Book, cell: string): BookCell["value"] => book.sheets[0]!.cells[cell]?.value;
function summed(book: Book): Book {
  const all = Array.from({ length: 9 }, (_, row) => valueIn(book, `Z${row + 1}`) ?? 0);
  const [sheet] = book.sheets;
  const typed = sheet!.cells["B1"]?.formula === undefined ? sheet!.cells["B1"]?.value : undefined;
  const total =
    typed ??
    (all.every((one) => typeof one === "number")
      ? all.reduce((sum, one) => sum + one, 0)
      : { error: "#VALUE!" });
  return { ...book, sheets: [{ ...sheet!, results: { ...sheet!.results, B1: total } }] } as Book;
}
const bookWith = (values: Values, more: Record<string, BookCell> = {}): Book =>
  summed({
    ...bookOf({
      ...emptySheet("S"),
      cells: {
        ...Object.fromEntries(Object.entries(values).map(([cell, value]) => [cell, { value }])),
        B1: { formula: "SUM(Z1:Z9)" },
        ...more,
      },
    }),
    names: [{ name: "quote_total", sheet: "S", range: "B1" }],
  });
const trials = (book: Book) => (changes: readonly Undoing[]) => summed(withChanges(book, changes));

function played(book: Book, rules: readonly Said[], judgedOtherwise: object = {}, stored = book): FullReview {
  const holding = (of: Book): Finding[] =>
    rules.flatMap(({ one, while: holds }) => ((holds?.((cell) => valueIn(of, cell)) ?? true) ? [one] : []));
  jest.mocked(saidOf).mockImplementation(holding);
  jest.mocked(symptomsOf).mockImplementation(holding);
  jest.mocked(lookInto).mockReturnValue({
    stored,
    judged: {
      read: book,
      own: book,
      computed: book,
      definition: multiRoom,
      differences: [],
      labelAt: () => "",
      options: { marginFloor: 0 },
      ...judgedOtherwise,
    },
    found: holding(book),
    isUnfilled: false,
  });
  return reviewInFull(stored, trials);
}
const rulesOf = ({ findings }: FullReview): (string | undefined)[] => findings.map(({ rule }) => rule);

test("what moves the total by most comes first, each with its own amount, and all together in the headline", () => {
  const { findings, headline } = played(bookWith({ Z1: 20, Z2: 105, Z3: 1 }), [
    { one: said("small", "Z1", { meant: 10 }) },
    { one: said("nothing known", "Z3") },
    { one: said("large", "Z2", { meant: 5, effect: "It is dear." }) },
    {
      one: said("formula changed", "Z4", { undoing: [{ place: at("Z4"), value: 3 }], effect: "All of it." }),
    },
  ]);
  expect(findings.map(({ rule, effect, amount }) => [rule, effect, amount?.after.total])).toEqual([
    ["large", "The total of 126.00 is 100.00 too high. It is dear.", 26],
    ["small", "The total of 126.00 is 10.00 too high.", 116],
    // What such a rule says of the whole price is less than the amount.
    ["formula changed", "The total of 126.00 is 3.00 too low.", 129],
    ["nothing known", undefined, undefined],
  ]);
  // 126 − 10 − 100 + 3
  expect(headline).toEqual({
    quoted: 126,
    shouldBe: 19,
    unknown: 1,
    sentence:
      "Quoted 126.00; should be about 19.00, because S Z2: large is off; S Z1: small is off; S Z4: formula changed is off. What one finding would move is not known.",
  });
});

test("of the same amount the weightier comes first, and an earlier version before all", () => {
  const book = bookWith({ Z1: 20, Z2: 20, Z3: 20 });
  expect(
    rulesOf(
      played(book, [
        { one: said("b", "Z1", { meant: 10, weight: "doubtful" }) },
        { one: said("c", "Z2", { meant: 10 }) },
        { one: said("a", "Z3", { meant: 0, weight: "worth knowing" }) },
        { one: said("earlier version", undefined, { weight: "worth knowing" }) },
      ]),
    ),
  ).toEqual(["earlier version", "a", "c", "b"]);
});

describe("where only the usual is known", () => {
  const usual = (low: number, high: number) => ({ usual: { low, high } });
  test("it is undone with the middle of that, so many times as well as a part", () => {
    // √(4 · 9) = 6
    const { findings, headline } = played(bookWith({ Z1: 100, Z2: 1 }), [
      { one: said("odd", "Z1", usual(4, 9)) },
    ]);
    expect(findings[0]).toMatchObject({
      effect: "The total of 101.00 is about 94.00 too high.",
      amount: { isAbout: true, after: { total: 7 } },
    });
    expect(headline).toMatchObject({ shouldBe: 7, between: [5, 10] });
  });
  test("or half way, where it may be 0", () =>
    expect(played(bookWith({ Z1: 100 }), [{ one: said("odd", "Z1", usual(0, 10)) }]).headline).toMatchObject({
      shouldBe: 5,
      between: [0, 10],
    }));
  test("of several each end counts by itself; of what is known there are no two ends", () => {
    const { headline } = played(bookWith({ Z1: 100, Z2: 100, Z3: 50 }), [
      { one: said("odd", "Z1", usual(4, 9)) },
      { one: said("strange", "Z2", usual(0, 10)) },
      { one: said("known", "Z3", { ...usual(1, 2), meant: 20 }) },
      { one: said("minor", "Z4", { ...usual(1, 4), weight: "worth knowing" }) },
    ]);
    // 6 + 5 + 20, from 4 + 0 + 20 to 9 + 10 + 20
    expect(headline).toMatchObject({ quoted: 250, shouldBe: 31, between: [24, 39] });
  });
});

describe("of one cell", () => {
  test("several are one: the weightiest, with what the others know", () => {
    const doubt = said("doubt", "Z1", { weight: "doubtful", meant: 10, expected: "10.", isGuess: true });
    const { findings } = played(bookWith({ Z1: 20 }), [
      { one: doubt },
      { one: said("wrong", "Z1") },
      { one: said("range", "Z1", { weight: "doubtful", usual: { low: 1, high: 2 } }) },
    ]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      rule: "wrong",
      expected: "10.",
      undoing: [{ place: at("Z1"), value: 10 }],
      isGuess: true,
      usual: { low: 1, high: 2 },
      effect: "The total of 20.00 is about 10.00 too high.",
    });
    expect(findings[0]!.leadsTo!.map(({ rule }) => rule)).toEqual(["doubt", "range"]);
  });
  test("what should be there is said by whichever knows it", () => {
    const range = said("range", "Z1", {
      weight: "doubtful",
      usual: { low: 1, high: 2 },
      expected: "1 to 2.",
    });
    const expectedOf = (more: Partial<Finding>) =>
      played(bookWith({ Z1: 20 }), [{ one: said("wrong", "Z1", more) }, { one: range }]).findings[0]!
        .expected;
    expect([expectedOf({}), expectedOf({ expected: "3." })]).toEqual(["1 to 2.", "3."]);
  });
  test("what is told of its page is another thing", () =>
    expect(
      rulesOf(played(bookWith({ Z1: 20 }), [{ one: said("wrong", "Z1") }, { one: said("page", "Z1") }])),
    ).toEqual(["wrong", "page"]));
  test("two that put other things into it: in the headline the surer counts", () => {
    const { headline } = played(bookWith({ Z1: 20, Z2: 20 }), [
      {
        one: said("guess", "Z1", {
          isGuess: true,
          undoing: [
            { place: at("Z1"), value: 1 },
            { place: at("Z2"), value: 1 },
          ],
        }),
      },
      { one: said("known", "Z2", { meant: 12 }) },
    ]);
    expect(headline).toMatchObject({ quoted: 40, shouldBe: 32 });
  });
});

describe("what is not said with a cause undone", () => {
  const cause = {
    one: said("cause", "Z1", { meant: 10 }),
    while: (cell: (at: string) => unknown) => cell("Z1") === 20,
  };
  const under = (...more: Said[]) => {
    const { findings } = played(bookWith({ Z1: 20, Z2: 1, C7: 3 }), [cause, ...more]);
    return findings.map(({ rule, leadsTo = [] }) => [rule, ...leadsTo.map((one) => one.rule)]);
  };
  const whileOff = cause.while;
  test("stands under it where it is doubtful, or nobody knows how to undo it", () => {
    expect(under({ one: said("follows", "C7", { weight: "doubtful", meant: 4 }), while: whileOff })).toEqual([
      ["cause", "follows"],
    ]);
    expect(under({ one: said("follows", "C7"), while: whileOff })).toEqual([["cause", "follows"]]);
  });
  test.each<[string, Said]>([
    ["is said all the same", { one: said("stays", "C7", { weight: "doubtful" }) }],
    ["is wrong and known itself", { one: said("stays", "C7", { meant: 4 }), while: whileOff }],
    ["is worth knowing", { one: said("stays", "C7", { weight: "worth knowing" }), while: whileOff }],
    ["is told of a page", { one: said("page", "C7", { weight: "doubtful" }), while: whileOff }],
    [
      "is about the whole workbook",
      { one: said("stays", undefined, { weight: "doubtful" }), while: whileOff },
    ],
  ])("by itself stands what %s", (_, one) =>
    expect(under(one)).toEqual(expect.arrayContaining([["cause"], [one.one.rule]])),
  );
  test("of one row or one rule it is one slip told twice", () => {
    const known = (rule: string, cell: string) => ({ one: said(rule, cell, { meant: 4 }), while: whileOff });
    expect(under(known("beside", "C1"))).toEqual([["cause", "beside"]]);
    expect(under(known("cause", "C7"))).toEqual([["cause", "cause"]]);
    expect(under(known("elsewhere", "C7"))).toEqual([["cause"], ["elsewhere"]]);
  });
  test("with it goes what already stood under that", () =>
    expect(
      under(
        { one: said("follows", "C7", { weight: "doubtful" }), while: whileOff },
        { one: said("of the same cell", "C7", { weight: "doubtful" }), while: whileOff },
      ),
    ).toEqual([["cause", "follows", "of the same cell"]]));
  test("of slips told twice three are found out, for each takes a computing", () => {
    const rows = [1, 2, 3, 4];
    const pairs = rows.flatMap((row) =>
      ["C", "D"].map((column): Said => ({
        one: said(`${column}${row}`, `${column}${row}`, { meant: 5 }),
        while: (read) => read(`C${row}`) === 20,
      })),
    );
    const book = bookWith({ Z9: 1, ...Object.fromEntries(rows.map((row) => [`C${row}`, 20])) });
    expect(rulesOf(played(book, pairs))).toEqual(["C1", "C2", "C3", "C4", "D4"]);
  });
  test("a version's findings are not tried", () => {
    const { findings } = played(
      bookWith({ Z1: 20, C7: 3 }),
      [cause, { one: said("stays", "C7", { weight: "doubtful" }), while: whileOff }],
      { earlier: { others: [] } },
    );
    expect(findings.map(({ rule }) => rule)).toEqual(["cause", "stays"]);
  });
});

describe("symptoms", () => {
  const formulas: Record<string, BookCell> = {
    D5: { formula: "Z1*2" },
    E5: { formula: "Z2*2" },
    F2: { formula: "Z1+Z2" },
  };
  const isOff = (cell: string) => (read: (at: string) => unknown) => read(cell) === 20;
  const told = (...rules: Said[]) => {
    const { findings } = played(bookWith({ Z1: 20, Z2: 20, Z3: 20 }, formulas), [
      { one: said("first", "Z1", { meant: 0 }) },
      { one: said("second", "Z2", { meant: 10 }) },
      ...rules,
    ]);
    return findings.map(({ rule, leadsTo = [] }) => [rule, ...leadsTo.map((one) => one.place?.cell)]);
  };
  test("stand under the cause that they depend on", () =>
    expect(
      told(
        { one: said("outside limits", "D5"), while: isOff("Z1") },
        { one: said("outside limits", "E5"), while: isOff("Z2") },
      ),
    ).toEqual([
      ["first", "D5"],
      ["second", "E5"],
    ]));
  test("of two causes under the one of their row, else under the dearer", () => {
    expect(told({ one: said("outside limits", "F2"), while: isOff("Z1") })).toEqual([
      ["first"],
      ["second", "F2"],
    ]);
    expect(told({ one: said("outside limits", "G9", { cause: at("F2") }), while: isOff("Z1") })).toEqual([
      ["first"],
      ["second", "G9"],
    ]);
  });
  test("that are said all the same, or depend on none, stay", () => {
    expect(told({ one: said("outside limits", "D5") })).toContainEqual(["outside limits"]);
    expect(told({ one: said("outside limits", "G9"), while: isOff("Z1") })).toContainEqual([
      "outside limits",
    ]);
  });
});

test("where formulas are not the template's, an input is undone with those in place, a formula with its own", () => {
  const own = bookWith({ Z1: 20, Z2: 1 }, { B1: { value: 50 } });
  const expected = bookWith({ Z1: 20, Z2: 1 });
  const { findings } = played(
    own,
    [
      { one: said("input", "Z1", { meant: 10 }) },
      { one: said("formula typed over", "B1", { undoing: [{ place: at("B1"), formula: "SUM(Z1:Z9)" }] }) },
    ],
    { expected },
  );
  expect(findings.map(({ rule, amount }) => [rule, amount!.before.total, amount!.after.total])).toEqual([
    ["formula typed over", 50, 21],
    ["input", 21, 11],
  ]);
});

test("without a total there is no headline, and what brings one comes first", () => {
  const { findings, headline } = played(bookWith({ Z1: "ten", Z2: 20 }), [
    { one: said("known", "Z2", { meant: 10 }) },
    { one: said("a word", "Z1", { meant: 5 }) },
  ]);
  expect(findings.map(({ rule, effect }) => [rule, effect])).toEqual([
    ["a word", "There is no total; without this it is 25.00."],
    ["known", undefined],
  ]);
  expect(headline!.sentence).toMatch(
    /^There is no total; it should be about 15\.00, because S Z1: a word is off\./,
  );
  const nameless = { ...bookWith({ Z1: 20 }), names: [] };
  expect(played(nameless, [{ one: said("known", "Z1", { meant: 5 }) }]).headline).toBeUndefined();
});

test.each<[string, { readonly isUnfilled?: boolean; readonly definition?: undefined }]>([
  ["of an empty workbook", { isUnfilled: true }],
  ["of a workbook that is none of ours", { definition: undefined }],
])("%s the findings are as the rules say them", (_, { isUnfilled = false, ...judged }) => {
  const found = [said("known", "Z1", { meant: 10 })];
  played(bookWith({ Z1: 20 }), []);
  const [look] = jest.mocked(lookInto).mock.results.slice(-1);
  jest.mocked(lookInto).mockReturnValue({
    ...look!.value,
    isUnfilled,
    judged: { ...look!.value.judged, ...judged },
  });
  jest.mocked(review).mockReturnValue(found);
  const full = reviewInFull(bookWith({ Z1: 20 }), trials);
  expect(full.findings).toBe(found);
  expect(full.headline).toBeUndefined();
  expect(full.noted.noted).toHaveLength(1);
});

describe("outlets and head units", () => {
  /** V1 and V2 are verdicts of outlets, W1 is one of a head unit: good up to 10. */
  const judging = (reads = "Z"): Record<string, BookCell> => ({
    V1: { formula: `IF(${reads}1>10,"low","ok")` },
    V2: { formula: `IF(${reads}2>10,"low","ok")` },
    W1: { formula: `IF(${reads}1>10,"low","ok")` },
  });
  const withVerdicts = (book: Book): Book => {
    const results = Object.fromEntries(
      ["V1", "V2", "W1"].flatMap((cell) => {
        const read = /IF\((\w+)>/.exec(book.sheets[0]!.cells[cell]?.formula ?? "")?.[1];
        return read === undefined ? [] : [[cell, Number(valueIn(book, read)) > 10 ? "low" : "ok"]];
      }),
    );
    const [sheet] = book.sheets;
    return { ...book, sheets: [{ ...sheet!, results: { ...sheet!.results, ...results } }] };
  };
  const named = (book: Book, outlets: number): Book =>
    withVerdicts({
      ...book,
      names: [
        ...book.names,
        { name: "rooms_verdict", sheet: "S", range: "V1:V2" },
        { name: "heads_check_power", sheet: "S", range: "W1" },
        { name: "rooms_outlet", sheet: "S", range: `Y1:Y${outlets}` },
      ],
    });
  const reviewed = (book: Book, rules: readonly Said[]): FullReview => {
    played(book, rules);
    return reviewInFull(book, (one) => (changes) => withVerdicts(summed(withChanges(one, changes))));
  };

  test("are counted with a cause and without it, where they hang on it", () => {
    const { findings, facts } = reviewed(named(bookWith({ Z1: 20, Z2: 30, Z3: 40 }, judging()), 2), [
      { one: said("both", "Z1", { meant: 10 }) },
      { one: said("outlet", "Z2", { meant: 5 }) },
      { one: said("neither", "Z3", { meant: 10 }) },
    ]);
    expect(findings.map(({ effect }) => effect)).toEqual([
      "The total of 90.00 is 30.00 too high.",
      "The total of 90.00 is 25.00 too high. 2 outlets are not good; without this 1 would be.",
      "The total of 90.00 is 10.00 too high. 2 outlets are not good; without this 1 would be. 1 head unit is short of volts; without this 0 would be.",
    ]);
    expect("leftOut" in facts).toBe(false);
  });

  /** Twenty-one mistakes: one outlet hangs on the first, the other on the last, and the total on none. */
  const many = (outlets: number) => {
    const cells = Array.from({ length: 21 }, (_, row) => `X${row + 1}`);
    const values = Object.fromEntries([
      ...cells.map((cell) => [cell, 20] as const),
      ...Array.from({ length: outlets }, (_, row) => [`Y${row + 1}`, `G-${row}`] as const),
    ]);
    const rules = cells.map((cell) => ({ one: said(`rule of ${cell}`, cell, { meant: 5 }) }));
    return reviewed(
      named(
        bookWith({ ...values, Z1: 20 }, { ...judging("X"), V2: { formula: 'IF(X21>10,"low","ok")' } }),
        outlets,
      ),
      rules,
    );
  };
  const effectOf = ({ findings }: FullReview, cell: string) =>
    findings.find(({ rule }) => rule === `rule of ${cell}`)!.effect;
  const ONE_LESS = "2 outlets are not good; without this 1 would be.";
  test("of a job of 240 outlets with every cause, of 241 with the twenty dearest", () => {
    const [usual, large] = [many(240), many(241)];
    expect([effectOf(usual, "X1"), effectOf(large, "X1")]).toEqual(
      Array(2).fill(`${ONE_LESS} 1 head unit is short of volts; without this 0 would be.`),
    );
    expect([effectOf(usual, "X21"), effectOf(large, "X21")]).toEqual([ONE_LESS, undefined]);
    expect([usual.facts.leftOut, large.facts.leftOut]).toEqual([undefined, 1]);
  });
});

test("the headline speaks of what would move the price: not of a page, nor of what is worth knowing", () => {
  const { headline } = played(bookWith({ Z1: 20 }), [
    { one: said("page", "Z1") },
    { one: said("minor", "Z2", { weight: "worth knowing" }) },
  ]);
  expect(headline).toEqual({
    quoted: 20,
    shouldBe: 20,
    unknown: 0,
    sentence: "Quoted 20.00: nothing was found that would move it.",
  });
});
