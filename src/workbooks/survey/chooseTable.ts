/** Which table of the file is the survey: the sheet that a person chose, or the one whose head row is the best. */
import { isBlank, textOf, type ImportedCell, type ImportedLine, type ImportedTable } from "../imported/table";
import { findHead, headScore, type Head } from "./layout";
import { sideBySide } from "./sideBySide";
import type { SurveyChoices } from "./survey";

const SEPARATOR = /^sep=/i;

export interface FoundTable {
  readonly table: ImportedTable;
  readonly filled: readonly ImportedLine[];
  readonly head: Head;
}

/** The chosen sheet; else the one with the best head row, the first of several. */
export function chooseTable(tables: readonly ImportedTable[], { sheet, head }: SurveyChoices): FoundTable {
  const judged = tables.map((table): FoundTable & { readonly score: number } => {
    const filled = table.lines.filter(
      (line) => !isBlank(line) && !(line.line === 1 && isSeparator(line.cells)),
    );
    const found = findHead(filled, table.sheet === sheet || sheet === undefined ? head : undefined);
    return { table, ...sideBySide(filled, found), score: headScore(found) };
  });
  const named = judged.find(({ table }) => table.sheet !== undefined && table.sheet === sheet);
  const best = Math.max(...judged.map(({ score }) => score));
  return named ?? judged.find(({ score }) => score === best)!;
}

/** As some workbook programs begin a text file. */
const isSeparator = ([first, ...others]: readonly ImportedCell[]): boolean =>
  SEPARATOR.test(textOf(first)) && others.every((cell) => textOf(cell) === "");
