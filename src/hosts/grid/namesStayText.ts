/**
 * A name stays text by whatever road it comes into its column: by find and replace, by filling down, by a paste
 * inside the grid, and when a journal of an earlier visit is played again.
 *
 * The library (19.3.7) takes any content apart by itself: `3-16` is a date to it, `007` a number, `TRUE` a truth
 * value. Here the apostrophe that it understands is put in front. A content that begins with an equals sign is
 * left: it may be a formula that is moved, and only who typed or pasted it knows better.
 */
import type { Zone } from "../../formula/address";
import { inputZone } from "../../workbooks/book";
import { holdsText } from "../../workbooks/typed/holdsText";
import type { BookFacts } from "./bookFacts";
import type { SheetFacts } from "./factRanges";
import type { GridLibrary } from "./library";
import { contentOf } from "./toDocument";

interface Command {
  readonly type: string;
  readonly sheetId?: string;
  readonly row?: number;
  readonly col?: number;
  readonly content?: unknown;
}

/** Extends the library's plugin in its list; prepareLibrary sees to it that this is done once. */
export function registerNamesStayText(library: GridLibrary): void {
  const plugins = library.registries.corePluginRegistry;
  const Cells = plugins.get("cell") as unknown as new (...args: unknown[]) => {
    readonly getters: { getBookFacts(): BookFacts };
    handle(command: Command): void;
  };
  class NamesStayText extends Cells {
    override handle(command: Command): void {
      const { type, content } = command;
      const mayTurn = type === "UPDATE_CELL" && typeof content === "string" && /^[^=']/.test(content);
      const stays = mayTurn && holdsName(this.getters.getBookFacts(), command);
      super.handle(stays ? { ...command, content: contentOf({ value: content }) } : command);
    }
  }
  plugins.replace("cell", NamesStayText as never);
}

/** Where a sheet's names lie, put together once for each state of its facts. */
const zones = new WeakMap<SheetFacts, readonly Zone[]>();

function holdsName({ template, sheets }: BookFacts, { sheetId = "", row = -1, col = -1 }: Command): boolean {
  const facts = template === "" ? undefined : sheets[sheetId];
  if (!facts) return false;
  let held = zones.get(facts);
  if (!held) {
    held = facts.validations.flatMap((one) => (holdsText(one.rule) ? (inputZone(one) ?? []) : []));
    zones.set(facts, held);
  }
  return held.some(
    ({ top, left, bottom, right }) => top <= row && row <= bottom && left <= col && col <= right,
  );
}
