/** Parts by name, each with its figures or with what is wrong with its row. */
import { faults, isFault, type Fault } from "../../engine/faults";
import { nameKey } from "../../engine/signal/nameKey";
import type { Columns, ReadRow, ValuesOf } from "./rows";

export interface PartBook<T> {
  /** What the job calls such a part: "wall plate". */
  readonly what: string;
  readonly parts: ReadonlyMap<string, { readonly name: string; readonly part: T | Fault }>;
}

/**
 * @param nameOf a row without a name cannot be named by a job, so it is passed over
 * @param make a part of a row that could be read
 */
export function partBook<C extends Columns, T>(
  what: string,
  rows: readonly ReadRow<C>[],
  nameOf: (values: ValuesOf<C>) => string | undefined,
  make: (values: ValuesOf<C>, name: string) => T | Fault,
): PartBook<T> {
  const parts = new Map<string, { name: string; part: T | Fault }>();
  for (const { values, fault } of rows) {
    const name = nameOf(values);
    if (name === undefined) continue;
    const key = nameKey(name);
    parts.set(key, { name, part: parts.has(key) ? faults.partTwice(name) : (fault ?? make(values, name)) });
  }
  return { what, parts };
}

export const knownIn = ({ parts }: PartBook<unknown>): string[] =>
  [...parts.values()].map(({ name }) => name);

export const hasPart = ({ parts }: PartBook<unknown>, name: string): boolean => parts.has(nameKey(name));

/**
 * @param by the row that names it
 * @returns the part; a fault where it is not known or its own row has one
 */
export function partNamed<T>(book: PartBook<T>, by: string, name: string): T | Fault {
  const found = book.parts.get(nameKey(name));
  if (!found) return faults.partUnknown(by, book.what, name, knownIn(book));
  return isFault(found.part) ? faults.partBad(by, book.what, name, found.part) : found.part;
}
