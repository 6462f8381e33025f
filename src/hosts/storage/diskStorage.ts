/** The disk's stand of the storage: a file for each thing, in a folder of the user's own. */
import { constants } from "node:fs";
import { mkdir, open, readdir, readlink, realpath, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import type { Storage } from "../../jobs/storage";
import { asTrouble, saveAtomically, syncFolder } from "../file/saveAtomically";
import { OWN_FOLDER } from "./ownFolder";

/** The file calls that are used, so that each can be made to fail. */
export const realDisk = { mkdir, open, readdir, readlink, realpath, rename, rm, stat };
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

  size(name: string): Promise<number | undefined> {
    return this.saying(name, () =>
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
    return this.saying(name, async () => {
      const there = await this.disk.stat(this.at(name)).catch((error: unknown) => {
        if (isMissing(error)) return undefined;
        throw error;
      });
      if (there) throw new Error(`${this.at(name)} is there already`);
      await saveAtomically(this.at(name), bytes, { disk: this.disk, private: true });
    });
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
      await this.disk.rename(this.at(name), target).catch((error: unknown) => {
        if (!isMissing(error)) throw error;
      });
      await syncFolder(path.dirname(target), this.disk);
      await syncFolder(this.folder, this.disk);
    });
  }

  drop(name: string): Promise<void> {
    return this.saying(name, async () => {
      await this.disk.rm(this.at(name), { force: true });
      // Else it may come back after a later one of its log has gone.
      await syncFolder(this.folder, this.disk);
    });
  }

  private at(name: string): string {
    return path.join(this.folder, ...name.split("/"));
  }

  private async saying<T>(name: string, work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      throw asTrouble(error, this.at(name));
    }
  }
}
