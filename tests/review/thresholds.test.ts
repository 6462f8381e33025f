/**
 * Each rule of the review at its threshold: just beyond it names the cell, just inside it says nothing.
 *
 * The first of these pairs, 68 of all 36 rules, were written from the rules' ids, reasons and examples by somebody who
 * had not read the rules: 48 pairs, and 22 rules with all of theirs, behaved as written at the first run. Of the other
 * 20 five told of mistakes in four rules, which were mended; the rest named another cell of the same row or line than was
 * guessed, or the pair itself was wrong.
 */
import { parseAddress } from "../../src/formula/address";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { formulaDifferences } from "../../src/review/formulaDifferences";
import { labelsIn } from "../../src/review/labels";
import { review } from "../../src/review/review";
import { DEFAULT_MARGIN_FLOOR } from "../../src/review/rule";
import { rules } from "../../src/review/ruleList";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedEarlierHouse } from "./cleanJobs";
import { entryPairs } from "./thresholds/entries";
import { moneyPairs } from "./thresholds/money";
import { cellAt, change, type Pair, type Side } from "./thresholds/pair";
import { rangePairs } from "./thresholds/ranges";
import { treePairs } from "./thresholds/tree";
import { unitPairs } from "./thresholds/units";
import { workbookPairs } from "./thresholds/workbook";
import { sampled } from "../support/tries";

const pairs = [...entryPairs, ...unitPairs, ...treePairs, ...moneyPairs, ...workbookPairs, ...rangePairs];

const clean = recalculate(layOut(multiRoom, mendedEarlierHouse()));

/** Beyond its threshold the first pair of each rule goes through the whole review, which takes long. */
const firstOfRule = new Set(new Map(pairs.toReversed().map((pair) => [pair.rule, pair])).values());

const marginFloor = DEFAULT_MARGIN_FLOOR;
function whatReviewSays({ stored, options }: Pair, book: Book): readonly Finding[] {
  const computed = stored ? book : recalculate(book);
  return review(computed, (one) => (one === computed && !stored ? one : recalculate(one)), options?.(clean));
}

/** The rule by itself; what it does not read is not computed. */
function whatRuleSays({ rule, results, options }: Pair, book: Book): readonly Finding[] {
  const read = results ? recalculate(book) : book;
  const labelAt = labelsIn(read, multiRoom);
  let known = results ? read : undefined;
  const computed = (): Book => (known ??= recalculate(book));
  return rules
    .find(({ id }) => id === rule)!
    .find({
      read,
      get own() {
        return computed();
      },
      get computed() {
        return computed();
      },
      get expected() {
        return computed();
      },
      get differences() {
        return formulaDifferences(read, read, multiRoom, labelAt);
      },
      definition: multiRoom,
      labelAt,
      options: { marginFloor, ...options?.(clean) },
    });
}

const copyOf = (book: Book): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) => ({
    ...sheet,
    cells: { ...sheet.cells },
    results: { ...sheet.results },
  })),
});

/** The cells that the pair's rule names on one side, and the one that it should name beyond. */
function told(pair: Pair, side: Side, whole: boolean): { named: string[]; wanted: string } {
  const book = copyOf(clean);
  change(book, pair.given);
  const place = pair.at === undefined ? undefined : cellAt(book, pair.at);
  change(book, side);
  const short = (where: Finding["place"]): string => {
    if (where === undefined) return "the workbook";
    return `${where.sheet}!${pair.row ? parseAddress(where.cell)!.row + 1 : where.cell}`;
  };
  const findings = whole
    ? whatReviewSays(pair, book).filter(({ rule }) => rule === pair.rule)
    : whatRuleSays(pair, book);
  return { named: findings.map((one) => short(one.place)), wanted: short(place) };
}

/** What they look at is in the file beside its cells, or no figure at all: held by spoiltFiles.test.ts and brokenInputs.test.ts. */
const OF_THE_FILE: ReadonlySet<string> = new Set([
  "input leads nowhere",
  "text that looks like another",
  "shown otherwise",
  "cannot be read",
  "hidden by condition",
  "drawn over",
  "page",
  "words of the quote changed",
  "tells more than the page",
  "leads outside",
  "guard removed",
  // Of another template: quoteSlips.test.ts has its pairs.
  "slip in a quote",
]);

test("every rule has a pair", () => {
  const held = new Set(pairs.map(({ rule }) => rule));
  expect(rules.map(({ id }) => id).filter((id) => !held.has(id) && !OF_THE_FILE.has(id))).toEqual([]);
  expect([...OF_THE_FILE].filter((id) => held.has(id) || !rules.some((one) => one.id === id))).toEqual([]);
  expect([...held].filter((id) => !rules.some((one) => one.id === id))).toEqual([]);
});

const heldInside = new Set(sampled(pairs, 2));

describe.each(pairs.map((pair) => [pair.rule, pair.limit, pair] as const))("%s: %s", (_, __, pair) => {
  if (heldInside.has(pair))
    test("just inside it says nothing", () => {
      expect(told(pair, pair.inside, pair.whole === true).named).toEqual([]);
    });
  test("just beyond it names the cell", () => {
    const whole = pair.whole === true || (firstOfRule.has(pair) && !pair.folded);
    const { named, wanted } = told(pair, pair.beyond, whole);
    expect(named).toContain(wanted);
  });
});
