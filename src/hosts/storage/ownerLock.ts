/**
 * One owner of a thing in a folder: a lock file with who holds it, where that
 * one answers, and, by the file's time, when it last gave a sign. It is a
 * promise among programs of ours, not a lock of the system's: those get lost on
 * network folders.
 */
import { randomUUID } from "node:crypto";
import { rmSync, readFileSync } from "node:fs";
import { open, readFile, rename, rm, stat, utimes, writeFile } from "node:fs/promises";
import { hostname } from "node:os";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { FileTrouble } from "../file/fileTrouble";
import { asTrouble } from "../file/saveAtomically";

const OWN_FILE = 0o600;
const BEAT_MS = 5_000;
/** Without a sign for so long, one that does not answer is taken for gone. */
const SILENT_MS = 30_000;
/** How long one that lives may take until it answers. */
const PATIENCE_MS = 8_000;
const STEP_MS = 150;

interface Holder {
  readonly key: string;
  readonly pid: number;
  readonly host: string;
  /** Where it answers; absent while it starts. */
  readonly address?: string;
}

export interface Owner {
  /** Says where this one answers. */
  tell(address: string): Promise<void>;
  readonly key: string;
  /** False once another has taken over. */
  isMine(): boolean;
  release(): void;
  /** What the user is told of the taking. */
  readonly notice?: string;
}

/** Another that holds it, and answers. */
export interface Other {
  readonly address: string;
}

/** What is asked of the world; tests have their own. */
export interface Surroundings {
  readonly now: () => number;
  readonly isAlive: (pid: number) => boolean;
  /** Whether the one with that key answers at that address. */
  readonly answers: (address: string, key: string) => Promise<boolean>;
  readonly patienceMs: number;
}

export const usualSurroundings = (answers: Surroundings["answers"]): Surroundings => ({
  now: Date.now,
  isAlive: (pid) => {
    try {
      process.kill(pid, 0);
      return true;
    } catch (error) {
      // It lives, and is another account's.
      return (error as NodeJS.ErrnoException).code === "EPERM";
    }
  },
  answers,
  patienceMs: PATIENCE_MS,
});

/**
 * @param folder there already
 * @param name of what is owned
 * @throws FileTrouble where one that lives holds it and does not answer
 */
export async function takeOwnership(
  folder: string,
  name: string,
  around: Surroundings,
): Promise<Owner | Other> {
  const file = path.join(folder, `${name}.lock`);
  const mine: Holder = { key: randomUUID(), pid: process.pid, host: hostname() };
  try {
    return await taken(file, mine, around);
  } catch (error) {
    throw asTrouble(error, file);
  }
}

async function taken(file: string, mine: Holder, around: Surroundings): Promise<Owner | Other> {
  const until = around.now() + around.patienceMs;
  for (;;) {
    if (await created(file, mine)) return owner(file, mine, undefined);
    const holder = await read(file);
    if (holder?.address !== undefined && (await around.answers(holder.address, holder.key)))
      return { address: holder.address };
    if (await isGone(file, holder, around)) {
      if (await replaced(file, holder, mine, around)) {
        return owner(
          file,
          mine,
          holder &&
            `The desk that had this job open (process ${holder.pid}) has ended without closing it; this one goes on with it.`,
        );
      }
    } else if (around.now() > until) {
      throw new FileTrouble(
        holder && holder.host !== hostname()
          ? `This job is open on the computer ${holder.host}. Close it there, or give another folder with --data.`
          : `Another Rigsheet${holder ? ` (process ${holder.pid})` : ""} has this job open and does not answer. Wait a moment and try again, or end that program.`,
      );
    }
    await wait(STEP_MS);
  }
}

async function created(file: string, mine: Holder): Promise<boolean> {
  try {
    const handle = await open(file, "wx", OWN_FILE);
    try {
      await handle.writeFile(JSON.stringify(mine));
    } finally {
      await handle.close();
    }
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}

/** @returns undefined while it is being written, where something has damaged it, or when it is gone */
async function read(file: string): Promise<Holder | undefined> {
  try {
    return holderIn(await readFile(file, "utf8"));
  } catch {
    return undefined;
  }
}

function holderIn(text: string): Holder | undefined {
  const found = JSON.parse(text) as Partial<Holder> | null;
  return typeof found?.key === "string" && typeof found.pid === "number" && typeof found.host === "string"
    ? (found as Holder)
    : undefined;
}

async function isGone(
  file: string,
  holder: Holder | undefined,
  { now, isAlive }: Surroundings,
): Promise<boolean> {
  if (holder && holder.host === hostname() && !isAlive(holder.pid)) return true;
  const beat = await stat(file).catch(() => undefined);
  // A process number may be another program's by now, and a clock may have been set: the sign decides.
  return beat !== undefined && now() - beat.mtimeMs > SILENT_MS;
}

/** Only one of several that find it gone may replace it: the one that makes a file of that name first. */
async function replaced(
  file: string,
  gone: Holder | undefined,
  mine: Holder,
  { now }: Surroundings,
): Promise<boolean> {
  const right = `${file}.${gone?.key ?? "unread"}`;
  if (!(await created(right, mine))) {
    const since = await stat(right).catch(() => undefined);
    // One that ended in the middle of this must not keep it for good.
    if (since && now() - since.mtimeMs > SILENT_MS) await rm(right, { force: true });
    return false;
  }
  try {
    if ((await read(file))?.key !== gone?.key) return false;
    await write(file, mine);
    return true;
  } finally {
    await rm(right, { force: true });
  }
}

async function write(file: string, holder: Holder): Promise<void> {
  const part = `${file}.${holder.key}.part`;
  await writeFile(part, JSON.stringify(holder), { mode: OWN_FILE });
  await rename(part, file);
}

function owner(file: string, mine: Holder, notice: string | undefined): Owner {
  const isMine = (): boolean => {
    try {
      return holderIn(readFileSync(file, "utf8"))?.key === mine.key;
    } catch {
      return false;
    }
  };
  const beat = setInterval(() => {
    const time = new Date();
    if (isMine()) void utimes(file, time, time).catch(() => undefined);
  }, BEAT_MS);
  // It must not keep a program alive that has nothing else to do.
  beat.unref();
  return {
    key: mine.key,
    notice,
    isMine,
    tell: (address) => write(file, { ...mine, address }),
    release: () => {
      clearInterval(beat);
      if (isMine()) rmSync(file, { force: true });
    },
  };
}
