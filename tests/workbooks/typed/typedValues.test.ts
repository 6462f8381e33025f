/** The outsider's 797 typed values, all of them; and what holds for any text. */
import fc from "fast-check";
import { isoDate, sheetDate } from "../../../src/workbooks/sheetDate";
import { contextOf } from "../../../src/workbooks/typed/contextOf";
import { readTyped } from "../../../src/workbooks/typed/readTyped";
import { DATES, type NumberKind, type Quantity } from "../../../src/workbooks/typed/typedKind";
import { WRITINGS, writingOf } from "../../../src/workbooks/typed/writing";
import { kindFor, typedCases, verdictOf, type TypedCase } from "./outsiders";
import { tries } from "../../support/tries";

/** Where we judge otherwise than the maker's first choice; each is one that the maker calls harmless. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "name-052": "Accents are brought to one form, so that a name typed on two machines is one name.",
  "name-072": "A cell for text takes 250 characters, and a longer text is refused with its length, not cut.",
  "date-040":
    "A weekday beside a date is refused: it would have to be held against the date in every language.",
  "date-041": "As date-040.",
  "date-044": "Blanks between the figures of a date are no sign of their order.",
};

const read = (one: TypedCase) =>
  readTyped(one.typed, kindFor(one), {
    writing: writingOf(one.locale),
    currency: one.currency,
    lengths: one.column === "length_ft" ? "ft" : "m",
  });

describe("every value of the outsider", () => {
  test("there are 797", () => expect(typedCases).toHaveLength(797));

  test.each([...new Set(typedCases.map(({ column }) => column))])("%s", (column) => {
    const judged = typedCases
      .filter((one) => one.column === column)
      .map((one) => ({ one, outcome: read(one), verdict: verdictOf(one, read(one)) }));
    const bad = judged.filter(
      ({ verdict, one }) => verdict !== "right" && !(verdict === "soft" && one.id in OTHERWISE),
    );
    expect(bad.map(({ one, outcome, verdict }) => ({ ...one, outcome, verdict }))).toEqual([]);
  });

  test("those on which we judge otherwise are named, and no others", () => {
    const soft = typedCases.filter((one) => verdictOf(one, read(one)) === "soft");
    expect(soft.map(({ id }) => id)).toEqual(Object.keys(OTHERWISE));
  });
});

const number = (quantity: Quantity, unit: string, min = -1e9, max = 1e9): NumberKind => ({
  kind: "number",
  quantity,
  unit,
  min,
  max,
});

describe("what a refusal asks for", () => {
  const KINDS: readonly NumberKind[] = [
    number("length", "m or ft"),
    number("money", "money"),
    number("share", "share"),
    number("frequency", "MHz"),
    number("temperature", "°C"),
    number("level", "dBµV"),
    number("decibels", "dB"),
    number("volts", "V"),
    number("current", "A"),
    number("power", "W"),
    number("minutes", "min"),
    number("latitude", "deg north", -90, 90),
    number("longitude", "deg east", -180, 180),
    number("angle", "deg"),
    number("pieces", "pieces"),
    number("plain", "factor"),
  ];
  test.each(KINDS.map((kind) => [kind.quantity, kind] as const))("%s: each example is read", (_, kind) => {
    for (const lengths of ["m", "ft"] as const) {
      const answer = readTyped("?", kind, { lengths });
      const sentence = "refused" in answer ? answer.refused : "";
      const examples = sentence
        .split(/: |such as /)
        .at(-1)!
        .replace(/\.$/, "")
        .split(/, | or /);
      for (const example of examples)
        expect([example, readTyped(example, kind, { lengths })]).toEqual([
          example,
          { value: expect.any(Number) },
        ]);
    }
  });

  test("of two numbers each is read as itself when it is typed as the sentence has it", () => {
    for (const writing of [undefined, ...WRITINGS]) {
      for (const typed of ["1,234", "1.234", "12,345", "12.345 MHz", "1,000"]) {
        const kind = number(typed.endsWith("MHz") ? "frequency" : "plain", "MHz");
        const context = writing ? { writing } : {};
        const answer = readTyped(typed, kind, context);
        if (!("refused" in answer)) continue;
        const [, one, other] = /can be (.+) or (.+)\. Type/.exec(answer.refused)!;
        const [grouped, decimal] = [one!, other!].map((text) => readTyped(text, kind, context));
        expect([grouped, decimal]).toEqual([{ value: expect.any(Number) }, { value: expect.any(Number) }]);
        expect(grouped).not.toEqual(decimal);
      }
    }
  });

  test("of two days each is a date that is read everywhere", () => {
    const answer = readTyped("05/11/2026", { kind: "date", ...DATES });
    expect("refused" in answer && answer.refused).toMatch(
      /can be 2026-11-05 or 2026-05-11\. Type it so, or choose how dates are typed under “Numbers and dates typed as in”\./,
    );
  });
});

// The browser's and Node's own locale data (Unicode CLDR, through Intl) as an independent writer.
describe("what another program writes for a locale is read back, or refused, and never as something else", () => {
  const kind = number("money", "money");

  test.each(WRITINGS.map((writing) => [writing.tag, writing] as const))("numbers in %s", (tag, writing) => {
    let readBack = 0;
    for (const [digits, style] of [
      [0, true],
      [1, true],
      [2, true],
      [3, true],
      [2, false],
      [3, false],
    ] as const) {
      const format = new Intl.NumberFormat(tag, {
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
        useGrouping: style,
      });
      for (const whole of [0, 7, 12, 385, 999, 1000, 1234, 12_345, 123_456, 1_234_567]) {
        const value = Number((whole + 0.27).toFixed(digits));
        const answer = readTyped(format.format(value), kind, { writing });
        if ("refused" in answer) expect(format.format(value)).toMatch(/^\d{1,3}[.,]\d{3}$/);
        else expect([format.format(value), answer]).toEqual([format.format(value), { value }]);
        if ("value" in answer) readBack++;
      }
    }
    expect(readBack).toBeGreaterThan(45);
  });

  test.each(WRITINGS.map((writing) => [writing.tag, writing] as const))("dates in %s", (tag, writing) => {
    let readBack = 0;
    for (const dateStyle of ["short", "medium", "long"] as const) {
      const format = new Intl.DateTimeFormat(tag, { dateStyle, timeZone: "UTC" });
      for (const [month, day] of [
        [1, 3],
        [2, 28],
        [3, 4],
        [4, 30],
        [5, 6],
        [6, 7],
        [7, 8],
        [8, 9],
        [9, 10],
        [10, 11],
        [11, 27],
        [12, 31],
      ] as const) {
        const written = format.format(new Date(Date.UTC(2026, month - 1, day)));
        const answer = readTyped(written, { kind: "date", ...DATES }, { writing });
        if ("refused" in answer) continue;
        expect([written, isoDate(Number(answer.value))]).toEqual([
          written,
          isoDate(sheetDate(2026, month, day)),
        ]);
        readBack++;
      }
    }
    expect(readBack).toBeGreaterThanOrEqual(12);
  });
});

test("any text in any column: a value inside its limits or a sentence, in no time", () => {
  const kinds = [...new Map(typedCases.map((one) => [JSON.stringify(kindFor(one)), kindFor(one)])).values()];
  fc.assert(
    fc.property(
      fc.oneof(fc.string(), fc.stringMatching(/^[-+ ]?[0-9.,' /"°a-zµ%€]{0,40}$/)),
      fc.constantFrom(...kinds),
      fc.constantFrom(undefined, ...WRITINGS),
      (text, kind, writing) => {
        const answer = readTyped(text, kind, { ...(writing && { writing }), lengths: "m" });
        if ("refused" in answer) return answer.refused.length > 20;
        if (kind.kind !== "number" || answer.value === undefined) return true;
        return Number(answer.value) >= kind.min! && Number(answer.value) <= kind.max!;
      },
    ),
    { numRuns: tries(500, 5000) },
  );
  const started = performance.now();
  for (const text of ["1-".repeat(50_000), ",".repeat(100_000), "1 ".repeat(50_000), "9".repeat(100_000)])
    for (const kind of kinds) expect("refused" in readTyped(text, kind)).toBe(true);
  // Linear in the text: two seconds on two busy cores are many times what it takes.
  expect(performance.now() - started).toBeLessThan(2000);
});

test("what the workbook says of itself: how it writes, its money and its unit of length", () => {
  const fields: Record<string, unknown> = { written_as: "German", site_currency: "EUR", site_unit: "ft" };
  expect(contextOf((name) => fields[name])).toEqual({
    writing: writingOf("de-DE"),
    currency: "EUR",
    lengths: "ft",
  });
  expect(contextOf(() => undefined)).toEqual({});
});

test("a length in a workbook that names no unit yet takes a number alone", () => {
  const kind = number("length", "m or ft", 0, 2000);
  expect(readTyped("9,5", kind)).toEqual({ value: 9.5 });
  for (const text of ["9.5 m", "31 ft", "41' 6\""])
    expect(readTyped(text, kind)).toEqual({ refused: expect.stringMatching(/number alone/) });
});
