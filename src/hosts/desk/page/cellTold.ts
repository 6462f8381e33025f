/** The selected cell in a sentence, for whoever does not see the grid: its cells are a drawing. */
import { address, rangeOf } from "../../../formula/address";
import { wordsIn, type SpokenOf } from "../../../review/sheetWords";
import type { BookResult } from "../../../workbooks/book";
import type { WorkbookDefinition } from "../../../workbooks/definition";
import { setText } from "../../../pane/dom";
import type { GridModel } from "../../grid/library";
import { wordsFor } from "./cellLine";
import { make } from "./dom";
import type { GridPosition } from "./libraryTypes";

/** Whoever goes on by the arrow keys is told of the cell where they stop. */
const SETTLED_MS = 300;

/** Announces the selected cell, to be heard and not seen. */
export class CellTold {
  readonly element = make("p", { className: "desk-unseen", role: "status" });
  private timer: ReturnType<typeof setTimeout> | undefined;

  tell(sentence: () => string): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => setText(this.element, sentence()), SETTLED_MS);
  }
}

/** "Run of 12-1 (Rooms H8): 23.5. To fill in. Run: how long the cable is. Unit: m or ft." */
export function cellInWords(
  model: GridModel,
  place: GridPosition,
  definition: WorkbookDefinition | undefined,
): string {
  const { getters } = model;
  const sheet = getters.getSheetName(place.sheetId);
  const at = address(place.row, place.col);
  const { kind, text } = wordsFor(model, place);
  const shown = getters.getEvaluatedCell(place).formattedValue;
  const words = wordsIn(spokenOnGrid(model, definition), sheet)(at, undefined) ?? `${sheet} ${at}`;
  const asked = kind === "none" ? "" : kind === "prompt" ? ` To fill in. ${text}` : ` ${text}`;
  return `${words}: ${shown === "" ? "blank" : shown}.${asked}`;
}

function spokenOnGrid({ getters }: GridModel, definition: WorkbookDefinition | undefined): SpokenOf {
  return {
    names: getters.getNamedRanges().map(({ name, range }) => ({
      name,
      sheet: getters.getSheetName(range.sheetId),
      range: rangeOf(range.zone),
    })),
    sheets: getters.getSheetIds().map((id) => getters.getSheetName(id)),
    definition,
    valueAt: (sheet, { row, column }) => {
      const sheetId = getters.getSheetIdByName(sheet);
      const value = sheetId && getters.getEvaluatedCell({ sheetId, row, col: column }).value;
      return (value ?? undefined) as BookResult | undefined;
    },
  };
}
