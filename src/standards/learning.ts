/** What the firm's standards learn of accepted quotes: which files count, and the rows of their sheet Ranges. */
import { recognised } from "../review/recognised";
import {
  learn,
  keyOf,
  lastOfEach,
  learnedRows,
  type Accepted,
  type Learned,
  type OutOfRange,
} from "../review/ranges/learned";
import { measuresIn } from "../review/ranges/measures";
import type { Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { estimate } from "../workbooks/multiRoom/names";
import { withTypes } from "../workbooks/multiRoom/withTypes";
import { namedValue } from "../workbooks/named";
import { OF } from "../workbooks/names";
import { ranges } from "../workbooks/standards/names";
import { hasJob } from "../review/namedCells";

/** One quote says what it says: from two on there is something to compare. */
const FEWEST_KEPT = 2;
const DIGITS = 6;

/**
 * @param computed a workbook of the folder, computed
 * @returns a sentence where it is no quote to learn from
 */
export function acceptedQuote(computed: Book, called: string): Accepted | string {
  const book = recognised(computed);
  if (book.template !== multiRoom.id) return `${called} is no multi-room job, and was left out.`;
  if (!hasJob(book)) return `${called} has no outlets, and was left out.`;
  if (typeof namedValue(book, estimate.quote.total.name) !== "number")
    return `${called} has no total, and was left out.`;
  const [number, revision] = [estimate.site.quote, estimate.site.revision].map(({ name }) =>
    namedValue(book, name),
  );
  const word = String(number ?? "").trim();
  return {
    called,
    number: word === "" ? called : word.toLowerCase(),
    revision: typeof revision === "number" ? revision : 0,
    measures: measuresIn(withTypes(book), multiRoom),
  };
}

export interface LearnedOf {
  readonly inputs: JobInputs;
  readonly ranges: readonly Learned[];
  readonly outside: readonly OutOfRange[];
  /** Quotes that counted, each by its last revision. */
  readonly quotes: readonly Accepted[];
  /** Rows of the sheet that a person keeps as they are. */
  readonly kept: number;
}

/**
 * @param inputs of the standards as they stand
 * @param today as a sheet has dates
 */
export function learnedOf(inputs: JobInputs, accepted: readonly Accepted[], today: number): LearnedOf {
  const quotes = lastOfEach(accepted);
  const { ranges: all, outside } = learn(quotes);
  const block = ranges[OF].name;
  const kept = (inputs.blocks?.[block] ?? []).filter(({ keep }) => keep === "yes");
  const own = new Set(learnedRows(kept).map(keyOf));
  const found = all.filter((one) => one.quotes >= FEWEST_KEPT && !own.has(keyOf(one)));
  const rows = found.map(({ what, of, unit, low, middle, high, quotes: from, name }) => ({
    what,
    ...(of !== "" && { of }),
    ...(unit !== "" && { unit }),
    low: inShort(low),
    middle: inShort(middle),
    high: inShort(high),
    quotes: from,
    learned: today,
    known: name,
  }));
  return {
    inputs: { ...inputs, blocks: { ...inputs.blocks, [block]: [...kept, ...rows] } },
    ranges: found,
    outside,
    quotes,
    kept: kept.length,
  };
}

const inShort = (value: number): number => Number(value.toPrecision(DIGITS));
