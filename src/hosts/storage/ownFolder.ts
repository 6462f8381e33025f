import { existsSync } from "node:fs";
import { mkdir, stat } from "node:fs/promises";
import path from "node:path";
import { FileTrouble } from "../file/fileTrouble";
import { asTrouble } from "../file/saveAtomically";

/** Nobody else on the machine may look into it. */
export const OWN_FOLDER = 0o700;

/** Makes a folder of the user's own. One level after the other: on some special file systems Node makes them all at once without an end. */
export async function makeOwnFolder(folder: string): Promise<void> {
  const missing: string[] = [];
  for (let one = folder; !existsSync(one) && path.dirname(one) !== one; one = path.dirname(one))
    missing.unshift(one);
  const told = (error: unknown): never => {
    throw asTrouble(error, folder);
  };
  for (const one of missing) await mkdir(one, { mode: OWN_FOLDER }).catch(told);
  if (!(await stat(folder).catch(told)).isDirectory()) {
    throw new FileTrouble(`${folder} is a file, not a folder. Give a folder of your own with --data.`);
  }
}
