/**
 * A formula as people see it (`RIG.CABLELOSS(…)`) and as an .xlsx stores it
 * (`_xldudf_RIG_CABLELOSS(…)`): Excel writes an add-in's function as
 * `_xldudf_`, the namespace and the name. LibreOffice keeps that form but
 * writes it back in lower case.
 */
import { mapCode } from "./formulaParts";
import { FUTURE_FUNCTIONS, WORKSHEET_FUTURE_FUNCTIONS } from "./futureFunctions";

const NAMESPACE = "RIG";
/** Not in the middle of another name. */
const START = "(?<![\\w.\\\\])";
const OURS = new RegExp(`${START}${NAMESPACE}\\.([A-Z][A-Z0-9]*)(?=\\()`, "gi");
const OURS_STORED = new RegExp(`${START}_xldudf_${NAMESPACE}[_.]([A-Z][A-Z0-9]*)(?=\\()`, "gi");
const CALL = new RegExp(`${START}([A-Z][A-Z0-9.]*)(?=\\()`, "gi");
const CALL_STORED = new RegExp(`${START}_xlfn\\.(?:_xlws\\.)?([A-Z][A-Z0-9.]*)(?=\\()`, "gi");

export const toStoredFormula = (formula: string): string =>
  mapCode(formula, (code) =>
    code
      .replace(OURS, (_, name: string) => `_xldudf_${NAMESPACE}_${name.toUpperCase()}`)
      .replace(CALL, (call: string) => {
        const name = call.toUpperCase();
        if (WORKSHEET_FUTURE_FUNCTIONS.has(name)) return `_xlfn._xlws.${name}`;
        return FUTURE_FUNCTIONS.has(name) ? `_xlfn.${name}` : call;
      }),
  );

export const fromStoredFormula = (stored: string): string =>
  mapCode(stored, (code) =>
    code
      .replace(OURS_STORED, (_, name: string) => `${NAMESPACE}.${name.toUpperCase()}`)
      .replace(OURS, (_, name: string) => `${NAMESPACE}.${name.toUpperCase()}`)
      .replace(CALL_STORED, (call: string, name: string) => {
        const known = name.toUpperCase();
        return FUTURE_FUNCTIONS.has(known) || WORKSHEET_FUTURE_FUNCTIONS.has(known) ? known : call;
      }),
  );

/** Whether the formula calls a function of ours. */
export function callsOurs(formula: string): boolean {
  let found = false;
  mapCode(formula, (code) => {
    found ||= code.search(OURS) >= 0;
    return code;
  });
  return found;
}
