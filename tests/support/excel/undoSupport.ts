/**
 * What a person can take back of a call. A call that can't be taken back is
 * refused in an undo group (UndoNotSupported), and outside of one it clears
 * what could be taken back before it.
 *
 * Source: Office add-ins documentation, "Undo support with the Excel
 * JavaScript API", its table of unsupported members, as of 9 September 2025;
 * of it the classes that an add-in like this one can meet. What the table does
 * not name can be taken back.
 */
import { memberOfExcel } from "./requirementSets";

export type Undo = "yes" | "no" | "not on the web" | "not on the desktop";

const NEVER = [
  ...["address", "delete", "pauseProtection", "setPassword", "title"].map((one) => `AllowEditRange.${one}`),
  ...["add", "pauseProtection"].map((one) => `AllowEditRangeCollection.${one}`),
  ...["close", "insertWorksheetsFromBase64", "save"].map((one) => `Workbook.${one}`),
  ...["protect", "unprotect"].map((one) => `WorkbookProtection.${one}`),
  ...["copy", "delete"].map((one) => `Worksheet.${one}`),
  "WorksheetCollection.addFromBase64",
  ...["pauseProtection", "protect", "resumeProtection", "setPassword", "unprotect", "updateOptions"].map(
    (one) => `WorksheetProtection.${one}`,
  ),
];
const NOT_ON_THE_WEB =
  /^(?:DocumentProperties\.(?:author|category|comments|company|keywords|manager|revisionNumber|subject|title)|NamedItem\.comment|Worksheet\.standardWidth|Style\.\w+)$/;
const NOT_ON_THE_DESKTOP = ["Worksheet.name", "Worksheet.position", "Worksheet.visibility"];

/** @param asked as the stand-in names it; undefined for what changes nothing or is no matter of ExcelApi */
export function undoOf(asked: string): Undo {
  const member = memberOfExcel(asked);
  if (member === undefined) return "yes";
  if (NEVER.includes(member)) return "no";
  if (NOT_ON_THE_WEB.test(member)) return "not on the web";
  return NOT_ON_THE_DESKTOP.includes(member) ? "not on the desktop" : "yes";
}
