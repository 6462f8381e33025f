/**
 * The disk's stand of the storage: a file for each thing, in a folder of the
 * user's own. What it confirms is on the disk by the disk's own word. Where a
 * disk fails to sync and then to cut off what it failed to sync, or where a
 * start's sync of what a killed program left fails, a later start may be shown
 * what only the memory of the system holds; it was never confirmed, and is gone
 * when the power is.
 */
import { constants } from "node:fs";
import { link, mkdir, open, readdir, rename, rm, stat, type FileHandle } from "node:fs/promises";
import path from "node:path";
import { WrittenElsewhere, type Storage } from "../../jobs/storage";
import { FileTrouble, stop, troubles } from "../file/fileTrouble";
import { sentenceFor, sentenceForReading, syncFolder, unsure } from "../file/saveAtomically";
import { createWhole, hasNoLinks } from "./createWhole";
import { OWN_FOLDER } from "./ownFolder";

/** The file calls that are used, so that each can be made to fail. */
export const realDisk = { link, mkdir, open, readdir, rename, rm, stat };
export type StorageDisk = typeof realDisk;

/** Only to the end, and only of what is there. */
const AT_END = constants.O_WRONLY | constants.O_APPEND;

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? "";
const isMissing = (error: unknown): boolean => codeOf(error) === "ENOENT";
/** Only to be read: nothing was written here that could still be lost. */
const isReadOnly = (error: unknown): boolean => ["EROFS", "EACCES", "EPERM"].includes(codeOf(error));

export class DiskStorage implements Storage {
  /** @param folder there already, on this disk */
  constructor(
    private readonly folder: string,
    private readonly disk: StorageDisk = realDisk,
  ) {}

  list(): Promise<string[]> {
    return this.reading("", async () => {
      const inside = await this.disk.readdir(this.folder, { withFileTypes: true });
      // What a program that was ended left is seen before it is on the disk, and is built upon from here on.
      await syncFolder(this.folder, this.disk).catch((error: unknown) => {
        if (!isReadOnly(error)) throw error;
      });
      // Whatever else lies in the place of a thing is told of too, so that reading it says so. A folder of ours has no dot.
      return inside
        .filter((entry) => !entry.name.startsWith(".") && !(entry.isDirectory() && !entry.name.includes(".")))
        .map(({ name }) => name);
    });
  }

  read(name: string): Promise<Uint8Array | undefined> {
    return this.reading(name, async () => {
      const file = await this.opened(name);
      if (!file) {
        // Nothing of that name; or the folder is gone, and with it more than that.
        await this.disk.stat(this.folder);
        return undefined;
      }
      try {
        if (!(await file.stat()).isFile()) stop(troubles.notAFile(this.at(name)));
        await file.sync().catch((error: unknown) => {
          if (!isReadOnly(error)) throw error;
        });
        return await file.readFile();
      } finally {
        await file.close().catch(() => undefined);
      }
    });
  }

  private async opened(name: string): Promise<FileHandle | undefined> {
    try {
      // Some systems let only those sync who may write.
      return await this.disk.open(this.at(name), "r+").catch((error: unknown) => {
        if (isReadOnly(error)) return this.disk.open(this.at(name), "r");
        throw error;
      });
    } catch (error) {
      if (isMissing(error)) return undefined;
      throw error;
    }
  }

  size(name: string): Promise<number | undefined> {
    return this.reading(name, () =>
      this.disk.stat(this.at(name)).then(
        ({ size }) => size,
        (error: unknown) => {
          if (isMissing(error)) return undefined;
          throw error;
        },
      ),
    );
  }

  create(name: string, bytes: Uint8Array): Promise<void> {
    return this.writing(name, () =>
      createWhole(this.at(name), bytes, this.disk).catch(async (error: unknown) => {
        if (isMissing(error) && (await this.isThere())) stop(troubles.noFilesHere(this.folder), error);
        throw error;
      }),
    );
  }

  append(name: string, bytes: Uint8Array): Promise<void> {
    return this.writing(name, async () => {
      const file = await this.disk.open(this.at(name), AT_END);
      try {
        const facts = await file.stat();
        if (!facts.isFile()) stop(troubles.notAFile(this.at(name)));
        try {
          await file.writeFile(bytes);
          await file.sync();
        } catch (error) {
          await this.takenBack(name, file, facts.size, error);
          throw error;
        }
      } finally {
        // What was synced is on the disk.
        await file.close().catch(() => undefined);
      }
    });
  }

  /**
   * After a sync that failed, a system shows what never reached the disk, and
   * calls the next sync a success. So what was added, and is confirmed to
   * nobody, is taken away again: what is seen is then what is there.
   */
  private async takenBack(name: string, file: FileHandle, size: number, error: unknown): Promise<void> {
    try {
      await file.truncate(size);
      await file.sync();
    } catch {
      stop(troubles.unsureAdded(this.at(name), (error as Error).message), error);
    }
  }

  moveAside(name: string, to: string): Promise<void> {
    return this.writing(to, async () => {
      const target = this.at(to);
      await this.disk.mkdir(path.dirname(target), { mode: OWN_FOLDER }).catch((error: unknown) => {
        if (codeOf(error) !== "EEXIST") throw error;
      });
      // With the name of a folder all that lies in it would be lost.
      await syncFolder(this.folder, this.disk);
      const isThere = await this.secondName(name, target);
      await syncFolder(path.dirname(target), this.disk);
      // Only now: a power cut between two folders could take both names otherwise.
      if (isThere) await this.disk.rm(this.at(name), { force: true });
      await syncFolder(this.folder, this.disk);
    });
  }

  /** @returns false where there is nothing of that name */
  private async secondName(name: string, target: string): Promise<boolean> {
    try {
      await this.disk.link(this.at(name), target).catch((error: unknown) => {
        if (!hasNoLinks(error)) throw error;
        return this.disk.rename(this.at(name), target);
      });
      return true;
    } catch (error) {
      if (isMissing(error)) return false;
      return unsure(this.at(name))(error);
    }
  }

  drop(name: string): Promise<void> {
    return this.writing(name, async () => {
      await this.disk.rm(this.at(name), { force: true });
      // Else it may come back after a later one of its log has gone.
      await syncFolder(this.folder, this.disk);
    });
  }

  private at(name: string): string {
    return path.join(this.folder, ...name.split("/"));
  }

  private async reading<T>(name: string, work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      throw error instanceof FileTrouble ? error : await this.trouble(error, name, sentenceForReading);
    }
  }

  private async writing<T>(name: string, work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (error instanceof FileTrouble || error instanceof WrittenElsewhere) throw error;
      throw await this.trouble(error, name, sentenceFor);
    }
  }

  private async trouble(error: unknown, name: string, sentence: typeof sentenceFor): Promise<FileTrouble> {
    const said = (text: string): FileTrouble => new FileTrouble(text, { cause: error });
    switch (codeOf(error)) {
      case "ENOTDIR":
        return said(troubles.notAFolder((await this.isThere()) ? path.dirname(this.at(name)) : this.folder));
      case "EISDIR":
      case "ERR_FS_EISDIR":
        return said(troubles.folderInPlace(this.at(name)));
      case "ENOENT":
        return said(troubles.gone((await this.isThere()) ? this.at(name) : this.folder));
      default:
        return said(sentence(error, this.at(name)));
    }
  }

  private isThere(): Promise<boolean> {
    return this.disk.stat(this.folder).then(
      (facts) => facts.isDirectory(),
      () => false,
    );
  }
}
