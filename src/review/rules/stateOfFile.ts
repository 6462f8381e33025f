/**
 * The one state of the program that saved a file which explains why cells show
 * what they do not come to: one thing to know, not hundreds of old values.
 *
 * What Excel does in each: Microsoft's documentation and issue threads, as said
 * beside each where it is not documented.
 */
import { callsUs } from "../../formula/callsUs";
import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { about, STATES as ANSWERS } from "../../workbooks/aboutNames";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { figure } from "../namedCells";
import { sameResult } from "../sameResult";

export interface StaleCell {
  readonly sheet: string;
  readonly cell: string;
  readonly stored: BookResult;
  readonly anew: BookResult | undefined;
}

interface Look {
  readonly read: Book;
  readonly computed: Book;
  readonly old: readonly StaleCell[];
}

interface State {
  /** Whether the file is in it. */
  readonly isSo: (look: Look) => boolean;
  readonly message: (look: Look) => string;
  readonly remedy: string;
}

const COMPUTED_ANEW = "The other findings here are of the figures computed anew.";
const OPEN_AND_SAVE = "Open it where our functions run and save it";

const withError =
  (...codes: readonly string[]) =>
  ({ old }: Look): boolean =>
    old.some(({ stored }) => isBookError(stored) && codes.includes(stored.error));

/** The first that fits is the one: what keeps our functions from running, before how Excel was set. */
const STATES: readonly State[] = [
  {
    // Seen in issue threads: such a formula stays broken, even where our add-in is loaded later.
    isSo: ({ read }) => read.saved?.boundElsewhere === true,
    message: ({ old }) =>
      `Calls of our functions are bound to another add-in's file, and do not compute any more. ${concerned(old)}`,
    remedy: `Switch the other add-in off, enter the formulas again with “Repair formulas”, and save it. ${COMPUTED_ANEW}`,
  },
  {
    isSo: withError("#NAME?"),
    message: ({ old }) =>
      `It was last saved by a program without our functions: ${old.length} cells show #NAME? or what follows from it.`,
    remedy: `${OPEN_AND_SAVE}; give a copy without add-in to people who lack them. ${COMPUTED_ANEW}`,
  },
  {
    isSo: withError("#BUSY!", "#GETTING_DATA"),
    message: ({ old }) => `It was saved while our functions were still computing. ${concerned(old)}`,
    remedy: `${OPEN_AND_SAVE} once no cell shows #BUSY! any more. ${COMPUTED_ANEW}`,
  },
  {
    isSo: withError("#BLOCKED!"),
    message: ({ old }) => `The Excel that saved it refuses our functions. ${concerned(old)}`,
    remedy: `Ask whoever looks after that Excel to allow the add-in, or open it where our functions run, and save it. ${COMPUTED_ANEW}`,
  },
  {
    isSo: withError("#CONNECT!"),
    message: ({ old }) => `Excel could not reach our functions for some cells. ${concerned(old)}`,
    remedy: `${OPEN_AND_SAVE}. ${COMPUTED_ANEW}`,
  },
  {
    isSo: codeNotLoaded,
    message: ({ old }) => `Excel knew our functions but had not loaded them. ${concerned(old)}`,
    remedy: `${OPEN_AND_SAVE}; if it stays, reselect the add-in in Excel. ${COMPUTED_ANEW}`,
  },
  {
    isSo: ({ read }) => namedValue(read, about.state.name) === ANSWERS.zeros,
    message: ({ old }) =>
      `The Excel that saved it hands blank cells to our functions as 0: levels and volts are wrong though prices look right. ${concerned(old)}`,
    remedy: `Update that Excel, or open the workbook on the desk, and save it. ${COMPUTED_ANEW}`,
  },
  {
    isSo: ({ read }) => read.saved?.asDisplayed === true,
    message: ({ old }) =>
      `Excel was set to compute with figures as displayed: inputs are rounded, and typed digits may be lost. ${concerned(old)}`,
    remedy:
      "Switch off “Set precision as displayed” in Excel's options, look at the inputs, and save it again.",
  },
  {
    isSo: ({ read, old }) => read.saved?.manual === true && old.length > 0,
    message: ({ old }) =>
      `Excel was set to calculate by hand, and inputs were changed since. ${concerned(old)}`,
    remedy: `Press F9 in Excel, set calculation to automatic, and save it. ${COMPUTED_ANEW}`,
  },
  {
    isSo: ({ read, old }) => read.saved?.unfinished === true && old.length > 0,
    message: ({ old }) => `It was saved before Excel had finished calculating. ${concerned(old)}`,
    remedy: `${OPEN_AND_SAVE} once it has calculated. ${COMPUTED_ANEW}`,
  },
];

const concerned = (old: readonly StaleCell[]): string =>
  old.length === 0 ? "No figure is old yet." : `Cells that show an old or wrong value: ${old.length}.`;

/** Most calls of ours show an error without a sentence, which a function of ours never gives. */
function codeNotLoaded({ read, old }: Look): boolean {
  const calls = read.sheets.flatMap(({ name, cells }) =>
    Object.entries(cells).flatMap(([cell, { formula }]) =>
      formula !== undefined && callsUs(formula) ? [`${name}!${cell}`] : [],
    ),
  );
  const bare = new Set(["#VALUE!", "#N/A"]);
  const failed = old.filter(
    ({ sheet, cell, stored, anew }) =>
      calls.includes(`${sheet}!${cell}`) &&
      isBookError(stored) &&
      bare.has(stored.error) &&
      !isBookError(anew),
  );
  return failed.length > calls.length / 2;
}

/**
 * @param old the cells that show another value than they come to
 * @returns the finding that explains them, or for which the file's settings give cause; undefined where no one state does
 */
export function stateOfFile(read: Book, computed: Book, old: readonly StaleCell[]): Finding | undefined {
  const look = { read, computed, old };
  const state = STATES.find(({ isSo }) => isSo(look));
  if (!state) return undefined;
  const first = old.find(({ stored }) => isBookError(stored)) ?? old[0];
  const [shown, total] = [
    namedValue(read, estimate.quote.total.name),
    namedValue(computed, estimate.quote.total.name),
  ];
  return {
    weight: "doubtful",
    ...(first && { place: { sheet: first.sheet, cell: first.cell }, expected: words(first.anew) }),
    message: state.message(look),
    effect:
      total === undefined || sameResult(shown, total)
        ? "The inputs are whole; the figures that it shows are not."
        : `The total shows ${words(shown)}; the inputs come to ${words(total)}.`,
    remedy: state.remedy,
  };
}

export function words(result: BookResult | undefined): string {
  if (isBookError(result)) return result.error;
  return typeof result === "number" ? figure(result) : String(result ?? "nothing");
}
