import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, isBlank, lookupWord, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";

export const feeding: Rule = {
  id: "feeding",
  reason:
    "An outlet is fed by one branch or head unit; by none, by two or in a ring the tree cannot be added up.",
  example: "Outlet 12-1 is fed from B9, and there is no B9; or B2 is fed from B3 and B3 from B2.",
  find: ({ read }) => {
    const feeders = [
      ...filledCells(read, estimate.branches.id.name),
      ...filledCells(read, estimate.heads.id.name),
    ];
    const known = new Map<string, string>();
    const twice: Finding[] = [];
    for (const { place, value } of feeders) {
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
            expected: "A branch or head unit of this workbook.",
            effect: "Its level cannot be found, and its tuners are counted nowhere.",
            remedy: "Enter the name of what feeds it as it stands on Branches or Head units.",
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

/** Branches that feed each other: told once, at the branch of the ring that stands highest. */
function rings(book: Book): Finding[] {
  const sources = namedCells(book, estimate.branches.from.name);
  const branches = filledCells(book, estimate.branches.id.name).map(({ index, value }) => ({
    id: plainWord(value),
    name: String(value),
    from: plainWord(sources[index]?.value),
    place: sources[index]?.place,
  }));
  const byId = new Map(branches.map((branch) => [branch.id, branch]));
  const told = new Set<string>();
  return branches.flatMap((start): Finding[] => {
    const path: string[] = [];
    let at: (typeof branches)[number] | undefined = start;
    while (at && !path.includes(at.id)) {
      path.push(at.id);
      at = byId.get(at.from);
    }
    if (at !== start || told.has(start.id)) return [];
    for (const id of path) told.add(id);
    return [
      {
        weight: "wrong",
        place: start.place,
        message: `${start.name} is fed by itself${path.length > 1 ? `, round by ${path.length - 1} other ${path.length === 2 ? "branch" : "branches"}` : ""}.`,
        expected: "A way from each branch back to a head unit.",
        effect: "No level behind it can be found.",
        remedy: "Compare “fed from” with the plan; one of them names the wrong branch.",
      },
    ];
  });
}
