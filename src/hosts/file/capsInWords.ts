import { inMebibytes } from "./fileTrouble";
import {
  MAX_CELLS,
  MAX_ENTRIES,
  MAX_FILE_BYTES,
  MAX_NAMES,
  MAX_PART_BYTES,
  MAX_RATIO,
  MAX_SHEET_COLUMNS,
  MAX_SHEET_ROWS,
  MAX_SHEETS,
  MAX_SLOTS,
  MAX_STRINGS,
  MAX_STYLES,
  MAX_UNPACKED_BYTES,
} from "./limits";

/** What a workbook may measure at most to be read, for a command's help. */
export const CAPS_IN_WORDS = `A workbook is read up to ${inMebibytes(MAX_FILE_BYTES)} (${inMebibytes(MAX_UNPACKED_BYTES)} unpacked, no part more than ${inMebibytes(MAX_PART_BYTES)}
or ${MAX_RATIO} times its packed size), ${MAX_ENTRIES} parts, ${MAX_SHEETS} sheets of ${MAX_SHEET_ROWS} rows and ${MAX_SHEET_COLUMNS} columns,
${MAX_CELLS} cells that hold something, ${MAX_SLOTS} up to the last ones, ${MAX_STRINGS} texts, ${MAX_NAMES}
names and ${MAX_STYLES} styles; one with macros, a password or declarations of its own (DOCTYPE)
is refused. Links to other files are not followed.`;
