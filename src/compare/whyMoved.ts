/**
 * Why a cell shows something else than in an earlier revision of the job: the
 * changed inputs are applied one after another to the older job, which is
 * computed anew after each, and the cell is read after each.
 */
import { isBookError, type Book, type BookResult } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { layOut } from "../workbooks/layOut";
import { versionNotes } from "./compareJobs";
import { inputChanges } from "./inputChanges";
import { inSteps, type ValueStep } from "./inSteps";
import { sameCell, type CellOf } from "./sameCell";

/** What a cell shows; an error as its code, a blank as empty text. */
export type Shown = number | string;

export interface Moved {
  readonly before: Shown;
  readonly after: Shown;
  /** The steps at which the cell shows something else afterwards. */
  readonly steps: readonly ValueStep<Shown>[];
  /** So many changes left it as it was. */
  readonly idle: number;
  /** What the reader should know of the steps. */
  readonly notes: readonly string[];
}

/** Figures are told apart to twelve digits: what lies below is the computer's own rounding. */
const DIGITS = 12;

/**
 * @param definition the template of both
 * @param older not yet computed
 * @param newer computed
 * @param at a cell of the newer one
 * @param computed computes a book
 * @returns undefined where the older workbook has no such cell
 */
export function whyMoved(
  definition: WorkbookDefinition,
  older: Book,
  newer: Book,
  at: CellOf,
  computed: (book: Book) => Book,
): Moved | undefined {
  const find = sameCell(definition, newer, at);
  const valueIn = (book: Book): Shown | null => {
    const there = find(book);
    return there ? shownIn(book, there) : null;
  };
  const before = valueIn(computed(older));
  if (before === null) return undefined;
  const after = shownIn(newer, at);
  const job = jobInputsOf(definition, older);
  const inputs = inputChanges(definition, job, jobInputsOf(definition, newer));
  const { steps, notes } = inSteps(inputs, job, before, after, (inputsNow) =>
    valueIn(computed(layOut(definition, inputsNow))),
  );
  const moving = steps.filter((step) => step.before !== step.after);
  const counted = steps.filter((step) => step.before === step.after).flatMap(({ changes }) => changes);
  return {
    before,
    after,
    steps: moving,
    idle: counted.length,
    notes: [...versionNotes(definition, older, newer), ...notes],
  };
}

function shownIn({ sheets }: Book, { sheet, cell }: CellOf): Shown {
  const on = sheets.find(({ name }) => name === sheet);
  const value: BookResult | undefined = on?.results[cell] ?? on?.cells[cell]?.value;
  if (value === undefined) return "";
  if (isBookError(value)) return value.message ? `${value.error} ${value.message}` : value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? Number(value.toPrecision(DIGITS)) : value;
}
