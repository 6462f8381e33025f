/**
 * The filling order of a workbook as steps: what is done, what is begun, and what is still to be filled. Whether a job
 * is filled and whether it is right are two questions: what a check finds wrong with a filled step stands beside it.
 */
import type { Book } from "../workbooks/book";
import { checkLines, type CheckLine } from "../workbooks/checkLines";
import { checkWithWords } from "../workbooks/checkWithWords";
import type { JobInputs, WorkbookDefinition } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import type { EstimateCheck } from "../workbooks/multiRoom/checks";
import { estimate } from "../workbooks/multiRoom/names";
import { groupOf } from "../workbooks/sheetGroups";
import { templateOf } from "../workbooks/templates";
import { conditionOf } from "./conditionOf";
import { isSamePlace, type Finding, type FindingPlace } from "./finding";
import { inputsIn, type Input, type InputCell } from "./inputsIn";
import { isBlank } from "./namedCells";
import { failingChecks } from "./rules/failingChecks";

/** What a template brings does not count as begun. */
export type StepState = "done" | "begun" | "not begun" | "may stay empty";

/** One thing that is still to be done. */
export interface OpenPoint {
  /** In a sentence. */
  readonly what: string;
  /** Where it is filled, or put right. */
  readonly place: FindingPlace;
  /** How many cells are blank; absent where it is not for a blank cell. */
  readonly cells?: number;
}

export interface FillingStep {
  /** Id of the template that the sheet is of. */
  readonly template: string;
  readonly sheet: string;
  /** What the sheet is for, in a sentence. */
  readonly intro: string;
  readonly state: StepState;
  /** What is missing, or can't be worked out. */
  readonly open: readonly OpenPoint[];
  /** What is filled and fails a check. */
  readonly look: readonly OpenPoint[];
}

type Missing = Required<OpenPoint>;

/** Lists without which there is no job, by the column that names their rows. */
const NEEDED = new Set<string>([
  estimate.slots.slot.name,
  estimate.cables.name.name,
  estimate.units.name.name,
  estimate.dishes.name.name,
  estimate.heads.id.name,
  estimate.rooms.outlet.name,
]);

/** Checks that fail for want of an entry, and say no more than the blank cell does. */
const OF_WANT = new Set<string>([
  "slots to look at",
  "outlets to price",
  "dishes wrong",
  "feeders wrong",
  "head units wrong",
  "branches unfed",
  "outlets unfed",
] satisfies EstimateCheck[]);

/**
 * @param book computed
 * @returns a step for each sheet that is filled, in the order of work; none for a workbook that is none of ours
 */
export function fillingSteps(book: Book): FillingStep[] {
  const template = templateOf(book.template);
  if (!template) return [];
  const { definition, start } = template;
  const there = new Set(book.sheets.map(({ name }) => name));
  const inputs = inputsIn(book, definition);
  const typed = jobInputsOf(definition, book);
  const lines = checkLines(book);
  const failing = failingChecks(book).filter(({ weight }) => weight === "wrong");
  const steps: FillingStep[] = [];
  for (const { name, intro, kind } of definition.sheets) {
    if (!there.has(name) || groupOf({ name, kind }) !== "Fill") continue;
    const own = inputs.filter(({ sheet }) => sheet === name);
    const missing = own.flatMap((one) => missingIn(one, book));
    const told = failing.filter((one) => sheetOf(one) === name);
    // What is more than blank: out of bounds, or a 0 without a reason.
    const unfit = entriesFound(definition, lines, name) > blanksIn(missing);
    const entries = told.filter(({ check }) => check?.entriesOf && unfit);
    const wanting = told.filter(({ check }) => check && OF_WANT.has(check.id) && missing.length === 0);
    const before = nextStep(steps)?.sheet;
    const open = [
      ...missing,
      ...entries.map(pointOf),
      ...wanting
        .map(pointOf)
        .map((one) => (before === undefined ? one : { ...one, what: `${one.what} It waits on ${before}.` })),
    ];
    steps.push({
      template: definition.id,
      sheet: name,
      intro,
      state: stateOf(open, own, typed, start),
      open,
      // Of what is blank no check has anything to say that counts.
      look: told
        .filter((one) => !isOfWant(one))
        .map(pointOf)
        .filter(({ place }) => !missing.some((one) => isSamePlace(one.place, place))),
    });
  }
  return steps;
}

const isOfWant = ({ check }: Finding): boolean =>
  check !== undefined && (check.entriesOf !== undefined || OF_WANT.has(check.id));

/** What a person has not filled in of one column, or one field. */
function missingIn({ name, label, block, namesRows, input, cells }: Input, book: Book): Missing[] {
  const [first] = cells;
  if (namesRows)
    return first && NEEDED.has(name) && !cells.some(({ inRow }) => inRow)
      ? [{ what: `“${label}”: nothing is listed yet.`, place: first.place, cells: 0 }]
      : [];
  const asked = conditionOf(input.required, book);
  const blank = cells.filter(({ inRow, value, index }) => inRow && isBlank(value) && asked(index));
  const [one] = blank;
  if (!one) return [];
  const what = `${label} is blank${block === undefined ? "" : rowsInWords(blank)}.`;
  return [{ what, place: one.place, cells: blank.length }];
}

const blanksIn = (missing: readonly Missing[]): number => missing.reduce((sum, { cells }) => sum + cells, 0);

/** How many entries of a sheet its checks find at fault. */
function entriesFound(definition: WorkbookDefinition, lines: readonly CheckLine[], sheet: string): number {
  const found = lines.filter(({ what }) => checkWithWords(definition, what)?.entriesOf === sheet);
  return found.reduce((sum, one) => sum + (typeof one.found === "number" ? one.found : 0), 0);
}

/** Of more rows the first are named. */
const NAMED = 3;

function rowsInWords(cells: readonly InputCell[]): string {
  const named = cells.slice(0, NAMED).map(({ called }) => called);
  const rest = cells.length - named.length;
  const all = `${named.join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
  return cells.length === 1 ? `: ${all}` : ` in ${cells.length} rows: ${all}`;
}

/** On which sheet it is put right. */
const sheetOf = ({ check, mends, cause, place }: Finding): string | undefined =>
  check?.entriesOf ?? mends?.[0]?.place.sheet ?? cause?.sheet ?? place?.sheet;

const pointOf = ({ message, check, remedy, mends, cause, place }: Finding): OpenPoint => ({
  // What a check of the entries counts has its place in words only.
  what: check?.entriesOf ? `${message} ${remedy}` : message,
  place: mends?.[0]?.place ?? cause ?? place!,
});

function stateOf(
  open: readonly OpenPoint[],
  own: readonly Input[],
  typed: JobInputs,
  start: JobInputs,
): StepState {
  const isTouched = own.some(({ name, block }) =>
    block === undefined
      ? typed.fields?.[name] !== start.fields?.[name]
      : rowsAs(typed, block) !== rowsAs(start, block),
  );
  if (!isTouched) return open.length > 0 ? "not begun" : "may stay empty";
  return open.length > 0 ? "begun" : "done";
}

/** Rows of a block as one text; cells that are blank say nothing. */
const rowsAs = ({ blocks }: JobInputs, block: string): string =>
  JSON.stringify(
    (blocks?.[block] ?? []).map((row) =>
      Object.entries(row)
        .filter(([, value]) => value !== "")
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    ),
  );

/** @returns for instance "done", "begun: 2 missing", "done, 1 to look at" */
export function stateInWords({ state, open, look }: Pick<FillingStep, "state" | "open" | "look">): string {
  // Three blank runs are three things to fill, though one sentence tells of them.
  const count = open.reduce((sum, { cells = 1 }) => sum + Math.max(1, cells), 0);
  const missing = count > 0 ? `: ${count} missing` : "";
  return `${state}${missing}${look.length > 0 ? `, ${look.length} to look at` : ""}`;
}

/** The first step that is not filled. */
export const nextStep = (steps: readonly FillingStep[]): FillingStep | undefined =>
  steps.find(({ open }) => open.length > 0);
