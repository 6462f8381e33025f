/** The line under the bar: what the selected cell wants, or what is wrong with it. */
import { parseRange } from "../../../workbooks/address";
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
  const facts = (model.getters as GridModel["getters"] & { getBookFacts(): BookFacts }).getBookFacts();
  const validation = facts.sheets[place.sheetId]?.validations.find(({ range, prompt, promptTitle }) => {
    const zone = parseRange(range);
    return (
      (prompt !== undefined || promptTitle !== undefined) &&
      zone !== undefined &&
      zone.top <= place.row &&
      place.row <= zone.bottom &&
      zone.left <= place.col &&
      place.col <= zone.right
    );
  });
  if (!validation) return { kind: "none", text: "" };
  const { promptTitle, prompt } = validation;
  return { kind: "prompt", text: [promptTitle, prompt].filter(Boolean).join(": ") };
}
