/** Lines of a text that have more cells than there are heads, because a comma of their own parted them. */
import { textOf, type ImportedLine } from "../imported/table";
import type { Head, Layout } from "./layout";
import { matchName, type SurveyLists } from "./partNames";

/**
 * Among commas a decimal comma parts its number. It is put together again where that alone makes the line too long,
 * and a name behind it then stands in the column of its list.
 */
export function withDecimalComma(
  line: ImportedLine,
  head: Head,
  source: string,
  layout: Layout,
  lists: SurveyLists,
): ImportedLine | undefined {
  const run = layout.columns.get("run");
  if (run === undefined || head.index < 0 || !source.startsWith("text, commas")) return undefined;
  const [whole, behind] = [textOf(line.cells[run]), textOf(line.cells[run + 1])];
  const isOneTooMany = line.cells.length === head.texts.length + 1;
  if (!isOneTooMany || !/^\d{1,4}$/.test(whole) || !/^\d{1,2}(?: ?m)?$/.test(behind)) return undefined;
  const cells = line.cells.toSpliced(run, 2, `${whole},${behind}`);
  const fits = (["plate", "cable", "receiver"] as const).some((key) => {
    const column = layout.columns.get(key) ?? -1;
    const isIn = (text: string): boolean => text !== "" && "name" in matchName(key, text, lists[key] ?? []);
    return column > run && isIn(textOf(cells[column])) && !isIn(textOf(line.cells[column]));
  });
  return fits ? { ...line, cells } : undefined;
}

/**
 * A text that holds a comma and is not in quotes has more cells than heads. Behind a last column of remarks that is
 * plain; anywhere else the cells behind it are in the wrong columns.
 * @returns what belongs to the remark, or a sentence
 */
export function widthTrouble(
  line: ImportedLine,
  head: Head,
  source: string,
  layout: Layout,
): string | string[] | undefined {
  if (head.index < 0 || !source.startsWith("text") || line.part !== undefined) return undefined;
  const width = head.texts.length;
  const last = line.cells.findLastIndex((cell) => textOf(cell) !== "") + 1;
  if (last <= width) return undefined;
  const run = layout.columns.get("run");
  const isSplit = run !== undefined && /^\d{1,2}(?: ?[a-z]+)?$/i.test(textOf(line.cells[run + 1]));
  if (layout.notes.includes(width - 1) && !isSplit) return line.cells.slice(width, last).map(textOf);
  if (isSplit)
    return `The line has ${last} cells where the head row has ${width}: “${textOf(line.cells[run])}” and “${textOf(line.cells[run + 1])}” may be one number. Put text that holds a comma in quotes.`;
  return `The line has ${last} cells where the head row has ${width}. Put text that holds a comma in quotes.`;
}
