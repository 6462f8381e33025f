/**
 * What a book says that the library's own document cannot hold: which template
 * it is, how it prints, the rules and prompts of its input cells. A plugin of
 * the library's keeps it, so that inserted rows stretch the ranges, undo works
 * on them, and they are saved with the document.
 */
import type { BookPrint, BookValidation } from "../../workbooks/book";
import type { GridLibrary } from "./library";

/** Kept for each sheet by the library's id of the sheet. */
export interface SheetFacts {
  readonly validations: readonly BookValidation[];
  readonly print?: BookPrint;
  readonly protected: boolean;
  readonly notes: Readonly<Record<string, string>>;
}

export interface BookFacts {
  readonly template: string;
  readonly templateVersion: string;
  readonly title: string;
  readonly sheets: Readonly<Record<string, SheetFacts>>;
}

export const NO_FACTS: BookFacts = { template: "", templateVersion: "", title: "", sheets: {} };

/** The key under which the facts lie in the library's document. */
export const FACTS_KEY = "rigsheet";

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */

/** Teaches the library to keep book facts; prepareLibrary sees to it that this is done once. */
export function registerBookFacts(library: GridLibrary): void {
  class BookFactsPlugin extends (library.CorePlugin as any) {
    static getters = ["getBookFacts"];
    facts: BookFacts = NO_FACTS;
    /** Range objects of the library's, so that it can move them: sheet id → one per validation. */
    ranges: Record<string, any[]> = {};

    adaptRanges({ applyChange }: any): void {
      for (const [sheetId, ranges] of Object.entries(this.ranges)) {
        for (const [index, range] of ranges.entries()) {
          if (!range) continue;
          const change = applyChange(range);
          if (change.changeType === "REMOVE") (this as any).history.update("ranges", sheetId, index, null);
          else if (change.changeType !== "NONE") {
            (this as any).history.update("ranges", sheetId, index, change.range);
          }
        }
      }
    }

    getBookFacts(): BookFacts {
      const getters = (this as any).getters;
      const sheets = Object.fromEntries(
        Object.entries(this.facts.sheets)
          .filter(([sheetId]) => getters.tryGetSheet(sheetId))
          .map(([sheetId, facts]) => {
            const validations = facts.validations.flatMap((validation, index) => {
              const range = this.ranges[sheetId]?.[index];
              return range ? [{ ...validation, range: getters.getRangeString(range, sheetId) }] : [];
            });
            return [sheetId, { ...facts, validations }];
          }),
      );
      return { ...this.facts, sheets };
    }

    import(data: any): void {
      this.facts = data[FACTS_KEY] ?? NO_FACTS;
      for (const [sheetId, facts] of Object.entries(this.facts.sheets)) {
        this.ranges[sheetId] = facts.validations.map(({ range }) =>
          (this as any).getters.getRangeFromSheetXC(sheetId, range),
        );
      }
    }

    export(data: any): void {
      data[FACTS_KEY] = this.getBookFacts();
    }
  }
  library.registries.corePluginRegistry.add("rigsheet_book_facts", BookFactsPlugin as any);
}
/* eslint-enable @typescript-eslint/no-explicit-any */
