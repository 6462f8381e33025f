/**
 * Makes the spreadsheet library compute formulas over names right.
 *
 * The library (19.3) learns that a formula depends on a named range only while
 * it computes that formula. On the first computation of a document, and after
 * each command that makes it forget its dependencies, a formula can read a
 * column before the column's own formula has spilled into it, and is not
 * computed again afterwards: its result stays blank. A second computation of
 * everything knows all dependencies and comes out right.
 */
import type { GridLibrary, GridModel } from "./library";

const taught = new WeakSet<object>();

/** Teaches the library to notice when its dependencies are forgotten; doing it twice changes nothing. */
export function registerSecondPass(library: GridLibrary): void {
  if (taught.has(library)) return;
  taught.add(library);

  class SecondPassPlugin extends library.UIPlugin {
    static override getters = ["takeSecondPass"] as const;
    private due = true;

    override handle({ type }: { type: string }): void {
      const forgets: ReadonlySet<string> = library.invalidateEvaluationCommands;
      if (type === "START" || type === "MOVE_RANGES" || forgets.has(type)) this.due = true;
    }

    /** Whether a second pass is due; asking takes it off the list. */
    takeSecondPass(): boolean {
      const { due } = this;
      this.due = false;
      return due;
    }
  }
  library.registries.featurePluginRegistry.add("rigsheet_second_pass", SecondPassPlugin as never);
}

/** Computes a new model a second time, and again after each command that asks for it. */
export function keepComputed(model: GridModel): void {
  const getters = model.getters as GridModel["getters"] & { takeSecondPass: () => boolean };
  const computeIfDue = (): void => {
    if (getters.takeSecondPass()) model.dispatch("EVALUATE_CELLS");
  };
  model.on("update", keepComputed, computeIfDue);
  computeIfDue();
}
