/** Names and the arguments that sentences name: by hand. */
import { argument, inRow, plain, reworded, withoutMarks } from "../../src/engine/argumentNames";
import { beamwidth } from "../../src/engine/signal/beamwidth";
import { nameKey } from "../../src/engine/signal/nameKey";
import { userBands } from "../../src/engine/tuners/userBands";
import { isFault, type Fault } from "../../src/engine/faults";

test("a name is the same with other blanks and case, and another without a blank", () => {
  expect(nameKey("  Living \t  ROOM ")).toBe(nameKey("living room"));
  expect(nameKey("living room")).not.toBe(nameKey("livingroom"));
  expect(nameKey("room 1 1")).not.toBe(nameKey("room 11"));
});

test("a row with tuners and no head unit says what is missing", () => {
  const [found] = userBands([null], [2]) as Fault[];
  expect(found!.message).toBe("head_units is missing. Enter the head unit of this row.");
  expect((userBands(["1"], [null]) as Fault[])[0]!.message).toBe(
    "tuners is missing. Enter the number of tuners in this row.",
  );
  expect(userBands([null, null], [null, 0])).toEqual([null, "none"]);
});

test("a dish of two wavelengths has a beam by the formula, a smaller one has none", () => {
  // 299.792458 MHz has a wavelength of 1 m: 70 deg·1/2.
  expect(beamwidth(2, 299.792458)).toBeCloseTo(35, 9);
  expect(isFault(beamwidth(1.999, 299.792458))).toBe(true);
});

test("arguments in a sentence stand as they are, or as a workbook calls them", () => {
  const sentence = `${argument("lengths", 3)} is -3 and ${argument("cables", undefined, "the cable table")} is short`;
  expect(plain(sentence)).toBe("lengths is -3 and the cable table is short");
  const words = (name: string, row: number | undefined): string | undefined =>
    name === "lengths" ? `Run, row ${row}` : row === undefined ? undefined : "a row";
  expect(reworded(sentence, words)).toBe("Run, row 3 is -3 and the cable table is short");
  const ofRow = inRow(`${argument("lengths")} is -3`, "lengths", 2);
  expect(reworded(ofRow, words)).toBe("Run, row 2 is -3");
  expect(plain(ofRow)).toBe("lengths is -3");
  expect(withoutMarks(argument("lengths", 3))).toBe("lengths3lengths");
});
