/** A site survey out of a file: text with commas, semicolons or tabs, or a workbook. */
import { isBlank, type ImportedTable } from "../../workbooks/imported/table";
import { findHead } from "../../workbooks/survey/heads";
import { readSurvey, type Survey } from "../../workbooks/survey/readSurvey";
import { writingOf } from "../../workbooks/typed/writing";
import { stop, troubles } from "./fileTrouble";
import { readTables } from "./readTables";

/**
 * @param unit of the workbook's lengths
 * @param writing how the workbook's people write numbers: a locale's tag, or the words of the workbook's own field
 * @returns what was understood; a file that is no survey at all rejects with a FileTrouble
 */
export async function readSurveyFile(bytes: Uint8Array, unit: "m" | "ft", writing?: string): Promise<Survey> {
  const table = best(await readTables(bytes));
  if (table.open !== undefined) stop(troubles.surveyQuoteOpen(table.open));
  return readSurvey(table, unit, writingOf(writing));
}

/** The first with a head row that fits; else the one that comes nearest to it. */
function best(tables: readonly ImportedTable[]): ImportedTable {
  const judged = tables.map((table) => {
    const head = findHead(table.lines.filter((line) => !isBlank(line)));
    return { table, fits: head?.fits, heads: head?.columns.size ?? 0, width: head?.line.cells.length ?? 0 };
  });
  const nearest = [...judged].sort((a, b) => b.heads - a.heads || b.width - a.width)[0]!;
  return (judged.find(({ fits }) => fits) ?? nearest).table;
}
