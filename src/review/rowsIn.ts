/** The named rows of a block with some of their columns, for rules that hold one cell of a row to another. */
import type { Named } from "../formula/build";
import type { Book } from "../workbooks/book";
import type { FindingPlace } from "./finding";
import { filledCells, namedCells, plainWord, type NamedCell } from "./namedCells";

export interface ReadRow<Key extends string> {
  /** The row's own name. */
  readonly called: string;
  readonly place: FindingPlace;
  /** Counted from the top of the block's names. */
  readonly index: number;
  readonly cell: (key: Key) => NamedCell | undefined;
  /** Undefined for a blank and for what is no number. */
  readonly number: (key: Key) => number | undefined;
  /** As people compare; "" for a blank. */
  readonly word: (key: Key) => string;
}

/** @param named the column that names the rows; one without a name is passed over */
export function rowsIn<Key extends string>(
  book: Book,
  named: Named,
  columns: Readonly<Record<Key, Named>>,
): ReadRow<Key>[] {
  const cells = new Map(
    Object.entries<Named>(columns).map(([key, { name }]) => [key, namedCells(book, name)] as const),
  );
  return filledCells(book, named.name).map(({ place, value, index }) => {
    const cell = (key: Key): NamedCell | undefined => cells.get(key)?.[index];
    return {
      called: String(value),
      place,
      index,
      cell,
      number: (key) => {
        const found = cell(key)?.value;
        return typeof found === "number" ? found : undefined;
      },
      word: (key) => plainWord(cell(key)?.value),
    };
  });
}
