/**
 * The lines of the jobs' list. Only those in sight are in the document, so that
 * two thousand cost no more than forty; the table itself keeps the focus.
 */
import type { ShelfEntry } from "../../../jobs/catalogue";
import { JOB_STATES } from "../../../jobs/content";
import { NO_NAME, stateInWords, timeInWords, totalInWords } from "../../../jobs/entryInWords";
import { make } from "./dom";

interface Column {
  readonly key: string;
  readonly label: string;
  /** What it is put in order by; undefined stands last both ways. */
  readonly value: (entry: ShelfEntry) => string | number | undefined;
  /** The first click on its heading begins with the greatest. */
  readonly falling?: true;
}

const filled = (text: string | undefined): string | undefined => text?.trim() || undefined;

const COLUMNS: readonly Column[] = [
  { key: "number", label: "Number", value: ({ line }) => filled(line?.number) },
  { key: "revision", label: "Rev.", value: ({ line }) => filled(line?.revision) },
  { key: "name", label: "Name", value: ({ line }) => filled(line?.name) },
  { key: "customer", label: "Customer", value: ({ line }) => filled(line?.customer) },
  { key: "total", label: "Total", value: ({ line }) => line?.total, falling: true },
  {
    key: "state",
    label: "State",
    value: ({ state, trouble }) => (trouble ? JOB_STATES.length : JOB_STATES.indexOf(state)),
  },
  { key: "saved", label: "Last change", value: ({ savedAt }) => filled(savedAt), falling: true },
];

/** Numbers in a text count as numbers, and an accent puts nobody behind Z. */
const { compare } = new Intl.Collator("en", { numeric: true, sensitivity: "base" });
/** Lines above and below those in sight. */
const SPARE = 12;
/** Until one has been drawn. */
const USUAL_HEIGHT = 34;

export class JobsTable {
  readonly root: HTMLElement;
  /** The choice is another, or none. */
  chosen: (entry: ShelfEntry | undefined) => void = () => undefined;
  /** Enter, or a second click. */
  opened: (entry: ShelfEntry) => void = () => undefined;

  private all: readonly ShelfEntry[] = [];
  private shown: readonly ShelfEntry[] = [];
  private isShown: (entry: ShelfEntry) => boolean = () => true;
  private order = { column: COLUMNS.at(-1)!, falling: true };
  private choiceId: string | undefined;
  /** Where the choice stood, should it go away. */
  private place = 0;
  private openId: string | undefined;
  private lineHeight = USUAL_HEIGHT;
  private drawn = new Map<ShelfEntry, HTMLTableRowElement>();

  private readonly heads = COLUMNS.map((column) => {
    const button = make(
      "button",
      { type: "button", onclick: () => this.orderBy(column) },
      make("span", {}, column.label),
    );
    return Object.assign(make("th", { scope: "col", className: `jobs-${column.key}` }, button), {
      role: "columnheader",
    });
  });
  private readonly above = spacer();
  private readonly lines = make("tbody", { role: "rowgroup" });
  private readonly below = spacer();
  private readonly head = make(
    "thead",
    { role: "rowgroup" },
    make("tr", { role: "row", ariaRowIndex: "1" }, ...this.heads),
  );
  private readonly table = make(
    "table",
    { className: "jobs-table", role: "grid", tabIndex: 0, ariaLabel: "Jobs" },
    this.head,
    this.above,
    this.lines,
    this.below,
  );

  constructor() {
    this.root = make("div", { className: "jobs-lines" }, this.table);
    this.root.addEventListener("scroll", () => this.draw());
    new ResizeObserver(() => this.draw()).observe(this.root);
    this.table.addEventListener("keydown", (event) => this.pressed(event));
    this.head.addEventListener("keydown", (event) => this.pressedAbove(event));
    this.lines.addEventListener("click", ({ target }) => this.choose(this.entryAt(target)?.id));
    this.lines.addEventListener("dblclick", ({ target }) => {
      const entry = this.entryAt(target);
      if (entry) this.opened(entry);
    });
    this.tellOrder();
  }

  /** {@link filter} then shows what is wanted of them. @param openId the job that this window has open */
  take(all: readonly ShelfEntry[], openId: string | undefined): void {
    this.all = all;
    // A line whose entry is the same one stays as it is drawn.
    if (openId !== this.openId) this.drawn.clear();
    this.openId = openId;
    this.sort();
  }

  /** @param fromTop another question begins at its first answer */
  filter(isShown: (entry: ShelfEntry) => boolean, fromTop = true): void {
    this.isShown = isShown;
    this.shown = this.all.filter(isShown);
    this.table.ariaRowCount = String(this.shown.length + 1);
    if (fromTop) this.root.scrollTop = 0;
    const at = this.shown.findIndex(({ id }) => id === this.choiceId);
    if (at >= 0) this.place = at;
    else this.choiceId = undefined;
    this.chosen(this.shown[at]);
    this.draw();
  }

  get count(): number {
    return this.shown.length;
  }

  /** @param id of one that is shown; anything else is no choice */
  choose(id: string | undefined): void {
    const at = this.shown.findIndex((entry) => entry.id === id);
    this.choiceId = this.shown[at]?.id;
    if (at >= 0) this.place = at;
    this.chosen(this.shown[at]);
    if (at >= 0) this.bringIntoView(at);
    this.draw();
  }

  get choice(): ShelfEntry | undefined {
    return this.shown.find(({ id }) => id === this.choiceId);
  }

  /** Without choosing anything. */
  takeFocus(): void {
    this.table.focus({ preventScroll: true });
  }

  /** Goes to the lines; to the first where none is chosen. */
  focus(): void {
    this.takeFocus();
    if (this.choiceId === undefined) this.choose(this.shown[Math.min(this.place, this.shown.length - 1)]?.id);
  }

  private pressed(event: KeyboardEvent): void {
    if (event.target !== this.table || event.ctrlKey || event.altKey || event.metaKey) return;
    const page = Math.max(1, Math.floor(this.heightOfLines / this.lineHeight) - 1);
    const at = this.shown.findIndex(({ id }) => id === this.choiceId);
    const from = at < 0 ? this.place - 1 : at;
    const to = {
      ArrowDown: from + 1,
      ArrowUp: from - 1,
      PageDown: from + page,
      PageUp: from - page,
      Home: 0,
      End: this.shown.length - 1,
    }[event.key];
    if (to !== undefined) {
      event.preventDefault();
      this.choose(this.shown[Math.max(0, Math.min(to, this.shown.length - 1))]?.id);
    } else if (event.key === "Enter" && at >= 0) {
      event.preventDefault();
      this.opened(this.shown[at]!);
    }
  }

  /** The headings are one stop of the Tab key; the arrows go from one to the next. */
  private pressedAbove(event: KeyboardEvent): void {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    const at = this.heads.findIndex((head) => head.contains(event.target as Node));
    if (step === undefined || at < 0) return;
    event.preventDefault();
    this.heads[at + step]?.querySelector("button")!.focus();
  }

  private orderBy(column: Column): void {
    const again = this.order.column === column;
    this.order = { column, falling: again ? !this.order.falling : column.falling === true };
    this.tellOrder();
    this.sort();
    this.filter(this.isShown);
  }

  private tellOrder(): void {
    for (const [index, head] of this.heads.entries()) {
      const isOrder = COLUMNS[index] === this.order.column;
      head.querySelector("button")!.tabIndex = isOrder ? 0 : -1;
      if (!isOrder) head.removeAttribute("aria-sort");
      else head.ariaSort = this.order.falling ? "descending" : "ascending";
    }
  }

  private sort(): void {
    const { column, falling } = this.order;
    const turn = falling ? -1 : 1;
    const valued = this.all.map((entry) => ({ entry, value: column.value(entry) }));
    valued.sort((one, other) => {
      const [a, b] = [one.value, other.value];
      if (a === undefined || b === undefined)
        return Number(a === undefined) - Number(b === undefined) || newestFirst(one.entry, other.entry);
      const order = typeof a === "number" && typeof b === "number" ? a - b : compareTexts(column, a, b);
      return turn * order || newestFirst(one.entry, other.entry);
    });
    this.all = valued.map(({ entry }) => entry);
  }

  private get heightOfLines(): number {
    return this.root.clientHeight - this.head.offsetHeight;
  }

  private bringIntoView(at: number): void {
    const top = at * this.lineHeight;
    const { scrollTop } = this.root;
    if (top < scrollTop) this.root.scrollTop = top;
    else if (top + this.lineHeight > scrollTop + this.heightOfLines)
      this.root.scrollTop = top + this.lineHeight - this.heightOfLines;
  }

  private draw(): void {
    const height = this.lineHeight;
    const { scrollTop } = this.root;
    const end = Math.ceil((scrollTop + Math.max(0, this.heightOfLines)) / height) + SPARE;
    const to = Math.min(this.shown.length, end);
    const from = Math.min(to, Math.max(0, Math.floor(scrollTop / height) - SPARE));
    const before = this.drawn;
    this.drawn = new Map();
    for (let at = from; at < to; at++) {
      const entry = this.shown[at]!;
      const line = before.get(entry) ?? this.lineOf(entry);
      line.ariaRowIndex = String(at + 2);
      line.ariaSelected = String(entry.id === this.choiceId);
      this.drawn.set(entry, line);
    }
    const wanted = [...this.drawn.values()];
    // One that stays is not touched: a click that is under way on it counts.
    if (
      wanted.length !== this.lines.children.length ||
      wanted.some((one, at) => one !== this.lines.children[at])
    )
      this.lines.replaceChildren(...wanted);
    setHeight(this.above, from * height);
    setHeight(this.below, (this.shown.length - to) * height);
    const choice = this.lines.querySelector("[aria-selected=true]");
    if (choice) this.table.setAttribute("aria-activedescendant", choice.id);
    else this.table.removeAttribute("aria-activedescendant");
    const measured = wanted[0]?.getBoundingClientRect().height;
    if (!measured || Math.abs(measured - height) < 0.1) return;
    // On a small screen a line is taller.
    this.lineHeight = measured;
    this.draw();
  }

  private lineOf(entry: ShelfEntry): HTMLTableRowElement {
    const { line, savedAt, trouble } = entry;
    const name = filled(line?.name);
    const total = line && totalInWords(line);
    const cell = (key: string, text: string | undefined, ...before: Node[]): HTMLTableCellElement =>
      make(
        "td",
        { role: "gridcell", className: `jobs-${key}`, title: text ?? "" },
        ...before,
        make("bdi", {}, text ?? ""),
      );
    const tag = make("span", { className: "jobs-tag" }, "open");
    const made = make(
      "tr",
      { id: `jobs-line-${entry.id}`, role: "row", className: trouble ? "jobs-troubled" : "" },
      cell("number", filled(line?.number)),
      cell("revision", filled(line?.revision)),
      cell("name", name ?? NO_NAME, ...(entry.id === this.openId ? [tag] : [])),
      cell("customer", filled(line?.customer)),
      cell("total", total),
      cell("state", stateInWords(entry)),
      cell("saved", timeInWords(savedAt)),
    );
    made.dataset.job = entry.id;
    return made;
  }

  private entryAt(target: EventTarget | null): ShelfEntry | undefined {
    const id = (target as Element | null)?.closest("tr")?.dataset.job;
    return this.shown.find((entry) => entry.id === id);
  }
}

const compareTexts = ({ key }: Column, a: string | number, b: string | number): number =>
  // These are written so that they stand in the order of time.
  key === "saved" ? (a < b ? -1 : a > b ? 1 : 0) : compare(String(a), String(b));

const newestFirst = (one: ShelfEntry, other: ShelfEntry): number =>
  one.savedAt === other.savedAt ? (one.id < other.id ? -1 : 1) : one.savedAt > other.savedAt ? -1 : 1;

/** In the place of the lines that are out of sight. */
const spacer = (): HTMLTableSectionElement =>
  make(
    "tbody",
    { ariaHidden: "true" },
    make("tr", { className: "jobs-spacer" }, make("td", { colSpan: COLUMNS.length })),
  );

function setHeight(section: HTMLTableSectionElement, height: number): void {
  section.hidden = height === 0;
  (section.querySelector("td") as HTMLElement).style.height = `${height}px`;
}
