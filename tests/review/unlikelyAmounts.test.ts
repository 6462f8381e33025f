/** What is said of amounts far beyond what is usual: each finding whole, in metres and in feet. */
import { unlikelyAmounts } from "../../src/review/rules/unlikelyAmounts";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const of = (blocks: Readonly<Record<string, readonly Row[]>>, fields: Row = {}) =>
  found(unlikelyAmounts, smallBook({ rooms: [{ outlet: "a" }], ...blocks }, fields));
const field = (name: string, value: number | string, unit = "m") =>
  of({}, { [name]: value, site_unit: unit });

describe("beyond the usual range of its kind", () => {
  const UNUSUAL = {
    weight: "doubtful",
    effect: "Price or prediction go by it.",
    remedy: "Look at the figure and its unit; say on Log why, if it is right.",
  };
  test("a share, told in percent", () =>
    expect(field("site_tax", 0.31)).toStrictEqual([
      {
        ...UNUSUAL,
        place: atField("site_tax"),
        message: "Tax is 31 %.",
        expected: "Usually at most 30 % no country's tax on such work is higher (from memory).",
      },
    ]));
  test("a row, with what would be usual", () =>
    expect(of({ taxes: [{ name: "Low", rate: 0.01 }] })).toStrictEqual([
      {
        ...UNUSUAL,
        place: at("taxes_rate", 1),
        message: "Rate of Low is 1 %.",
        expected: "Usually at least 2 % of countries' reduced rates (from memory).",
        usual: { low: 0.02, high: 0.3 },
      },
    ]));
  test("pieces, of which there is one at least", () =>
    expect(of({ rooms: [{ outlet: "a", quantity: 5 }] })).toMatchObject([
      {
        message: "How many of a is 5.",
        expected: "Usually at most 4 receivers at one outlet (common practice, no source).",
        usual: { low: 1, high: 4 },
      },
    ]));
  test("lengths, which lie within a factor of fifty", () => {
    const [metres] = field("site_slack", 11);
    expect(metres).toMatchObject({
      message: "Slack added to each run is 11.",
      expected: "Usually at most 10 (common practice, no source).",
      usual: { low: 0.2, high: 10 },
    });
    // 10 m are 32.808 ft.
    const [feet] = field("site_slack", 33, "ft");
    expect(feet!.expected).toBe("Usually at most 32.8 (common practice, no source).");
    expect(feet!.usual!.high).toBeCloseTo(32.808, 9);
    expect(feet!.usual!.low).toBeCloseTo(0.65616, 9);
  });
  test("minutes for each foot", () => {
    const route = (minutes: number) => of({ routes: [{ name: "duct", minutes }] }, { site_unit: "ft" });
    // 15 and 0.1 minutes for each metre are 4.572 and 0.0305 for each foot.
    expect(route(4.58)[0]!.expected).toBe("Usually at most 4.57 (common practice, no source).");
    expect(route(0.03)[0]!.expected).toBe("Usually at least 0.0305 (common practice, no source).");
    expect([route(4.57), route(0.031)]).toEqual([[], []]);
  });
  test.each<[string, number | string, string, boolean]>([
    ["site_tax", 0.3, "m", false],
    ["site_tax", "much", "m", false],
    ["site_slack", 10, "m", false],
    ["site_slack", 11, "ft", false],
    ["site_dish", 0.3, "m", false],
    ["site_dish", 0.29, "m", true],
    ["site_dish", 4, "m", false],
    // Its size has no unit to change.
    ["site_dish", 4.1, "ft", true],
    ["site_dish", 0, "m", false],
    ["site_dish", -1, "m", false],
    ["site_clearance", 0, "m", true],
    ["site_clearance", -1, "m", false],
    ["site_hot", -5, "m", true],
    ["site_hot", 9, "m", true],
    ["site_availability", 99.4, "m", true],
    ["site_height", 99_999, "m", false],
  ])("%s of %j in %s", (name, value, unit, told) =>
    expect(field(name, value, unit)).toHaveLength(told ? 1 : 0),
  );
  test("with a least alone nothing says what is usual", () =>
    expect(field("site_availability", 99.4)[0]).not.toHaveProperty("usual"));
  test("factors may lie below one, within a half", () =>
    expect(of({ labour: [{ name: "W", difficulty: 0.4 }] })[0]!.usual).toEqual({ low: 0.5, high: 3 }));
  test("a row without a name, and no job: nothing", () => {
    expect(of({ taxes: [{ name: "", rate: 0.01 }] })).toEqual([]);
    expect(found(unlikelyAmounts, smallBook({}, { site_tax: 0.31 }))).toEqual([]);
  });
});

describe("minutes of work on a piece", () => {
  const work = (minutes: number, piece = "Connector") => of({ labour: [{ name: "Crimp", minutes, piece }] });
  test("out of their range", () =>
    expect(work(20.5)).toStrictEqual([
      {
        weight: "doubtful",
        place: at("labour_minutes", 1),
        message: "Crimp takes 20.5 minutes for each connector.",
        expected: "Usually 1 to 20 minutes (common practice, no source).",
        usual: { low: 1, high: 20 },
        effect: "All of them are charged so.",
        remedy:
          "Look at the figure and its unit: minutes, of the whole crew; say on Log why, if it is right.",
      },
    ]));
  test.each<[number, string, number]>([
    [0.9, "connector", 1],
    [1, "connector", 0],
    [20, "connector", 0],
    [0, "connector", 0],
    [900, "", 0],
    [900, "floor", 0],
  ])("%d for each “%s”", (minutes, piece, wanted) => expect(work(minutes, piece)).toHaveLength(wanted));
});

describe("minutes to fix a length", () => {
  const route = (minutes: number | string, name = "On the wall", unit = "m") =>
    of({ routes: [{ name, minutes }] }, { site_unit: unit });
  test("too few for it", () => {
    const SHORT = {
      weight: "doubtful",
      place: at("routes_minutes", 1),
      message: "On the wall takes 0.79 minutes for each length.",
      expected:
        "Usually at least 0.8 where a cable is fixed (common practice, no source): was it for a foot, or a point lost?",
      effect: "Every cable of this route is charged so.",
      remedy:
        "Look at the figure and its unit: minutes of the whole crew, for a metre or a foot as Site says.",
    };
    expect(route(0.79)).toStrictEqual([SHORT]);
    // 0.8 / 3.2808 = 0.2438
    expect(route(0.24, "On the wall", "ft")).toStrictEqual([
      {
        ...SHORT,
        message: "On the wall takes 0.24 minutes for each length.",
        expected: SHORT.expected.replace("0.8", "0.24"),
      },
    ]);
  });
  test("enough, none, or a cable that is laid: nothing", () =>
    expect([
      route(0.8),
      route(0.25, "On the wall", "ft"),
      route(""),
      route(0),
      route(0.5, "In a DUCT"),
    ]).toEqual([[], [], [], [], []]));
});

describe("limits looser than the standard's", () => {
  const LOOSE = {
    weight: "wrong",
    effect: "Outlets pass that the standard fails.",
    remedy: "Enter the standard's limit, or a stricter one.",
  };
  test("the least and the most", () =>
    expect(of({}, { site_level_low: 46.9, site_level_high: 77.1 })).toStrictEqual([
      {
        ...LOOSE,
        place: atField("site_level_low"),
        message: "The limit that all outlets are held to is 46.9 dBµV.",
        expected: "47 dBµV or more (EN 60728-1, from memory).",
      },
      {
        ...LOOSE,
        place: atField("site_level_high"),
        message: "The limit that all outlets are held to is 77.1 dBµV.",
        expected: "77 dBµV or less (EN 60728-1, from memory).",
      },
    ]));
  test("as they are, or words: nothing", () => {
    expect(of({}, { site_level_low: 47, site_level_high: 77 })).toEqual([]);
    expect(of({}, { site_level_low: "low" })).toEqual([]);
  });
});

describe("pieces in packs of one", () => {
  const parts = (needed: number | undefined, sum: number | string, pack: number | string = 1) =>
    of({
      fittings: [{ name: "Dish" }, { name: "Clip", pack }],
      fittings_bought: [
        { needed: 1, sum: 30 },
        { needed, sum },
      ],
      cables_bought: [{ sum: 40 }, { sum: "?" }],
      resistors_bought: [{ sum: 5 }],
    });
  test("by the dozen, and more than a quarter of all", () =>
    // 30 + 40 + 5 + 25.01 = 100.01
    expect(parts(50, 25.01)).toStrictEqual([
      {
        weight: "doubtful",
        place: at("fittings_pack", 2),
        message: "50 pieces of Clip in packs of 1 come to 25.01, 25 % of all materials.",
        expected: "The number of pieces for which the price is.",
        effect: "Each piece is priced as a pack.",
        remedy: "Look up how many are in a pack.",
      },
    ]));
  test.each<[number | undefined, number | string, number | string]>([
    [49, 90, 1],
    [50, 25, 1],
    [50, 90, 2],
    [50, 90, ""],
    [undefined, 90, 1],
    [50, "?", 1],
  ])("%j for %j in packs of %j: nothing", (needed, sum, pack) =>
    expect(parts(needed, sum, pack)).toEqual([]),
  );
  test("where nobody knows how many are bought: nothing", () =>
    expect(of({ fittings: [{ name: "Clip", pack: 1 }] })).toEqual([]));
});

describe("head units in packs", () => {
  const unit = (pack: number | string, price: number | string) =>
    of({ units: [{ name: "Q1", pack, price }] });
  test("are likely another figure", () =>
    expect(unit(2, 50)).toStrictEqual([
      {
        weight: "doubtful",
        place: at("units_pack", 1),
        message: "Q1 is said to come in packs of 2.",
        expected: "Blank: head units are sold one by one (common practice, no source).",
        undoing: [{ place: at("units_pack", 1) }],
        effect: "More are bought than are needed.",
        remedy: "Clear it, unless the supplier sells them so.",
      },
    ]));
  test("one, none, or of little price: nothing", () =>
    expect([unit(1, 90), unit("", 90), unit(2, 49.9), unit(2, "")]).toEqual([[], [], [], []]));
});

test("a part of an option", () =>
  expect(of({ options: [{ quantity: 1.5 }, { quantity: 2 }, { quantity: "two" }] })).toStrictEqual([
    {
      weight: "worth knowing",
      place: at("options_quantity", 1),
      message: "An option is counted 1.5 times.",
      remedy: "Enter a whole number if pieces are meant.",
    },
  ]));
