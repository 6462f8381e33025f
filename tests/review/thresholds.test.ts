/**
 * Each rule of the review at its threshold: just beyond it names the cell, just inside it says nothing.
 *
 * The first of these pairs, 68 of all 36 rules, were written from the rules' ids, reasons and examples by somebody who
 * had not read the rules: 48 pairs, and 22 rules with all of theirs, behaved as written at the first run. Of the other
 * 20 five told of mistakes in four rules, which were mended; the rest named another cell of the same row or line than was
 * guessed, or the pair itself was wrong.
 */
import { rules } from "../../src/review/ruleList";
import { undoingOf } from "../../src/review/grouped";
import { RULES_OF_FILES } from "../support/spoiltFiles";
import { pairs, saidBeyond, told } from "./thresholds/told";

/** What they look at is in the file beside its cells, or no figure at all: held by spoiltFiles.test.ts and brokenInputs.test.ts. */
const OF_THE_FILE: ReadonlySet<string> = new Set([
  ...RULES_OF_FILES,
  // Of another template: quoteSlips.test.ts has its pairs.
  "slip in a quote",
]);

test("every rule has a pair", () => {
  const held = new Set(pairs.map(({ rule }) => rule));
  expect(rules.map(({ id }) => id).filter((id) => !held.has(id) && !OF_THE_FILE.has(id))).toEqual([]);
  expect([...OF_THE_FILE].filter((id) => held.has(id) || !rules.some((one) => one.id === id))).toEqual([]);
  expect([...held].filter((id) => !rules.some((one) => one.id === id))).toEqual([]);
});

/** Some need the readings that the whole review makes of the workbook: thresholdsTogether.test.ts. */
const alone = pairs.filter(({ whole }) => !whole);

/** The type of a finding asks for sentences; what should be in a cell may also be its value, its formula or its text. */
const SENTENCE = /^(?=.*\p{L}{2})(?!.*(?:undefined|NaN|null|\[object| {2}| \.$)).*[^\s.](?:[.?]|: =\S+)$/su;
const CONTENT = /^(?:-?\d+(?:\.\d+)?(?: %)?|=\S+|Outlets that nothing feeds, or that cannot be worked out)$/u;

describe.each(alone.map((pair) => [pair.rule, pair.limit, pair] as const))("%s: %s", (_, __, pair) => {
  test("just inside it says nothing", () => {
    expect(told(pair, pair.inside, false).named).toEqual([]);
  });
  test("just beyond it names the cell, in sentences, and no longer with what would undo it or would be usual", () => {
    const { findings, after } = saidBeyond(pair);
    expect(findings.length).toBeGreaterThan(0);
    for (const finding of findings) {
      const { message, expected, effect, remedy, usual, place } = finding;
      for (const words of [message, effect, remedy]) if (words !== undefined) expect(words).toMatch(SENTENCE);
      if (expected !== undefined && !CONTENT.test(expected)) expect(expected).toMatch(SENTENCE);
      const undoing = undoingOf(finding);
      if (undoing) expect(after(undoing)).toEqual([]);
      if (!usual || !place) continue;
      expect(usual.low).toBeLessThanOrEqual(usual.high);
      for (const value of [usual.low, usual.high]) expect(after([{ place, value }])).toEqual([]);
    }
  });
});
