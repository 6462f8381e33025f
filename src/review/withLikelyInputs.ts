/**
 * A workbook in which every input that was named as wrong holds something
 * likely instead: what was meant where that is known, else what its neighbours
 * or the demonstration have. What the review then no longer says hung on them.
 */
import type { Book, BookValue } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { templateOf } from "../workbooks/templates";
import type { Finding, FindingPlace, Undoing } from "./finding";
import { inputsIn, type Input } from "./inputsIn";
import { middleOf } from "./middleOf";
import { filledCells, type NamedCell } from "./namedCells";
import { withChanges } from "./withChanges";

/** @returns undefined where nothing that was named is an input */
export function withLikelyInputs(
  book: Book,
  definition: WorkbookDefinition,
  causes: readonly Finding[],
): Book | undefined {
  const changes = likelyInputs(book, definition, causes);
  return changes.length === 0 ? undefined : withChanges(book, changes);
}

/** @returns what each input that was named could hold instead */
export function likelyInputs(
  book: Book,
  definition: WorkbookDefinition,
  causes: readonly Finding[],
): Undoing[] {
  const wrong = new Map(causes.flatMap((one) => (one.place ? [[keyOf(one.place), one] as const] : [])));
  return inputsIn(book, definition).flatMap((input) =>
    input.cells.flatMap((cell): Undoing[] => {
      const finding = wrong.get(keyOf(cell.place));
      const value = finding && (finding.meant ?? likely(book, input, cell, wrong));
      return value === undefined ? [] : [{ place: cell.place, value }];
    }),
  );
}

function likely(
  book: Book,
  { name, namesRows }: Input,
  { place, value: now }: NamedCell,
  wrong: ReadonlyMap<string, Finding>,
): BookValue | undefined {
  // No two rows may have one name.
  if (namesRows) return `another ${place.cell}`;
  const valuesIn = (from: Book): BookValue[] =>
    filledCells(from, name).flatMap(({ typed, place: at, value }) =>
      typed && typeof value !== "object" && value !== undefined && !(from === book && wrong.has(keyOf(at)))
        ? [value]
        : [],
    );
  const here = middleOf(valuesIn(book)) ?? middleOf(valuesIn(demonstrationOf(book) ?? book));
  if (here !== now) return here;
  // Any other value shows what hangs on it.
  return typeof here === "number" ? here * 1.25 + 1 : undefined;
}

const demonstrations = new Map<string, Book>();

function demonstrationOf({ template }: Book): Book | undefined {
  const known = demonstrations.get(template);
  if (known) return known;
  const made = templateOf(template)?.demonstration();
  if (made) demonstrations.set(template, made);
  return made;
}

const keyOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
