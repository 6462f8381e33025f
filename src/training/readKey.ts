/** The exercises that a trainer's key belongs to, read back from its workbook. */
import type { Book } from "../workbooks/book";
import { namedColumn, namedValue } from "../workbooks/named";
import { KEY_TEMPLATE } from "./answerName";
import { TRAINING_VERSION } from "./drawNumbers";
import { trainingSetOf } from "./sets/all";
import { sheetCode } from "./sheetCode";
import { KEY_NAMES, type Exercises } from "./trainerKey";

export const isKey = (book: Book): boolean => book.template === KEY_TEMPLATE;

/** @returns the exercises; a sentence where the key is not one that can be marked by */
export function readKey(book: Book): Exercises | string {
  if (!isKey(book)) return "It is no trainer's key of Rigsheet's.";
  if (book.templateVersion !== TRAINING_VERSION) {
    return `The key is of version ${book.templateVersion || "unknown"} of the exercises; this is version ${TRAINING_VERSION}. Mark with the Rigsheet that made it.`;
  }
  const id = String(namedValue(book, KEY_NAMES.set) ?? "");
  const set = trainingSetOf(id);
  if (!set) return `The key names the set "${id.slice(0, 40)}", which is not known here.`;
  const seed = Number(namedValue(book, KEY_NAMES.seed) ?? NaN);
  if (!Number.isSafeInteger(seed) || seed < 0) return "The key's seed is no whole number of 0 or more.";
  const names = namedColumn(book, KEY_NAMES.name);
  const occurrences = namedColumn(book, KEY_NAMES.occurrence);
  const codes = namedColumn(book, KEY_NAMES.code);
  if (names.length === 0) return "The key names no trainee.";
  const trainees = names.map((name, row) => ({
    name: String(name ?? ""),
    occurrence: Number(occurrences[row]),
  }));
  const wrong = trainees.findIndex((trainee, row) => sheetCode(set, seed, trainee) !== codes[row]);
  if (wrong >= 0) {
    return `The key was changed: trainee ${wrong + 1} does not have the code that belongs to that name. Make the key anew with the same list and seed.`;
  }
  return { set, seed, trainees };
}
