/** The page that the desk opens on: the job to go on with, its steps, other jobs, and what else there is to begin. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import { nameInWords, stateInWords, timeInWords, totalInWords } from "../../../jobs/entryInWords";
import { stepsList } from "../../../pane/stepsList";
import { nextStep, type FillingStep } from "../../../review/fillingSteps";
import type { FindingPlace } from "../../../review/finding";
import { putBesideOut } from "./covering";
import { make, painted, pause } from "./dom";
import { Hints } from "./hints";
import type { Remark } from "./offline";
import { RemarkList } from "./remarkList";
import type { StartPreferences } from "./startPreferences";

export interface StartActions {
  /** The open job. */
  job(): { readonly id: string | undefined; readonly title: string; readonly lines: readonly string[] };
  steps(): readonly FillingStep[];
  goTo(sheet: string, cell: string): void;
  jobs(): Promise<readonly ShelfEntry[]>;
  /** What is to be said of all of them together. */
  remarks(entries: readonly ShelfEntry[]): readonly Remark[];
  open(id: string): void;
  allJobs(): void;
  newJob(): void;
  openFile(): void;
  survey(): void;
  review(): void;
  reviewList(): void;
  exercises(): void;
  readonly demonstrations: readonly { readonly title: string; readonly begin: () => void }[];
  preferences(): StartPreferences;
  /** @returns whether the browser keeps it */
  keep(preferences: StartPreferences): boolean;
  /** The grid is in sight again. */
  left(): void;
}

/** So many of the other jobs are named; the rest is under “Jobs”. */
const RECENT = 5;
/** So long the page is looked at before a job's steps hold it up. */
const BEFORE_STEPS_MS = 150;
const REFUSED =
  "The browser does not let this page keep settings: it opens here again. Allow storage for this address to change that.";

export class StartPage {
  private readonly go = deskButton("Go on", () => this.goOnNow(), "desk-button desk-first");
  private readonly title = make("bdi", {});
  private readonly facts = make("p", { className: "start-facts" });
  private readonly steps = make("div", { className: "start-steps" });
  private readonly others = make("ul", { className: "start-others" });
  private readonly othersHeading = make("h3", {}, "Other jobs");
  private readonly opens = make("input", { type: "checkbox", id: "start-opens" });
  private readonly said = make("p", { role: "status", className: "desk-small" });
  private readonly hints: Hints;
  private readonly callHints: HTMLButtonElement;
  private readonly remarks = new RemarkList(make("div", { className: "start-remarks", role: "status" }));
  private entries: readonly ShelfEntry[] = [];
  private looks = 0;
  /** Where the next thing to be filled stands. */
  private nextPlace: FindingPlace | undefined;

  /** @param root lies over the grid and what is beside it, which are out of reach while it is shown */
  constructor(
    private readonly root: HTMLElement,
    private readonly actions: StartActions,
  ) {
    this.hints = new Hints({
      keep: (hint) => void this.keep({ hint }),
      closed: () => {
        this.callHints.hidden = false;
        this.go.focus();
      },
    });
    this.callHints = deskButton("Show the hints", () => {
      this.callHints.hidden = true;
      this.hints.show(0, true);
    });
    this.opens.addEventListener("change", () => {
      this.said.textContent = this.keep({ opensOnStart: this.opens.checked }) ? "" : REFUSED;
    });
    const heading = make("h2", { id: "start-heading" }, "Start");
    root.setAttribute("aria-labelledby", heading.id);
    root.hidden = true;
    root.append(
      make(
        "div",
        { className: "jobs-head" },
        heading,
        this.callHints,
        make("label", { htmlFor: this.opens.id, className: "start-opens" }, this.opens, " Open on this page"),
        deskButton("Close", () => this.leave()),
      ),
      this.said,
      this.remarks.root,
      this.hints.root,
      make("div", { className: "start-columns" }, this.goOn(), this.begin()),
    );
    root.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      this.leave();
    });
  }

  get isShown(): boolean {
    return !this.root.hidden;
  }

  /** @param isOpening the desk has just been opened */
  async show(isOpening = false): Promise<void> {
    const look = ++this.looks;
    const { opensOnStart, hint } = this.actions.preferences();
    this.opens.checked = opensOnStart;
    this.said.textContent = "";
    this.showJob();
    this.showNext(undefined);
    this.root.hidden = false;
    putBesideOut(this.root, true);
    this.hints.hide();
    this.callHints.hidden = isOpening && hint !== undefined;
    if (isOpening && hint !== undefined) this.hints.show(hint);
    this.go.focus();
    // What is filled is looked at once the page stands.
    this.steps.replaceChildren(make("p", { className: "desk-small" }, "Looking at what is filled…"));
    await painted();
    await this.showOthers(look);
    // Whoever leaves at once has not waited for it.
    await pause(BEFORE_STEPS_MS);
    if (look === this.looks && this.isShown) this.showSteps();
  }

  /** What is said of all jobs together may have changed. */
  showRemarks(): void {
    if (this.isShown) this.remarks.show(this.actions.remarks(this.entries));
  }

  hide(): void {
    if (!this.isShown) return;
    this.hints.hide();
    this.root.hidden = true;
    putBesideOut(this.root, false);
  }

  private leave(): void {
    this.hide();
    this.actions.left();
  }

  /** To what is to be filled next; a job that has all it needs stands as it was left. */
  private goOnNow(): void {
    const place = this.nextPlace;
    this.leave();
    if (place) this.actions.goTo(place.sheet, place.cell);
  }

  private showNext(next: FillingStep | undefined): void {
    this.nextPlace = next?.open[0]?.place;
    this.go.textContent = next ? `Go on with ${next.sheet}` : "Go on";
  }

  private keep(changes: Partial<StartPreferences>): boolean {
    return this.actions.keep({ ...this.actions.preferences(), ...changes });
  }

  private showJob(): void {
    const { title, lines } = this.actions.job();
    this.title.textContent = title;
    this.facts.textContent = lines.join(" · ");
  }

  private showSteps(): void {
    const steps = this.actions.steps();
    const next = nextStep(steps);
    const filled = steps.filter(({ open }) => open.length === 0).length;
    const count =
      steps.length === 0
        ? "This workbook has no steps of filling."
        : `${filled} of ${steps.length} sheets have all that they need.${next ? ` Next: ${next.sheet}.` : ""}`;
    this.showNext(next);
    const goTo = (sheet: string, cell: string): void => {
      this.leave();
      this.actions.goTo(sheet, cell);
    };
    this.steps.replaceChildren(make("p", {}, count), stepsList(steps, next?.sheet, goTo));
  }

  private async showOthers(look: number): Promise<void> {
    const jobs = await this.actions.jobs();
    if (look !== this.looks || !this.isShown) return;
    this.entries = jobs;
    this.showRemarks();
    const { id: open } = this.actions.job();
    const others = jobs.filter(({ id, away, trouble }) => id !== open && !away && !trouble);
    const recent = [...others].sort((a, b) => b.savedAt.localeCompare(a.savedAt)).slice(0, RECENT);
    this.othersHeading.hidden = recent.length === 0;
    this.others.replaceChildren(
      ...recent.map((entry) => {
        const { id, line, savedAt } = entry;
        const facts = [line?.customer, line && totalInWords(line), stateInWords(entry), timeInWords(savedAt)];
        return make(
          "li",
          {},
          deskButton("", () => this.actions.open(id), "start-job", [
            make("bdi", {}, nameInWords(line)),
            make("span", { className: "desk-small" }, facts.filter(Boolean).join(" · ")),
          ]),
        );
      }),
    );
  }

  private goOn(): HTMLElement {
    return make(
      "section",
      { className: "start-go-on" },
      make("h3", {}, "Go on with"),
      make("p", { className: "start-title" }, this.title),
      this.facts,
      make(
        "div",
        { className: "jobs-buttons" },
        this.go,
        deskButton("All jobs", () => this.actions.allJobs()),
      ),
      this.othersHeading,
      this.others,
      make("h3", {}, "What is filled, and what is missing"),
      this.steps,
    );
  }

  private begin(): HTMLElement {
    const { actions } = this;
    const way = (label: string, what: string, act: () => void): HTMLElement =>
      make("li", {}, deskButton(label, act), make("span", { className: "desk-small" }, what));
    return make(
      "section",
      { className: "start-begin" },
      make("h3", {}, "Begin"),
      make(
        "ul",
        { className: "start-ways" },
        way("New job…", "Empty, or with the firm's parts, rates and terms.", () => actions.newJob()),
        way("Open a workbook…", "An .xlsx file of Rigsheet.", () => actions.openFile()),
        way("From a survey…", "A new job with the outlets of a table: .csv, .txt, .xlsx.", () =>
          actions.survey(),
        ),
        way("Review workbooks…", "What is wrong in quotes, by money; or drop the files on this page.", () =>
          actions.review(),
        ),
        way("Review a list…", "Somebody else's quote, as text.", () => actions.reviewList()),
        way("Exercises…", "Questions with worked examples beside them.", () => actions.exercises()),
      ),
      make("h3", {}, "Demonstrations"),
      make(
        "p",
        { className: "desk-small" },
        "Invented jobs. In the guest house two things are wrong on purpose.",
      ),
      make(
        "ul",
        {},
        ...actions.demonstrations.map(({ title, begin }) => make("li", {}, deskButton(title, begin))),
      ),
    );
  }
}

const deskButton = (
  label: string,
  onclick: () => void,
  className = "desk-button",
  parts: readonly Node[] = [],
): HTMLButtonElement => make("button", { type: "button", className, onclick }, label, ...parts);
