/** What SHOWWORK shows beside the numbers: each row's symbol, words, unit and source, and known values on the way. */
import { workedFunctions } from "../../src/functions/about/worked";
import type { Argument, Matrix } from "../../src/functions/core/cells";
import { call, sentence } from "../support/functionGroup";

/** Given by the person, taken from a table or nature, or worked out in a line. */
type Kind = "given" | "taken" | "worked";
/** Symbol, unit by the dimensions of the equation, kind, and the value where it was worked by hand. */
type Row = readonly [symbol: string, unit: string, kind: Kind, value?: number | string];

const LIGHT = 299_792_458;
/** Of the cable `house` below: 1·√f and nothing else, loop 2.5 ohm. */
const HOUSE: Argument = [["House", "", 1, 0, 0, 2.5]];

const SIGHT: readonly Row[] = [
  ["φ", "deg", "given", 40],
  ["λ", "deg", "given", -105],
  ["λs", "deg", "given", -110],
  ["h", "m", "given", 1600],
  // WGS84's semi-major axis; a sidereal day's orbit by Kepler's third law is 42164.17 km.
  ["a", "km", "taken", 6378.137],
  ["r", "km", "taken", 42164.17],
  ["e²", "", "worked"],
  ["N", "km", "worked"],
  ...["x", "y", "z", "e", "n", "u"].map((symbol): Row => [symbol, "km", "worked"]),
];
const AZIMUTH: Row = ["Az", "deg", "worked"];
const ELEVATION: readonly Row[] = [
  ["l", "km", "worked"],
  ["El", "deg", "worked"],
];
const RANGE: Row = ["d", "km", "worked"];
const SITE = [40, -105, -110, 1600];

const wave = (megahertz: number): Row[] => [
  ["f", "MHz", "given", megahertz],
  ["c", "m/s", "taken", LIGHT],
  ["λ", "m", "worked", LIGHT / (megahertz * 1e6)],
];

const coefficients: readonly Row[] = [
  ["k1", "dB/100 m", "taken", 1],
  ["k2", "dB/100 m", "taken", 0],
  ["k0", "dB/100 m", "taken", 0],
];
/** 50 m at 30 °C and a square megahertz: √f dB in 100 m, half of it, 0.00198·10 more. */
const house = (root: number, mark = ""): Row[] => [
  [`f${mark}`, "MHz", "given", root ** 2],
  [`α${mark}`, "dB/100 m", "worked", root],
  [`A20${mark}`, "dB", "worked", root / 2],
  [`t${mark}`, "", "worked", 1.0198],
  [`A${mark}`, "dB", "worked", (root / 2) * 1.0198],
];

const CASES: readonly (readonly [string, readonly Argument[], readonly Row[]])[] = [
  [
    "SELLPRICE",
    [80, 0.2],
    [
      ["C", "money", "given", 80],
      ["g", "", "given", 0.2],
      ["k", "", "worked", 0.8],
      ["S", "money", "worked", 100],
    ],
  ],
  [
    "MARKUP",
    [0.2],
    [
      ["g", "", "given", 0.2],
      ["k", "", "worked", 0.8],
      ["m", "", "worked", 0.25],
    ],
  ],
  [
    "MARGIN",
    [0.25],
    [
      ["m", "", "given", 0.25],
      ["p", "", "worked", 1.25],
      ["g", "", "worked", 0.2],
    ],
  ],
  [
    "LOADVOLTS",
    [13, 0.25, 5.85, "A"],
    [
      ["Vs", "V", "given", 13],
      ["R", "ohm", "given", 5.85],
      ["I", "A", "given", 0.25],
      ["ΔV", "V", "worked", 1.4625],
      ["V", "V", "worked", 11.5375],
    ],
  ],
  [
    // 13² − 4·2.6·5.85 = 108.16, whose root is 10.4; (13 + 10.4)/2.
    "VOLTDROP",
    [13, 2.6, 5.85, "W"],
    [
      ["Vs", "V", "given", 13],
      ["R", "ohm", "given", 5.85],
      ["P", "W", "given", 2.6],
      ["D", "V²", "worked", 108.16],
      ["V", "V", "worked", 11.7],
      ["Vs − V", "V", "worked", 1.3],
    ],
  ],
  [
    // 0.00393·25 = 0.09825.
    "LOOPOHMS",
    ["house", 200, 45, "m", HOUSE],
    [
      ["cable", "", "given", "House"],
      ["L", "m", "given", 200],
      ["T", "°C", "given", 45],
      ["r", "ohm/100 m", "taken", 2.5],
      ["R20", "ohm", "worked", 5],
      ["t", "", "worked", 1.09825],
      ["R", "ohm", "worked", 5.49125],
    ],
  ],
  [
    // AWG 36 is 0.127 mm (0.005 in) by definition: π/4·0.127² = 0.0126677 mm², 0.017241/0.0126677·30.48 = 41.484.
    "WIREOHMS",
    [36, 100, 100, 20, "ft"],
    [
      ["n", "AWG", "given", 36],
      ["L", "ft", "given", 100],
      ["L", "m", "worked", 30.48],
      ["c", "% IACS", "given", 100],
      ["T", "°C", "given", 20],
      ["d", "mm", "worked", 0.127],
      ["A", "mm²", "worked", (Math.PI / 4) * 0.016129],
      ["R20", "ohm", "worked"],
      ["t", "", "worked", 1],
      ["R", "ohm", "worked"],
    ],
  ],
  ["AZIMUTH", SITE, [...SIGHT, AZIMUTH]],
  ["ELEVATION", SITE, [...SIGHT, ...ELEVATION]],
  ["SLANTRANGE", SITE, [...SIGHT, RANGE]],
  ["LOOKANGLES", SITE, [...SIGHT, AZIMUTH, ...ELEVATION, RANGE]],
  [
    // 1.728 + 1.0822 + 0.14892; 8.848·(0.1815 + 0.12544 + 0.04552); 8.848²·(0.01727 + 0.016576).
    "REFRACTION",
    [2, 8848],
    [
      ["θ", "deg", "given", 2],
      ["h", "m", "given", 8848],
      ["g", "", "worked", 2.95912],
      ["h1", "", "worked", 3.11856608],
      ["h2", "", "worked", 8.848 ** 2 * 0.033846],
      ["τ", "deg", "worked", 1 / (2.95912 + 3.11856608 + 8.848 ** 2 * 0.033846)],
    ],
  ],
  [
    "CABLELOSS",
    ["house", 50, 900, 30, "m", HOUSE],
    [
      ["cable", "", "given", "House"],
      ["L", "m", "given", 50],
      ["T", "°C", "given", 30],
      ...coefficients,
      ...house(30),
    ],
  ],
  [
    "CABLESLOPE",
    ["house", 50, 900, 1600, 30, "m", HOUSE],
    [
      ["cable", "", "given", "House"],
      ["L", "m", "given", 50],
      ["T", "°C", "given", 30],
      ...coefficients,
      ...house(30, " low"),
      ...house(40, " high"),
      ["S", "dB", "worked", 5 * 1.0198],
    ],
  ],
  [
    "SPLITLOSS",
    [10, 1.5],
    [
      ["N", "ways", "given", 10],
      ["x", "dB", "given", 1.5],
      ["L", "dB", "worked", 11.5],
    ],
  ],
  [
    "CASCADELOSS",
    [
      [[10], [100]],
      [[0.5], [1]],
    ],
    [
      ["N1", "ways", "given", 10],
      ["x1", "dB", "given", 0.5],
      ["L1", "dB", "worked", 10.5],
      ["N2", "ways", "given", 100],
      ["x2", "dB", "given", 1],
      ["L2", "dB", "worked", 21],
      ["L", "dB", "worked", 31.5],
    ],
  ],
  [
    // A tenth of the power goes to the branch.
    "TAPTHROUGH",
    [10, 1],
    [
      ["T", "dB", "given", 10],
      ["x", "dB", "given", 1],
      ["q", "", "worked", 0.9],
      ["L", "dB", "worked", 1 - 10 * Math.log10(0.9)],
    ],
  ],
  [
    "BEAMWIDTH",
    [1.2, 12450],
    [["D", "m", "given", 1.2], ...wave(12450), ["θ", "deg", "worked", (70 * LIGHT) / 12_450e6 / 1.2]],
  ],
  [
    "DISHGAIN",
    [3, 12000, 0.55],
    [
      ["D", "m", "given", 3],
      ["η", "", "given", 0.55],
      ...wave(12000),
      ["r", "", "worked", (Math.PI * 3 * 12_000e6) / LIGHT],
      ["G", "dBi", "worked", 10 * Math.log10(0.55 * ((Math.PI * 3 * 12_000e6) / LIGHT) ** 2)],
    ],
  ],
  [
    "FREESPACELOSS",
    [42000, 6000],
    [
      ["d", "km", "given", 42000],
      ...wave(6000),
      ["q", "", "worked", (4 * Math.PI * 42e6 * 6e9) / LIGHT],
      ["L", "dB", "worked", 20 * Math.log10((4 * Math.PI * 42e6 * 6e9) / LIGHT)],
    ],
  ],
  [
    "TUNERCOUNT",
    ["recorder, 2 tuners", 3],
    [
      ["kind", "", "given", "recorder, 2 tuners"],
      ["q", "receivers", "given", 3],
      ["t", "tuners", "taken", 2],
      ["n", "tuners", "worked", 6],
    ],
  ],
  [
    "HEADUNITS",
    [9, 8],
    [
      ["n", "tuners", "given", 9],
      ["c", "tuners", "given", 8],
      ["n/c", "", "worked", 1.125],
      ["h", "head units", "worked", 2],
    ],
  ],
  [
    // (1102 + 1210)/4 − 350.
    "TUNINGWORD",
    [1102, 1210, "EN 50494"],
    [
      ["standard", "", "given", "EN 50494"],
      ["F", "MHz", "given", 1102],
      ["B", "MHz", "given", 1210],
      ["t", "", "worked", 228],
      ["T", "", "worked", 228],
    ],
  ],
  [
    "TUNINGWORD",
    [1580.4, null, "EN 50607"],
    [
      ["standard", "", "given", "EN 50607"],
      ["F", "MHz", "given", 1580.4],
      ["t", "", "worked", 1480.4],
      ["T", "", "worked", 1480],
    ],
  ],
];

const rowsOf = (name: string, args: readonly Argument[]): Matrix => call("SHOWWORK", name, ...args) as Matrix;

describe("rows", () => {
  test.each(CASES)("%s", (name, args, expected) => {
    const rows = rowsOf(name, args);
    expect(rows.map(([symbol, , , unit]) => [symbol, unit])).toEqual(
      expected.map(([symbol, unit]) => [symbol, unit]),
    );
    for (const [at, [symbol, , kind, value]] of expected.entries()) {
      const [, meaning, found, , line, source] = rows[at]!;
      expect({ symbol, words: /\p{L}{4}/u.test(meaning as string), source: source !== "" }).toEqual({
        symbol,
        words: true,
        source: true,
      });
      expect({ symbol, isWorked: line !== "" }).toEqual({ symbol, isWorked: kind === "worked" });
      expect({ symbol, isGiven: source === "your figure, or its default" }).toEqual({
        symbol,
        isGiven: kind === "given",
      });
      if (typeof value === "number") expect((found as number) / (value || 1)).toBeCloseTo(value ? 1 : 0, 6);
      else if (value !== undefined) expect(String(found).toLowerCase()).toBe(value.toLowerCase());
    }
    // A length in feet is there twice under one symbol, in words that differ.
    expect(new Set(rows.map(([symbol, meaning]) => `${String(symbol)}: ${String(meaning)}`)).size).toBe(
      rows.length,
    );
  });

  test("every function that can be shown is among them", () => {
    expect([...new Set(CASES.map(([name]) => name))].sort()).toEqual(
      workedFunctions.map(({ name }) => name as string).sort(),
    );
  });
});

test("metres are not turned into metres", () => {
  for (const [name, args] of [
    ["CABLELOSS", ["series 6", 10, 950, 20, "m"]],
    ["WIREOHMS", [14, 10, 100, 20, "m"]],
  ] as [string, Argument[]][]) {
    expect(rowsOf(name, args).filter(([symbol]) => symbol === "L")).toHaveLength(1);
  }
});

test("a table's cable has the table for its source, one of ours the standard", () => {
  const sources = (name: string, ...more: Argument[]) =>
    rowsOf("CABLELOSS", [name, 10, 950, 20, "m", ...more])
      .filter(([symbol]) => /^k/.test(symbol as string))
      .map((row) => row[5]);
  expect(new Set(sources("house", HOUSE))).toEqual(new Set(["The cable table"]));
  expect(sources("series 6").every((source) => /from memory/.test(source as string))).toBe(true);
});

test("the azimuth's line adds a turn for a slot in the west only", () => {
  const line = (slot: number) => rowsOf("AZIMUTH", [40, -105, slot]).at(-1)![4] as string;
  expect(line(-110)).toMatch(/\) \+ 360$/);
  expect(line(-100)).toMatch(/\)$/);
});

test("a cascade of nothing says what is missing", () => {
  expect(sentence(call("SHOWWORK", "CASCADELOSS", [[null], [null]]))).toMatch(
    /ways is missing\. Enter the number of ways of at least one splitter\./,
  );
});

test.each(["k1", "k2", "k0"])("a cable with %s alone left blank has a fault that names it", (blank) => {
  const terms = ["k1", "k2", "k0"].map((name) => (name === blank ? null : 1));
  const table: Argument = [["House", null, ...terms, null]];
  expect(sentence(call("CABLELOSS", "house", 10, 900, 20, "m", table))).toMatch(new RegExp(`\\b${blank}\\b`));
});
