/**
 * A workbook in which every input that was named as wrong holds something
 * likely instead: what was meant where that is known, else what its neighbours
 * or the demonstration have. What the review then no longer says hung on them.
 */
import { parseAddress, parseRange, type Zone } from "../workbooks/address";
import type { Book, BookCell, BookValue } from "../workbooks/book";
import type { Part, WorkbookDefinition } from "../workbooks/definition";
import { templateOf } from "../workbooks/templates";
import type { Finding, FindingPlace } from "./finding";
import { median } from "./median";
import { namedCells } from "./namedCells";

interface Input {
  readonly name: string;
  readonly sheet: string;
  readonly zone: Zone;
  /** It names the rows of its block, so no two may be alike. */
  readonly namesRows: boolean;
}

/** @returns undefined where nothing that was named is an input */
export function asIfMended(
  book: Book,
  definition: WorkbookDefinition,
  causes: readonly Finding[],
): Book | undefined {
  const inputs = inputsOf(book, definition);
  const named = new Set(causes.flatMap(({ place }) => (place ? [keyOf(place)] : [])));
  const changes = new Map<string, { place: FindingPlace; value: BookValue }>();
  for (const { place, meant } of causes) {
    const input = place && inputs.find((one) => contains(one, place));
    if (!place || !input || changes.has(keyOf(place))) continue;
    const value = meant ?? likely(book, input, place, named);
    if (value !== undefined) changes.set(keyOf(place), { place, value });
  }
  if (changes.size === 0) return undefined;
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name, { ...sheet, cells: { ...sheet.cells } }]));
  for (const { place, value } of changes.values()) {
    const { cells } = sheets.get(place.sheet)!;
    const { formula: _, spill: _spill, ...kept }: BookCell = cells[place.cell] ?? {};
    cells[place.cell] = { ...kept, value };
  }
  return { ...book, sheets: [...sheets.values()] };
}

function inputsOf(book: Book, definition: WorkbookDefinition): Input[] {
  const parts: readonly Part[] = definition.sheets.flatMap((sheet) => sheet.parts);
  const names = new Map(book.names.map((one) => [one.name, one]));
  return parts.flatMap((part) => {
    const own =
      part.kind === "fields"
        ? part.fields.flatMap(({ name, input }) => (input ? [{ name, namesRows: false }] : []))
        : part.kind === "block"
          ? part.columns.flatMap(({ key, input }, index) =>
              input ? [{ name: `${part.name}_${key}`, namesRows: index === 0 || key === "outlet" }] : [],
            )
          : [];
    return own.flatMap(({ name, namesRows }): Input[] => {
      const found = names.get(name);
      const zone = found && parseRange(found.range);
      return found && zone ? [{ name, sheet: found.sheet, zone, namesRows }] : [];
    });
  });
}

function contains({ sheet, zone }: Input, place: FindingPlace): boolean {
  const { row, column } = parseAddress(place.cell)!;
  return sheet === place.sheet && zone.left === column && zone.top <= row && row <= zone.bottom;
}

function likely(
  book: Book,
  { name, namesRows }: Input,
  place: FindingPlace,
  named: ReadonlySet<string>,
): BookValue | undefined {
  if (namesRows) return `another ${place.cell}`;
  const now = namedCells(book, name).find((one) => one.place.cell === place.cell)?.value;
  const others = (from: Book): BookValue[] =>
    namedCells(from, name).flatMap((one) =>
      one.typed && !(from === book && named.has(keyOf(one.place))) && !isText(one.value, "")
        ? [one.value as BookValue]
        : [],
    );
  const here = middleOf(others(book)) ?? middleOf(others(demonstrationOf(book) ?? book));
  if (here !== now) return here;
  // Any other value shows what hangs on it.
  return typeof here === "number" ? here * 1.25 + 1 : undefined;
}

const isText = (value: unknown, text: string): boolean => value === text;

/** The middle number, or the commonest text. */
function middleOf(values: readonly BookValue[]): BookValue | undefined {
  const numbers = values.filter((one): one is number => typeof one === "number");
  if (numbers.length > 0 && numbers.length >= values.length / 2) return median(numbers);
  const counts = new Map<BookValue, number>();
  for (const one of values) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
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
