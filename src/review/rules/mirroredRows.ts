import { parseRange } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import type { Block } from "../../workbooks/definition";
import type { Finding } from "../finding";
import { namedCells } from "../namedCells";
import type { Rule } from "../rule";

export const mirroredRows: Rule = {
  id: "row missing beside another list",
  reason:
    "A list that follows another row by row must be as long; a row deleted or inserted in one of the two alone leaves sums without it, or errors.",
  example: "A kind of work deleted on Parts with its whole row: Labour has a row more.",
  find: ({ read, definition, earlier }) => {
    if (!definition || earlier) return [];
    const blocks = definition.sheets.flatMap(({ parts }) =>
      parts.filter((part): part is Block => part.kind === "block"),
    );
    return blocks.flatMap((block): Finding[] => {
      const of = blocks.find(({ name }) => name === block.mirrors);
      const [own, other] = [heightOf(read, block), of && heightOf(read, of)];
      if (!of || own === undefined || other === undefined || own === other) return [];
      const [first] = namedCells(read, `${of.name}_${of.columns[0]!.key}`);
      const rows = Math.abs(own - other);
      return [
        {
          weight: "wrong",
          place: first?.place,
          message: `${of.heading} has ${rows} ${rows === 1 ? "row" : "rows"} ${other < own ? "fewer" : "more"} than ${block.heading.toLowerCase()}, which follows it row by row.`,
          expected: "As many rows in both.",
          effect: "Sums over both are an error or leave something out.",
          remedy:
            other < own
              ? "A row was deleted here: insert one again between the thin rows, and fill it if it was needed."
              : "Add rows with Add rows, which lets both grow.",
        },
      ];
    });
  },
};

function heightOf(read: Book, { name, columns }: Block): number | undefined {
  const found = read.names.find((one) => one.name === `${name}_${columns[0]!.key}`);
  const zone = found && parseRange(found.range);
  return zone && zone.bottom - zone.top + 1;
}
