/** Starts the desk: reads the options, opens the store, listens, prints the address. */
import { createHash } from "node:crypto";
import { copyFile, readFile } from "node:fs/promises";
import type { Server } from "node:http";
import path from "node:path";
import { asTrouble } from "../../file/saveAtomically";
import { timeInName } from "../../../jobs/timeInName";
import { makeOwnFolder } from "../../storage/ownFolder";
import { takeOwnership, usualSurroundings, type Owner } from "../../storage/ownerLock";
import { ALIVE } from "../protocol";
import { assetsIn } from "./assets";
import { isSameStamp, type FileStamp } from "./heldJob";
import { JobStore } from "./jobStore";
import { openBrowser } from "./openBrowser";
import { usualDataFolder, USUAL_PORT, type DeskOptions } from "./options";
import { createDesk, fileStamp, type DeskParts } from "./serve";

/** What the host's other parts give. */
export type DeskServices = Pick<
  DeskParts,
  "readXlsx" | "readSurvey" | "writeXlsx" | "writeCopy" | "saveAtomically"
>;

/** How many ports after the usual one are tried when it is taken. */
const MORE_PORTS = 9;
const ANSWER_MS = 1_500;
const ENDING = [
  ["SIGINT", 2],
  ["SIGTERM", 15],
  ["SIGHUP", 1],
] as const;
/** The exit code of a program that a signal ended, as shells have it. */
const AFTER_SIGNAL = 128;

/**
 * Returns once the desk listens; it goes on until the program is stopped.
 * @param folder where the build put the desk
 * @param say takes what the user is told
 * @throws Error with a sentence when it can't be started
 */
export async function runDesk(
  options: DeskOptions,
  services: DeskServices,
  folder: string,
  say: (line: string) => void,
): Promise<void> {
  const file = options.file ? await openFile(path.resolve(options.file), services) : undefined;
  const data = path.resolve(options.data ?? usualDataFolder());
  const name = file ? `job-${createHash("sha256").update(file.path).digest("hex").slice(0, 12)}` : "job";
  await makeOwnFolder(data);
  const owner = await takeOwnership(data, name, usualSurroundings(answers));
  if ("address" in owner) {
    say("This job is open in a desk that runs already. Its address:");
    say(owner.address);
    if (options.open) openBrowser(owner.address);
    return;
  }
  releaseAtTheEnd(owner);
  if (owner.notice !== undefined) say(owner.notice);
  const store = await openStore(data, name, file, owner);

  const ports = options.port
    ? [options.port]
    : Array.from({ length: MORE_PORTS + 1 }, (_, index) => USUAL_PORT + index);
  const assets = assetsIn(folder);
  const keepAside = (from: string): Promise<string> => keptCopy(from, path.join(data, "replaced"));
  for (const port of ports) {
    const server = createDesk({ ...services, assets, store, file, port, key: owner.key, keepAside });
    if (!(await listens(server, port))) continue;
    const address = `http://127.0.0.1:${port}/`;
    for (const notice of store.notices) say(notice);
    try {
      await owner.tell(address);
    } catch (error) {
      // Nobody would find it.
      server.close();
      owner.release();
      throw asTrouble(error, path.join(data, name));
    }
    if (options.open) openBrowser(address);
    say("The local workbook is open until this program is stopped (Ctrl+C). Its address:");
    say(address);
    return;
  }
  owner.release();
  throw new Error(
    options.port
      ? `Port ${options.port} is taken by another program. Give another one with --port, or stop that program.`
      : `The ports ${USUAL_PORT} to ${USUAL_PORT + MORE_PORTS} are taken by other programs. Give another one with --port.`,
  );
}

async function openFile(file: string, { readXlsx }: DeskServices): Promise<NonNullable<DeskParts["file"]>> {
  let bytes: Uint8Array;
  let stamp: FileStamp;
  try {
    // Before it is read: what is written meanwhile is then seen as a change.
    stamp = await fileStamp(file);
    bytes = await readFile(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new Error(
      code === "ENOENT"
        ? `There is no file ${file}. Check the name, or start without a file.`
        : `The file ${file} can't be read (${code}). Check that it is a file and that you may read it.`,
    );
  }
  return { path: file, book: await readXlsx(bytes), stamp };
}

async function keptCopy(file: string, folder: string): Promise<string> {
  await makeOwnFolder(folder);
  const { name, ext } = path.parse(file);
  const kept = path.join(folder, `${name} ${timeInName()}${ext}`);
  await copyFile(file, kept);
  return kept;
}

/** Whether the desk that holds a lock answers there; anything else may listen at that port by now. */
async function answers(address: string, key: string): Promise<boolean> {
  try {
    const answer = await fetch(new URL(ALIVE, address), { signal: AbortSignal.timeout(ANSWER_MS) });
    return answer.ok && (await answer.text()) === key;
  } catch {
    return false;
  }
}

function releaseAtTheEnd(owner: Owner): void {
  process.once("exit", () => owner.release());
  for (const [signal, number] of ENDING) process.once(signal, () => process.exit(AFTER_SIGNAL + number));
}

/** Each file has an autosaved job of its own, set aside when the file was changed elsewhere since. */
async function openStore(
  data: string,
  name: string,
  file: DeskParts["file"],
  owner: Owner,
): Promise<JobStore> {
  const store = await JobStore.open(data, name, { isOwner: () => owner.isMine() });
  if (!file || !store.job) return store;
  const { stamp } = store.job;
  if (isSameStamp(stamp, file.stamp)) return store;
  const kept = await store.forget();
  const named = path.basename(file.path);
  store.notices.push(
    stamp
      ? `${named} was changed by another program since it was last open here, so it is shown as it is now. What was autosaved before is kept as ${kept}.`
      : `${named} is open. The other job that was open here in its place is kept as ${kept}.`,
  );
  return store;
}

/** @returns false when the port is taken */
function listens(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE") resolve(false);
      else if (error.code === "EACCES") {
        reject(new Error(`Port ${port} needs more rights than you have. Give one from 1024 up with --port.`));
      } else reject(error);
    });
    server.listen(port, "127.0.0.1", () => resolve(true));
  });
}
