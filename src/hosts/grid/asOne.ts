/** Several commands of a model as one: computed once, and one step to take back. */
import type { GridLibrary, GridModel } from "./library";

type Work = (dispatch: (type: string, payload: object) => void) => void;

const TYPE = "RIGSHEET_AS_ONE";

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */
export function registerAsOne(library: GridLibrary): void {
  class AsOnePlugin extends (library.UIPlugin as any) {
    static getters = [];
    static layers = [];

    handle(command: { readonly type: string; readonly work?: Work }): void {
      if (command.type === TYPE) command.work?.((type, payload) => (this as any).dispatch(type, payload));
    }
  }
  library.registries.featurePluginRegistry.add("rigsheet_as_one", AsOnePlugin as any);
}
/* eslint-enable @typescript-eslint/no-explicit-any */

/** What the work asks of the model stands as soon as it is asked for; formulas are computed when all is done. */
export const asOne = (model: GridModel, work: Work): void =>
  void model.dispatch(TYPE as never, { work } as never);
