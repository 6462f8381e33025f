/** What is said of all jobs together, each with what can be done about it. */
import { make } from "./dom";
import type { Remark } from "./offline";

export class RemarkList {
  private shown = "";

  constructor(readonly root: HTMLElement) {}

  show(remarks: readonly Remark[]): void {
    const texts = JSON.stringify(
      remarks.map(({ text, actions }) => [text, actions.map(({ label }) => label)]),
    );
    // A button that is about to be pressed stays.
    if (texts === this.shown) return;
    this.shown = texts;
    this.root.replaceChildren(
      ...remarks.map(({ text, actions }) =>
        make(
          "p",
          {},
          `${text} `,
          ...actions.map(({ label, act }) =>
            make("button", { type: "button", className: "desk-button", onclick: act }, label),
          ),
        ),
      ),
    );
  }
}
