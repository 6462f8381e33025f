/** What is said of parts that a job lacks, and of those that nothing needs: each finding whole. */
import { partsNeeded } from "../../src/review/rules/partsNeeded";
import type { Finding } from "../../src/review/finding";
import { at, atField, found, smallBook, type Row } from "./smallBook";

/** Parts with how many the job takes of each. */
const fittings = (needed: Readonly<Record<string, number | string>>) => ({
  fittings: Object.keys(needed).map((name): Row => ({ name, fixed: "" })),
  fittings_bought: Object.values(needed).map((one): Row => ({ needed: one })),
});
const ALL = fittings({ "earth strap": 1, connector: 8, dish: 1 });
const of = (blocks: Readonly<Record<string, readonly Row[]>>, fields: Row = {}): Finding[] =>
  found(partsNeeded, smallBook({ rooms: [{ outlet: "a" }], ...ALL, ...blocks }, fields));
const named = (name: string, ...all: string[]): Row[] => all.map((one) => ({ [name]: one }));

test("a job with one of each, and no job: nothing", () => {
  expect(of({})).toEqual([]);
  expect(found(partsNeeded, smallBook({ fittings: [{ name: "x" }] }))).toEqual([]);
});

describe("what every job takes", () => {
  const LACKS = (what: string) => ({
    weight: "doubtful",
    place: at("fittings_name", 1),
    message: `No fitting that is counted is named for ${what}.`,
    expected: `A line for ${what}, unless others supply it.`,
    effect: "The price holds nothing for it.",
    remedy: "Add the fitting on Parts, or say under Exclusions who supplies it.",
  });
  const BLOCK = "a ground block or bonding bar, at which the cable screens are bonded";
  const screens = { bonds: [{ where: "bar", kind: "Cable screen bond" }] };
  test("in order; a block where screens are bonded", () => {
    const lacking = ["bonding or earthing", "connectors", "a dish"].map(LACKS);
    expect(of(fittings({ clip: 5 }))).toStrictEqual(lacking);
    expect(of({ ...fittings({ clip: 5 }), ...screens })).toStrictEqual([...lacking, LACKS(BLOCK)]);
    expect(of({ ...screens, bonds: [{ where: "bar", kind: "mast" }] })).toEqual([]);
  });
  test("a part that nothing counts is none", () =>
    expect(of(fittings({ strap: 1, "earth strap": 1, Plug: 0, dish: 1 }))).toStrictEqual([
      { ...LACKS("connectors"), place: at("fittings_fixed", 3), message: "Nothing counts “Plug”." },
      {
        weight: "worth knowing",
        place: at("fittings_name", 3),
        message: "Nothing needs Plug: it is counted by nothing.",
        remedy: "Say on Parts how many it takes, or clear the line.",
      },
    ]));
  test.each<[string, string[]]>([
    ["Bonding strap", ["bonding or earthing"]],
    ["GROUND wire", ["bonding or earthing"]],
    ["grounding wire", ["bonding or earthing"]],
    ["grounding block", [BLOCK]],
    ["ground block", [BLOCK]],
    ["earth bar", ["bonding or earthing", BLOCK]],
    ["clamp to bond", ["bonding or earthing", BLOCK]],
    ["earthing set", ["bonding or earthing", BLOCK]],
    ["bonding kit", ["bonding or earthing", BLOCK]],
    ["earth crossbar", ["bonding or earthing"]],
    ["connector", ["connectors"]],
    ["Plug", ["connectors"]],
    ["Antenna", ["a dish"]],
    ["reflector 80", ["a dish"]],
    ["clip", []],
  ])("“%s” is for %j", (name, serves) =>
    expect(of({ ...fittings({ [name]: 1 }), ...screens }).map(({ message }) => message)).toEqual(
      ["bonding or earthing", "connectors", "a dish", BLOCK]
        .filter((what) => !serves.includes(what))
        .map((what) => LACKS(what).message),
    ),
  );
});

describe("conductors", () => {
  test("none is listed", () => {
    expect(of({ bonds: [{ where: "" }] })).toStrictEqual([
      {
        weight: "doubtful",
        place: at("bonds_where", 1),
        message: "No bonding conductor is listed.",
        expected: "Each conductor to look at; the local code and licensed practice decide which.",
        remedy: "List them on Bonding, or have a licensed person say that there are none.",
      },
    ]);
  });
  const dishes = [
    { name: "D1", mounting: "wall" },
    { name: "D2", mounting: "on a Pole" },
  ];
  test("none is of a mast", () =>
    expect(of({ dishes, bonds: [{ where: "bar" }, { where: "" }] })[0]).toStrictEqual({
      weight: "doubtful",
      place: at("bonds_where", 2),
      message: "D2 stands on a mast (on a Pole), and no conductor of a mast is listed.",
      expected: "The conductor of the mast; the local code and licensed practice decide which.",
      effect: "It is neither priced nor looked at.",
      remedy: "List it on Bonding, or have a licensed person say that there is none.",
    }));
  test.each<[Row[], Row[], number]>([
    [dishes, [{ where: "the mast" }], 0],
    [dishes, [{ where: "bar", kind: "Mast earthing, copper" }], 0],
    [dishes, [{ where: "bar", kind: "tripods" }], 0],
    [dishes.slice(0, 1), [{ where: "bar" }], 0],
    [[{ name: "D1", mounting: "flagpole" }], [{ where: "bar" }], 0],
    [[{ name: "D1", mounting: "tripod" }], [{ where: "bar" }], 1],
  ])("%j %j", (of_, bonds, wanted) =>
    expect(
      of({ dishes: of_, bonds }).filter(({ message }) => / stands on a mast /.test(message)),
    ).toHaveLength(wanted),
  );
});

test("a head unit without a kind, and a device without a part", () => {
  const WITHOUT = {
    weight: "wrong",
    expected: "One of the Parts sheet.",
    effect: "It is neither priced nor worked out, nor what hangs on it.",
    remedy: "Choose it from the list.",
  };
  expect(
    of({
      rooms: [
        { outlet: "a", from: "H1" },
        { outlet: "b", from: "G1" },
      ],
      heads: [
        { id: "H1", type: "" },
        { id: "", type: "" },
      ],
      branches: [
        { id: "G0", device: "tap", from: "G1" },
        { id: "G1", device: " ", from: "G0" },
      ],
    }),
  ).toStrictEqual([
    { ...WITHOUT, place: at("heads_type", 1), message: "H1 has no kind of head unit." },
    { ...WITHOUT, place: at("branches_device", 2), message: "G1 has no part." },
  ]);
});

describe("cables with a length and of no kind", () => {
  const cables = {
    rooms: [
      { outlet: "a", run: 9, cable: "", from: "H1" },
      { outlet: "b", run: 9, cable: "thin", from: "G1" },
      { outlet: "", run: 9, cable: "" },
      { outlet: "c", run: "", cable: "" },
    ],
    branches: [{ id: "G1", device: "tap", length: 5, cable: "" }],
    heads: [{ id: "H1", type: "Q", length: 5, cable: "" }],
    feeders: [{ from: "D1", length: 5, cable: "" }],
  };
  test("of outlets, devices, head units and feeders, in this order", () =>
    expect(of(cables)).toStrictEqual(
      [
        ["rooms_cable", "a"],
        ["branches_cable", "G1"],
        ["heads_cable", "H1"],
        ["feeders_cable", "D1"],
      ].map(([column, name]) => ({
        weight: "wrong",
        place: at(column!, 1),
        message: `${name} has a length and no cable.`,
        expected: "A cable of the Parts sheet, here or as the usual one of Site.",
        effect: "It is neither priced nor worked out, nor what hangs on it.",
        remedy: "Choose it from the list.",
      })),
    ));
  test("where Site has a usual one: nothing", () =>
    expect(of(cables, { site_usual_cable: "thin" })).toEqual([]));
});

describe("outlets without a wall plate", () => {
  const plates = (all: string[], fields: Row = {}) =>
    of({ rooms: all.map((plate, index) => ({ outlet: `a${index + 1}`, plate })) }, fields);
  const NONE = {
    weight: "doubtful",
    expected: "A wall plate of the Parts sheet, here or as the usual one of Site.",
    effect: "None is bought or fitted, and nothing is lost in it.",
    remedy: "Choose it from the list, or say in the note that the cable ends at the receiver.",
  };
  test("fewer than have one: each", () =>
    expect(plates(["P", "P", "", "P", ""])).toStrictEqual(
      [3, 5].map((row) => ({
        ...NONE,
        place: at("rooms_plate", row),
        message: `a${row} has no wall plate.`,
      })),
    ));
  test("as many, or all: once, at the usual one of Site if there is such a cell", () => {
    expect(plates(["P", ""])).toStrictEqual([
      { ...NONE, place: at("rooms_plate", 2), message: "1 outlet has no wall plate." },
    ]);
    expect(plates(["", ""], { site_usual_plate: "" })).toStrictEqual([
      { ...NONE, place: atField("site_usual_plate"), message: "2 outlets have no wall plate." },
    ]);
  });
  test("with a usual one, or each with its own: nothing", () =>
    expect([plates(["P", ""], { site_usual_plate: "P" }), plates(["P", "P"])]).toEqual([[], []]));
});

describe("what feeds nothing", () => {
  const NOTHING = {
    weight: "doubtful",
    effect: "It is bought and fitted for nothing.",
    remedy: "Clear its row, or correct where the name of what feeds is asked for.",
  };
  test("a head unit, a device and one of two dishes", () =>
    expect(
      of({
        rooms: [{ outlet: "a", from: "h1" }],
        heads: [
          { id: "H1", type: "Q" },
          { id: "H2", type: "Q" },
        ],
        branches: [
          { id: "G1", device: "tap", from: "H1" },
          { id: "G2", device: "Inserter", from: "H1" },
        ],
        supplies: named("name", "inserter"),
        dishes: [
          { name: "D1", size: 0.9, feed: "F" },
          { name: "D2", size: 0.9, feed: "F" },
        ],
        feeders: [{ from: "d1", to: "H1" }],
      }),
    ).toStrictEqual([
      {
        ...NOTHING,
        place: at("heads_id", 2),
        message: "H2 feeds nothing.",
        expected: "A head unit that feeds something.",
      },
      {
        ...NOTHING,
        place: at("branches_id", 1),
        message: "G1 feeds nothing.",
        undoing: ["id", "from", "device"].map((key) => ({ place: at(`branches_${key}`, 1) })),
        isGuess: true,
        expected: "A device that feeds something.",
      },
      {
        ...NOTHING,
        place: at("dishes_name", 2),
        message: "D2 feeds nothing.",
        undoing: ["name", "size", "feed"].map((key) => ({ place: at(`dishes_${key}`, 2) })),
        isGuess: true,
        expected: "A dish that feeds something.",
      },
    ]));
  test("what feeds a device, a feeder or a head unit's dish, and the only dish: nothing", () => {
    const heads = [
      { id: "H1", type: "Q", dish: "D1" },
      { id: "H2", type: "Q", dish: "D2" },
    ];
    expect(
      of({
        rooms: [{ outlet: "a", from: "G1" }],
        heads,
        branches: [{ id: "G1", device: "tap", from: "H1" }],
        feeders: [{ from: "H2" }],
        dishes: named("name", "D1", "D2"),
      }),
    ).toEqual([]);
    expect(of({ dishes: named("name", "D1") })).toEqual([]);
  });
});

describe("a dish that is bought as nothing", () => {
  const dishes = (
    parts: string[],
    needed: Record<string, number>,
    sizes: (number | string)[] = [],
    usual = 0.9,
  ) =>
    of(
      {
        ...fittings({ "earth strap": 1, connector: 8, antenna: 1, ...needed }),
        dishes: parts.map((part, index) => ({ name: `D${index + 1}`, part, size: sizes[index] ?? "" })),
        heads: parts.map((_, index) => ({ id: "a", type: "Q", dish: `D${index + 1}` })),
        rooms: [{ outlet: "b", from: "a" }],
      },
      { site_dish: usual },
    ).filter(({ message }) => message.includes(" is bought as nothing"));
  const BOUGHT = {
    weight: "doubtful",
    expected: "The dish with its mount among the fittings of the Parts sheet.",
    effect: "The price holds no dish for it.",
    remedy: "Choose it from the list, or say under Exclusions who supplies it.",
  };
  test("while others are, with what is listed in its size", () => {
    expect(dishes(["dish 0.9 m", "", ""], { "dish 0.9 m": 1 }, ["", "", 1.2])).toStrictEqual([
      {
        ...BOUGHT,
        place: at("dishes_part", 2),
        message: "D2 is bought as nothing, and the other dishes are.",
        meant: "dish 0.9 m",
        isGuess: true,
      },
      {
        ...BOUGHT,
        place: at("dishes_part", 3),
        message: "D3 is bought as nothing, and the other dishes are.",
      },
    ]);
  });
  test("none is, and one of its size is listed that nothing counts", () => {
    expect(dishes(["", ""], { "dish 0.9 m": 0 }, [0.9, 1.2])).toStrictEqual([
      {
        ...BOUGHT,
        place: at("dishes_part", 1),
        message: "D1 is bought as nothing, and “dish 0.9 m” is listed.",
        meant: "dish 0.9 m",
        isGuess: true,
      },
    ]);
    expect(dishes([""], { "dish 0.9 m": 1 })).toEqual([]);
    expect(dishes([""], { "dish 0.9 m": 0 }, ["large"])).toEqual([]);
  });
});

describe("a dish without a feed, from which feeders come", () => {
  const feed = (feeds: string[], kinds: string[] = []) =>
    of({
      dishes: feeds.map((one, index) => ({ name: `D${index + 1}`, feed: one })),
      feeders: feeds.map((_, index) => ({ from: `d${index + 1}` })),
      feeds: named("name", ...kinds),
    });
  const FED = {
    weight: "wrong",
    place: at("dishes_feed", 2),
    message: "D2 has no feed, and feeders come from it.",
    expected: "A feed of the Parts sheet.",
    effect: "Nothing is received on it, and its feed is not priced.",
    remedy: "Choose it from the list.",
  };
  test("the one that the others have, else the only one of Parts, is likely meant", () => {
    expect(feed(["F", ""], ["E", "F"])).toStrictEqual([{ ...FED, meant: "F", isGuess: true }]);
    expect(feed(["F", "", "E"], ["E"])).toStrictEqual([{ ...FED, meant: "E", isGuess: true }]);
    expect(feed(["F", "", "E"], ["E", "F"])).toStrictEqual([FED]);
    expect(of({ dishes: [{ name: "D1", feed: "" }], feeders: [{ from: "D2" }] })).toEqual([]);
  });
});

describe("a loop-through plate from which nothing goes on", () => {
  const plates = [{ name: "Loop", through_low: 1 }, { name: "End" }];
  const looped = (rooms: Row[], usual = "", branches: Row[] = []) =>
    of({ rooms, plates, branches }, { site_usual_plate: usual }).filter(({ message }) =>
      message.includes("loop-through"),
    );
  const LOOPED = {
    weight: "doubtful",
    place: at("rooms_plate", 1),
    message: "a has a loop-through plate, and nothing goes on from it.",
    expected: "A single outlet; or the outlet that it feeds.",
    effect: "It costs more, and its open port must be closed.",
    remedy: "Choose the plate from the list, or name this outlet where the next one is fed.",
  };
  const alone = [{ outlet: "a", plate: "loop", from: "H" }];
  test("the usual plate takes its place where it is no such plate", () => {
    expect(looped(alone)).toStrictEqual([LOOPED]);
    expect(looped(alone, "End")).toStrictEqual([
      { ...LOOPED, undoing: [{ place: at("rooms_plate", 1) }], isGuess: true },
    ]);
    expect(looped(alone, "Loop")).toStrictEqual([LOOPED]);
  });
  test("another plate, one that feeds an outlet or a device, and the last of a row: nothing", () =>
    expect([
      looped([{ outlet: "a", plate: "End", from: "H" }]),
      looped([...alone, { outlet: "b", plate: "End", from: "A" }]),
      looped(alone, "", [{ id: "G1", device: "tap", from: "a" }]),
      looped([
        { outlet: "a", plate: "End", from: "H" },
        { outlet: "b", plate: "Loop", from: "A" },
      ]),
    ]).toEqual([[], [], [], []]));
});
