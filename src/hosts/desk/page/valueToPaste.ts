import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import { validationAt } from "./cellLine";
import type { GridPosition } from "./libraryTypes";

/** A cell as the library copies it; one that comes from outside has no place of its own. */
export interface CopiedCell {
  readonly content: string;
  readonly evaluatedCell: {
    readonly value?: string | number | boolean | null;
    readonly formattedValue?: string;
    readonly type?: string;
  };
  readonly position?: GridPosition;
  readonly compiledFormula?: { readonly hasDependencies?: boolean };
}

/** What is to be entered: a text that is still to be read, or with it a content that the grid takes as it is. */
export type ToPaste = { readonly text: string } | { readonly text: string; readonly content: string };

type Getters = GridModel["getters"] & {
  getTranslatedCellFormula(sheetId: string, columns: number, rows: number, formula: unknown): string;
};

/**
 * @param place where it goes
 * @param asValue a formula gives its result
 */
export function valueToPaste(
  getters: GridModel["getters"],
  place: GridPosition,
  { content, evaluatedCell, position, compiledFormula }: CopiedCell,
  asValue: boolean,
): ToPaste {
  if (!position) return { text: content };
  if (compiledFormula && !asValue) {
    const translated = (getters as Getters).getTranslatedCellFormula(
      place.sheetId,
      place.col - position.col,
      place.row - position.row,
      compiledFormula,
    );
    return { text: translated, content: translated };
  }
  const { value = null, formattedValue = "", type } = evaluatedCell;
  if (value === null || value === "") return { text: "", content: "" };
  if (type === "error") return { text: String(value) };
  if (typeof value !== "number") return { text: String(value) };
  const rule = validationAt({ getters }, place)?.rule.kind;
  // A figure into a column of names is the text that was seen; anywhere else it is the figure, whatever its format.
  if (rule === "text" || rule === "named" || rule === "choice")
    return { text: formattedValue, content: contentOf({ value: formattedValue }) ?? "" };
  return { text: formattedValue, content: String(value) };
}
