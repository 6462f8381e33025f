/** All jobs, over the grid: found by any word, put in order, opened, and what else can be done with one. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import { JOB_STATES } from "../../../jobs/content";
import { finder, searched } from "../../../jobs/search";
import { setText } from "../../../pane/dom";
import type { ShelfList } from "../protocol";
import { putBesideOut } from "./covering";
import { make } from "./dom";
import { JobDetails } from "./jobDetails";
import type { JobsActions } from "./jobsActions";
import { RemarkList } from "./remarkList";
import { JobsTable } from "./jobsTable";

const AWAY = "away";
const FILTERS: readonly (readonly [value: string, label: string, isShown: (entry: ShelfEntry) => boolean])[] =
  [
    ["all", "all but put away", () => true],
    ...JOB_STATES.map(
      (one) => [one, one, ({ state, trouble }: ShelfEntry) => !trouble && state === one] as const,
    ),
    ["conflicting", "conflicting", ({ conflictOf }) => conflictOf !== undefined],
    ["unreadable", "cannot be read", ({ trouble }) => trouble !== undefined],
    [AWAY, "put away", () => true],
  ];

/** So many are made ready to be searched at a time, before anybody types. */
const AT_A_TIME = 100;

export class JobsView {
  private readonly table = new JobsTable();
  private readonly details: JobDetails;
  private readonly search = make("input", {
    id: "jobs-search",
    type: "search",
    className: "desk-input",
    autocomplete: "off",
    spellcheck: false,
    dir: "auto",
    placeholder: "number, name, customer, sum, date …",
  });
  private readonly filter = make(
    "select",
    { id: "jobs-filter", className: "desk-input" },
    ...FILTERS.map(([value, label]) => make("option", { value }, label)),
  );
  private readonly count = make("p", { className: "jobs-count", role: "status" });
  private readonly elsewhere: HTMLButtonElement;
  private readonly trouble = make("p", { className: "jobs-alert", role: "alert" });
  private readonly remarks = new RemarkList(make("div", { className: "jobs-remarks", role: "status" }));
  private readonly said = make("p", { className: "jobs-said", role: "status" });
  private readonly nothing = make("div", { className: "jobs-nothing", hidden: true });
  private readonly place = make("p", { className: "jobs-place desk-small" });

  private entries = new Map<string, ShelfEntry>();
  private readonly texts = new WeakMap<ShelfEntry, string>();
  private openId: string | undefined;
  private busy = false;
  private loads = 0;

  /** @param root lies over the grid and what is beside it, which are out of reach while it is shown */
  constructor(
    private readonly root: HTMLElement,
    private readonly actions: JobsActions,
  ) {
    this.details = new JobDetails({
      actions,
      run: (work, done) => this.run(work, done),
      refuse: (sentence) => this.complain(sentence),
      entry: (id) => this.entries.get(id),
      namesakes: (entry) => this.namesakes(entry),
      choose: (id) => this.goTo(id),
      search: (words) => this.ask(words),
      isOpen: (id) => id === this.openId,
    });
    const button = (label: string, onclick: () => void): HTMLButtonElement =>
      make("button", { type: "button", className: "desk-button", onclick }, label);
    this.elsewhere = button("", () => this.narrow(AWAY));
    this.elsewhere.hidden = true;
    const heading = make("h2", { id: "jobs-heading" }, "Jobs");
    root.classList.add("desk-jobs");
    root.setAttribute("role", "region");
    root.setAttribute("aria-labelledby", heading.id);
    root.hidden = true;
    root.replaceChildren(
      make(
        "div",
        { className: "jobs-head" },
        heading,
        make("label", { htmlFor: this.search.id }, "Search"),
        this.search,
        make("label", { htmlFor: this.filter.id }, "Show"),
        this.filter,
        this.count,
        this.elsewhere,
        make(
          "div",
          { className: "jobs-buttons" },
          button("New job…", () => actions.newJob()),
          button("Open .xlsx…", () => actions.openFile()),
          button("Bring in…", () => void this.chooseAndBringIn()),
          button("Export all…", () => void this.exportAll()),
          button("Close", () => actions.close()),
        ),
      ),
      this.trouble,
      this.remarks.root,
      make(
        "div",
        { className: "jobs-body" },
        make("div", { className: "jobs-list" }, this.table.root, this.nothing),
        this.details.root,
      ),
      // Under the list, where it moves nothing that a hand is about to click.
      make("div", { className: "jobs-foot" }, this.said, this.place),
    );
    this.table.chosen = (entry) => this.details.show(entry);
    this.table.opened = ({ id, trouble }) => {
      if (trouble) this.complain(trouble.sentence);
      else actions.open(id);
    };
    this.search.addEventListener("input", () => this.look());
    this.search.addEventListener("keydown", (event) => {
      if ((event.key !== "ArrowDown" && event.key !== "Enter") || event.isComposing) return;
      event.preventDefault();
      this.table.focus();
    });
    this.filter.addEventListener("change", () => this.look());
    root.addEventListener("keydown", (event) => this.escape(event));
    // Another window may have changed something meanwhile.
    window.addEventListener("focus", () => void (this.isShown && !this.busy && this.refresh()));
  }

  get isShown(): boolean {
    return !this.root.hidden;
  }

  /** @param openId the job that this window has open */
  async show(openId?: string): Promise<void> {
    this.openId = openId;
    this.root.hidden = false;
    putBesideOut(this.root, true);
    this.clear();
    this.search.focus();
    this.search.select();
    const before = this.table.choice?.id;
    await this.refresh();
    // Whoever was quicker than the list has chosen for himself.
    const isUntouched =
      this.search.value === "" && document.activeElement === this.search && this.table.choice?.id === before;
    if (openId !== undefined && isUntouched) this.table.choose(openId);
  }

  hide(): void {
    this.root.hidden = true;
    putBesideOut(this.root, false);
  }

  /** Reads the list anew; what is chosen, typed and in order stays so. */
  refresh(): Promise<void> {
    return this.read(false);
  }

  /** @param anew draws the details though nothing has changed: a choice that failed goes back */
  private async read(anew: boolean): Promise<void> {
    const load = ++this.loads;
    this.root.ariaBusy = "true";
    if (this.entries.size === 0) setText(this.count, "reading the jobs…");
    let list: ShelfList;
    try {
      list = await this.actions.list();
    } catch (error) {
      if (load === this.loads) {
        this.root.ariaBusy = String(this.busy);
        if (this.entries.size === 0) setText(this.count, "");
        this.complain(`The jobs can't be listed now: ${sentenceOf(error)}`);
      }
      return;
    }
    if (load !== this.loads) return;
    setText(this.place, list.place && `All of it lies in ${list.place}`);
    const before = this.entries;
    let isOther = anew || before.size !== list.jobs.length;
    this.entries = new Map(
      list.jobs.map((entry) => {
        const known = before.get(entry.id);
        // What is the same stays the same, and is neither drawn nor made ready anew.
        if (known && isAlike(known, entry)) return [entry.id, known];
        isOther = true;
        return [entry.id, entry];
      }),
    );
    this.table.take([...this.entries.values()], this.openId);
    this.showRemarks();
    this.look(false);
    // A click that is under way on one of its buttons counts.
    if (isOther) this.details.show(this.table.choice, true);
    this.makeReady(this.entries.values());
    this.root.ariaBusy = String(this.busy);
  }

  /** What is said of all jobs together may have changed. */
  showRemarks(): void {
    this.remarks.show(this.actions.remarks?.([...this.entries.values()]) ?? []);
  }

  private textOf(entry: ShelfEntry): string {
    const known = this.texts.get(entry);
    if (known !== undefined) return known;
    const text = searched(entry);
    this.texts.set(entry, text);
    return text;
  }

  /** The first letter typed then waits for nothing. */
  private makeReady(left: Iterator<ShelfEntry>): void {
    for (let count = 0; count < AT_A_TIME; count++) {
      const { done, value } = left.next();
      if (done) return;
      this.textOf(value);
    }
    setTimeout(() => this.makeReady(left));
  }

  /** @param fromTop what is asked for is another */
  private look(fromTop = true): void {
    const [value, , isShown] = FILTERS[this.filter.selectedIndex]!;
    const isAsked = this.search.value.trim() !== "";
    const isInText = finder(this.search.value);
    // Opening the list makes nothing ready to be searched.
    const isFound = (entry: ShelfEntry): boolean => !isAsked || isInText(this.textOf(entry));
    const wantsAway = value === AWAY;
    this.table.filter((entry) => entry.away === wantsAway && isShown(entry) && isFound(entry), fromTop);
    let [scope, found] = [0, 0];
    for (const entry of this.entries.values()) {
      if (entry.away === wantsAway) scope++;
      else if (!wantsAway && isAsked && isFound(entry)) found++;
    }
    const { count } = this.table;
    setText(this.count, `${count} of ${scope} ${wantsAway ? "put away" : scope === 1 ? "job" : "jobs"}`);
    this.elsewhere.hidden = found === 0;
    setText(this.elsewhere, `${found} more put away`);
    this.tellNothing(count, scope, wantsAway);
  }

  private tellNothing(count: number, scope: number, wantsAway: boolean): void {
    this.nothing.hidden = count > 0;
    if (count > 0) return;
    if (scope === 0)
      this.nothing.replaceChildren(
        make(
          "p",
          {},
          wantsAway ? "Nothing is put away." : "There are no jobs yet. Begin a new one, or open a workbook.",
        ),
      );
    else
      this.nothing.replaceChildren(
        make("p", {}, "No job has all these words and this state."),
        make(
          "button",
          { type: "button", className: "desk-button", onclick: () => this.ask("") },
          "Show all again",
        ),
      );
  }

  private ask(words: string): void {
    this.search.value = words;
    this.narrow("all");
    this.search.focus();
  }

  private narrow(filter: string): void {
    this.filter.value = filter;
    this.look();
  }

  /** To a job that may not be among those shown. */
  private goTo(id: string): void {
    this.search.value = "";
    this.narrow(this.entries.get(id)?.away ? AWAY : "all");
    this.table.choose(id);
    this.table.focus();
  }

  private namesakes({ id, line }: ShelfEntry): number {
    if (!line?.number) return 0;
    let count = 0;
    for (const one of this.entries.values())
      if (one.id !== id && !one.away && one.line?.number === line.number) count++;
    return count;
  }

  private async chooseAndBringIn(): Promise<void> {
    const file = await this.actions.chooseExport();
    if (file) await this.bringIn(file);
  }

  /** Brings in the jobs of an export, and says what became of them. */
  async bringIn(file: File): Promise<void> {
    let said = "";
    await this.run(
      async () => {
        setText(this.said, "Bringing the jobs in…");
        said = await this.actions.bringIn(file);
      },
      () => said,
    );
  }

  private async exportAll(): Promise<void> {
    let said = "";
    await this.run(
      async () => {
        setText(this.said, "Exporting the jobs…");
        said = await this.actions.exportAll();
      },
      () => said,
    );
  }

  private async run(work: () => Promise<void>, done: string | (() => string)): Promise<void> {
    // A second click before the first is over means the same.
    if (this.busy) return;
    this.busy = true;
    this.root.ariaBusy = "true";
    this.clear();
    const before = new Set(this.entries.keys());
    let failure: string | undefined;
    try {
      await work();
    } catch (error) {
      failure = sentenceOf(error);
    }
    await this.read(true);
    this.busy = false;
    this.root.ariaBusy = "false";
    if (failure !== undefined) return this.complain(`Not done: ${failure}`);
    setText(this.said, typeof done === "string" ? done : done());
    const fresh = [...this.entries.keys()].filter((id) => !before.has(id));
    if (fresh.length === 1) this.table.choose(fresh[0]);
    if (!this.root.contains(document.activeElement)) this.table.takeFocus();
  }

  private clear(): void {
    setText(this.trouble, "");
    setText(this.said, "");
  }

  private complain(sentence: string): void {
    setText(this.said, "");
    setText(this.trouble, sentence);
  }

  private escape(event: KeyboardEvent): void {
    // In a list of choices the key closes that.
    if (event.key !== "Escape" || event.isComposing || event.target instanceof HTMLSelectElement) return;
    event.preventDefault();
    if (event.target !== this.search || this.search.value === "") return this.actions.close();
    this.search.value = "";
    this.look();
  }
}

/** Of two values as a server sends them. */
function isAlike(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) return false;
  const names = Object.keys(one);
  return (
    names.length === Object.keys(other).length &&
    names.every((name) =>
      isAlike((one as Record<string, unknown>)[name], (other as Record<string, unknown>)[name]),
    )
  );
}

function sentenceOf(error: unknown): string {
  const text = (error instanceof Error ? error.message : String(error)).trim();
  return `${text}${/[.!?]$/.test(text) ? "" : "."}`;
}
