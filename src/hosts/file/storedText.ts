/**
 * Text as an .xlsx stores it (ECMA-376 part 1, 22.9.2.19 ST_Xstring): a
 * character that XML can't carry is written `_xHHHH_`, and an underscore that
 * would begin such a group is written as a group itself. The library writes
 * the groups for control characters but leaves alone text that already looks
 * like one, so `_x000D_` typed by a person would come back as a line end.
 */
import { stop, troubles } from "./fileTrouble";

/** A private character that marks what is put right in the written XML (patchedOutput.ts); never in stored text. */
export const MARKER = "\uE000";

/** After the mark: text that no cell holds, but which a formula fills it with. */
export const SPILLED = "=";

/** Text without any of these is stored as it is: nearly all of a big job's. */
const UNUSUAL = /[_\uD800-\uDFFF\uE000\uFFFE\uFFFF]/;

/** @param where names the place in the sentence when the text can't be stored */
export function toStoredText(text: string, where: string): string {
  if (!UNUSUAL.test(text)) return text;
  if (/\p{Surrogate}/u.test(text)) stop(troubles.brokenCharacter(where));
  return text
    .replace(/_(?=x[0-9A-Fa-f]{4})/g, "_x005F_")
    .replace(
      /[\uE000\uFFFE\uFFFF]/g,
      (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase()}_`,
    );
}

export const fromStoredText = (text: string): string =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)));

/** Cut to so many characters, with an ellipsis and without splitting a character. */
export function cutText(text: string, most: number): string {
  if (text.length <= most) return text;
  const cut = text.slice(0, most - 1);
  return `${/[\uD800-\uDBFF]$/.test(cut) ? cut.slice(0, -1) : cut}…`;
}
