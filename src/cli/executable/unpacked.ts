/** The carried files as a folder: writing it, and looking whether it is still what was written. */
import { lstatSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { hashOf, type Carried } from "./carried";

const OWN_FILE = 0o600;
const OWN_FOLDER = 0o700;

/** @param folder which is there, and empty */
export function unpack({ files, bytesOf }: Carried, folder: string): void {
  for (const file of files) {
    const place = path.join(folder, file.path);
    mkdirSync(path.dirname(place), { recursive: true, mode: OWN_FOLDER });
    writeFileSync(place, bytesOf(file.path), { mode: OWN_FILE, flag: "wx" });
  }
}

/**
 * Whether a folder holds the carried files, each to the byte, and nothing else.
 * All 20 MB are read and hashed at every start, which takes less time than
 * loading the command does: what is half there, was cleared away in part or was
 * changed must never be run.
 */
export function isWhole({ files }: Carried, folder: string): boolean {
  try {
    return (
      isOwn(folder) &&
      countIn(folder) === files.length &&
      files.every(({ path: name, size, sha256 }) => {
        const place = path.join(folder, name);
        return statSync(place).size === size && hashOf(readFileSync(place)) === sha256;
      })
    );
  } catch {
    return false;
  }
}

const countIn = (folder: string): number =>
  readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => !entry.isDirectory())
    .length;

/** A folder, no link, that nobody else can write into; on Windows the user's own folders are guarded by where they lie. */
export function isOwn(folder: string): boolean {
  const facts = lstatSync(folder);
  if (!facts.isDirectory()) return false;
  return (
    process.getuid === undefined || (facts.uid === process.getuid() && (facts.mode & OTHERS_WRITE) === 0)
  );
}

const OTHERS_WRITE = 0o022;
