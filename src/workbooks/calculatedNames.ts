/** The names of a template whose cells are calculated, with the label of each. */
import type { Part, WorkbookDefinition } from "./definition";

export interface CalculatedName {
  readonly sheet: string;
  readonly name: string;
  readonly label: string;
  /** A column of a block, whose rows may be more or fewer in another workbook. */
  readonly column: boolean;
}

/** @returns in the order of the sheets; a cell that another's formula fills is left to that one's name */
export const calculatedNames = (definition: WorkbookDefinition): CalculatedName[] =>
  definition.sheets.flatMap(({ name: sheet, parts }) =>
    parts.flatMap((part) => namesOf(part).map((one) => ({ ...one, sheet }))),
  );

function namesOf(part: Part): Omit<CalculatedName, "sheet">[] {
  switch (part.kind) {
    case "fields":
      return part.fields.flatMap(({ name, label, formula, beside = [] }) => [
        ...(formula === undefined ? [] : [{ name, label, column: false }]),
        ...beside.map(({ key }) => ({ name: `${name}_${key}`, label, column: false })),
      ]);
    case "grid":
      return part.rows.map(({ name, label }) => ({ name, label, column: false }));
    case "block":
      return part.columns.flatMap(({ key, head, formula }) =>
        formula === undefined ? [] : [{ name: `${part.name}_${key}`, label: head, column: true }],
      );
    case "answer":
      return [{ name: part.name, label: part.heading, column: true }];
    default:
      return [];
  }
}
