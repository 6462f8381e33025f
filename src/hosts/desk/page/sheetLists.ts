/** The sheets in groups, in the order of work; the list of a group says what is filled. */
import { stateInWords, type FillingStep } from "../../../review/fillingSteps";
import { make } from "./dom";

export interface SheetListActions {
  groups(): readonly { readonly group: string; readonly sheets: readonly string[] }[];
  active(): string;
  steps(): readonly FillingStep[];
  goTo(sheet: string): void;
}

/** Fewer tabs are all in sight. */
const FEW = 6;

export class SheetLists {
  private shown = "";
  private openers = new Map<string, HTMLButtonElement>();
  private open: { readonly button: HTMLButtonElement; readonly list: HTMLElement } | undefined;

  constructor(
    private readonly root: HTMLElement,
    private readonly actions: SheetListActions,
  ) {
    root.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" || !this.open) return;
      event.stopPropagation();
      const { button } = this.open;
      this.close();
      button.focus();
    });
    document.addEventListener("pointerdown", ({ target }) => {
      if (this.open && !(target instanceof Node && root.contains(target))) this.close();
    });
    root.addEventListener("focusout", ({ relatedTarget }) => {
      if (relatedTarget instanceof Node && !root.contains(relatedTarget)) this.close();
    });
  }

  /** The sheets, or the one that is shown, may be others. */
  refresh(): void {
    const groups = this.actions.groups();
    const active = this.actions.active();
    const text = JSON.stringify([groups, active]);
    if (text === this.shown) return;
    this.shown = text;
    const count = groups.reduce((sum, { sheets }) => sum + sheets.length, 0);
    this.close();
    this.root.hidden = count <= FEW;
    if (this.root.hidden) return;
    const names = groups.map(({ group }) => group);
    // A button that has the focus stays.
    if (names.join() !== [...this.openers.keys()].join()) {
      this.openers = new Map(names.map((group) => [group, this.opener(group)]));
      this.root.replaceChildren(...[...this.openers.values()].map((one) => one.parentElement!));
    }
    for (const { group, sheets } of groups)
      this.openers.get(group)!.ariaCurrent = String(sheets.includes(active));
  }

  private opener(group: string): HTMLButtonElement {
    const button = make(
      "button",
      {
        type: "button",
        className: "sheets-group",
        ariaExpanded: "false",
        onclick: () => {
          if (this.open?.button === button) this.close();
          else this.show(group, button);
        },
      },
      group,
    );
    make("div", { className: "sheets-place" }, button);
    return button;
  }

  private show(group: string, button: HTMLButtonElement): void {
    this.close();
    const sheets = this.actions.groups().find((one) => one.group === group)?.sheets ?? [];
    const steps = new Map(this.actions.steps().map((step) => [step.sheet, step]));
    const active = this.actions.active();
    const list = make(
      "ul",
      { className: "sheets-list" },
      ...sheets.map((sheet) => {
        const step = steps.get(sheet);
        const entry = make(
          "button",
          {
            type: "button",
            onclick: () => {
              this.close();
              this.actions.goTo(sheet);
            },
          },
          make("bdi", {}, sheet),
          ...(step ? [make("span", { className: "desk-small" }, stateInWords(step))] : []),
        );
        if (sheet === active) entry.setAttribute("aria-current", "page");
        return make("li", {}, entry);
      }),
    );
    button.after(list);
    button.ariaExpanded = "true";
    this.open = { button, list };
    list.querySelector<HTMLButtonElement>("button")?.focus();
    list.addEventListener("keydown", (event) => step(event, list));
  }

  private close(): void {
    if (!this.open) return;
    this.open.button.ariaExpanded = "false";
    this.open.list.remove();
    this.open = undefined;
  }
}

/** Up and down go through a list, as Tab does. */
function step(event: KeyboardEvent, list: HTMLElement): void {
  const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (by === undefined) return;
  event.preventDefault();
  const entries = [...list.querySelectorAll<HTMLButtonElement>("button")];
  const at = entries.indexOf(document.activeElement as HTMLButtonElement);
  entries[(at + by + entries.length) % entries.length]?.focus();
}
