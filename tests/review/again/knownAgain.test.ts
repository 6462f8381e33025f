/** Which findings are known from the review before: each expected state by the comments of knownAgain.ts. */
import { knownAgain, type Again, type Known, type RowsThen } from "../../../src/review/again/knownAgain";
import type { Noted } from "../../../src/review/again/noted";
import { afterSettling, dayOf, openIn, settledIn, wordOf } from "../../../src/review/again/told";

const FIRST = "2026-10-01T08:00:00Z";
const THEN = "2026-10-02T08:00:00Z";
const ROW = "rooms_outlet g-01";
const ROWS: RowsThen = { before: [ROW], now: [ROW] };

const noted = (more: Partial<Noted> = {}): Noted => ({
  rules: ["unit slip"],
  weight: "wrong",
  place: { sheet: "Rooms", cell: "D5" },
  subject: `rooms_run of ${ROW}`,
  row: ROW,
  held: 100,
  message: "A run of 100.",
  ...more,
});
const known = (more: Partial<Known> = {}): Known => ({ ...noted(), key: 7, since: FIRST, ...more });
const settled = (held: Noted["held"] = 100) => ({ reason: "measured", at: FIRST, held });
const again = (before: Known, now: Noted, rows = ROWS): Again =>
  knownAgain([before], [now], rows, THEN).now[0]!;

test("what nobody knows is new, with a key of its own above all others", () => {
  const { now, gone, known: kept } = knownAgain([], [noted(), noted({ subject: "site_tax 0" })], ROWS, FIRST);
  expect(now).toEqual([
    { key: 1, state: "new", since: FIRST },
    { key: 2, state: "new", since: FIRST },
  ]);
  expect(gone).toEqual([]);
  expect(kept).toEqual([
    { ...noted(), key: 1, since: FIRST },
    { ...noted({ subject: "site_tax 0" }), key: 2, since: FIRST },
  ]);
  const others = [
    known({ key: 4, subject: "a" }),
    known({ key: 9, subject: "b" }),
    known({ key: 2, subject: "c" }),
  ];
  expect(knownAgain(others, [noted({ place: undefined })], ROWS, THEN).now[0]!.key).toBe(10);
});

test("what was found before is still there since then", () => {
  expect(again(known(), noted())).toEqual({ key: 7, state: "still", since: FIRST });
  // Another figure or another row does not make it another finding.
  expect(again(known(), noted({ held: 90 })).state).toBe("still");
  expect(again(known(), noted({ place: { sheet: "Rooms", cell: "D9" } })).state).toBe("still");
});

test.each<[string, Partial<Known>, Partial<Noted>, string]>([
  ["one rule of several", { rules: ["a", "b"] }, { rules: ["b", "c"] }, "still"],
  ["another rule", { rules: ["a"] }, { rules: ["b"] }, "new"],
  [
    "of the whole workbook",
    { place: undefined, row: undefined },
    { place: undefined, row: undefined },
    "still",
  ],
  ["another subject in another place", {}, { subject: "site_tax 0", place: undefined }, "new"],
])("%s", (_, before, now, state) => expect(again(known(before), noted(now)).state).toBe(state));

describe("what was settled", () => {
  test.each<[string, Partial<Known>, Partial<Noted>, string]>([
    ["stands as it stood", { settled: settled() }, {}, "settled"],
    ["holds another figure", { settled: settled() }, { held: 101 }, "new"],
    ["held another the last time too", { settled: settled(), held: 101 }, { held: 101 }, "still"],
    ["holds a third", { settled: settled(), held: 101 }, { held: 102 }, "still"],
    ["holds again what was settled", { settled: settled(), held: 101 }, { held: 100 }, "settled"],
    // What nobody typed may move by a tenth of what was settled, to either side.
    ["computed, a tenth more", { settled: settled() }, { held: 110, isComputed: true }, "settled"],
    ["computed, a tenth less", { settled: settled() }, { held: 90, isComputed: true }, "settled"],
    [
      "computed, farther up",
      { settled: settled(), isComputed: true },
      { held: 110.5, isComputed: true },
      "new",
    ],
    [
      "computed, farther down",
      { settled: settled(), isComputed: true },
      { held: 89, isComputed: true },
      "new",
    ],
    ["computed, below 0", { settled: settled(-50), held: -50 }, { held: -54, isComputed: true }, "settled"],
    ["computed, a text", { settled: settled("ok"), held: "ok" }, { held: "ok", isComputed: true }, "settled"],
    [
      "computed, another text",
      { settled: settled("ok"), held: "ok" },
      { held: "low", isComputed: true },
      "new",
    ],
    ["was gone meanwhile", { settled: settled(), isGone: true }, {}, "settled"],
    ["was gone and holds another", { settled: settled(), isGone: true }, { held: 3 }, "back"],
  ])("%s", (_, before, now, state) => {
    const found = again(known(before), noted(now));
    expect(found.state).toBe(state);
    const word = before.settled;
    expect(
      state === "settled" ? [found.settled, found.wasSettled] : [found.wasSettled, found.settled],
    ).toEqual([word, undefined]);
  });

  test("is kept with its reason and what was settled, beside what stands there now", () => {
    const { known: kept } = knownAgain([known({ settled: settled() })], [noted({ held: 40 })], ROWS, THEN);
    expect(kept).toEqual([{ ...noted({ held: 40 }), key: 7, since: FIRST, settled: settled() }]);
  });
});

describe("what is gone", () => {
  test("is told once, and kept", () => {
    const first = knownAgain([known()], [], ROWS, THEN);
    expect(first).toEqual({ now: [], gone: [known()], known: [known({ isGone: true })] });
    expect(knownAgain(first.known, [], ROWS, THEN)).toEqual({ now: [], gone: [], known: first.known });
    expect(knownAgain(first.known, [noted()], ROWS, THEN).now).toEqual([
      { key: 7, state: "back", since: FIRST },
    ]);
    expect(knownAgain(first.known, [noted()], ROWS, THEN).known).toEqual([known()]);
  });

  test("of 501 the oldest is forgotten, of 500 none", () => {
    const gone = Array.from({ length: 501 }, (_, at) =>
      known({ key: at + 1, subject: `n ${at}`, isGone: true }),
    );
    expect(knownAgain(gone, [], ROWS, THEN).known.map(({ key }) => key)).toEqual(
      gone.slice(1).map(({ key }) => key),
    );
    expect(knownAgain(gone.slice(1), [], ROWS, THEN).known).toHaveLength(500);
  });
});

test("of two of one subject each is known by what stands there, then in turn", () => {
  const two = [known({ key: 1, held: 1 }), known({ key: 2, held: 2 })];
  const keys = (...held: number[]): number[] =>
    knownAgain(
      two,
      held.map((one) => noted({ held: one })),
      ROWS,
      THEN,
    ).now.map(({ key }) => key);
  expect(keys(2, 1)).toEqual([2, 1]);
  expect(keys(3, 1)).toEqual([2, 1]);
  expect(keys(3, 4)).toEqual([1, 2]);
  expect(keys(1, 2, 2)).toEqual([1, 2, 3]);
});

test("what was settled is known by what was settled, not by what stood there the last time", () => {
  const two = [known({ key: 1, held: 5, settled: settled(2) }), known({ key: 2, held: 5 })];
  expect(
    knownAgain(two, [noted({ held: 5 }), noted({ held: 2 })], ROWS, THEN).now.map(({ key }) => key),
  ).toEqual([2, 1]);
});

describe("a row that is called otherwise", () => {
  const of = (name: string): Pick<Noted, "row" | "subject"> => ({
    row: `rooms_outlet ${name}`,
    subject: `rooms_run of rooms_outlet ${name}`,
  });
  const rows = (names: string): string[] => names.split(" ").map((name) => `rooms_outlet ${name}`);
  test.each<[string, string, string, Partial<Noted>, string]>([
    ["in its place with its figure", "a b c", "x b c", {}, "still"],
    ["half of the rows as they were", "a b", "x b", {}, "still"],
    ["most of the rows others: another building", "a b c", "x y c", {}, "new"],
    ["another figure", "a b c", "x b c", { held: 3 }, "new"],
    ["elsewhere", "a b c", "x b c", { place: { sheet: "Rooms", cell: "D8" } }, "new"],
    ["on another sheet", "a b c", "x b c", { place: { sheet: "Price", cell: "D5" } }, "new"],
    ["the old name stands elsewhere now", "a b c", "x a c", {}, "new"],
    ["the new name was there before", "a b x", "x b c", {}, "new"],
    ["a row of another list", "a b c", "x b c", { row: "branches_id x", subject: "n" }, "new"],
    ["no row", "a b c", "x b c", { row: undefined, subject: "n" }, "new"],
  ])("%s", (_, before, now, more, state) => {
    const found = again(known(of("a")), noted({ ...of("x"), ...more }), {
      before: rows(before),
      now: rows(now),
    });
    expect(found.state).toBe(state);
  });
  test("the last time it had none", () =>
    expect(
      again(known({ row: undefined, subject: "n" }), noted(of("x")), {
        before: rows("a b"),
        now: rows("x b"),
      }).state,
    ).toBe("new"));
});

describe("told", () => {
  const finding = (message: string) => ({ weight: "wrong", message, remedy: "Look." }) as const;
  const findings = [finding("one"), finding("two"), finding("three")];
  const now: Again[] = [
    { key: 1, state: "settled", since: FIRST, settled: settled() },
    { key: 2, state: "new", since: FIRST },
    { key: 3, state: "settled", since: FIRST },
  ];
  const kept = { id: "j", now, gone: [] };
  const earlier = { at: FIRST, file: "a.xlsx", version: "1" };

  test("open are those that nobody has settled, settled the others with their reason", () => {
    expect(openIn({ findings, kept }).map((one) => one.finding.message)).toEqual(["two"]);
    expect(settledIn({ findings, kept })).toEqual([{ finding: findings[0], settled: settled() }]);
    expect(openIn({ findings }).map((one) => one.finding.message)).toEqual(["one", "two", "three"]);
    expect(settledIn({ findings })).toEqual([]);
  });

  test("settling, and taking it back", () => {
    expect(afterSettling(now[1]!, settled())).toEqual({
      key: 2,
      since: FIRST,
      state: "settled",
      settled: settled(),
    });
    for (const none of [undefined, null])
      expect(afterSettling(now[0]!, none)).toEqual({ key: 1, since: FIRST, state: "still" });
  });

  test.each([
    ["new", "new"],
    ["back", "back again"],
    ["still", undefined],
    ["settled", undefined],
  ] as const)("the word for %s is %s, and none in a first review", (state, word) => {
    const told = { finding: findings[0]!, again: { key: 1, state, since: FIRST } };
    expect(wordOf(told, { ...kept, earlier })).toBe(word);
    expect(wordOf(told, kept)).toBeUndefined();
    expect(wordOf(told, undefined)).toBeUndefined();
    expect(wordOf({ finding: findings[0]! }, { ...kept, earlier })).toBeUndefined();
  });

  test("a day", () => expect(dayOf(FIRST)).toBe("2026-10-01"));
});
