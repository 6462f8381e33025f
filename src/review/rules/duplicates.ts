import type { Book, BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";

const NAMED = [
  { name: estimate.rooms.outlet.name, what: "outlet", effect: "It is counted and priced twice." },
  ...PRICED_BLOCKS.map((block) => ({
    name: estimate[block].name.name,
    what: "part",
    effect: "The first is taken; both are bought.",
  })),
  { name: estimate.dishes.name.name, what: "dish", effect: "The first is taken; both are bought." },
  { name: estimate.receivers.kind.name, what: "kind of receiver", effect: "The first is taken." },
  { name: estimate.routes.name.name, what: "route", effect: "Its cables are priced twice." },
  { name: estimate.labour.name.name, what: "work", effect: "It is priced twice." },
  { name: estimate.options.name.name, what: "option", effect: "It is offered twice." },
  { name: estimate.provisional.name.name, what: "provisional sum", effect: "It is priced twice." },
];

export const duplicates: Rule = {
  id: "duplicate",
  reason: "A row pasted twice is counted and priced twice.",
  example: "Outlet 12-1 stands in rows 8 and 19.",
  find: ({ read }) =>
    NAMED.flatMap(({ name, what, effect }) => {
      const seen = new Map<string, string>();
      return filledCells(read, name).flatMap(({ place, value }): Finding[] => {
        const first = seen.get(plainWord(value));
        seen.set(plainWord(value), first ?? place.cell);
        if (first === undefined) return [];
        return [
          {
            weight: "wrong",
            place,
            message: `The ${what} ${String(value)} stands in ${first} already.`,
            expected: "Each once, under a name of its own.",
            effect,
            remedy: "Clear the row that was pasted twice, or rename it.",
          },
        ];
      });
    }).concat(nearTwins(read), soldTwice(read)),
};

/** Letters and digits alone, without leading zeros: G-07 and G-7 are read as one outlet. */
const asRead = (value: BookResult | undefined): string =>
  plainWord(value)
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .replace(/\b0+(?=\d)/g, "")
    .replace(/ /g, "");

/** Two outlets of one room whose names differ by no more than a zero or a stroke. */
function nearTwins(read: Book): Finding[] {
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
