/** Starts the desk: reads the options, opens the store, listens, prints the address. */
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import type { Server } from "node:http";
import path from "node:path";
import { assetsIn } from "./assets";
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
  const store = await openStore(data, file?.path);

  const ports = options.port
    ? [options.port]
    : Array.from({ length: MORE_PORTS + 1 }, (_, index) => USUAL_PORT + index);
  const assets = assetsIn(folder);
  for (const port of ports) {
    const server = createDesk({ ...services, assets, store, file, port });
    if (!(await listens(server, port))) continue;
    const address = `http://127.0.0.1:${port}/`;
    for (const notice of store.notices) say(notice);
    if (options.open) openBrowser(address);
    say("The local workbook is open until this program is stopped (Ctrl+C). Its address:");
    say(address);
    return;
  }
  throw new Error(
    options.port
      ? `Port ${options.port} is taken by another program. Give another one with --port, or stop that program.`
      : `The ports ${USUAL_PORT} to ${USUAL_PORT + MORE_PORTS} are taken by other programs. Give another one with --port.`,
  );
}

async function openFile(file: string, { readXlsx }: DeskServices): Promise<NonNullable<DeskParts["file"]>> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new Error(
      code === "ENOENT"
        ? `There is no file ${file}. Check the name, or start without a file.`
        : `The file ${file} can't be read (${code}). Check that it is a file and that you may read it.`,
    );
  }
  return { path: file, book: await readXlsx(bytes) };
}

/** Each file has an autosaved job of its own, set aside when the file was changed elsewhere since. */
async function openStore(data: string, file: string | undefined): Promise<JobStore> {
  const name = file ? `job-${createHash("sha256").update(file).digest("hex").slice(0, 12)}` : "job";
  const store = await JobStore.open(data, name);
  if (!file || !store.job) return store;
  const { stamp } = store.job;
  const now = await fileStamp(file);
  if (stamp?.modified !== now.modified || stamp.size !== now.size) {
    const kept = await store.forget();
    store.notices.push(
      `${path.basename(file)} was changed by another program since it was last open here, so it is shown as it is now. What was autosaved before is kept as ${kept}.`,
    );
  }
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
