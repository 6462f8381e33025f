/** What a text that is pasted from outside becomes in a cell: the seam at which a reader of typed values stands. */
import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import { validationAt } from "./cellLine";
import type { GridPosition } from "./libraryTypes";

/** As the grid's `UPDATE_CELL` takes it; or a sentence that says why not, and what to type. */
export type Entered = { readonly content: string } | { readonly refused: string };

export function entered(model: Pick<GridModel, "getters">, place: GridPosition, text: string): Entered {
  const rule = validationAt(model, place)?.rule.kind;
  if (rule === "text" || rule === "named" || rule === "choice")
    return { content: contentOf({ value: text }) ?? "" };
  if (text.startsWith("="))
    return { refused: "A formula is typed, not pasted: type it, or paste what it gives." };
  return { content: text };
}
