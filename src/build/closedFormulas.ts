/** The record by which a person's formula is told from one that an earlier version of a template had. */
import { layOut } from "../workbooks/layOut";
import { templates } from "../workbooks/templates";
import { marksIn, type FormulaRecord } from "../workbooks/versionFormulas";

export const FORMULA_RECORD = "src/workbooks/versionFormulas.json";

/** @param release closes today's versions: their formulas join the record */
export const closedFormulas = (kept: FormulaRecord, release: boolean): FormulaRecord =>
  release
    ? {
        ...kept,
        ...Object.fromEntries(
          templates.map(({ id, definition }) => [
            id,
            { ...kept[id], [definition.version]: inOrder(marksIn(layOut(definition))) },
          ]),
        ),
      }
    : kept;

const inOrder = (marks: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(marks).sort(([one], [other]) => (one < other ? -1 : 1)));
