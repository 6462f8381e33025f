import type { Field } from "../definition";
import { WRITING_FIELD, WRITING_LABEL, WRITINGS } from "./writing";

/** Where a workbook says how its people write; beside its dates, where they are typed. */
export const writingField: Field = {
  name: WRITING_FIELD,
  label: WRITING_LABEL,
  note: "The desk shows and takes them so. Blank: only what reads the same everywhere is taken.",
  input: {
    what: "How people here write numbers and dates",
    rule: { kind: "choice", choices: WRITINGS.map(({ label }) => label) },
  },
};
