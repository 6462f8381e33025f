/** The pages as they will come out, one at a time: turned by buttons and keys, made anew when the choice changes. */
import type { DrawnPage } from "../../pdf/pdfPages";
import type { Step } from "../../pdf/step";
import type { PdfWriter } from "../../../pane/loadPdf";
import { tellingStep } from "../../../pane/pdfFiles";
import { sentenceOf } from "../../../pane/trouble";
import { make, pause } from "./dom";

/** A choice is often followed by another. */
const SETTLED_MS = 200;

/** What a making gives: pages, or sentences on why there are none. */
export interface Previewed {
  readonly pages: readonly DrawnPage[];
  readonly said?: string;
}

class Stopped extends Error {}

export class PagePreview<Made extends Previewed> {
  readonly root: HTMLElement;
  /** What was made last; undefined while it is being made, and where it could not be. */
  made: Made | undefined;
  private readonly sheet = make("div", { className: "preview-page", tabIndex: 0, role: "group" });
  /** What is said beside how far the pages are. */
  private readonly aside = make("p", { className: "preview-aside", role: "status" });
  private readonly told = make("p", { className: "preview-told", role: "status" });
  private readonly back = make("button", { type: "button", className: "desk-button" }, "Previous page");
  private readonly next = make("button", { type: "button", className: "desk-button" }, "Next page");
  private readonly stopButton = make("button", { type: "button", className: "desk-button" }, "Stop");
  private writer: PdfWriter | undefined;
  private at = 0;
  private count = 0;

  /**
   * @param makePages makes what is chosen now
   * @param changed there is something else to be seen
   */
  constructor(
    private readonly makePages: (writer: PdfWriter, step: Step) => Promise<Made>,
    private readonly load: () => Promise<PdfWriter>,
    private readonly changed: () => void,
  ) {
    this.back.addEventListener("click", () => this.turn(this.at - 1));
    this.next.addEventListener("click", () => this.turn(this.at + 1));
    this.stopButton.addEventListener("click", () => this.stop("Stopped. Choose again to see the pages."));
    this.root = make(
      "section",
      { className: "print-preview", ariaLabel: "The pages as they come out" },
      make("div", { className: "preview-bar" }, this.back, this.told, this.next, this.stopButton),
      this.aside,
      this.sheet,
    );
    this.stopButton.hidden = true;
    this.turnable();
  }

  get isMaking(): boolean {
    return !this.stopButton.hidden;
  }

  /** @param sentence empty for what stands in the place of the pages, once more */
  say(sentence: string): void {
    this.aside.textContent = sentence;
    if (sentence === "") this.sheet.focus();
  }

  /** Keys of the dialog around it; what is being filled in has its own use of them. */
  key(event: KeyboardEvent): void {
    const inField = (event.target as Element).matches("select, input:not([type=checkbox], [type=radio])");
    const last = (this.made?.pages.length ?? 0) - 1;
    const to = { PageDown: this.at + 1, PageUp: this.at - 1, Home: 0, End: last }[event.key];
    const isEnd = event.key === "Home" || event.key === "End";
    if (to === undefined || inField || (isEnd && event.target !== this.sheet)) return;
    event.preventDefault();
    this.turn(to);
  }

  /** The choice is another: what was made of the last one is no longer shown. */
  async follow(settled = SETTLED_MS): Promise<void> {
    const mine = ++this.count;
    this.clear();
    this.stopButton.hidden = false;
    const tell = tellingStep((words) => (this.told.textContent = words));
    const step: Step = async (done, of) => {
      await tell(done, of);
      if (mine !== this.count) throw new Stopped();
    };
    try {
      this.told.textContent = "Making the pages…";
      await pause(settled);
      if (mine !== this.count) return;
      this.writer = await this.load();
      await step(0, undefined);
      const made = await this.makePages(this.writer, step);
      if (mine !== this.count) return;
      this.made = made;
      this.told.textContent = "";
      this.turn(0);
    } catch (error) {
      if (mine !== this.count || error instanceof Stopped) return;
      this.told.textContent = sentenceOf(error);
    }
    this.stopButton.hidden = true;
    this.changed();
  }

  /** @param why is said in the place of the pages */
  stop(why = ""): void {
    this.count++;
    this.clear();
    this.told.textContent = why;
    this.stopButton.hidden = true;
    this.changed();
  }

  private clear(): void {
    this.made = undefined;
    this.sheet.replaceChildren();
    this.aside.textContent = "";
    this.turnable();
  }

  private turn(to: number): void {
    const { made, writer } = this;
    if (!made || !writer) return;
    this.at = Math.min(Math.max(to, 0), Math.max(0, made.pages.length - 1));
    const page = made.pages[this.at];
    this.sheet.replaceChildren();
    if (page) {
      const picture = new DOMParser().parseFromString(writer.pageSvg(page, writer.type), "image/svg+xml");
      this.sheet.append(document.importNode(picture.documentElement, true));
    }
    this.sheet.scrollTop = 0;
    const words = page ? `Page ${this.at + 1} of ${made.pages.length}` : (made.said ?? "");
    this.sheet.ariaLabel = words;
    this.told.textContent = words;
    this.turnable();
  }

  private turnable(): void {
    const last = (this.made?.pages.length ?? 0) - 1;
    // Not disabled: the focus stays where it is at the first and the last page.
    this.back.ariaDisabled = String(this.at <= 0 || last < 0);
    this.next.ariaDisabled = String(this.at >= last);
  }
}
