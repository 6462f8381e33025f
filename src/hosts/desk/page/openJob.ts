/**
 * Which job this window shows, and whether it edits it, watches another window
 * edit it, or looks at a frozen state of it. Here what was typed and no longer
 * fits becomes a job of its own.
 */
import {
  headOf,
  type JobContent,
  type JobDocument,
  type JobFile,
  type JobNotes,
} from "../../../jobs/content";
import type { ShelfLine } from "../../../workbooks/shelfLine";
import { nameInWords, timeInWords, totalInWords } from "../../../jobs/entryInWords";
import type { HeldJob } from "../../../jobs/shelf";
import type { Book } from "../../../workbooks/book";
import { templates } from "../../../workbooks/templates";
import { exportedBy } from "../../grid/exportedBy";
import type { GridModel } from "../../grid/library";
import { fileHeldBy, holdFor } from "../../storage/fileHandles";
import { CHANGED_ELSEWHERE, type GivenFile } from "../protocol";
import { api } from "./api";
import { messageOf, ServerTrouble } from "./deskTrouble";
import { pause } from "./dom";
import { Autosave } from "./autosave";
import { jobInAddress } from "./backAndForth";
import type { Bar } from "./bar";
import { documentOf, shelfLineOf, type Desk } from "./desk";
import type { GridCommand } from "./libraryTypes";
import { JobWindow } from "./jobWindow";
import { NOWHERE } from "./replayed";
import { selectCell } from "./selectCell";
import { askToPersist } from "./persistence";
import { keeper, stand } from "./stand";
import type { Strip } from "./strip";
import { isEditing } from "./unfinished";
import { otherVersion, type OtherVersion } from "./otherVersion";
import { uuid } from "./uuid";
import type { Waiting, WaitingLog, WaitingRoom } from "./waiting";

export const newId = (): string => `job-${uuid()}`;

/** A file that the browser holds, and the mark of the bytes that the job is made of. */
export interface OpenedFile {
  readonly handle: FileSystemFileHandle;
  readonly mark: string;
}

const EDITING_MS = 250;

/** What the page gives. */
export interface Around {
  readonly desk: Desk;
  readonly bar: Bar;
  readonly strip: Strip;
  readonly room: WaitingRoom;
  /** Runs a user's action, and shows the sentence when it fails. */
  readonly run: (what: string, work: () => Promise<void>) => void;
  /** Another job is shown, or the same one under another name because its own is gone. */
  readonly changed: (isGone: boolean) => void;
  /** Offers what no longer fitted: the id of the job that it became. */
  readonly offer: (id: string) => void;
}

/** What a new job is made from. */
interface NewJob {
  readonly given?: GivenFile;
  readonly held?: OpenedFile;
  /** It holds nothing yet that is not in a file, or in what comes with the page. */
  readonly isElsewhere?: boolean;
}

export class OpenJob {
  private id_: string | undefined;
  private notes_: JobNotes | undefined;
  private autosave: Autosave | undefined;
  private window: JobWindow | undefined;
  private shelf = "";
  /** A frozen state is shown in the job's place. */
  private looking = false;
  /** The job's workbook is not of today's version, or is none of ours. */
  private other: OtherVersion | undefined;
  private toldOfEdit = false;
  /** Of the last edit that is saved. */
  private savedAt_ = "";
  /** Why nothing is kept once the page is closed. */
  private unkept_: string | undefined;
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
  /** The revision that the server holds. */
  get head(): string | undefined {
    return this.autosave?.serverHead ?? undefined;
  }
  get unsaved(): boolean {
    return this.autosave?.unsaved ?? false;
  }
  get savedAt(): string {
    return this.savedAt_;
  }
  get unkept(): string | undefined {
    return this.unkept_;
  }
  /** Work that is lost with the page, or may be, since it is in no file: a browser's storage for files' pages is a rescue and no more. */
  get needsFile(): boolean {
    const isRescue = stand === "file" || this.unkept_ !== undefined;
    return isRescue && !this.looking && this.savedAt_ !== (this.notes_?.outside ?? "");
  }
  /** A frozen state is shown, which is not what the job's file is to hold. */
  get isLooking(): boolean {
    return this.looking;
  }
  private get isNewer(): boolean {
    return this.other?.isNewer ?? false;
  }
  /** Why the job takes no edit here; undefined where it does. */
  get whyNoEdit(): string | undefined {
    if (this.mayEdit) return undefined;
    if (this.looking)
      return "A frozen revision is shown, in which nothing can be changed. Go back to the job first.";
    return this.isNewer
      ? "A newer Rigsheet made this job, and this one only shows it. Open it with one as new."
      : "Another window has this job open, and this one only watches. Take it over first.";
  }
  /** The job is this window's, and shown as it is now. */
  get mayEdit(): boolean {
    return !this.looking && !this.isNewer && (this.window?.isOwner ?? false);
  }

  /**
   * Shows the job that the address names, the given file, the last one, or a demonstration.
   * @returns whether that very job was asked for
   */
  async start(): Promise<boolean> {
    const named = jobInAddress();
    const { shelf, given, open, unkept } = await api.start(named !== undefined);
    this.shelf = shelf;
    this.unkept_ = unkept;
    this.around.bar.showKept(unkept === undefined);
    await this.handOver();
    for (const id of [named, named ? undefined : given?.job, given?.book ? undefined : open]) {
      if (id === undefined) continue;
      try {
        await this.open(id);
        return id !== open || id === named;
      } catch (error) {
        if (error instanceof ServerTrouble && error.status === 0) throw error;
        this.around.bar.showNotice(`The job that was open can't be shown. ${messageOf(error)}`, true);
      }
    }
    // What came with the page is nobody's work.
    await this.create(given?.book ?? templates[0]!.demonstration(), { given, isElsewhere: !given });
    return given !== undefined;
  }

  /** A file has now what was saved until then. */
  async wentOutside(savedAt: string): Promise<void> {
    const { id_ } = this;
    if (stand === "server" || id_ === undefined || savedAt === "") return;
    const { outside } = await api.noteJob(id_, { outside: savedAt });
    if (id_ === this.id_) this.tell({ ...this.notes_!, outside });
  }

  /** @throws Error with a sentence; the job that is shown then stays */
  async open(id: string): Promise<void> {
    const window = id === this.id_ && this.window ? this.window : this.newWindow(id);
    const isMine = window.isOwner || (await window.own());
    try {
      await this.handOver(isMine ? id : undefined);
      const held = await api.openJob(id);
      // What could not be handed over now is shown all the same, and sent again.
      const earlier = isMine ? await this.waitingFor(held) : undefined;
      await this.show(held, window, headOf(held), undefined, earlier);
      const said = [held.elsewhere && inAnotherBrowser(held.elsewhere), this.other?.sentence].filter(Boolean);
      if (said.length > 0) this.around.bar.showNotice(said.join(" "), true);
    } catch (error) {
      if (window !== this.window) window.close();
      throw error;
    }
  }

  /** Makes a job of a book, and shows it; the open one stays among the jobs. */
  async create(book: Book, { given, held, isElsewhere = false }: NewJob = {}): Promise<void> {
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
      ...(held && { file: { name: held.handle.name, mark: held.mark } }),
    };
    if (held) await holdFor(id, held.handle);
    await this.show({ ...content, id, savedAt: "", notes }, window, null, given?.number);
    await this.autosave!.create();
    if (held) await api.noteJob(id, { file: { name: held.handle.name, mark: held.mark } });
    // Before anything is said of it: whoever looks at the jobs then is not reminded of work that is none.
    if (isElsewhere) await this.wentOutside(this.savedAt_);
    const { other } = this;
    const said = [other?.sentence, before && `“${before}” is kept, under Jobs.`].filter(Boolean);
    if (said.length > 0) this.around.bar.showNotice(said.join(" "), other !== undefined);
  }

  /** Takes the shown job over from the window that edits it. */
  async takeOver(): Promise<void> {
    const { window, autosave, around } = this;
    if (!window || !autosave || !this.id_) return;
    await window.takeOver();
    // Before what it makes of the job is taken in.
    await this.handOver(this.id_);
    if (!(await autosave.goOn())) return await this.open(this.id_);
    around.desk.allowEdits(true);
    around.strip.hide();
    this.offer();
  }

  /** Shows a frozen state of a job; the grid takes no edit. */
  async look(id: string, number: number): Promise<void> {
    const { desk, strip, run } = this.around;
    const held = await api.revision(id, number);
    if (id !== this.id_) await this.open(id);
    await this.autosave?.settle();
    const { lost } = await desk.show(held, NOWHERE, true, `Revision ${number}`);
    this.looking = true;
    const { why, at, line } = held.note!;
    strip.show(
      `You look at revision ${number}${why ? ` (${why})` : ""}, frozen ${timeInWords(at)}. Nothing can be changed in it.${lost > 0 ? ` Its last ${lost} changes can't be shown; it is kept whole, for export.` : ""}${thenAndNow(line, desk.shelfLine)}`,
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
    await this.mustBeSaved(id);
    await api.restore(id, number);
    await this.open(id);
    this.around.bar.showNotice(`Revision ${number} is restored. What was there before is a revision too.`);
  }

  async copy(id: string, number?: number): Promise<void> {
    await this.mustBeSaved(id);
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
    await this.mustBeSaved(id);
    await work();
    if (id === this.id_) this.tell((await api.held(id)).notes);
  }

  /** @throws Error with a sentence while something that was typed in the job is not at the server */
  async mustBeSaved(id: string): Promise<void> {
    await this.settle(id);
    if (id === this.id_ && !this.looking && this.unsaved)
      throw new Error(
        "Not all of what was typed is saved yet, so this would leave it out. Try again when it is.",
      );
  }

  /**
   * Does in the shown job what was done elsewhere, as if it were typed.
   * @param expected the revision that it follows
   */
  async type(commands: readonly GridCommand[], expected: string): Promise<void> {
    const { autosave, around } = this;
    if (!autosave || !this.mayEdit || this.unsaved || autosave.serverHead !== expected)
      throw new Error("The job was changed once more meanwhile. Try again.");
    for (const command of commands)
      if (!around.desk.dispatch(command.type, command))
        throw new Error("A part of it was not taken. Undo takes back what was; compare the two.");
    around.strip.hide();
    await autosave.settle();
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
    await this.mustBeSaved(id_);
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

  /** What waits in this browser and follows the job as it is. */
  private async waitingFor(held: HeldJob): Promise<Waiting | undefined> {
    const all = await this.around.room.all();
    return all.find(
      ({ job, shelf, after, changes }) =>
        job === held.id && shelf === this.shelf && after === headOf(held) && changes.length > 0,
    );
  }

  private async show(
    held: HeldJob,
    window: JobWindow,
    head: string | null,
    given?: number,
    earlier?: Waiting,
  ): Promise<void> {
    const { desk, bar, room, strip } = this.around;
    const { id, notes } = held;
    // Of this job's own model, whatever is shown by then.
    const own: { model?: GridModel } = {};
    const autosave = new Autosave(
      {
        id,
        shelf: this.shelf,
        room,
        report: (state) => {
          if (autosave !== this.autosave) return;
          if (state.kind === "saved" && state.at !== undefined) this.savedAt_ = state.at;
          bar.showSaving(state);
        },
        exportDocument: () => exportedBy(own.model!) as unknown as JobDocument,
        line: () => (own.model ? shelfLineOf(own.model) : { ...NO_LINE, ...notes.line }),
        edited: () => this.edited(),
        lost: (isGone) => {
          if (autosave === this.autosave) void this.lose(isGone);
        },
      },
      { document: held.document, changes: held.changes },
      head,
      given,
      earlier && { changes: earlier.changes, drop: () => room.drop(earlier.name) },
    );
    await this.autosave?.settle();
    if (this.autosave && !(await this.autosave.isSafe()))
      throw new Error(
        "Not all of what was typed in the open job is saved yet, and this browser keeps nothing. Wait until it is saved, or save it as .xlsx first.",
      );
    const whole = earlier ? { ...held, changes: [...held.changes, ...earlier.changes] } : held;
    const shown = await desk.show(whole, autosave.transport, !window.isOwner);
    own.model = shown.model;
    this.autosave?.stop();
    if (window !== this.window) this.window?.close();
    this.autosave = autosave;
    this.window = window;
    const isAnother = id !== this.id_;
    this.id_ = id;
    if (isAnother) this.around.changed(false);
    this.savedAt_ = held.savedAt;
    this.looking = false;
    this.other = undefined;
    this.toldOfEdit = false;
    this.tell(notes);
    strip.hide();
    if (earlier) autosave.begin();
    else bar.showSaving({ kind: "saved", at: held.savedAt || undefined });
    if (shown.lost > 0 && window.isOwner) await this.keepWhole(held, shown.lost);
    if (!window.isOwner) this.watch();
    else {
      this.offer(notes.conflictOf ? id : undefined);
      this.other = otherVersion(shown.model);
      if (this.isNewer) desk.allowEdits(false);
    }
  }

  /** @param id of one that is shown itself */
  private offer(id = this.unfitting.shift()): void {
    if (id !== undefined) this.around.offer(id);
  }

  private tell(notes: JobNotes): void {
    this.notes_ = notes;
    const { file } = notes;
    const { bar } = this.around;
    bar.showFile(file?.path === undefined ? undefined : file.name);
    bar.showState(notes.state, notes.away);
    // One that a browser holds is named only by that browser: Save writes there and nowhere else.
    const { id_ } = this;
    if (file?.path === undefined && file?.mark && id_ !== undefined)
      void fileHeldBy(id_).then((held) => {
        if (held && id_ === this.id_) bar.showFile(held.name);
      });
  }

  /** What the customer has is not what is edited now. */
  private edited(): void {
    if (stand === "folder") askToPersist();
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
    const take = { label: "Take over", act: () => run("Taking the job over…", () => this.takeOver()) };
    strip.show("Another window has this job open. You watch: what is typed there appears here.", [take]);
    void this.untilFree(() =>
      strip.show("The window that had this job open has closed. Take it over to edit it here.", [take]),
    );
  }

  /** Tells once that no other window has the job that is watched here. */
  private async untilFree(tell: () => void): Promise<void> {
    const { window, autosave } = this;
    for (;;) {
      await pause(AGAIN_MS);
      if (window !== this.window || autosave !== this.autosave || window?.isOwner !== false) return;
      if (await window.isFree()) return tell();
    }
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

  /**
   * Another window has the job now, or has changed it. What is being typed is let come to its end.
   * @param isGone it is not there any more
   */
  private async lose(isGone = false): Promise<void> {
    const { autosave, id_ } = this;
    const { strip, bar, desk } = this.around;
    if (!autosave || !id_ || !autosave.hold()) return;
    if (isGone && autosave.unsaved) return this.goOnAsOwn(autosave);
    if (isEditing())
      strip.show(
        "Another window has taken this job over. What you type now is kept; finish the cell with Enter.",
        [],
      );
    let waiting: WaitingLog | undefined;
    do {
      while (isEditing()) await pause(EDITING_MS);
      waiting = await autosave.settled();
    } while (isEditing());
    // From the last look to here nothing was awaited: no key was pressed in between.
    const unfitting = autosave.giveUp();
    if (autosave === this.autosave) desk.allowEdits(false);
    if (unfitting) {
      const { content, conflictOf, line } = unfitting;
      const id = newId();
      // Where the server can't take it now, it waits in the browser.
      const whole = { ...content, after: null, conflictOf, line };
      const isDown = await api.putJob(id, whole).then(
        () => true,
        () => false,
      );
      if (isDown) {
        await waiting?.drop();
        this.unfitting.push(id);
      } else if (!waiting) {
        bar.showNotice(
          "What was typed here last is not saved, and this browser keeps nothing. Save the workbook as .xlsx before you close this page.",
          true,
        );
        return;
      }
    }
    if (autosave !== this.autosave) this.offer();
    else if (isGone) this.showGone();
    else await this.openAgain(id_);
  }

  /**
   * The shown job was deleted in another window, or with all that the browser
   * kept, and has edits that are nowhere else: it goes on as a job of its own,
   * under the hands of whoever types in it.
   */
  private async goOnAsOwn(autosave: Autosave): Promise<void> {
    const { strip, run } = this.around;
    const id = newId();
    const window = this.newWindow(id);
    await window.own();
    if (autosave !== this.autosave) return window.close();
    this.window?.close();
    this.window = window;
    this.id_ = id;
    this.toldOfEdit = false;
    this.around.changed(true);
    this.tell({ state: "draft", away: false, revisions: [] });
    autosave.goOnAs(id);
    if (this.looking)
      run("Opening the job…", async () => {
        await autosave.settle();
        await this.open(id);
      });
    strip.show(
      "The job was not here any more: it was deleted in another window, or with all that this browser kept. As it stood here, with what you typed last, it is kept as this job, a new one.",
      [{ label: "Close", act: () => strip.hide() }],
    );
  }

  /** The shown job was deleted, and all that was typed in it had been saved. */
  private showGone(): void {
    const { strip, desk, run } = this.around;
    this.window?.close();
    this.window = undefined;
    strip.show(
      "This job is not here any more: it was deleted. You see it as it was last, and nothing more is saved in it.",
      [
        {
          label: "Keep it as a job",
          act: () => run("Keeping the job…", () => this.create(desk.book())),
        },
      ],
    );
  }

  /** Until the server answers. */
  private async openAgain(id: string): Promise<void> {
    const { autosave } = this;
    const { desk } = this.around;
    const place = desk.placeShown;
    // Else the job would seem to be another window's for a moment.
    await this.window?.close();
    this.window = undefined;
    while (autosave === this.autosave) {
      try {
        await this.open(id);
        selectCell(desk.model, place.sheet, place.cell);
        this.offer();
        return;
      } catch (error) {
        this.around.bar.showNotice(messageOf(error), true);
        if (!(error instanceof ServerTrouble) || error.status !== 0) return;
        await pause(AGAIN_MS);
      }
    }
  }

  /**
   * Hands over what waits in this browser, of all jobs that no other window
   * has; what does not fit any more becomes a job of its own.
   * @param mine the job that is this window's already
   */
  private async handOver(mine?: string): Promise<void> {
    for (const waiting of await this.around.room.all()) {
      const title = nameInWords(waiting.line);
      if (waiting.shelf !== this.shelf) {
        this.around.bar.showNotice(
          `Edits of “${title}” wait in this browser; they belong to another data folder. Start Rigsheet with that folder (--data) at this address to hand them over.`,
          true,
        );
        continue;
      }
      const window = waiting.job === mine ? undefined : new JobWindow(waiting.job, IDLE);
      try {
        // What an open window has not handed over yet is that window's.
        if (!window || (await window.own())) await this.handOverOne(waiting, title);
      } catch (error) {
        if (error instanceof ServerTrouble && error.status === 0) throw error;
        this.around.bar.showNotice(
          `Edits of “${title}” still wait in this browser: ${messageOf(error)}`,
          true,
        );
      } finally {
        window?.close();
      }
    }
  }

  private async handOverOne(waiting: Waiting, title: string): Promise<void> {
    const { job, after, content, changes, line, name } = waiting;
    const { room, bar } = this.around;
    const whole = { document: content.document, changes: [...content.changes, ...changes], line };
    try {
      if (after === null) await api.putJob(job, { ...whole, after: null });
      else if (changes.length > 0) await api.postChanges(job, { changes, line }, false);
    } catch (error) {
      if (!(error instanceof ServerTrouble) || !UNFITTING.has(error.status)) throw error;
      // Named after what waits: done again, it is the same job.
      const id = `job-${name.slice(-UUID_LENGTH)}`;
      await api.putJob(id, { ...whole, after: null, ...(after !== null && { conflictOf: { job, after } }) });
      await room.drop(name);
      this.unfitting.push(id);
      return;
    }
    await room.drop(name);
    if (changes.length > 0 || after === null) bar.showNotice(savedNow(changes.length, title), true);
  }
}

const savedNow = (edits: number, title: string): string => {
  const what = edits === 0 ? "The new job" : edits === 1 ? "1 edit of" : `${edits} edits of`;
  return `${what} “${title}”, made while ${keeper} was away, ${edits > 1 ? "are" : "is"} saved now.`;
};
const inAnotherBrowser = (since: string): string =>
  `Another browser has had this job open since ${timeInWords(since)}. What is typed in both does not go together; what comes second is kept as a job of its own, and offered. Close it in one of them first.`;
const AGAIN_MS = 2000;
const UUID_LENGTH = 36;
const IDLE = { asked: async () => undefined, lost: () => undefined };
/** A job that was changed meanwhile, that is gone, or that can't be read. */
const UNFITTING = new Set([CHANGED_ELSEWHERE, 404, 422]);
const NO_LINE: ShelfLine = {
  number: "",
  revision: "",
  name: "",
  customer: "",
  date: "",
  currency: "",
  verdict: "",
};

/** A state is shown with its own formulas; the functions that they call are today's. */
function thenAndNow(then: ShelfLine | undefined, now: ShelfLine): string {
  if (then?.total === undefined || then.total === now.total) return "";
  return ` Its total was ${totalInWords(then)} then; with today's functions it is ${totalInWords(now) || "not known"}.`;
}
