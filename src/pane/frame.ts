/** What is around every view: the buttons that lead to them, the selected cell, the status. */
import { isBookError } from "../workbooks/book";
import { button, make, painted, paragraph, setText } from "./dom";
import type { Selection } from "./host";
import { sentenceOf } from "./trouble";
import type { Warning } from "./versions";
import { placeInWords, type BuiltView, type View } from "./view";

/** A view whose surroundings are settled; it is built when it is first shown, and keeps its state from then on. */
interface Shown extends Pick<View, "id" | "label" | "title"> {
  build(): BuiltView;
}

interface Group {
  readonly tab: HTMLButtonElement;
  /** The buttons of its views. */
  readonly row: HTMLElement;
  /** The one that was shown last. */
  last: string;
}

interface Slot {
  readonly group: Group;
  readonly tab: HTMLButtonElement;
  readonly section: HTMLElement;
  readonly heading: HTMLElement;
  readonly build: () => BuiltView;
  built?: BuiltView;
}

export class Frame {
  private readonly groupTabs = rowOfTabs("pane-groups", "What you are doing");
  private readonly viewTabs = make("div", {});
  private readonly warnings = make("div", { className: "pane-warnings" });
  private readonly views = make("div", { className: "pane-views" });
  private readonly selected = paragraph("No cell is selected.", "pane-selected");
  private readonly status = paragraph("", "pane-status");
  private readonly groups: Group[] = [];
  private readonly slots = new Map<string, Slot>();
  private busyWith: string | undefined;
  /** A view that came up meanwhile, and has still to do what it does then. */
  private waiting: string | undefined;

  constructor(private readonly root: HTMLElement) {
    this.status.setAttribute("role", "status");
    this.status.setAttribute("aria-live", "polite");
    const nav = make("nav", { ariaLabel: "What to do" }, this.groupTabs, this.viewTabs);
    const foot = make("div", { className: "pane-foot" }, this.selected, this.status);
    root.classList.add("pane");
    root.replaceChildren(make("div", { className: "pane-head" }, nav, this.warnings), this.views, foot);
  }

  /** Adds a group of views; a single group needs no button of its own. */
  addGroup(label: string, views: readonly Shown[]): void {
    const row = rowOfTabs("pane-tabs", label);
    row.id = `pane-group-${this.groups.length}`;
    const group: Group = {
      tab: button(label, () => this.show(group.last), "pane-tab pane-group"),
      row,
      last: views[0]!.id,
    };
    group.tab.setAttribute("aria-controls", row.id);
    this.groups.push(group);
    this.groupTabs.append(group.tab);
    this.groupTabs.hidden = this.groups.length === 1;
    this.viewTabs.append(row);
    for (const view of views) this.addView(group, view);
  }

  private addView(group: Group, { id, label, title, build }: Shown): void {
    const heading = make("h1", { id: `pane-${id}-title`, tabIndex: -1 }, title);
    const section = make("section", { hidden: true, className: "pane-view" }, heading);
    section.setAttribute("aria-labelledby", heading.id);
    const tab = button(label, () => this.show(id, true), "pane-tab");
    group.row.append(tab);
    this.views.append(section);
    this.slots.set(id, { group, tab, section, heading, build });
  }

  /** @param byPerson the view itself was asked for, and takes the focus */
  show(id: string, byPerson = false): void {
    const slot = this.slots.get(id)!;
    for (const [key, { tab, section }] of this.slots) {
      section.hidden = key !== id;
      markCurrent(tab, key === id && "page");
    }
    for (const group of this.groups) {
      const isOpen = group === slot.group;
      group.row.hidden = !isOpen;
      group.tab.ariaExpanded = String(isOpen);
      markCurrent(group.tab, isOpen && "true");
    }
    slot.group.last = id;
    if (!slot.built) {
      slot.built = slot.build();
      slot.section.append(...slot.built.body);
    }
    this.views.scrollTop = 0;
    // What was said of another view would be taken for this one's.
    if (this.busyWith === undefined) this.say("");
    if (byPerson) (slot.built.focus ?? slot.heading).focus();
    if (this.busyWith === undefined) slot.built.shown?.();
    else this.waiting = id;
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
      this.catchUp();
    }
  }

  /** What the view now in sight could not do when it came up. */
  private catchUp(): void {
    const slot = this.waiting === undefined ? undefined : this.slots.get(this.waiting);
    this.waiting = undefined;
    if (slot && !slot.section.hidden && slot.built?.shown) {
      this.say("");
      slot.built.shown();
    }
  }
}

function markCurrent(tab: HTMLElement, current: string | false): void {
  if (current === false) tab.removeAttribute("aria-current");
  else tab.setAttribute("aria-current", current);
}

const STEPS: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowRight: (at, count) => (at + 1) % count,
  ArrowLeft: (at, count) => (at + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
};

/** Tab reaches each button, and so do the arrow keys. */
function rowOfTabs(className: string, ariaLabel: string): HTMLElement {
  const row = make("div", { className, role: "group", ariaLabel });
  row.addEventListener("keydown", (event) => {
    const step = STEPS[event.key];
    const tabs = [...row.querySelectorAll("button")];
    const at = tabs.indexOf(event.target as HTMLButtonElement);
    if (!step || at < 0) return;
    event.preventDefault();
    tabs[step(at, tabs.length)]!.focus();
  });
  return row;
}
