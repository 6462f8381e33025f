/** Files that the browser holds for a job, where it can: then Save writes into the file itself. */
import { openDB, type DBSchema } from "idb";

interface Schema extends DBSchema {
  /** By the job's id. */
  files: { key: string; value: FileSystemFileHandle };
}

/** What browsers that have it add; others lack it. */
interface Picker {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
}
interface Permitting {
  requestPermission?(how: { mode: "readwrite" }): Promise<PermissionState>;
}

export interface HeldFile {
  readonly name: string;
  read(): Promise<{ readonly bytes: Uint8Array<ArrayBuffer>; readonly mark: string }>;
  /** @returns the mark of what stands there now */
  write(content: Blob): Promise<string>;
}

const database = () =>
  openDB<Schema>("rigsheet-files", 1, { upgrade: (fresh) => void fresh.createObjectStore("files") });

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
  await (await database()).put("files", handle, id).catch(() => undefined);
}

/** @returns the file that this browser holds for a job; undefined where it holds none */
export async function fileHeldBy(id: string): Promise<HeldFile | undefined> {
  const handle = await (await database()).get("files", id).catch(() => undefined);
  return handle && heldFile(handle);
}

export function heldFile(handle: FileSystemFileHandle): HeldFile {
  return {
    name: handle.name,
    read: async () => {
      const bytes = new Uint8Array(await (await handle.getFile()).arrayBuffer());
      return { bytes, mark: await markOf(bytes) };
    },
    write: async (content) => {
      const permission = await (handle as Permitting).requestPermission?.({ mode: "readwrite" });
      if (permission !== undefined && permission !== "granted")
        throw new Error(
          `The browser does not let this page write into ${handle.name}. Allow it when it asks, or save the job under another name with “Download mine”.`,
        );
      // The browser writes beside the file and puts it in its place when it is closed.
      const stream = await handle.createWritable();
      await stream.write(content);
      await stream.close();
      return markOf(new Uint8Array(await content.arrayBuffer()));
    },
  };
}

/** SHA-256, in hexadecimal. */
export async function markOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
