/**
 * Has the spreadsheet library (19.3.7) ask conditional formats of the cells that are drawn: after every edit it
 * asks them of all cells of the sheet, of which a window shows a few rows. With ten thousand outlets that was more
 * than all of the computing.
 */
import type { GridLibrary, GridModel } from "./library";

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
interface Zone {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}
interface Rule {
  readonly type: string;
  readonly operator: string;
  readonly values: readonly string[];
  readonly style: object;
}
interface Getters {
  getConditionalFormats(sheetId: string): { readonly ranges: readonly string[]; readonly rule: Rule }[];
  getRangeFromSheetXC(sheetId: string, range: string): { readonly zone: Zone };
  getTranslatedCellFormula(sheetId: string, columns: number, rows: number, compiled: unknown): string;
}

/** The parts of the library's plugin that are used here. */
interface Formats {
  readonly getters: Getters;
  finalize(): void;
  getCellConditionalFormatStyle(position: Position): object | undefined;
  getRuleResultForTarget(position: Position, rule: Rule): boolean;
}

/** A rule over one of its ranges. */
interface Applied {
  readonly rule: Rule;
  readonly zone: Zone;
  /** For each of its values; undefined for one that is no formula. */
  readonly formulas: readonly unknown[];
}

/** These look at one cell alone; the others (the highest ten, a scale of colours) at all of their range. */
const OF_ONE_CELL = [
  ...["isEqual", "isNotEqual", "isGreaterThan", "isGreaterOrEqualTo", "isLessThan", "isLessOrEqualTo"],
  ...["isBetween", "isNotBetween", "containsText", "notContainsText", "beginsWithText", "endsWithText"],
  ...["isEmpty", "isNotEmpty", "customFormula"],
];

/** Extends the library's plugin in its list; prepareLibrary sees to it that this is done once. */
export function registerShownFormats(library: GridLibrary): void {
  const plugins = library.registries.coreViewsPluginRegistry;
  const Whole = plugins.get("evaluation_cf") as unknown as new (...args: unknown[]) => Formats;
  class ShownFormats extends Whole {
    /** By sheet; undefined where a rule looks at more than one cell. */
    private readonly known = new Map<string, readonly Applied[] | undefined>();

    override finalize(): void {
      this.known.clear();
      super.finalize();
    }

    override getCellConditionalFormatStyle(position: Position): object | undefined {
      const { sheetId, col, row } = position;
      if (!this.known.has(sheetId)) this.known.set(sheetId, this.appliedOn(sheetId));
      const all = this.known.get(sheetId);
      if (!all) return super.getCellConditionalFormatStyle(position);
      let style: object | undefined;
      for (const { rule, zone, formulas } of all) {
        if (row < zone.top || row > zone.bottom || col < zone.left || col > zone.right) continue;
        const values = rule.values.map((value, index) =>
          formulas[index] === undefined
            ? value
            : this.getters.getTranslatedCellFormula(
                sheetId,
                col - zone.left,
                row - zone.top,
                formulas[index],
              ),
        );
        if (this.getRuleResultForTarget(position, { ...rule, values })) style = { ...style, ...rule.style };
      }
      return style;
    }

    /** In the library's order: of two rules the first has the last word. */
    private appliedOn(sheetId: string): readonly Applied[] | undefined {
      const { getters } = this;
      const formats = getters.getConditionalFormats(sheetId).reverse();
      if (formats.some(({ rule }) => rule.type !== "CellIsRule" || !OF_ONE_CELL.includes(rule.operator)))
        return undefined;
      return formats.flatMap(({ rule, ranges }) => {
        const formulas = rule.values.map((value) =>
          value.startsWith("=")
            ? library.CompiledFormula.Compile(value, sheetId, getters as never as GridModel["getters"])
            : undefined,
        );
        return ranges.map((range) => ({
          rule,
          zone: getters.getRangeFromSheetXC(sheetId, range).zone,
          formulas,
        }));
      });
    }
  }
  plugins.replace("evaluation_cf", ShownFormats as never);
}
