/** Calculated fields and columns whose formula is not the same in two workbooks of one template, however it is written. */
import { address, parseRange } from "../formula/address";
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { sameFormula } from "../formula/sameFormula";
import type { Change } from "./change";

/** @param typedOnly what was typed over a formula, or a formula over it; not two formulas that differ, as those of two versions do */
export function formulaChanges(
  definition: WorkbookDefinition,
  older: Book,
  newer: Book,
  typedOnly = false,
): Change[] {
  return definition.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) => {
      const calculated =
        part.kind === "fields"
          ? part.fields.map(({ name, label, formula }) => ({ name, label, formula }))
          : part.kind === "block"
            ? part.columns.map(({ key, head, formula }) => ({
                name: `${part.name}_${key}`,
                label: head,
                formula,
              }))
            : [];
      return calculated.flatMap(({ name, label, formula }): Change[] => {
        if (formula === undefined) return [];
        // An earlier version may lack the cell.
        if (typedOnly && ![older, newer].every(({ names }) => names.some((one) => one.name === name)))
          return [];
        const [before, after] = [contentOf(older, name), contentOf(newer, name)];
        return isSame(before, after) || (typedOnly && isFormula(before) === isFormula(after))
          ? []
          : [
              {
                kind: "formula",
                sheet: sheet.name,
                part: part.heading,
                row: label,
                cells: [{ label, before, after }],
              },
            ];
      });
    }),
  );
}

const isFormula = (content: string | null): boolean => content?.startsWith("=") ?? false;

const isSame = (before: string | null, after: string | null): boolean =>
  before === after ||
  (before !== null && after !== null && isFormula(before) && isFormula(after) && sameFormula(before, after));

/** What stands in a name's first cell: its formula, or what was typed over it. */
function contentOf(book: Book, name: string): string | null {
  const found = book.names.find((one) => one.name === name);
  const zone = found && parseRange(found.range);
  const cell =
    zone && book.sheets.find((one) => one.name === found.sheet)?.cells[address(zone.top, zone.left)];
  if (cell?.formula !== undefined) return `=${cell.formula}`;
  return cell?.value === undefined ? null : String(cell.value);
}
