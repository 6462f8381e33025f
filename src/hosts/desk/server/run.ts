/** Starts the desk: reads the options, opens the jobs, listens, prints the address. */
import { readFile, rm, writeFile } from "node:fs/promises";
import type { Server } from "node:http";
import path from "node:path";
import { asTrouble } from "../../file/saveAtomically";
import { DiskStorage } from "../../storage/diskStorage";
import { makeOwnFolder } from "../../storage/ownFolder";
import type { Owner } from "../../storage/ownerLock";
import { DESK_HEADER, GIVE, KEY, KEY_HEADER, ONCE } from "../protocol";
import { assetsIn } from "./assets";
import { GivenFiles, type FileServices } from "./givenFiles";
import { newToken, OnceTokens } from "./guard";
import { openBrowser } from "./openBrowser";
import { LOCK, openShelf, ownerOf, releaseAtTheEnd } from "./ownedShelf";
import { usualDataFolder, USUAL_PORT, type DeskOptions } from "./options";
import { createDesk, type DeskParts } from "./serve";

/** What the host's other parts give. */
export type DeskServices = Pick<DeskParts, "readXlsx" | "readTables" | "writeXlsx" | "writeCopy"> &
  FileServices;

/** How many ports after the usual one are tried when it is taken. */
const MORE_PORTS = 9;

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
  const data = path.resolve(options.data ?? usualDataFolder());
  const file = options.file === undefined ? undefined : path.resolve(options.file);
  await makeOwnFolder(data);
  const owner = await ownerOf(data, say);
  if ("address" in owner) {
    if (file !== undefined) await give(owner.address, file);
    say("A desk runs on this folder already. Its address:");
    say(owner.address);
    if (options.open) openBrowser(await onceAddress(owner.address));
    return;
  }
  releaseAtTheEnd(owner);
  try {
    if (owner.notice !== undefined) say(owner.notice);
    const shelf = await openShelf(data, owner);
    const files = new GivenFiles(shelf, services, path.join(data, "replaced"));
    if (file !== undefined) await files.give(file);
    await listen(options, { ...services, shelf, files, place: data, name: owner.key }, folder, owner, say);
  } catch (error) {
    owner.release();
    throw error;
  }
}

const KEY_FILE = "desk.key";

type Ready = Omit<DeskParts, "assets" | "port" | "key" | "once">;

async function listen(
  { port: asked, open }: DeskOptions,
  parts: Ready,
  folder: string,
  owner: Owner,
  say: (line: string) => void,
): Promise<void> {
  const usual = Array.from({ length: MORE_PORTS + 1 }, (_, index) => USUAL_PORT + index);
  const last = await lastPort(parts.place);
  const ports = asked ? [asked] : [...new Set([...(last === undefined ? [] : [last]), ...usual])];
  const assets = assetsIn(folder);
  const key = await keyIn(parts.place);
  for (const port of ports) {
    const once = new OnceTokens();
    const server = createDesk({ ...parts, assets, port, key, once });
    if (!(await listens(server, port))) continue;
    const address = `http://127.0.0.1:${port}/?${KEY}=${key}`;
    for (const notice of parts.shelf.notices) say(notice);
    try {
      await owner.tell(address);
    } catch (error) {
      // Nobody would find it.
      server.close();
      throw asTrouble(error, path.join(parts.place, LOCK));
    }
    await notePort(parts.place, port, last);
    if (open) openBrowser(`http://127.0.0.1:${port}/?${ONCE}=${once.make()}`);
    say("The local workbook is open until this program is stopped (Ctrl+C). Its address:");
    say(address);
    return;
  }
  throw new Error(
    asked
      ? `Port ${asked} is taken by another program. Give another one with --port, or stop that program.`
      : `The ports ${USUAL_PORT} to ${USUAL_PORT + MORE_PORTS} are taken by other programs. Give another one with --port.`,
  );
}

/** The same at every start, so that a page which waits for the desk goes on by itself; nobody else may read it. */
async function keyIn(data: string): Promise<string> {
  const file = path.join(data, KEY_FILE);
  const found = await readFile(file, "utf8").catch(() => "");
  if (/^[\w-]{32}$/.test(found)) return found;
  const key = newToken();
  // On a disk that takes none it holds until the desk ends.
  await rm(file, { force: true })
    .then(() => new DiskStorage(data).create(KEY_FILE, Buffer.from(key)))
    .catch(() => undefined);
  return key;
}

/** The port of the last time: what waits in a browser waits for that address. */
async function lastPort(data: string): Promise<number | undefined> {
  const found = Number(await readFile(path.join(data, PORT_FILE), "utf8").catch(() => ""));
  return Number.isInteger(found) && found > 0 && found <= LAST_PORT ? found : undefined;
}

const PORT_FILE = "desk.port";
const LAST_PORT = 65_535;

/** On a disk that takes none the usual one is tried first again. */
async function notePort(data: string, port: number, last: number | undefined): Promise<void> {
  if (port !== last)
    await writeFile(path.join(data, PORT_FILE), String(port), { mode: OWN_FILE }).catch(() => undefined);
}

const OWN_FILE = 0o600;

/** Hands a file to the desk that runs. @throws Error with its sentence */
async function give(address: string, file: string): Promise<void> {
  const { searchParams } = new URL(address);
  const answer = await fetch(new URL(GIVE, address), {
    method: "POST",
    body: JSON.stringify(file),
    headers: { [DESK_HEADER]: "1", [KEY_HEADER]: searchParams.get(KEY) ?? "" },
  });
  if (!answer.ok) throw new Error(((await answer.json()) as { sentence: string }).sentence);
}

/** An address that opens a desk that runs, once. */
async function onceAddress(address: string): Promise<string> {
  const { origin, searchParams } = new URL(address);
  const answer = await fetch(new URL(ONCE, origin), {
    headers: { [KEY_HEADER]: searchParams.get(KEY) ?? "" },
  });
  return `${origin}/?${ONCE}=${String(await answer.json())}`;
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
