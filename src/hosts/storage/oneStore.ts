/** A database of the browser with one store, for what is kept beside the jobs. */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";

interface Schema<Value> extends DBSchema {
  kept: { key: string; value: Value };
}

export type OneStore<Value> = <T>(work: (database: IDBPDatabase<Schema<Value>>) => Promise<T>) => Promise<T>;

/**
 * @param name of the database
 * @returns what opens it for a piece of work; that throws where the browser keeps nothing
 */
export const oneStore =
  <Value>(name: string): OneStore<Value> =>
  async (work) => {
    const database = await openDB<Schema<Value>>(name, 1, {
      upgrade: (fresh) => void fresh.createObjectStore("kept"),
    });
    return work(database).finally(() => database.close());
  };
