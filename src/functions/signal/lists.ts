/** What functions with list arguments share. */
import { faults, isFault, type Fault } from "../../engine/faults";
import type { ListEntry } from "../core/parameters";

/** The list itself when all of it could be read, else the first fault in it. */
export function firstFault<T>(entries: readonly ListEntry<T>[]): (T | null)[] | Fault {
  const values: (T | null)[] = [];
  for (const entry of entries) {
    if (isFault(entry)) return entry;
    values.push(entry);
  }
  return values;
}

/** A fault when a list has not the length of the list that leads. */
export function lengthFault(leads: string, need: number, name: string, have: number): Fault | undefined {
  if (have < need) return faults.shortColumn(name, have, need);
  return have > need ? faults.shortColumn(leads, need, have) : undefined;
}
