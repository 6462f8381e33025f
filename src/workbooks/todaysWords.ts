/** Words that a person chose or copied from an earlier version's sheets, as today's sheets have them. */
import type { JobInputs } from "./definition";
import { onpurpose } from "./multiRoom/names/terms";
import { site } from "./multiRoom/names/site";
import { OF, type NamedColumn } from "./names";
import { questions } from "./quoteReview/names";

interface Renamed {
  readonly block: string;
  readonly column: NamedColumn;
  readonly was: string;
  readonly is: string;
}

const RENAMED: readonly Renamed[] = [
  // The list of zeros calls a figure by its label.
  {
    block: onpurpose[OF].name,
    column: onpurpose.what,
    was: "Lengths may be off by",
    is: site.run_tolerance.words.label,
  },
  { block: questions[OF].name, column: questions.answer, was: "not here", is: "not applicable" },
];

const isWord = (value: unknown, word: string): boolean =>
  typeof value === "string" && value.trim().toLowerCase() === word.toLowerCase();

/** @param name of the column in which the value stands in a workbook of an earlier version */
export const todaysWord = <Value>(name: string, value: Value): Value | string =>
  RENAMED.find(({ column, was }) => column.name === name && isWord(value, was))?.is ?? value;

/** @param inputs of a workbook of any version */
export function inTodaysWords(inputs: JobInputs): JobInputs {
  const blocks = { ...inputs.blocks };
  for (const { block, column } of RENAMED) {
    const rows = blocks[block];
    if (!rows) continue;
    blocks[block] = rows.map((row) => {
      const value = row[column.key];
      return value === undefined ? row : { ...row, [column.key]: todaysWord(column.name, value) };
    });
  }
  return { ...inputs, blocks };
}
