import type { link } from "node:fs/promises";
import path from "node:path";
import { WrittenElsewhere } from "../../jobs/storage";
import { partBeside, syncFolder, unconfirmed, unsure, type Disk } from "../file/saveAtomically";

const OWN_FILE = 0o600;
/** What a system answers that has no second names for a file (FAT, some network and phone folders), or allows none. */
const NO_LINKS = new Set(["EPERM", "EACCES", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EINVAL", "EISDIR"]);

/** Whether the disk gives no second names, so that only a renaming is left. */
export const hasNoLinks = (error: unknown): boolean =>
  NO_LINKS.has((error as NodeJS.ErrnoException).code ?? "");

export type CreatingDisk = Pick<Disk, "open" | "rename" | "rm" | "stat"> & { readonly link: typeof link };

/**
 * Makes a file whole or not at all, even if the power goes, and never in the
 * place of one that is there, even if two do it at once: all of it reaches the
 * disk under another name, and is then given its own as a second one, which a
 * system refuses where that is taken.
 * @throws WrittenElsewhere where there is something of that name
 */
export async function createWhole(target: string, bytes: Uint8Array, disk: CreatingDisk): Promise<void> {
  const part = partBeside(target);
  try {
    const file = await disk.open(part, "wx", OWN_FILE);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await giveName(part, target, disk);
  } finally {
    // What can't be taken away is swept later.
    await disk.rm(part, { force: true }).catch(() => undefined);
  }
  await syncFolder(path.dirname(target), disk).catch(unconfirmed(target));
}

const thereAlready = (target: string): WrittenElsewhere =>
  new WrittenElsewhere(
    `${target} is there already: another program has written it. It is left as it is; start Rigsheet again to see what is there.`,
  );

async function giveName(part: string, target: string, disk: CreatingDisk): Promise<void> {
  try {
    await disk.link(part, target);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") {
      // On a network the answer may have been lost, and the second asking is refused for the first's sake.
      if ((await disk.stat(part)).nlink > 1) return;
      throw thereAlready(target);
    }
    if (!hasNoLinks(error)) unsure(target)(error);
    // Between the look and the renaming another program could be quicker: only the owner's lock keeps it out here.
    const there = await disk.stat(target).catch((missing: unknown) => {
      if ((missing as NodeJS.ErrnoException).code !== "ENOENT") throw missing;
    });
    if (there) throw thereAlready(target);
    await disk.rename(part, target).catch(unsure(target));
  }
}
