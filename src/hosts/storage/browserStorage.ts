/**
 * The browser's stand of the storage, in IndexedDB: a thing is a row for its
 * beginning and one for each piece that was added. Every verb is one strict
 * transaction, which has happened and stays, or has not; a piece is never half.
 */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { joined } from "../../jobs/joined";
import { WrittenElsewhere, type Storage } from "../../jobs/storage";

interface Schema extends DBSchema {
  /** By name and number of the piece, from 0. */
  pieces: { key: [name: string, piece: number]; value: Uint8Array };
}

const DATABASE = "rigsheet-jobs";
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

  private constructor(private readonly database: IDBPDatabase<Schema>) {}

  /** @param name of the database; tests have their own */
  static async open(name = DATABASE): Promise<BrowserStorage> {
    const database = await openDB<Schema>(name, 1, {
      upgrade: (fresh) => void fresh.createObjectStore("pieces"),
      // A later version of this program wants to change the database: it may.
      blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
    });
    return new BrowserStorage(database);
  }

  close(): void {
    this.database.close();
  }

  async list(): Promise<string[]> {
    const names: string[] = [];
    const transaction = this.database.transaction("pieces");
    // From one thing's beginning to the next one's, past all pieces between.
    for (let cursor = await transaction.store.openKeyCursor(); cursor;) {
      const [name] = cursor.key;
      names.push(name);
      cursor = await cursor.continue([name, LATEST]);
      if (cursor?.key[0] === name) cursor = await cursor.continue();
    }
    return names;
  }

  async read(name: string): Promise<Uint8Array | undefined> {
    const pieces = await this.database.getAll("pieces", piecesOf(name));
    if (pieces.length === 0) return undefined;
    this.seen.set(name, pieces.length);
    return joined(pieces);
  }

  /** The number of its pieces. */
  async size(name: string): Promise<number | undefined> {
    return (await this.database.count("pieces", piecesOf(name))) || undefined;
  }

  async create(name: string, bytes: Uint8Array): Promise<void> {
    const transaction = this.database.transaction("pieces", "readwrite", STRICT);
    try {
      // Fails, and takes the transaction with it, where there is one of that name.
      await Promise.all([transaction.store.add(bytes, [name, 0]), transaction.done]);
    } catch (error) {
      throw (error as DOMException).name === "ConstraintError" ? elsewhere(name) : error;
    }
    this.seen.set(name, 1);
  }

  async append(name: string, bytes: Uint8Array): Promise<void> {
    const transaction = this.database.transaction("pieces", "readwrite", STRICT);
    const last = await transaction.store.openKeyCursor(piecesOf(name), "prev");
    const there = last ? last.key[1] + 1 : 0;
    if (there === 0 || there !== (this.seen.get(name) ?? there)) {
      transaction.abort();
      await transaction.done.catch(() => undefined);
      throw there === 0 ? new Error(`There is no ${name} to add to.`) : elsewhere(name);
    }
    await Promise.all([transaction.store.add(bytes, [name, there]), transaction.done]);
    this.seen.set(name, there + 1);
  }

  async moveAside(name: string, to: string): Promise<void> {
    const transaction = this.database.transaction("pieces", "readwrite", STRICT);
    for (let cursor = await transaction.store.openCursor(piecesOf(name)); cursor;) {
      const [, piece] = cursor.key;
      await transaction.store.put(cursor.value, [to, piece]);
      await cursor.delete();
      cursor = await cursor.continue();
    }
    await transaction.done;
    this.seen.delete(name);
  }

  async drop(name: string): Promise<void> {
    this.seen.delete(name);
    await this.database.delete("pieces", piecesOf(name));
  }
}
