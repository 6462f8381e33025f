/** What keeps the power from a head unit: each finding whole, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { supply } from "../../src/review/rules/supply";
import { at, found, smallBook, type Row } from "./smallBook";

type Blocks = Readonly<Record<string, readonly Row[]>>;
const told = (blocks: Blocks): Finding[] => found(supply, smallBook(blocks));
const said = (blocks: Blocks): string[] => told(blocks).map(({ message }) => message);

describe("the load of a kind of head unit", () => {
  test("of more than three amperes was meant in watts", () =>
    expect(told({ units: [{ name: "multiswitch", load: 7.2, kind: " A" }] })).toStrictEqual([
      {
        weight: "doubtful",
        place: at("units_kind", 1),
        message: "multiswitch is said to draw 7.2 A.",
        expected: "W, if 7.2 watts were meant; a head unit draws a few tenths of an ampere.",
        effect: "Its volts are predicted far too low.",
        remedy: "Compare with the maker's sheet: amperes or watts.",
        meant: "W",
      },
    ]));
  test("three amperes, watts, no number, no unit or no name: nothing", () => {
    expect(
      told({
        units: [
          { name: "a", load: 3, kind: "A" },
          { name: "b", load: 7, kind: "W" },
          { name: "c", load: "7", kind: "A" },
          { name: "d", load: 7, kind: "" },
          { name: "", load: 7, kind: "A" },
        ],
      }),
    ).toEqual([]);
    expect(told({ units: [{ name: "a", load: 7 }] })).toEqual([]);
  });
});

describe("a device that passes no power", () => {
  const passives = [
    { name: "Splitter", power: "no" },
    { name: "Tap", power: "yes" },
  ];
  const branch = (id: string, from: string, device: string): Row => ({ id, from, device });
  const house = (branches: Row[], more: Blocks = {}): Blocks => ({
    heads: [{ id: "H1", supply: "", check_power: "low" }],
    passives,
    branches,
    rooms: [{ outlet: "a", from: "S1" }],
    ...more,
  });
  test("is told at Parts, for each place where it stops what could feed a head unit", () =>
    expect(
      told(
        house([
          branch("S1", "h1", "splitter"),
          branch("T1", "H1", "Tap"),
          branch("S2", "t1 ", "Splitter"),
          branch("S3", "S2", "Splitter"),
        ]),
      ),
    ).toStrictEqual(
      // From the head unit outwards.
      [
        ["splitter", "S1"],
        ["Splitter", "S2"],
      ].map(([part, place]) => ({
        weight: "wrong",
        place: at("passives_power", 1),
        message: `${part} passes no power, and H1 could be fed through one only, at ${place}.`,
        expected: "A device that passes power, or a supply that does not feed through it.",
        effect: "The head unit is dead.",
        remedy: "Take another device there, or give the head unit a supply of its own.",
      })),
    ));
  test.each<[string, Blocks]>([
    [
      "its volts are enough",
      house([branch("S1", "H1", "Splitter")], { heads: [{ id: "H1", check_power: "ok" }] }),
    ],
    [
      "it has a supply",
      house([branch("S1", "H1", "Splitter")], { heads: [{ id: "H1", supply: "PSU", check_power: "low" }] }),
    ],
    [
      "an outlet on it feeds it",
      house([branch("S1", "H1", "Splitter")], { rooms: [{ outlet: "a", from: "H1" }] }),
    ],
    [
      "an outlet feeds it past a tap",
      house([branch("S1", "H1", "Splitter"), branch("T1", "H1", "Tap")], {
        rooms: [{ outlet: "a", from: "T1" }],
      }),
    ],
    ["an inserter feeds it", house([branch("S1", "H1", "Splitter"), branch("P1", "H1", "Inserter")])],
    ["all pass power, round in a ring", house([branch("T1", "H1", "Tap"), branch("H1", "T1", "Tap")])],
    ["nothing hangs on it", house([branch("S1", "H2", "Splitter")])],
  ])("%s: nothing", (_, blocks) => expect(told(blocks)).toEqual([]));
});

describe("switches in a row without a supply", () => {
  const heads = (...supplies: readonly string[]): Row[] =>
    supplies.map((supply, index) => ({ id: `H${index + 1}`, supply, check_power: "low" }));
  const feeders = (...pairs: readonly (readonly [from: string, to: string])[]): Row[] =>
    pairs.map(([from, to]) => ({ from, to }));
  const LOW = {
    weight: "doubtful",
    expected: "A supply at one of them, unless their receivers are to feed them.",
    effect: "They are dead.",
    remedy: "Choose it from the list.",
  };
  const inRow = feeders(["Dish", "H1"], ["H1", "h2"], ["H2", "H3"]);
  test("are told at the last of them, with the one supply of the job", () =>
    expect(told({ heads: [...heads("", "", ""), { id: "X", supply: "PSU" }], feeders: inRow })).toStrictEqual(
      [
        {
          ...LOW,
          place: at("heads_supply", 3),
          message: "The 3 switches from here up have too few volts, and no supply.",
          meant: "PSU",
          isGuess: true,
        },
      ],
    ));
  test("one alone; with the one of Parts, or with none where there are several", () => {
    const one = { heads: heads(""), feeders: feeders(["Dish", "H1"]) };
    const told1 = { ...LOW, place: at("heads_supply", 1), message: "It has too few volts, and no supply." };
    expect(told({ ...one, supplies: [{ name: "12 V" }] })).toStrictEqual([
      { ...told1, meant: "12 V", isGuess: true },
    ]);
    expect(told({ ...one, supplies: [{ name: "12 V" }, { name: "18 V" }] })).toStrictEqual([told1]);
  });
  test.each<[string, Blocks, string[]]>([
    ["the first has a supply", { heads: heads("PSU", "", ""), feeders: inRow }, []],
    ["the last has one", { heads: heads("", "", "PSU"), feeders: inRow }, []],
    ["no feeder comes to it", { heads: heads(""), feeders: feeders(["H9", "H8"]) }, []],
    [
      "its volts are enough",
      { heads: [{ id: "H1", supply: "", check_power: "ok" }], feeders: feeders(["Dish", "H1"]) },
      [],
    ],
    [
      "no column of supplies",
      { heads: [{ id: "H1", check_power: "low" }], feeders: feeders(["Dish", "H1"]) },
      [],
    ],
    [
      "a ring before it",
      { heads: heads("", "", ""), feeders: feeders(["H1", "H2"], ["H2", "H1"], ["H2", "H3"]) },
      ["The 3 switches from here up have too few volts, and no supply."],
    ],
  ])("%s", (_, blocks, messages) => expect(said(blocks)).toEqual(messages));
});
