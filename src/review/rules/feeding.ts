import type { Finding } from "../finding";
import { filledCells, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";

export const feeding: Rule = {
  id: "feeding",
  reason: "An outlet hangs on one branch or head unit; on none or on two the tree cannot be added up.",
  example: "Outlet 12-1 is fed from B9, and there is no B9; or two branches are both called B2.",
  find: ({ read }) => {
    const feeders = [...filledCells(read, "branches_id"), ...filledCells(read, "heads_id")];
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
          says: `${String(value)} is the name of another feeder too, in ${first}.`,
          should: "A name of its own.",
          effect: "What is fed from it hangs on two; the first is taken.",
          wayOut: "Rename one, and correct “fed from” where it was meant.",
        });
      }
    }
    return [...twice, ...unfed("rooms_outlet", "rooms_from"), ...unfed("branches_id", "branches_from")];

    function unfed(named: string, from: string): Finding[] {
      const sources = namedCells(read, from);
      return filledCells(read, named).flatMap(({ index, value }): Finding[] => {
        const source = sources[index];
        if (!source || known.has(plainWord(source.value))) return [];
        return [
          {
            weight: "wrong",
            place: source.place,
            says: isBlank(source.value)
              ? `Nothing feeds ${String(value)}.`
              : `${String(value)} is fed from ${String(source.value)}, which is not there.`,
            should: "A branch or head unit of this workbook.",
            effect: "Its level cannot be found, and its tuners are counted nowhere.",
            wayOut: "Enter the name of what feeds it as it stands on Branches or Head units.",
          },
        ];
      });
    }
  },
};
