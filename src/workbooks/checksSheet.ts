import { f } from "../formula/build";
import { stateInWords, whileFunctionsAnswer } from "./aboutNames";
import { checks } from "./checkNames";
import type { Check, CheckWords, Fields, SheetDefinition } from "./definition";
import { fieldsPart, worked } from "./parts";

/** The words in the head of every sheet, from the results of all checks. */
const masterCheck: Fields = fieldsPart("Master check", [
  worked(checks.failed, f`COUNTIF(${checks.result},"look")+COUNTIF(${checks.result},"error")`),
  worked(
    checks.verdict,
    whileFunctionsAnswer(
      f`IF(${checks.failed}=0,"all checks pass",IF(${checks.failed}=1,"1 check needs attention",${checks.failed}&" checks need attention"))`,
      stateInWords,
    ),
  ),
]);

/** Native formulas compute on where ours do not, and so may a check: this one says it, and fails all. */
const functionsAnswer: Check = {
  id: "functions answer",
  what: "Rigsheet's functions answer here, and blank cells reach them as blanks",
  limit: "0: they do",
  found: whileFunctionsAnswer(f`0`, f`1`),
  passes: (found) => f`${found}=0`,
  where: "About",
};

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
  parts: [{ kind: "checks", heading: "Checks", checks: [...all, functionsAnswer] }, masterCheck],
});
