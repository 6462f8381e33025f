/** What is said of rows whose name tells another figure, dish, route or tax than they have: each finding whole. */
import { nameSaysOtherwise } from "../../src/review/rules/nameSaysOtherwise";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

type Given = Parameters<typeof smallBook>;
const of = (...given: Given) => found(nameSaysOtherwise, smallBook(...given));
const said = (...given: Given): string[] => messages(nameSaysOtherwise, smallBook(...given));
const OTHERWISE = {
  weight: "doubtful",
  effect: "What is worked out, or bought, goes by the figure.",
  remedy: "Compare with the part's sheet; correct the figure or the name.",
};

describe("a figure in a name", () => {
  test("is not that of its row", () =>
    expect(of({ passives: [{ name: "4-way splitter", kind: "splitter", ways: 6 }] })).toStrictEqual([
      {
        ...OTHERWISE,
        place: at("passives_ways", 1),
        message: "4-way splitter is entered with 6 ways.",
        expected: "4, by its name.",
        meant: 4,
      },
    ]));
  test.each<[string, Row, string | undefined]>([
    ["passives", { name: "splitter, 8 ways", ways: 6 }, "6 ways"],
    ["passives", { name: "3way", ways: 2 }, "2 ways"],
    ["passives", { name: "4-way splitter", ways: 4 }, undefined],
    ["passives", { name: "4-way splitter", ways: "" }, undefined],
    ["passives", { name: "4-way of an 8-way", ways: 6 }, undefined],
    ["passives", { name: "splitter", ways: 6 }, undefined],
    ["passives", { name: "Tap 12 dB", kind: "Tap", port_low: 14.1 }, "14.1 dB to a port"],
    ["passives", { name: "Tap 12 dB", kind: "tap", port_low: 14 }, undefined],
    ["passives", { name: "Tap 12.5 dB", kind: "tap", port_low: 10 }, "10 dB to a port"],
    ["passives", { name: "Tap 12 dB", kind: "splitter", port_low: 20 }, undefined],
    ["units", { name: "Q with 9 user bands", bands: 8 }, "8 user bands"],
    ["units", { name: "Q, 9 bands", bands: 9 }, undefined],
    ["units", { name: "Q with 2 outputs", outputs: 1 }, "1 output"],
    ["feeds", { name: "F, 4 outputs", outputs: 2 }, "2 outputs"],
    ["supplies", { name: "PS 24 V", volts: 18 }, "18 V"],
    ["supplies", { name: "PS 13,5 V", volts: 14 }, undefined],
    ["supplies", { name: "PS 13,5 V", volts: 14.1 }, "14.1 V"],
    ["supplies", { name: "PS 2 A", amps: 2.1 }, "2.1 A"],
    ["supplies", { name: "PS 2 A", amps: 2.05 }, undefined],
    ["receivers", { kind: "box of 2 tuners", tuners: 1 }, "1 tuner"],
  ])("%s: %j", (block, row, told) =>
    expect(said({ [block]: [row] })).toEqual(
      told === undefined ? [] : [`${String(row["name"] ?? row["kind"])} is entered with ${told}.`],
    ),
  );
});

describe("a dish bought in another size", () => {
  const dish = (size: number | string, part: string, fittings: string[] = [], usual = 1.1) =>
    of(
      { dishes: [{ name: "D1", size, part }], fittings: fittings.map((name) => ({ name })) },
      { site_dish: usual },
    );
  const PART = {
    ...OTHERWISE,
    place: at("dishes_part", 1),
    message: "D1 of 1.1 m is bought as “dish 0.9 m”.",
  };
  test("where Parts has one of its size that is meant, else its size is off", () => {
    expect(dish(1.1, "dish 0.9 m", ["dish 90 cm", "dish 110 cm"])).toStrictEqual([
      { ...PART, expected: "“dish 110 cm”, or the size of what is bought.", meant: "dish 110 cm" },
    ]);
    expect(dish(1.1, "dish 0.9 m")).toStrictEqual([
      {
        ...PART,
        expected: "A dish of 1.1 m.",
        undoing: [{ place: at("dishes_size", 1), value: 0.9 }],
      },
    ]);
    expect(dish("", "dish 0.9 m")).toStrictEqual([
      { ...PART, expected: "A dish of 1.1 m.", meant: undefined },
    ]);
  });
  test.each<[number, string]>([
    [0.29, "dishes_size"],
    [0.3, "dishes_part"],
    [4, "dishes_part"],
    [4.1, "dishes_size"],
  ])("of %d m is told at %s", (size, sheet) =>
    expect(dish(size, "dish 0.9 m")[0]!.place).toEqual(at(sheet, 1)),
  );
  test.each<[number | string, string]>([
    [0.95, "dish 0.9 m"],
    [1.1, "a dish"],
    [1.1, ""],
    ["large", "dish 1.1 m"],
  ])("%j as “%s”: nothing", (size, part) => expect(dish(size, part)).toEqual([]));
  test("where the sheet has no parts of dishes, or no sizes", () => {
    expect(of({ dishes: [{ name: "D1", size: 1.1 }] })).toEqual([]);
    expect(of({ dishes: [{ name: "D1", part: "dish 0.9 m" }] }, { site_dish: 5 })[0]!.place).toEqual(
      at("dishes_part", 1),
    );
  });
});

describe("the usual route, and another of which the assumptions speak", () => {
  const route = (assumed: string[], more: Given[0] = {}, usual = "Tray") =>
    of(
      {
        assumptions: assumed.map((text) => ({ text })),
        routes: ["Tray", "Conduit", "Duct"].map((name) => ({ name })),
        ...more,
      },
      { site_usual_route: usual },
    );
  test("by which no cable goes", () =>
    expect(route(["Access by day.", "All cables run in CONDUIT."])).toStrictEqual([
      {
        ...OTHERWISE,
        place: atField("site_usual_route"),
        message: "The usual route is “Tray”, and the assumptions speak of “Conduit”, by which no cable goes.",
        expected: "“Conduit”.",
        meant: "Conduit",
        isGuess: true,
        effect: "Every cable without a route of its own is run and priced so.",
        remedy: "Choose the route from the list, or correct the assumption.",
      },
    ]));
  test.each(["rooms", "branches", "heads", "feeders"])("a cable of %s goes by it: nothing", (block) =>
    expect(route(["conduit"], { [block]: [{ route: "conduit" }] })).toEqual([]),
  );
  test("they speak of the usual one, of two others, of none, or there is no usual one: nothing", () =>
    expect([
      route(["conduit", "else a tray"]),
      route(["conduit, else a tray"], { rooms: [{ route: "tray" }] }),
      route(["conduit or duct"]),
      route(["Access by day."]),
      route(["conduit"], {}, ""),
    ]).toEqual([[], [], [], [], []]));
});

describe("a class of tax that is called after work", () => {
  const tax = (classes: Row, names = ["Standard", "Reduced, work"], more: Given[0] = {}) =>
    of({ taxes: names.map((name) => ({ name })), ...more }, { tax_class_labour: "", ...classes });
  const TAX = {
    ...OTHERWISE,
    place: atField("tax_class_labour"),
    expected: "“Reduced, work”, if it is meant for labour.",
    isGuess: true,
    effect: "Labour is taxed at the usual rate.",
    remedy: "Choose the class for labour on Site, and clear it where goods have it, or leave it.",
  };
  const put = { place: atField("tax_class_labour"), value: "Reduced, work" };
  test("is on nothing", () =>
    expect(tax({ tax_class_cable: "Standard" })).toStrictEqual([
      {
        ...TAX,
        message: "Labour has no tax class, and “Reduced, work” is on nothing.",
        undoing: [put],
      },
    ]));
  test.each(["tax_class_reception", "tax_class_cable", "tax_class_fittings"])("is on %s", (goods) =>
    expect(tax({ [goods]: "reduced, WORK" })).toStrictEqual([
      {
        ...TAX,
        message: "Labour has no tax class, and “Reduced, work” is on what is bought.",
        undoing: [put, { place: atField(goods) }],
      },
    ]),
  );
  test("on two kinds of goods it has not slipped", () =>
    expect(
      tax({ tax_class_cable: "Reduced, work", tax_class_fittings: "Reduced, work" })[0]!.undoing,
    ).toEqual([put]));
  test("called after labour", () =>
    expect(tax({}, ["Labour"])[0]!.message).toBe("Labour has no tax class, and “Labour” is on nothing."));
  test("labour has one, two are called so, none is, or an option or another line has it: nothing", () =>
    expect([
      tax({ tax_class_labour: "Standard" }),
      tax({}, ["work", "labour"]),
      tax({}, ["workshop"]),
      tax({}, undefined, { options: [{ tax: "Reduced, work" }] }),
      tax({}, undefined, { provisional: [{ tax: "Reduced, work" }] }),
      tax({ tax_class_sites: "Reduced, work" }),
      of({ taxes: [{ name: "work" }] }),
    ]).toEqual([[], [], [], [], [], [], []]));
});

describe("a conductor that is called after another dish than it bonds", () => {
  const bond = (where: string, dish: string, names = ["D1", "D2", "D1-a"]) =>
    of({ dishes: names.map((name) => ({ name })), bonds: [{ where, dish }] });
  test("is told", () =>
    expect(bond("mast of d1, to the bar", "D2")).toStrictEqual([
      {
        ...OTHERWISE,
        place: at("bonds_dish", 1),
        message: "“mast of d1, to the bar” is said to bond D2.",
        expected: "D1.",
        meant: "D1",
        effect: "D1 then counts as a dish without a conductor.",
        remedy:
          "Correct the dish, or the name of the conductor. What must be bonded is settled by the local code and a licensed person.",
      },
    ]));
  test.each([
    ["mast of D1", "d1"],
    ["mast of D1", ""],
    ["D1 and D2", "D2"],
    ["mast", "D2"],
    ["mast of D1-a", "D1-a"],
    ["mast of D10", "D2"],
  ])("“%s” of “%s”: nothing", (where, dish) => expect(bond(where, dish)).toEqual([]));
  test("without a column of dishes: nothing", () =>
    expect(of({ dishes: [{ name: "D1" }], bonds: [{ where: "D1" }] })).toEqual([]));
});
