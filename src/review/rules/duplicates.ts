import type { Book, BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { linesOf, onFloor } from "../floors";
import { inputsIn, type Input } from "../inputsIn";
import { filledCells, isBlank, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import { areSameRows, clearing } from "../rowCells";
import type { Rule } from "../rule";

interface Listed {
  readonly block: string;
  readonly name: string;
  readonly what: string;
  readonly effect: string;
  readonly onlyCopies?: boolean;
}

const NAMED: readonly Listed[] = [
  {
    block: "rooms",
    name: estimate.rooms.outlet.name,
    what: "outlet",
    effect: "It is counted and priced twice.",
  },
  ...PRICED_BLOCKS.map((block) => ({
    block,
    name: estimate[block].name.name,
    what: "part",
    effect: "The first is taken; both are bought.",
  })),
  {
    block: "dishes",
    name: estimate.dishes.name.name,
    what: "dish",
    effect: "The first is taken; both are bought.",
  },
  {
    block: "receivers",
    name: estimate.receivers.kind.name,
    what: "kind of receiver",
    effect: "The first is taken.",
  },
  // Two of one name may be two; a row pasted again is the same in all its cells.
  {
    block: "sites",
    name: estimate.sites.name.name,
    what: "site cost",
    effect: "It is priced twice.",
    onlyCopies: true,
  },
  { block: "routes", name: estimate.routes.name.name, what: "route", effect: "Its cables are priced twice." },
  { block: "labour", name: estimate.labour.name.name, what: "work", effect: "It is priced twice." },
  { block: "options", name: estimate.options.name.name, what: "option", effect: "It is offered twice." },
  {
    block: "provisional",
    name: estimate.provisional.name.name,
    what: "provisional sum",
    effect: "It is priced twice.",
  },
];

export const duplicates: Rule = {
  id: "duplicate",
  reason: "A row pasted twice is counted and priced twice.",
  example: "Outlet 12-1 stands in rows 8 and 19.",
  find: ({ read, definition }) => {
    const inputs = inputsIn(read, definition);
    return NAMED.flatMap(({ block, name, what, effect, onlyCopies }: Listed) => {
      const seen = new Map<string, { readonly cell: string; readonly index: number }>();
      return filledCells(read, name).flatMap(({ place, value, index }): Finding[] => {
        const first = seen.get(plainWord(value));
        seen.set(plainWord(value), first ?? { cell: place.cell, index });
        if (first === undefined) return [];
        const isCopy = areSameRows(inputs, block, [first.index, index]);
        if (onlyCopies && !isCopy) return [];
        const own = block === "rooms" && !isCopy ? nameInItsSeries(read, index) : undefined;
        return [
          {
            weight: "wrong",
            place,
            message: `The ${what} ${String(value)} stands in ${first.cell} already.`,
            expected: `Each once, under a name of its own${own === undefined ? "" : `: likely “${own}”`}.`,
            effect,
            remedy: "Clear the row that was pasted twice, or rename it.",
            // Two rows that differ are two: which of them has its name by mistake is not known.
            ...(isCopy && { undoing: clearing(read, inputs, block, index) }),
            ...(own !== undefined && { meant: own, isGuess: true }),
          },
        ];
      });
    }).concat(
      nearTwins(read, inputs),
      soldTwice(read),
      inOtherWords(read, inputs),
      feedersTwice(read, inputs),
    );
  },
};

/** The name between those above and below: as on other floors, or the number that is left out. */
function nameInItsSeries(read: Book, index: number): string | undefined {
  const named = estimate.rooms.outlet;
  const names = namedCells(read, named.name);
  const [above, below] = [names[index - 1]?.value, names[index + 1]?.value].map((one) =>
    isBlank(one) ? undefined : String(one),
  );
  if (above === undefined) return undefined;
  const taken = new Set(names.map(({ value }) => plainWord(value)));
  const lines = linesOf(read, named);
  const line = lines.find((one) => one.index === index - 1);
  const next = new Set(
    lines
      .filter((one) => line && one.rest === line.rest && one.floor !== line.floor)
      .flatMap((one) => {
        const following = lines.find(({ index: at }) => at === one.index + 1);
        return following ? [onFloor(following.called, one.floor, line!.floor)] : [];
      }),
  );
  const [, before, digits, after] = /^(.*?)(\d+)(\D*)$/u.exec(above) ?? [];
  const following =
    digits === undefined
      ? undefined
      : `${before!}${String(Number(digits) + 1).padStart(digits.length, "0")}${after!}`;
  const skips =
    following !== undefined &&
    below !== undefined &&
    plainWord(below) ===
      plainWord(`${before!}${String(Number(digits) + 2).padStart(digits!.length, "0")}${after!}`);
  const meant = next.size === 1 ? [...next][0] : skips ? following : undefined;
  return meant === undefined || taken.has(plainWord(meant)) ? undefined : meant;
}

/** Letters and digits alone, without leading zeros: G-07 and G-7 are read as one outlet. */
const asRead = (value: BookResult | undefined): string =>
  plainWord(value)
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .replace(/\b0+(?=\d)/g, "")
    .replace(/ /g, "");

/** Two outlets of one room whose names differ by no more than a zero or a stroke. */
function nearTwins(read: Book, inputs: readonly Input[]): Finding[] {
  const [floors, rooms] = [
    namedCells(read, estimate.rooms.floor.name),
    namedCells(read, estimate.rooms.room.name),
  ];
  const seen = new Map<string, { cell: string; name: string }>();
  return filledCells(read, estimate.rooms.outlet.name).flatMap(({ place, value, index }): Finding[] => {
    const room = plainWord(rooms[index]?.value);
    const key = JSON.stringify([plainWord(floors[index]?.value), room, asRead(value)]);
    const first = seen.get(key);
    if (!first) seen.set(key, { cell: place.cell, name: String(value) });
    if (!first || room === "" || plainWord(first.name) === plainWord(value)) return [];
    return [
      {
        weight: "doubtful",
        place,
        message: `${String(value)} in ${String(rooms[index]?.value)} is likely ${first.name} of ${first.cell} again.`,
        expected: "Each outlet once.",
        effect: "It is counted and priced twice.",
        remedy: "Clear one of the two rows, or give them names that tell them apart.",
        undoing: clearing(read, inputs, "rooms", index),
        isGuess: true,
      },
    ];
  });
}

/** Something offered as an option and put in as a provisional sum as well. */
function soldTwice(read: Book): Finding[] {
  const chosen = namedCells(read, estimate.options.chosen.name);
  const options = new Map(
    filledCells(read, estimate.options.name.name).flatMap(({ value, index, place }) =>
      plainWord(chosen[index]?.value) === "yes" ? [[plainWord(value), place.cell] as const] : [],
    ),
  );
  return filledCells(read, estimate.provisional.name.name).flatMap(({ place, value }): Finding[] => {
    const option = options.get(plainWord(value));
    return option === undefined
      ? []
      : [
          {
            weight: "doubtful",
            place,
            message: `${String(value)} is an option that is chosen, in ${option}, and a provisional sum.`,
            expected: "One of the two.",
            effect: "It is priced twice.",
            remedy: "Clear one of the two rows.",
          },
        ];
  });
}

/** Words that tell two names apart no better than their absence. */
const SMALL = new Set("a an the of to in on for and or with at by from per".split(" "));
/** By their beginnings: a verb and its noun are one. */
const BEGINNING = 4;
/** So much of the shorter text stands in the longer one. */
const MOSTLY = 0.6;
const FEWEST_WORDS = 2;

const beginnings = (value: BookResult | undefined): ReadonlySet<string> =>
  new Set(
    (plainWord(value).match(/[\p{L}\p{N}]+/gu) ?? [])
      .filter((word) => !SMALL.has(word))
      .map((word) => word.slice(0, BEGINNING)),
  );

/** Lists in which two rows of nearly one name and of the same amount, counted by the same piece, are one. */
const IN_OTHER_WORDS = [
  { block: "provisional", amount: estimate.provisional.sum, counted: undefined, what: "sum" },
  { block: "fittings", amount: estimate.fittings.price, counted: estimate.fittings.piece, what: "price" },
  { block: "labour", amount: estimate.labour.minutes, counted: estimate.labour.piece, what: "time" },
  { block: "sites", amount: estimate.sites.cost, counted: undefined, what: "cost" },
  { block: "options", amount: estimate.options.each, counted: undefined, what: "price" },
] as const;

const withDigits = (words: ReadonlySet<string>): string =>
  [...words]
    .filter((word) => /\d/.test(word))
    .sort()
    .join(" ");

/** Two works or parts that say the same in other words. */
const inOtherWords = (read: Book, inputs: readonly Input[]): Finding[] =>
  IN_OTHER_WORDS.flatMap(({ block, amount, counted, what }) => {
    const amounts = namedCells(read, amount.name);
    const pieces = counted ? namedCells(read, counted.name) : [];
    const all = filledCells(read, estimate[block].name.name).map((cell) => ({
      ...cell,
      amount: amounts[cell.index]?.value,
      piece: plainWord(pieces[cell.index]?.value),
      words: beginnings(cell.value),
    }));
    return all.flatMap((one, at): Finding[] => {
      const first = all.slice(0, at).find((other) => {
        const shared = [...one.words].filter((word) => other.words.has(word)).length;
        return (
          typeof one.amount === "number" &&
          one.amount === other.amount &&
          one.piece === other.piece &&
          (counted === undefined || one.piece !== "") &&
          plainWord(one.value) !== plainWord(other.value) &&
          withDigits(one.words) === withDigits(other.words) &&
          shared >= FEWEST_WORDS &&
          shared >= MOSTLY * Math.min(one.words.size, other.words.size)
        );
      });
      if (!first) return [];
      return [
        {
          weight: "doubtful",
          place: one.place,
          message: `${String(one.value)} is likely ${String(first.value)} of ${first.place.cell} again: the ${what} is the same.`,
          expected: "Each once.",
          effect: "It is priced twice.",
          remedy: "Clear one of the two rows, or say in their names what tells them apart.",
          undoing: clearing(read, inputs, block, one.index),
          isGuess: true,
        },
      ];
    });
  });

/** A bundle of cables that was pasted again, whatever became of its length. */
function feedersTwice(read: Book, inputs: readonly Input[]): Finding[] {
  const { from, to, slot } = estimate.feeders;
  const [tos, slots] = [namedCells(read, to.name), namedCells(read, slot.name)];
  const seen = new Map<string, string>();
  return filledCells(read, from.name).flatMap(({ place, value, index }): Finding[] => {
    const key = JSON.stringify([value, tos[index]?.value, slots[index]?.value].map(plainWord));
    const first = seen.get(key);
    seen.set(key, first ?? place.cell);
    if (first === undefined || isBlank(tos[index]?.value)) return [];
    return [
      {
        weight: "wrong",
        place,
        message: `The cables from ${String(value)} to ${String(tos[index]?.value)} stand in ${first} already.`,
        expected: "One row for each bundle, with how many cables it has.",
        effect: "They are counted and bought twice.",
        remedy: "Clear the row that was pasted twice.",
        undoing: clearing(read, inputs, "feeders", index),
      },
    ];
  });
}
