/** Rows of a block by what they are known by, in the standards and in a job. */
import type { Block, Column } from "../definition";

export type Row = Readonly<Record<string, number | string>>;

/** A band plan has a row for each band; all else is known by its first column. */
const KEYS: Readonly<Record<string, readonly string[]>> = { plans: ["plan", "band"] };
/** Lists of sentences: a row has nothing but its words. */
export const isOfSentences = ({ columns }: Block): boolean => columns.length === 1;

export const filledColumns = ({ columns }: Block): Column[] => columns.filter(({ input }) => input);

export const keyColumns = (block: Block): readonly string[] => KEYS[block.name] ?? [block.columns[0]!.key];

/** @returns the rows that have a name, each with it and with its place in the block, counted from 0 */
export function keyed(block: Block, rows: readonly Row[] = []): [key: string, row: Row, index: number][] {
  const keys = keyColumns(block);
  return rows.flatMap((row, index) => {
    const words = keys.map((key) => String(row[key] ?? "").trim());
    return words[0] === "" ? [] : [[words.filter((word) => word !== "").join(", "), row, index]];
  });
}
