/** Five hints for the first minutes, each beside the part of the page that it is about. */
import { make } from "./dom";

interface Hint {
  readonly text: string;
  /** The part of the page that is meant, as a selector. */
  readonly about: string;
}

export const HINTS: readonly Hint[] = [
  {
    text: "Fill the boxed cells; all else is calculated as you type. The line above the grid says what the selected cell wants, and what is wrong with it.",
    about: "#line",
  },
  {
    text: "The sheets stand in groups, in the order of work. The list of a group says of each sheet whether it is filled and what is missing.",
    about: "#sheets",
  },
  {
    text: "What the job comes to, and how many checks need attention, stays in sight. Pane, Check lists what is wrong and leads to the cell that mends it; F8 goes to the next.",
    about: ".desk-money",
  },
  {
    text: "What you type is kept as you go. Jobs has every job with its frozen revisions; Save writes a workbook file for others.",
    about: ".desk-to-jobs",
  },
  {
    text: "Print makes the proposal, the quote, other sheets and the crew's cards, on paper or as PDF.",
    about: ".desk-to-print",
  },
];

export interface HintActions {
  /** @param hint the one to go on with another time; undefined for never again */
  keep(hint: number | undefined): void;
  /** Nothing is left to be shown. */
  closed(): void;
}

export class Hints {
  readonly root = make("section", { className: "start-hint", hidden: true, ariaLabel: "Hints" });
  private readonly heading = make("h3", { id: "start-hint-heading" });
  private readonly text = make("p", { role: "status" });
  private readonly back = plainButton("Back", () => this.show(this.at - 1, true));
  private readonly next = plainButton("Next", () => this.forward());
  private at = 0;

  constructor(private readonly actions: HintActions) {
    this.root.append(
      this.heading,
      this.text,
      make(
        "div",
        { className: "jobs-buttons" },
        this.back,
        this.next,
        plainButton("Not now", () => this.close(this.at)),
        plainButton("Don't show hints again", () => this.close(undefined)),
      ),
    );
    this.root.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      // The page behind them stays.
      event.stopPropagation();
      event.preventDefault();
      this.close(this.at);
    });
  }

  /** @param byPerson the focus goes to what leads on, where its own place is gone */
  show(at: number, byPerson = false): void {
    this.at = Math.min(Math.max(at, 0), HINTS.length - 1);
    const { text, about } = HINTS[this.at]!;
    this.heading.textContent = `Hint ${this.at + 1} of ${HINTS.length}`;
    this.text.textContent = text;
    this.back.disabled = this.at === 0;
    this.next.textContent = this.at === HINTS.length - 1 ? "Done" : "Next";
    this.root.hidden = false;
    if (byPerson && (this.back.disabled || document.activeElement === document.body)) this.next.focus();
    this.point(about);
    this.actions.keep(this.at);
  }

  /** Nothing is pointed at once the hints are out of sight. */
  hide(): void {
    this.root.hidden = true;
    this.point(undefined);
  }

  private forward(): void {
    if (this.at < HINTS.length - 1) this.show(this.at + 1);
    else this.close(undefined);
  }

  private close(hint: number | undefined): void {
    this.hide();
    this.actions.keep(hint);
    this.actions.closed();
  }

  private point(about: string | undefined): void {
    for (const one of document.querySelectorAll(".desk-pointed")) one.classList.remove("desk-pointed");
    if (about !== undefined) document.querySelector(about)?.classList.add("desk-pointed");
  }
}

const plainButton = (label: string, onclick: () => void): HTMLButtonElement =>
  make("button", { type: "button", className: "desk-button", onclick }, label);
