/** What lies in a browser's storage, read beside the page: by a page of the same address without a script. */
import type { BrowserContext, Page } from "playwright-core";
import { MemoryStorage } from "../../../src/hosts/storage/memoryStorage";
import type { HeldJob } from "../../../src/jobs/shelf";
import { Shelf } from "../../../src/jobs/shelf";

export interface Piece {
  readonly name: string;
  readonly piece: number;
  /** In base64: a driver takes seconds over a long list of numbers. */
  readonly bytes: string;
}

/** Runs something on a page of the same address that writes nothing by itself. */
export async function beside<T>(
  context: BrowserContext,
  address: string,
  work: (page: Page) => Promise<T>,
): Promise<T> {
  const page = await context.newPage();
  try {
    await page.goto(`${address}icon.svg`);
    return await work(page);
  } finally {
    await page.close();
  }
}

/** @returns every piece of the jobs' database, in order; none where there is no such database */
export const piecesOn = (page: Page): Promise<Piece[]> =>
  page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error as Error);
      });
    const opening = indexedDB.open("rigsheet-jobs");
    const database = await done(opening);
    try {
      if (!database.objectStoreNames.contains("pieces")) return [];
      const pieces = database.transaction("pieces").objectStore("pieces");
      const [keys, values] = await Promise.all([done(pieces.getAllKeys()), done(pieces.getAll())]);
      return keys.flatMap((key, index) => {
        const bytes = values[index] as Uint8Array;
        // What another program put there.
        if (!Array.isArray(key) || !(bytes instanceof Uint8Array)) return [];
        const [name, piece] = key as [string, number];
        let binary = "";
        for (const byte of bytes) binary += String.fromCharCode(byte);
        return { name, piece, bytes: btoa(binary) };
      });
    } finally {
      database.close();
    }
  });

/** A shelf of its own over a copy of what lies there. */
export async function shelfOf(pieces: readonly Piece[]): Promise<Shelf> {
  const storage = new MemoryStorage();
  for (const { name, piece, bytes } of pieces)
    if (piece === 0) await storage.create(name, Buffer.from(bytes, "base64"));
    // Of one whose beginning another program has overwritten nothing can be read.
    else if ((await storage.size(name)) !== undefined)
      await storage.append(name, Buffer.from(bytes, "base64"));
  return Shelf.open(storage);
}

/**
 * What was typed into a cell one after the other, as “e0”, “e1” and so on.
 * @returns the numbers; what was folded into the document meanwhile counts as far as its last tells
 */
export function countedIn(
  { document, changes }: Pick<HeldJob, "document" | "changes">,
  cell: string,
): number[] {
  const numberOf = (content = ""): number => Number(/^'?e(\d+)$/.exec(content)?.[1] ?? Number.NaN);
  const written = (changes as unknown as { commands?: { type: string; content?: string }[] }[])
    .flatMap(({ commands = [] }) => commands)
    .filter(({ type }) => type === "UPDATE_CELL")
    .map(({ content }) => numberOf(content));
  const { cells } = (document.sheets as { name: string; cells: Record<string, string> }[]).find(
    ({ name }) => name === "Site",
  )!;
  const last = numberOf(cells[cell]);
  return [...(Number.isNaN(last) ? [] : Array.from({ length: last + 1 }, (_, index) => index)), ...written];
}
