/** What stands in the cell editor and has not been entered when the page goes away. */
import { address } from "../../../formula/address";
import type { GridModel } from "../../grid/library";

export interface UnfinishedEntry {
  readonly job: string;
  readonly sheet: string;
  readonly cell: string;
  readonly text: string;
}

const KEY = "rigsheet.unfinished";

/** The library's editors, in the cell and in the bar above the grid, are always there; the one in use is marked. */
const editor = (): Element | null => document.querySelector("#grid .o-composer.active");

export const isEditing = (): boolean => editor() !== null;

/**
 * @param begun what the editor showed first
 * @returns undefined where no cell is being typed into, or nothing was changed in it
 */
export function unfinishedEntry(
  { getters }: GridModel,
  job: string,
  begun: string | undefined,
): UnfinishedEntry | undefined {
  const text = editor()?.textContent?.trim();
  if (text === undefined) return undefined;
  const place = getters.getActivePosition();
  // A long formula is shown in several lines, of which the page's text knows nothing.
  if (begun !== undefined && text === begun.replace(/[\n\t]/g, "").trim()) return undefined;
  return {
    job,
    sheet: getters.getSheetName(place.sheetId),
    cell: address(place.row, place.col),
    text,
  };
}

/** A browser without storage, or with it full, keeps nothing: it has asked before. */
export function keepUnfinished(entry: UnfinishedEntry | undefined): void {
  if (!entry) return;
  try {
    localStorage.setItem(KEY, JSON.stringify(entry));
  } catch {
    // Nothing can be shown any more.
  }
}

/** @param when for instance "the page was last closed" */
export const notEntered = (when: string, { job, sheet, cell, text }: UnfinishedEntry): string =>
  `When ${when}, “${text}” stood in the editor of ${sheet} ${cell} (${job}) and was not entered. Type it again if it is still wanted.`;

/** @returns a sentence on what an earlier visit left in the editor, once */
export function toldOfUnfinished(): string | undefined {
  try {
    const kept = localStorage.getItem(KEY);
    if (kept === null) return undefined;
    localStorage.removeItem(KEY);
    return notEntered("the page was last closed", JSON.parse(kept) as UnfinishedEntry);
  } catch {
    return undefined;
  }
}
