/** Files that the browser holds for a job, where it can: then Save writes into the file itself. */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";

interface Schema extends DBSchema {
  /** By the job's id. */
  files: { key: string; value: FileSystemFileHandle };
}

/** What browsers that have it add; others lack it. */
interface Picker {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
}
interface Permitting {
  queryPermission?(how: { mode: "readwrite" }): Promise<PermissionState>;
  requestPermission?(how: { mode: "readwrite" }): Promise<PermissionState>;
}

export interface HeldFile {
  readonly name: string;
  /** @throws Error with a sentence where the user does not let this page write, which a browser asks anew after its own start */
  mustBeAllowed(): Promise<void>;
  read(): Promise<{ readonly bytes: Uint8Array<ArrayBuffer>; readonly mark: string }>;
  /**
   * @returns the mark of what stands there now
   * @throws Error with a sentence; what stood there is then as it was
   */
  write(content: Blob): Promise<string>;
}

/** A browser that keeps nothing remembers no file either. */
async function inFiles<T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T | undefined> {
  try {
    const database = await openDB<Schema>("rigsheet-files", 1, {
      upgrade: (fresh) => void fresh.createObjectStore("files"),
    });
    return await work(database).finally(() => database.close());
  } catch {
    return undefined;
  }
}

const browser = window as unknown as Picker;

export const canHold = (): boolean => browser.showOpenFilePicker !== undefined;

/** @returns undefined where the user thinks better of it */
export async function pickFile(): Promise<FileSystemFileHandle | undefined> {
  try {
    const [handle] = await browser.showOpenFilePicker!({
      types: [
        {
          description: "Workbook",
          accept: { "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet": [".xlsx"] },
        },
      ],
    });
    return handle;
  } catch (error) {
    if ((error as DOMException).name === "AbortError") return undefined;
    throw error;
  }
}

/** Remembers the file of a job. */
export async function holdFor(id: string, handle: FileSystemFileHandle): Promise<void> {
  await inFiles((database) => database.put("files", handle, id));
}

/** @returns the file that this browser holds for a job; undefined where it holds none */
export async function fileHeldBy(id: string): Promise<HeldFile | undefined> {
  const handle = await inFiles((database) => database.get("files", id));
  return handle && heldFile(handle);
}

export function heldFile(handle: FileSystemFileHandle): HeldFile {
  return {
    name: handle.name,
    mustBeAllowed: () => mustBeAllowed(handle),
    read: async () => {
      const bytes = new Uint8Array(await (await handle.getFile()).arrayBuffer());
      return { bytes, mark: await markOf(bytes) };
    },
    write: async (content) => {
      await mustBeAllowed(handle);
      try {
        // The browser writes beside the file and puts it in its place when it is closed.
        const stream = await handle.createWritable();
        await stream.write(content);
        await stream.close();
      } catch (error) {
        throw new Error(
          `${handle.name} could not be written: ${(error as Error).message}. What stood there is as it was, and the job is kept in this browser. Is the file read-only, open in another program, or its disk full or taken out? Mend that and save again, or take the job out with Export all, under Jobs.`,
          { cause: error },
        );
      }
      return markOf(new Uint8Array(await content.arrayBuffer()));
    },
  };
}

async function mustBeAllowed(handle: FileSystemFileHandle): Promise<void> {
  if (await mayWrite(handle as Permitting)) return;
  throw new Error(
    `The browser does not let this page write into ${handle.name}, so the file is behind; the job is kept in this browser. Save again and allow it when the browser asks, or take the job out with Export all, under Jobs.`,
  );
}

/** Asks the user where the browser wants it so. */
async function mayWrite(handle: Permitting): Promise<boolean> {
  const known = await handle.queryPermission?.({ mode: "readwrite" });
  if (known === undefined || known === "granted") return true;
  return (await handle.requestPermission?.({ mode: "readwrite" })) === "granted";
}

/** SHA-256, in hexadecimal. */
export async function markOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
