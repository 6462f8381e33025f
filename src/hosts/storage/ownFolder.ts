import { mkdir, open, stat } from "node:fs/promises";
import path from "node:path";
import { FileTrouble, stop, troubles } from "../file/fileTrouble";
import { sentenceFor, syncFolder } from "../file/saveAtomically";

/** Nobody else on the machine may look into it. */
export const OWN_FOLDER = 0o700;

const realDisk = { mkdir, open, stat };
const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? "";

/**
 * Makes a folder of the user's own, whose name is on the disk once this returns:
 * with it all that is kept inside would be lost. One level after the other: on
 * some special file systems Node makes them all at once without an end.
 * @throws FileTrouble where it can't be made, or is no folder
 */
export async function makeOwnFolder(folder: string, disk: typeof realDisk = realDisk): Promise<void> {
  try {
    const missing: string[] = [];
    for (let one = folder; !(await isFolder(one, disk)); one = path.dirname(one)) {
      missing.unshift(one);
      if (path.dirname(one) === one) break;
    }
    for (const one of missing)
      await disk.mkdir(one, { mode: OWN_FOLDER }).catch((error: unknown) => {
        // Another program was quicker.
        if (codeOf(error) !== "EEXIST") throw error;
      });
    // Those that were there too: a program may have made them and been ended before they were on the disk.
    for (let one = folder; path.dirname(one) !== one; one = path.dirname(one))
      await syncFolder(path.dirname(one), disk).catch((error: unknown) => {
        // Nothing of ours is in doubt where a folder of the system's has no such thing.
        if (missing.includes(one) || codeOf(error) === "EIO")
          stop(troubles.folderUnconfirmed(one, (error as Error).message), error);
      });
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    stop(codeOf(error) === "ENOENT" ? troubles.noFilesHere(folder) : sentenceFor(error, folder), error);
  }
}

async function isFolder(one: string, disk: Pick<typeof realDisk, "stat">): Promise<boolean> {
  const facts = await disk.stat(one).catch((error: unknown) => {
    // Below a file; the walk upwards comes to it.
    if (["ENOENT", "ENOTDIR"].includes(codeOf(error))) return undefined;
    throw error;
  });
  if (facts && !facts.isDirectory())
    stop(`${one} is a file, not a folder. Give a folder of your own with --data.`);
  return facts !== undefined;
}
