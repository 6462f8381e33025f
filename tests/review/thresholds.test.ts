/** Each rule of the review at its threshold: just beyond it names the cell, just inside it says nothing. */
import { parseAddress } from "../../src/formula/address";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { review } from "../../src/review/review";
import { rules } from "../../src/review/ruleList";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse } from "./cleanJobs";
import { entryPairs } from "./thresholds/entries";
import { moneyPairs } from "./thresholds/money";
import { cellAt, change, type Pair, type Side } from "./thresholds/pair";
import { treePairs } from "./thresholds/tree";
import { workbookPairs } from "./thresholds/workbook";

const pairs = [...entryPairs, ...treePairs, ...moneyPairs, ...workbookPairs];

const clean = recalculate(layOut(multiRoom, mendedGuestHouse()));

/** What the pair's rule says of one side, and the cell that it should name. */
function told(pair: Pair, side: Side): { named: string[]; wanted: string } {
  const book = JSON.parse(JSON.stringify(clean)) as Book;
  const at = pair.at;
  change(book, pair.given);
  const place = at === undefined || !clean.names.length ? undefined : cellAt(book, at);
  change(book, side);
  const computed = pair.stored ? book : recalculate(book);
  const anew = (one: Book): Book => (one === computed && !pair.stored ? one : recalculate(one));
  const short = (where: Finding["place"]): string =>
    where === undefined
      ? "the workbook"
      : pair.row
        ? `${where.sheet} ${parseAddress(where.cell)!.row + 1}`
        : `${where.sheet}!${where.cell}`;
  return {
    named: review(computed, anew, pair.options?.(clean))
      .filter(({ rule }) => rule === pair.rule)
      .map((finding) => short(finding.place)),
    wanted: short(place),
  };
}

test("every rule has a pair", () => {
  const held = new Set(pairs.map(({ rule }) => rule));
  expect(rules.map(({ id }) => id).filter((id) => !held.has(id))).toEqual([]);
});

describe.each(pairs.map((pair) => [pair.rule, pair.limit, pair] as const))("%s: %s", (_, __, pair) => {
  test("inside: nothing", () => {
    expect(told(pair, pair.inside).named).toEqual([]);
  });
  test("beyond: the cell", () => {
    const { named, wanted } = told(pair, pair.beyond);
    expect(named).toContain(wanted);
  });
});
