/** A person's settings on the desk, kept in the browser's storage. */
import type { Preferences } from "../../../pane/host";
import { keptMappings } from "../../../workbooks/imported/columns";

const KEY = "rigsheet.preferences";

/** @param storage may throw where the browser refuses it */
export function storedPreferences(storage: () => Pick<Storage, "getItem">): Preferences | undefined {
  try {
    const kept = JSON.parse(storage().getItem(KEY) ?? "null") as Partial<Preferences> | null;
    if (!kept) return undefined;
    return {
      lengthUnit: kept.lengthUnit === "ft" ? "ft" : "m",
      currency: typeof kept.currency === "string" ? kept.currency : "",
      ...keptMappings(kept.mappings),
    };
  } catch {
    return undefined;
  }
}

/** @throws what the browser throws where it refuses */
export function storePreferences(storage: () => Pick<Storage, "setItem">, preferences: Preferences): void {
  storage().setItem(KEY, JSON.stringify(preferences));
}
