import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, isBlank, lookupWord, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";

export const feeding: Rule = {
  id: "feeding",
  reason:
    "An outlet is fed by one device, head unit or outlet before it; by none, by two or in a ring the tree cannot be added up.",
  example: "Outlet 12-1 is fed from S9, and there is no S9; or S2 is fed from S3 and S3 from S2.",
  find: ({ read }) => {
    const sources = [
      ...filledCells(read, estimate.branches.id.name),
      ...filledCells(read, estimate.heads.id.name),
    ];
    const known = new Map<string, string>();
    const twice: Finding[] = [];
    for (const { place, value } of sources) {
      const id = plainWord(value);
      const first = known.get(id);
      if (first === undefined) known.set(id, `${place.sheet} ${place.cell}`);
      else {
        twice.push({
          weight: "wrong",
          place,
          message: `${String(value)} is the name of another feeder too, in ${first}.`,
          expected: "A name of its own.",
          effect: "Its feed is ambiguous; the first match is used.",
          remedy: "Rename one, and correct “fed from” where it was meant.",
        });
      }
    }
    // A loop-through outlet feeds the next; its own name is the rule of duplicates' to look at.
    for (const { place, value } of filledCells(read, estimate.rooms.outlet.name))
      if (!known.has(plainWord(value))) known.set(plainWord(value), `${place.sheet} ${place.cell}`);
    // A feeder that is named as another has lost its own name, and what names that one is not at fault.
    const renamed = new Set(lostNames(read, known).slice(0, twice.length));
    return [
      ...twice.map((one, index): Finding => {
        const lost = [...renamed][index];
        return lost === undefined
          ? one
          : { ...one, meant: lost, expected: `A name of its own: ${lost}, by what is fed from it.` };
      }),
      ...fedByTwo(read),
      ...rings(read),
      ...unfed(estimate.rooms.outlet.name, estimate.rooms.from.name),
      ...unfed(estimate.branches.id.name, estimate.branches.from.name),
      ...aloft(read),
    ];

    function unfed(named: string, from: string): Finding[] {
      const sources = namedCells(read, from);
      return filledCells(read, named).flatMap(({ index, value }): Finding[] => {
        const source = sources[index];
        if (!source || known.has(lookupWord(source.value)) || renamed.has(String(source.value))) return [];
        const alike = isBlank(source.value) ? undefined : known.get(plainWord(source.value));
        if (alike !== undefined)
          return [
            {
              weight: "wrong",
              place: source.place,
              message: `${String(value)} is fed from “${String(source.value)}”, with a blank at its end.`,
              expected: `“${String(source.value).trim()}”, as in ${alike}.`,
              effect: "Its level cannot be found, and its tuners are counted nowhere.",
              remedy: "Enter the name again.",
              meant: String(source.value).trim(),
            },
          ];
        return [
          {
            weight: "wrong",
            place: source.place,
            message: isBlank(source.value)
              ? `Nothing feeds ${String(value)}.`
              : `${String(value)} is fed from ${String(source.value)}, which is not there.`,
            expected: "A device, head unit or outlet of this workbook.",
            effect: "Its level cannot be found, and its tuners are counted nowhere.",
            remedy: "Enter the name of what feeds it as it stands on Distribution, Head units or Rooms.",
          },
        ];
      });
    }
  },
};

/** The names that are fed from and that no feeder has, once each. */
function lostNames(read: Book, known: ReadonlyMap<string, string>): string[] {
  const wanted = [estimate.rooms.from.name, estimate.branches.from.name].flatMap((name) =>
    filledCells(read, name).map(({ value }) => String(value)),
  );
  return [...new Set(wanted)].filter((one) => !known.has(plainWord(one)));
}

/** The same outlet in two rows with two feeders; with one feeder it is a row pasted twice, which has a rule of its own. */
function fedByTwo(book: Book): Finding[] {
  const sources = namedCells(book, estimate.rooms.from.name);
  const first = new Map<string, string>();
  return filledCells(book, estimate.rooms.outlet.name).flatMap(({ index, value }): Finding[] => {
    const source = sources[index];
    const name = plainWord(value);
    const other = first.get(name);
    if (!source || isBlank(source.value)) return [];
    if (other === undefined) {
      first.set(name, String(source.value));
      return [];
    }
    if (other.trim().toLowerCase() === plainWord(source.value)) return [];
    return [
      {
        weight: "wrong",
        place: source.place,
        message: `${String(value)} is fed from ${String(source.value)} here and from ${other} further up.`,
        expected: "One feeder for each outlet.",
        effect: "It is counted and priced twice, and its tuners on both.",
        remedy: "Clear the row that is wrong, or give the second outlet a name of its own.",
      },
    ];
  });
}

/** Dishes and head units that the sheets of what lies before the tree name, and that are not there. */
function aloft(read: Book): Finding[] {
  const named = (name: string): string[] => filledCells(read, name).map(({ value }) => lookupWord(value));
  const dishes = named(estimate.dishes.name.name);
  const onDish = new Set(dishes.length > 0 ? dishes : [ONLY_DISH]);
  const heads = new Set(named(estimate.heads.id.name));
  const either = new Set([...onDish, ...heads]);
  return [
    { of: estimate.heads.dish.name, there: onDish, what: "A dish of the sheet Dishes" },
    { of: estimate.feeders.from.name, there: either, what: "A dish, or the switch before" },
    { of: estimate.feeders.to.name, there: heads, what: "A head unit of this workbook" },
  ].flatMap(({ of, there, what }) =>
    filledCells(read, of).flatMap(({ place, value }): Finding[] =>
      there.has(lookupWord(value))
        ? []
        : [
            {
              weight: "wrong",
              place,
              message: `${String(value)} is named here, and is not there.`,
              expected: `${what}.`,
              effect: "What comes from it cannot be found, and nothing of it is counted.",
              remedy: "Enter the name as it stands on Dishes or Head units.",
            },
          ],
    ),
  );
}

/** What the dish is called where Dishes has no row. */
const ONLY_DISH = "dish";

/** Devices or outlets that feed each other: told once, at the one of the ring that stands highest. */
function rings(book: Book): Finding[] {
  const rows = [
    { named: estimate.branches.id.name, from: estimate.branches.from.name },
    { named: estimate.rooms.outlet.name, from: estimate.rooms.from.name },
  ].flatMap(({ named, from }) => {
    const sources = namedCells(book, from);
    return filledCells(book, named).map(({ index, value }) => ({
      id: plainWord(value),
      name: String(value),
      from: plainWord(sources[index]?.value),
      place: sources[index]?.place,
    }));
  });
  const byId = new Map([...rows].reverse().map((row) => [row.id, row]));
  const told = new Set<string>();
  return rows.flatMap((start): Finding[] => {
    const path = new Set<string>();
    let at: (typeof rows)[number] | undefined = start;
    while (at && !path.has(at.id)) {
      path.add(at.id);
      at = byId.get(at.from);
    }
    if (at !== start || told.has(start.id)) return [];
    for (const id of path) told.add(id);
    return [
      {
        weight: "wrong",
        place: start.place,
        message: `${start.name} is fed by itself${path.size > 1 ? `, round by ${path.size - 1} ${path.size === 2 ? "other" : "others"}` : ""}.`,
        expected: "A way from each device and outlet back to a head unit.",
        effect: "No level behind it can be found.",
        remedy: "Compare “fed from” with the plan; one of them names the wrong one.",
      },
    ];
  });
}
