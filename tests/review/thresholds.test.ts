/**
 * Each rule of the review at its threshold: just beyond it names the cell, just inside it says nothing.
 *
 * The first of these pairs, 68 of all 37 rules, were written from the rules' ids, reasons and examples by somebody who
 * had not read the rules: 48 pairs, and 23 rules with all of theirs, behaved as written at the first run. Of the other
 * 20 four told of mistakes in the rules, which were mended; the rest named another cell of the same row or line than was
 * guessed, or the pair itself was wrong.
 */
import { parseAddress } from "../../src/formula/address";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { labelsIn } from "../../src/review/labels";
import { review } from "../../src/review/review";
import { DEFAULT_MARGIN_FLOOR } from "../../src/review/rule";
import { rules } from "../../src/review/ruleList";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse } from "./cleanJobs";
import { entryPairs } from "./thresholds/entries";
import { moneyPairs } from "./thresholds/money";
import { cellAt, change, type Pair, type Side } from "./thresholds/pair";
import { treePairs } from "./thresholds/tree";
import { unitPairs } from "./thresholds/units";
import { workbookPairs } from "./thresholds/workbook";

const pairs = [...entryPairs, ...unitPairs, ...treePairs, ...moneyPairs, ...workbookPairs];

const clean = recalculate(layOut(multiRoom, mendedGuestHouse()));

function findingsOf({ rule, alone, stored, options }: Pair, book: Book): readonly Finding[] {
  const given = options?.(clean) ?? {};
  if (alone) {
    const computed = alone === "computed" ? recalculate(book) : book;
    const readings = { read: computed, own: computed, computed, expected: computed, differences: [] };
    const labelAt = labelsIn(computed, multiRoom);
    const known = {
      definition: multiRoom,
      labelAt,
      options: { marginFloor: DEFAULT_MARGIN_FLOOR, ...given },
    };
    return rules.find(({ id }) => id === rule)!.find({ ...readings, ...known });
  }
  const computed = stored ? book : recalculate(book);
  const found = review(computed, (one) => (one === computed && !stored ? one : recalculate(one)), given);
  return found.filter((one) => one.rule === rule);
}

/** The cells that the pair's rule names on one side, and the one that it should name beyond. */
function told(pair: Pair, side: Side): { named: string[]; wanted: string } {
  const book = JSON.parse(JSON.stringify(clean)) as Book;
  change(book, pair.given);
  const place = pair.at === undefined ? undefined : cellAt(book, pair.at);
  change(book, side);
  const short = (where: Finding["place"]): string => {
    if (where === undefined) return "the workbook";
    return `${where.sheet}!${pair.row ? parseAddress(where.cell)!.row + 1 : where.cell}`;
  };
  return { named: findingsOf(pair, book).map((one) => short(one.place)), wanted: short(place) };
}

test("every rule has a pair", () => {
  const held = new Set(pairs.map(({ rule }) => rule));
  expect(rules.map(({ id }) => id).filter((id) => !held.has(id))).toEqual([]);
  expect([...held].filter((id) => !rules.some((one) => one.id === id))).toEqual([]);
});

describe.each(pairs.map((pair) => [pair.rule, pair.limit, pair] as const))("%s: %s", (_, __, pair) => {
  test("just inside it says nothing", () => {
    expect(told(pair, pair.inside).named).toEqual([]);
  });
  test("just beyond it names the cell", () => {
    const { named, wanted } = told(pair, pair.beyond);
    expect(named).toContain(wanted);
  });
});
