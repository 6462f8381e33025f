/**
 * An operator over whole columns gives in each row what the library gives for
 * that row by itself. One cell at a time is the library's own way.
 */
import fc from "fast-check";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";

const library = loadLibrary();
const ROWS = 6;

const number = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.constantFrom(0.1, 0.3, 1e300, -1e-7));
const content = fc.oneof(
  { weight: 4, arbitrary: number.map(String) },
  fc.constantFrom("", "TRUE", "FALSE", "'a", "'A", "'", "'1", "'1,5", "2026-11-25", "=1/0", "=NA()", '="x"'),
);
const column = fc.array(content, { minLength: ROWS, maxLength: ROWS });

const modelOf = (cells: Record<string, string>) =>
  quietly(() => new library.Model({ sheets: [{ id: "S", name: "S", rowNumber: 20, colNumber: 12, cells }] }));
const placed = (letter: string, contents: readonly string[]) =>
  Object.fromEntries(contents.map((one, row) => [`${letter}${row + 1}`, one]));

test.each([
  "$A+$B",
  "$A-$B",
  "$A*$B",
  "$A/$B",
  "$A=$B",
  "$A<>$B",
  "$A>$B",
  "$A>=$B",
  "$A<$B",
  "$A<=$B",
  "$A+1",
  "2*$B",
  '$A=""',
  "IF($A>$B,$C,$A)",
  'IF($A="",0,$C)',
  "IF($A,1,2)",
  "IFERROR($A/$B,$C)",
  'IFERROR($A+$B,"")',
])("%s", (pattern) => {
  fc.assert(
    fc.property(column, column, column, (a, b, c) => {
      const whole = pattern.replace(/\$([ABC])/g, `$11:$1${ROWS}`);
      const model = modelOf({
        ...placed("A", a),
        ...placed("B", b),
        ...placed("C", c),
        E1: `=${whole}`,
        ...placed(
          "G",
          a.map((_, row) => `=${pattern.replace(/\$([ABC])/g, `$1${row + 1}`)}`),
        ),
      });
      const read = (col: number) =>
        Array.from({ length: ROWS }, (_, row) => {
          const { value, type, message } = model.getters.getEvaluatedCell({
            sheetId: "S",
            col,
            row,
          }) as unknown as Record<string, unknown>;
          return { value, type, message };
        });
      expect(read(4)).toEqual(read(6));
    }),
    { numRuns: 60 },
  );
});

test("columns of different heights, and tables, are the library's", () => {
  const model = modelOf({
    ...placed("A", ["1", "2", "3"]),
    ...placed("B", ["10", "20"]),
    D1: "=A1:A3+B1:B2",
    F1: "=A1:B2+A1:A2",
  });
  const value = (col: number, row: number) =>
    model.getters.getEvaluatedCell({ sheetId: "S", col, row }).value;
  expect([value(3, 0), value(3, 1), value(3, 2)]).toEqual([11, 22, "#N/A"]);
  expect([value(5, 0), value(5, 1), value(6, 0), value(6, 1)]).toEqual([2, 4, 11, 22]);
});
