/**
 * What a book says that the library's own document cannot hold: which template
 * it is, how it prints, the rules and prompts of its input cells. A plugin of
 * the library's keeps it, so that whatever rows come or go, by whatever road,
 * move all that it speaks of (`factRanges.ts`) as they move the library's own
 * ranges, undo works on it, and it is saved with the document.
 */
import { rangesOf, withRanges, type SheetFacts } from "./factRanges";
import type { GridLibrary } from "./library";

export interface BookFacts {
  readonly template: string;
  readonly templateVersion: string;
  readonly title: string;
  /** By the library's id of the sheet. */
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
    /** Range objects of the library's, so that it can move them: sheet id → one for each of its facts' ranges. */
    ranges: Record<string, any[]> = {};
    /** Another one after every change; undo brings the earlier one back. */
    state: object = {};
    private known: { readonly state: object; readonly sheets: Record<string, SheetFacts> } | undefined;

    adaptRanges({ applyChange }: any): void {
      const { history } = this as any;
      let changed = false;
      for (const [sheetId, ranges] of Object.entries(this.ranges)) {
        for (const [index, range] of ranges.entries()) {
          if (!range) continue;
          const change = applyChange(range);
          if (change.changeType === "NONE") continue;
          history.update("ranges", sheetId, index, change.changeType === "REMOVE" ? null : change.range);
          changed = true;
        }
      }
      if (changed) history.update("state", {});
    }

    /** Asked for every cell that is pasted, so it is put together once after each change. */
    getBookFacts(): BookFacts {
      const { getters } = this as any;
      if (this.known?.state !== this.state) {
        const sheets = Object.entries(this.facts.sheets).map(([sheetId, facts]) => {
          const now = this.ranges[sheetId]!.map((range) =>
            range ? getters.getRangeString(range, sheetId) : undefined,
          );
          return [sheetId, withRanges(facts, now)] as const;
        });
        this.known = { state: this.state, sheets: Object.fromEntries(sheets) };
      }
      const { sheets } = this.known!;
      const gone = Object.keys(sheets).some((sheetId) => !getters.tryGetSheet(sheetId));
      return {
        ...this.facts,
        sheets: gone
          ? Object.fromEntries(Object.entries(sheets).filter(([sheetId]) => getters.tryGetSheet(sheetId)))
          : sheets,
      };
    }

    import(data: any): void {
      this.facts = data[FACTS_KEY] ?? NO_FACTS;
      for (const [sheetId, facts] of Object.entries(this.facts.sheets)) {
        this.ranges[sheetId] = rangesOf(facts).map((range) =>
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
