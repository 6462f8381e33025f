/**
 * Says in the workbook's words what the library (19.3.7) says in a programmer's, by its own way to translate.
 *
 * A name that is not found is the commonest slip of typing on Rooms and Branches, and its sentence named a
 * function that the person never wrote.
 */
import type { GridLibrary } from "./library";

const WORDS: Readonly<Record<string, string>> = {
  // It sends the user to the library's makers for what may be a large array of the user's own.
  "An unexpected error occurred. Submit a support ticket at odoo.com/help.":
    "This formula could not be computed. Make its arrays smaller, or split it.",
  "Did not find value '%s' in [[FUNCTION_NAME]] evaluation.":
    '"%s" is not among the names in which it is looked up. Enter the name as it stands on its own sheet, or add it there.',
};

export function translateLibraryMessages(library: GridLibrary): void {
  library.setTranslationMethod((...[text]) => WORDS[text] ?? text);
}
