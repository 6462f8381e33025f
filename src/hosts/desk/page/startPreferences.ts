/** Whether the desk opens on its start page, and how far somebody is with the hints: kept in the browser's storage. */

export interface StartPreferences {
  readonly opensOnStart: boolean;
  /** The hint that is shown next, from 0; undefined once they are gone through or put off for good. */
  readonly hint?: number;
}

const KEY = "rigsheet.start";
const FIRST: StartPreferences = { opensOnStart: true, hint: 0 };

/** @param storage may throw where the browser refuses it; everybody is then new */
export function startPreferences(storage: () => Pick<Storage, "getItem">): StartPreferences {
  try {
    const kept = JSON.parse(storage().getItem(KEY) ?? "null") as Partial<StartPreferences> | null;
    if (!kept) return FIRST;
    const { hint } = kept;
    return {
      opensOnStart: kept.opensOnStart !== false,
      ...(typeof hint === "number" && Number.isInteger(hint) && hint >= 0 && { hint }),
    };
  } catch {
    return FIRST;
  }
}

/** @returns whether the browser keeps it */
export function keepStartPreferences(
  storage: () => Pick<Storage, "setItem">,
  preferences: StartPreferences,
): boolean {
  try {
    storage().setItem(KEY, JSON.stringify(preferences));
    return true;
  } catch {
    return false;
  }
}
