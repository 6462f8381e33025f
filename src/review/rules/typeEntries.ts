import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { median } from "../median";
import { figure, filledCells, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { rooms, types } = estimate;

/** From so many rooms on, it is their number that tells. */
const FEWEST_ROOMS = 2;

export const typeEntries: Rule = {
  id: "type unlike its rooms",
  reason:
    "What a room type says counts for every room that has it, so a slip there stands in many rows at once.",
  example: "A double with 2 outlets a room, where every double on Rooms has one.",
  find: ({ read }) => [...outletsEach(read), ...namedAfterAnother(read)],
};

/** A room that is called as a type is, and has another, where no room has that one. */
function namedAfterAnother(read: Book): Finding[] {
  const named = new Map(
    filledCells(read, types.name.name).map(({ value }) => [plainWord(value), String(value)]),
  );
  const rows = rowsIn(read, rooms.outlet, { room: rooms.room, type: rooms.type });
  const used = new Set(rows.map(({ word }) => word("type")));
  return rows.flatMap(({ called, cell, word }): Finding[] => {
    const meant = named.get(word("room"));
    if (meant === undefined || used.has(plainWord(meant)) || word("type") === "" || !cell("type")) return [];
    return [
      {
        weight: "doubtful",
        place: cell("type")!.place,
        message: `${called} is in the ${meant}, and its type is “${String(cell("type")!.value)}”; no room has the type “${meant}”.`,
        expected: `“${meant}”.`,
        meant,
        effect: "It is equipped and priced as another room.",
        remedy: "Choose the type from the list.",
      },
    ];
  });
}

/** Outlets a room as the type says it, and as Rooms has them. */
function outletsEach(read: Book): Finding[] {
  const [ofType, floors, names] = [rooms.type, rooms.floor, rooms.room].map(({ name }) =>
    namedCells(read, name),
  );
  return rowsIn(read, types.name, { outlets: types.outlets }).flatMap(
    ({ called, cell, number }): Finding[] => {
      // A blank is not held to anything.
      const said = number("outlets");
      if (said === undefined) return [];
      const counts = new Map<string, number>();
      for (const { index } of filledCells(read, rooms.outlet.name)) {
        if (plainWord(ofType![index]?.value) !== plainWord(called)) continue;
        if (isBlank(names![index]?.value)) continue;
        const room = JSON.stringify([plainWord(floors![index]?.value), plainWord(names![index]?.value)]);
        counts.set(room, (counts.get(room) ?? 0) + 1);
      }
      const each = [...counts.values()];
      if (each.length < FEWEST_ROOMS || !cell("outlets")) return [];
      const usual = median(each);
      if (usual === said || !Number.isInteger(usual) || each.some((count) => count === said)) return [];
      return [
        {
          weight: "wrong",
          place: cell("outlets")!.place,
          message: `${called} is said to have ${figure(said)} outlets a room, and its ${each.length} rooms have ${figure(usual)} each.`,
          expected: `${figure(usual)}, as Rooms has them.`,
          meant: usual,
          effect: "Checks counts the rooms that are otherwise.",
          remedy: "Correct the type, or add the outlets on Rooms.",
        },
      ];
    },
  );
}
