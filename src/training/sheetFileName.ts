/** A name for a trainee's file that every disk takes: the number keeps two of one name apart. */
import type { Trainee } from "./drawNumbers";

const MOST_LETTERS = 40;

/** @param number of the trainee on the list, from 1 */
export function sheetFileName({ name }: Trainee, number: number, of: number): string {
  const digits = String(of).length;
  const letters = Array.from(name.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, ""))
    .slice(0, MOST_LETTERS)
    .join("");
  return `${String(number).padStart(digits, "0")}${letters === "" ? "" : `-${letters}`}.xlsx`;
}

export const KEY_FILE = "trainer-key.xlsx";
/** The folder with the sheets to hand out, beside the key. */
export const SHEETS_FOLDER = "sheets";
