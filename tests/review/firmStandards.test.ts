/** What the firm's standards say of a job's inputs, given or as the job took them: by the comments of firm.ts and firmValue.ts. */
import { firmSays, takenFrom, type FirmSays } from "../../src/review/ranges/firm";
import { firmValue } from "../../src/review/ranges/firmValue";
import { columns } from "../support/books";

type Columns = Parameters<typeof columns>[0];

describe("as they are given", () => {
  test("the fields and lists that a job has too, and what was learned", () => {
    const says = firmSays(
      {
        fields: { site_waste: 0.07, standards_firm: "Harbour Aerials" },
        blocks: {
          cables: [
            { name: "drop", price: 30 },
            { name: " ", price: 9 },
            { name: " trunk ", price: 90 },
          ],
          plans: [{ plan: "wide", band: 1, centre: 1210 }],
          suppliers: [{ name: "Somebody" }],
          ranges: [
            {
              known: "cables_price",
              what: "Price",
              of: "drop",
              unit: "EUR",
              low: 1,
              middle: 2,
              high: 3,
              quotes: 4,
            },
          ],
        },
      },
      "our standards",
    );
    expect(says.called).toBe("our standards");
    expect(says.fields).toEqual({ site_waste: 0.07 });
    expect(says.rows.cables).toEqual({
      drop: { name: "drop", price: 30 },
      trunk: { name: " trunk ", price: 90 },
    });
    expect(says.rows.plans).toEqual({ "wide, 1": { plan: "wide", band: 1, centre: 1210 } });
    expect(says.rows.plates).toEqual({});
    expect(says.rows.suppliers).toBeUndefined();
    expect(says.learned).toEqual([
      { name: "cables_price", what: "Price", of: "drop", unit: "EUR", low: 1, middle: 2, high: 3, quotes: 4 },
    ]);
  });
  test("empty ones say nothing", () =>
    expect(firmSays({}, "x")).toMatchObject({ fields: {}, rows: { cables: {} }, learned: [] }));
});

describe("as the job took them", () => {
  const took: Columns = {
    taken_list: ["", "fields", "cables", "cables", "fields", "plates", "", "cables", "cables", "cables", ""],
    taken_line: ["", "site_waste", "drop", "trunk", "site_tax", "", "lost", "broken", "figure", "none", ""],
    taken_values: [
      "",
      '{"value":0.07}',
      '{"price":30}',
      '{"price":90}',
      "{}",
      '{"price":5}',
      '{"price":5}',
      "{price",
      "5",
      "null",
      "",
    ],
  };
  test("each line that can be read, by its list", () => {
    const says = takenFrom(columns({ ...took, site_standards: ["Harbour"], site_standards_edition: [3] }))!;
    expect(says.called).toBe("Harbour, edition 3");
    expect(says.fields).toEqual({ site_waste: 0.07 });
    expect(Object.keys(says.rows)).toEqual(["cables"]);
    expect({ ...says.rows.cables }).toEqual({ drop: { price: 30 }, trunk: { price: 90 } });
    expect(says.learned).toEqual([]);
  });
  test("without the firm's name, or an edition", () => {
    expect(takenFrom(columns(took))!.called).toBe("the firm");
    expect(takenFrom(columns({ ...took, site_standards: ["Harbour"] }))!.called).toBe("Harbour");
    expect(takenFrom(columns({ ...took, site_standards_edition: ["B"] }))!.called).toBe(
      "the firm, edition B",
    );
  });
  test("a list or a row with a name of the language's own is nothing but that", () => {
    const says = takenFrom(
      columns({ taken_list: ["constructor"], taken_line: ["toString"], taken_values: ['{"price":1}'] }),
    )!;
    expect(says.rows["constructor"]!["toString"]).toEqual({ price: 1 });
    expect(says.rows["toString"]).toBeUndefined();
  });
  test("none that drew on no standards", () => {
    expect(takenFrom(columns({ taken_list: ["", " "] }))).toBeUndefined();
    expect(takenFrom(columns({}))).toBeUndefined();
  });
});

describe("of one input", () => {
  const firm: FirmSays = {
    called: "firm",
    fields: { site_currency: "EUR", site_unit: "m", site_waste: 0.07, labour_rate: 45, site_slack: 2 },
    rows: {
      cables: { drop: { price: 30, reel: 100, like: "RG6" }, bare: { price: 30 } },
      fittings: { clip: { price: 5, pack: 50 } },
      routes: { duct: { minutes: 3 } },
    },
    learned: [],
  };
  const SAME: Columns = { site_currency: [" eur "], site_unit: ["m"], cables_reel: ["", 250, "", ""] };
  const value = (
    name: string,
    { block, unit, called = "" }: { block?: string; unit?: string; called?: string },
    read: Columns = SAME,
    index = 1,
  ) => firmValue(columns(read), firm, { name, block, unit } as never, { called, index } as never);

  test("a field, and a cell of the row with its name", () => {
    expect(value("site_waste", {})).toBe(0.07);
    expect(value("site_tax", {})).toBeUndefined();
    expect(value("cables_like", { block: "cables", called: "drop" })).toBe("RG6");
    expect(value("cables_like", { block: "cables", called: "bare" })).toBeUndefined();
    expect(value("cables_like", { block: "cables", called: "rope" })).toBeUndefined();
    expect(value("cables_like", { block: "cables", called: "toString" })).toBeUndefined();
    expect(value("plates_price", { block: "plates", called: "drop" })).toBeUndefined();
  });

  const PRICE = { block: "cables", unit: "money", called: "drop" };
  test("a price for as much as the job's reel or pack holds, to the cent", () => {
    // 30 for 100 m are 75 for 250 m.
    expect(value("cables_price", PRICE)).toBe(75);
    // 30 for 100 m are 9.999 for 33.33 m.
    expect(value("cables_price", PRICE, { ...SAME, cables_reel: ["", 33.33] })).toBe(10);
    // 5 for 50 are 12 for 120.
    expect(
      value(
        "fittings_price",
        { block: "fittings", unit: "money", called: "clip" },
        { ...SAME, fittings_pack: ["", 120] },
      ),
    ).toBe(12);
  });
  test("as it stands where a reel is not known of both", () => {
    expect(value("cables_price", PRICE, SAME, 2)).toBe(30);
    expect(value("cables_price", PRICE, SAME, 9)).toBe(30);
    expect(value("cables_price", { ...PRICE, called: "bare" })).toBe(30);
    expect(value("cables_price", { ...PRICE, called: "rope" })).toBeUndefined();
  });

  const other = { currency: { ...SAME, site_currency: ["CHF"] }, unit: { ...SAME, site_unit: ["ft"] } };
  test.each<[string, Parameters<typeof value>[1], number | undefined, boolean, boolean]>([
    // Whether another currency, and another unit of length, leave nothing of it.
    ["site_waste", {}, 0.07, false, false],
    ["site_slack", { unit: "m or ft" }, 2, false, true],
    ["labour_rate", { unit: "per hour" }, 45, true, false],
    ["fittings_price", { block: "fittings", unit: "money", called: "clip" }, 5, true, false],
    ["cables_price", PRICE, 75, true, true],
    ["cables_reel", { block: "cables", called: "drop" }, 100, false, true],
    ["routes_minutes", { block: "routes", unit: "min", called: "duct" }, 3, false, true],
  ])("%s in another currency or unit", (name, of, same, ofMoney, ofLength) => {
    expect(value(name, of)).toBe(same);
    expect(value(name, of, other.currency)).toBe(ofMoney ? undefined : same);
    expect(value(name, of, other.unit)).toBe(ofLength ? undefined : same);
  });
});
