import { f } from "../formula/build";
import { checks } from "./checkNames";
import type { Check, CheckWords, Fields, SheetDefinition } from "./definition";
import { fieldsPart, worked } from "./parts";

/** The words in the head of every sheet, from the results of all checks. */
const masterCheck: Fields = fieldsPart("Master check", [
  worked(checks.failed, f`COUNTIF(${checks.result},"look")+COUNTIF(${checks.result},"error")`),
  worked(
    checks.verdict,
    f`IF(${checks.failed}=0,"all checks pass",IF(${checks.failed}=1,"1 check needs attention",${checks.failed}&" checks need attention"))`,
  ),
]);

/** Checks in the order in which they are written, each by what it is known by. */
export const checksOf = (of: Readonly<Record<string, CheckWords>>): Check[] =>
  Object.entries(of).map(([id, check]) => ({ id, ...check }));

/** A sheet of its own in every template: beside what is filled, its wide columns would make that small on paper. */
export const checksSheet = (
  all: readonly Check[],
  print: Partial<NonNullable<SheetDefinition["print"]>> = {},
): SheetDefinition => ({
  name: "Checks",
  kind: "checks",
  intro: "Each check says what it found; the head of every sheet counts those that need attention.",
  print: { orientation: "landscape", ...print },
  parts: [{ kind: "checks", heading: "Checks", checks: all }, masterCheck],
});
