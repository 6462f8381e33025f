import type { Finding } from "../finding";
import { filledCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";

const NAMED = [
  { name: "rooms_outlet", what: "outlet", effect: "It is counted and priced twice." },
  ...PRICED_BLOCKS.map((block) => ({
    name: `${block}_name`,
    what: "part",
    effect: "The first is taken; both are bought.",
  })),
  { name: "labour_name", what: "work", effect: "It is priced twice." },
  { name: "options_name", what: "option", effect: "It is offered twice." },
  { name: "provisional_name", what: "provisional sum", effect: "It is priced twice." },
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
            says: `The ${what} ${String(value)} stands in ${first} already.`,
            should: "Each once, under a name of its own.",
            effect,
            wayOut: "Clear the row that was pasted twice, or rename it.",
          },
        ];
      });
    }),
};
