/**
 * Finds, or makes, the folder that an executable's files lie in for a run.
 * Usually that is one in the user's cache, named by what it holds. It is written
 * under another name, renamed when whole, and never changed after that: starts
 * at the same time, starts that were cut off and programs that go on running
 * from it can't get in each other's way. One that was damaged since is passed
 * over for one beside it. Where there is no such place, the files go into a
 * fresh folder that is taken away at the end.
 */
import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
} from "node:fs";
import { homedir, tmpdir } from "node:os";
import path from "node:path";
import type { Carried } from "./carried";
import { isOwn, isWhole, unpack } from "./unpacked";

export interface Places {
  /** The user's cache; absent where the system has none. */
  readonly cache: string | undefined;
  readonly temporary: string;
}

export type FilesFolder =
  | { readonly folder: string; readonly kept: boolean }
  /** Why there is none: a sentence for the user. */
  | { readonly trouble: string };

const OWN_FOLDER = 0o700;
/** Of one content; a folder that is damaged again and again is somebody's doing. */
const MOST_BESIDE = 5;
const DAY_MS = 86_400_000;
/** A folder that no start has used for so long is an older version's. */
const UNUSED_DAYS = 30;
/** Writing one takes seconds. */
const CUT_OFF_DAYS = 1;
const RENAME_TRIES = 5;
const TRY_AGAIN_MS = 100;

export function usualPlaces(platform = process.platform, env = process.env, home = homeOf()): Places {
  return { cache: cacheOf(platform, env, home), temporary: tmpdir() };
}

function cacheOf(platform: NodeJS.Platform, env: NodeJS.ProcessEnv, home: string): string | undefined {
  const [named, usual, name] =
    platform === "win32"
      ? // The jobs lie beside it, in "Rigsheet".
        [env.LOCALAPPDATA, ["AppData", "Local"], "Rigsheet program"]
      : [env.XDG_CACHE_HOME, [".cache"], "rigsheet"];
  // What is no whole path counts as not given, as the standard of these folders has it.
  const above = named && path.isAbsolute(named) ? named : home && path.join(home, ...usual);
  return above ? path.join(above, name) : undefined;
}

function homeOf(): string {
  try {
    return homedir();
  } catch {
    return "";
  }
}

/** @returns the folder with the carried files, whole */
export function filesFolder(carried: Carried, places: Places): FilesFolder {
  const refused: string[] = [];
  if (places.cache !== undefined) {
    try {
      return { folder: keptIn(places.cache, carried), kept: true };
    } catch (error) {
      refused.push(`${places.cache} (${reasonOf(error)})`);
    }
  }
  let folder: string | undefined;
  try {
    folder = mkdtempSync(path.join(places.temporary, "rigsheet-"));
    unpack(carried, folder);
    return { folder, kept: false };
  } catch (error) {
    if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
    refused.push(`${places.temporary} (${reasonOf(error)})`);
  }
  const bytes = carried.files.reduce((sum, { size }) => sum + size, 0);
  return {
    trouble: `Rigsheet unpacks its files before it starts, ${Math.ceil(bytes / 1e6)} MB, and found no place for them: ${refused.join("; ")}. Make room there, or name a folder of your own in ${process.platform === "win32" ? "TEMP" : "TMPDIR"}, and start it again.`,
  };
}

function keptIn(cache: string, carried: Carried): string {
  mkdirSync(cache, { recursive: true, mode: OWN_FOLDER });
  if (!isOwn(cache)) throw new Error("others can write into it, or it is a link");
  for (let beside = 1; beside <= MOST_BESIDE; beside++) {
    const folder = path.join(cache, beside === 1 ? carried.id : `${carried.id}-${beside}`);
    const isThere = lstatSync(folder, { throwIfNoEntry: false }) !== undefined;
    if (!(isThere ? isWhole(carried, folder) : placed(carried, cache, folder))) continue;
    markUsed(folder);
    tidy(cache, path.basename(folder));
    return folder;
  }
  throw new Error("what was put there is damaged again and again");
}

/** What has not been used for long is taken away. */
export function markUsed(folder: string): void {
  const now = new Date();
  try {
    utimesSync(folder, now, now);
  } catch {
    // On a disk that is read-only by now nothing is taken away either.
  }
}

/** @returns false where something else took the name, and is not whole */
function placed(carried: Carried, cache: string, folder: string): boolean {
  const part = mkdtempSync(path.join(cache, `${PART}${carried.id}-`));
  try {
    unpack(carried, part);
    for (let left = RENAME_TRIES; ; left--) {
      try {
        renameSync(part, folder);
        return true;
      } catch (error) {
        // Another start was quicker.
        if (lstatSync(folder, { throwIfNoEntry: false })) return isWhole(carried, folder);
        if (left === 0) throw error;
        // A virus scanner may hold a file that was just written.
        Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, TRY_AGAIN_MS);
      }
    }
  } finally {
    rmSync(part, { recursive: true, force: true });
  }
}

const PART = "part-";
const FOLDER = /^[0-9a-f]{16}(-\d)?$/;

/** Takes away what earlier versions, and starts that were cut off, left; what can't be taken away stays. */
function tidy(cache: string, used: string): void {
  for (const name of readdirSync(cache)) {
    const isPart = name.startsWith(PART);
    if (name === used || !(isPart || FOLDER.test(name))) continue;
    const one = path.join(cache, name);
    try {
      const days = (Date.now() - statSync(one).mtimeMs) / DAY_MS;
      if (days > (isPart ? CUT_OFF_DAYS : UNUSED_DAYS)) rmSync(one, { recursive: true, force: true });
    } catch {
      // Another start takes it away just now.
    }
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "the disk is read-only",
  ENOENT: "there is no such folder",
  ENOTDIR: "it is a file, or below one",
  EEXIST: "it is a file",
};

function reasonOf(error: unknown): string {
  const { code = "", message } = error as NodeJS.ErrnoException;
  return REASONS[code] ?? message;
}
