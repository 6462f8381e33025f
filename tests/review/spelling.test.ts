/** The name that was likely meant, and the same name on another floor. */
import { onFloor } from "../../src/review/floors";
import { lettersApart, nearest } from "../../src/review/spelling";

test("letters changed, added, left out or swapped with the next count one each", () => {
  expect(lettersApart("trunk", "trunk", 2)).toBe(0);
  expect(lettersApart("trunk", "trank", 2)).toBe(1);
  expect(lettersApart("trunk", "trunks", 2)).toBe(1);
  expect(lettersApart("h04", "h40", 2)).toBe(1);
  expect(lettersApart("trunk", "drop", 2)).toBeGreaterThan(2);
});

test("the nearest of a list is meant, unless several are as near", () => {
  expect(nearest("6 way splitter", ["4-way splitter", "6-way splitter"])).toBe("6-way splitter");
  expect(nearest("G22", ["G1", "G2", "U1"])).toBe("G2");
  expect(nearest("B2-9", ["B2-1", "B2-2"])).toBeUndefined();
  expect(nearest("B2-9", ["B2-1", "B2-2"], ["B2-2", "B2-2"])).toBe("B2-2");
  expect(nearest("B2-9", ["B2-1", "B2-2"], ["B2-1", "B2-2"])).toBeUndefined();
  expect(nearest("loop-through outlet", ["single outlet", "trunk"])).toBeUndefined();
});

test("a name that counts its floor is told for another floor, with as many figures", () => {
  expect(onFloor("R03-1", "03", "04")).toBe("R04-1");
  expect(onFloor("R10-1", "10", "04")).toBe("R04-1");
  expect(onFloor("B2-4", "2", "10")).toBe("B10-4");
  expect(onFloor("H3", "3", "2")).toBe("H2");
  expect(onFloor("10-06-1", "10", "9")).toBe("9-06-1");
  expect(onFloor("floor 9", "09", "10")).toBe("floor 10");
  expect(onFloor("S1", "3", "2")).toBeUndefined();
  expect(onFloor("switch", "3", "2")).toBeUndefined();
});
