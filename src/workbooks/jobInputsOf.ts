/** Reads what a person filled into a book back out of it, by the definition's names. */
import type { Book, BookResult } from "./book";
import type { Block, Field, JobInputs, Part, WorkbookDefinition } from "./definition";
import { namedColumn, namedValue } from "./named";

/**
 * @param definition the template that the book was made from
 * @param book a workbook; a name that is gone gives nothing for its cells
 * @returns the filled inputs; a block's rows without the empty ones at its end
 */
export function jobInputsOf(definition: WorkbookDefinition, book: Book): JobInputs {
  const parts: readonly Part[] = definition.sheets.flatMap((sheet) => sheet.parts);
  const fields: Record<string, number | string> = {};
  const inputs = parts.flatMap((part): readonly Field[] => (part.kind === "fields" ? part.fields : []));
  for (const { name, input } of inputs) {
    const value = input && plain(namedValue(book, name));
    if (value !== undefined) fields[name] = value;
  }
  const blocks = parts.filter((part): part is Block => part.kind === "block");
  return {
    fields,
    blocks: Object.fromEntries(
      blocks.flatMap((block) => {
        const rows = rowsOf(block, book);
        return rows.length > 0 ? [[block.name, rows]] : [];
      }),
    ),
  };
}

function rowsOf(block: Block, book: Book): Record<string, number | string>[] {
  const rows: Record<string, number | string>[] = [];
  for (const { key, input } of block.columns) {
    if (!input) continue;
    // The first cell of the name lies in the thin row of the formulas, the last in the closing one.
    for (const [index, result] of namedColumn(book, `${block.name}_${key}`).slice(1, -1).entries()) {
      const value = plain(result);
      rows[index] ??= {};
      if (value !== undefined) rows[index][key] = value;
    }
  }
  while (rows.length > 0 && Object.keys(rows.at(-1)!).length === 0) rows.pop();
  return rows;
}

const plain = (result: BookResult | undefined): number | string | undefined =>
  typeof result === "number" || (typeof result === "string" && result !== "") ? result : undefined;
