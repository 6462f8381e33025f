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
import { layOut } from "../workbooks/layOut";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { withTodaysNames } from "../workbooks/renamedNames";
import { todaysInputs } from "../workbooks/todaysInputs";
import type { Change } from "./change";
import { designMoves, type DesignMoves } from "./designMoves";
import { formulaChanges } from "./formulaChanges";
import { inputChanges } from "./inputChanges";
import { inSteps } from "./inSteps";
import { orderNotes } from "./orderNotes";
import { renamesIn } from "./renames";

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
  /** What is otherwise in levels, volts, user bands and checks. */
  readonly moves: DesignMoves;
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
  olderAsRead: Book,
  newerAsRead: Book,
  computed: (book: Book) => Book,
): Comparison {
  const [olderBook, newerBook] = [olderAsRead, newerAsRead].map(withTodaysNames) as [Book, Book];
  const [older, newer] = [olderBook, newerBook].map((book) => todaysInputs(definition, book).inputs) as [
    JobInputs,
    JobInputs,
  ];
  const inputs = inputChanges(definition, older, newer);
  const earlier = versionNotes(definition, olderBook, newerBook);
  const moved = orderNotes(definition, older, newer);
  const changes: readonly Change[] = [
    ...inputs.map(({ kind, sheet, part, row, cells }): Change => ({ kind, sheet, part, row, cells })),
    ...formulaChanges(definition, olderBook, newerBook, earlier.length > 0),
  ];
  const currency = String(newer.fields?.site_currency ?? "");
  const [olderNow, newerNow] = [computed(olderBook), computed(newerBook)];
  const names = new Map(
    renamesIn(definition, older, newer).flatMap(({ block, before, after }) =>
      block === "rooms" || block === "heads" ? [[String(before), String(after)]] : [],
    ),
  );
  const moves = designMoves(olderNow, newerNow, (name) => names.get(name) ?? name);
  const base = { title: definition.title, currency, changes, moves };
  const totalName = TOTALS.get(definition.id);
  const unpriced = (olderCents: number | null, newerCents: number | null, note: string): Comparison => ({
    ...base,
    olderCents,
    newerCents,
    differenceCents: null,
    steps: [],
    notes: [...earlier, ...moved, note],
  });
  if (totalName === undefined) return unpriced(null, null, "This template has no total to explain.");

  const centsOf = (now: Book): number | null => {
    const total = namedValue(now, totalName);
    return typeof total === "number" && Number.isFinite(total) ? Math.round(total * CENTS) : null;
  };
  const olderCents = centsOf(olderNow);
  const newerCents = centsOf(newerNow);
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
  const laidOut = (job: JobInputs): number | null => centsOf(computed(layOut(definition, job)));
  const { steps, notes } = inSteps(inputs, older, olderCents, newerCents, laidOut);
  return {
    ...base,
    olderCents,
    newerCents,
    differenceCents: newerCents - olderCents,
    steps: steps.map(({ changes: of, what, before, after }) => ({
      changes: of,
      what,
      cents: after - before,
      totalCents: after,
    })),
    notes: [...earlier, ...moved, ...notes],
  };
}

/** What the reader should know of workbooks that are not of today's version. */
export function versionNotes({ version }: WorkbookDefinition, older: Book, newer: Book): string[] {
  if (older.templateVersion === version && newer.templateVersion === version) return [];
  return [
    `The older workbook was made from version ${older.templateVersion || "unknown"} of the template and the newer one from version ${newer.templateVersion || "unknown"}; today's is ${version}. Formulas that differ were not listed, only what was typed over them.`,
  ];
}
