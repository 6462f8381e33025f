/**
 * Which job this window shows, and whether it edits it, watches another window
 * edit it, or looks at a frozen state of it. Here what was typed and no longer
 * fits becomes a job of its own.
 */
import type { JobContent, JobFile, JobNotes } from "../../../jobs/content";
import type { ShelfLine } from "../../../workbooks/shelfLine";
import { timeInWords, totalInWords } from "../../../jobs/entryInWords";
import type { HeldJob } from "../../../jobs/shelf";
import type { Book } from "../../../workbooks/book";
import { labelInWords } from "../../../workbooks/jobLabel";
import { templates } from "../../../workbooks/templates";
import { CHANGED_ELSEWHERE, type GivenFile } from "../protocol";
import { api, ServerTrouble } from "./api";
import { Autosave } from "./autosave";
import type { Bar } from "./bar";
import { documentOf, type Desk } from "./desk";
import { JobWindow } from "./jobWindow";
import { exportedBy, NOWHERE } from "./replayed";
import type { Strip } from "./strip";
import { isEditing } from "./unfinished";
import type { Waiting, WaitingRoom } from "./waiting";

export const newId = (): string => `job-${crypto.randomUUID()}`;

const EDITING_MS = 250;

/** What the page gives. */
export interface Around {
  readonly desk: Desk;
  readonly bar: Bar;
  readonly strip: Strip;
  readonly room: WaitingRoom;
  /** Runs a user's action, and shows the sentence when it fails. */
  readonly run: (what: string, work: () => Promise<void>) => void;
  /** Offers what no longer fitted: the id of the job that it became. */
  readonly offer: (id: string) => void;
}

export class OpenJob {
  private id_: string | undefined;
  private notes_: JobNotes | undefined;
  private autosave: Autosave | undefined;
  private window: JobWindow | undefined;
  private shelf = "";
  /** A frozen state is shown in the job's place. */
  private looking = false;
  private toldOfEdit = false;
  /** What no longer fitted and is to be offered once a job is shown. */
  private unfitting: string[] = [];

  constructor(private readonly around: Around) {}

  get id(): string | undefined {
    return this.id_;
  }
  get notes(): JobNotes | undefined {
    return this.notes_;
  }
  get file(): JobFile | undefined {
    return this.notes_?.file;
  }
  get unsaved(): boolean {
    return this.autosave?.unsaved ?? false;
  }
  /** A frozen state is shown, which is not what the job's file is to hold. */
  get isLooking(): boolean {
    return this.looking;
  }
  /** The job is this window's, and shown as it is now. */
  get mayEdit(): boolean {
    return !this.looking && (this.window?.isOwner ?? false);
  }

  /** Shows the job that the address names, the given file, the last one, or a demonstration. */
  async start(): Promise<void> {
    const { shelf, given, open } = await api.start();
    this.shelf = shelf;
    await this.handOver();
    const named = /^#(job-[\da-f-]+)$/.exec(location.hash)?.[1];
    for (const id of [named, named ? undefined : given?.job, given?.book ? undefined : open]) {
      if (id === undefined) continue;
      try {
        return await this.open(id);
      } catch (error) {
        if (error instanceof ServerTrouble && error.status === 0) throw error;
        this.around.bar.showNotice(
          `The job that was open can't be shown. ${error instanceof Error ? error.message : String(error)}`,
          true,
        );
      }
    }
    await this.create(given?.book ?? templates[0]!.demonstration(), given);
  }

  /** @throws Error with a sentence; the job that is shown then stays */
  async open(id: string): Promise<void> {
    const window = id === this.id_ && this.window ? this.window : this.newWindow(id);
    const isMine = window.isOwner || (await window.own());
    try {
      if (isMine) await this.handOver(id);
      const held = await api.openJob(id);
      await this.show(held, window, held.changes.at(-1)?.nextRevisionId ?? held.document.revisionId);
    } catch (error) {
      if (window !== this.window) window.close();
      throw error;
    }
  }

  /** Makes a job of a book, and shows it; the open one stays among the jobs. */
  async create(book: Book, given?: GivenFile, file?: JobFile): Promise<void> {
    const id = newId();
    const window = this.newWindow(id);
    await window.own();
    const content: JobContent = { document: documentOf(book), changes: [] };
    const before = this.id_ && this.around.desk.title;
    const notes: JobNotes = {
      state: "draft",
      away: false,
      revisions: [],
      ...(given && { file: { name: given.name, path: "", mark: "" } }),
      ...(file && { file }),
    };
    await this.show({ ...content, id, savedAt: "", notes }, window, null, given?.number);
    await this.autosave!.create();
    if (file) await api.noteJob(id, { file: { name: file.name, mark: file.mark } });
    if (before) this.around.bar.showNotice(`“${before}” is kept, under Jobs.`);
  }

  /** Takes the shown job over from the window that edits it. */
  async takeOver(): Promise<void> {
    const { window, autosave, around } = this;
    if (!window || !autosave || !this.id_) return;
    await window.takeOver();
    if (!(await autosave.goOn())) return await this.open(this.id_);
    around.desk.allowEdits(true);
    around.strip.hide();
    await this.handOver(this.id_);
    this.offer();
  }

  /** Shows a frozen state of a job; the grid takes no edit. */
  async look(id: string, number: number): Promise<void> {
    const { desk, strip, run } = this.around;
    const held = await api.revision(id, number);
    if (id !== this.id_) await this.open(id);
    await this.autosave?.settle();
    this.looking = true;
    await desk.show(held, NOWHERE, true, `Revision ${number}`);
    const { why, at, line } = held.note!;
    strip.show(
      `You look at revision ${number}${why ? ` (${why})` : ""}, frozen ${timeInWords(at)}. Nothing can be changed in it.${thenAndNow(line, desk.shelfLine)}`,
      [
        { label: "Back to the job", act: () => run("Opening the job…", () => this.open(id)) },
        { label: "Restore it", act: () => run("Restoring…", () => this.restore(id, number)) },
        { label: "Copy as a new job", act: () => run("Copying…", () => this.copy(id, number)) },
      ],
    );
  }

  /** Puts a frozen state in the job's place; what is there now is frozen before. */
  async restore(id: string, number: number): Promise<void> {
    if (id !== this.id_) await this.open(id);
    if (!this.window?.isOwner)
      throw new Error("Another window has this job open. Take it over first, then restore the revision.");
    await this.autosave?.settle();
    await api.restore(id, number);
    await this.open(id);
    this.around.bar.showNotice(`Revision ${number} is restored. What was there before is a revision too.`);
  }

  async copy(id: string, number?: number): Promise<void> {
    await this.settle(id);
    const to = newId();
    await api.copyJob(id, to, number);
    await this.open(to);
    this.around.bar.showNotice("This is the copy: a job of its own, a draft that belongs to no file.");
  }

  /** What is typed in the job is at the server, as far as it takes it. */
  async settle(id: string): Promise<void> {
    if (id === this.id_) await this.autosave?.settle();
  }

  /** Freezes, or notes something of, the open job or another. */
  async noted(id: string, work: () => Promise<unknown>): Promise<void> {
    await this.settle(id);
    await work();
    if (id === this.id_) this.tell((await api.held(id)).notes);
  }

  /**
   * Puts another document in the place of the shown job's.
   * @param work hands it to the server, which freezes what is there now
   * @param after the revision that it follows
   */
  async replaceContent(work: (id: string, after: string) => Promise<unknown>): Promise<void> {
    const { autosave, id_ } = this;
    if (!autosave || !id_ || !this.mayEdit)
      throw new Error("Another window has this job. Take it over first.");
    await autosave.settle();
    if (autosave.unsaved) throw new Error("Not all edits are saved yet. Try again when they are.");
    await work(id_, autosave.serverHead!);
    await this.open(id_);
  }

  private newWindow(id: string): JobWindow {
    const window: JobWindow = new JobWindow(id, {
      asked: async () => {
        if (window === this.window) await this.autosave?.settle();
      },
      lost: () => {
        if (window === this.window) void this.lose();
      },
    });
    return window;
  }

  private async show(held: HeldJob, window: JobWindow, head: string | null, given?: number): Promise<void> {
    const { desk, bar, room, strip } = this.around;
    const { id, notes } = held;
    const autosave = new Autosave(
      {
        id,
        shelf: this.shelf,
        room,
        report: (state) => {
          if (autosave === this.autosave) bar.showSaving(state);
        },
        exportDocument: () => exportedBy(desk.model),
        line: () => desk.shelfLine,
        edited: () => this.edited(),
        lost: () => {
          if (autosave === this.autosave) void this.lose();
        },
      },
      { document: held.document, changes: held.changes },
      head,
      { given },
    );
    await this.autosave?.settle();
    const lost = await desk.show(held, autosave.transport, !window.isOwner);
    this.autosave?.stop();
    if (window !== this.window) this.window?.close();
    this.autosave = autosave;
    this.window = window;
    this.id_ = id;
    this.looking = false;
    this.toldOfEdit = false;
    history.replaceState(null, "", `#${id}`);
    this.tell(notes);
    strip.hide();
    bar.showSaving({ kind: "saved", at: held.savedAt || undefined });
    if (lost > 0) await this.keepWhole(held, lost);
    if (!window.isOwner) this.watch();
    else this.offer(notes.conflictOf ? id : undefined);
  }

  /** @param id of one that is shown itself */
  private offer(id = this.unfitting.shift()): void {
    if (id !== undefined) this.around.offer(id);
  }

  private tell(notes: JobNotes): void {
    this.notes_ = notes;
    this.around.bar.showFile(isNamed(notes.file) ? notes.file.name : undefined);
    this.around.bar.showState(notes.state, notes.away);
  }

  /** What the customer has is not what is edited now. */
  private edited(): void {
    const { state, revisions } = this.notes_ ?? {};
    const last = revisions?.at(-1);
    if (this.toldOfEdit || !last || (state !== "sent" && state !== "accepted" && state !== "done")) return;
    this.toldOfEdit = true;
    this.around.bar.showNotice(
      `This job is ${state}. As it was then it is kept as a revision (the last one is ${last.number}); what you change now is not in it.`,
      true,
    );
  }

  private watch(): void {
    const { desk, strip, run } = this.around;
    desk.allowEdits(false);
    this.autosave?.watch();
    strip.show("Another window has this job open. You watch: what is typed there appears here.", [
      { label: "Take over", act: () => run("Taking the job over…", () => this.takeOver()) },
    ]);
  }

  /** The last changes could not be shown: the whole is frozen as it is before anything is put in its place. */
  private async keepWhole({ id }: HeldJob, lost: number): Promise<void> {
    const { number } = await api.freeze(id, `with ${lost} changes that could not be shown`);
    await this.autosave!.putWhole();
    this.around.bar.showNotice(
      `The last ${lost === 1 ? "change" : `${lost} changes`} could not be shown again; the job with ${lost === 1 ? "it" : "them"} is kept as its revision ${number}, for export. Check the rows that were edited last.`,
      true,
    );
  }

  /** Another window has the job now, or has changed it. What is being typed is let come to its end. */
  private async lose(): Promise<void> {
    const { autosave, id_, window } = this;
    const { strip, bar } = this.around;
    if (!autosave || !id_) return;
    autosave.hold();
    if (isEditing())
      strip.show(
        "Another window has taken this job over. What you type now is kept; finish the cell with Enter.",
        [],
      );
    while (isEditing()) await new Promise((resolve) => setTimeout(resolve, EDITING_MS));
    if (autosave !== this.autosave) return;
    const unfitting = await autosave.giveUp();
    let kept: string | undefined;
    if (unfitting) {
      const { content, conflictOf, line, waiting } = unfitting;
      const id = newId();
      // Where the server can't take it now, it waits in the browser.
      const isDown = await api.putJob(id, { ...content, after: null, conflictOf, line }).then(
        () => true,
        () => false,
      );
      if (isDown) {
        await waiting?.drop();
        kept = id;
      } else if (!waiting) {
        bar.showNotice(
          "What was typed here last is not saved, and this browser keeps nothing. Save the workbook as .xlsx before you close this page.",
          true,
        );
        return;
      }
    }
    window?.close();
    this.window = undefined;
    this.autosave = undefined;
    try {
      await this.open(id_);
    } catch (error) {
      bar.showNotice(error instanceof Error ? error.message : String(error), true);
    }
    if (kept !== undefined) this.around.offer(kept);
  }

  /**
   * Hands over what waits in this browser, of one job or of all that no other
   * window has; what does not fit any more becomes a job of its own.
   */
  private async handOver(only?: string): Promise<void> {
    for (const waiting of await this.around.room.all()) {
      if (only !== undefined && waiting.job !== only) continue;
      if (waiting.shelf !== this.shelf) {
        this.around.bar.showNotice(
          `Edits of “${labelInWords(waiting.line)}” wait in this browser; they belong to another data folder. Start Rigsheet with that folder (--data) at this address to hand them over.`,
          true,
        );
        continue;
      }
      const window = only === undefined ? new JobWindow(waiting.job, IDLE) : undefined;
      if (!window || (await window.own())) await this.handOverOne(waiting);
      window?.close();
    }
  }

  private async handOverOne(waiting: Waiting): Promise<void> {
    const { job, after, content, changes, line, name } = waiting;
    const { room, bar } = this.around;
    const title = labelInWords(line) || "a job";
    const edits = changes.length === 1 ? "1 edit" : `${changes.length} edits`;
    try {
      if (after === null) {
        await api.putJob(job, {
          document: content.document,
          changes: [...content.changes, ...changes],
          after: null,
          line,
        });
      } else await api.postChanges(job, { changes, line }, false);
      await room.drop(name);
      bar.showNotice(
        `${edits} of “${title}”, made while the server was away, ${changes.length === 1 ? "is" : "are"} saved now.`,
        true,
      );
    } catch (error) {
      if (!(error instanceof ServerTrouble) || error.status === 0) throw error;
      if (error.status !== CHANGED_ELSEWHERE && error.status !== GONE) throw error;
      const id = newId();
      await api.putJob(id, {
        document: content.document,
        changes: [...content.changes, ...changes],
        after: null,
        line,
        ...(after !== null && { conflictOf: { job, after } }),
      });
      await room.drop(name);
      this.unfitting.push(id);
    }
  }
}

/** An earlier version kept a file's job under a name of its own making. */
const isNamed = (file: JobFile | undefined): file is JobFile =>
  file !== undefined && (file.path !== undefined || file.mark !== "");

/** A state is shown with its own formulas; the functions that they call are today's. */
function thenAndNow(then: ShelfLine | undefined, now: ShelfLine): string {
  if (then?.total === undefined || then.total === now.total) return "";
  return ` Its total was ${totalInWords(then)} then; with today's functions it is ${totalInWords(now) || "not known"}.`;
}

const GONE = 404;
const IDLE = { asked: async () => undefined, lost: () => undefined };
