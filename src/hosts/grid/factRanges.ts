/** Which cells and rows the facts of a sheet speak of: what must follow when rows or columns come and go. */
import type { BookPrint, BookValidation } from "../../workbooks/book";

export interface SheetFacts {
  readonly validations: readonly BookValidation[];
  readonly print?: BookPrint;
  readonly protected: boolean;
  readonly notes: Readonly<Record<string, string>>;
}

const row = (number: number): string => `${number}:${number}`;
const rowOf = (range: string): number => Number(range.split(":")[0]);

/**
 * @returns A1 ranges, whole rows as `3:4`, in an order of which {@link withRanges} knows
 */
export function rangesOf({ validations, print, notes }: SheetFacts): string[] {
  const { area, repeatFrom, repeatTo, breaks = [] } = print ?? {};
  return [
    ...validations.map(({ range }) => range),
    ...Object.keys(notes),
    ...(area === undefined ? [] : [area]),
    ...(repeatTo === undefined ? [] : [`${repeatFrom ?? repeatTo}:${repeatTo}`]),
    ...breaks.map(row),
  ];
}

/**
 * @param facts of a sheet
 * @param ranges where its ranges lie now, one for each of {@link rangesOf}; undefined for one that is gone
 * @returns the facts as they are now: what spoke of a range that is gone is gone with it
 */
export function withRanges(facts: SheetFacts, ranges: readonly (string | undefined)[]): SheetFacts {
  const now = ranges.values();
  const next = (): string | undefined => now.next().value;
  const validations = facts.validations.flatMap((validation) => {
    const range = next();
    return range === undefined ? [] : [{ ...validation, range }];
  });
  const notes = Object.fromEntries(
    Object.values(facts.notes).flatMap((note) => {
      const at = next();
      return at === undefined ? [] : [[at, note]];
    }),
  );
  if (!facts.print) return { ...facts, validations, notes };
  const { area, repeatFrom, repeatTo, breaks, ...rest } = facts.print;
  const areaNow = area === undefined ? undefined : next();
  const repeated = repeatTo === undefined ? undefined : next();
  const [first, last] = repeated?.split(":").map(Number) ?? [];
  const print = {
    ...rest,
    ...(areaNow !== undefined && { area: areaNow }),
    ...(repeatFrom !== undefined && first !== undefined && { repeatFrom: first }),
    ...(last !== undefined && { repeatTo: last }),
    ...(breaks && { breaks: breaks.flatMap(() => next() ?? []).map(rowOf) }),
  };
  return { ...facts, validations, notes, print };
}
