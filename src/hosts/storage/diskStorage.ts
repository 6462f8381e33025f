/** The disk's stand of the storage: a file for each thing, in a folder of the user's own. */
import { constants } from "node:fs";
import { link, mkdir, open, readdir, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import { WrittenElsewhere, type Storage } from "../../jobs/storage";
import { asTrouble, syncFolder } from "../file/saveAtomically";
import { createWhole, hasNoLinks } from "./createWhole";
import { OWN_FOLDER } from "./ownFolder";

/** The file calls that are used, so that each can be made to fail. */
export const realDisk = { link, mkdir, open, readdir, rename, rm, stat };
export type StorageDisk = typeof realDisk;

/** Only to the end, and only of what is there. */
const AT_END = constants.O_WRONLY | constants.O_APPEND;

const isMissing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

export class DiskStorage implements Storage {
  /** @param folder there already, on this disk */
  constructor(
    private readonly folder: string,
    private readonly disk: StorageDisk = realDisk,
  ) {}

  async list(): Promise<string[]> {
    const inside = await this.saying("", () => this.disk.readdir(this.folder, { withFileTypes: true }));
    // What a program that was ended left is seen before it is on the disk, and is built upon from here on.
    await this.saying("", () => syncFolder(this.folder, this.disk));
    return inside.filter((entry) => entry.isFile() && !entry.name.startsWith(".")).map(({ name }) => name);
  }

  read(name: string): Promise<Uint8Array | undefined> {
    return this.saying(name, async () => {
      const file = await this.disk.open(this.at(name), "r+").catch((error: unknown) => {
        if (isMissing(error)) return undefined;
        throw error;
      });
      if (!file) return undefined;
      try {
        await file.sync();
        return await file.readFile();
      } finally {
        await file.close();
      }
    });
  }

  create(name: string, bytes: Uint8Array): Promise<void> {
    return this.saying(name, () => createWhole(this.at(name), bytes, this.disk));
  }

  append(name: string, bytes: Uint8Array): Promise<void> {
    return this.saying(name, async () => {
      const file = await this.disk.open(this.at(name), AT_END);
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
    });
  }

  moveAside(name: string, to: string): Promise<void> {
    return this.saying(name, async () => {
      const target = this.at(to);
      await this.disk.mkdir(path.dirname(target), { mode: OWN_FOLDER }).catch((error: unknown) => {
        if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
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

  drop(name: string): Promise<void> {
    return this.saying(name, () => this.disk.rm(this.at(name), { force: true }));
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
      throw error;
    }
  }

  private at(name: string): string {
    return path.join(this.folder, ...name.split("/"));
  }

  private async saying<T>(name: string, work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      throw error instanceof WrittenElsewhere ? error : asTrouble(error, this.at(name));
    }
  }
}
