/** What functions with list arguments share. */
import { faults, isFault, type Fault } from "../../engine/faults";
import type { ListEntry } from "../core/parameters";

/** The list itself when all of it could be read, else the first fault in it, with its row where the list has a name. */
export function firstFault<T>(entries: readonly ListEntry<T>[], name?: string): (T | null)[] | Fault {
  const values: (T | null)[] = [];
  for (const [index, entry] of entries.entries()) {
    if (isFault(entry)) return name === undefined ? entry : faults.atRow(name, index + 1, entry);
    values.push(entry);
  }
  return values;
}

/** A fault when a list has not the length of the list that leads. */
export function lengthFault(leads: string, need: number, name: string, have: number): Fault | undefined {
  if (have < need) return faults.shortColumn(name, have, need);
  return have > need ? faults.shortColumn(leads, need, have) : undefined;
}
