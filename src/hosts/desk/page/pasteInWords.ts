/** What a paste did beyond setting values, in words. */
import type { RoomForRows } from "./roomForRows";
import { inWords } from "../../../workbooks/survey/survey";

export interface NotTaken {
  /** The cell's address. */
  readonly at: string;
  /** As it was pasted. */
  readonly text: string;
  /** Why, and what to type instead. */
  readonly sentence: string;
}

/** More are counted. */
const MOST_NAMED = 8;

/** @returns undefined where all names are listed */
export function notListed(cells: readonly Omit<NotTaken, "sentence">[]): string | undefined {
  if (cells.length === 0) return undefined;
  return `Taken, but on no list that the cell offers: ${named(cells)}. Correct the name, or add it to its list.`;
}

/** @returns undefined where all were taken */
export function notTaken(cells: readonly NotTaken[]): string | undefined {
  const [first] = cells;
  if (!first) return undefined;
  return `Not taken, and left as they were: ${named(cells)}. ${first.sentence}`;
}

function named(cells: readonly Omit<NotTaken, "sentence">[]): string {
  const first = cells.slice(0, MOST_NAMED).map(({ at, text }) => `${at} “${text}”`);
  const more = cells.length > MOST_NAMED ? ` and ${cells.length - MOST_NAMED} more` : "";
  return `${first.join(", ")}${more}`;
}

export const rowsAdded = ({ block, quantity, additions }: RoomForRows): string =>
  `${inWords(quantity, "row")} ${quantity === 1 ? "was" : "were"} added to ${block.heading}${additions.length > 1 ? ", and to the lists that stand for the same rows" : ""}. Undo takes all of it back in one step.`;
