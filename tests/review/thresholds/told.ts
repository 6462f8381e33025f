/** What a rule by itself, or the whole review, says of one side of a threshold. */
import { parseAddress } from "../../../src/formula/address";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import type { Finding, Undoing } from "../../../src/review/finding";
import { formulaDifferences } from "../../../src/review/formulaDifferences";
import { labelsIn } from "../../../src/review/labels";
import { review } from "../../../src/review/review";
import { DEFAULT_MARGIN_FLOOR } from "../../../src/review/rule";
import { rules } from "../../../src/review/ruleList";
import { withChanges } from "../../../src/review/withChanges";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { mendedEarlierHouse } from "../cleanJobs";
import { entryPairs } from "./entries";
import { moneyPairs } from "./money";
import { cellAt, change, type Pair, type Side } from "./pair";
import { rangePairs } from "./ranges";
import { treePairs } from "./tree";
import { unitPairs } from "./units";
import { workbookPairs } from "./workbook";

export const pairs = [
  ...entryPairs,
  ...unitPairs,
  ...treePairs,
  ...moneyPairs,
  ...workbookPairs,
  ...rangePairs,
];

export const clean = recalculate(layOut(multiRoom, mendedEarlierHouse()));

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

const shortOf = (pair: Pair, where: Finding["place"]): string => {
  if (where === undefined) return "the workbook";
  return `${where.sheet}!${pair.row ? parseAddress(where.cell)!.row + 1 : where.cell}`;
};

/** A copy of the job with one side of a pair, and the cell that its rule should name beyond. */
function sideOf(pair: Pair, side: Side): { book: Book; wanted: string } {
  const book = copyOf(clean);
  change(book, pair.given);
  const place = pair.at === undefined ? undefined : cellAt(book, pair.at);
  change(book, side);
  return { book, wanted: shortOf(pair, place) };
}

/** @returns the cells that the pair's rule names on one side, and the one that it should name beyond */
export function told(pair: Pair, side: Side, whole: boolean): { named: string[]; wanted: string } {
  const { book, wanted } = sideOf(pair, side);
  const findings = whole
    ? whatReviewSays(pair, book).filter(({ rule }) => rule === pair.rule)
    : whatRuleSays(pair, book);
  return { named: findings.map(({ place }) => shortOf(pair, place)), wanted };
}

/** @returns what the pair's rule says of its cell beyond, and what it says of it once that is changed */
export function saidBeyond(pair: Pair): {
  findings: readonly Finding[];
  after: (changes: readonly Undoing[]) => string[];
} {
  const { book, wanted } = sideOf(pair, pair.beyond);
  const of = (changed: Book): Finding[] =>
    whatRuleSays(pair, changed).filter(({ place }) => shortOf(pair, place) === wanted);
  return {
    findings: of(book),
    after: (changes) => of(withChanges(book, changes)).map(({ message }) => message),
  };
}
