/**
 * What goes wrong around a call: hooks of the stand-in. Each throws what Excel
 * answers, and may change the workbook first, as another person does.
 */
import { officeError } from "./strict";

export interface Happens {
  /** Before a call is carried out. @param member as the stand-in names it, such as Range.insert @param index of a slice @param grouped in an undo group */
  readonly call?: (member: string, index?: number, grouped?: boolean) => void;
  /** Before a round trip. @param calls all that it carries */
  readonly before?: (calls: readonly string[]) => void;
  /** After a round trip that was carried out. */
  readonly after?: (calls: readonly string[]) => void;
}

/** What of the calls that we make changes a workbook; a setting is named as what it sets. */
const READS =
  /\.(?:load|get\w+|suspend\w+|select|activate|sync)$|^(?:context|names|worksheets|custom)\.(?:load|getItem\w*)$/;

export const isWriting = (calls: readonly string[]): boolean => calls.some((call) => !READS.test(call));

/** The policy's own words, as issue threads give them. */
export const POLICY = [
  "GeneralException",
  "This operation is not allowed due to the extension hardening policy.",
] as const;
export const ABORTED = ["RequestAborted", "The request was aborted during run time."] as const;

/** @returns throws for a member, the first times or always */
export function refusing(
  member: string | RegExp,
  [code, message]: readonly [string, string],
  times = Infinity,
  after = 0,
): (call: string, index?: number) => void {
  let met = 0;
  return (call) => {
    if (typeof member === "string" ? call !== member : !member.test(call)) return;
    met += 1;
    if (met > after && met <= after + times) throw officeError(code, message);
  };
}

/** No connection: round trips that change something fail from the n-th on, and then so many more, whatever they carry. */
export function disconnected(
  first: number,
  more: number,
  isMeant = isWriting,
): (calls: readonly string[]) => void {
  let met = 0;
  let left = more;
  let broken = false;
  return (calls) => {
    if (broken && left > 0) {
      left -= 1;
      throw officeError(...ABORTED);
    }
    if (broken || !isMeant(calls)) return;
    met += 1;
    if (met < first) return;
    broken = true;
    throw officeError(...ABORTED);
  };
}
