/**
 * What can be in the way in Excel, a sentence each: what is wrong and the way
 * on. One file holds them all, and translates Excel's own error codes.
 */
import { HostTrouble } from "../../pane/host";

export const troubles = {
  editing: () =>
    "A cell is being edited, and Excel lets nothing else be done meanwhile. Press Enter or Esc, then try again.",
  protectedSheet: () =>
    "A sheet is protected against this. Take the protection off (Review, Unprotect Sheet), then try again.",
  /** Whether a password is set can't be asked on every Excel. */
  noRows: (sheets: readonly string[]) =>
    `${quoted(sheets)} ${sheets.length === 1 ? "is" : "are"} protected, perhaps with a password, and ${sheets.length === 1 ? "takes" : "take"} no new rows. Nothing was added on any sheet. Take the protection off (Review, Unprotect Sheet), then press again.`,
  outletMoved: (outlet: string, sheet: string) =>
    `The outlet ${outlet} stands elsewhere on ${sheet} by now, so nothing was written. Choose the file again.`,
  noRoom: (count: number, free: number, sheet: string, sheets: readonly string[]) =>
    `There are ${count} outlets and “${sheet}” has room for ${free}; for more, rows have to be added. ${troubles.noRows(sheets)} Nothing was written.`,
  lockedCell: () =>
    "This cell is locked, on a protected sheet. Nothing was changed. Choose an unlocked cell or a cell on a sheet of your own, then try again.",
  hiddenSheet: (sheet: string, deeply: boolean) =>
    deeply
      ? `The sheet “${sheet}” is hidden so that Excel's menus do not show it. In the Visual Basic editor (Alt+F11), set its property Visible to -1, then press again.`
      : `The sheet “${sheet}” is hidden. Show it (right-click the tab of any sheet, Unhide), then press again.`,
  otherWorkbook: () => "Another workbook is in front. Click into a cell of this workbook, then press again.",
  filtered: () => "A filter is on where that has to go. Clear it (Data, Clear), then press again.",
  rowsBlocked: (sheets: readonly string[], detail: string) =>
    `Excel takes no new rows there (${detail}): merged cells or an array formula in braces reach across ${sheets.join(", ")}. Clear or move what stands there, then press again.`,
  lostBlocks: (sheets: readonly string[]) =>
    `${quoted(sheets)} ${sheets.length === 1 ? "has" : "have"} to grow with these rows, and ${sheets.length === 1 ? "is" : "are"} not there any more: deleted, or cut loose from the names of ${sheets.length === 1 ? "its" : "their"} cells. Nothing was added; inputs are safe. Press Ctrl+Z if it was deleted just now, or open an earlier version of the workbook (File, Info).`,
  spillBlocked: (at: string, nearest: string | undefined) =>
    `Excel cannot spill the formula at ${at}: a filled cell${nearest === undefined ? "" : ` (the nearest is ${nearest})`}, merged cells or a table stand in its way. The cell was left as it was. Choose a place with free cells beside and below, then press again.`,
  aborted: (code: string) =>
    `The connection to Excel broke off (${code}). Wait until Excel answers again, then press again.`,
  tooManyAtOnce: () =>
    "Excel has reached the limit of what it does for an add-in at once. What was made before is there. Wait a few minutes and go on with the rest, or make the rest on Rigsheet's own desk.",
  tooOld: () =>
    "This Excel is too old for that. Use Microsoft 365, Excel on the web or Excel 2024, or work on Rigsheet's own desk. A copy without add-in can be read here.",
  noFunctions: () =>
    "Excel on an iPad runs no functions of an add-in, so every result would stand at #NAME?. Start the workbook in Excel for Windows, for Mac or on the web. A copy without add-in can be read here.",
  structure: () =>
    "The structure of this workbook is protected, so no sheets can be put into it. Take the protection off (Review, Protect Workbook), then press again; or start as a new workbook. Nothing was changed.",
  /** After what was done. */
  unguarded: (sheets: readonly string[]) =>
    `Excel did not protect ${quoted(sheets)} again: protect ${sheets.length === 1 ? "it" : "them"} by Review, Protect Sheet, without a password.`,
  manual: () => "Calculation is set to manual: results are as old as the last F9. Press F9.",
  mayBeHidden: () => "A filter is on, which may hide them.",
  noClosingRow: (heading: string) =>
    `The thin closing row of ${heading} was deleted, so the new rows stand above the last one; the block works on like that.`,
  noSelection: () => "No cell is chosen. Click a cell of a sheet, then try again.",
  noSheet: (sheet: string) =>
    `There is no sheet “${sheet}” in this workbook any more. If it was renamed, give it its old name; if it was deleted, start from a copy that has it.`,
  noSpilling: () =>
    "This Excel is too old for formulas that fill a column by themselves (dynamic arrays), which the workbooks need. Use Microsoft 365, Excel on the web or Excel 2024, or work on Rigsheet's own desk. A copy without add-in can be read here.",
  notOurs: () =>
    "This workbook was not made from a Rigsheet template, so its blocks are not known. Insert rows by hand, or start a workbook from the pane.",
  unknownTemplate: (template: string) =>
    `This workbook was made from the template “${template}”, which this add-in does not know. Load the add-in anew; it may be older than the workbook.`,
  newerTemplate: (theirs: string, ours: string) =>
    `This workbook was made from version ${theirs} of its template, and this add-in knows version ${ours}. Load the add-in anew, so that it is as new as the workbook; Office may keep the older one for up to 24 hours.`,
  /** Not in the way: it is said after what was done. */
  olderTemplate: (theirs: string, ours: string) =>
    `This workbook was made from version ${theirs} of its template; version ${ours} is current. It goes on working. Start a new workbook from the pane for the next job.`,
  taken: (sheets: readonly string[], names: readonly string[]) =>
    `This workbook already has ${[
      ...(sheets.length > 0 ? [`${sheets.length === 1 ? "a sheet" : "sheets"} named ${quoted(sheets)}`] : []),
      ...(names.length > 0
        ? [
            `cells named ${names.slice(0, 3).join(", ")}${names.length > 3 ? ` and ${names.length - 3} more` : ""}`,
          ]
        : []),
    ].join(
      " and ",
    )}. They are yours and stay untouched. Start as a new workbook (without the tick at “As sheets of this workbook”), or rename yours first.`,
  badCount: (count: number, most: number) =>
    `${count} rows can't be added at once. Give a whole number from 1 to ${most}.`,
  takenBack: () => "What was begun was taken back: nothing was changed.",
  /** @param left what may stand there of it */
  halfDone: (left: string, code: string) =>
    `Excel stopped in the middle${code === "RequestAborted" ? ": the connection broke off" : ` (${code})`}. What was begun could not be taken back yet: ${left}. Press Ctrl+Z until the sheets are as they were, or press the button again: what is left is taken back before anything else is done.`,
  tooLarge: () =>
    "The workbook is too large for Excel to hand over at once. Delete sheets that do not belong to the job, then try again.",
  notHandedOver: (detail: string) =>
    `Excel did not hand over the workbook (${detail}). Save it and try again; if it stays so, open the saved file in Excel's desktop program or on Rigsheet's own desk, which makes the same copies.`,
  emptyFile: () =>
    "Excel handed over an empty file in place of the workbook. Save the workbook, reload the add-in, then try again; or open the saved file on Rigsheet's own desk.",
  noNewWorkbook: () =>
    "This Excel can't open a new workbook for an add-in, which a copy is. Use Microsoft 365, Excel on the web or Excel 2021 or later, or open the saved workbook on Rigsheet's own desk.",
  newWorkbookRefused: (code: string, message: string) =>
    `Excel refused to open a new workbook for an add-in (${code}: ${message}). Nothing was changed. A policy of your office's can be the reason. Under Start, tick “As sheets of this workbook”; for a copy or another workbook, save this one and open its file on Rigsheet's own desk.`,
  ifNoFile: () =>
    "If no file came, this Excel lets a pane hand none over: save the workbook and open its file on Rigsheet's own desk, where Print… makes the same.",
  /** @param how many cells of ours show no result */
  nothingToCopy: (shown: string, count: number) =>
    `No copy was made: ${count} cells that our functions work out show ${shown}, so results are missing. Load the functions, press “Repair formulas”, then make the copy.`,
  repairRefused: (done: number, all: number, left: ReadonlyMap<string, number>) =>
    `${done} of ${all} formulas were entered again. ${[...left].map(([sheet, count]) => `“${sheet}” is protected, perhaps with a password: ${count} there still show #NAME?.`).join(" ")} Take the protection off (Review, Unprotect Sheet), then press again.`,
  repairStopped: (left: number, all: number, code: string) =>
    `Excel stopped (${code}): ${left} of ${all} formulas may still show #NAME?. None is lost. Press again; it goes on with the rest.`,
  stillUnknown: (count: number, shown: string) =>
    `${count} formulas were entered again and still show ${shown}. Either the functions are not loaded: close this pane and open it again. Or another add-in, or a second copy of this one, uses the same names: remove one (Home, Add-ins), then press “Repair formulas” again.`,
  notOpened: () =>
    "The pane opens with this workbook from now on, but this Excel does not load the functions with it: where cells show #NAME?, open the pane by hand.",
  notKept: (detail: string) =>
    `Excel did not keep that in the workbook (${detail}). Take the workbook out of protected view or get the right to change it, then try again.`,
  storageRefused: () =>
    "The browser inside Excel does not let settings be kept, so they hold until Excel is closed. Allow site data for this add-in's address to keep them.",
  other: (code: string, message: string) =>
    `Excel refused (${code}: ${message}). Try again, and if it happens again, reload the add-in.`,
} as const;

const quoted = (names: readonly string[]): string => names.map((name) => `“${name}”`).join(", ");

/** Excel's codes (Office JavaScript API, "Excel.ErrorCodes") that a person can do something about. */
const BY_CODE: Readonly<Record<string, (code: string) => string>> = {
  InvalidOperationInCellEditMode: troubles.editing,
  AccessDenied: troubles.protectedSheet,
  InvalidSelection: troubles.noSelection,
  RequestPayloadSizeLimitExceeded: troubles.tooLarge,
  ResponsePayloadSizeLimitExceeded: troubles.tooLarge,
  FilteredRangeConflict: troubles.filtered,
  InactiveWorkbook: troubles.otherWorkbook,
  RequestAborted: troubles.aborted,
  ApiNotFound: troubles.tooOld,
  ActivityLimitReached: troubles.tooManyAtOnce,
};

/** What a change says of a code that means something else to it than elsewhere. */
export type OwnWords = Readonly<Record<string, (message: string) => string>>;

export const codeOf = (error: unknown): string | undefined => {
  const { code } = (error ?? {}) as { code?: unknown };
  return typeof code === "string" ? code : undefined;
};

/** Excel's error as a sentence for a person; what is not Excel's error is a mistake of ours and stays as it is. */
export function asTrouble(error: unknown, own: OwnWords = {}): unknown {
  if (error instanceof HostTrouble) return error;
  const code = codeOf(error);
  if (code === undefined) return error;
  const message = String((error as { message?: unknown }).message);
  const sentence = Object.hasOwn(own, code)
    ? own[code]!(message)
    : Object.hasOwn(BY_CODE, code)
      ? BY_CODE[code]!(code)
      : troubles.other(code, message);
  return new HostTrouble(sentence, { cause: error });
}
