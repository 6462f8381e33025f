/** Counting and adding by a column of criteria gives what the library gives for each criterion by itself. */
import fc from "fast-check";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { tries } from "../../support/tries";

const library = loadLibrary();

/** What stands in cells, and in criteria: names, and all that a criterion may mean something else by. */
const text = fc.oneof(
  fc.constantFrom(
    "B1",
    "b1",
    "B2",
    "H1-3",
    "12-1",
    "1/2",
    "TRUE",
    "true",
    "FALSE",
    "<>B1",
    ">=2",
    "=B1",
    "B*",
    "?1",
  ),
  fc.constantFrom(
    "~*",
    "*",
    "",
    " ",
    "B1 ",
    "é",
    "É",
    "ß",
    "\u212a1",
    "k1",
    "1e3",
    "1000",
    "10:30",
    "50%",
    "$5",
  ),
  fc.string({ maxLength: 4 }).filter((word) => !word.startsWith("=") && !word.startsWith("'")),
);
const value = fc.oneof({ weight: 4, arbitrary: text }, fc.integer({ min: -3, max: 3 }), fc.constant(1000));

/** Cells of a column as the library's document has them; text is kept as text. */
const column = (letter: string, values: readonly (string | number)[]): Record<string, string> =>
  Object.fromEntries(
    values.map((one, row) => [
      `${letter}${row + 1}`,
      typeof one === "number" ? String(one) : one && `'${one}`,
    ]),
  );

test.each(["COUNTIF(A1:A20,$)", "SUMIFS(B1:B20,A1:A20,$)"])("%s", (formula) => {
  fc.assert(
    fc.property(
      fc.array(value, { minLength: 20, maxLength: 20 }),
      fc.array(value, { minLength: 12, maxLength: 12 }),
      (cells, criteria) => {
        const model = quietly(
          () =>
            new library.Model({
              sheets: [
                {
                  id: "S",
                  name: "S",
                  rowNumber: 40,
                  colNumber: 10,
                  cells: {
                    ...column("A", cells),
                    ...column(
                      "B",
                      cells.map((_, row) => 1 + row * row),
                    ),
                    ...column("C", criteria),
                    E1: `=${formula.replace("$", "C1:C12")}`,
                    // One criterion at a time is the library's own way.
                    ...Object.fromEntries(
                      criteria.map((_, row) => [`G${row + 1}`, `=${formula.replace("$", `C${row + 1}`)}`]),
                    ),
                  },
                },
              ],
            }),
        );
        const at = (col: number, row: number) =>
          model.getters.getEvaluatedCell({ sheetId: "S", col, row }).value;
        criteria.forEach((_, row) => expect([row, at(4, row)]).toEqual([row, at(6, row)]));
      },
    ),
    { numRuns: tries(30, 150) },
  );
});

test("one criterion, a row of criteria and ranges of different lengths stay the library's", () => {
  const model = quietly(
    () =>
      new library.Model({
        sheets: [
          {
            id: "S",
            name: "S",
            rowNumber: 40,
            colNumber: 30,
            cells: {
              ...column(
                "A",
                Array.from({ length: 20 }, (_, row) => `n${row % 4}`),
              ),
              ...Object.fromEntries(
                Array.from({ length: 10 }, (_, col) => [`${"CDEFGHIJKL"[col]}30`, `n${col}`]),
              ),
              C1: '=COUNTIF(A1:A20,"n1")',
              D1: "=COUNTIF(A1:A20,C30:L30)",
              D3: "=SUMIFS(A1:A19,A1:A20,A1:A20)",
            },
          },
        ],
      }),
  );
  const at = (col: number, row: number) => model.getters.getEvaluatedCell({ sheetId: "S", col, row });
  expect(at(2, 0).value).toBe(5);
  expect([3, 4, 6, 7].map((col) => at(col, 0).value)).toEqual([5, 5, 5, 0]);
  expect(at(3, 2).type).toBe("number");
});
