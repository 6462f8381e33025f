/**
 * Filling by the corner of a selection. The library (19.3.7) brings looks, boxes, marks and rules along with the
 * values; on a guarded sheet the boxes have their own, so only values are filled in.
 */
import type { GridLibrary } from "../../grid/library";

interface Filled {
  readonly col: number;
  readonly row: number;
  readonly content?: string;
}

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */
/** Extends the library's plugin in its list. */
export function registerFillPlugin(library: GridLibrary): void {
  const plugins = library.registries.featurePluginRegistry;
  const OfLibrary = plugins.get("autofill") as any;

  class Autofill extends OfLibrary {
    private isGuarded(sheetId: string): boolean {
      return (this as any).getters.isGuardedSheet(sheetId);
    }

    autofillCell(sheetId: string, cell: Filled): void {
      if (!this.isGuarded(sheetId)) return super.autofillCell(sheetId, cell);
      const { col, row, content = "" } = cell;
      (this as any).dispatch("UPDATE_CELL", { sheetId, col, row, content });
      (this as any).dispatch("AUTOFILL_CELL", cell);
    }

    autofillMerge(sheetId: string, cell: Filled): void {
      if (!this.isGuarded(sheetId)) super.autofillMerge(sheetId, cell);
    }

    autofillBorders(sheetId: string, zones: object): void {
      if (!this.isGuarded(sheetId)) super.autofillBorders(sheetId, zones);
    }

    autofillConditionalFormats(sheetId: string, ranges: object): void {
      if (!this.isGuarded(sheetId)) super.autofillConditionalFormats(sheetId, ranges);
    }

    autofillDataValidations(sheetId: string, zones: object): void {
      if (!this.isGuarded(sheetId)) super.autofillDataValidations(sheetId, zones);
    }
  }
  plugins.replace("autofill", Autofill as never);
}
/* eslint-enable @typescript-eslint/no-explicit-any */
