/** What is said of rows of Parts, of work and of conductors that do not agree: each finding whole. */
import { partsAgree } from "../../src/review/rules/partsAgree";
import type { FirmSays } from "../../src/review/ranges/firm";
import type { Book } from "../../src/workbooks/book";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

const job = (blocks: Readonly<Record<string, readonly Row[]>>, fields: Row = {}): Book =>
  smallBook({ rooms: [{ outlet: "a" }], ...blocks }, fields);
const said = (...given: Parameters<typeof job>): string[] => messages(partsAgree, job(...given));
const of = (...given: Parameters<typeof job>) => found(partsAgree, job(...given));
const DOUBTFUL = {
  weight: "doubtful",
  remedy: "Compare with the maker's sheet and the price list; correct the cell, or say on Log why it is so.",
};

describe("a smaller part that costs more than a larger one", () => {
  const parts = (price: number, more: Row = {}): Row[] => [
    { name: "S4", kind: "splitter", ways: 4, power: "no", price, ...more },
    { name: "S6", kind: "Splitter", ways: 6, power: "no", price: 20 },
  ];
  const DEAR = {
    ...DOUBTFUL,
    place: at("passives_price", 1),
    expected: "Less than the larger one: were the two prices typed in each other's row?",
    effect: "Each piece that is bought carries it into the price.",
  };
  test("the two are exchanged, unless they lie too far apart for that", () => {
    expect(of({ passives: parts(22.1) })).toStrictEqual([
      {
        ...DEAR,
        message: "S4 costs 22.1, and S6 with more ways 20.",
        undoing: [
          { place: at("passives_price", 1), value: 20 },
          { place: at("passives_price", 2), value: 22.1 },
        ],
        isGuess: true,
      },
    ]);
    expect(of({ passives: parts(59.9) })[0]).toHaveProperty("undoing");
    expect(of({ passives: parts(60) })).toStrictEqual([
      { ...DEAR, message: "S4 costs 60, and S6 with more ways 20." },
    ]);
  });
  test.each<[string, Row[]]>([
    ["a tenth more", parts(22)],
    ["of another kind", parts(30, { kind: "tap" })],
    ["of other power", parts(30, { power: "all ports" })],
    ["as many ways", parts(30, { ways: 6 })],
    ["no ways", parts(30, { ways: undefined })],
    ["the larger one without a price", [parts(30)[0]!, { ...parts(30)[1], price: 0 }]],
  ])("%s: nothing", (_, passives) => expect(said({ passives })).toEqual([]));
  test("without an outlet there is no job", () =>
    expect(messages(partsAgree, smallBook({ passives: parts(30) }))).toEqual([]));
});

describe("watts that are likely amperes", () => {
  const unit = (load: number, kind = "W") => of({ units: [{ name: "Q1", load, kind }] });
  test("less than one", () =>
    expect(unit(0.45)).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("units_kind", 1),
        message: "Q1 is said to draw 0.45 W.",
        expected: "A, if 0.45 amperes were meant; a head unit draws some watts (common practice, no source).",
        effect: "Its volts are predicted far too high.",
        meant: "A",
      },
    ]));
  test("one watt, none, no figure, or amperes: nothing", () =>
    expect([
      unit(1),
      unit(0),
      unit(-0.5),
      unit(0.45, "A"),
      of({ units: [{ name: "Q1", kind: "W" }] }),
    ]).toEqual([[], [], [], [], []]));
});

test("an end resistor that lets power through", () =>
  expect(
    of({
      resistors: [
        { name: "R1", blocks: "No" },
        { name: "R2", blocks: "yes" },
      ],
    }),
  ).toStrictEqual([
    {
      ...DOUBTFUL,
      place: at("resistors_blocks", 1),
      message: "R1 lets direct current through: 75 ohms on 24 V are 7.7 W.",
      expected: "yes: one that blocks power.",
      effect: "It takes the volts of the head unit, and grows hot.",
      meant: "yes",
    },
  ]));

describe("open ports that nothing closes", () => {
  const open = (
    { closes = "", devices = ["four", "TAP"] }: { closes?: string; devices?: string[] },
    ...resistors: string[]
  ) =>
    of(
      {
        rooms: [
          { outlet: "a", from: "G1" },
          { outlet: "b", from: "g1" },
        ],
        branches: devices.map((device, index) => ({ id: `G${index + 1}`, device, from: index ? "G1" : "H" })),
        passives: [
          { name: "Four", kind: "splitter", ways: 4 },
          { name: "Three", kind: "splitter", ways: 3 },
          { name: "Tap", kind: "tap", ways: 8 },
        ],
        resistors: resistors.map((name) => ({ name })),
      },
      { site_closes: closes },
    );
  const OPEN = {
    ...DOUBTFUL,
    place: atField("site_closes"),
    effect: "What comes back from an open port spoils the others; none is bought or fitted.",
  };
  test("one, of a splitter that feeds two outlets and a tap", () =>
    expect(open({}, "R75")).toStrictEqual([
      {
        ...OPEN,
        message: "1 port of a splitter stays open, and nothing closes them.",
        expected: "“R75”, which is on Parts.",
        meant: "R75",
      },
    ]));
  test("those of two splitters, and two resistors to choose from", () =>
    expect(open({ devices: ["four", "three"] }, "R75", "R76")).toStrictEqual([
      {
        ...OPEN,
        message: "4 ports of splitters stay open, and nothing closes them.",
        expected: "One of the end resistors of Parts.",
      },
    ]));
  test("none is open, one is named, or none is on Parts: nothing", () =>
    expect([open({ devices: ["three", "tap"] }, "R75"), open({ closes: "R75" }, "R75"), open({})]).toEqual([
      [],
      [],
      [],
    ]));
  test("one port too few does not close another's", () =>
    // G1 feeds two outlets and two devices by three ports; each of these has four open.
    expect(open({ devices: ["three", "four", "four"] }, "R75")[0]!.message).toMatch(/^8 ports /));
});

describe("counted for each of another piece than its name tells", () => {
  const piece = (block: string, name: string, counted: string) =>
    of({ [block]: [{ name, piece: counted, per_outlet: "" }] });
  test.each(["labour", "fittings"])("of %s", (block) =>
    expect(piece(block, "Fit Wall Plates", "connector")).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at(`${block}_piece`, 1),
        message: "Fit Wall Plates is counted for each connector.",
        expected: "For each wall plate, by its name.",
        effect: "It is bought, or done, as often as there are of the other.",
        meant: "wall plate",
      },
    ]),
  );
  test.each<[string, string, string | undefined]>([
    ["Further slot on a dish", "switch", "further slot on a dish"],
    ["Dish clamp", "head unit on a dish", undefined],
    ["Tap", "tap", undefined],
    ["Tapes", "connector", undefined],
    ["Wall plate", "window", undefined],
    ["Wall plate", "", undefined],
  ])("%s, for each %s", (name, counted, meant) =>
    expect(piece("labour", name, counted)[0]?.meant).toBe(meant),
  );
});

describe("a part that nothing counts", () => {
  const part = (more: Row) => of({ fittings: [{ name: "Connector", piece: "", ...more }] });
  test("and that is named as a piece", () =>
    expect(part({ per_outlet: 0 })).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("fittings_piece", 1),
        message: "Nothing counts Connector.",
        expected: "For each connector, by its name; or no such row.",
        effect: "None is bought.",
        meant: "connector",
      },
    ]));
  test.each<[Row]>([
    [{ per_outlet: 1 }],
    [{ per_branch: 1 }],
    [{ per_head: 1 }],
    [{ fixed: 1 }],
    [{ piece: "connector" }],
    [{ name: "Connectors" }],
  ])("%j: nothing", (more) => expect(part(more)).toEqual([]));
});

describe("pieces that no work is done on", () => {
  const row = (piece: string): Row => ({ name: `On the ${piece}`, piece });
  const OTHERS = ["splitter", "tap", "switch", "connector", "dish", "outlet to measure"].map(row);
  const COUNTS = { pieces_connector: 9, pieces_wall_plate: 8, pieces_dish: 1, pieces_outlet_to_measure: 8 };
  const LACKING = {
    ...DOUBTFUL,
    message: "No work is listed for each wall plate, and the job has 8.",
    expected: "A line of work for it, unless it is in another line.",
    effect: "Nothing is charged for it.",
  };
  const lacking = (labour: readonly Row[], counts: Row = COUNTS, rows?: FirmSays["rows"][string]) =>
    found(partsAgree, job({ labour }, counts), {
      options: {
        marginFloor: 0,
        ...(rows && { standards: { called: "F", fields: {}, rows: { labour: rows }, learned: [] } }),
      },
    });
  test("is told at a row that was emptied, at the first below, or at the top", () => {
    const gap = [...OTHERS.slice(0, 2), { name: "" }, ...OTHERS.slice(2), { name: "" }];
    expect(lacking(gap)).toStrictEqual([{ ...LACKING, place: at("labour_name", 3) }]);
    expect(lacking([...OTHERS, { name: "" }])).toStrictEqual([{ ...LACKING, place: at("labour_name", 7) }]);
    expect(lacking(OTHERS)).toStrictEqual([{ ...LACKING, place: at("labour_name", 1) }]);
  });
  const FIRMS = { "Mount plates": { name: "Mount plates", piece: "Wall plate", minutes: 9 } };
  const withFree = [...OTHERS, { name: "", minutes: "" }];
  test("the firm's own line fills the free row, where it has but one", () => {
    expect(lacking(withFree, COUNTS, FIRMS)).toStrictEqual([
      {
        ...LACKING,
        place: at("labour_name", 7),
        undoing: [
          { place: at("labour_name", 7), value: "Mount plates" },
          { place: at("labour_minutes", 7), value: 9 },
          { place: at("labour_piece", 7), value: "Wall plate" },
        ],
        isGuess: true,
      },
    ]);
    const plain = [{ ...LACKING, place: at("labour_name", 7) }];
    expect(lacking(withFree, COUNTS, { ...FIRMS, two: { piece: "wall plate" } })).toStrictEqual(plain);
    expect(lacking(withFree, COUNTS, { Taps: { name: "Taps", piece: "tap" } })).toStrictEqual(plain);
    // A row without a name that holds something is not free.
    expect(lacking([...OTHERS, { name: "", minutes: 5 }], COUNTS, FIRMS)).toStrictEqual(plain);
    expect(lacking(OTHERS, COUNTS, FIRMS)).toStrictEqual([{ ...LACKING, place: at("labour_name", 1) }]);
  });
  test("what the job took of the firm's standards serves as well", () => {
    const taken = [{ list: "labour", line: "Mount plates", values: JSON.stringify(FIRMS["Mount plates"]) }];
    expect(of({ labour: withFree, taken }, COUNTS)[0]!.undoing).toHaveLength(3);
  });
  test("each that is lacking, in order", () =>
    expect(
      lacking(["splitter", "tap", "switch", "feed", "filter", "supply"].map(row)).map(
        ({ message }) => message,
      ),
    ).toEqual([
      "No work is listed for each connector, and the job has 9.",
      "No work is listed for each wall plate, and the job has 8.",
      "No work is listed for each outlet to measure, and the job has 8.",
      "No work is listed for each dish, and the job has 1.",
    ]));
  const others = (count: number): Row[] =>
    Array.from({ length: count }, (_, index) => ({ name: `Other ${index}`, piece: "" }));
  test.each<[string, readonly Row[], Row, number]>([
    ["five pieces with work", OTHERS.slice(1), COUNTS, 0],
    ["half of the rows go by pieces", [...OTHERS, ...others(6)], COUNTS, 1],
    ["fewer do", [...OTHERS, ...others(7)], COUNTS, 0],
    ["work is counted by the outlet", [...OTHERS, { name: "All", per_outlet: 1 }], COUNTS, 0],
    ["by no outlet", [...OTHERS, { name: "All", per_outlet: 0 }], COUNTS, 1],
    ["the job has none", OTHERS, { ...COUNTS, pieces_wall_plate: 0 }, 0],
    ["nobody knows how many", OTHERS, { ...COUNTS, pieces_wall_plate: "?" }, 0],
  ])("%s", (_, labour, counts, wanted) => expect(lacking(labour, counts)).toHaveLength(wanted));
});

describe("a cable's own figures, far from its built-in type", () => {
  const cable = (k0: number, more: Row = {}) =>
    of({ cables: [{ name: "C1", like: "Series 6", k1: 0, k2: 0, k0, ...more }] });
  const FAR = {
    ...DOUBTFUL,
    place: at("cables_k1", 1),
    effect: "Every outlet on it is predicted too much level, or too little.",
  };
  // Series 6 loses 6.2127 + 0.2069 + 0.1358 = 6.555 dB per 100 ft at 1000 MHz, 21.508 dB per 100 m.
  test("those of 100 ft", () =>
    // 0.2 · √1000 + 0.002 · 1000 + 0.1
    expect(cable(0.1, { k1: 0.2, k2: 0.002 })).toStrictEqual([
      {
        ...FAR,
        message:
          "C1 loses 8.4 dB per 100 m at 1000 MHz by its own figures; its built-in type, series 6, 21.5.",
        expected: "Figures per 100 m: these are those of 100 ft.",
      },
    ]));
  test("others", () =>
    expect(cable(60)).toStrictEqual([
      {
        ...FAR,
        message:
          "C1 loses 60.0 dB per 100 m at 1000 MHz by its own figures; its built-in type, series 6, 21.5.",
        expected: "Figures near those of its type, or another type.",
      },
    ]));
  test.each([
    // Half of it and twice it are 10.754 and 43.015.
    [10.75, /^Figures near/],
    [10.76, undefined],
    [43.01, undefined],
    [43.02, /^Figures near/],
    // 21.508 / 1.35 / 3.2808 and 21.508 · 1.35 / 3.2808
    [4.85, /^Figures near/],
    [4.86, /100 ft/],
    [8.84, /100 ft/],
    [8.86, /^Figures near/],
  ])("%d dB", (loss, expected) => {
    if (expected) expect(cable(loss)[0]!.expected).toMatch(expected);
    else expect(cable(loss)).toEqual([]);
  });
  test.each<[Row]>([[{ k1: "" }], [{ k2: "" }], [{ k0: "" }], [{ like: "rope" }], [{ like: "" }]])(
    "with %j there is nothing to hold to each other",
    (more) => expect(cable(60, more)).toEqual([]),
  );
});

describe("what every outlet has", () => {
  const cables = (...more: Row[]): Row[] => [
    { name: "Trunk", like: "series 11, copper" },
    { name: "Drop", like: "Series 6" },
    ...more,
  ];
  const usual = (usualCable: string, of: Row[]) => said({ cables: of }, { site_usual_cable: usualCable });
  const TRUNK = {
    ...DOUBTFUL,
    place: atField("site_usual_cable"),
    message: "The usual cable is Trunk, of series 11, copper: a cable for trunks.",
    expected: "A cable of series 6 or 59, as outlets have (common practice, no source).",
    effect: "Every run that names no cable is bought in it.",
  };
  test("a cable for trunks, where another is on Parts", () => {
    const field = { site_usual_cable: "trunk" };
    expect(of({ cables: cables() }, field)).toStrictEqual([{ ...TRUNK, meant: "Drop", isGuess: true }]);
    for (const like of ["series 59", "series 7"])
      expect(of({ cables: cables({ name: "Thin", like }) }, field)).toStrictEqual([TRUNK]);
  });
  test.each<[string, string, Row[]]>([
    ["no other", "Trunk", cables().slice(0, 1)],
    ["none of series 6, 59 or 7", "Trunk", [cables()[0]!, { name: "Own", like: "own series 6" }]],
    ["another", "Drop", cables()],
    ["of series 110", "Far", cables({ name: "Far", like: "series 110" })],
    ["that is not there", "Rope", cables()],
  ])("a cable, %s: nothing", (_, name, list) => expect(usual(name, list)).toEqual([]));
  const plate = (name: string, from: string, ...plates: Row[]) =>
    of(
      {
        plates,
        rooms: [
          { outlet: "A", from: "H" },
          { outlet: "b", from },
        ],
      },
      { site_usual_plate: name },
    );
  const LOOP: Row = { name: "Loop", through_low: 2 };
  const END: Row = { name: "End" };
  const THROUGH = {
    ...DOUBTFUL,
    place: atField("site_usual_plate"),
    message: "The usual wall plate is Loop, which has a through port, and no outlet is fed from another.",
    expected: "A plate without a through port.",
    effect: "Each has an open port, loses more, and wants an end resistor.",
  };
  test("a plate with a through port, and no outlet is fed from another", () => {
    expect(plate("loop", "H", LOOP, END)).toStrictEqual([{ ...THROUGH, meant: "End", isGuess: true }]);
    expect(plate("Loop", "H", LOOP, END, { name: "Other" })).toStrictEqual([THROUGH]);
    expect(plate("Loop", "H", LOOP)).toStrictEqual([THROUGH]);
    expect(plate("End", "H", LOOP, END)).toEqual([]);
    expect(plate("Loop", "a", LOOP, END)).toEqual([]);
    expect(plate("none", "H", LOOP, END)).toEqual([]);
  });
});

describe("a device that keeps commands from the head unit", () => {
  const dead = (commands: string, power: string, from: string, above = "all ports") =>
    of({
      rooms: [{ outlet: "a", from, check_commands: commands }],
      branches: [
        { id: "G1", device: "amp", from: "H" },
        { id: "G2", device: "tap", from: "G1" },
      ],
      passives: [
        { name: "Amp", power: above },
        { name: "Tap", power },
      ],
    });
  test("where receivers are dead behind it", () =>
    expect(dead("dead", "No", "g2")).toStrictEqual([
      {
        ...DOUBTFUL,
        weight: "wrong",
        place: at("passives_power", 2),
        message: "Tap passes no power, and receivers behind G2 can't command their head unit through it.",
        expected: "A device that passes power towards the head unit.",
        effect: "What hangs behind it gets no user band.",
        meant: "towards head unit",
      },
    ]));
  test("a device that feeds devices alone counts too", () =>
    expect(dead("dead", "all ports", "H", "no").map(({ message }) => message)).toEqual([
      "Amp passes no power, and receivers behind G1 can't command their head unit through it.",
    ]));
  test("no receiver is dead, it passes power, or it feeds nothing: nothing", () =>
    expect([dead("ok", "no", "G2"), dead("dead", "all ports", "G2"), dead("dead", "no", "H")]).toEqual([
      [],
      [],
      [],
    ]));
});

describe("work that is counted twice", () => {
  const COUNTS = { count_outlets: 8, pieces_wall_plate: 8, pieces_splitter: 3 };
  const twice = (more: Row) => of({ labour: [{ name: "Work", ...more }] }, COUNTS);
  const TWICE = { ...DOUBTFUL, expected: "One of the two.", effect: "It is priced twice." };
  test("for each plate and for each outlet, of which there are as many", () =>
    expect(twice({ piece: "Wall plate", per_outlet: 1 })).toStrictEqual([
      {
        ...TWICE,
        place: at("labour_per_outlet", 1),
        message: "Work is counted for each wall plate, and for each outlet too: twice for 8 outlets.",
        undoing: [{ place: at("labour_per_outlet", 1) }],
      },
    ]));
  test.each([
    ["per_outlet", "splitter", "each splitter, and for each outlet"],
    ["per_branch", "wall plate", "each wall plate, and for each device"],
    ["per_head", "splitter", "each splitter, and for each head unit"],
    ["per_floor", "splitter", "each splitter, and for each floor"],
    ["per_day", "splitter", "each splitter, and for each day"],
  ])("%s and for each %s", (key, piece, told) =>
    expect(twice({ piece, [key]: 1 })).toStrictEqual([
      { ...TWICE, place: at(`labour_${key}`, 1), message: `Work is counted for ${told} too.` },
    ]),
  );
  test("for the job and for each day; a piece goes before", () => {
    expect(twice({ fixed: 1, per_day: 2 })).toStrictEqual([
      {
        ...TWICE,
        place: at("labour_per_day", 1),
        message: "Work is counted for the job, and for each day too.",
      },
    ]);
    expect(twice({ piece: "splitter", fixed: 1, per_day: 2 })[0]!.message).toBe(
      "Work is counted for each splitter, and for each day too.",
    );
  });
  test.each<[Row]>([
    [{ piece: "wall plate", fixed: 1 }],
    [{ piece: "wall plate", per_outlet: 0 }],
    [{ per_outlet: 1, per_branch: 1 }],
    [{ fixed: 1 }],
    [{ per_day: 1 }],
  ])("%j: nothing", (more) => expect(twice(more)).toEqual([]));
});

describe("one supplier under two names", () => {
  const suppliers = (...names: string[]) => of({ cables: names.map((supplier) => ({ supplier })) });
  const four = ["Norden", "norden", "norden", "Norden"];
  test("each of two odd ones, in other lists too", () =>
    expect(
      of({
        cables: [...four, "Nordan"].map((supplier) => ({ supplier })),
        fittings: ["Norden", "Nordan"].map((supplier) => ({ supplier })),
      }),
    ).toStrictEqual(
      [at("cables_supplier", 5), at("fittings_supplier", 2)].map((place) => ({
        ...DOUBTFUL,
        place,
        message: "The supplier is “Nordan” here, and “Norden” in 5 other rows.",
        expected: "“Norden”, if it is the same.",
        effect: "The order list makes an order of its own for it.",
        meant: "Norden",
      })),
    ));
  test.each<[string, string[], number]>([
    ["among three", [...four.slice(1), "Nordan"], 1],
    ["among two", [...four.slice(2), "Nordan"], 0],
    ["two among four", [...four, "Nordan", "Nordan"], 0],
    ["three among seven", [...four, ...four.slice(1), "Nordan", "Nordan", "Nordan"], 0],
    ["two letters off", [...four, "Nardan"], 1],
    ["three letters off", [...four, "Nardar"], 0],
    ["of five letters", ["Nords", "Nords", "Nords", "Nordo"], 0],
    ["with a digit", [...four, "Norde2"], 0],
    ["the others with a digit", ["Norden2", "Norden2", "Norden2", "Nordens"], 0],
  ])("%s", (_, names, wanted) => expect(suppliers(...names)).toHaveLength(wanted));
});

describe("a conductor of less than half of what is asked", () => {
  const bond = (size: number | string, kind = "Mast earthing, copper") =>
    of({ bonds: [{ where: "Mast", size, kind }] });
  test("is told", () =>
    expect(bond(7.9)).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("bonds_size", 1),
        message: "Mast has 7.9 mm².",
        expected:
          "16 mm² or more: IEC/EN 60728-11 (from works that quote it; national annexes differ): mast earthing conductor of copper 16 mm² or more.",
        effect: "It would carry a fraction of what it is for; the local code and licensed practice decide.",
      },
    ]));
  test("half of it, no size, or another kind: nothing", () =>
    expect([bond(8), bond(""), bond(1, "rope")]).toEqual([[], [], []]));
});
