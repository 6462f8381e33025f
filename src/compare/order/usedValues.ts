/** What counts at each outlet of a computed job, its own entry or its type's, by the outlet's name. */
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedColumn } from "../../workbooks/named";
import { wordsOf } from "../../workbooks/shownFigure";

export const USED = ["receiver", "quantity", "cable", "run", "plate", "split"] as const;
export type Used = (typeof USED)[number];

export interface UsedValues {
  readonly at: (outlet: string, key: Used) => number | string | undefined;
  /** How many outlets are of a type. */
  readonly ofType: (type: string) => number;
}

/** @param named what an outlet is called today */
export function usedValues(book: Book, named: (outlet: string) => string): UsedValues {
  const { rooms } = estimate;
  const rows = new Map(
    namedColumn(book, rooms.outlet.name).map((name, row) => [named(wordsOf(name)), row] as const),
  );
  const columns = Object.fromEntries(USED.map((key) => [key, namedColumn(book, rooms[`${key}_used`].name)]));
  const types = namedColumn(book, rooms.type.name).map(wordsOf);
  return {
    at: (outlet, key) => {
      const value = columns[key]![rows.get(outlet) ?? -1];
      return typeof value === "number" || (typeof value === "string" && value !== "") ? value : undefined;
    },
    ofType: (type) => types.filter((one) => one.toLowerCase() === type.toLowerCase()).length,
  };
}
