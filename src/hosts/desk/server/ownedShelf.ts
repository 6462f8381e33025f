/** The jobs of a data folder, as long as one program has them: a desk, or a command. */
import { existsSync } from "node:fs";
import path from "node:path";
import { guarded } from "../../../jobs/guarded";
import { Refusal } from "../../../jobs/refusal";
import { Shelf } from "../../../jobs/shelf";
import { FileTrouble, troubles } from "../../file/fileTrouble";
import { asTrouble, sweepParts } from "../../file/saveAtomically";
import { DiskStorage } from "../../storage/diskStorage";
import { takeOwnership, usualSurroundings, type Other, type Owner } from "../../storage/ownerLock";
import { ALIVE, KEY } from "../protocol";
import { adoptFirst } from "./firstStore";
import { newToken, signOfLife } from "./guard";

/** One desk for all jobs of a folder. */
export const LOCK = "desk";
const ANSWER_MS = 1_500;
const ENDING = [
  ["SIGINT", 2],
  ["SIGTERM", 15],
  ["SIGHUP", 1],
] as const;
/** The exit code of a program that a signal ended, as shells have it. */
const AFTER_SIGNAL = 128;

/** @param say takes what the user is told while it waits */
export const ownerOf = (data: string, say: (line: string) => void): Promise<Owner | Other> =>
  takeOwnership(data, LOCK, usualSurroundings(answers, say));

export async function openShelf(data: string, owner: Owner): Promise<Shelf> {
  await sweepParts(data);
  const storage = guarded(new DiskStorage(data), () => {
    if (!owner.isMine()) throw notMine(data);
  });
  try {
    const shelf = await Shelf.open(storage);
    await adoptFirst(shelf, data);
    return shelf;
  } catch (error) {
    throw error instanceof Refusal ? error : asTrouble(error, path.join(data, LOCK));
  }
}

/** Why the jobs are another's now, or are not to be found. */
function notMine(data: string): Error {
  if (existsSync(path.join(data, `${LOCK}.lock`))) return new Refusal("taken", TAKEN_OVER);
  // A disk that went away, or a folder that was moved; once it is back, this desk goes on.
  return new FileTrouble(
    existsSync(data)
      ? `What this desk put into ${data} is gone from there: the disk may have been taken out, or somebody has emptied the folder. Bring it back, or start Rigsheet again.`
      : troubles.folderMissing(data),
  );
}

const TAKEN_OVER =
  "another desk has these jobs now, since this one had not answered for a while. Start Rigsheet again: it opens that one; to keep what you see here, save it as .xlsx first";

/** Whether the desk that holds a lock answers there; anything else may listen at that port by now. */
async function answers(address: string, name: string): Promise<boolean> {
  try {
    const key = new URL(address).searchParams.get(KEY) ?? "";
    const ask = newToken();
    const answer = await fetch(new URL(`${ALIVE}?ask=${ask}`, address), {
      signal: AbortSignal.timeout(ANSWER_MS),
    });
    return answer.ok && (await answer.text()) === signOfLife(key, name, ask);
  } catch {
    return false;
  }
}

export function releaseAtTheEnd(owner: Owner): void {
  process.once("exit", () => owner.release());
  for (const [signal, number] of ENDING) process.once(signal, () => process.exit(AFTER_SIGNAL + number));
}
