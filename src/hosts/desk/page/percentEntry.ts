/**
 * Shares are typed as in Excel and as their hints say: 20%, 0.2 and 20 are all a fifth.
 *
 * The library (19.3.7) sets a percent sign behind the first digit that is typed into a cell of percents. So 20%
 * became 20%%, which is refused, and 0.2 became a fifth of one percent without a word. Here the sign comes when
 * the cell is left, and only behind a number of 1 or more.
 */
import type { GridLibrary } from "../../grid/library";

interface Composer {
  readonly editionMode: string;
  readonly currentContent: string;
  readonly currentEditedCell: object;
  readonly getters: { getEvaluatedCell(cell: object): { readonly format?: string } };
  setCurrentContent(content: string, selection?: { readonly start: number; readonly end: number }): void;
  startEdition(text?: string, selection?: object): void;
  stopEdition(direction?: string): void;
}

const NUMBER = /^\d+(?:\.\d*)?$|^\.\d+$/;

export function enterPercents(library: GridLibrary): void {
  const composer = library.stores.CellComposerStore.prototype as unknown as Composer;
  const { startEdition, stopEdition } = composer;
  composer.startEdition = function (text, selection) {
    startEdition.call(this, text, selection);
    if (text && NUMBER.test(text) && this.currentContent === `${text}%`)
      this.setCurrentContent(text, { start: text.length, end: text.length });
  };
  composer.stopEdition = function (direction) {
    const text = this.currentContent;
    if (this.editionMode !== "inactive" && NUMBER.test(text) && Number(text) >= 1) {
      const { format } = this.getters.getEvaluatedCell(this.currentEditedCell);
      if (format?.includes("%")) this.setCurrentContent(`${text}%`);
    }
    stopEdition.call(this, direction);
  };
}
