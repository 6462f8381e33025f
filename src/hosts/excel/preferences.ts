/**
 * A person's settings, kept through the helper library's storage. Its `has()`
 * is always true and its `clear()` leaves items, so only `get` and `set` are
 * used here, and what comes back is checked.
 */
import { Storage, StorageType } from "@microsoft/office-js-helpers";
import { HostTrouble, USUAL_PREFERENCES, type Preferences } from "../../pane/host";
import { keptMappings } from "../../workbooks/imported/columns";
import { troubles } from "./excelTrouble";

const CONTAINER = "rigsheet";
const KEY = "preferences";
const LONGEST_CURRENCY = 8;

/** Without a currency the workbook's own holds. */
const USUAL = USUAL_PREFERENCES;

/** What could not be kept still holds until the pane is closed. */
let unkept: Preferences | undefined;

export function readPreferences(): Preferences {
  if (unkept) return unkept;
  try {
    return checked(new Storage<unknown>(CONTAINER, StorageType.LocalStorage).get(KEY));
  } catch {
    // Storage that may not be read holds nothing; keeping says so.
    return USUAL;
  }
}

export function keepPreferences(preferences: Preferences): void {
  try {
    new Storage<unknown>(CONTAINER, StorageType.LocalStorage).set(KEY, { ...preferences });
    unkept = undefined;
  } catch (error) {
    unkept = preferences;
    throw new HostTrouble(troubles.storageRefused(), { cause: error });
  }
}

/** What an older version or another add-in stored is not trusted. */
function checked(stored: unknown): Preferences {
  const { lengthUnit, currency, mappings } = (stored ?? {}) as Partial<Record<keyof Preferences, unknown>>;
  return {
    lengthUnit: lengthUnit === "m" || lengthUnit === "ft" ? lengthUnit : USUAL.lengthUnit,
    currency: typeof currency === "string" && currency.length <= LONGEST_CURRENCY ? currency : USUAL.currency,
    ...keptMappings(mappings),
  };
}
