/** What is said of two figures in each other's place, each finding whole and each bound on both sides. */
import type { WorkbookDefinition } from "../../src/workbooks/definition";
import { crossedFigures } from "../../src/review/rules/crossedFigures";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

const said = (blocks: Parameters<typeof smallBook>[0]): string[] =>
  messages(crossedFigures, smallBook(blocks));

describe("a field beside its bound", () => {
  const fields = (values: Parameters<typeof smallBook>[1]) => found(crossedFigures, smallBook({}, values));
  const CROSSED = {
    weight: "wrong",
    effect: "What is predicted from them is wrong.",
    remedy: "Compare both with the site and the standard.",
  };
  test("two that are exchanged, told at both", () => {
    const [cold, hot] = [atField("site_cold"), atField("site_hot")];
    expect(fields({ site_cold: 55, site_hot: -15 })).toStrictEqual([
      {
        ...CROSSED,
        place: cold,
        message: "Coldest cable is 55 °C, and the hottest cable is -15.",
        expected: "Below it: were the two typed in each other's cell?",
        undoing: [
          { place: cold, value: -15 },
          { place: hot, value: 55 },
        ],
        isGuess: true,
      },
      {
        ...CROSSED,
        place: hot,
        message: "Hottest cable is -15 °C, and the coldest cable is 55.",
        expected: "Above it: were the two typed in each other's cell?",
        undoing: [
          { place: hot, value: 55 },
          { place: cold, value: -15 },
        ],
        isGuess: true,
      },
    ]);
  });
  // Both cables are taken at -60 to 90 °C: what lies outside cannot have been meant for the other's cell.
  test.each([
    [90, -15, true],
    [91, -15, false],
    [20, -60, true],
    [20, -61, false],
  ])("%d and %d: exchanged %s", (site_cold, site_hot, isExchanged) => {
    const own = fields({ site_cold, site_hot }).map((finding) => "undoing" in finding);
    expect(own).toEqual(isExchanged ? [true, true] : site_cold > 90 ? [false, true] : [true, false]);
  });
  test.each<[Parameters<typeof smallBook>[1], number]>([
    [{ site_cold: 54, site_hot: 55 }, 0],
    [{ site_cold: 55, site_hot: 55 }, 2],
    [{ site_cold: "55", site_hot: -15 }, 0],
    [{ site_cold: 55 }, 0],
    [{ site_hot: 55 }, 0],
    // The design floor may be the minimum level.
    [{ site_level_low: 47, site_level_design: 47 }, 0],
    [{ site_level_low: 47, site_level_design: 46.9 }, 1],
    [{ site_level_low: 47, site_level_high: 77 }, 0],
    [{ site_level_low: 77, site_level_high: 47 }, 2],
  ])("%j: %d findings", (values, count) => expect(fields(values)).toHaveLength(count));
  test("one that may be as great as its bound", () => {
    const rule = { kind: "number", atMost: { name: "site_high", words: "the most", orEqual: true } };
    const few = {
      sheets: [
        {
          name: "S",
          parts: [
            { kind: "fields", fields: [{ name: "site_low", label: "Low", input: { what: "Low", rule } }] },
          ],
        },
      ],
    };
    const of = (site_low: number) =>
      messages(crossedFigures, smallBook({}, { site_low, site_high: 9 }), {
        definition: few as unknown as WorkbookDefinition,
      });
    expect([of(8), of(9), of(10)]).toEqual([[], [], ["Low is 10, and the most is 9."]]);
  });
  test("two that are equal are told, and nothing is exchanged", () =>
    expect(fields({ site_cold: 55, site_hot: 55 })[0]).not.toHaveProperty("undoing"));
});

describe("a likely figure between its least and its most", () => {
  const RANGE = {
    weight: "wrong",
    effect: "The price and its range go by these figures.",
    remedy: "Compare with the survey; correct the one that is off.",
  };
  /** The likely one, the least and the most of a work. */
  const work = (minutes: number | string, low: number | string, high: number | string) =>
    found(
      crossedFigures,
      smallBook({
        labour: [
          { name: "Other work", minutes: 10, low: 8, high: 12 },
          { name: "Fit", minutes, low, high },
        ],
      }),
    );
  const cell = (column: string) => at(`labour_${column}`, 2);

  test.each([
    [10, 8, 12],
    [8, 8, 12],
    [12, 8, 12],
    [10, 10, 10],
    [10, 8, 50],
    [10, "", ""],
    ["", 8, 12],
    ["", "", ""],
    // A work of no time has no factor.
    [0, 0, 12],
  ])("%j in %j to %j: nothing", (minutes, low, high) => expect(work(minutes, low, high)).toEqual([]));

  test("one of the two blank", () => {
    const blank = {
      ...RANGE,
      message: "Fit: of the least and the most one is blank.",
      expected: "Both, or neither.",
    };
    expect(work(10, "", 12)).toStrictEqual([{ ...blank, place: cell("low") }]);
    expect(work(10, 8, "")).toStrictEqual([{ ...blank, place: cell("high") }]);
  });
  test("least and most exchanged, the likely one between them or blank", () => {
    const exchanged = {
      ...RANGE,
      place: cell("low"),
      message: "Fit: the least is 12 and the most 8.",
      expected: "The least first.",
      undoing: [
        { place: cell("low"), value: 8 },
        { place: cell("high"), value: 12 },
      ],
    };
    for (const minutes of [10, 8, ""]) expect(work(minutes, 12, 8)).toStrictEqual([exchanged]);
  });
  test("a most under both others is the one that is off", () => {
    const off = (likely: number) => ({
      ...RANGE,
      place: cell("high"),
      message: `Fit: the most is 8, under the least of 12 and the likely ${likely}.`,
      expected: "The most of the three.",
      usual: { low: likely, high: likely * 1.5 },
    });
    expect(work(20, 12, 8)).toStrictEqual([off(20)]);
    expect(work(12, 12, 8)).toStrictEqual([off(12)]);
  });
  test("a least over both others is", () =>
    expect(work(6, 12, 8)).toStrictEqual([
      {
        ...RANGE,
        place: cell("low"),
        message: "Fit: the least is 12 and the most 8.",
        expected: "The least first.",
      },
    ]));
  test("a likely one outside", () => {
    const outside = {
      ...RANGE,
      place: cell("minutes"),
      expected: "Between the two.",
      usual: { low: 8, high: 12 },
    };
    expect(work(7, 8, 12)).toStrictEqual([{ ...outside, message: "Fit: 7 is under its least of 8." }]);
    expect(work(13, 8, 12)).toStrictEqual([{ ...outside, message: "Fit: 13 is over its most of 12." }]);
  });
  test("a most beyond five times the likely one", () =>
    expect(work(10, 8, 51)).toStrictEqual([
      {
        ...RANGE,
        weight: "doubtful",
        place: cell("high"),
        message: "Fit: the most is 51, 5.1 times the likely 10.",
        expected: "Seldom more than 15: is the point in its place?",
        usual: { low: 10, high: 15 },
      },
    ]));

  test.each([
    ["routes", "minutes", "low", "high", "name"],
    ["rooms", "run", "shortest", "longest", "outlet"],
    ["types", "run", "shortest", "longest", "name"],
  ])("of %s as well", (block, of, least, most, name) => {
    const row = { [name]: "x", [of]: 13, [least]: 8, [most]: 12 };
    expect(said({ [block]: [row] })).toEqual(["x: 13 is over its most of 12."]);
  });
  test("of a run one may be blank: it is the tolerance on Site", () => {
    const run = (row: Row) => said({ rooms: [{ outlet: "x", ...row }], types: [{ name: "y", ...row }] });
    expect(run({ run: 10, shortest: "", longest: 12 })).toEqual([]);
    expect(run({ run: 10, shortest: 8, longest: "" })).toEqual([]);
    expect(found(crossedFigures, smallBook({ rooms: [{ outlet: "x", run: 7, shortest: 8 }] }))).toStrictEqual(
      [
        {
          ...RANGE,
          place: at("rooms_run", 1),
          message: "x: 7 is under its least of 8.",
          expected: "Between the two.",
        },
      ],
    );
    expect(
      found(crossedFigures, smallBook({ rooms: [{ outlet: "x", run: 13, longest: 12 }] }))[0],
    ).not.toHaveProperty("usual");
    expect(said({ rooms: [{ outlet: "x", run: 10, longest: 51 }] })).toEqual([
      "x: the most is 51, 5.1 times the likely 10.",
    ]);
  });
  test("a row without a name is not looked at", () =>
    expect(said({ rooms: [{ outlet: "", run: 13, longest: 12 }] })).toEqual([]));
});

describe("losses", () => {
  const passive = (row: Row) =>
    found(crossedFigures, smallBook({ passives: [{ name: "part", kind: "splitter", ways: 4, ...row }] }));
  // Ten times the logarithm of 4 is 6.02; makers round it down by 0.3 at most.
  const splitter = (low: number, high: number) => passive({ port_low: low, port_high: high });
  const PARTED = {
    weight: "wrong",
    expected: "More than 6.0 dB: that much is lost by parting power into 4.",
    effect: "Every outlet behind it seems to get too much.",
    remedy: "Take the figure from the maker's sheet for this number of ways.",
  };
  const ENDS = {
    weight: "doubtful",
    expected: "More at the highest frequency, as devices of this kind do (common practice, no source).",
    effect: "The far outlets' level at the highest frequency is predicted too high.",
    remedy: "Were the two typed in each other's columns? Compare with the maker's sheet.",
  };
  test("a splitter that loses less than parting power costs", () => {
    expect(splitter(3.5, 8)).toStrictEqual([
      { ...PARTED, place: at("passives_port_low", 1), message: "part is said to lose 3.5 dB to a port." },
    ]);
    expect(splitter(8, 3.5)).toStrictEqual([
      { ...PARTED, place: at("passives_port_high", 1), message: "part is said to lose 3.5 dB to a port." },
    ]);
    expect([splitter(5.73, 8), splitter(5.72, 8).length]).toEqual([[], 1]);
  });
  test("a splitter of one way, or of none said, parts nothing; nor does a tap", () => {
    for (const row of [{ ways: 1 }, { ways: "" }, { kind: "tap" }, { kind: "" }] as Row[])
      expect(passive({ port_low: 0, port_high: 0, ...row })).toEqual([]);
    expect(passive({ port_low: 2.6, port_high: 3, ways: 2 })).toHaveLength(1);
    expect(passive({ port_low: 3.5, port_high: 8, kind: "Splitter" })).toHaveLength(1);
  });
  test("a tap that loses more through than to its port", () => {
    const tap = (low: number, through: number | string) =>
      passive({ kind: "tap", port_low: low, port_high: 20, through_low: through });
    expect(tap(2, 15)).toStrictEqual([
      {
        weight: "doubtful",
        place: at("passives_port_low", 1),
        message: "part is said to lose 2 dB to a port and 15 dB through.",
        expected: "A tap loses more to its port than through.",
        effect: "Its outlets seem to get too much, and all behind it too little.",
        remedy: "Were the two typed in each other's columns? Compare with the maker's sheet.",
      },
    ]);
    expect([tap(2, 2), tap(2, "")]).toEqual([[], []]);
    expect(passive({ port_low: 7, port_high: 8, through_low: 9 })).toEqual([]);
  });
  test("more at the lowest frequency than at the highest, beyond a meter's tolerance", () => {
    const message = "part is said to lose 9 dB at the lowest frequency and 8 dB at the highest.";
    expect(splitter(9, 8)).toStrictEqual([{ ...ENDS, place: at("passives_port_low", 1), message }]);
    expect([splitter(8.04, 8), splitter(8.06, 8).length]).toEqual([[], 1]);
    const plate = (low: number | string, high: number | string) =>
      found(crossedFigures, smallBook({ plates: [{ name: "plate", loss_low: low, loss_high: high }] }));
    expect(plate(9, 8)).toStrictEqual([
      { ...ENDS, place: at("plates_loss_low", 1), message: message.replace("part", "plate") },
    ]);
    expect([plate(8.04, 8), plate(8.06, 8).length, plate(9, ""), plate("", 8), plate(8, 9)]).toEqual([
      [],
      1,
      [],
      [],
      [],
    ]);
  });
  test("one of the two blank: nothing", () => {
    expect(passive({ port_low: 3.5, port_high: "" })).toEqual([]);
    expect(passive({ port_low: "", port_high: 3.5 })).toEqual([]);
  });
});
