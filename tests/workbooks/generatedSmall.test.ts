/**
 * The small templates held to a reference of the tests' own (tests/support/reference/small), cell by cell on every
 * sheet: as they begin, as they are demonstrated, and as drawn from a seed, blanks and bad entries among them. A few
 * seeds in the usual run, 200 in `npm run prove`; JOB_SEED=17 runs that one alone.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import {
  alignmentCard,
  alignmentCardExample,
  alignmentCardStart,
} from "../../src/workbooks/alignmentCard/definition";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs, WorkbookDefinition } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { quoteReview } from "../../src/workbooks/quoteReview/definition";
import { quoteReviewExample, quoteReviewStart } from "../../src/workbooks/quoteReview/jobInputs";
import { singleDrop, singleDropExample, singleDropStart } from "../../src/workbooks/singleDrop/definition";
import { calculatedCells, compare } from "../support/reference/compare";
import type { Cells, Job } from "../support/reference/job";
import { alignmentCardReference } from "../support/reference/small/alignmentCard";
import {
  alignmentCardFilling,
  quoteReviewFilling,
  singleDropFilling,
} from "../support/reference/small/fillings";
import { quoteReviewReference } from "../support/reference/small/quoteReview";
import { singleDropReference } from "../support/reference/small/singleDrop";
import { tries } from "../support/tries";

const ALL_SEEDS = 200;
const seeds =
  process.env.JOB_SEED === undefined
    ? Array.from({ length: tries(12, 18, ALL_SEEDS) }, (_, seed) => seed)
    : [Number(process.env.JOB_SEED)];

/** magvar rounds to 0.01 deg. */
const TOLERANCES = { slots_compass: 0.011 };
/**
 * Held to a pattern or a rule: the words of a verdict, a peak that may be unsure, a figure less an empty text, what is
 * corrected where a figure is a word, versions.
 */
const LOOSELY =
  /^(peaks_found|review_verdict|review_(heads|price|tax)_(off|word)|corrected_\w+|about_(template|functions))$/;

interface Small {
  readonly definition: WorkbookDefinition;
  readonly reference: (job: Job, book: Book, isByWords: boolean) => Cells;
  /** A filling in which the template is known to say something else than its words. */
  readonly differs?: JobInputs;
  readonly start: JobInputs;
  readonly example: JobInputs;
  readonly drawn: (seed: number) => Job;
}

const small: readonly Small[] = [
  {
    definition: singleDrop,
    reference: singleDropReference,
    differs: singleDropStart,
    start: singleDropStart,
    example: singleDropExample,
    drawn: singleDropFilling,
  },
  {
    definition: alignmentCard,
    reference: alignmentCardReference,
    start: alignmentCardStart,
    example: alignmentCardExample,
    drawn: alignmentCardFilling,
  },
  {
    definition: quoteReview,
    reference: quoteReviewReference,
    differs: { blocks: { ranges: [{ ratio: "colour of the van", low: 1, high: 2 }] } },
    start: quoteReviewStart,
    example: quoteReviewExample,
    drawn: quoteReviewFilling,
  },
];

describe.each(small.map((one) => [one.definition.id, one] as const))("%s", (_, one) => {
  function compared({ fields = {}, blocks = {} }: JobInputs, isByWords = false) {
    const book = recalculate(layOut(one.definition, { fields, blocks }));
    return { book, ...compare(book, one.reference({ fields, blocks }, book, isByWords), TOLERANCES) };
  }

  function held(filling: JobInputs): void {
    const { book, cells, loosely, differences } = compared(filling);
    expect(differences).toEqual([]);
    // What is calculated and not compared would be lost from here unseen.
    expect(calculatedCells(book).filter((cell) => !cells.has(cell))).toEqual([]);
    expect([...loosely].filter((name) => !LOOSELY.test(name))).toEqual([]);
  }

  if (one.differs)
    test("where it is known to say something else than its words, it still does", () => {
      expect(compared(one.differs!, true).differences.length).toBeGreaterThan(0);
    });

  test("as it begins", () => held(one.start));
  test("the demonstration", () => held(one.example));
  test.each(seeds)("the filling of seed %i", (seed) => held(one.drawn(seed) as JobInputs));
});
