/** Whether two computed values are the same but for the last digits, in which hosts that add in another order differ. */
import { isBookError, type BookResult } from "../workbooks/book";

const RELATIVE = 1e-7;
const ABSOLUTE = 1e-6;

/** @param anew an error is told by its own rule; a host without our functions shows one where we have a value */
export function sameResult(stored: BookResult | undefined, anew: BookResult | undefined): boolean {
  if (isBookError(anew)) return isBookError(stored);
  if (typeof stored === "number" && typeof anew === "number") {
    return Math.abs(stored - anew) <= Math.max(ABSOLUTE, RELATIVE * Math.abs(anew));
  }
  return (stored ?? "") === (anew ?? "");
}
