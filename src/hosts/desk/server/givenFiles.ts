/** The workbooks that a desk was started with, and the jobs that go with them. */
import { createHash, randomInt } from "node:crypto";
import { chmod, copyFile, readFile } from "node:fs/promises";
import path from "node:path";
import { headOf, isAsLeft, type JobFile } from "../../../jobs/content";
import type { Shelf } from "../../../jobs/shelf";
import { timeInName } from "../../../jobs/timeInName";
import type { Book } from "../../../workbooks/book";
import { FileTrouble, troubles } from "../../file/fileTrouble";
import { asTrouble } from "../../file/saveAtomically";
import { makeOwnFolder } from "../../storage/ownFolder";
import { FILE_CHANGED, FILE_GONE, type GivenFile, type Saved, type Theirs } from "../protocol";
import { Refused } from "./requestBody";

interface Given {
  readonly number: number;
  readonly path: string;
  /** Of its bytes when it was last handed out. */
  mark?: string;
}

/** What the server does with files; tests hand in their own. */
export interface FileServices {
  readonly readXlsx: (bytes: Uint8Array) => Promise<Book>;
  readonly writeXlsx: (book: Book) => Promise<Uint8Array>;
  readonly saveAtomically: (file: string, bytes: Uint8Array) => Promise<void>;
}

const MOST_NUMBER = 2 ** 40;
const OWN_FILE = 0o600;

/** By it a file's job was known before version 3. */
const firstName = (file: string): string =>
  `job-${createHash("sha256").update(file).digest("hex").slice(0, 12)}`;

const markOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

export class GivenFiles {
  private saving: Promise<unknown> = Promise.resolve();
  private readonly all: Given[] = [];
  /** Each desk counts from elsewhere: a page of one before must not name another file by its number. */
  private readonly first = randomInt(MOST_NUMBER);

  /** @param replaced the folder of what saves wrote over */
  constructor(
    private readonly shelf: Shelf,
    private readonly services: FileServices,
    private readonly replaced: string,
  ) {}

  /** @throws Error with a sentence where it can't be read */
  async give(file: string): Promise<void> {
    await this.services.readXlsx((await read(file)).bytes);
    this.all.push({ number: this.first + this.all.length, path: file });
  }

  /**
   * The file that was given last, with the job that goes with it. A job whose
   * file another program has written since lets go of it, and stays on the shelf.
   */
  async last(notices: string[]): Promise<GivenFile | undefined> {
    const given = this.all.at(-1);
    if (!given) return undefined;
    const { number } = given;
    const name = path.basename(given.path);
    const { bytes, mark } = await read(given.path);
    given.mark = mark;
    const job = this.shelf.ofFile(given.path, firstName(given.path));
    if (job !== undefined) {
      const { notes } = await this.shelf.open(job);
      if (isAsLeft(notes.file!, mark)) {
        if (mark !== notes.file!.mark) await this.shelf.note(job, { file: { name, path: given.path, mark } });
        return { number, name, job };
      }
      await this.shelf.note(job, { file: null });
      notices.push(
        `${name} ${notes.file!.mark === "" ? "may have been" : "was"} changed by another program since it was last open here, so it is shown as it is now. What was edited here before is a job of its own, under Jobs.`,
      );
    }
    return { number, name, book: await this.services.readXlsx(bytes) };
  }

  /** The file of a job that is made of it now. */
  fileOf(number: number): JobFile {
    const given = this.all.find((one) => one.number === number);
    if (given?.mark === undefined) throw new Refused(404, "This desk was not started with that file.");
    return { name: path.basename(given.path), path: given.path, mark: given.mark };
  }

  async theirs(id: string): Promise<Theirs> {
    const { path: file } = await this.mustHave(id);
    const { bytes, mark } = await read(file);
    return { book: await this.services.readXlsx(bytes), mark };
  }

  /**
   * One after another: of two at once the older could come last.
   * @param over what another program has written there meanwhile
   * @param after the revision of the job that the book shows
   */
  save(id: string, book: Book, over: boolean, after?: string): Promise<Saved> {
    const work = (): Promise<Saved> => this.saveNow(id, book, over, after);
    const result = this.saving.then(work, work);
    this.saving = result.catch(() => undefined);
    return result;
  }

  private async saveNow(id: string, book: Book, over: boolean, after: string | undefined): Promise<Saved> {
    const held = await this.shelf.held(id);
    if (after !== undefined && after !== headOf(held))
      throw new Refused(
        409,
        "This window does not show the job as it is now: another one has changed it, or not all that was typed here is saved yet. Nothing was written.",
      );
    const file = await this.mustHave(id);
    const { name } = file;
    // Written first, which may take seconds: the look at the file is then the last thing before it is replaced.
    const bytes = await this.services.writeXlsx(book);
    const mark = markOf(bytes);
    const now = await read(file.path).catch(() => undefined);
    const isAsItWas = now !== undefined && isAsLeft(file, now.mark);
    if (!isAsItWas && !over)
      throw new Refused(
        now ? FILE_CHANGED : FILE_GONE,
        now
          ? `${name} has changed since it was opened or saved here: another program has written it.`
          : `${name} is gone from its folder, or has another name now, or can't be read.`,
      );
    // What somebody else wrote there is not thrown away.
    const keptAs = now && !isAsItWas ? await this.keepAside(file.path) : undefined;
    // Said before it is done: an end in between would make our own save another program's.
    await this.shelf.note(id, { file: { ...file, saving: mark } });
    await this.services.saveAtomically(file.path, bytes);
    await this.shelf.note(id, { file: { name, path: file.path, mark } });
    return { savedAt: new Date().toISOString(), keptAs };
  }

  private async mustHave(id: string): Promise<JobFile & { path: string }> {
    const { file } = (await this.shelf.held(id)).notes;
    if (file?.path === undefined)
      throw new Refused(409, "This job belongs to no file; use Save to download the workbook.");
    return { ...file, path: file.path };
  }

  private async keepAside(file: string): Promise<string> {
    await makeOwnFolder(this.replaced);
    const { name, ext } = path.parse(file);
    const kept = path.join(this.replaced, `${name} ${timeInName()}${ext}`);
    await copyFile(file, kept);
    // The copy has the rights of the original, which others may be able to read.
    await chmod(kept, OWN_FILE);
    return kept;
  }
}

async function read(file: string): Promise<{ bytes: Uint8Array; mark: string }> {
  try {
    const bytes = await readFile(file);
    return { bytes, mark: markOf(bytes) };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new FileTrouble(
      code === "ENOENT"
        ? `There is no file ${file}. Check the name, or start without a file.`
        : code === "EISDIR"
          ? troubles.isFolder(file)
          : `The file ${file} can't be read (${code ?? asTrouble(error, file).message}). Check that it is a file and that you may read it.`,
    );
  }
}
