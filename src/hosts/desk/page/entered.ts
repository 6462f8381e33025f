/** What a text that is pasted from outside becomes in a cell: as when it is typed, but that no formula comes along. */
import type { GridModel } from "../../grid/library";
import type { GridPosition } from "./libraryTypes";
import { typedContent, type TypedContent } from "./typedCell";

export function entered(model: Pick<GridModel, "getters">, place: GridPosition, text: string): TypedContent {
  if (text === "") return { content: "" };
  const typed = typedContent(model as GridModel, place, text);
  if (typed) return typed;
  if (text.startsWith("="))
    return { refused: "A formula is typed, not pasted: type it, or paste what it gives." };
  return { content: text };
}
