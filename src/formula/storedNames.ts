/**
 * The names under which files keep functions. Excel writes a function of an add-in
 * as `_xldudf_`, the namespace and the name; LibreOffice keeps that but writes it
 * back in lower case, or with a dot. Functions newer than the format have `_xlfn.`
 * before them, some `_xlws.` besides, and the parameters of LET and LAMBDA `_xlpm.`.
 */
import { NAMESPACE } from "./namespace";

const OURS = `${NAMESPACE}.`;
const OURS_STORED = [`_XLDUDF_${NAMESPACE}_`, `_XLDUDF_${NAMESPACE}.`];
const PREFIXES = ["_XLFN.", "_XLWS.", "_XLPM."];

/** @returns a function's name as people see it, in capitals, however a file or a person writes it */
export function functionName(written: string): string {
  let name = written.toUpperCase();
  const stored = OURS_STORED.find((prefix) => name.startsWith(prefix));
  if (stored !== undefined) return `${OURS}${name.slice(stored.length)}`;
  for (const prefix of PREFIXES) if (name.startsWith(prefix)) name = name.slice(prefix.length);
  return name;
}

/** Whether a text so much as names us: most formulas do not, and every cell of a big job is asked. */
export const mentionsUs = (text: string): boolean => text.toUpperCase().includes(NAMESPACE);

/** @returns the name without the namespace; undefined for a function that is not ours */
export function ourName(written: string): string | undefined {
  const name = functionName(written);
  const own = name.startsWith(OURS) ? name.slice(OURS.length) : "";
  return own !== "" && isOwnName(own) ? own : undefined;
}

/** Capitals and digits, a capital first. */
function isOwnName(name: string): boolean {
  const [first = ""] = name;
  return (
    first >= "A" &&
    first <= "Z" &&
    [...name].every((one) => (one >= "A" && one <= "Z") || (one >= "0" && one <= "9"))
  );
}
