/** The bar above the grid: what the job comes to, what can be done with it, whether it is saved. */
import type { JobState } from "../../../jobs/content";
import type { SavingState } from "./autosave";
import { setText } from "../../../pane/dom";
import { make } from "./dom";

export interface BarActions {
  start(): void;
  jobs(): void;
  newJob(): void;
  open(): void;
  save(): void;
  print(): void;
  importSurvey(): void;
  takePrices(): void;
  addRows(): void;
  undo(): void;
  redo(): void;
  toggleLock(): void;
  togglePane(): void;
  help(): void;
}

export interface JobFigures {
  /** The job's number, revision and name. */
  readonly title: string;
  /** What kind of workbook it is. */
  readonly template: string;
  /** In words, with the figure as the sheet shows it; absent when the workbook names no such cell. */
  readonly total?: string;
  readonly verdict?: string;
}

export class Bar {
  private readonly title = make("h1", { className: "desk-title" });
  private readonly file = make("p", { className: "desk-file" });
  private readonly state = make("p", {
    className: "desk-state",
    title: "How far the job has come: set it under Jobs",
  });
  private readonly total = make("p", { className: "desk-figure" });
  private readonly verdict = make("p", { className: "desk-figure" });
  private readonly work = make("p", { className: "desk-work", role: "status" });
  private readonly saving = make("p", { className: "desk-saving", role: "status" });
  private readonly trouble = make("p", { className: "desk-trouble", role: "alert", hidden: true });
  private readonly notice = make("p", { role: "status" });
  private readonly noticeBox = make(
    "div",
    { className: "desk-notice", hidden: true },
    this.notice,
    make(
      "button",
      { type: "button", className: "desk-button", onclick: () => (this.noticeBox.hidden = true) },
      "Close",
    ),
  );
  private readonly lock: HTMLButtonElement;
  private readonly pane: HTMLButtonElement;
  private readonly survey: HTMLButtonElement;
  private readonly prices: HTMLButtonElement;
  private readonly saveButton: HTMLButtonElement;
  private fileName: string | undefined;
  private jobTitle = "";
  private isKept = true;
  /** Told before a notice takes its room from the grid. */
  noticeShows: () => void = () => undefined;
  private noticeTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(root: HTMLElement, actions: BarActions) {
    const button = (label: string, title: string, onclick: () => void, more = "") =>
      make("button", { type: "button", className: `desk-button ${more}`.trim(), title, onclick }, label);
    this.lock = button("Unlock sheet", "Let calculated cells of this sheet be changed", () =>
      actions.toggleLock(),
    );
    this.pane = button("Pane", "Open or close the pane beside the grid (F6 goes there)", () =>
      actions.togglePane(),
    );
    this.pane.ariaExpanded = "false";
    this.pane.setAttribute("aria-controls", "pane");
    this.survey = button(
      "Import survey…",
      "Add the outlets of a survey (.csv or .xlsx) to the Rooms sheet",
      () => actions.importSurvey(),
    );
    this.prices = button(
      "Price list…",
      "Take a supplier's price list (.csv, .txt or .xlsx) into the prices of this workbook",
      () => actions.takePrices(),
    );
    this.saveButton = button("Save .xlsx", "Download the workbook as an .xlsx file", () => actions.save());
    root.append(
      make(
        "div",
        { className: "desk-job" },
        this.title,
        make("div", { className: "desk-pair" }, this.state, this.file),
        make("div", { className: "desk-pair desk-money" }, this.total, this.verdict),
      ),
      make(
        "div",
        { className: "desk-buttons", role: "toolbar", ariaLabel: "Job" },
        button("Start", "What to go on with, what is filled, and what else there is to begin", () =>
          actions.start(),
        ),
        button("Jobs", "All jobs, with their revisions (Ctrl+J)", () => actions.jobs(), "desk-to-jobs"),
        button("New", "Start a new job; the one open now is kept", () => actions.newJob()),
        button("Open .xlsx…", "Open a workbook from a file", () => actions.open()),
        this.saveButton,
        button(
          "Print…",
          "The quote, other sheets, cards or the proposal, on paper or as PDF (Ctrl+P)",
          () => actions.print(),
          "desk-to-print",
        ),
        this.survey,
        this.prices,
        button("Add rows", "Add rows to the block of the selected cell", () => actions.addRows()),
        button("Undo", "Take back the last change (Ctrl+Z)", () => actions.undo()),
        button("Redo", "Do it again (Ctrl+Y)", () => actions.redo()),
        this.lock,
        this.pane,
        button("Help", "Functions, keys and what is saved where", () => actions.help()),
      ),
      this.work,
      this.saving,
    );
    root.after(this.trouble);
    // Under the grid: the page is a column, and what is said of a cell never lies on one.
    root.ownerDocument.body.append(this.noticeBox);
  }

  showFigures({ title, template, total, verdict }: JobFigures): void {
    this.jobTitle = title;
    setText(this.title, title);
    this.title.title = template && template !== title ? `${title} (${template})` : title;
    setText(this.total, total ?? "");
    setText(this.verdict, verdict ?? "");
    this.nameWindow();
  }

  showLock(guarded: boolean, unlocked: boolean): void {
    this.lock.hidden = !guarded;
    this.lock.ariaPressed = String(unlocked);
    setText(this.lock, unlocked ? "Lock sheet" : "Unlock sheet");
  }

  /** Only a workbook with a Rooms sheet takes a survey. */
  showSurvey(takesOne: boolean): void {
    this.survey.hidden = !takesOne;
  }

  /** A workbook without parts takes no price list. */
  showPrices(takesOne: boolean): void {
    this.prices.hidden = !takesOne;
  }

  showPane(open: boolean): void {
    this.pane.ariaExpanded = String(open);
  }

  showFile(name: string | undefined): void {
    this.fileName = name;
    setText(this.file, name ? `in ${name}` : "");
    this.file.title = name ? `Save writes into ${name}` : "";
    setText(this.saveButton, name ? "Save" : "Save .xlsx");
    this.saveButton.title = name ? `Write back into ${name}` : "Download the workbook as an .xlsx file";
    this.nameWindow();
  }

  /** Two jobs in two tabs are told apart by it. */
  private nameWindow(): void {
    const file = this.fileName ? ` (${this.fileName})` : "";
    document.title = `${this.jobTitle}${file} – Rigsheet`;
  }

  /** @param isKept false where all ends with the page */
  showKept(isKept: boolean): void {
    this.isKept = isKept;
  }

  showSaving(state: SavingState): void {
    const failed = state.kind === "failed";
    this.saving.classList.toggle("desk-failed", failed || !this.isKept);
    setText(this.saving, failed ? "not saved" : this.isKept ? wordsFor(state) : "kept only in this window");
    // Why, and what is kept, takes a row of its own: the bar has no room for a sentence.
    this.trouble.hidden = !failed;
    setText(this.trouble, failed ? `not saved: ${state.sentence}${keptInWords(state.kept)}` : "");
  }

  /** A plain notice that goes away by itself; a failure stays until it is closed or the next one comes. */
  showNotice(sentence: string, stays = false): void {
    clearTimeout(this.noticeTimer);
    this.noticeShows();
    this.noticeBox.hidden = false;
    setText(this.notice, sentence);
    if (!stays) this.noticeTimer = setTimeout(() => (this.noticeBox.hidden = true), NOTICE_MS);
  }

  showState(state: JobState, away: boolean): void {
    setText(this.state, away ? `${state}, put away` : state);
  }

  showWork(what: string): void {
    setText(this.work, what);
  }
}

function wordsFor(state: Exclude<SavingState, { kind: "failed" }>): string {
  switch (state.kind) {
    case "saving":
      return "saving…";
    case "watching":
      return "watching";
    case "saved":
      return state.at ? `saved ${clock(state.at)}` : "";
  }
}

/** Long enough to read two lines. */
const NOTICE_MS = 9000;

const clock = (at: string): string =>
  new Date(at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });

/** @param kept edits that wait in this browser; undefined where it keeps nothing */
const keptInWords = (kept: number | undefined): string =>
  kept === undefined
    ? ""
    : `; ${kept === 0 ? "the job is" : kept === 1 ? "1 edit is" : `${kept} edits are`} kept in this browser for this address, also when the page is closed`;
