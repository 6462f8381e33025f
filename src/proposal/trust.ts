/** Whether a computed job's price may go to a customer, and what is still missing around it. */
import type { Named } from "../formula/build";
import { quoteFigures } from "../compare/order/quoteFigures";
import { noSum } from "../compare/order/orderTrouble";
import type { Book } from "../workbooks/book";
import { isBookError } from "../workbooks/book";
import { checkLines, type CheckLine } from "../workbooks/checkLines";
import { checks } from "../workbooks/checkNames";
import { estimate } from "../workbooks/multiRoom/names";
import { moneyChecks } from "../workbooks/multiRoom/moneyChecks";
import { namedColumn, namedValue } from "../workbooks/named";
import { isoDate } from "../workbooks/sheetDate";
import { wordsOf } from "../workbooks/shownFigure";

const { site, quote, rooms, heads, branches, feeders, dishes, optionsQuoted } = estimate;

/** Who it is for and what it is known by: a blank there spoils no price. */
const KNOWN_BY = [
  site.job,
  site.customer,
  site.place,
  site.prepared_by,
  site.quote,
  site.revision,
  site.date,
  site.until,
] as const;

/** While one of these fails, nobody knows what the price is. */
const OF_THE_PRICE: ReadonlySet<string> = new Set(
  (
    [
      "discount twice",
      "options without a cost",
      "alternates together",
      "cost added again",
      "cost by margin",
      "rounding of the price",
      "total of the quote",
      "tax of the quote",
      "counted again",
      "quote typed over",
    ] as const
  ).map((id) => moneyChecks[id].what),
);

/** Rows that cannot be worked out; what they would cost is in no price. */
const ROWS = [
  ["Rooms", rooms.outlet, rooms.check.row],
  ["Distribution", branches.id, branches.check.row],
  ["Head units", heads.id, heads.check.row],
  ["Dishes", dishes.name, dishes.seen.row],
  ["Dishes", feeders.to, feeders.check.row],
] as const;
const MOST_NAMED = 5;

const isBlank = (book: Book, { name }: Named): boolean => wordsOf(namedValue(book, name)).trim() === "";

/** @returns a sentence for each of these fields that is blank */
export const blanks = (book: Book): string[] =>
  KNOWN_BY.filter((of) => isBlank(book, of)).map(
    ({ words: { label } }) => `“${label}” on Site is blank, and a proposal must say it. Fill it in.`,
  );

const failing = (book: Book): CheckLine[] =>
  checkLines(book).filter(({ result }) => result !== "ok" && result !== "note");
const inWords = ({ what, where }: CheckLine): string => `${what} (${where})`;

/** @returns why no proposal can be made of the job; nothing where its price may be relied on */
export function distrust(book: Book): string[] {
  const draft = wordsOf(namedValue(book, quote.draft.name));
  const found = ROWS.flatMap(([sheet, names, verdicts]) => badRows(book, sheet, names, verdicts));
  const sums = failing(book).filter(({ what }) => OF_THE_PRICE.has(what));
  const why = [
    ...(quoteFigures(book) ? [] : [noSum(book)]),
    ...found,
    ...sums.map((line) => `a check of it fails: ${inWords(line)}`),
    ...belowNothing(book),
  ];
  if (why.length === 0 && draft !== "" && !isOnlyUnknown(book))
    why.push(`its Quote says "${draft}"`, ...entriesMissing(book));
  return [...why.map((one) => `The price can't be relied on: ${one}.`), ...overBeforeItBegan(book)];
}

/** Nobody is paid for taking an alternate. */
function belowNothing(book: Book): string[] {
  const names = namedColumn(book, optionsQuoted.name.name);
  return namedColumn(book, optionsQuoted.total.name).flatMap((total, row) =>
    typeof total === "number" && total < 0
      ? [`with “${wordsOf(names[row])}” the total would be ${total}, below 0`]
      : [],
  );
}

function overBeforeItBegan(book: Book): string[] {
  const [date, until] = [namedValue(book, site.date.name), namedValue(book, site.until.name)];
  return typeof date === "number" && typeof until === "number" && until < date
    ? [
        `The quote is dated ${isoDate(date)} and valid until ${isoDate(until)}, which is before that. See Site.`,
      ]
    : [];
}

function badRows(book: Book, sheet: string, names: Named, verdicts: Named): string[] {
  const called = namedColumn(book, names.name);
  const bad = namedColumn(book, verdicts.name).flatMap((verdict, row) =>
    verdict === "bad" || isBookError(verdict) ? [wordsOf(called[row]) || `row ${row}`] : [],
  );
  if (bad.length === 0) return [];
  const more = bad.length > MOST_NAMED ? ` and ${bad.length - MOST_NAMED} more` : "";
  return [
    `what these rows of ${sheet} cost is not in it, because they can't be worked out: ${bad.slice(0, MOST_NAMED).join(", ")}${more}`,
  ];
}

/** Nothing is missing but who the job is for and what it is known by. */
function isOnlyUnknown(book: Book): boolean {
  const found = namedColumn(book, checks.entries.name);
  return (
    found.every((count) => typeof count === "number") &&
    found.reduce<number>((sum, count) => sum + (count as number), 0) ===
      KNOWN_BY.filter((of) => isBlank(book, of)).length
  );
}

/** By sheet; the checks of what was entered come first, as many as have the name. */
const entriesMissing = (book: Book): string[] =>
  checkLines(book)
    .slice(0, namedColumn(book, checks.entries.name).length)
    .filter(({ result }) => result !== "ok")
    .map(inWords);

/** Checks that spoil no sum, and that nobody should sign for. */
const failingBeside = (book: Book): CheckLine[] =>
  failing(book).filter(({ what }) => !OF_THE_PRICE.has(what));
export const hasFailing = (book: Book): boolean => failingBeside(book).length > 0;

/**
 * @param today as a sheet has dates
 * @returns a sentence for each check that fails and spoils no sum, and for a quote that is over; none of them is in
 *   the document
 */
export function doubts(book: Book, today: number): string[] {
  const until = namedValue(book, site.until.name);
  return [
    ...failingBeside(book).map(
      (line) => `A check fails: ${inWords(line)}. Settle it before the proposal goes out.`,
    ),
    ...(typeof until === "number" && until < today
      ? [`The quote was valid until ${isoDate(until)}, which is past. Give it another day on Site.`]
      : []),
  ];
}
