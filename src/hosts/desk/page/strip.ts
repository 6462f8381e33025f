/** A row above the grid that says what is shown where it is not simply the open job. */
import { make, measureAnew } from "./dom";

export interface StripAction {
  readonly label: string;
  readonly act: () => void;
}

export class Strip {
  constructor(private readonly root: HTMLElement) {}

  show(text: string, actions: readonly StripAction[]): void {
    this.root.replaceChildren(
      make("p", {}, text),
      ...actions.map(({ label, act }) =>
        make("button", { type: "button", className: "desk-button", onclick: act }, label),
      ),
    );
    this.root.hidden = false;
    measureAnew();
  }

  hide(): void {
    if (this.root.hidden) return;
    this.root.hidden = true;
    this.root.replaceChildren();
    measureAnew();
  }
}
