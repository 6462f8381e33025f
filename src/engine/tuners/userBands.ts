/**
 * Hands out the user bands of each head unit, in the order of the rows.
 *
 * Source: one tuner takes one user band (EN 50494); at most 32 on one output
 *   (EN 50607:2015, scope). That they go out in row order from 1 is our choice.
 * Accuracy: exact. Band numbers are the head unit's slots; their frequencies
 *   are its own and not fixed by the standard.
 */
import { faults, isFault, type Fault } from "../faults";
import { NONE } from "./allot";
import { MOST_USER_BANDS } from "./constants";

/**
 * @param headUnits the head unit of each row by number or name
 * @param tuners whole number of tuners of each row
 * @returns for each row its bands such as "1" or "2-3", "none" without tuners,
 *   null for a blank row; a fault in a row that runs over what an output has
 */
export function userBands(
  headUnits: readonly (string | null | Fault)[],
  tuners: readonly (number | null | Fault)[],
): (string | null | Fault)[] | Fault {
  if (headUnits.length !== tuners.length) {
    return faults.shortColumn("tuners", tuners.length, headUnits.length);
  }
  const used = new Map<string, number>();
  return tuners.map((count, row) => {
    const headUnit = headUnits[row]!;
    if (isFault(headUnit)) return headUnit;
    if (isFault(count)) return count;
    if (count === 0) return NONE;
    if (headUnit === null && count === null) return null;
    if (count === null) return faults.missing("tuners", "the number of tuners in this row");
    const key = headUnit?.toLowerCase() ?? NONE;
    if (key === NONE) return faults.missing("head_units", "the head unit of this row");
    const first = (used.get(key) ?? 0) + 1;
    const last = first + count - 1;
    if (last > MOST_USER_BANDS) return faults.bandsRunOver(headUnit!, last, MOST_USER_BANDS);
    used.set(key, last);
    return first === last ? `${first}` : `${first}-${last}`;
  });
}
