/** What the firm's standards would change in a job, in words and money: for the desk, the pane and the command. */
import { isoDate } from "../workbooks/sheetDate";
import { canBeTaken, PART_LISTS, type Difference } from "./differences";
import { raisedBy } from "./raisedBy";
import type { UpToDate } from "./upToDate";

export interface DifferenceLine {
  readonly number: number;
  readonly words: string;
  /** It can be taken or left out. */
  readonly canBeTaken: boolean;
  /** It is taken unless somebody leaves it out. */
  readonly taken: boolean;
}

export interface UpToDateWords {
  /** Which standards, in a sentence. */
  readonly head: string;
  /** All of it in a line: "12 prices changed, +310.40; 2 parts gone". */
  readonly summary: string;
  readonly notes: readonly string[];
  /** By list, in the order of the standards. */
  readonly lists: readonly { readonly heading: string; readonly lines: readonly DifferenceLine[] }[];
}

/** What is taken unless somebody says otherwise. */
export const takenByItself = (found: readonly Difference[]): Difference[] =>
  found.filter((one) => canBeTaken(one) && !one.byHand);

export function inWords(found: UpToDate): UpToDateWords {
  const { firm, edition, date } = found.standards;
  const headings = [...new Set(found.differences.map(({ heading }) => heading))];
  return {
    head: `Standards of ${firm}, edition ${edition} of ${isoDate(date)}.`,
    summary: summaryOf(found.differences, found.bought),
    notes: found.notes,
    lists: headings.map((heading) => ({
      heading,
      lines: found.differences
        .filter((one) => one.heading === heading)
        .map((one) => ({
          number: one.number,
          words: lineOf(one),
          canBeTaken: canBeTaken(one),
          taken: canBeTaken(one) && !one.byHand,
        })),
    })),
  };
}

/** What the standards have otherwise; then what the job has of its own. */
function summaryOf(all: readonly Difference[], bought: UpToDate["bought"]): string {
  const own = all.filter(({ byHand }) => byHand);
  const theirs = all.filter(({ byHand }) => !byHand);
  const ofParts = theirs.filter(({ list }) => PART_LISTS.has(list));
  const others = theirs.filter(({ list }) => !PART_LISTS.has(list));
  const prices = ofParts.filter(({ column }) => column?.key === "price");
  const figures = ofParts.filter(({ column }) => column && column.key !== "price");
  const pieces = [
    ...(prices.length > 0
      ? [`${counted(prices.length, "price")} changed, ${signed(raisedBy(bought, prices))} on what is bought`]
      : []),
    ...(figures.length > 0
      ? [`${counted(figures.length, "other entry", "other entries")} of parts changed`]
      : []),
    ...kinds(ofParts, "part"),
    ...others
      .filter(({ field }) => field !== undefined)
      .map(({ line, shown }) => `${line.charAt(0).toLowerCase()}${line.slice(1)} ${arrow(shown!)}`),
    ...changedLines(others),
    ...kinds(others, "line"),
    ...(own.length > 0
      ? [
          `${counted(own.length, "entry", "entries")} of the job's own ${own.length === 1 ? "differs" : "differ"} and ${own.length === 1 ? "is" : "are"} kept`,
        ]
      : []),
  ];
  return pieces.length === 0 ? "Nothing differs: the job is up to date." : `${pieces.join("; ")}.`;
}

const changedLines = (others: readonly Difference[]): string[] => {
  const { length } = others.filter(({ column }) => column);
  return length > 0 ? [`${counted(length, "entry", "entries")} of work and terms changed`] : [];
};

const kinds = (found: readonly Difference[], what: string): string[] =>
  (["gone", "new"] as const).flatMap((kind) => {
    const { length } = found.filter((one) => one.kind === kind);
    return length > 0 ? [`${counted(length, what)} ${kind}`] : [];
  });

function lineOf({ kind, line, column, shown, byHand }: Difference): string {
  switch (kind) {
    case "new":
      return `${line}: new`;
    case "removed":
      return `${line}: taken out of the job, or renamed in it; left out`;
    case "gone":
      return `${line}: gone from the standards, or renamed in them; the job keeps it`;
    case "changed": {
      // A sentence is known by its words, and these stand before the arrow.
      if (shown![0] === line) return arrow(shown!);
      const at = column ? `${line}, ${lowered(column.head)}` : line;
      return `${at}: ${arrow(shown!)}${byHand ? "; changed in the job, kept" : ""}`;
    }
  }
}

const lowered = (head: string): string =>
  /^\p{Lu}{2}/u.test(head) ? head : head.charAt(0).toLowerCase() + head.slice(1);

const arrow = ([from, to]: readonly [string | null, string | null]): string =>
  `${from ?? "blank"} → ${to ?? "blank"}`;

const CENTS = 2;

/** With its sign, in money. */
export const signed = (sum: number): string => `${sum < 0 ? "−" : "+"}${Math.abs(sum).toFixed(CENTS)}`;

/** What the total comes to. */
export function totalInWords(
  before: number | undefined,
  after: number | undefined,
  currency: string,
): string {
  if (before === undefined && after === undefined) return "The job has no total yet.";
  const of = (sum: number | undefined): string => (sum === undefined ? "not known" : sum.toFixed(CENTS));
  const moved = before !== undefined && after !== undefined ? ` (${signed(after - before)})` : "";
  return `Total ${of(before)} → ${of(after)}${moved}${currency === "" ? "" : ` ${currency}`}.`;
}

export const counted = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;

/** What was done, for the job's log. */
export function doneInWords(
  { standards, differences, bought }: UpToDate,
  chosen: readonly Difference[],
): string {
  const leftOut = differences.filter(canBeTaken).length - chosen.length;
  const taken = chosen.length > 0 ? ownAsTheirs(chosen, bought) : "nothing was taken.";
  return `standards of ${standards.firm}, edition ${standards.edition} of ${isoDate(standards.date)}: ${taken}${leftOut > 0 ? ` ${counted(leftOut, "difference")} left out.` : ""}`;
}

/** Once taken it is no more the job's own. */
const ownAsTheirs = (chosen: readonly Difference[], bought: UpToDate["bought"]): string =>
  summaryOf(
    chosen.map((one) => ({ ...one, byHand: false, ...(one.kind === "removed" && { kind: "new" as const }) })),
    bought,
  );
