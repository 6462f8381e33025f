/**
 * Has the cells that a drop-down offers follow the rows above them and among them.
 *
 * The library (19.3.7) moves the cells under a rule, and the references in a rule's formulas, but not the
 * range of which a rule takes its choices, because that is written without an equals sign.
 */
import type { GridLibrary } from "./library";

interface Rule {
  readonly criterion: { readonly type: string; readonly values: readonly string[] };
}
interface RangeAdapters {
  adaptRangeString(sheetId: string, range: string): { readonly changeType: string; readonly range: string };
}
interface Validations {
  readonly rules: Readonly<Record<string, readonly Rule[]>>;
  readonly history: { update(...path: unknown[]): void };
  adaptRanges(adapters: RangeAdapters): void;
}

/** Extends the library's plugin in its list; prepareLibrary sees to it that this is done once. */
export function registerRuleRanges(library: GridLibrary): void {
  const plugins = library.registries.corePluginRegistry;
  const OfLibrary = plugins.get("dataValidation") as unknown as new (...args: unknown[]) => Validations;
  class DataValidation extends OfLibrary {
    override adaptRanges(adapters: RangeAdapters): void {
      // First: the library's own way may drop rules, and with them their places in the list.
      for (const [sheetId, rules] of Object.entries(this.rules)) {
        for (const [index, { criterion }] of rules.entries()) {
          if (criterion.type !== "isValueInRange") continue;
          const { changeType, range } = adapters.adaptRangeString(sheetId, criterion.values[0]!);
          if (changeType !== "NONE")
            this.history.update("rules", sheetId, index, "criterion", "values", 0, range);
        }
      }
      super.adaptRanges(adapters);
    }
  }
  plugins.replace("dataValidation", DataValidation as never);
}
