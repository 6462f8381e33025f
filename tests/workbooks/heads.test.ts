/** Heads of blocks: a row as tall as its text, and never so tall that it pushes the rows off the screen. */
import { columnLetters } from "../../src/formula/address";
import { layOut } from "../../src/workbooks/layOut";
import { templates } from "../../src/workbooks/templates";

/** Of a line of text of the usual size, in points. */
const LINE = 14;
/** What a line of bold text fills of its column at the least before it goes on below. */
const LEAST_FILLED = 0.5;

describe.each(templates.map(({ definition }) => [definition.title, definition] as const))(
  "%s",
  (_, definition) => {
    const book = layOut(definition);

    test("no head has more than three lines, and each line is needed", () => {
      const wrong: string[] = [];
      for (const { name, parts } of definition.sheets) {
        const sheet = book.sheets.find((one) => one.name === name)!;
        for (const part of parts) {
          if (part.kind !== "block") continue;
          const first = book.names.find((one) => one.name === `${part.name}_${part.columns[0]!.key}`)!;
          const anchor = Number(/\d+/.exec(first.range)![0]) - 1;
          const head = anchor - 2;
          const lines = sheet.rowHeights[head]! / LINE;
          const needed = Array.from({ length: sheet.columnCount }, (__, column) => {
            const text = sheet.cells[`${columnLetters(column)}${head + 1}`]?.value;
            if (typeof text !== "string") return 0;
            return Math.min(
              text.split(" ").length,
              1 + text.length / (LEAST_FILLED * sheet.columnWidths[column]!),
            );
          });
          if (lines > 3 || lines > Math.max(...needed))
            wrong.push(`${name}, ${part.heading}: ${lines} lines`);
        }
      }
      expect(wrong).toEqual([]);
    });
  },
);
