/**
 * Typing into a cell. What is typed goes through the reader of typed values before the grid sees it; what is
 * refused stays in the editor, as it was typed, with the sentence that says why and what to type instead.
 *
 * The library (19.3.7) reads what is typed by itself, and lets go of a text that breaks a rule. Its editor is one
 * store, used by the cell and by the box above the grid; here its ways to begin and to end are put in front.
 */
import { EDITOR_METHODS } from "../../grid/gridContract";
import type { GridLibrary, GridModel } from "../../grid/library";
import { inSigns, jotted } from "../../../workbooks/typed/jotted";
import { ruleInWords } from "./cellLine";
import type { GridCommand, GridPosition } from "./libraryTypes";
import { askedAt, contextIn, isName, typedContent, type TypedContent } from "./typedCell";

/** What was refused and is still in the editor. */
export interface RefusedEntry {
  readonly place: GridPosition;
  readonly sentence: string;
}

export class CellEntry {
  /** Told of every change, with nothing once the editor is left or the text is taken. */
  changed: (refused: RefusedEntry | undefined) => void = () => undefined;
  /** Told of a text that could not stay in the editor. */
  dropped: (sentence: string) => void = () => undefined;
  /** What the editor that was opened last showed first. */
  begun: string | undefined;
  private held: RefusedEntry | undefined;

  get refused(): RefusedEntry | undefined {
    return this.held;
  }

  set(refused: RefusedEntry | undefined): void {
    if (!refused && !this.held) return;
    this.held = refused;
    this.changed(refused);
  }
}

interface Selection {
  readonly start: number;
  readonly end: number;
}

/** The parts of the library's editor that are used here. */
interface Composer {
  readonly editionMode: "inactive" | "editing" | "selecting";
  readonly currentContent: string;
  /** Told after the editor was left, too. */
  readonly _currentContent: string;
  initialContent: string;
  readonly currentEditedCell: GridPosition;
  readonly model: GridModel;
  setCurrentContent(content: string, selection?: Selection): void;
  startEdition(text?: string, selection?: Selection): void;
  stopEdition(direction?: string): void;
  _stopEdition(): void;
  cancelEdition(): void;
  canStopEdition(): boolean;
  autoCompleteOrStop(direction?: string, closed?: boolean): void;
  canStartComposerRangeSelection(): boolean;
  getComposerContent(place: GridPosition, selection?: Selection): { text: string };
  /** With the signs of the library's own language. */
  getCurrentCanonicalContent(): string;
}

/** Why a command was refused, among the library's own reasons. */
const HELD = "RigsheetHeldEntry";

/** @param entry told of what is refused; one for the page */
export function enterTyped(library: GridLibrary, entry: CellEntry): void {
  const composer = library.stores.CellComposerStore.prototype as unknown as Composer;
  const original = { ...methodsOf(composer) };
  /** Editors whose text was read, and is written as the library's own contents. */
  const settled = new WeakSet<Composer>();

  /** @returns whether the editor may be left */
  const settle = (editor: Composer): boolean => {
    const text = editor.currentContent;
    if (settled.has(editor) || text === editor.initialContent) return true;
    const typed =
      typedContent(editor.model, editor.currentEditedCell, asMeant(editor, text)) ?? asJotted(editor, text);
    const refuse = (sentence: string): false => {
      if (editor.currentContent !== text) editor.setCurrentContent(text);
      entry.set({ place: editor.currentEditedCell, sentence });
      return false;
    };
    if (typed && "refused" in typed) return refuse(typed.refused);
    if (typed) {
      // The library reads its editor in the signs that it shows.
      const content = inSigns(typed.content, editor.model.getters.getLocale().decimalSeparator);
      if (content !== text) editor.setCurrentContent(content);
    }
    // A rule may know of more than the value: of another cell that it must not pass.
    if (!original.canStopEdition.call(editor)) return refuse(brokenRule(editor));
    if (typed) settled.add(editor);
    return true;
  };

  composer.startEdition = function (text, selection) {
    original.startEdition.call(this, text, selection);
    entry.begun = this.initialContent;
    // The library sets a percent sign behind the first digit: 20% became 20%%.
    if (text && this.currentContent === `${text}%`)
      this.setCurrentContent(text, { start: text.length, end: text.length });
  };
  composer.canStopEdition = function () {
    return this.editionMode === "inactive" || settle(this);
  };
  composer.stopEdition = function (direction) {
    if (this.editionMode !== "inactive" && !settle(this)) return;
    original.stopEdition.call(this, direction);
    settled.delete(this);
    entry.set(undefined);
  };
  // The grid takes the editor's place without asking: when a side panel opens, for instance.
  composer._stopEdition = function () {
    if (this.editionMode === "inactive") return;
    if (settle(this)) original._stopEdition.call(this);
    else {
      entry.dropped(`Not taken, and the cell is as it was. ${entry.refused!.sentence}`);
      this.cancelEdition();
    }
    settled.delete(this);
  };
  composer.cancelEdition = function () {
    original.cancelEdition.call(this);
    entry.set(undefined);
  };

  // What was not changed is entered again where it is shown in other signs than it is stored in.
  composer.getCurrentCanonicalContent = function () {
    const { _currentContent, initialContent } = this;
    return _currentContent === initialContent
      ? initialContent
      : original.getCurrentCanonicalContent.call(this);
  };

  // A name that begins with an equals sign is no formula: no list of functions, and no cells to point at.
  composer.autoCompleteOrStop = function (direction, closed) {
    if (this.currentContent.startsWith("=") && holdsName(this)) this.stopEdition(direction);
    else original.autoCompleteOrStop.call(this, direction, closed);
  };
  composer.canStartComposerRangeSelection = function () {
    return !holdsName(this) && original.canStartComposerRangeSelection.call(this);
  };
  // The apostrophe with which the grid keeps text as text is the grid's own.
  composer.getComposerContent = function (place, selection) {
    const content = original.getComposerContent.call(this, place, selection);
    const kind = content.text.startsWith("'") ? askedAt(this.model, place) : undefined;
    return kind && isName(kind) ? { ...content, text: content.text.slice(1) } : content;
  };

  holdSheet(library, entry);
}

const methodsOf = (composer: Composer): Pick<Composer, (typeof EDITOR_METHODS)[number]> =>
  Object.fromEntries(EDITOR_METHODS.map((name) => [name, composer[name]])) as never;

const holdsName = (editor: Composer): boolean => {
  const kind =
    editor.editionMode === "inactive" ? undefined : askedAt(editor.model, editor.currentEditedCell);
  return kind !== undefined && isName(kind);
};

/** An apostrophe in front says "text" in every spreadsheet program; of a name that begins with one it is a part. */
function asMeant(editor: Composer, text: string): string {
  if (!text.startsWith("'") || editor.initialContent.startsWith("'")) return text;
  return holdsName(editor) ? text.slice(1) : text;
}

/** A cell in which nothing is asked takes figures as this workbook's people write them. */
function asJotted({ model, currentEditedCell: place }: Composer, text: string): TypedContent | undefined {
  const { writing } = contextIn(model);
  const getters = model.getters as GridModel["getters"] & { isGuardedSheet?(sheetId: string): boolean };
  // Under a block it may become a row, whose columns ask for something.
  if (!writing || text.startsWith("=") || getters.isGuardedSheet?.(place.sheetId)) return undefined;
  const content = askedAt(model, place) ? undefined : jotted(text, writing);
  return content === undefined ? undefined : { content };
}

function brokenRule(editor: Composer): string {
  const { model, currentEditedCell: place } = editor;
  return ruleInWords(model, place) ?? "";
}

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */
/** Another sheet is not shown while a text is held: the library would let go of it. */
function holdSheet(library: GridLibrary, entry: CellEntry): void {
  class HeldEntryPlugin extends (library.UIPlugin as any) {
    static getters = [];
    static layers = [];

    allowDispatch(command: GridCommand & { readonly sheetIdTo?: string }): string {
      const { refused } = entry;
      return refused && command.type === "ACTIVATE_SHEET" && command.sheetIdTo !== refused.place.sheetId
        ? HELD
        : "Success";
    }
  }
  library.registries.featurePluginRegistry.add("rigsheet_held_entry", HeldEntryPlugin as any);
}
/* eslint-enable @typescript-eslint/no-explicit-any */
