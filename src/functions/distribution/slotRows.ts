/** The slots of a job, each with what is wrong with its row. */
import type { SlotRow } from "../../engine/distribution/job";
import { faults, isFault, type Fault } from "../../engine/faults";
import type { Decibels } from "../../engine/quantity";
import type { SLOTS } from "./columns";
import { neededModulation } from "./neededModulation";
import type { ReadRow } from "./rows";

export interface SlotRead {
  readonly slot: SlotRow;
  readonly fault: Fault | null;
}

/**
 * @param margin over what its modulation needs
 * @returns the rows whose slot can be read
 */
export function slotRows(rows: readonly ReadRow<typeof SLOTS>[], margin: Decibels): SlotRead[] {
  const seen = new Set<number>();
  return rows.flatMap(({ values, fault }): SlotRead[] => {
    const { slot: typed, eirp, symbolRate, modulation } = values;
    if (typed === undefined) return [];
    const { name, east } = typed;
    const twice = seen.has(east) ? faults.partTwice(name) : null;
    seen.add(east);
    const needed = modulation === undefined ? null : neededModulation(modulation);
    const wrong = fault ?? twice ?? (isFault(needed) ? needed : null);
    return [
      {
        slot: {
          name,
          east,
          eirp: eirp ?? null,
          symbolRate: symbolRate ?? null,
          needed: needed === null || isFault(needed) ? null : needed + margin,
        },
        fault: wrong,
      },
    ];
  });
}
