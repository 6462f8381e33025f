/** What is said of figures, words and counts that are not those of the firm's standards. */
import type { Finding } from "../../src/review/finding";
import type { FirmSays } from "../../src/review/ranges/firm";
import { unlikeStandards } from "../../src/review/rules/unlikeStandards";
import { at, atField, found, smallBook, type Row } from "./smallBook";

type Blocks = Readonly<Record<string, readonly Row[]>>;
type Rows = FirmSays["rows"];

/** What a job is told whose firm has these. */
const told = (blocks: Blocks, rows: Rows, fields: Row = {}, firms: FirmSays["fields"] = {}): Finding[] =>
  found(unlikeStandards, smallBook({ rooms: [{ outlet: "a" }], ...blocks }, fields), {
    options: { marginFloor: 0, standards: { called: "F", fields: firms, rows, learned: [] } },
  });
/** Of one field. */
const field = (name: string, value: number | string, theirs: number | string, more: Row = {}) =>
  told({}, {}, { [name]: value, ...more }, { [name]: theirs });
/** Of one row of a list. */
const row = (block: string, own: Row, theirs: Rows[string][string], fields: Row = {}) => {
  const named = block === "receivers" ? "kind" : "name";
  return told({ [block]: [{ [named]: "P", ...own }] }, { [block]: { P: theirs } }, fields);
};

const DOUBTFUL = {
  weight: "doubtful",
  remedy: "Take the standards' figure, or say on Log why this job has its own.",
};
const BY_PRICE = "The whole price goes by it.";
const GOES_BY_IT = "The price or the prediction goes by it.";
const BEHIND = "What is predicted for everything behind it goes by it.";
const EACH_BOUGHT = "Each that is bought carries it into the price.";
const OTHERWISE = "It is counted, taxed or worked out otherwise.";

describe("a field", () => {
  test("a margin that is the mark-up for the firm's own, and one that is far from it", () => {
    const MARGIN = { ...DOUBTFUL, place: atField("site_margin"), meant: 0.22, effect: BY_PRICE };
    // 0.22 / 0.78 = 0.28205
    expect(field("site_margin", 0.282, 0.22)).toStrictEqual([
      {
        ...MARGIN,
        message: "Margin is 28.2 %; the firm's standards (F) have 22 %.",
        expected: "22 %: 28.2 % is the mark-up on cost that gives this margin of the price.",
      },
    ]);
    expect(field("site_margin", 0.264, 0.22)).toStrictEqual([
      { ...MARGIN, message: "Margin is 26.4 %; the firm's standards (F) have 22 %.", expected: "22 %" },
    ]);
  });
  test.each<[string, number, number, string | undefined]>([
    ["site_margin", 0.263, 0.22, undefined],
    ["site_margin", 0.2802, 0.22, "22 %: 28.2 % is the mark-up"],
    ["site_margin", 0.2799, 0.22, "22 %"],
    ["site_margin", 0.284, 0.22, "22 %: 28.2 % is the mark-up"],
    ["site_margin", 0.2842, 0.22, "22 %"],
    ["site_margin", 0, 0.22, "22 %"],
    ["site_overhead", 0.25, 0.2, "20 %"],
    ["site_contingency", 0.06, 0.05, "5 %"],
    ["site_contingency", 0.059, 0.05, undefined],
    ["site_tax", 0.2, 0.25, "25 %"],
    ["labour_rate", 48, 40, "40"],
    ["labour_rate", 47, 40, undefined],
    ["labour_rate", 33, 40, "40"],
    // Looser limits, however little; of the weather by more than 4 °C.
    ["site_level_low", 46.9, 47, "47, or a stricter one."],
    ["site_level_low", 50, 47, undefined],
    ["site_level_high", 77.1, 77, "77, or a stricter one."],
    ["site_level_high", 70, 77, undefined],
    ["site_clearance", 2, 3, "3, or a stricter one."],
    ["site_clearance", 3, 2, undefined],
    ["site_availability", 99.6, 99.7, "99.7, or a stricter one."],
    ["site_noise_margin", 1, 2, "2, or a stricter one."],
    ["site_cold", -16, -20, undefined],
    ["site_cold", -15, -20, "-20, or a stricter one."],
    ["site_cold", -40, -20, undefined],
    ["site_hot", 56, 60, undefined],
    ["site_hot", 55, 60, "60, or a stricter one."],
    ["commission_tolerance", 3, 2, "2, or a stricter one."],
    ["commission_tolerance", 2, 3, undefined],
    ["commission_volts_tolerance", 1.5, 1, "1, or a stricter one."],
    // Other figures: half as much again.
    ["crew_hours", 12, 8, "8"],
    ["crew_hours", 11.9, 8, undefined],
    ["crew_hours", 5, 8, "8"],
    ["site_slack", 3, 0, "0"],
    // The job's own.
    ["site_run_tolerance", 0.5, 0.1, undefined],
    ["site_level_design", 40, 60, undefined],
    ["site_decimals", 0, 2, undefined],
  ])("%s of %d where the firm has %d", (name, value, theirs, expected) => {
    const [finding] = field(name, value, theirs);
    if (expected === undefined) expect(finding).toBeUndefined();
    else if (expected.endsWith("mark-up")) expect(finding!.expected).toMatch(expected);
    else expect(finding).toMatchObject({ expected, meant: theirs });
  });
  test("what each kind of figure leads to", () => {
    expect(field("site_level_low", 37, 47)[0]!.effect).toBe("What the firm would not hand over passes.");
    expect(field("crew_hours", 12, 8)[0]!.effect).toBe(GOES_BY_IT);
    expect(field("site_overhead", 0.3, 0.2)[0]!.effect).toBe(BY_PRICE);
  });
  test("a word that is the firm's to choose", () => {
    expect(field("site_tax_on", "labour only", "materials only")).toStrictEqual([
      {
        ...DOUBTFUL,
        place: atField("site_tax_on"),
        message: "Tax is on is “labour only”; the firm's standards (F) have “materials only”.",
        expected: "“materials only”",
        meant: "materials only",
        effect: OTHERWISE,
      },
    ]);
    expect(field("site_rounding", "half even", "half away")).toHaveLength(1);
  });
  test.each<[string, number | string, number | string]>([
    ["site_tax_on", "Labour only ", "labour only"],
    ["site_tax_on", "", "labour only"],
    ["site_tax_on", 5, "labour only"],
    ["site_currency", "EUR", "GBP"],
    ["site_unit", "ft", "m"],
    ["site_cut_at", "likely", "longest"],
    ["site_usual_cable", "thin", "thick"],
    ["tax_class_labour", "work", "reduced"],
    ["crew_hours", "", 8],
    ["crew_hours", "many", 8],
  ])("%s of %j where the firm has %j: nothing", (name, value, theirs) =>
    expect(field(name, value, theirs)).toEqual([]),
  );
  test("what is on purpose, and what the firm says nothing of: nothing", () => {
    const listed = { onpurpose: [{ what: "Margin", why: "a friend" }] };
    expect(told(listed, {}, { site_margin: 0.1 }, { site_margin: 0.22 })).toEqual([]);
    expect(told({}, {}, { site_margin: 0.1 }, {})).toEqual([]);
  });
  test("without a job, and without standards: nothing", () => {
    const book = smallBook({}, { site_margin: 0.1 });
    const standards = { called: "F", fields: { site_margin: 0.22 }, rows: {}, learned: [] };
    expect(found(unlikeStandards, book, { options: { marginFloor: 0, standards } })).toEqual([]);
    expect(found(unlikeStandards, smallBook({ rooms: [{ outlet: "a" }] }, { site_margin: 0.1 }))).toEqual([]);
  });
  test("the standards that the job took serve where none are given", () => {
    const taken = [{ list: "fields", line: "site_margin", values: '{"value":0.22}' }];
    const read = smallBook({ rooms: [{ outlet: "a" }], taken }, { site_margin: 0.1 });
    expect(found(unlikeStandards, read)[0]!.message).toBe(
      "Margin is 10 %; the firm's standards (the firm) have 22 %.",
    );
    const { areThere } = unlikeStandards.needs!;
    const standards = { called: "F", fields: {}, rows: {}, learned: [] };
    expect(areThere({ read, options: { marginFloor: 0 } })).toBe(true);
    expect(areThere({ read: smallBook({}), options: { marginFloor: 0 } })).toBe(false);
    expect(areThere({ read: smallBook({}), options: { marginFloor: 0, standards } })).toBe(true);
  });
  test("money in another currency, and lengths in another unit, are not compared", () => {
    const own = { sites: [{ name: "P", cost: 90 }], routes: [{ name: "P", minutes: 9 }] };
    const rows: Rows = { sites: { P: { cost: 10 } }, routes: { P: { minutes: 1 } } };
    const labels = (currency: string, unit: string) =>
      told(
        own,
        rows,
        { labour_rate: 90, site_slack: 9, crew_hours: 16, site_currency: currency, site_unit: unit },
        { labour_rate: 10, site_slack: 1, crew_hours: 8, site_currency: "GBP", site_unit: "m" },
      ).map(({ place }) => place!.sheet);
    expect(labels("gbp", "M")).toEqual([
      "site_slack",
      "labour_rate",
      "crew_hours",
      "routes_minutes",
      "sites_cost",
    ]);
    expect(labels("EUR", "m")).toEqual(["site_slack", "crew_hours", "routes_minutes"]);
    expect(labels("GBP", "ft")).toEqual(["labour_rate", "crew_hours", "sites_cost"]);
  });
});

describe("a row of a list", () => {
  test("is told by its name and its column", () =>
    expect(row("labour", { minutes: 15 }, { minutes: 10 })).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("labour_minutes", 1),
        message: "Minutes each of P is 15; the firm's standards (F) have 10.",
        expected: "10",
        meant: 10,
        effect: GOES_BY_IT,
      },
    ]));
  test.each<[string, Row, Rows[string][string], string[]]>([
    // A maker's figure: a tenth, of levels and losses more than 0.3 dB.
    ["passives", { port_low: 4.4 }, { port_low: 4 }, [BEHIND]],
    ["passives", { port_low: 4.3 }, { port_low: 4 }, []],
    ["passives", { port_low: 2.3 }, { port_low: 2 }, []],
    ["passives", { port_low: 2.31 }, { port_low: 2 }, [BEHIND]],
    ["units", { in_low: 2.3 }, { in_low: 2 }, []],
    ["units", { in_low: 2.4 }, { in_low: 2 }, [BEHIND]],
    ["units", { load: 0.22 }, { load: 0.2 }, [BEHIND]],
    ["units", { load: 0.21 }, { load: 0.2 }, []],
    ["receivers", { tuners: 2 }, { tuners: 1 }, [BEHIND]],
    ["labour", { minutes: 14.9 }, { minutes: 10 }, []],
    ["labour", { minutes: "" }, { minutes: 10 }, []],
    ["passives", { kind: "tap" }, { kind: "splitter" }, [OTHERWISE]],
    ["cables", { like: "series 6" }, { like: "series 7" }, [OTHERWISE]],
    ["units", { aiming: "by hand" }, { aiming: "by motor" }, []],
    ["sites", { kind: "travel" }, { kind: "permit" }, []],
    ["labour", { piece: "tap" }, { piece: "splitter" }, [OTHERWISE]],
    ["passives", { supplier: "one", article: "1" }, { supplier: "other", article: "2" }, []],
    // Prices: half as much again; the tax; the row beside it.
    ["passives", { price: 60 }, { price: 40 }, [GOES_BY_IT]],
    ["passives", { price: 59 }, { price: 40 }, []],
    ["passives", { name: "Q", price: 60 }, { price: 40 }, []],
  ])("of %s: %j for %j", (block, own, theirs, effects) =>
    expect(row(block, own, theirs).map(({ effect }) => effect)).toEqual(effects),
  );
  test("a row that is named like something of the language's own is none of the firm's", () =>
    expect(told({ passives: [{ name: "constructor", price: 60 }] }, { passives: {} })).toEqual([]));
  test("a row without a name, and a list that the firm has not: nothing", () => {
    const blank = [{ name: "", price: 60 }];
    expect(told({ passives: blank }, { passives: { "": { price: 40 } } })).toEqual([]);
    expect(told({ passives: [{ name: "P", price: 60 }] }, {})).toEqual([]);
  });
  test("a band is known by its plan and its number", () => {
    const plans = [
      { plan: "A", band: 1, centre: 1000 },
      { plan: "A", band: 2, centre: 1320 },
    ];
    const rows: Rows = { plans: { "A, 1": { centre: 1000 }, "A, 2": { centre: 1200 }, A: { centre: 5 } } };
    expect(told({ plans }, rows).map(({ place, message }) => [place, message])).toEqual([
      [at("plans_centre", 2), "Centre of A is 1320; the firm's standards (F) have 1200."],
    ]);
  });
  test.each<[number, number, string | undefined]>([
    [120, 0.2, "100: this is the same with the tax, and prices are without."],
    [120.19, 0.2, "100: this is the same with the tax, and prices are without."],
    [120.21, 0.2, undefined],
    [119.79, 0.2, undefined],
    [100.1, 0, undefined],
  ])("a price of %d for 100, with a tax of %d", (price, tax, expected) => {
    const [finding] = row("passives", { price }, { price: 100 }, { site_tax: tax });
    expect(finding?.expected).toBe(expected);
    if (expected) expect(finding).toMatchObject({ meant: 100, effect: "Tax is paid on tax." });
  });
  test("minutes that are so much more are no price with the tax", () =>
    expect(row("labour", { minutes: 12 }, { minutes: 10 }, { site_tax: 0.2 })).toEqual([]));
  test("the price of the row above or below", () => {
    const prices = (first: number, second: number, ...theirs: number[]) =>
      told(
        {
          passives: [
            { name: "P", price: first },
            { name: "Q", price: second },
          ],
        },
        { passives: { P: { price: theirs[0]! }, Q: { price: theirs[1]! } } },
      );
    expect(prices(50, 50, 50, 40)).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("passives_price", 2),
        message: "Price each of Q is 50; the firm's standards (F) have 40.",
        expected: "40",
        meant: 40,
        effect: "It is the very price of the row beside it, which the standards have otherwise.",
      },
    ]);
    expect(prices(50, 50, 40, 50).map(({ place }) => place)).toEqual([at("passives_price", 1)]);
    expect(prices(50, 50, 49, 40)).toEqual([]);
    expect(prices(51, 50, 50, 40)).toEqual([]);
  });
});

describe("a price and the reel or pack that it is for", () => {
  const cable = (reel: number | undefined, price: number) =>
    row("cables", { reel, price }, { reel: 100, price: 40 });
  test.each<[string, number | undefined, number, string, number]>([
    ["half as much again", 100, 60, "40", 40],
    ["that of one metre", 100, 0.4, "40", 40],
    ["of another reel, three times as much", 50, 60, "20 for 50.", 20],
    ["of another reel, that of one metre", 50, 0.5, "25 for 50.", 25],
    ["of a reel of one", 1, 2, "0.4 for 1.", 0.4],
  ])("%s", (_, reel, price, expected, meant) =>
    expect(cable(reel, price)).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("cables_price", 1),
        message: `Price per reel of P is ${price}; the firm's standards (F) have 40.`,
        expected,
        meant,
        effect: EACH_BOUGHT,
      },
    ]),
  );
  test.each<[string, number | undefined, number]>([
    ["less than half as much again", 100, 59],
    ["of another reel, less than three times as much", 50, 59],
    ["its own reel and its price", 50, 20],
  ])("%s: nothing", (_, reel, price) => expect(cable(reel, price)).toEqual([]));
  test("of a reel without a length: nothing", () => expect(cable(0, 90)).toEqual([]));
  const part = (pack: number, price: number) => row("fittings", { pack, price }, { pack: 100, price: 10 });
  test("the two exchanged", () =>
    expect(part(10, 100)).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("fittings_price", 1),
        message: "Price per pack of P is 100; the firm's standards (F) have 10.",
        expected: "10 for 100: the two are exchanged.",
        effect: EACH_BOUGHT,
        undoing: [
          { place: at("fittings_price", 1), value: 10 },
          { place: at("fittings_pack", 1), value: 100 },
        ],
      },
    ]));
  const SIZE = {
    ...DOUBTFUL,
    place: at("fittings_pack", 1),
    expected: "100",
    meant: 100,
    effect: "The price beside it is that of the standards' size.",
  };
  test.each<[number, number]>([
    [150, 10],
    [10, 12],
    [10, 14.9],
    [1, 10],
  ])("a pack of %d at %d: the size is off", (pack, price) =>
    expect(part(pack, price)).toStrictEqual([
      { ...SIZE, message: `In a pack of P is ${pack}; the firm's standards (F) have 100.` },
    ]),
  );
  test.each<[number, number, string[]]>([
    [149, 10, []],
    [150, 11, []],
    [10, 15, ["fittings_price"]],
    [11, 12, ["fittings_price"]],
  ])("a pack of %d at %d", (pack, price, sheets) =>
    expect(part(pack, price).map(({ place }) => place!.sheet)).toEqual(sheets),
  );
  test("where a size is not said it is one", () => {
    const dear = (own: Row, theirs: Rows[string][string]) =>
      row("fittings", { price: 15, ...own }, { price: 10, ...theirs }).map(({ expected }) => expected);
    expect(dear({ pack: 1 }, {})).toEqual(["10"]);
    expect(dear({}, {})).toEqual(["10"]);
    expect(dear({}, { pack: 1 })).toEqual(["10"]);
  });
  test("a reel at the standards' price", () =>
    expect(cable(150, 40).map(({ place, expected }) => [place, expected])).toEqual([
      [at("cables_reel", 1), "100"],
    ]));
});

describe("what counts a row", () => {
  const MORE = {
    ...DOUBTFUL,
    place: at("fittings_per_outlet", 1),
    message: "Per outlet of P is 2; the firm's standards (F) have none.",
    expected: "Blank, as in the standards.",
    effect: "It is counted in one more way.",
  };
  test("a count that slid out of its column goes back", () =>
    expect(row("fittings", { per_outlet: 2, per_branch: "" }, { per_branch: 2 })).toStrictEqual([
      {
        ...MORE,
        undoing: [{ place: at("fittings_per_outlet", 1) }, { place: at("fittings_per_branch", 1), value: 2 }],
      },
    ]));
  test("one more beside the standards'", () =>
    expect(row("fittings", { per_outlet: 2, per_branch: 3 }, { per_branch: 3 })).toStrictEqual([
      { ...MORE, undoing: [{ place: at("fittings_per_outlet", 1) }] },
    ]));
  test("work that the standards count in no such way, or not at all", () =>
    expect(row("labour", { per_outlet: 2, piece: "" }, { piece: "tap" })).toStrictEqual([
      {
        ...MORE,
        place: at("labour_per_outlet", 1),
        undoing: [{ place: at("labour_per_outlet", 1) }, { place: at("labour_piece", 1), value: "tap" }],
      },
    ]));
  test("nothing counts what the standards count", () =>
    expect(row("fittings", { per_outlet: "", per_branch: 0 }, { per_outlet: 2 })).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("fittings_per_outlet", 1),
        message: "Per outlet of P is blank; the firm's standards (F) have 2.",
        expected: "2, as in the standards.",
        meant: 2,
        effect: "Nothing counts it.",
      },
    ]));
  test.each<[string, Row, Rows[string][string]]>([
    ["fittings", { per_outlet: 2, per_branch: "" }, { per_branch: 3 }],
    ["fittings", { per_outlet: 2, per_branch: "", per_head: "" }, { per_branch: 2, per_head: 2 }],
    ["fittings", { per_outlet: 2, per_branch: 3 }, {}],
    ["fittings", { per_outlet: 2, per_branch: "" }, { per_branch: 0 }],
    ["fittings", { per_outlet: 0, per_branch: 3 }, { per_branch: 3 }],
    ["fittings", { per_outlet: "", per_branch: 3 }, { per_outlet: 2 }],
    ["fittings", { per_outlet: "" }, { per_outlet: 0 }],
    ["fittings", { per_outlet: 2, pack: 5 }, { per_outlet: 2 }],
    ["labour", { per_outlet: 0 }, { piece: "tap" }],
  ])("of %s: %j for %j: nothing", (block, own, theirs) => expect(row(block, own, theirs)).toEqual([]));
});

describe("many at once", () => {
  const minutes = (own: readonly (number | string)[], theirs: readonly number[], onpurpose: Row[] = []) =>
    told(
      { labour: own.map((value, index) => ({ name: `W${index + 1}`, minutes: value })), onpurpose },
      { labour: Object.fromEntries(theirs.map((value, index) => [`W${index + 1}`, { minutes: value }])) },
    );
  const TENS = [10, 20, 30, 40, 50, 60, 70];
  const OFF = {
    weight: "doubtful",
    expected: "The figures of their own rows: the column was pasted one row off.",
    effect: "All that they count is priced by another row's figure.",
    remedy: "Paste the column again, or take the standards' figures.",
  };
  const put = (...rows: number[]) =>
    rows.map((one) => ({ place: at("labour_minutes", one), value: TENS[one - 1]! }));
  test("a column pasted one row down, and one row up", () => {
    expect(minutes([10, 10, 20, 30, 50], TENS)).toStrictEqual([
      {
        ...OFF,
        place: at("labour_minutes", 2),
        message:
          "3 figures of “Minutes each” from W2 on are those that the firm's standards (F) have one row above.",
        undoing: put(2, 3, 4),
      },
    ]);
    expect(minutes([10, 30, 40, 50, 50], TENS)).toStrictEqual([
      {
        ...OFF,
        place: at("labour_minutes", 2),
        message:
          "3 figures of “Minutes each” from W2 on are those that the firm's standards (F) have one row below.",
        undoing: put(2, 3, 4),
      },
    ]);
  });
  test.each<[string, (number | string)[], number]>([
    ["two in a run", [10, 10, 20, 40], 0],
    ["three in four rows", [10, 10, 20, 40, 40], 1],
    ["three in five", [10, 10, 20, 40, 50, 50], 0],
    ["all of them", [20, 30, 40, 50, 60, 70], 1],
  ])("%s", (_, own, wanted) =>
    expect(minutes(own, TENS).filter(({ undoing }) => undoing)).toHaveLength(wanted),
  );
  test("a row on purpose is none of the run", () =>
    expect(
      minutes([10, 10, 20, 30, 50], TENS, [{ what: "W3", why: "small" }]).map(({ message }) => message),
    ).toEqual(["Minutes each of W2 is 10; the firm's standards (F) have 20."]));
  const tens = (count: number): number[] => Array.from({ length: count }, () => 10);
  test("six of one column are told once, five each for itself", () => {
    expect(minutes([...tens(6).map(() => 30)], tens(6))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("labour_minutes", 1),
        message:
          "Minutes each of W1 is 30; the firm's standards (F) have 10; so are 5 more of “Minutes each”.",
        expected: "10",
        meant: 10,
        effect: GOES_BY_IT,
        undoing: [1, 2, 3, 4, 5, 6].map((one) => ({ place: at("labour_minutes", one), value: 10 })),
        remedy: "Bring the job up to date with the standards, or look whether a column was moved.",
      },
    ]);
    expect(minutes([...tens(5).map(() => 30)], tens(5))).toHaveLength(5);
  });
});
