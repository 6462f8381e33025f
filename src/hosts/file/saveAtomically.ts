/**
 * Writes a file so that it is either the old one or the new one, whole, even
 * if the power fails: into a temporary file beside it, onto the disk, then
 * renamed over.
 */
import { randomUUID } from "node:crypto";
import type { Stats } from "node:fs";
import { open, readdir, readlink, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { FileTrouble, stop, troubles } from "./fileTrouble";

/** The operations on a disk that saving needs, so that a full disk can be tried out. */
export const realDisk = { open, readlink, realpath, rename, rm, stat };
export type Disk = typeof realDisk;

const ANY_WRITE_BIT = 0o222;
const PERMISSION_BITS = 0o777;

const detailOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The sentence for what the system answered when something was to be written, and was not. */
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
    case "EMFILE":
    case "ENFILE":
      return troubles.tooManyOpen(path);
    default:
      return troubles.notSaved(path, detailOf(error));
  }
}

/** The sentence for what the system answered when something was to be read. */
export function sentenceForReading(error: unknown, path: string): string {
  switch ((error as NodeJS.ErrnoException).code) {
    case "ENOENT":
      return troubles.gone(path);
    case "ENOTDIR":
      return troubles.notAFolder(dirname(path));
    case "EISDIR":
      return troubles.folderInPlace(path);
    case "EACCES":
    case "EPERM":
      return troubles.mayNotRead(path);
    case "EMFILE":
    case "ENFILE":
      return troubles.tooManyOpen(path);
    default:
      return troubles.notRead(path, detailOf(error));
  }
}

/** What a system says that has not done what was asked; after anything else it may have. */
const REFUSALS = new Set(
  "EACCES EPERM EROFS ENOSPC EDQUOT EBUSY ETXTBSY ENOENT ENOTDIR EISDIR EEXIST ENAMETOOLONG EMFILE ENFILE EXDEV EMLINK ELOOP EINVAL ENOTSUP EOPNOTSUPP ENOSYS".split(
    " ",
  ),
);

/** Passes on a refusal; of another failure it says that nobody knows whether it was done. */
export function unsure(path: string): (error: unknown) => never {
  return (error) => {
    if (REFUSALS.has((error as NodeJS.ErrnoException).code ?? "")) throw error;
    stop(troubles.unsureReplaced(path, detailOf(error)), error);
  };
}

/** For what comes after the change: whatever fails there, the file is another by then. */
export function unconfirmed(path: string): (error: unknown) => never {
  return (error) => stop(troubles.unconfirmed(path, detailOf(error)), error);
}

/** What a user is told of an error of the system's; a sentence that is one already stays. */
export const asTrouble = (error: unknown, path: string): FileTrouble =>
  error instanceof FileTrouble ? error : new FileTrouble(sentenceFor(error, path), { cause: error });

export interface SaveOptions {
  /** The real one where absent. */
  readonly disk?: Disk;
}

/** As many links as a system follows. */
const MOST_LINKS = 40;

/** @param path where to; an existing file is replaced unless it is write-protected */
export async function saveAtomically(
  path: string,
  bytes: Uint8Array,
  { disk = realDisk }: SaveOptions = {},
): Promise<void> {
  try {
    // A link keeps pointing where it did, at a file that is there or at one that is made now.
    const target = await behindLinks(path, disk);
    const existing = await disk.stat(target).catch((error: unknown) => {
      // What can't be looked at must not be taken for nothing, and lose its protection.
      if (["ENOENT", "ENOTDIR"].includes((error as NodeJS.ErrnoException).code ?? "")) return undefined;
      throw error;
    });
    if (existing?.isDirectory()) stop(troubles.isFolder(path));
    if (existing && !existing.isFile()) stop(troubles.notAFile(path));
    // Renaming over it would need no permission on the file itself.
    if (existing && (existing.mode & ANY_WRITE_BIT) === 0) stop(troubles.readOnlyFile(path));
    await replace(target, bytes, existing, disk);
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    stop(sentenceFor(error, path), error);
  }
}

async function behindLinks(path: string, disk: Disk): Promise<string> {
  let target = path;
  for (let links = 0; links < MOST_LINKS; links++) {
    const next = await disk.readlink(target).catch(() => undefined);
    if (next === undefined) return disk.realpath(target).catch(() => target);
    target = resolve(dirname(target), next);
  }
  stop(troubles.linksInACircle(path));
}

async function replace(
  target: string,
  bytes: Uint8Array,
  existing: Stats | undefined,
  disk: Disk,
): Promise<void> {
  const folder = dirname(target);
  const temporary = partBeside(target);
  const mode = existing && existing.mode & PERMISSION_BITS;
  let inPlace = (existing?.nlink ?? 1) > 1;
  try {
    const file = await disk.open(temporary, "wx", mode);
    try {
      // The process's own mask may have taken bits away.
      if (mode !== undefined) await file.chmod(mode);
      if (existing && !inPlace) {
        const { uid, gid } = await file.stat();
        if (uid !== existing.uid || gid !== existing.gid)
          inPlace = await file.chown(existing.uid, existing.gid).then(
            () => false,
            () => true,
          );
      }
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    // Another name of the same file, or another owner's, would be lost with a rename.
    if (inPlace) return await writeOver(target, bytes, temporary, disk);
    await disk.rename(temporary, target).catch(async (error: unknown) => {
      await disk.rm(temporary, { force: true }).catch(() => undefined);
      return unsure(target)(error);
    });
  } catch (error) {
    if (!(error instanceof FileTrouble)) await disk.rm(temporary, { force: true }).catch(() => undefined);
    throw error;
  }
  await syncFolder(folder, disk).catch(unconfirmed(target));
}

/** What a system answers that has no such thing for a folder (Windows), and keeps names by itself; or a folder that may be written but not read. */
const NOT_FOR_FOLDERS = new Set(["EISDIR", "EPERM", "EACCES", "EINVAL", "ENOTSUP", "EBADF"]);

function unlessItCant(error: unknown): void {
  if (!NOT_FOR_FOLDERS.has((error as NodeJS.ErrnoException).code ?? "")) throw error;
}

/** Names of files reach the disk with their folder. */
export async function syncFolder(folder: string, disk: Pick<Disk, "open"> = realDisk): Promise<void> {
  const parent = await disk.open(folder, "r").catch(unlessItCant);
  if (!parent) return;
  try {
    await parent.sync().catch(unlessItCant);
  } finally {
    await parent.close();
  }
}

/** @param whole the new content, on the disk already: it stays where the file itself can't be written to its end */
async function writeOver(target: string, bytes: Uint8Array, whole: string, disk: Disk): Promise<void> {
  const file = await disk.open(target, "r+").catch(async (error: unknown) => {
    await disk.rm(whole, { force: true }).catch(() => undefined);
    stop(sentenceFor(error, target), error);
  });
  try {
    await file.writeFile(bytes);
    await file.truncate(bytes.length);
    await file.sync();
  } catch (error) {
    stop(troubles.halfWritten(target, whole), error);
  } finally {
    // What was synced is on the disk; what was not has its sentence.
    await file.close().catch(() => undefined);
  }
  // It is saved; what lies beside it is swept later.
  await disk.rm(whole, { force: true }).catch(() => undefined);
}

/** A name beside a file for what is being written; `sweepParts` knows it. */
export const partBeside = (target: string): string =>
  join(dirname(target), `.${basename(target).slice(0, 100)}.${randomUUID()}.part`);
/** A save takes seconds; what is older was left by a process that was ended in the middle. */
const LEFT_AFTER_MS = 600_000;

/** Takes away what saves into a folder that were ended in the middle left there. */
export async function sweepParts(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    if (!name.startsWith(".") || !PART.test(name)) continue;
    const part = join(folder, name);
    const { mtimeMs } = await stat(part).catch(() => ({ mtimeMs: Date.now() }));
    if (Date.now() - mtimeMs > LEFT_AFTER_MS) await rm(part, { force: true }).catch(() => undefined);
  }
}

const PART = /\.[\da-f]{8}(?:-[\da-f]{4}){3}-[\da-f]{12}\.part$/;
