/** What a misread figure comes to, worked out from the mistake's name: by hand. */
import type { Family } from "../../src/training/exercise";
import { coarseValues, generalSlips, pointAndSign } from "../../src/training/generalSlips";
import { asAsked, precisionInWords } from "../../src/training/precision";
import {
  amperes,
  factor,
  loop,
  megahertz,
  milliamperes,
  perHundred,
  watts,
} from "../../src/training/slips/factors";
import { feet, oneWay, timesPerHundred } from "../../src/training/slips/lengths";
import { marginOfPrice, percentAdded, percentOff } from "../../src/training/slips/percents";
import { added, eastOrWest, forgotten, northOrSouth, takenOff } from "../../src/training/slips/terms";
import { traineeList } from "../../src/training/traineeList";

/** Name, what the trainee then has, and whether it is met now and then only. */
type Row = readonly [name: string, value: number, seldom?: "seldom"];

function held(
  family: Family,
  value: number,
  what: string,
  turned: (as: number) => number,
  rows: readonly Row[],
): void {
  const found = family(value, what);
  expect(found.map(({ name }) => name)).toEqual(rows.map(([name]) => name));
  for (const [at, [name, expected, seldom]] of rows.entries()) {
    expect(turned(found[at]!.as)).toBeCloseTo(expected, 9);
    expect([name, found[at]!.seldom ?? false]).toEqual([name, seldom !== undefined]);
  }
}
const asItIs = (as: number): number => as;

test("100 ft, which are 30.48 m", () => {
  held(feet, 100, "run", (as) => as * 0.3048, [
    ["feet taken for metres", 100],
    ["feet multiplied by 3.28 instead of divided", 328],
    ["feet multiplied by 3.28 instead of divided", 328.1],
    ["feet multiplied by 3.28 instead of divided", 330],
    ["feet multiplied by 3.28 instead of divided", 100 / 0.3048],
    ["there and back counted twice", 60.96],
    ["three feet taken for a metre", 100 / 3, "seldom"],
    ["a yard taken for a foot", 91.44, "seldom"],
    ["an inch taken for a foot", 2.54, "seldom"],
    ["0.3 taken for 0.3048", 30, "seldom"],
    ["digits of 0.3048 exchanged", 34.08, "seldom"],
    ["feet divided by 3.048", 100 / 3.048, "seldom"],
  ]);
});

test("other lengths", () => {
  held(oneWay, 50, "run", asItIs, [
    ["there and back counted twice", 100],
    ["metres converted as if they were feet", 15.24, "seldom"],
  ]);
  // A figure of 8 for 100 m, over 50 m.
  held(timesPerHundred(100), 50, "run", (as) => (8 * as) / 100, [
    ["not divided by 100", 400],
    ["figure of 100 m taken for that of the run", 8],
    ["there and back counted twice", 8],
    ["divided by 1000 instead of 100", 0.4, "seldom"],
    ["divided by the length instead of multiplied", 16, "seldom"],
  ]);
});

test("percentages", () => {
  held(percentAdded, 20, "waste", (as) => 1 + as / 100, [
    ["waste left out", 1],
    ["waste not divided by 100", 21],
    ["waste subtracted instead of added", 0.8],
    ["waste as a division, /(1 − waste)", 1.25],
    ["only the waste given", 0.2],
    ["divided by 1 + waste instead of multiplied", 1 / 1.2, "seldom"],
    ["waste reckoned twice", 1.44, "seldom"],
    ["waste ten times too small", 1.02, "seldom"],
  ]);
  held(percentOff, 20, "discount", (as) => 1 - as / 100, [
    ["discount left out", 1],
    ["discount added instead of subtracted", 1.2, "seldom"],
    ["discount as a division, /(1 + discount)", 1 / 1.2, "seldom"],
    ["discount not divided by 100", -19, "seldom"],
  ]);
  held(marginOfPrice, 20, "margin", (as) => 1 / (1 - as / 100), [
    ["margin taken as markup", 1.2],
    ["margin left out", 1],
    ["margin taken off the cost", 0.8],
    ["margin not divided by 100", -1 / 19],
    ["only the margin given", 0.2],
    ["only the margin given", 0.25],
    ["divided by 1 + margin", 1 / 1.2, "seldom"],
    ["divided by the margin", 5, "seldom"],
    ["margin reckoned twice", 1 / 0.64, "seldom"],
  ]);
});

test("parts of a sum, and signs", () => {
  held(takenOff, 5, "plate", asItIs, [
    ["plate left out", 0],
    ["plate added instead of subtracted", -5],
    ["plate counted twice", 10, "seldom"],
  ]);
  held(added, 5, "plate", asItIs, [
    ["plate left out", 0],
    ["plate subtracted instead of added", -5],
    ["plate counted twice", 10, "seldom"],
  ]);
  held(forgotten, 5, "plate", asItIs, [
    ["plate left out", 0],
    ["plate with the wrong sign", -5, "seldom"],
    ["decimal point of plate misplaced", 50, "seldom"],
    ["decimal point of plate misplaced", 0.5, "seldom"],
  ]);
  held(eastOrWest, 13, "slot", asItIs, [["sign of the slot exchanged", -13]]);
  held(northOrSouth, 51, "latitude", asItIs, [["sign of the latitude exchanged", -51, "seldom"]]);
});

test("factors and units", () => {
  held(factor, 4, "quantity", asItIs, [
    ["quantity left out", 1, "seldom"],
    ["divided by the quantity instead of multiplied", 0.25, "seldom"],
    ["quantity squared", 16, "seldom"],
  ]);
  held(milliamperes, 250, "current", (as) => as / 1000, [
    ["milliamperes taken for amperes", 250],
    ["milliamperes divided by 100", 2.5, "seldom"],
  ]);
  held(amperes, 0.25, "current", asItIs, [["amperes taken for milliamperes", 0.00025]]);
  held(megahertz, 950, "frequency", asItIs, [
    ["GHz taken for MHz", 0.95],
    ["Hz taken for MHz", 950e6, "seldom"],
  ]);
  held(watts, 6, "power", asItIs, [["milliwatts taken for watts", 6000, "seldom"]]);
  held(loop, 8, "loop", asItIs, [
    ["one way taken for the loop", 4],
    ["there and back counted twice", 16],
  ]);
  held(perHundred, 8, "loss", (as) => as / 100, [
    ["not divided by 100", 8],
    ["divided by 1000 instead of 100", 0.008, "seldom"],
  ]);
});

describe("mistakes of any number", () => {
  const number = (unit: string, decimals = 1, more: object = {}) =>
    ({ kind: "number", unit, decimals, ...more }) as const;
  const pairs = (found: readonly { name: string; value: number }[]) =>
    found.map(({ name, value }) => [name, Number(value.toFixed(9))]);
  const POINT = "decimal point in the wrong place";
  test("the point and the sign", () => {
    expect(pairs(pointAndSign(number("dB"), 12))).toEqual([
      [POINT, 120],
      [POINT, 1.2],
      ["sign reversed", -12],
    ]);
    expect(pairs(pointAndSign(number("tuners", 0, { exact: true }), 12))).toEqual([["sign reversed", -12]]);
    expect(pointAndSign(number("dB"), 0)).toEqual([]);
    expect(pointAndSign({ kind: "choice", choices: ["pass"] }, 12)).toEqual([]);
  });
  const common = (key: number) => [
    [POINT, 100 * key],
    [POINT, key / 100],
    [POINT, 1000 * key],
    [POINT, key / 1000],
    ["twice the answer", 2 * key],
    ["half of the answer", key / 2],
  ];
  test.each([
    ["%", [["a share given instead of percent", 0.3]]],
    [
      "m",
      [
        ["given in centimetres", 3000],
        ["given in feet", 98.42519685],
      ],
    ],
    ["V", [["given in millivolts", 30_000]]],
    // 30 deg are π/6.
    [
      "deg",
      [
        ["given in radians", 0.523598776],
        ["half a turn off", 210],
        ["taken from the other axis", 60],
      ],
    ],
    ["dB", []],
  ] as [string, [string, number][]][])("a number in %s", (unit, own) => {
    expect(pairs(generalSlips(number(unit), 30))).toEqual([
      [POINT, 300],
      [POINT, 3],
      ["sign reversed", -30],
      ...own,
      ...common(30),
    ]);
  });
  test("a direction beyond half a turn", () => {
    expect(pairs(generalSlips(number("deg"), 270))).toContainEqual(["half a turn off", 90]);
  });
  test("a count and nought have fewer", () => {
    expect(generalSlips(number("tuners", 0, { exact: true }), 12)).toHaveLength(1);
    expect(generalSlips(number("dB"), 0)).toEqual([]);
  });
  test("rounded more coarsely than asked: by one place and by two, where that is beyond the last place", () => {
    // Asked to 0.01, so right within 0.01: 12.3 is 0.04 off, 12 is 0.34 off.
    expect(coarseValues(number("V", 2), 12.34)).toEqual([12.3, 12]);
    expect(coarseValues(number("V", 2), 12.305)).toEqual([12]);
    expect(coarseValues(number("V", 1), 12.34)).toEqual([12]);
    expect(coarseValues(number("V", 0), 12.34)).toEqual([]);
    expect(coarseValues(number("V", 2, { exact: true }), 12.34)).toEqual([]);
    expect(coarseValues({ kind: "choice", choices: ["pass"] }, 12.34)).toEqual([]);
  });
  test("how precise it is asked for, and how it is shown", () => {
    expect(precisionInWords(number("dB", 1))).toBe("to 0.1 dB");
    expect(precisionInWords(number("V", 2))).toBe("to 0.01 V");
    expect(precisionInWords(number("deg", 0))).toBe("to a whole deg");
    expect(precisionInWords(number("", 0))).toBe("to a whole");
    expect(precisionInWords(number("", 1))).toBe("to 0.1");
    expect(precisionInWords(number("tuners", 0, { exact: true }))).toBe("exactly");
    expect(precisionInWords({ kind: "choice", choices: ["pass"] })).toBe("from the list");
    expect(asAsked(number("dB", 1), 12.345)).toBe(12.3);
    expect(asAsked({ kind: "choice", choices: ["pass"] }, "pass")).toBe("pass");
  });
});

describe("a list of trainees", () => {
  const read = (...lines: string[][]) => traineeList(lines.map((cells, at) => ({ line: at + 1, cells })));
  const names = (...lines: string[][]) => {
    const found = read(...lines);
    return typeof found === "string" ? found : found.trainees.map(({ name }) => name);
  };
  test.each([
    ["without heads", [["Ada North"], ["Ben South"]], ["Ada North", "Ben South"]],
    [
      "in two columns without heads",
      [
        ["Ada", "North"],
        ["Ben", ""],
      ],
      ["Ada North", "Ben"],
    ],
    ["with a head", [["Name"], ["Ada North"]], ["Ada North"]],
    ["a head with a colon, in capitals", [["FULL NAME:"], ["Ada North"]], ["Ada North"]],
    [
      "the name beside others",
      [
        ["No.", "Trainee", "Room"],
        ["1", "Ada North", "B2"],
      ],
      ["Ada North"],
    ],
    [
      "first and last",
      [
        ["First name", "Surname"],
        ["Ada", "North"],
      ],
      ["Ada North"],
    ],
    [
      "last and first",
      [
        ["Last name", "Given name"],
        ["North", "Ada"],
      ],
      ["Ada North"],
    ],
    [
      "a first name and a name",
      [
        ["Forename", "Name"],
        ["Ada", "North"],
      ],
      ["Ada North"],
    ],
    [
      "a last name alone",
      [
        ["Family name", "Room"],
        ["North", "B2"],
      ],
      ["North"],
    ],
    ["blank lines between", [[""], ["Ada"], ["  ", ""], ["Ben"]], ["Ada", "Ben"]],
    ["blanks and line ends within", [["  Ada \n  North\t"]], ["Ada North"]],
    ["short rows below heads", [["No.", "Name"], ["1"], ["2", "Ben"]], ["Ben"]],
  ])("%s", (_, lines, expected) => expect(names(...lines)).toEqual(expected));
  test("a name that stands twice gets two sheets, and a note", () => {
    expect(read(["Ada"], ["Ben"], ["Ada"])).toEqual({
      trainees: [
        { name: "Ada", occurrence: 1 },
        { name: "Ben", occurrence: 1 },
        { name: "Ada", occurrence: 2 },
      ],
      notes: ['"Ada" stands 2 times on the list: each gets a sheet of its own.'],
    });
    expect(read(["Ada"])).toEqual({ trainees: [{ name: "Ada", occurrence: 1 }], notes: [] });
  });
  test("what is no list", () => {
    expect(read()).toMatch(/^The list is empty/);
    expect(read([""], [" "])).toMatch(/^The list is empty/);
    expect(read(["Name"])).toMatch(/no trainee below its heads/);
    expect(read(["Ada"], ["x".repeat(120)])).not.toEqual(expect.any(String));
    expect(read(["Ada"], ["x".repeat(121)])).toMatch(
      /^Line 2 has a name of 121 characters; the most is 120\./,
    );
    const many = Array.from({ length: 2001 }, (_, at) => [`T${at}`]);
    expect(read(...many)).toMatch(/^The list has 2001 trainees; the most at once is 2000\./);
    expect(read(...many.slice(1))).not.toEqual(expect.any(String));
  });
});
