/** What is around every view: the buttons that lead to them, the selected cell, the status. */
import { isBookError } from "../workbooks/book";
import { button, make, painted, paragraph, setText } from "./dom";
import type { Selection } from "./host";
import { sentenceOf } from "./trouble";
import type { Warning } from "./versions";
import { placeInWords, type BuiltView, type View } from "./view";

interface Slot {
  readonly tab: HTMLButtonElement;
  readonly section: HTMLElement;
  readonly heading: HTMLElement;
  readonly build: () => BuiltView;
  built?: BuiltView;
}

export class Frame {
  private readonly tabs = make("div", { className: "pane-tabs" });
  private readonly warnings = make("div", { className: "pane-warnings" });
  private readonly views = make("div", { className: "pane-views" });
  private readonly selected = paragraph("No cell is selected.", "pane-selected");
  private readonly status = paragraph("", "pane-status");
  private readonly slots = new Map<string, Slot>();
  private busyWith: string | undefined;

  constructor(private readonly root: HTMLElement) {
    this.status.setAttribute("role", "status");
    this.status.setAttribute("aria-live", "polite");
    const nav = make("nav", { ariaLabel: "What to do" }, this.tabs);
    const foot = make("div", { className: "pane-foot" }, this.selected, this.status);
    root.classList.add("pane");
    root.replaceChildren(make("div", { className: "pane-head" }, nav, this.warnings), this.views, foot);
  }

  /** Adds a view; it is built when it is first shown, and keeps its state from then on. */
  add({ id, label, title }: Pick<View, "id" | "label" | "title">, build: () => BuiltView): void {
    const heading = make("h1", { id: `pane-${id}-title`, tabIndex: -1 }, title);
    const section = make("section", { hidden: true, className: "pane-view" }, heading);
    section.setAttribute("aria-labelledby", heading.id);
    const tab = button(label, () => this.show(id, true), "pane-tab");
    this.tabs.append(tab);
    this.views.append(section);
    this.slots.set(id, { tab, section, heading, build });
  }

  /** @param byPerson the focus follows */
  show(id: string, byPerson = false): void {
    for (const [key, { tab, section }] of this.slots) {
      section.hidden = key !== id;
      if (key === id) tab.setAttribute("aria-current", "page");
      else tab.removeAttribute("aria-current");
    }
    const slot = this.slots.get(id)!;
    if (!slot.built) {
      slot.built = slot.build();
      slot.section.append(...slot.built.body);
    }
    this.views.scrollTop = 0;
    // What was said of another view would be taken for this one's.
    if (byPerson && this.busyWith === undefined) this.say("");
    if (byPerson) (slot.built.focus ?? slot.heading).focus();
    slot.built.shown?.();
  }

  /** In one line each, so that they leave room for the work; the way out is behind it. */
  showWarnings(warnings: readonly Warning[]): void {
    this.warnings.replaceChildren(
      ...warnings.map(({ message, remedy }) =>
        make("details", { className: "pane-caution" }, make("summary", {}, message), paragraph(remedy)),
      ),
    );
  }

  showSelection(selection: Selection): void {
    const { formula, result } = selection;
    const value = isBookError(result) ? result.error : result === undefined ? "" : String(result);
    const parts = [placeInWords(selection), value, formula === undefined ? "" : `=${formula}`];
    setText(this.selected, `Selected: ${parts.filter((part) => part !== "").join("  ")}`);
  }

  say(sentence: string): void {
    this.status.classList.remove("pane-trouble");
    setText(this.status, sentence);
  }

  sayTrouble(error: unknown): void {
    this.status.classList.add("pane-trouble");
    setText(this.status, `Not done. ${sentenceOf(error)}`);
  }

  /** One step at a time: a second one is not begun before the first is over. */
  async run(what: string, work: () => Promise<string>): Promise<boolean> {
    if (this.busyWith !== undefined) {
      this.say(`Still at it: ${this.busyWith}`);
      return false;
    }
    this.busyWith = what;
    this.root.setAttribute("aria-busy", "true");
    this.say(what);
    try {
      // The work may hold the page up, so the words are painted first.
      await painted();
      this.say(await work());
      return true;
    } catch (error) {
      this.sayTrouble(error);
      return false;
    } finally {
      this.busyWith = undefined;
      this.root.removeAttribute("aria-busy");
    }
  }
}
