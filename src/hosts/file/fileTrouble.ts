/**
 * What can be wrong with a file or a folder. A host meets these at its edge,
 * where the command and the desk catch them and show the sentence; inside, a
 * workbook's faults stay values.
 */
import { MAX_CELLS, MAX_RATIO, MAX_SHEET_COLUMNS, MAX_SHEET_ROWS, MAX_SLOTS } from "./limits";

export class FileTrouble extends Error {
  override readonly name = "FileTrouble";
}

/** Whole where it is whole, so that a limit reads alike in a refusal and in the help. */
export const inMebibytes = (bytes: number): string => `${Number((bytes / (1024 * 1024)).toFixed(1))} MiB`;
const SAVE_AS = "Open it in your spreadsheet program and save it as an Excel workbook (.xlsx)";

/** A sentence for each trouble: what is wrong, and what to do. */
export const troubles = {
  // The file as a whole
  empty: () => "The file is empty. Copy or download it again.",
  tooLarge: (bytes: number, most: number) =>
    `The file is ${inMebibytes(bytes)}; the most that is read is ${inMebibytes(most)}. Delete sheets or pictures that do not belong to the job.`,
  oldOrProtected: (isProtected: boolean) =>
    isProtected
      ? "The file is protected with a password. Open it in Excel, take the password off (File, Info, Protect Workbook) and save it again."
      : `The file is an old Excel workbook (.xls) under the name of a new one. ${SAVE_AS}.`,
  otherKind: (kind: string) => `The file is ${kind}, not an Excel workbook. ${SAVE_AS}.`,
  notAnArchive: () =>
    "The file is not an Excel workbook (.xlsx): it does not begin as one. Check that the right file was chosen.",
  truncated: () => "The file is cut short: its end is missing. Copy or download it again.",
  damaged: (part: string) => `The file is damaged at ${part}. Copy or download it again.`,
  macros: () =>
    "The workbook holds macros, which are not opened. Save it as an Excel workbook without macros (.xlsx).",
  tooManyParts: (count: number, most: number) =>
    `The file declares ${count} parts; the most that is read is ${most}. It was not made by a spreadsheet program, or holds too many sheets and pictures.`,
  inflated: (bytes: number, most: number) =>
    `The file would unpack to ${inMebibytes(bytes)}; the most that is read is ${inMebibytes(most)}. Do not open it unless you know who made it.`,
  suspiciousRatio: (part: string) =>
    `The part ${part} of the file is packed more tightly than any workbook is: it unpacks to more than ${MAX_RATIO} times its size. Do not open it unless you know who made it.`,
  badPath: (part: string) =>
    `The file holds a part with the path ${JSON.stringify(part.slice(0, 60))}, which no workbook has. Do not open it unless you know who made it.`,
  declares: (part: string) =>
    `The part ${part} of the file has declarations of its own (DOCTYPE), which no workbook has. Do not open it unless you know who made it.`,
  packedOtherwise: (part: string) =>
    `The part ${part} of the file is encrypted or packed in a way that no workbook is. ${SAVE_AS}.`,
  otherLetters: (part: string, encoding: string) =>
    `The part ${part} of the file is written in ${encoding}; a workbook is read in UTF-8 or UTF-16. ${SAVE_AS}.`,
  unreadable: (detail: string) => `The workbook could not be read (${detail}). ${SAVE_AS}, then try again.`,

  // What the workbook holds
  dates1904: () =>
    "The workbook counts its dates from 1904. In Excel turn that off (File, Options, Advanced, Use 1904 date system), correct the dates and save it again.",
  tooManyNames: (count: number, most: number) =>
    `The workbook has ${count} defined names; the most that is read is ${most}. Delete unused names (Formulas, Name Manager) and save it again.`,
  tooManyStyles: (count: number, most: number) =>
    `The workbook has ${count} styles; the most that is read is ${most}. Copy the sheets that you need into a new workbook.`,
  tooManySheets: (count: number, most: number) =>
    `The workbook has ${count} sheets; the most that is read is ${most}.`,
  sheetTooLarge: (sheet: string, rows: number, columns: number) =>
    `Sheet "${sheet}" has something in row ${rows} and column ${columns}; the most that is read is ${MAX_SHEET_ROWS} rows and ${MAX_SHEET_COLUMNS} columns. Delete the unused rows and columns.`,
  tooManyCells: (sheet: string) =>
    `The workbook holds more than ${MAX_CELLS} cells by sheet "${sheet}". Delete the unused rows and columns.`,
  tooManySlots: () =>
    `The workbook's sheets reach too far down and to the right: they span more than ${MAX_SLOTS} cells up to their last ones. Delete the unused rows and columns.`,
  tooManyTexts: (count: number, most: number) =>
    `The workbook keeps ${count} texts; the most that is read is ${most}. Delete the sheets that do not belong to the job and save it again.`,

  // What can't be written
  noSheet: () => "A workbook needs at least one sheet that is not hidden.",
  badSheetName: (name: string, why: string) => `A sheet can't be named ${JSON.stringify(name)}: ${why}.`,
  badName: (name: string) =>
    `A range can't be named ${JSON.stringify(name)}: a name begins with a letter, holds letters, digits, dots and underscores, and is no cell's address.`,
  brokenCharacter: (where: string) =>
    `${where} holds half of a character, which no file can carry. Type the text again.`,
  tooLong: (where: string, length: number, most: number) =>
    `${where} is ${length} characters long; a workbook can hold ${most}. Shorten it.`,
  notFinite: (where: string) => `${where} is not a finite number, which no workbook can hold.`,
  notCalculated: (where: string) =>
    `${where} has not been calculated yet, so its value can't be frozen. Calculate the workbook first.`,
  badChoices: (where: string) =>
    `The choices of ${where} are longer than 255 characters together, or one holds a comma or has a blank at its end. Put them in a named range.`,
  badRange: (where: string, range: string) =>
    `${where} has the range ${JSON.stringify(range)}, which is no range of a sheet.`,

  // A survey or a price list
  tableTooLarge: (bytes: number, most: number) =>
    `The file is ${inMebibytes(bytes)}; a survey or price list has at most ${inMebibytes(most)}. Check that the right file was chosen.`,
  tableTooLong: (lines: number, most: number) =>
    `The file has ${lines} lines; a survey or price list has at most ${most}. Check that the right file was chosen, or split it.`,
  tableNotText: () =>
    "The file is neither text nor a workbook. Save it as CSV (comma, semicolon or tab) or as an Excel workbook (.xlsx).",

  // An export of jobs
  jobsTooLarge: (bytes: number, most: number) =>
    `The file is ${inMebibytes(bytes)}; an export of jobs is read up to ${inMebibytes(most)}. Export fewer jobs at a time.`,
  tooMuchForOne: (what: string) =>
    `These are too many jobs for one file (${what}). Export fewer at a time: choose a job and “Export as it is”.`,
  noExport: (kind: string) =>
    `The file is ${kind}, not an export of Rigsheet's jobs. Choose the .zip that “Export all…” or “Export as it is” made.${kind.includes("CSV") ? " A survey goes in by “Import survey…”." : ""}`,
  isWorkbook: () =>
    "The file is an Excel workbook, not an export of Rigsheet's jobs. “Open .xlsx…” opens it as a job.",
  exportInside: (name: string) =>
    `The file is packed once more: the export lies in it as ${JSON.stringify(name.slice(0, 60))}. Unpack it and choose that one.`,
  exportDamaged: (detail: string) =>
    `The file is an export of Rigsheet's jobs, but its list of jobs is damaged (${detail}). Copy or download it again, or export once more where it comes from.`,
  newerExport: (version: number) =>
    `The file was made by a newer Rigsheet (version ${version} of the export; this one reads 1). Bring it in with that one; nothing here was changed.`,
  exportProtected: () =>
    "The file is protected with a password. Unpack it with that, then pack what is in it again without one.",
  jobsAreNoWorkbook: () =>
    "The file is an export of Rigsheet's jobs, not a workbook. Under Jobs, “Bring in…” brings them in.",

  // Saving
  folderMissing: (folder: string) => `There is no folder ${folder}. Make it, or save elsewhere.`,
  isFolder: (path: string) => `${path} is a folder. Give the name of a file in it.`,
  notAFile: (path: string) => `${path} is no plain file (a device or a pipe). Give the name of a file.`,
  linksInACircle: (path: string) => `The links of ${path} lead round in a circle. Save under another name.`,
  halfWritten: (path: string, whole: string) =>
    `${path} could not be written to its end and is damaged now. All of it is kept as ${whole}: copy that file over it.`,
  readOnlyFile: (path: string) =>
    `${path} is read-only. Take the write protection off, or save under another name.`,
  noPermission: (folder: string) => `Nothing can be written in ${folder}. Choose a folder of your own.`,
  readOnlyDisk: (folder: string) => `The disk that holds ${folder} is read-only. Save on another disk.`,
  diskFull: (folder: string) =>
    `The disk that holds ${folder} is full. Nothing was changed; make room or save on another disk.`,
  inUse: (path: string) => `${path} is open in another program. Close it there and save again.`,
  nameTooLong: (path: string) => `The name ${path} is too long for this disk. Shorten it.`,
  notSaved: (path: string, detail: string) => `${path} could not be saved (${detail}). Nothing was changed.`,
  unsureReplaced: (path: string, detail: string) =>
    `The disk failed (${detail}) while ${path} was being replaced: it is the old one or the new one, whole. Check the disk and save again.`,
  unsureAdded: (path: string, detail: string) =>
    `The disk failed (${detail}) while something was added to ${path}: what was last done may be there after the next start, or not. Check the disk and do it again.`,
  unconfirmed: (path: string, detail: string) =>
    `${path} was written, but the disk did not confirm it (${detail}): after a power cut it may be as it was before. Check the disk and save again.`,
  folderUnconfirmed: (folder: string, detail: string) =>
    `The disk did not confirm the folder ${folder} (${detail}): after a power cut it may be gone, with all in it. Check the disk and try again.`,

  // Reading, and a folder of the user's own
  gone: (path: string) =>
    `${path} is not there any more. If it lies on a network or on a disk that can be taken out, connect that again; then try again.`,
  leadsNowhere: (link: string) =>
    `${link} is a link to a folder that is not there. If that lies on a network or on a disk that can be taken out, connect that; else give another folder with --data.`,
  notAFolder: (folder: string) =>
    `${folder} is a file, not a folder. Move it elsewhere, or give another folder.`,
  folderInPlace: (path: string) =>
    `${path} is a folder, where a file is kept otherwise. Move it elsewhere and try again.`,
  noFilesHere: (folder: string) =>
    `No file can be made in ${folder}, a special folder of the system. Choose a folder of your own.`,
  mayNotRead: (path: string) =>
    `${path} may not be read by you. Ask whoever it belongs to, or give another folder.`,
  tooManyOpen: (path: string) =>
    `${path} can't be opened: too many files are open on this computer. Close other programs and try again.`,
  notRead: (path: string, detail: string) =>
    `${path} can't be read (${detail}). If it lies on a network or on a disk that can be taken out, connect that again; else check the disk. Then try again.`,
} as const;

/** Stops with the sentence; for use in an expression. */
export function stop(sentence: string, cause?: unknown): never {
  throw new FileTrouble(sentence, cause === undefined ? undefined : { cause });
}
