import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, namedCells } from "../namedCells";
import { mendsOf } from "../mends";
import type { Rule } from "../rule";

const { dishes, feeders, heads, branches, rooms } = estimate;

const LISTS = [
  {
    check: "dishes wrong",
    named: dishes.name.name,
    row: dishes.seen.row.name,
    why: dishes.seen.trouble.name,
  },
  {
    check: "feeders wrong",
    named: feeders.from.name,
    row: feeders.check.row.name,
    why: feeders.check.trouble.name,
  },
  {
    check: "head units wrong",
    named: heads.id.name,
    row: heads.check.row.name,
    why: heads.check.trouble.name,
  },
  {
    check: "branches unfed",
    named: branches.id.name,
    row: branches.check.row.name,
    why: branches.check.trouble.name,
  },
  {
    check: "outlets unfed",
    named: rooms.outlet.name,
    row: rooms.check.row.name,
    why: rooms.check.trouble.name,
  },
] as const;

export const rowsWrong: Rule = {
  id: "row that cannot be worked out",
  reason:
    "What hangs on a row that cannot be built as it is typed has neither level nor volts, and no check of them.",
  example: "S2 is on port 5 of S1, which has 4; an amplifier without a noise figure.",
  find: ({ computed }) => LISTS.flatMap((list) => wrongIn(computed, list)),
};

function wrongIn(computed: Book, { check, named, row, why }: (typeof LISTS)[number]): Finding[] {
  const [names, reasons] = [namedCells(computed, named), namedCells(computed, why)];
  return filledCells(computed, row).flatMap(({ place, index, value }): Finding[] => {
    if (value !== "bad") return [];
    const reason = reasons[index]?.value;
    return [
      {
        weight: "wrong",
        place,
        message: `${String(names[index]?.value ?? "A row")}: ${typeof reason === "string" && reason !== "" ? reason : "it cannot be worked out."}`,
        effect: "All that hangs on it has no level and no volts.",
        remedy: "Compare the row with the plan, and its parts with Parts.",
        mends: mendsOf(check, computed, place),
      },
    ];
  });
}
