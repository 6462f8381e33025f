/** Formulas are found by the cells that they read or fill, however many there are. */
import { AreasFound } from "../../src/formula/areasFound";
import type { Area } from "../../src/formula/readAreas";

const area = (left: number, top: number, right = left, bottom = top, sheet = "Rooms"): Area => ({
  sheet,
  zone: { top, left, bottom, right },
});

/** Far apart, near, over the edge of a square, whole columns and rows, another sheet. */
const THINGS = [
  area(0, 0),
  area(7, 63),
  area(6, 60, 9, 66),
  area(8, 64),
  area(3, 0, 3, 1_048_575),
  area(0, 10, 16_383, 10),
  area(0, 0, 16_383, 1_048_575),
  area(0, 0, 0, 0, "Site"),
];
const found = new AreasFound(THINGS.map((one, index) => [one, index] as const));
const taken = (wanted: Area): number[] => [...new Set(found.taker()(wanted))].sort((a, b) => a - b);

// By hand, from the numbers above.
test.each([
  ["one cell", area(0, 0), [0, 6]],
  ["a cell of the column", area(3, 5000), [4, 6]],
  ["a cell of the row", area(900, 10), [5, 6]],
  ["where squares meet", area(7, 63, 8, 64), [1, 2, 3, 6]],
  ["the last cell of a square", area(7, 63), [1, 2, 6]],
  ["a whole column", area(8, 0, 8, 1_048_575), [2, 3, 5, 6]],
  ["another sheet", area(0, 0, 16_383, 1_048_575, "Site"), [7]],
  ["no such sheet", area(0, 0, 0, 0, "Price"), []],
])("what lies in %s", (_, wanted, expected) => {
  expect(taken(wanted)).toEqual(expected);
  expect(found.any(wanted)).toBe(expected.length > 0);
});

test("what was taken in an area is left there no more, and is there for the next taker", () => {
  const take = found.taker();
  expect(take(area(7, 63)).sort()).toEqual([1, 2, 6]);
  expect(take(area(7, 63))).toEqual([]);
  expect(take(area(8, 64))).toContain(3);
  expect(taken(area(7, 63))).toEqual([1, 2, 6]);
});
