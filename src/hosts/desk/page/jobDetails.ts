/** What is known of the job chosen in the list, and what can be done with it. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import { JOB_STATES, type JobState, type RevisionNote } from "../../../jobs/content";
import { NO_NAME, nameInWords, timeInWords, totalInWords } from "../../../jobs/entryInWords";
import { fileNameOf } from "../../../workbooks/jobLabel";
import { askForReason, askToDelete } from "./dialogs";
import { make } from "./dom";
import type { JobsActions } from "./jobsActions";

/** Longer ones scroll in a room of their own, so that what can be done stays near. */
const LONG_NAME = 160;

/** What the details need of the view around them. */
export interface JobsAround {
  readonly actions: JobsActions;
  /** Does it, shows the list anew, says so in the sentence given; says why not where it fails. */
  run(work: () => Promise<void>, done: string | (() => string)): Promise<void>;
  /** Says that something can't be done so. */
  refuse(sentence: string): void;
  entry(id: string): ShelfEntry | undefined;
  /** Other jobs of the same number. */
  namesakes(entry: ShelfEntry): number;
  choose(id: string): void;
  search(words: string): void;
  /** In this window. */
  isOpen(id: string): boolean;
}

export class JobDetails {
  readonly root = make("section", { className: "jobs-details", ariaLabel: "The job chosen" });
  private shown: ShelfEntry | undefined;

  constructor(private readonly around: JobsAround) {
    this.show(undefined);
  }

  /** @param anew though it is the same: what stands around it has changed */
  show(entry: ShelfEntry | undefined, anew = false): void {
    if (entry === this.shown && !anew && this.root.childElementCount > 0) return;
    const isSame = entry?.id === this.shown?.id;
    const focused = this.root.contains(document.activeElement)
      ? (document.activeElement as HTMLButtonElement).name
      : undefined;
    this.shown = entry;
    const { scrollTop } = this.root;
    this.root.replaceChildren(...(entry ? this.partsOf(entry) : [make("p", {}, "No job is chosen.")]));
    this.root.scrollTop = isSame ? scrollTop : 0;
    if (!focused || !isSame) return;
    [...this.root.querySelectorAll<HTMLButtonElement>("[name]")]
      .find(({ name }) => name === focused)
      ?.focus();
  }

  private partsOf(entry: ShelfEntry): Node[] {
    const { line, trouble } = entry;
    const name = line?.name || NO_NAME;
    const heading = make("h3", { className: "jobs-title", dir: "auto" }, name);
    if (name.length > LONG_NAME) heading.tabIndex = 0;
    if (trouble) return [heading, ...this.troublePartsOf(entry)];
    return [
      heading,
      ...this.remarksOn(entry),
      this.buttonsOf(entry),
      this.stateOf(entry),
      factsOf(entry),
      ...this.revisionsOf(entry),
    ];
  }

  private troublePartsOf(entry: ShelfEntry): Node[] {
    const { sentence, kept } = entry.trouble!;
    return [
      make("p", { className: "jobs-caution", dir: "auto" }, sentence),
      ...(kept.length > 0 ? [make("p", { className: "desk-small" }, `Kept as ${kept.join(", ")}.`)] : []),
      make("div", { className: "jobs-buttons" }, this.exportButton(entry), ...this.awayButtons(entry)),
      factsOf(entry),
      ...(entry.revisions.length > 0
        ? [
            make("h4", {}, "Frozen revisions"),
            this.revisionList(entry, (note) => this.copyButton(entry, note)),
          ]
        : []),
    ];
  }

  /** Sentences that belong to this job alone. */
  private remarksOn(entry: ShelfEntry): Node[] {
    const { around } = this;
    const { conflictOf, away, savedAt, revisions, line, id } = entry;
    const remarks: Node[] = [];
    if (around.isOpen(id)) remarks.push(make("p", {}, "Open in this window."));
    if (away) remarks.push(make("p", {}, "Put away: not among the others until it is brought back."));
    if (conflictOf) remarks.push(this.originOf(conflictOf.job, away));
    const last = revisions.at(-1);
    if (last && savedAt > last.at)
      remarks.push(
        make("p", {}, `Changed since revision ${last.number} (`, make("bdi", {}, last.why), ") was frozen."),
      );
    const others = around.namesakes(entry);
    if (others > 0)
      remarks.push(
        make(
          "p",
          {},
          `${others === 1 ? "Another job has" : `${others} other jobs have`} this number. `,
          this.button("Show them", "namesakes", () => around.search(line!.number)),
        ),
      );
    return remarks;
  }

  /** @param job from which what was typed has come apart */
  private originOf(job: string, away: boolean): HTMLElement {
    const of = this.around.entry(job);
    return make(
      "p",
      { className: "jobs-caution" },
      "Typed in another window or another place, or while it could not be saved, and did not fit ",
      ...(of ? [make("bdi", {}, nameInWords(of.line)), " any more. "] : ["a job that is no longer here."]),
      ...(of && !away ? ["Open it to compare the two, or to put its edits into that job. "] : []),
      ...(of ? [this.button("Show that job", "origin", () => this.around.choose(job))] : []),
    );
  }

  private buttonsOf(entry: ShelfEntry): HTMLElement {
    const { actions, run } = this.around;
    const { id } = entry;
    return make(
      "div",
      { className: "jobs-buttons" },
      this.button("Open", "open", () => actions.open(id)),
      this.button("Copy as new", "copy", () => void run(() => actions.copy(id), COPIED)),
      this.button("Freeze…", "freeze", () => void this.freeze(entry)),
      this.exportButton(entry),
      ...this.awayButtons(entry),
    );
  }

  private awayButtons(entry: ShelfEntry): HTMLElement[] {
    const { actions, run } = this.around;
    const { id, away } = entry;
    if (!away)
      return [
        this.button(
          "Put away",
          "away",
          () =>
            void run(
              () => actions.putAway(id, true),
              "Put away. It stands under “Put away”, and can be brought back.",
            ),
        ),
      ];
    return [
      this.button("Bring back", "back", () => void run(() => actions.putAway(id, false), "Brought back.")),
      this.button("Delete for good…", "delete", () => void this.delete(entry)),
    ];
  }

  private exportButton({ id, line }: ShelfEntry): HTMLElement {
    const { actions, run } = this.around;
    const name = fileNameOf(nameInWords(line));
    return this.button("Export as it is", "export", () => void run(() => actions.exportAsItIs(id, name), ""));
  }

  private stateOf({ id, state }: ShelfEntry): HTMLElement {
    const { actions, run } = this.around;
    const select = make(
      "select",
      { id: "jobs-state", name: "state", className: "desk-input" },
      ...JOB_STATES.map((one) => make("option", { value: one, selected: one === state }, one)),
    );
    select.setAttribute("aria-describedby", "jobs-state-note");
    select.onchange = () => {
      const wanted = select.value as JobState;
      void run(() => actions.setState(id, wanted), `The state is ${wanted} now.`);
    };
    return make(
      "div",
      { className: "jobs-state-choice" },
      make("label", { htmlFor: select.id }, "State"),
      select,
      make(
        "p",
        { id: "jobs-state-note", className: "desk-small" },
        "Setting sent or accepted freezes the job as it is.",
      ),
    );
  }

  private revisionsOf(entry: ShelfEntry): Node[] {
    const { revisions } = entry;
    const heading = make("h4", {}, "Frozen revisions");
    if (revisions.length === 0)
      return [
        heading,
        make(
          "p",
          { className: "desk-small" },
          "None yet. A frozen one stays as it is, whatever is done with the job.",
        ),
      ];
    return [
      heading,
      this.revisionList(entry, (note) => this.revisionButtons(entry, note)),
      make("p", { className: "desk-small" }, "Restoring one freezes what is there now before."),
      ...this.comparisonOf(entry),
    ];
  }

  private revisionList(
    { revisions }: ShelfEntry,
    buttons: (note: RevisionNote) => readonly HTMLElement[],
  ): HTMLElement {
    const item = (note: RevisionNote): HTMLElement => {
      const { number, why, at, line } = note;
      const total = line ? totalInWords(line) : "";
      return make(
        "li",
        {},
        make("p", {}, make("strong", {}, `Revision ${number}`), ", ", make("bdi", {}, why)),
        make(
          "p",
          { className: "desk-small" },
          timeInWords(at),
          ...(total ? [", ", make("bdi", {}, total)] : []),
        ),
        make("div", { className: "jobs-buttons" }, ...buttons(note)),
      );
    };
    return make("ul", { className: "jobs-revisions" }, ...revisions.map(item).reverse());
  }

  private revisionButton(label: string, { number }: RevisionNote, onclick: () => void): HTMLButtonElement {
    const made = this.button(label, `${label} ${number}`, onclick);
    made.ariaLabel = `${label}: revision ${number}`;
    return made;
  }

  private copyButton({ id }: ShelfEntry, note: RevisionNote): HTMLElement[] {
    const { actions, run } = this.around;
    return [
      this.revisionButton("Copy as new", note, () => void run(() => actions.copy(id, note.number), COPIED)),
    ];
  }

  private revisionButtons(entry: ShelfEntry, note: RevisionNote): HTMLElement[] {
    const { actions, run } = this.around;
    const { id } = entry;
    const { number } = note;
    return [
      this.revisionButton("Look at", note, () => actions.look(id, number)),
      this.revisionButton("Compare with now", note, () => actions.compare(id, number)),
      this.revisionButton(
        "Restore",
        note,
        () =>
          void run(
            () => actions.restore(id, number),
            `Revision ${number} is restored; what was there before is frozen.`,
          ),
      ),
      ...this.copyButton(entry, note),
    ];
  }

  /** Of two frozen ones, where the page can show that. */
  private comparisonOf({ id, revisions }: ShelfEntry): Node[] {
    const { actions } = this.around;
    if (!actions.compareTwo || revisions.length < 2) return [];
    const choice = (name: string, label: string, chosen: RevisionNote): HTMLSelectElement =>
      make(
        "select",
        { name, className: "desk-input", ariaLabel: label },
        ...revisions.map((note) =>
          make(
            "option",
            { value: String(note.number), selected: note === chosen },
            `revision ${note.number}`,
          ),
        ),
      );
    const one = choice("one", "One revision", revisions.at(-2)!);
    const other = choice("other", "The other revision", revisions.at(-1)!);
    const compare = this.button("Compare the two", "two", () => {
      const [older, newer] = [Number(one.value), Number(other.value)].sort((a, b) => a - b);
      if (older === newer) this.around.refuse("These are the same revision. Choose two.");
      else actions.compareTwo!(id, older!, newer!);
    });
    return [make("div", { className: "jobs-buttons" }, one, other, compare)];
  }

  private async freeze({ id, line, revisions }: ShelfEntry): Promise<void> {
    const { actions, run, entry } = this.around;
    const why = await askForReason(nameInWords(line));
    if (why === undefined) return;
    const said = (): string => {
      const last = entry(id)?.revisions.at(-1);
      if (!last) return "";
      return last.number === revisions.at(-1)?.number
        ? "It is as one of its revisions is already; as it is, a job is frozen once."
        : `Frozen as revision ${last.number}.`;
    };
    await run(() => actions.freeze(id, why), said);
  }

  private async delete({ id, line, revisions }: ShelfEntry): Promise<void> {
    const { actions, run } = this.around;
    if (await askToDelete(nameInWords(line), revisions.length))
      await run(() => actions.delete(id), "Deleted for good.");
  }

  /** @param name by which it is found again when the details are drawn anew */
  private button(label: string, name: string, onclick: () => void): HTMLButtonElement {
    return make("button", { type: "button", className: "desk-button", name, onclick }, label);
  }
}

const COPIED = "A new draft was made of it.";

function factsOf({ line, savedAt, file, trouble }: ShelfEntry): HTMLElement {
  const facts: [label: string, text: string | undefined, title?: string][] = [
    ["Number", line?.number],
    ["Revision", line?.revision],
    ["Customer", line?.customer],
    ["Total", line && totalInWords(line)],
    ["Quote date", line?.date],
    ["Checks", line?.verdict],
    ["Last change", timeInWords(savedAt)],
    ["File", file?.name, file?.path],
  ];
  return make(
    "dl",
    { className: "jobs-facts" },
    ...facts.flatMap(([label, text, title = ""]) =>
      text
        ? [
            make("dt", {}, trouble ? `${label}, as last known` : label),
            make("dd", { title }, make("bdi", {}, text)),
          ]
        : [],
    ),
  );
}
