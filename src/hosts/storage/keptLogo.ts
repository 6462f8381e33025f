/** The firm's logo, kept in this browser so that it is chosen once. */
import { oneStore } from "./oneStore";

export interface KeptLogo {
  /** Of the file that it came from. */
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

const KEY = "firm";

const inLogos = oneStore<KeptLogo>("rigsheet-firm-logo");

/** @returns undefined where none is kept, or the browser keeps nothing */
export const keptLogo = (): Promise<KeptLogo | undefined> =>
  inLogos((database) => database.get("kept", KEY)).catch(() => undefined);

/**
 * @param logo undefined for none any more
 * @returns whether the browser keeps it so
 */
export const keepLogo = (logo: KeptLogo | undefined): Promise<boolean> =>
  inLogos(async (database) => {
    await (logo ? database.put("kept", logo, KEY) : database.delete("kept", KEY));
    return true;
  }).catch(() => false);
