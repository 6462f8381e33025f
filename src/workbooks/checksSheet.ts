import type { Check, Fields, SheetDefinition } from "./definition";

/** The words in the head of every sheet, from the results of all checks. */
const masterCheck: Fields = {
  kind: "fields",
  heading: "Master check",
  fields: [
    {
      name: "checks_failed",
      label: "Checks to look at",
      format: "integer",
      formula: 'COUNTIF(checks_result,"look")+COUNTIF(checks_result,"error")',
    },
    {
      name: "checks_verdict",
      label: "In the head of every sheet",
      formula: 'IF(checks_failed=0,"all checks pass",checks_failed&" to look at")',
    },
  ],
};

/** A sheet of its own in every template: beside what is filled, its wide columns would make that small on paper. */
export const checksSheet = (
  checks: readonly Check[],
  print: Partial<NonNullable<SheetDefinition["print"]>> = {},
): SheetDefinition => ({
  name: "Checks",
  kind: "checks",
  intro: "Each check says what it found; the head of every sheet counts those that need a look.",
  print: { orientation: "landscape", ...print },
  parts: [{ kind: "checks", heading: "Checks", checks }, masterCheck],
});
