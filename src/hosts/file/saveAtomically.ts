/**
 * Writes a file so that it is either the old one or the new one, whole, even
 * if the power fails: into a temporary file beside it, onto the disk, then
 * renamed over.
 */
import { randomUUID } from "node:crypto";
import { open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { FileTrouble, stop, troubles } from "./fileTrouble";

/** The operations on a disk that saving needs, so that a full disk can be tried out. */
export const realDisk = { open, realpath, rename, rm, stat };
export type Disk = typeof realDisk;

const ANY_WRITE_BIT = 0o222;
const PERMISSION_BITS = 0o777;

/** The sentence for what the system answered. */
export function sentenceFor(error: unknown, path: string): string {
  const folder = dirname(path);
  switch ((error as NodeJS.ErrnoException).code) {
    case "ENOENT":
    case "ENOTDIR":
      return troubles.folderMissing(folder);
    case "EISDIR":
      return troubles.isFolder(path);
    case "EACCES":
    case "EPERM":
      return troubles.noPermission(folder);
    case "EROFS":
      return troubles.readOnlyDisk(folder);
    case "ENOSPC":
    case "EDQUOT":
      return troubles.diskFull(folder);
    case "EBUSY":
    case "ETXTBSY":
      return troubles.inUse(path);
    case "ENAMETOOLONG":
      return troubles.nameTooLong(path);
    default:
      return troubles.notSaved(path, error instanceof Error ? error.message : String(error));
  }
}

/** @param path where to; an existing file is replaced unless it is write-protected */
export async function saveAtomically(path: string, bytes: Uint8Array, disk: Disk = realDisk): Promise<void> {
  try {
    // A link keeps pointing where it did: the file behind it is the one that is replaced.
    const target = await disk.realpath(path).catch(() => path);
    const existing = await disk.stat(target).catch(() => undefined);
    if (existing?.isDirectory()) stop(troubles.isFolder(path));
    // Renaming over it would need no permission on the file itself.
    if (existing && (existing.mode & ANY_WRITE_BIT) === 0) stop(troubles.readOnlyFile(path));
    await replace(target, bytes, existing && existing.mode & PERMISSION_BITS, disk);
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    stop(sentenceFor(error, path), error);
  }
}

async function replace(
  target: string,
  bytes: Uint8Array,
  mode: number | undefined,
  disk: Disk,
): Promise<void> {
  const folder = dirname(target);
  const temporary = join(folder, `.${basename(target).slice(0, 100)}.${randomUUID()}.part`);
  try {
    const file = await disk.open(temporary, "wx", mode);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await disk.rename(temporary, target);
  } catch (error) {
    await disk.rm(temporary, { force: true }).catch(() => undefined);
    throw error;
  }
  // The rename itself reaches the disk with the folder; Windows can't open one, and does so by itself.
  const parent = await disk.open(folder, "r").catch(() => undefined);
  await parent?.sync().catch(() => undefined);
  await parent?.close();
}
