/**
 * The file of a lock: who holds a thing, where that one answers, and how many
 * signs it has given. Its holder changes it in place, through one open file, so
 * that a holder that was followed meanwhile writes into a file that has no name
 * any more, never into its follower's.
 */
import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { open, rename, rm, writeFile } from "node:fs/promises";

const OWN_FILE = 0o600;
/** Room for an address and for every count, so that a sign needs no room on a disk that is full. */
const LENGTH = 512;

export interface Holder {
  readonly key: string;
  readonly pid: number;
  readonly host: string;
  /** Where its process number counts. */
  readonly place?: string;
  /** Where it answers; absent while it starts. */
  readonly address?: string;
  /** Counts its signs. */
  readonly beat?: number;
}

export interface SeenLock {
  /** Absent where it can't be told: something has damaged the file, or it is being made. */
  readonly holder?: Holder;
  /** Another after each sign of its holder. */
  readonly sign: string;
}

const isGone = (error: unknown): boolean =>
  ["ENOENT", "ENOTDIR"].includes((error as NodeJS.ErrnoException).code ?? "");

/** @returns undefined where there is none */
export async function readLock(file: string): Promise<SeenLock | undefined> {
  try {
    // Opened each time: a network folder shows what is new to those who open.
    const handle = await open(file, "r");
    try {
      const { mtimeMs } = await handle.stat();
      const text = await handle.readFile("utf8");
      return { holder: holderIn(text), sign: `${mtimeMs} ${text}` };
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (isGone(error)) return undefined;
    throw error;
  }
}

/** @returns undefined where that can't be known now, which says nothing about the lock */
export function isHeldBy(file: string, key: string): boolean | undefined {
  try {
    const text = readFileSync(file, "utf8");
    // One that is just being made by another; its holder never empties it.
    if (text === "") return false;
    const holder = holderIn(text);
    return holder && holder.key === key;
  } catch (error) {
    return isGone(error) ? false : undefined;
  }
}

/** @returns whether there was none */
export async function createLock(file: string, holder: Holder): Promise<boolean> {
  const handle = await open(file, "wx", OWN_FILE).catch((error: unknown) => {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  });
  if (!handle) return false;
  try {
    await handle.writeFile(textOf(holder));
  } catch (error) {
    // A lock of nobody would keep the next one waiting.
    await rm(file, { force: true }).catch(() => undefined);
    throw error;
  } finally {
    await handle.close();
  }
  return true;
}

/** @returns false where it is another's by now, and was left alone */
export async function changeLock(file: string, holder: Holder): Promise<boolean> {
  const handle = await open(file, "r+").catch((error: unknown) => {
    if (!isGone(error)) throw error;
  });
  if (!handle) return false;
  try {
    if (holderIn(await handle.readFile("utf8"))?.key !== holder.key) return false;
    await handle.write(textOf(holder), 0);
    return true;
  } finally {
    await handle.close();
  }
}

/** Puts another holder's lock in the place of one, whole. */
export async function replaceLock(file: string, holder: Holder): Promise<void> {
  const part = `${file}.${randomUUID()}.part`;
  try {
    await writeFile(part, textOf(holder), { mode: OWN_FILE });
    await rename(part, file);
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    throw error;
  }
}

/** White space after it means nothing in JSON. */
const textOf = (holder: Holder): string => JSON.stringify(holder).padEnd(LENGTH);

function holderIn(text: string): Holder | undefined {
  try {
    const found = JSON.parse(text) as Partial<Holder> | null;
    return typeof found?.key === "string" && typeof found.pid === "number" && typeof found.host === "string"
      ? (found as Holder)
      : undefined;
  } catch {
    return undefined;
  }
}
