/** The line under the bar: what the selected cell wants, or what is wrong with it. */
import { parseRange } from "../../../workbooks/address";
import type { BookValidation } from "../../../workbooks/book";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridModel } from "../../grid/library";
import type { GridPosition } from "./libraryTypes";

export interface CellWords {
  readonly kind: "error" | "prompt" | "none";
  readonly text: string;
}

export function wordsFor(model: GridModel, place: GridPosition): CellWords {
  const { message } = model.getters.getEvaluatedCell(place) as { message?: string };
  if (message) return { kind: "error", text: message };
  const validation = validationAt(model, place);
  if (!validation) return { kind: "none", text: "" };
  const { promptTitle, prompt } = validation;
  return { kind: "prompt", text: [promptTitle, prompt].filter(Boolean).join(": ") };
}

/**
 * The workbook's own words when a value is refused, where the library has only the bare rule; none where the
 * desk has done, or said, what is needed in the library's place.
 */
export function refusalFor(model: GridModel, place: GridPosition, text: string): string | undefined {
  const { getters } = model as {
    getters: GridModel["getters"] & { isGuardedSheet?(sheetId: string): boolean };
  };
  if (text.startsWith("Cannot sort") && getters.isGuardedSheet?.(place.sheetId)) return undefined;
  if (!text.includes("violates the data validation rule")) return text;
  const refusal = validationAt(model, place)?.refusal;
  return refusal ? `Not taken. ${refusal}` : text;
}

/** The rule of an input cell; a cell that is no input has none. */
export function validationAt(
  { getters }: Pick<GridModel, "getters">,
  place: GridPosition,
): BookValidation | undefined {
  const facts = (getters as GridModel["getters"] & { getBookFacts(): BookFacts }).getBookFacts();
  return facts.sheets[place.sheetId]?.validations.find(({ range }) => {
    const zone = parseRange(range);
    return (
      zone !== undefined &&
      zone.top <= place.row &&
      place.row <= zone.bottom &&
      zone.left <= place.col &&
      place.col <= zone.right
    );
  });
}
