/**
 * The browser's stand of the storage, in IndexedDB: a thing is a row for its
 * beginning and one for each piece that was added. Every verb is one strict
 * transaction, which has happened and stays, or has not; a piece is never half.
 */
import { openDB, type DBSchema, type IDBPDatabase, type IDBPObjectStore, type IDBPTransaction } from "idb";
import { joined } from "../../jobs/joined";
import { WrittenElsewhere, type Storage } from "../../jobs/storage";

interface Schema extends DBSchema {
  /** By name and number of the piece, from 0. */
  pieces: { key: [name: string, piece: number]; value: Uint8Array };
  /** One row: how often anything was written here, by any window. */
  writes: { key: string; value: number };
}
type Stores = ("pieces" | "writes")[];

const DATABASE = "rigsheet-jobs";
const VERSION = 2;
const WRITES = "all";
const WRITING: Stores = ["pieces", "writes"];
const LATEST = Number.MAX_SAFE_INTEGER;
const STRICT = { durability: "strict" } as const;

/** Every piece of a thing. */
const piecesOf = (name: string): IDBKeyRange => IDBKeyRange.bound([name, 0], [name, LATEST]);

const elsewhere = (name: string): WrittenElsewhere =>
  new WrittenElsewhere(
    `Another window has written to ${name} meanwhile. Nothing of it was changed from here; reload this page to see what is there.`,
  );

export class BrowserStorage implements Storage {
  /** How many pieces of each thing this one has seen, so that nothing is put behind what it has not. */
  private readonly seen = new Map<string, number>();
  private own = 0;
  private database: IDBPDatabase<Schema> | undefined;

  private constructor(private readonly databaseName: string) {}

  /**
   * @param name of the database; tests have their own
   * @throws Error with a sentence where the browser keeps nothing for this page, or a later version of it is there
   */
  static async open(name = DATABASE): Promise<BrowserStorage> {
    const storage = new BrowserStorage(name);
    await storage.opened();
    return storage;
  }

  close(): void {
    this.database?.close();
    this.database = undefined;
  }

  /** How often others have written here; what was read before another number came up may be behind. */
  async writesOfOthers(): Promise<number> {
    return this.asked(async (database) => ((await database.get("writes", WRITES)) ?? 0) - this.own);
  }

  async list(): Promise<string[]> {
    return [...(await this.sizes()).keys()];
  }

  /** One look at the keys, where one a job would be a transaction each: a window that finds that another has written reads the list anew. */
  async sizes(): Promise<ReadonlyMap<string, number>> {
    const sizes = new Map<string, number>();
    // What another page put there under keys of its own is none of this one's.
    for (const [name] of (await this.asked((database) => database.getAllKeys("pieces"))).filter(isOwn))
      sizes.set(name, (sizes.get(name) ?? 0) + 1);
    return sizes;
  }

  async read(name: string): Promise<Uint8Array | undefined> {
    const pieces = await this.asked((database) => database.getAll("pieces", piecesOf(name)));
    if (pieces.length === 0) return undefined;
    this.seen.set(name, pieces.length);
    // What is no piece reads as one of which nothing is left.
    return joined(pieces.map((piece: unknown) => (piece instanceof Uint8Array ? piece : NOTHING)));
  }

  /** The number of its pieces. */
  async size(name: string): Promise<number | undefined> {
    return (await this.asked((database) => database.count("pieces", piecesOf(name)))) || undefined;
  }

  async create(name: string, bytes: Uint8Array): Promise<void> {
    await this.written(async (pieces) => {
      // Fails, and takes the transaction with it, where there is one of that name.
      await pieces.add(bytes, [name, 0]).catch((error: unknown) => {
        throw (error as DOMException).name === "ConstraintError" ? elsewhere(name) : error;
      });
    });
    this.seen.set(name, 1);
  }

  async append(name: string, bytes: Uint8Array): Promise<void> {
    let there = 0;
    await this.written(async (pieces) => {
      const last = await pieces.openKeyCursor(piecesOf(name), "prev");
      there = last ? last.key[1] + 1 : 0;
      if (there === 0) throw new Error(`There is no ${name} to add to.`);
      if (there !== (this.seen.get(name) ?? there)) throw elsewhere(name);
      await pieces.add(bytes, [name, there]);
    });
    this.seen.set(name, there + 1);
  }

  async moveAside(name: string, to: string): Promise<void> {
    await this.written(async (pieces) => {
      for (let cursor = await pieces.openCursor(piecesOf(name)); cursor;) {
        const [, piece] = cursor.key;
        await pieces.put(cursor.value, [to, piece]);
        await cursor.delete();
        cursor = await cursor.continue();
      }
    });
    this.seen.delete(name);
  }

  async drop(name: string): Promise<void> {
    this.seen.delete(name);
    await this.written((pieces) => pieces.delete(piecesOf(name)));
  }

  /** One strict transaction, counted; whatever is thrown in it, nothing of it has happened. */
  private async written(work: (pieces: Pieces) => Promise<void>): Promise<void> {
    await this.asked(async (database) => {
      const transaction = database.transaction(WRITING, "readwrite", STRICT);
      // Seen below; where the work itself fails, this fails after it.
      transaction.done.catch(() => undefined);
      try {
        await work(transaction.objectStore("pieces"));
        const writes = transaction.objectStore("writes");
        await writes.put(((await writes.get(WRITES)) ?? 0) + 1, WRITES);
      } catch (error) {
        abort(transaction);
        // What made it fail is said by the transaction, where its calls know only that it has.
        throw (isAbort(error) && transaction.error) || error;
      }
      await transaction.done;
    });
    this.own++;
  }

  /** Opened anew where the browser has closed it: for good where its data were taken away. */
  private async opened(): Promise<IDBPDatabase<Schema>> {
    if (this.database) return this.database;
    const closed = (): void => {
      this.database = undefined;
    };
    try {
      this.database = await openDB<Schema>(this.databaseName, VERSION, {
        upgrade: (fresh) => {
          // Another page of this address may have made one of this name.
          for (const store of WRITING)
            if (!fresh.objectStoreNames.contains(store)) fresh.createObjectStore(store);
        },
        // A later version of this program wants to change the database: it may.
        blocking: (_from, _to, event) => {
          (event.target as IDBDatabase).close();
          closed();
        },
        terminated: closed,
      });
    } catch (error) {
      // Where site data are blocked it is refused at once, and not by an event.
      throw inWords(error);
    }
    if (WRITING.some((store) => !this.database!.objectStoreNames.contains(store))) {
      this.close();
      throw new Error(OF_ANOTHER);
    }
    return this.database;
  }

  private async asked<T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
    const database = await this.opened();
    try {
      return await work(database);
    } catch (error) {
      if (isClosed(error)) this.close();
      throw inWords(error);
    }
  }
}

const NOTHING = new Uint8Array();
const isOwn = (key: unknown): key is [name: string, piece: number] =>
  Array.isArray(key) && key.length === 2 && typeof key[0] === "string" && typeof key[1] === "number";

type Pieces = IDBPObjectStore<Schema, Stores, "pieces", "readwrite">;

/** One that has failed has ended by itself. */
function abort(transaction: IDBPTransaction<Schema, Stores, "readwrite">): void {
  try {
    transaction.abort();
  } catch {
    // Over already.
  }
}

const isAbort = (error: unknown): boolean => error instanceof DOMException && error.name === "AbortError";

const isClosed = (error: unknown): boolean =>
  error instanceof DOMException && (error.name === "InvalidStateError" || error.name === "UnknownError");

/** What browsers say in a word of their own. */
function inWords(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error;
  return new Error(SENTENCES[error.name] ?? `the browser's storage answers: ${error.message || error.name}`, {
    cause: error,
  });
}

const OF_ANOTHER =
  "another page of this address has put a database of the same name in the place of the one for jobs. Delete this site's data in the browser's settings, once all that matters there is saved elsewhere";

const SENTENCES: Readonly<Record<string, string>> = {
  QuotaExceededError:
    "the browser has no more room for this page. Save what is open as a file, then make room: delete jobs that were put away, or other data of this browser",
  InvalidStateError:
    "the browser has closed its storage for this page: its data were cleared, or a newer Rigsheet is open in another window. Save what is open as a file, then reload this page",
  UnknownError:
    "the browser could not read or write its storage: the disk may be full, or the profile damaged. Save what is open as a file, then start the browser again",
  SecurityError: "the browser keeps nothing for this page: cookies and site data are blocked for it",
  VersionError:
    "the jobs of this browser were last used by a newer Rigsheet. Start that one; nothing here was changed",
};
