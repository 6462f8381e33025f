import type { Fields } from "./definition";

/** The words in the head of every sheet, from the results of all checks; each template ends its checks with it. */
export const masterCheck: Fields = {
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
