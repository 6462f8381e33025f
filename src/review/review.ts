/** Everything that the rules find in one workbook. */
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { finished } from "../workbooks/remembered";
import { withTypes } from "../workbooks/multiRoom/withTypes";
import { atTheirType } from "./atTheirType";
import { withLikelyInputs } from "./withLikelyInputs";
import { carriedOver } from "./carriedOver";
import { earlierDifferences } from "./earlierDifferences";
import { WEIGHTS, type Finding, type Undoing } from "./finding";
import { withoutConsequences, SYMPTOMS } from "./withoutConsequences";
import { formulaDifferences } from "./formulaDifferences";
import { grouped } from "./grouped";
import { isUnfilled } from "./isUnfilled";
import { labelsIn } from "./labels";
import { nameFindings, namesTwice } from "./nameFindings";
import { namesPutBack } from "./namesPutBack";
import { recognised } from "./recognised";
import { restoredBook } from "./restoredBook";
import { DEFAULT_MARGIN_FLOOR, type Reviewed, type ReviewOptions, type Rule } from "./rule";
import { rules } from "./ruleList";
import { earlierVersion } from "./rules/earlierVersion";
import { originOf } from "./rules/origin";
import { staleCells, staleValues } from "./rules/staleValues";
import { stateOfLive } from "./stateOfLive";
import { stateOfFile } from "./rules/stateOfFile";

/** What an empty workbook says of its blanks is no news. */
const FROM_BLANKS: ReadonlySet<string> = new Set(["error", "failing check"]);

const UNFILLED: Finding = {
  weight: "worth knowing",
  message: "Nothing is filled in yet: this is what the template starts from.",
  rule: "nothing filled in",
  remedy: "Fill the boxed cells, or review the file that was meant.",
};

/** What a program that dropped the file's own properties leaves to know. */
const UNMARKED: Finding = {
  weight: "worth knowing",
  message: "The file no longer says from which template it was made; the About sheet does, and was believed.",
  effect: "A program that drops such properties saved it; the desk and the add-in will not know its blocks.",
  rule: "not our template",
  remedy: "Start a workbook from the template and copy the inputs over, if rows are to be added.",
};

const ITERATES: Finding = {
  weight: "worth knowing",
  message:
    "Excel was set to calculate in circles: a formula that leads back to itself then shows a figure instead of being refused.",
  rule: "stale value",
  remedy: "Switch iterative calculation off in Excel's options; nothing of the template needs it.",
};

const MANUAL: Finding = {
  weight: "doubtful",
  message: "Calculation is set to manual: every figure here is as old as the last F9.",
  rule: "stale value",
  remedy: "Press F9, then check again.",
};

export type Compute = (book: Book) => Book;
/** What a book comes to with some cells changed; those of the trial before hold again what they held. */
export type Trial = (changes: readonly Undoing[]) => Book;
export type Trials = (book: Book) => Trial;

/** What every rule has to say of a workbook, consequences included. */
export interface Look {
  readonly stored: Book;
  readonly judged: Reviewed;
  readonly found: readonly Finding[];
  readonly isUnfilled: boolean;
}

/**
 * @param stored the workbook as it is stored, or as a live one shows it
 * @param compute computes a book anew; absent in a host whose cells are live and that cannot compute another book
 * @returns what its version has to do with the rest first, then the weightiest first
 */
export function review(stored: Book, compute?: Compute, options: Partial<ReviewOptions> = {}): Finding[] {
  const live = compute ? undefined : stateOfLive(recognised(stored));
  if (live) return [{ ...live, rule: staleValues.id }];
  const { judged, found, isUnfilled } = lookInto(stored, compute, options);
  const told = isUnfilled
    ? found
    : withoutConsequences(found, judged.read, judged.computed, (causes) => {
        const mended =
          judged.definition && compute && withLikelyInputs(recognised(stored), judged.definition, causes);
        return mended && saidBy(symptoms, { ...readings(mended, compute), options: judged.options });
      });
  return grouped(told).sort((a, b) => order(a) - order(b));
}

export function lookInto(
  stored: Book,
  compute: Compute | undefined,
  options: Partial<ReviewOptions> = {},
): Look {
  // A copy, of which what is worked out may be kept: nobody else can change it.
  const read = finished({ ...recognised(stored) });
  const definition = definitionOf(read);
  const put = definition && namesPutBack(read, definition);
  // All else is judged with the names where they belong: what follows from them is none of its own.
  const named = put?.book ?? read;
  const reviewed: Reviewed = {
    ...readings(named, compute),
    options: { marginFloor: DEFAULT_MARGIN_FLOOR, ...options },
  };
  const names =
    definition && put
      ? nameFindings(read, put, definition, {
          now: namedValue(put.troubles.length > 0 && compute ? compute(read) : read, TOTAL),
          meant: namedValue(reviewed.own, TOTAL),
        })
      : namesTwice(read);
  const state = stateOfFile(read, reviewed.own, staleCells(reviewed));
  // What the file shows then says nothing of the job; what it comes to does.
  const isOff = state !== undefined || names.some(({ weight }) => weight === "wrong");
  const judged = isOff ? { ...reviewed, read: withSaved(reviewed.own, read) } : reviewed;
  const found = saidBy(rules, judged);
  if (state) found.unshift({ ...state, rule: staleValues.id });
  if (read.saved?.iterates) found.push(ITERATES);
  if (read.saved?.manual && !state) found.push(MANUAL);
  found.push(...names);
  if (read.template !== stored.template) found.push(UNMARKED);
  return isUnfilled(read)
    ? {
        stored,
        judged,
        found: [...found.filter(({ rule }) => !FROM_BLANKS.has(rule!)), UNFILLED],
        isUnfilled: true,
      }
    : { stored, judged, found, isUnfilled: false };
}

/**
 * @param mended a copy, computed
 * @returns what the rules whose findings may follow from others say of it
 */
export const symptomsOf = (mended: Book, { judged }: Look): Finding[] =>
  saidBy(symptoms, { ...readings(mended, (book) => book), options: judged.options });

/**
 * @param mended a copy, computed
 * @returns what all rules say of it
 */
export const saidOf = (mended: Book, { judged }: Look): Finding[] =>
  saidBy(rules, { ...readings(mended, (book) => book), options: judged.options });

const symptoms = rules.filter(({ id }) => SYMPTOMS.has(id));

const saidBy = (some: readonly Rule[], reviewed: Reviewed): Finding[] =>
  atTheirType(
    some.flatMap(({ id, find }) => find(reviewed).map((finding): Finding => ({ ...finding, rule: id }))),
    reviewed.own,
    reviewed.read,
  );

const order = ({ rule, weight }: Finding): number =>
  rule === earlierVersion.id ? -1 : WEIGHTS.indexOf(weight);

const TOTAL = estimate.quote.total.name;

/** What a program computed anew says nothing of the file that it came from. */
const withSaved = (own: Book, { saved }: Book): Book => ({ ...own, ...(saved && { saved }) });

/** Only today's template says where its names belong. */
function definitionOf(read: Book): WorkbookDefinition | undefined {
  const origin = originOf(read);
  return origin?.made === "now" ? origin.template.definition : undefined;
}

function readings(read: Book, compute: Compute | undefined): Omit<Reviewed, "options"> {
  const origin = originOf(read);
  const definition = origin?.made === "later" ? undefined : origin?.template.definition;
  const own = compute ? finished(compute(read)) : read;
  const labelAt = labelsIn(read, definition);
  const bare = { read: finished(withTypes(read)), own, definition, labelAt };
  if (definition && origin?.made === "earlier") {
    if (!compute) return { ...bare, computed: read, differences: [], earlier: { others: [] } };
    const { fresh, shown } = carriedOver(read, definition, compute);
    const { differences, others } = earlierDifferences(own, shown, definition);
    return { ...bare, computed: shown, expected: shown, differences, earlier: { fresh, others } };
  }
  const differences = definition ? formulaDifferences(read, own, definition, labelAt) : [];
  const restored = definition && differences.length > 0 ? compute?.(restoredBook(read, definition)) : own;
  return { ...bare, computed: own, expected: restored, differences };
}
