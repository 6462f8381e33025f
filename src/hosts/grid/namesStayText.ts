/**
 * A name stays text by whatever road it comes into its column: by find and replace, by filling down, by a paste
 * inside the grid, and when a journal of an earlier visit is played again.
 *
 * The library (19.3.7) takes any content apart by itself: `3-16` is a date to it, `007` a number, `TRUE` a truth
 * value. Here the apostrophe that it understands is put in front. A content that begins with an equals sign is
 * left: it may be a formula that is moved, and only who typed or pasted it knows better.
 */
import { contentOf } from "./toDocument";
import type { GridLibrary } from "./library";

interface Command {
  readonly type: string;
  readonly content?: unknown;
}

/** Extends the library's plugin in its list; prepareLibrary sees to it that this is done once. */
export function registerNamesStayText(library: GridLibrary): void {
  const plugins = library.registries.corePluginRegistry;
  const Cells = plugins.get("cell") as unknown as new (...args: unknown[]) => {
    readonly getters: { holdsName(position: object): boolean };
    handle(command: Command): void;
  };
  class NamesStayText extends Cells {
    override handle(command: Command): void {
      const { type, content } = command;
      const isName =
        type === "UPDATE_CELL" &&
        typeof content === "string" &&
        content !== "" &&
        !/^[=']/.test(content) &&
        this.getters.holdsName(command);
      super.handle(isName ? { ...command, content: contentOf({ value: content }) } : command);
    }
  }
  plugins.replace("cell", NamesStayText as never);
}
