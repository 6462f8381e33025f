/**
 * What changed between two revisions of a job, and how much of the difference
 * in price each change explains. The changes are applied one after another to
 * the older job, which is computed anew after each; what a change adds is the
 * total after it less the total before it, in whole cents, so the parts add up
 * to the difference exactly. The order decides who gets what two changes do
 * together, so it is stated: see inputChanges.ts.
 */
import type { Book } from "../workbooks/book";
import type { JobInputs, WorkbookDefinition } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { layOut } from "../workbooks/layOut";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import type { Change, InputChange } from "./change";
import { formulaChanges } from "./formulaChanges";
import { inputChanges } from "./inputChanges";

/** With more changes than this those of one table are applied together. */
export const MOST_STEPS = 60;

/** The total that a customer pays; a template without one is compared without prices. */
const TOTALS: ReadonlyMap<string, string> = new Map([["multi-room", estimate.quote.total.name]]);
const CENTS = 100;

export interface Step {
  /** Which changes, by their place in the list; none for all that is no input. */
  readonly changes: readonly number[];
  readonly what: string;
  readonly cents: number;
  /** The total after this step. */
  readonly totalCents: number;
}

export interface Comparison {
  readonly title: string;
  readonly currency: string;
  readonly changes: readonly Change[];
  /** In cents; null for a total that is no number. */
  readonly olderCents: number | null;
  readonly newerCents: number | null;
  readonly differenceCents: number | null;
  readonly steps: readonly Step[];
  /** What the reader should know of the steps. */
  readonly notes: readonly string[];
}

export const hasChanged = ({ changes, differenceCents }: Comparison): boolean =>
  changes.length > 0 || (differenceCents ?? 0) !== 0;

/**
 * @param definition the template of both
 * @param computed computes a book
 */
export function compareJobs(
  definition: WorkbookDefinition,
  olderBook: Book,
  newerBook: Book,
  computed: (book: Book) => Book,
): Comparison {
  const older = jobInputsOf(definition, olderBook);
  const newer = jobInputsOf(definition, newerBook);
  const inputs = inputChanges(definition, older, newer);
  const earlier = versionNotes(definition, olderBook, newerBook);
  const changes: readonly Change[] = [
    ...inputs.map(({ applied: _, ...change }): Change => change),
    ...formulaChanges(definition, olderBook, newerBook, earlier.length > 0),
  ];
  const currency = String(newer.fields?.site_currency ?? "");
  const base = { title: definition.title, currency, changes };
  const totalName = TOTALS.get(definition.id);
  const unpriced = (olderCents: number | null, newerCents: number | null, note: string): Comparison => ({
    ...base,
    olderCents,
    newerCents,
    differenceCents: null,
    steps: [],
    notes: [...earlier, note],
  });
  if (totalName === undefined) return unpriced(null, null, "This template has no total to explain.");

  const centsOf = (book: Book): number | null => {
    const total = namedValue(computed(book), totalName);
    return typeof total === "number" && Number.isFinite(total) ? Math.round(total * CENTS) : null;
  };
  const olderCents = centsOf(olderBook);
  const newerCents = centsOf(newerBook);
  if (olderCents === null || newerCents === null) {
    const which = olderCents === null ? "older" : "newer";
    return unpriced(
      olderCents,
      newerCents,
      `The total of the ${which} workbook is no number, so no change can be priced.`,
    );
  }
  if (older.fields?.site_currency !== newer.fields?.site_currency) {
    return unpriced(
      olderCents,
      newerCents,
      "The two totals are in different currencies, so their difference means nothing.",
    );
  }
  const laidOut = (job: JobInputs): number | null => centsOf(layOut(definition, job));
  const { steps, notes } = explained(inputs, older, olderCents, newerCents, laidOut);
  return {
    ...base,
    olderCents,
    newerCents,
    differenceCents: newerCents - olderCents,
    steps,
    notes: [...earlier, ...notes],
  };
}

/** What the reader should know of workbooks that are not of today's version. */
function versionNotes({ version }: WorkbookDefinition, older: Book, newer: Book): string[] {
  if (older.templateVersion === version && newer.templateVersion === version) return [];
  return [
    `The older workbook was made from version ${older.templateVersion || "unknown"} of the template and the newer one from version ${newer.templateVersion || "unknown"}; today's is ${version}. Formulas that differ were not listed, only what was typed over them.`,
  ];
}

function explained(
  inputs: readonly InputChange[],
  older: JobInputs,
  olderCents: number,
  newerCents: number,
  centsOf: (job: JobInputs) => number | null,
): Pick<Comparison, "steps" | "notes"> {
  const notes: string[] = [];
  const steps: Step[] = [];
  let total = olderCents;
  let job = older;
  const push = (what: string, indices: readonly number[], after: number): void => {
    steps.push({ changes: indices, what, cents: after - total, totalCents: after });
    total = after;
  };
  const start = inputs.length > 0 ? centsOf(older) : null;
  if (start !== null && start !== olderCents)
    push("Formulas of the older workbook that are not the template's", [], start);

  let waiting: number[] = [];
  for (const group of groupsOf(inputs, notes)) {
    for (const index of group) job = inputs[index]!.applied(job);
    waiting.push(...group);
    const after = centsOf(job);
    // Half of a change that belongs together, such as a part under a new name, has no price.
    if (after === null) continue;
    push(whatOf(waiting, inputs), waiting, after);
    waiting = [];
  }
  if (waiting.length > 0) push(whatOf(waiting, inputs), waiting, newerCents);
  if (total !== newerCents)
    push("All that is no input: formulas, the order of rows, what stands outside the tables", [], newerCents);
  return { steps, notes };
}

function groupsOf(inputs: readonly InputChange[], notes: string[]): number[][] {
  const indices = inputs.map((_, index) => index);
  if (inputs.length <= MOST_STEPS) return indices.map((index) => [index]);
  notes.push(
    `There are ${inputs.length} changes; with more than ${MOST_STEPS} those of one table are applied and priced together.`,
  );
  const groups = new Map<string, number[]>();
  for (const index of indices) {
    const { sheet, part, kind } = inputs[index]!;
    const key = JSON.stringify([kind === "removed", sheet, part]);
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  return [...groups.values()];
}

function whatOf(indices: readonly number[], inputs: readonly InputChange[]): string {
  const one = inputs[indices[0]!]!;
  if (indices.length === 1)
    return `${one.sheet}, ${one.part}: ${one.row} ${one.kind === "field" ? "changed" : one.kind}`;
  const places = [...new Set(indices.map((index) => `${inputs[index]!.sheet}, ${inputs[index]!.part}`))];
  return `${places.join("; ")}: ${indices.length} changes together`;
}
