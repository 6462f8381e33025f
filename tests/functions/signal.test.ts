/** The signal functions on the sheet. */
import type { Matrix } from "../../src/functions/core/cells";
import { call, describeGroup, sentence } from "../support/functionGroup";
import { publishedCheck } from "../support/published";

describeGroup("Signal");

describe("cable names and the cable table", () => {
  const own: Matrix = [
    ["House cable", "", 2, 0, 0, 10],
    ["series 6", "", 1, 0, 0, 10],
    ["", "", "", "", "", ""],
    ["Borrowed", "SERIES  11", "", "", "", ""],
    ["Empty", "", "", "", "", 5],
    ["Half", "", 2, "", 0, 5],
    ["Wordy", "", "two", 0, 0, 5],
    ["Falling", "", 0.1, -0.1, 0, 5],
    ["Twin", "", 2, 0, 0, 10],
    ["TWIN ", "", 3, 0, 0, 10],
    ["Lost", "series 12", "", "", "", ""],
    [17, "", 1, 0, 0, 10],
  ];
  const loss = (name: string | number, frequency = 100): unknown =>
    call("CABLELOSS", name, 100, frequency, 20, "m", own);

  test("2·√100 dB per 100 m", () => expect(loss("House cable")).toBe(20));
  test("case and surplus blanks do not count", () => expect(loss("  hOuSe   cable ")).toBe(20));
  test("the table counts before a built-in type of the same name", () => expect(loss("series 6")).toBe(10));
  test("other built-in types remain", () =>
    expect(loss("series 7")).toBe(call("CABLELOSS", "series 7", 100, 100)));
  test("blanks are filled from the type it is like", () =>
    expect(loss("Borrowed")).toBe(call("CABLELOSS", "series 11", 100, 100)));
  test("a name may be a number", () => expect(loss(17)).toBe(10));

  test.each([
    ["Empty", 'The cable "Empty" has no k1, k2 and k0 in the cable table'],
    ["Half", 'The cable "Half" has a blank k2 beside other loss coefficients'],
    ["Wordy", 'k1 of cable "Wordy" is "two", which is not a number'],
    ["Falling", 'The coefficients of cable "Falling" give -9 dB per 100 m at 100 MHz'],
    ["Twin", 'The cable "TWIN" stands in more than one row'],
    ["Lost", 'The cable "Lost" is said to be like "series 12", which is not a built-in type'],
    ["none such", 'There is no cable "none such". Known are "House cable", "series 6"'],
  ])("%s", (name, words) => expect(sentence(loss(name) as never)).toContain(words));

  test("a long list of known cables is cut", () => {
    expect(sentence(call("CABLELOSS", "x", 1, 100))).toMatch(/and 4 more\. Use one of these names/);
  });

  test("a bad row of the table spoils only the rows that name it", () => {
    const result = call("CABLELOSS", [["House cable"], ["Twin"], [""], ["series 6"]], 100, 100, 20, "m", own);
    expect((result as Matrix).map(([cell]) => (typeof cell === "object" ? "fault" : cell))).toEqual([
      20,
      "fault",
      "",
      10,
    ]);
  });

  test("an error cell in the table is told to the rows that need it", () => {
    const error = { kind: "fault", code: "#N/A", message: "a broken price list" } as const;
    const broken: Matrix = [
      ["a", "series 6", "", "", "", error],
      [error, "", 1, 0, 0, 1],
      ["", "", 5, 0, 0, 1],
    ];
    expect(call("LOOPOHMS", "a", 10, 20, "m", broken)).toBe(error);
    expect(call("CABLELOSS", "a", 10, 950, 20, "m", broken)).toBe(call("CABLELOSS", "series 6", 10, 950));
    expect(sentence(call("CABLELOSS", "b", 10, 950, 20, "m", broken))).toContain(
      'Known are "a", "series 59"',
    );
  });

  test("a table of another width is refused", () => {
    expect(sentence(call("CABLELOSS", "series 6", 1, 100, 20, "m", [["a", "b"]]))).toBe(
      "cables is 1 rows by 2 columns; it must be six columns: name, like, k1, k2, k0, loop resistance.",
    );
  });

  test("copper and copper-clad steel lose the same at radio frequency", () => {
    expect(call("CABLELOSS", "series 6, copper", 30, 950)).toBe(
      call("CABLELOSS", "Series 6, Copper-clad Steel", 30, 950),
    );
  });

  test("10 000 rows against a table of 200 cables are read once, not once a row", () => {
    let reads = 0;
    const counted = Array.from({ length: 200 }, (_, i) => {
      const row: (string | number)[] = [`cable ${i}`, "", 1, 0, 0, 10];
      return new Proxy(row, {
        get: (target, key) => {
          if (key === "0") reads += 1;
          return Reflect.get(target, key) as unknown;
        },
      });
    });
    const names = Array.from({ length: 10_000 }, (_, i) => [`cable ${i % 200}`]);
    const result = call("CABLELOSS", names, 100, 100, 20, "m", counted) as Matrix;
    expect(result.every(([cell]) => cell === 10)).toBe(true);
    expect(reads).toBeLessThanOrEqual(2 * 200);
  });
});

describe("units of length and limits", () => {
  test("feet", () => {
    expect(call("CABLELOSS", "series 6", 100, 950, 20, "FT")).toBeCloseTo(
      call("CABLELOSS", "series 6", 30.48, 950) as number,
      12,
    );
  });
  test("length 0 loses nothing", () => expect(call("CABLELOSS", "series 6", 0, 950)).toBe(0));
  test.each([
    [["series 6", -1, 950], "length is -1; it must be from 0 to 100000. Check the length and its unit."],
    [["series 6", 10, 2.15], "frequency is 2.15 MHz; it must be from 5 to 3000 MHz. Give MHz, not GHz."],
    [
      ["series 6", 10, 950, 91],
      "temperature_c is 91 °C; it must be from -60 to 90 °C. Give degrees Celsius, not Fahrenheit.",
    ],
    [["series 6", 10, 950, 20, "yd"], 'unit is "yd"; it must be one of "m", "ft".'],
  ])("%j", (args, words) => expect(sentence(call("CABLELOSS", ...args))).toBe(words));
  test("a slope upside down", () =>
    expect(sentence(call("CABLESLOPE", "series 6", 10, 2150, 950))).toBe(
      "low is 2150 MHz, above high, which is 950 MHz. Give the lower value first.",
    ));
});

describe("CASCADELOSS", () => {
  test("blank rows are passed over", () =>
    expect(call("CASCADELOSS", [[4], [""], [8]], [[1], [""], [0]])).toBeCloseTo(16.0515, 4));
  test("one excess serves all", () =>
    expect(call("CASCADELOSS", [[2], [""], [2]], 0.5)).toBeCloseTo(7.0206, 4));
  test("a blank list gives a blank", () =>
    expect([call("CASCADELOSS", [[""], [null]]), call("CASCADELOSS", [[""]])]).toEqual(["", ""]));
  test("excess without ways", () =>
    expect(sentence(call("CASCADELOSS", [[4], [""]], [[1], [2]]))).toContain("Entry 2 of the list"));
  test("uneven lists", () =>
    expect(sentence(call("CASCADELOSS", [[4], [2], [2]], [[1], [2]]))).toBe(
      "excess has 2 entries where the other columns have 3. Give columns of one length.",
    ));
  test("half a splitter", () =>
    expect(sentence(call("CASCADELOSS", [[4], [2.5]]))).toContain("ways is 2.5; it must be a whole number"));
});

describe("LEVEL and WINDOW", () => {
  test("the Greek letter is as good as the micro sign", () => {
    expect(call("LEVEL", 1000, "\u03BCV", "dB\u03BCV")).toBeCloseTo(60, 12);
    expect(call("LEVEL", 1000, "\u00B5V", "dbuv")).toBeCloseTo(60, 12);
  });
  test("no voltage, no level", () =>
    expect(sentence(call("LEVEL", 0, "uV", "dBm"))).toContain("value is 0 µV; a level needs more than 0 µV"));
  test("an unheard-of unit", () =>
    expect(sentence(call("LEVEL", 0, "dBW", "dBm"))).toContain('from is "dBW"; it must be one of "dBµV"'));
  test("too great a level for a voltage has a sentence", () =>
    expect(sentence(call("LEVEL", 1e308, "dBm", "uV"))).toContain("LEVEL has no finite answer"));
  test("both ends of the window are ok, and so is a rounding error beyond them", () => {
    expect(call("WINDOW", [[47], [77], [46.999], [77.001], [0.1 + 46.9 - 1e-12]], 47, 77)).toEqual([
      ["ok"],
      ["ok"],
      ["low"],
      ["high"],
      ["ok"],
    ]);
  });
  test("a window upside down", () =>
    expect(sentence(call("WINDOW", 60, 77, 47))).toContain(
      "low is 77, above high, which is 47. Give the lower value first.",
    ));
});

describe("TREELOSS and TREEROOT", () => {
  const words = (rows: Matrix): unknown[] =>
    rows.map(([cell]) =>
      typeof cell === "object" && cell !== null ? (cell as { message: string }).message : cell,
    );
  const column = (...values: (string | number)[]): Matrix => values.map((value) => [value]);

  test("several columns are summed side by side, and blank rows stay blank", () => {
    const result = call("TREELOSS", column("a", "", "b", "c"), column("", "", "A", " b "), [
      [1, 10],
      [0, 0],
      [2, 20],
      [-4, 40],
    ]);
    expect(result).toEqual([
      [1, 10],
      ["", ""],
      [3, 30],
      [-1, 70],
    ]);
  });

  test("a bad loss spoils its own column below it and no other", () => {
    const result = call("TREELOSS", column("a", "b", "c"), column("", "a", "b"), [
      [1, 1],
      ["x", 1],
      [1, 1],
    ]) as Matrix;
    expect(result.map((row) => row[1])).toEqual([1, 2, 3]);
    expect(words(result)).toEqual([
      1,
      'own_losses is "x", which is not a number. Enter a number from -200 to 1000 dB.',
      '"c" hangs below "b", whose own row has a fault. Put the row of "b" right first.',
    ]);
  });

  test("a bad loss is named all the way down", () => {
    const result = call("TREELOSS", column("a", "b", "c"), column("", "a", "b"), column("x", 1, 1)) as Matrix;
    expect(words(result).slice(1)).toEqual([
      '"b" hangs below "a", whose own row has a fault. Put the row of "a" right first.',
      '"c" hangs below "a", whose own row has a fault. Put the row of "a" right first.',
    ]);
  });

  test("a row without a loss", () => {
    const result = call("TREELOSS", column("a", "b"), column("", "a"), column(1, "")) as Matrix;
    expect(words(result)).toEqual([1, "Own loss of b is missing. Enter a number in dB."]);
  });

  test("each bad row says what is wrong with it", () => {
    const ids = column("a", "b", "c", "d", "e", "f", "f", "g", "H1", "");
    const fed = column("", "x", "d", "c", "c", "a", "a", "f", "", "a");
    expect(words(call("TREEROOT", ids, fed, column("H1")) as Matrix)).toEqual([
      "a",
      '"b" is fed from "x", which is neither an id of this tree nor one of its tops. Check the spelling, or leave it blank for a row fed straight from the top.',
      'The rows "c", "d" feed one another in a loop, each fed from the next. Feed one of them from outside the loop.',
      'The rows "c", "d" feed one another in a loop, each fed from the next. Feed one of them from outside the loop.',
      '"e" hangs below "c", whose own row has a fault. Put the row of "c" right first.',
      'The id "f" is given to more than one row. Give every row its own id.',
      'The id "f" is given to more than one row. Give every row its own id.',
      '"g" hangs below "f", whose own row has a fault. Put the row of "f" right first.',
      'The id "H1" is also the name of a top, such as a head unit. Give the row another id.',
      "ids is missing. Enter an id for every row that is fed.",
    ]);
  });

  test("tops start at 0 and give their name as it is written there; numbers are names", () => {
    const ids = column(1, 2);
    const fed = column("HEAD unit  a", 1);
    expect(call("TREEROOT", ids, fed, column("Head unit A"))).toEqual([["Head unit A"], ["Head unit A"]]);
    expect(call("TREELOSS", ids, fed, column(5, 6), column("Head unit A"))).toEqual([[5], [11]]);
  });

  test("columns of uneven length", () => {
    expect(sentence(call("TREEROOT", column("a", "b"), column("", "a", "a")))).toContain("ids has 2 entries");
    expect(sentence(call("TREELOSS", column("a", "b"), column("", "a"), column(1)))).toContain(
      "own_losses has 1",
    );
  });
});

describe("dish, rain and noise", () => {
  test("rain's tilt, left out, is that of circular polarisation: midway between the printed k and α of both", () => {
    const { kH, alphaH, kV, alphaV } = publishedCheck("p838-12").expected as Record<string, number>;
    const k = (kH! + kV!) / 2;
    const alpha = (kH! * alphaH! + kV! * alphaV!) / (2 * k);
    const expected = k * 30 ** alpha;
    expect(Math.abs((call("RAINSPECIFIC", 12000, 30, 40) as number) / expected - 1)).toBeLessThan(1e-4);
  });
  test("SUMLEVEL passes blanks over and hands on the first fault", () => {
    expect(call("SUMLEVEL", [[60], [""], [60]])).toBeCloseTo(63.0103, 4);
    expect(call("SUMLEVEL", [[""], [null]])).toBe("");
    expect(sentence(call("SUMLEVEL", [[60], ["x"]]))).toContain('levels is "x"');
  });
  test("a rate that the sheet has turned into a date says so", () => {
    const sentenceOf = sentence(call("NEEDEDCN", "DVB-S2", "QPSK", 46085));
    expect(sentenceOf).toContain('The table here has no DVB-S2 QPSK with code rate "46085"');
    expect(sentenceOf).toContain("a sheet turns 3/4 into a date");
    expect(call("NEEDEDCN", "dvb-s2", "qpsk", 0.75)).toBe(4.03);
  });
  test("a modulation that the older standard lacks", () =>
    expect(sentence(call("NEEDEDCN", "DVB-S", "8PSK", "3/4"))).toBe(
      "DVB-S has no 8PSK. Give QPSK, or DVB-S2 as the standard.",
    ));
  test("a dish aimed at another slot", () =>
    expect(sentence(call("POINTLOSS", 2, 2))).toBe(
      "error_deg is 2 deg; for this beamwidth it must be from -1.4142136 to 1.4142136 deg, beyond which the main lobe ends. Aim the dish better, or check the beamwidth.",
    ));
  test.each([
    [["RAINFADE", 40, 4.9, 12500, 40, 0.01, 3], "elevation is 4.9 deg; it must be from 5 to 90 deg"],
    [
      ["RAINFADE", 40, 40, 12.5, 40, 0.01, 3],
      "frequency is 12.5 MHz; it must be from 1000 to 55000 MHz. Give MHz, not GHz.",
    ],
    [["RAINFADE", 40, 40, 12500, 40, 99.9, 3], "Give a percentage: 0.1 for 99.9 % availability"],
    [["DISHGAIN", 1, 12500, 55], "Give a fraction, such as 0.6, not a percentage"],
    [["NOISETEMP", -1], "noise_figure is -1 dB; it must be from 0 to 50 dB"],
    [["WIREOHMS", 18.5, 10], "awg is 18.5; it must be a whole number from -3 to 40"],
  ] as const)("%j", ([name, ...args], words) => expect(sentence(call(name, ...args))).toContain(words));
});
