/** The firm's logo, kept in this browser so that it is chosen once. */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";

export interface KeptLogo {
  /** Of the file that it came from. */
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

interface Schema extends DBSchema {
  logos: { key: string; value: KeptLogo };
}

const KEY = "firm";

/** @throws where the browser keeps nothing */
async function inLogos<T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
  const database = await openDB<Schema>("rigsheet-logo", 1, {
    upgrade: (fresh) => void fresh.createObjectStore("logos"),
  });
  return work(database).finally(() => database.close());
}

/** @returns undefined where none is kept, or the browser keeps nothing */
export const keptLogo = (): Promise<KeptLogo | undefined> =>
  inLogos((database) => database.get("logos", KEY)).catch(() => undefined);

/**
 * @param logo undefined for none any more
 * @returns whether the browser keeps it so
 */
export const keepLogo = (logo: KeptLogo | undefined): Promise<boolean> =>
  inLogos(async (database) => {
    await (logo ? database.put("logos", logo, KEY) : database.delete("logos", KEY));
    return true;
  }).catch(() => false);
