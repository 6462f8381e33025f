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
  noSelection: () => "No cell is chosen. Click a cell of a sheet, then try again.",
  noSheet: (sheet: string) =>
    `There is no sheet “${sheet}” in this workbook any more. If it was renamed, give it its old name; if it was deleted, start from a copy that has it.`,
  noSpilling: () =>
    "This Excel is too old for formulas that fill a column by themselves (dynamic arrays), which the workbooks need. Use Microsoft 365, Excel on the web or Excel 2024, or work on Rigsheet's own desk.",
  notOurs: () =>
    "This workbook was not made from a Rigsheet template, so its blocks are not known. Insert rows by hand, or start a workbook from the pane.",
  unknownTemplate: (template: string) =>
    `This workbook was made from the template “${template}”, which this add-in does not know. Load the add-in anew; it may be older than the workbook.`,
  newerTemplate: (theirs: string, ours: string) =>
    `This workbook was made from version ${theirs} of its template, and this add-in knows version ${ours}. Load the add-in anew, so that it is as new as the workbook.`,
  /** Not in the way: it is said after what was done. */
  olderTemplate: (theirs: string, ours: string) =>
    `This workbook was made from version ${theirs} of its template; version ${ours} is current. It goes on working. Start a new workbook from the pane for the next job.`,
  sheetsThere: (names: readonly string[]) =>
    `This workbook already has ${names.length === 1 ? "a sheet" : "sheets"} named ${names.map((name) => `“${name}”`).join(", ")}. Open an empty workbook (File, New) and start there, so that nothing of yours is overwritten.`,
  namesThere: (names: readonly string[]) =>
    `This workbook already has cells named ${names.slice(0, 3).join(", ")}${names.length > 3 ? ` and ${names.length - 3} more` : ""}. Open an empty workbook (File, New) and start there.`,
  badCount: (count: number, most: number) =>
    `${count} rows can't be added at once. Give a whole number from 1 to ${most}.`,
  halfDone: () =>
    "Excel stopped in the middle, and what was begun could not be taken back. Press Ctrl+Z until the sheets are as they were, or close the workbook without saving; then try again.",
  tooLarge: () =>
    "The workbook is too large for Excel to hand over at once. Delete sheets that do not belong to the job, then try again.",
  notHandedOver: (detail: string) =>
    `Excel did not hand over the workbook (${detail}). Save it, then try again.`,
  emptyFile: () =>
    "Excel handed over an empty file in place of the workbook. Save the workbook, reload the add-in, then try again; or open the saved file on Rigsheet's own desk.",
  noNewWorkbook: () =>
    "This Excel can't open a new workbook for an add-in, which a copy is. Use Microsoft 365, Excel on the web or Excel 2021 or later, or open the saved workbook on Rigsheet's own desk.",
  newWorkbookRefused: (code: string, message: string) =>
    `Excel refused to open a new workbook for an add-in (${code}: ${message}). A policy of your office's can be the reason. Under Start, tick “As sheets of this workbook”; for a copy or another workbook, open the saved file on Rigsheet's own desk.`,
  notKept: (detail: string) =>
    `Excel did not keep that in the workbook (${detail}). Take the workbook out of protected view or get the right to change it, then try again.`,
  storageRefused: () =>
    "The browser inside Excel does not let settings be kept, so they hold until Excel is closed. Allow site data for this add-in's address to keep them.",
  other: (code: string, message: string) =>
    `Excel refused (${code}: ${message}). Nothing more was done; try again, and if it happens again, reload the add-in.`,
} as const;

/** Excel's codes (Office JavaScript API, "Excel.ErrorCodes") that a person can do something about. */
const BY_CODE: Readonly<Record<string, () => string>> = {
  InvalidOperationInCellEditMode: troubles.editing,
  AccessDenied: troubles.protectedSheet,
  InvalidSelection: troubles.noSelection,
  RequestPayloadSizeLimitExceeded: troubles.tooLarge,
  ResponsePayloadSizeLimitExceeded: troubles.tooLarge,
};

/** Excel's error as a sentence for a person; what is not Excel's error is a mistake of ours and stays as it is. */
export function asTrouble(error: unknown): unknown {
  if (error instanceof HostTrouble) return error;
  const { code, message } = (error ?? {}) as { code?: unknown; message?: unknown };
  if (typeof code !== "string") return error;
  const known = Object.hasOwn(BY_CODE, code) ? BY_CODE[code] : undefined;
  return new HostTrouble(known ? known() : troubles.other(code, String(message)), { cause: error });
}
