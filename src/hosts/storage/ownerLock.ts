/**
 * One owner of a thing in a folder: a lock file with who holds it, where that
 * one answers, and a count that goes up while it lives. It is a promise among
 * programs of ours, not a lock of the system's: those get lost on network
 * folders.
 *
 * Nobody's clock is compared with another's. A holder is gone when its process
 * is, where that can be known (the same start of the same machine); else when
 * one who watches saw no new sign of it for half a minute of its own time.
 */
import { randomUUID } from "node:crypto";
import { closeSync, openSync, rmSync } from "node:fs";
import { readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { FileTrouble } from "../file/fileTrouble";
import { asTrouble, sentenceForReading } from "../file/saveAtomically";
import {
  changeLock,
  createLock,
  isHeldBy,
  readLock,
  replaceLock,
  type Holder,
  type SeenLock,
} from "./lockFile";
import { thisPlace } from "./thisPlace";

const BEAT_MS = 5_000;
/** Without a sign for so long, one that does not answer is taken for gone. */
const SILENT_MS = 30_000;
/** How long one that lives may take until it answers. */
const PATIENCE_MS = 8_000;
/** After so long a user wants to know why nothing happens. */
const TELL_AFTER_MS = 1_000;
const STEP_MS = 150;
/** More than one turn of waiting takes: what the clock says beyond it is a jump, or the machine slept. */
const LONGEST_STEP_MS = 2_000;

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
  /** Milliseconds from any moment on. Only the time between two calls counts, and of a jump no more than a step. */
  readonly now: () => number;
  /** Asked only of a process of this very place. */
  readonly isAlive: (pid: number) => boolean;
  /** Whether the one with that key answers at that address. */
  readonly answers: (address: string, key: string) => Promise<boolean>;
  readonly patienceMs: number;
  /** Takes a sentence, once, where the user has to wait for a sign of another. */
  readonly waiting?: (sentence: string) => void;
  readonly pause?: (ms: number) => Promise<unknown>;
  /** Where process numbers count (`thisPlace`). */
  readonly place?: string;
}

export const usualSurroundings = (
  answers: Surroundings["answers"],
  waiting?: Surroundings["waiting"],
): Surroundings => ({
  now: () => performance.now(),
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
  waiting,
  patienceMs: PATIENCE_MS,
});

/**
 * Returns at once where the thing is free, its holder answers, or its holder's
 * process is gone; else watches the holder for up to half a minute.
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
  const place = around.place ?? thisPlace();
  const mine: Holder = { key: randomUUID(), pid: process.pid, host: hostname(), place };
  try {
    return await taken(file, mine, around);
  } catch (error) {
    throw asTrouble(error, file);
  }
}

/** How long one has been seen without a new sign. */
class Watch {
  private sign: string | undefined;
  silentMs = 0;
  /** It has given a sign since. */
  stirred = false;

  see(sign: string, stepMs: number): void {
    this.stirred ||= this.sign !== undefined && sign !== this.sign;
    this.silentMs = sign === this.sign ? this.silentMs + stepMs : 0;
    this.sign = sign;
  }
}

async function taken(file: string, mine: Holder, around: Surroundings): Promise<Owner | Other> {
  const { pause = wait } = around;
  let before = around.now();
  let watch = new Watch();
  const rights = new Watch();
  let watched: string | undefined;
  let waitedMs = 0;
  let failingMs = 0;
  let isTold = false;
  for (; ; await pause(STEP_MS)) {
    if (await createLock(file, mine)) return owner(file, mine, undefined);
    let seen: SeenLock | undefined;
    let failure: unknown;
    try {
      seen = await readLock(file);
    } catch (error) {
      failure = error;
    }
    const now = around.now();
    const stepMs = Math.min(Math.max(now - before, 0), LONGEST_STEP_MS);
    before = now;
    failingMs = failure === undefined ? 0 : failingMs + stepMs;
    if (failingMs > around.patienceMs)
      throw new FileTrouble(sentenceForReading(failure, file), { cause: failure });
    if (!seen) continue;

    const { holder, sign } = seen;
    // Another one than before has all the time again.
    if (watched !== holder?.key) [watched, watch, waitedMs] = [holder?.key, new Watch(), 0];
    watch.see(sign, stepMs);
    waitedMs += stepMs;
    if (holder?.address !== undefined && (await around.answers(holder.address, holder.key)))
      return { address: holder.address };
    const hasEnded = holder?.place === mine.place && holder !== undefined && !around.isAlive(holder.pid);
    if (hasEnded || watch.silentMs >= SILENT_MS) {
      if (await replaced(file, seen, mine, rights, stepMs))
        return owner(file, mine, holder && followed(holder, hasEnded));
    } else if (watch.stirred && waitedMs > around.patienceMs) throw new FileTrouble(refusal(holder));
    if (waitedMs >= TELL_AFTER_MS && !isTold) {
      around.waiting?.(waitingFor(holder));
      isTold = true;
    }
  }
}

const isElsewhere = (holder: Holder): boolean => holder.host !== hostname();
const nameOf = (holder: Holder): string =>
  `process ${holder.pid}${isElsewhere(holder) ? ` on the computer ${holder.host}` : ""}`;
const SILENCE = `${SILENT_MS / 1000} s`;

const refusal = (holder: Holder | undefined): string =>
  holder && isElsewhere(holder)
    ? `This job is open on the computer ${holder.host}. Close it there, or give another folder with --data.`
    : `Another Rigsheet${holder ? ` (process ${holder.pid})` : ""} has this job open and does not answer. Wait a moment and try again, or end that program.`;

const followed = (holder: Holder, hasEnded: boolean): string =>
  `The desk that had this job open (${nameOf(holder)}) has ${hasEnded ? "ended without closing it" : `given no sign for ${SILENCE}`}; this one goes on with it.`;

const waitingFor = (holder: Holder | undefined): string =>
  `A desk that had this job open${holder ? ` (${nameOf(holder)})` : ""} has not closed it and does not answer. Waiting up to ${SILENCE} for a sign of it; without one, this desk goes on with the job.`;

/** How the name of the right to follow one begins, and of what is written beside a lock. */
const besides = (file: string): string => `${file}.`;
const rightOver = (file: string, gone: Holder | undefined): string =>
  `${besides(file)}${gone?.key ?? "unread"}`;

/** Only one of several that find it gone may replace it: the one that makes a file of that name first. */
async function replaced(
  file: string,
  gone: SeenLock,
  mine: Holder,
  rights: Watch,
  stepMs: number,
): Promise<boolean> {
  const right = rightOver(file, gone.holder);
  if (!(await createLock(right, mine))) {
    const other = await readLock(right);
    if (other) rights.see(other.sign, stepMs);
    // One that ended in the middle of this must not keep it for good.
    if (other && rights.silentMs >= SILENT_MS) await rm(right, { force: true });
    return false;
  }
  try {
    // It was followed meanwhile, or is not gone.
    if ((await readLock(file))?.sign !== gone.sign) return false;
    await replaceLock(file, mine);
    return true;
  } finally {
    await rm(right, { force: true });
  }
}

function owner(file: string, made: Holder, notice: string | undefined): Owner {
  let mine = made;
  let turn: Promise<unknown> = Promise.resolve();
  let leftovers: ReadonlyMap<string, number> | undefined;
  const change = (part: Partial<Holder>): Promise<boolean> => {
    mine = { ...mine, ...part };
    const now = mine;
    const changed = turn.then(() => changeLock(file, now));
    turn = changed.catch(() => undefined);
    return changed;
  };
  let isKnownMine = true;
  const isMine = (): boolean => (isKnownMine = isHeldBy(file, made.key) ?? isKnownMine);
  const beat = setInterval(() => {
    const count = (mine.beat ?? 0) + 1;
    void change({ beat: count }).catch(() => undefined);
    if (count === 1) void besideLock(file).then((found) => (leftovers = found));
    else if (count === 1 + SILENT_MS / BEAT_MS && leftovers) void sweep(file, leftovers);
  }, BEAT_MS);
  // It must not keep a program alive that has nothing else to do.
  beat.unref();
  return {
    key: made.key,
    notice,
    isMine,
    tell: async (address) => {
      if (!(await change({ address }))) throw new FileTrouble(LOST);
    },
    release: () => {
      clearInterval(beat);
      letGo(file, made);
    },
  };
}

const LOST =
  "Another desk has taken this job over, since this one gave no sign for a while. Start Rigsheet again: it opens that one.";

/** Takes the lock away, unless another is just following this one. */
function letGo(file: string, mine: Holder): void {
  const right = rightOver(file, mine);
  try {
    closeSync(openSync(right, "wx"));
  } catch (error) {
    // Where nothing new can be made, what is there can be taken away all the same.
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return;
  }
  try {
    if (isHeldBy(file, mine.key)) rmSync(file, { force: true });
    rmSync(right, { force: true });
  } catch {
    // It lies there, and gives no sign any more.
  }
}

/** What lies beside a lock, with the time of each, which is only held against itself. */
async function besideLock(file: string): Promise<Map<string, number>> {
  const folder = path.dirname(file);
  const names = (await readdir(folder).catch(() => [])).map((name) => path.join(folder, name));
  const found = new Map<string, number>();
  for (const name of names) {
    if (!name.startsWith(besides(file))) continue;
    const there = await stat(name).catch(() => undefined);
    if (there) found.set(name, there.mtimeMs);
  }
  return found;
}

/** Takes away what a program that was ended in the middle of following left: a live one is done with it in an instant. */
async function sweep(file: string, before: ReadonlyMap<string, number>): Promise<void> {
  for (const [name, time] of await besideLock(file))
    if (before.get(name) === time) await rm(name, { force: true }).catch(() => undefined);
}
