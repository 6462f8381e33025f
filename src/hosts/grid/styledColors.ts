/**
 * Has the spreadsheet library (19.3.7) gather the colours that its colour picker
 * offers when a style may have changed, and not after every edit of a content:
 * it walks through every cell for them, an eighth of what an edit takes.
 */
import type { GridLibrary } from "./library";

type Command = Readonly<Record<string, unknown>>;

/** Extends the library's plugin in its list; prepareLibrary sees to it that this is done once. */
export function registerStyledColors(library: GridLibrary): void {
  const plugins = library.registries.coreViewsPluginRegistry;
  const Colors = plugins.get("custom_colors") as unknown as new (...args: unknown[]) => {
    handle(command: Command): void;
  };
  class StyledColors extends Colors {
    override handle(command: Command): void {
      if (command.type === "UPDATE_CELL" && !("style" in command)) return;
      super.handle(command);
    }
  }
  plugins.replace("custom_colors", StyledColors as never);
}
