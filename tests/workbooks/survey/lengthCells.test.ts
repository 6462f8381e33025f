/** The cell of a run as people fill it, and the column that it stands in. What each means is common practice, no source. */
import type { ImportedCell } from "../../../src/workbooks/imported/table";
import { bareLength } from "../../../src/workbooks/survey/bareLength";
import { columnReader } from "../../../src/workbooks/survey/columnReader";
import { readLength } from "../../../src/workbooks/survey/lengthCell";
import { factorBetween, unitSpelled, type LengthUnit } from "../../../src/workbooks/survey/meanings";
import { writingOf } from "../../../src/workbooks/typed/writing";

const metres = columnReader("run", [], { into: "m" });
const lengthOf = (cell: ImportedCell): unknown => {
  const reading = readLength(cell, metres);
  return "refused" in reading ? reading.refused : reading.value;
};

describe("one length", () => {
  test.each([
    ["12", 12],
    ["12.5", 12.5],
    ["12 m", 12],
    ["12m", 12],
    ["12 mtrs", 12],
    ["12 mtr.", 12],
    ["12 metres", 12],
    ["12 lfm", 12],
    ["12 lm", 12],
    ["12 ml", 12],
    ["12 m.", 12],
    // 1 in = 0.0254 m, 1 ft = 0.3048 m, 1 yd = 0.9144 m (international).
    ["100 in", 2.54],
    ["100 in.", 2.54],
    ['100"', 2.54],
    ["10 ft", 3.048],
    ["10'", 3.048],
    ["10 yd", 9.144],
    ["950 cm", 9.5],
    // A fraction with a whole number before it: ten and a half inches, 10.5 × 0.0254.
    ['10 1/2"', 0.2667],
  ])("%s", (cell, run) => {
    expect(lengthOf(cell)).toEqual({ run });
  });

  test.each(["", " ", " "])("blank: %j", (cell) => {
    expect(lengthOf(cell)).toBeUndefined();
  });
});

describe("an estimate is the length that it says", () => {
  test.each([
    "ca. 12",
    "ca 12",
    "ca.12 m",
    "circa 12",
    "c. 12",
    "approx. 12",
    "approximately 12 m",
    "about 12",
    "around 12",
    "roughly 12",
    "say 12",
    "est. 12",
    "etwa 12",
    "rund 12 m",
    "ungefähr 12",
    "ungefaehr 12",
    "environ 12",
    "aprox. 12",
    "unos 12",
    "~12",
    "~ 12 m",
    "≈12",
    "∼ 12",
    "?12",
    "+/- 12",
    "± 12",
    "12?",
    "12 ??",
    "12 (?)",
    "12 ca.",
    "12 m approx.",
    "12 (est.)",
    "12 m (ca.)",
    "12 ~",
    "ca. 12 m ?",
    "~ ca. 12",
    "12 approx ?",
  ])("%s", (cell) => {
    expect(lengthOf(cell)).toEqual({ run: 12, approximate: true });
  });

  test("what is no estimate has no such word", () => {
    expect(bareLength("12 m")).toEqual({ text: "12 m", approximate: false });
    expect(bareLength("ca. 12 m")).toEqual({ text: "12 m", approximate: true });
    // Nothing is left of it that could be a length.
    expect(bareLength("?")).toEqual({ text: "?", approximate: false });
    expect(bareLength("cable 12")).toEqual({ text: "cable 12", approximate: false });
  });
});

describe("a range: the run is its middle", () => {
  test.each([
    ["10-14"],
    ["10 - 14"],
    ["10 – 14"],
    ["10—14"],
    ["10--14"],
    ["10..14"],
    ["10 ... 14"],
    ["10…14"],
    ["10/14"],
    ["10 / 14 m"],
    ["10 m / 14 m"],
    ["10 to 14"],
    ["10 bis 14 m"],
    ["10 m bis 14 m"],
    ["10 until 14"],
    ["10 à 14"],
    ["10 hasta 14"],
    ["10 tot 14"],
    ["from 10 to 14"],
    ["between 10 and 14"],
    ["zwischen 10 und 14 m"],
    ["von 10 bis 14"],
    ["entre 10 et 14"],
    ["entre 10 y 14"],
    ["de 10 a 14"],
    ["tra 10 e 14"],
    ["10 - ca. 14"],
    ["10 - ~14"],
    ["min 10 max 14"],
    ["min. 10, max. 14"],
    ["Min: 10 / max: 14"],
    ["minimum 10 m, maximum 14 m"],
  ])("%s", (cell) => {
    expect(lengthOf(cell)).toEqual({ run: 12, shortest: 10, longest: 14 });
  });

  test("one that is an estimate as well", () => {
    for (const cell of ["ca. 10 - 14", "10 - 14 ?", "~10 to 14 m"])
      expect(lengthOf(cell)).toEqual({ run: 12, shortest: 10, longest: 14, approximate: true });
  });

  test("both ends may be the same", () => {
    expect(lengthOf("10 - 10")).toEqual({ run: 10, shortest: 10, longest: 10 });
  });

  // 10 ft = 3.048 m, 14 ft = 4.2672 m; their middle is 3.6576 m.
  test.each(["10 ft - 14 ft", "10 - 14 ft", "10 ft - 14", "10-14'", "10' - 14'", "between 10 and 14 feet"])(
    "%s: a bare end takes the unit of the other",
    (cell) => {
      expect(lengthOf(cell)).toEqual({ run: 3.6576, shortest: 3.048, longest: 4.2672 });
    },
  );

  test("each end in its own unit", () => {
    // 300 cm and 5 m.
    expect(lengthOf("300 cm - 5 m")).toEqual({ run: 4, shortest: 3, longest: 5 });
  });

  test("with decimals, and rounded where its middle has no end", () => {
    expect(lengthOf("7.5 - 8.5")).toEqual({ run: 8, shortest: 7.5, longest: 8.5 });
    expect(lengthOf("0.1 - 0.2")).toEqual({ run: 0.15, shortest: 0.1, longest: 0.2 });
  });

  test.each([
    ["14 - 10", "10 - 14"],
    ["14 to 10 m", "10 m - 14"],
    ["14/10", "10 - 14"],
  ])("%s goes down", (cell, better) => {
    expect(lengthOf(cell)).toBe(
      `“${cell}” goes down: if it is a range, write its shorter end first: ${better}.`,
    );
  });
});

test.each(["3/4/5", "12 / 14 / 16", "7.5/8/9 m"])("%s is no range of two", (cell) => {
  expect(lengthOf(cell)).toBe(`“${cell}” has more than two lengths. Enter the run, or both ends: 12 - 18.`);
});

describe("give or take", () => {
  test.each([
    ["12 ± 2", 12, 10, 14],
    ["12±2", 12, 10, 14],
    ["12 +/- 2", 12, 10, 14],
    ["12 + / - 2 m", 12, 10, 14],
    ["12 +- 2", 12, 10, 14],
    ["12 m ± 2 m", 12, 10, 14],
    ["12 m ± 50 cm", 12, 11.5, 12.5],
    // A tenth of 12 is 1.2.
    ["12 ± 10%", 12, 10.8, 13.2],
    // 1.5 % of 12 is 0.18.
    ["12 ± 1.5%", 12, 11.82, 12.18],
    ["12 ± 1,5 %", 12, 11.82, 12.18],
    ["12 m +/- 25 %", 12, 9, 15],
    // 12 ft = 3.6576 m, 2 ft = 0.6096 m: a bare one takes the unit of the other.
    ["12 ft ± 2", 3.6576, 3.048, 4.2672],
    ["12 ± 2 ft", 3.6576, 3.048, 4.2672],
  ])("%s", (cell, run, shortest, longest) => {
    expect(lengthOf(cell)).toEqual({ run, shortest, longest });
  });

  test("and an estimate as well", () => {
    expect(lengthOf("ca. 12 ± 2")).toEqual({ run: 12, shortest: 10, longest: 14, approximate: true });
  });

  test.each(["12 ± 12", "12 ± 20", "12 ± 100%", "12 ± 150%", "12 ± some"])(
    "%s leaves no length, and is refused in its own words",
    (cell) => {
      expect(lengthOf(cell)).toMatch(`“${cell}”`);
    },
  );
});

describe("what is no length is asked about, with what stands there", () => {
  test.each(["tbd", "T.B.C.", "n/a", "n. a.", "k.A.", "?", "-", "–", "…", "xx", "unknown", "unbekannt"])(
    "%s: no length yet",
    (cell) => {
      expect(lengthOf(cell)).toBe(`“${cell}” is no length yet. Enter it, or an estimate such as ca. 12.`);
    },
  );

  test.each(["to be measured", "noch offen", "à mesurer", "por medir", "see plan", "not measured", "fehlt"])(
    "%s: no length yet",
    (cell) => {
      expect(lengthOf(cell)).toMatch(/ is no length yet\./);
    },
  );

  test.each([
    "max 12",
    "min. 5 m",
    "up to 20",
    "at least 5",
    "< 12",
    ">12",
    "≤ 12",
    "bis 12",
    "höchstens 12",
  ])("%s: one end alone", (cell) => {
    expect(lengthOf(cell)).toBe(
      `“${cell}” is only one end of what the run may be. Enter the run, or both ends: 12 - 18.`,
    );
  });

  test.each(["ca. some", "some - 12", "12 - some", "10 kg", "10 - 14 kg", "A - B"])("%s", (cell) => {
    expect(lengthOf(cell)).toMatch(`“${cell}” can't be read as a length`);
  });

  test("0.1 m to 2000 m, the rule of the column; of both ends of a range, too", () => {
    expect([lengthOf("0.1"), lengthOf("2000")]).toEqual([{ run: 0.1 }, { run: 2000 }]);
    expect(lengthOf("0.09")).toMatch(/must be from 0\.1 to 2000 m/);
    expect(lengthOf("2001")).toMatch(/must be from 0\.1 to 2000 m/);
    expect(lengthOf("0 - 14")).toMatch("“0 - 14”");
    expect(lengthOf("10 - 2001")).toMatch("“10 - 2001”");
  });

  // A ruler's fraction may be meant; 18/22 can be none.
  test.each([
    ["3/4", "0.75", "3 - 4"],
    ["1/2", "0.5", "1 - 2"],
    ["3/8", "0.375", "3 - 8"],
  ])("%s: a fraction or a range", (cell, share, range) => {
    expect(lengthOf(cell)).toBe(
      `“${cell}” can be a fraction or two ends of a range. Write ${share}, or ${range}.`,
    );
  });

  test("a cell of more than 80 signs is no length, whatever it begins with", () => {
    expect(lengthOf(`12 - 14 ${"x".repeat(80)}`)).toMatch(/can't be read as a length/);
    // 80 signs are read; spaces between do not matter.
    expect(lengthOf(`10 -${" ".repeat(74)}14`)).toEqual({ run: 12, shortest: 10, longest: 14 });
  });
});

describe("a cell of a workbook", () => {
  test("a number counts with all its digits, whatever is shown", () => {
    expect(lengthOf({ number: 12.345, shown: "12" })).toEqual({ run: 12.345 });
  });

  test("the unit of its number format counts", () => {
    expect(lengthOf({ number: 10, shown: "10", unit: "ft" })).toEqual({ run: 3.048 });
    expect(lengthOf({ number: 1250, shown: "1250", unit: "cm" })).toEqual({ run: 12.5 });
    expect(lengthOf({ number: 10, shown: "10", unit: "kg" })).toMatch("“10 kg” can't be read as a length");
  });

  test("a date was a range", () => {
    expect(lengthOf({ number: 45_000, shown: undefined })).toMatch(/^the file holds a date here, .*5-8/);
  });

  test("and is held to the limits of the column", () => {
    expect(lengthOf({ number: -3, shown: "-3" })).toMatch(
      /“-3” is -3 m; here it must be from 0\.1 to 2000 m/,
    );
  });
});

describe("a column", () => {
  const valueIn = (
    cell: ImportedCell,
    own: LengthUnit | undefined,
    into: "m" | "ft" = "m",
    cells: readonly ImportedCell[] = [],
  ): unknown => {
    const reading = columnReader("run", cells, { ...(own && { own }), into }).read(cell);
    return "refused" in reading ? reading.refused : reading.value;
  };

  // Each by its definition: 1 ft = 0.3048 m, 1 in = 0.0254 m, 1 yd = 0.9144 m; 10 m / 0.3048 = 32.808399 ft.
  test.each<[string, LengthUnit | undefined, "m" | "ft", number]>([
    ["10", undefined, "m", 10],
    ["10", undefined, "ft", 10],
    ["10", "m", "m", 10],
    ["10", "ft", "m", 3.048],
    ["10", "m", "ft", 32.808399],
    ["1250", "cm", "m", 12.5],
    ["12500", "mm", "m", 12.5],
    ["100", "in", "m", 2.54],
    ["12.5", "in", "m", 0.3175],
    ["10", "yd", "m", 9.144],
    ["120", "in", "ft", 10],
    ["10", "yd", "ft", 30],
    // A unit in the cell goes before the column's.
    ["10 m", "ft", "m", 10],
    ["10 m", "cm", "m", 10],
    ["10 ft", "m", "ft", 10],
    // Thousands of millimetres: nobody runs a centimetre of cable.
    ["12.500", "mm", "m", 12.5],
    ["12,500", "mm", "m", 12.5],
    ["12'500", "mm", "m", 12.5],
    ["12.500 mm", "m", "m", 12.5],
    ["1,250", "cm", "m", 12.5],
    ["9,250 cm", "m", "m", 92.5],
    ["12'500", "cm", "m", 125],
    // Nor ten kilometres: a run is at most 2000 m.
    ["12,500", "m", "m", 12.5],
    ["2,001", "m", "m", 2.001],
    ["12,500 m", "ft", "ft", 41.0104987],
  ])("%s in %s, for a workbook in %s", (cell, own, into, wanted) => {
    expect(valueIn(cell, own, into)).toBeCloseTo(wanted, 5);
  });

  test.each([
    ["1,500", "m"],
    ["2,000", "m"],
    ["10,250", "cm"],
  ] as const)("%s in %s can be two lengths where commas are decimals elsewhere", (cell, own) => {
    expect(valueIn(cell, own, "m", ["12,5"])).toMatch(/^“[\d,]+(?: cm)?” can be /);
  });

  test("decimal signs are told by the column's own cells", () => {
    expect(valueIn("1.500", "m", "m", ["1.5"])).toBe(1.5);
    expect(valueIn("1.500", "m", "m", ["2,5"])).toMatch(/can be 1500 or 1\.5/);
    expect(valueIn("1.500", "m", "m", ["ca. 2,5 m"])).toMatch(/can be 1500 or 1\.5/);
    // A number of a workbook has no sign of its own.
    expect(valueIn("1.500", "m", "m", [{ number: 2.5, shown: "2,5" }])).toBe(1.5);
  });

  test("where the workbook's people write a comma, a point elsewhere makes 1,500 doubtful", () => {
    const german = writingOf("German")!;
    const read = (cells: readonly string[]): unknown =>
      columnReader("run", cells, { into: "m", writing: german }).read("1,500");
    expect(read(["2,5"])).toEqual({ value: 1.5 });
    expect(read(["2.5"])).toMatchObject({ refused: expect.stringMatching(/can be 1500 or 1,5/) });
  });

  test("tells of the first decimal comma that it reads", () => {
    const comma = (...cells: ImportedCell[]): string | undefined =>
      columnReader("run", cells, { into: "m" }).comma;
    expect(comma("12", "7,5", "8,5")).toBe("7,5");
    expect(comma("7.5", "12")).toBeUndefined();
    expect(comma("0,01", "8,5")).toBe("8,5");
    expect(comma("7,5 kg")).toBeUndefined();
    expect(comma({ number: 7.5, shown: "7,5" })).toBeUndefined();
    // Thousands are none.
    expect(comma("1,500")).toBeUndefined();
    expect(comma()).toBeUndefined();
  });

  test("a sum is converted, and may go beyond a run", () => {
    const feet = columnReader("run", [], { own: "ft", into: "m" });
    expect([feet.convert(10_000), feet.unit]).toEqual([3048, "ft"]);
    expect([metres.convert(5000), metres.unit]).toEqual([5000, "m"]);
    const pieces = columnReader("quantity", [], { own: "ft", into: "m" });
    expect([pieces.convert(7), pieces.unit]).toEqual([7, undefined]);
  });

  test("a count is a whole number, of text or of a workbook, and no length", () => {
    const pieces = columnReader("quantity", [], { into: "m" });
    expect(pieces.read("3")).toEqual({ value: 3 });
    expect(pieces.read({ number: 3, shown: "3" })).toEqual({ value: 3 });
    expect(pieces.read({ number: 3, shown: "3 pcs", unit: "pcs" })).toEqual({ value: 3 });
    expect(pieces.read({ number: 2.5, shown: "2.5" })).toMatchObject({
      refused: expect.stringMatching(/not a whole number/),
    });
    expect(pieces.read("")).toEqual({ value: undefined });
    expect(pieces.read("3 m")).toHaveProperty("refused");
  });

  test("limits of feet are said in feet", () => {
    // 2000 m = 6561.68 ft.
    expect(valueIn("7000", "ft", "ft")).toMatch(/ ft$|\d ft\b/);
    expect(valueIn({ number: 0.01, shown: "0.01" }, "ft", "m")).toMatch(/is 0\.01 ft/);
  });
});

describe("units", () => {
  test.each<[string, LengthUnit | undefined]>([
    ["m", "m"],
    ["M", "m"],
    ["m.", "m"],
    ["Metres", "m"],
    ["mètres", "m"],
    ["metri", "m"],
    ["metros", "m"],
    ["lfm", "m"],
    ["ft", "ft"],
    ["ft.", "ft"],
    ["'", "ft"],
    ["′", "ft"],
    ["feet", "ft"],
    ["cm", "cm"],
    ["centimetres", "cm"],
    ["mm", "mm"],
    ["in", "in"],
    ['"', "in"],
    ["inches", "in"],
    ["yds", "yd"],
    ["yard", "yd"],
    ["km", undefined],
    ["", undefined],
    ["mast", undefined],
  ])("%j is %s", (word, unit) => {
    expect(unitSpelled(word)).toBe(unit);
  });

  test("one in another", () => {
    expect(factorBetween("ft", "ft")).toBe(1);
    expect(factorBetween("ft", "m")).toBeCloseTo(0.3048, 10);
    // 12 inches in a foot, 3 feet in a yard.
    expect(factorBetween("ft", "in")).toBeCloseTo(12, 10);
    expect(factorBetween("yd", "ft")).toBeCloseTo(3, 10);
    expect(factorBetween("m", "mm")).toBeCloseTo(1000, 10);
  });
});
