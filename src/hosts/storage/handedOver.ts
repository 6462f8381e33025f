/** What a job came to when its customer's page was last made, kept in this browser. */
import type { ShelfLine } from "../../workbooks/shelfLine";
import { oneStore } from "./oneStore";

export interface HandedOver {
  /** As `toISOString` writes it. */
  readonly at: string;
  readonly line: Pick<ShelfLine, "number" | "revision" | "total" | "currency">;
}

const inHandedOver = oneStore<HandedOver>("rigsheet-handed-over");

/**
 * @param id of the job
 * @returns undefined where none was made here, or the browser keeps nothing
 */
export const lastHandedOver = (id: string): Promise<HandedOver | undefined> =>
  inHandedOver((database) => database.get("kept", id)).catch(() => undefined);

/** A browser that keeps nothing is asked in vain. */
export const keepHandedOver = (id: string, made: HandedOver): Promise<void> =>
  inHandedOver(async (database) => void (await database.put("kept", made, id))).catch(() => undefined);
