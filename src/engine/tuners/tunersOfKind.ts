/**
 * How many tuners a kind of receiver has.
 *
 * Source: one tuner (demodulator) takes one user band (EN 50494); that a
 *   recorder of two tuners counts as two is common practice, no source.
 * Accuracy: exact counting. A catalogue of the user's own kinds counts first.
 * Range: "receiver", or "receiver" or "recorder" followed by its number of
 *   tuners, 1 to 32; whatever the catalogue holds. Case and spacing don't matter.
 */
import { faults, type Fault } from "../faults";
import { MOST_USER_BANDS, TUNERS_BY_KIND } from "./constants";

export type TunerCatalogue = ReadonlyMap<string, number | Fault>;

const COUNTED = /^(?:receiver|recorder), ?(\d{1,2}) tuners?$/;

/** A kind as it is compared: lower case, single spaces. */
export const kindKey = (kind: string): string => kind.trim().toLowerCase().replace(/\s+/g, " ");

/**
 * @param kind the kind of receiver in words
 * @param catalogue the user's own kinds, by {@link kindKey}
 * @returns number of tuners; a fault that lists the known kinds when it is none of them
 */
export function tunersOfKind(kind: string, catalogue: TunerCatalogue = new Map()): number | Fault {
  const key = kindKey(kind);
  const known = catalogue.get(key) ?? TUNERS_BY_KIND.get(key);
  if (known !== undefined) return known;
  const counted = Number(COUNTED.exec(key)?.[1]);
  if (counted >= 1 && counted <= MOST_USER_BANDS) return counted;
  return faults.unknownReceiver(kind, [
    ...new Set([...TUNERS_BY_KIND.keys(), "recorder, 4 tuners", ...catalogue.keys()]),
  ]);
}
