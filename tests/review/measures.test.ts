/** What of a job is held to other jobs: figures by the metre and the piece, worked out by hand. */
import { measuresIn, type Measure } from "../../src/review/ranges/measures";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { columns } from "../support/books";

type Columns = Parameters<typeof columns>[0];
const measures = (values: Columns): Measure[] => measuresIn(columns(values), multiRoom);
const inFeet: Columns = { site_unit: ["ft"] };
const at = (cell: string) => ({ sheet: "S", cell });

/** Blocks have a thin row at the top and one at the end. */
const block = (...rows: (string | number | undefined)[]) => ["", ...rows, ""];

describe("the figures of a row", () => {
  const cables: Columns = {
    site_currency: [" EUR "],
    cables_name: block("drop", "trunk", "spare", undefined, "reelless"),
    cables_reel: block(100, 250, 0, 50, undefined),
    cables_price: block(30, "ask", 5, 7, 4),
  };
  const of = (name: string, values: Columns) => measures(values).filter((one) => one.name === name);

  test("a price is for a metre of the reel, of rows that have a name, a figure and a length", () =>
    expect(of("cables_price", cables)).toEqual([
      {
        name: "cables_price",
        what: "Price per m",
        of: "drop",
        unit: "EUR per m",
        value: 0.3,
        times: 100,
        place: at("D2"),
      },
      {
        name: "cables_price",
        what: "Price per m",
        of: "reelless",
        unit: "EUR per m",
        value: 4,
        times: 1,
        place: at("D6"),
      },
    ]));

  // A reel of 100 ft is 30.48 m: 30 / 30.48 = 0.98425; a reel of 250 ft is 76.2 m.
  test("in feet it is for a metre all the same, and lengths are in metres", () => {
    const [drop] = of("cables_price", { ...cables, ...inFeet });
    expect(drop).toMatchObject({ value: expect.closeTo(0.98425, 5), times: expect.closeTo(30.48, 9) });
    const reels = of("cables_reel", { ...cables, ...inFeet });
    expect(reels.map(({ of: row, value, what, unit }) => [row, value, what, unit])).toEqual([
      ["drop", expect.closeTo(30.48, 9), "Reel", "m"],
      ["trunk", expect.closeTo(76.2, 9), "Reel", "m"],
      ["spare", 0, "Reel", "m"],
    ]);
    expect(reels[0]!.times).toBeCloseTo(1 / 0.3048, 9);
    expect(of("cables_reel", cables).map(({ value, times }) => [value, times])).toEqual([
      [100, 1],
      [250, 1],
      [0, 1],
    ]);
  });

  test("a price is for one of a pack", () => {
    const fittings: Columns = {
      site_currency: ["EUR"],
      fittings_name: block("clip", "plug"),
      fittings_pack: block(50, undefined),
      fittings_price: block(5, 2),
    };
    expect(
      of("fittings_price", fittings).map(({ what, of: row, unit, value, times }) => [
        what,
        row,
        unit,
        value,
        times,
      ]),
    ).toEqual([
      ["Price each", "clip", "EUR", 0.1, 50],
      ["Price each", "plug", "EUR", 2, 1],
    ]);
  });

  test("minutes along a route are for a metre", () => {
    const routes: Columns = { routes_name: block("duct"), routes_minutes: block(3) };
    expect(of("routes_minutes", routes)).toEqual([
      {
        name: "routes_minutes",
        what: "Minutes per m",
        of: "duct",
        unit: "min per m",
        value: 3,
        times: 1,
        place: at("B2"),
      },
    ]);
    // 3 / 0.3048
    expect(of("routes_minutes", { ...routes, ...inFeet })[0]!.value).toBeCloseTo(9.84252, 5);
  });

  test("fields and all else as they stand, money and the hour in their currency", () => {
    const told = measures({
      site_currency: ["CHF"],
      site_unit: ["m"],
      site_margin: [0.2],
      site_slack: [2],
      labour_rate: [45],
      crew_size: ["two"],
      plates_name: block("single"),
      plates_price: block(9),
      labour_name: block("plate"),
      labour_minutes: block(12),
    });
    expect(
      told.map(({ name, what, of: row, unit, value, times }) => [name, what, row, unit, value, times]),
    ).toEqual([
      ["site_slack", "Slack added to each run", "", "m", 2, 1],
      ["site_margin", "Margin", "", "share of price", 0.2, 1],
      ["plates_price", "Price each", "single", "CHF", 9, 1],
      ["labour_minutes", "Minutes each", "plate", "min", 12, 1],
      ["labour_rate", "Crew rate", "", "CHF per h", 45, 1],
    ]);
  });

  test("settings, a job's own wishes and what goes with another figure are left out; so is what is no standard", () =>
    expect(
      measures({
        site_decimals: [2],
        site_run_tolerance: [0.1],
        site_level_design: [50],
        labour_name: block("plate"),
        labour_low: block(5),
        labour_high: block(9),
        rooms_outlet: block("G-01"),
        rooms_run: block(12),
        site_latitude: [48],
      }),
    ).toEqual([]));

  test("without a currency a price is told in none", () =>
    expect(of("plates_price", { plates_name: block("single"), plates_price: block(9) })[0]!.unit).toBe(""));
});

describe("a job as a whole", () => {
  /** Eight outlets, of which each costs 150, an hour and a half of work, and twenty metres. */
  const job: Columns = {
    site_currency: ["EUR"],
    count_outlets: [8],
    price_sell: [1200],
    work_total_hours: [12],
    price_labour: [300],
    price_direct: [400],
    heads_wanted: [16],
    cables_bought_needed: block(100, 60, "n/a", undefined),
    rooms_outlet: block("A", "B"),
    rooms_run: block(undefined, 15),
  };
  const whole = (values: Columns) =>
    measures(values).map(({ name, what, of, unit, value, times, place }) => [
      name,
      what,
      of,
      unit,
      value,
      times,
      place?.cell,
    ]);
  const SIZE = "jobs of 4 to 15 outlets";
  const all = [
    ["job_price_per_outlet", "Price an outlet, without tax", SIZE, "EUR", 150, 1, undefined],
    ["job_minutes_per_outlet", "Minutes of labour an outlet", SIZE, "min", 90, 1, undefined],
    ["job_labour_share", "Labour's share of the direct cost", "", "share", 0.75, 1, undefined],
    ["job_tuners_per_outlet", "Tuners an outlet", "", "pieces", 2, 1, undefined],
    // At the first run that is filled.
    ["job_cable_per_outlet", "Cable an outlet", SIZE, "m", 20, 1, "J3"],
    ["job_outlets", "Outlets", "", "pieces", 8, 1, undefined],
  ] as const;
  const but = (name: string) => all.filter(([own]) => own !== name);

  test("for one outlet, in jobs of like size", () => expect(whole(job)).toEqual(all));
  test("cable in metres where the job is in feet", () =>
    // 160 ft are 48.768 m.
    expect(whole({ ...job, ...inFeet }).find(([name]) => name === "job_cable_per_outlet")![4]).toBeCloseTo(
      6.096,
      9,
    ));
  test.each<[string, Columns, string]>([
    ["no price", { price_sell: [""] }, "job_price_per_outlet"],
    ["no hours", { work_total_hours: [0] }, "job_minutes_per_outlet"],
    ["no labour", { price_labour: [0] }, "job_labour_share"],
    ["a cost that is none", { price_direct: [-400] }, "job_labour_share"],
    ["no tuners", { heads_wanted: [{ error: "#N/A" }] }, "job_tuners_per_outlet"],
    ["no cable", { cables_bought_needed: block(0) }, "job_cable_per_outlet"],
  ])("%s: that alone is not told", (_, values, name) =>
    expect(whole({ ...job, ...values })).toEqual(but(name)),
  );
  test.each([[0], [""]])("no outlets (%j): nothing", (outlets) =>
    expect(whole({ ...job, count_outlets: [outlets] })).toEqual([]),
  );
  test("without a run of its own the first of its types", () =>
    expect(
      whole({ ...job, rooms_run: block(undefined, undefined), types_run: block(undefined, 9) }).find(
        ([name]) => name === "job_cable_per_outlet",
      )![6],
    ).toBe("K3"));

  describe("tuners lead to the kind of receiver that has most of them", () => {
    const receivers: Columns = {
      receivers_kind: block("Quad", "twin", "plain"),
      receivers_tuners: block(4, 2, undefined),
    };
    const leadsTo = (values: Columns) =>
      whole({ count_outlets: [8], heads_wanted: [16], ...receivers, ...values }).find(
        ([name]) => name === "job_tuners_per_outlet",
      )![6];
    test.each<[string, Columns, string | undefined]>([
      ["of an outlet", { rooms_receiver: block("twin", " QUAD", "plain") }, "E3"],
      ["of two alike the first", { rooms_receiver: block("plain", "twin", "twin") }, "E3"],
      ["what the list does not have counts as one", { rooms_receiver: block("other", "plain") }, "E2"],
      [
        "of a type as often as it is used",
        { types_receiver: block("twin", "quad"), types_used: block(3, 1), rooms_receiver: block("quad") },
        "E2",
      ],
      [
        "a type that nobody uses has none",
        { types_receiver: block("quad"), types_used: block(undefined), rooms_receiver: block("plain") },
        "G2",
      ],
      ["no receivers", {}, undefined],
    ])("%s", (_, values, cell) => expect(leadsTo(values)).toBe(cell));
  });
});
