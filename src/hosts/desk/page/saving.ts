/** Save: into the file that the job belongs to, after a look whether it is still as it was; elsewhere a download. */
import type { Book } from "../../../workbooks/book";
import { shelfLineOf } from "../../../workbooks/shelfLine";
import { FILE_CHANGED, FILE_GONE } from "../protocol";
import { api } from "./api";
import { ServerTrouble } from "./deskTrouble";
import type { Bar } from "./bar";
import { showComparison } from "./comparing";
import { documentOf, type Desk } from "./desk";
import { askAboutChangedFile } from "./dialogs";
import { download } from "./dom";
import { fileHeldBy, type HeldFile } from "../../storage/fileHandles";
import type { OpenJob } from "./openJob";

interface Around {
  readonly desk: Desk;
  readonly bar: Bar;
  readonly job: OpenJob;
}

interface NotDone {
  /** In a sentence. */
  readonly changed: string;
  /** There is nothing there to take or to compare with. */
  readonly isGone: boolean;
}

/** A file of the job's, whoever can reach it. */
interface Target {
  readonly name: string;
  /** Says in a sentence that it has changed; undefined where it was written. */
  write(book: Book, over: boolean): Promise<NotDone | { readonly keptAs?: string }>;
  theirs(): Promise<{ readonly book: Book; readonly mark: string }>;
}

export async function save({ desk, bar, job }: Around): Promise<void> {
  await job.settle(job.id ?? "");
  const { savedAt } = job;
  const book = desk.book();
  // What is only watched may be behind, and a frozen state is not what the file is to hold.
  const target = job.mayEdit ? await targetOf(job) : undefined;
  const isWhole = job.mayEdit && !job.unsaved;
  if (target) {
    const done = await into(target, book, { desk, bar, job });
    if (done === "written" && isWhole) await job.wentOutside(savedAt);
    if (done !== "download") return;
  }
  const name = `${desk.fileTitle}.xlsx`;
  download(await api.saveXlsx(book), name);
  bar.showNotice(`Saved as ${name} where the browser puts its downloads.`);
  if (isWhole) await job.wentOutside(savedAt);
}

async function targetOf({ id, file, head }: OpenJob): Promise<Target | undefined> {
  if (!id || !file || head === undefined) return undefined;
  const { name, path } = file;
  if (path !== undefined) {
    return {
      name,
      write: async (book, over) => {
        try {
          return await api.saveFile(id, book, head, over);
        } catch (error) {
          if (!(error instanceof ServerTrouble)) throw error;
          const isGone = error.status === FILE_GONE;
          if (!isGone && error.status !== FILE_CHANGED) throw error;
          return { changed: error.message, isGone };
        }
      },
      theirs: () => api.theirs(id),
    };
  }
  const held = await fileHeldBy(id);
  return held && handleTarget(id, held);
}

function handleTarget(id: string, held: HeldFile): Target {
  return {
    name: held.name,
    write: async (book, over) => {
      const { notes } = await api.held(id);
      // Before a look at it: one that is only closed to this page is not gone.
      await held.mustBeAllowed();
      const now = await held.read().catch(() => undefined);
      if (!over && now?.mark !== notes.file?.mark)
        return {
          changed: now
            ? `${held.name} has changed since it was opened or saved here: another program has written it.`
            : `${held.name} is gone from its folder, or has another name now, or can't be read.`,
          isGone: now === undefined,
        };
      // What somebody else wrote there is not thrown away.
      const isTheirs = now !== undefined && now.mark !== notes.file?.mark;
      if (isTheirs) download(new Blob([now.bytes]), `theirs ${held.name}`);
      const mark = await held.write(await api.saveXlsx(book));
      await api.noteJob(id, { file: { name: held.name, mark } });
      return isTheirs ? { keptAs: `theirs ${held.name}, where the browser puts its downloads` } : {};
    },
    theirs: async () => {
      const { bytes, mark } = await held.read();
      return { book: await api.openXlsx(new Blob([bytes])), mark };
    },
  };
}

async function into(
  target: Target,
  book: Book,
  { bar, job }: Around,
): Promise<"written" | "left" | "download"> {
  const written = (keptAs: string | undefined): "written" => {
    bar.showNotice(`Written into ${target.name}.${keptAs ? ` What stood there is kept as ${keptAs}.` : ""}`);
    return "written";
  };
  const first = await target.write(book, false);
  if (!("changed" in first)) return written(first.keptAs);
  for (;;) {
    switch (await askAboutChangedFile(first.changed, first.isGone)) {
      case "over": {
        const again = await target.write(book, true);
        if ("changed" in again) throw new Error(again.changed);
        return written(again.keptAs);
      }
      case "compare": {
        const { book: theirs } = await target.theirs();
        await showComparison({ name: `What is in ${target.name}`, book: theirs }, { name: "This job", book });
        break;
      }
      case "theirs": {
        const { book: theirs, mark } = await target.theirs();
        await job.replaceContent((id, after) =>
          api.takeTheirs(id, { document: documentOf(theirs), after, mark, line: shelfLineOf(theirs) }),
        );
        await job.wentOutside(job.savedAt);
        bar.showNotice(
          `The job is now as ${target.name} is. As it was before it is kept as a revision, under Jobs.`,
        );
        return "left";
      }
      case "download":
        return "download";
      default:
        return "left";
    }
  }
}
