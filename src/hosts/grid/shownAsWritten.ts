/**
 * Has the spreadsheet library (19.3.7) show and take figures as the people of the open workbook write them: its
 * field says how, and undo of that field is all the undo there is. The library's own locale is a state of its
 * document, which formulas are computed in; here nothing that is stored or computed changes with the choice, so that
 * a file holds the same whatever the desk shows.
 */
import { WRITING_FIELD, writingOf, type ShownWriting } from "../../workbooks/typed/writing";
import { formattedAs, localeOf, type GridLocale } from "./asWritten";
import type { GridLibrary } from "./library";

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
interface Evaluated {
  readonly value: number | string | boolean | null;
  readonly format?: string;
  readonly formattedValue: string;
}
/** The getters of a model, which are one object for all that is shown. */
interface Getters {
  getLocale: () => GridLocale;
  getEvaluatedCell(position: Position): Evaluated;
  getNamedRange(
    name: string,
  ):
    | { readonly range: { readonly sheetId: string; readonly zone: { top: number; left: number } } }
    | undefined;
}

/** The parts of the library's plugin that are used here. */
interface Evaluation {
  readonly getters: Getters;
  readonly evaluator: { getters: Getters };
  handle(command: object): void;
  finalize(): void;
  getEvaluatedCell(position: Position): Evaluated;
}
interface CellTexts {
  readonly getters: Getters;
  getCellText(
    position: Position,
    how?: { readonly showFormula?: boolean; readonly availableWidth?: number },
  ): string;
}

/** Fills the width of its cell with a sign, so that its text depends on the width. */
const FILLS = "*";

/** Extends the library's plugins in their lists; teachGrid sees to it that this is done once. */
export function registerShownAsWritten(library: GridLibrary): void {
  const views = library.registries.coreViewsPluginRegistry;
  const Whole = views.get("evaluation") as unknown as new (...args: unknown[]) => Evaluation;
  class EvaluationAsWritten extends Whole {
    /** Of the field; undefined until it is looked at anew. */
    private known: { readonly writing: ShownWriting | undefined } | undefined;

    constructor(...args: unknown[]) {
      super(...args);
      const { getters, evaluator } = this;
      const { getLocale } = getters;
      // What is computed knows the document's own locale only.
      evaluator.getters = Object.assign(Object.create(getters) as Getters, { getLocale });
      getters.getLocale = () => {
        const { writing } = this;
        return writing ? localeOf(writing) : getLocale();
      };
    }

    override handle(command: object): void {
      super.handle(command);
      this.known = undefined;
    }

    override finalize(): void {
      super.finalize();
      this.known = undefined;
    }

    override getEvaluatedCell(position: Position): Evaluated {
      const cell = super.getEvaluatedCell(position);
      const { writing } = this;
      if (!writing || typeof cell.value !== "number") return cell;
      // A long job is read whole to be saved, by its values alone.
      return Object.defineProperty({ ...cell }, "formattedValue", {
        get: () => formattedAs(library, cell.value, cell.format, writing),
        enumerable: true,
      });
    }

    private get writing(): ShownWriting | undefined {
      this.known ??= { writing: this.chosen() };
      return this.known.writing;
    }

    private chosen(): ShownWriting | undefined {
      const range = this.getters.getNamedRange(WRITING_FIELD)?.range;
      if (!range) return undefined;
      const { sheetId, zone } = range;
      return writingOf(super.getEvaluatedCell({ sheetId, row: zone.top, col: zone.left }).value);
    }
  }
  views.replace("evaluation", EvaluationAsWritten as never);

  const features = library.registries.featurePluginRegistry;
  const Texts = features.get("ui_sheet") as unknown as new (...args: unknown[]) => CellTexts;
  class TextsAsWritten extends Texts {
    override getCellText(position: Position, how?: Parameters<CellTexts["getCellText"]>[1]): string {
      const { value, format, formattedValue } = this.getters.getEvaluatedCell(position);
      return how?.showFormula || typeof value !== "number" || format?.includes(FILLS)
        ? super.getCellText(position, how)
        : formattedValue;
    }
  }
  features.replace("ui_sheet", TextsAsWritten as never);
}
