/** What is said of more than there are ports or connectors, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { feedCounts } from "../../src/review/rules/feedCounts";
import { at, found, smallBook, type Row } from "./smallBook";

type Blocks = Parameters<typeof smallBook>[0];
const all = (blocks: Blocks): Finding[] => found(feedCounts, smallBook(blocks));
const said = (blocks: Blocks): string[] => all(blocks).map(({ message }) => message);
const passives: Row[] = [
  { name: "four", kind: "splitter", ways: 4 },
  { name: "two tap", kind: "Tap", ways: 2 },
  { name: "one", kind: "splitter", ways: 1 },
  { name: "unknown", kind: "splitter", ways: "" },
];
/** Outlets a, b, c … on what feeds them. */
const outlets = (...from: string[]): Row[] =>
  from.map((one, index) => ({ outlet: String.fromCharCode(97 + index), from: one }));
const times = (count: number, from: string): string[] => Array.from({ length: count }, () => from);
const MANY = {
  weight: "wrong",
  effect: "Each is predicted the full level of a port.",
  remedy: "Compare “fed from” with the plan, first in this row; or choose a device with more ports.",
};

describe("a device", () => {
  const on = (device: string, rooms: Row[], more: Row[] = []) =>
    all({
      passives,
      supplies: [{ name: "inserter" }],
      branches: [{ id: "G0", device: "" }, { id: "G1", device, from: "" }, ...more],
      rooms,
    });
  test("with more than its ports, and none of them likely the slip: told at its part", () =>
    expect(on("FOUR", outlets(...times(5, "g1")))).toStrictEqual([
      {
        ...MANY,
        place: at("branches_device", 2),
        message: "G1 feeds 5: a, b, c, d, e. Its part has 4 ports.",
        expected: "As many as it has ports.",
      },
    ]));
  test.each<[string, string, number, string[]]>([
    ["a splitter of four", "four", 4, []],
    ["a tap of two has a way on", "two tap", 3, []],
    ["a tap of two, and one too many", "two tap", 4, ["G1 feeds 4: a, b, c, d. Its part has 3 ports."]],
    ["an inserter stands in a line", "inserter", 1, []],
    ["an inserter, and one too many", "Inserter", 2, ["G1 feeds 2: a, b. Its part has 1 port."]],
    ["one way", "one", 2, ["G1 feeds 2: a, b. Its part has 1 port."]],
    ["ways that nobody said", "unknown", 9, []],
    ["a part that is not there", "eight", 9, []],
    ["eight are listed", "four", 8, ["G1 feeds 8: a, b, c, d, e, f, g, h. Its part has 4 ports."]],
    [
      "of nine one is counted",
      "four",
      9,
      ["G1 feeds 9: a, b, c, d, e, f, g, h and 1 more. Its part has 4 ports."],
    ],
  ])("%s", (_, device, count, wanted) =>
    expect(on(device, outlets(...times(count, "G1"))).map(({ message }) => message)).toEqual(wanted),
  );
  test("the one device among outlets, and the one outlet among devices", () => {
    const device = (index: number): Row => ({ id: `T${index}`, from: "G1" });
    expect(on("four", outlets(...times(4, "G1")), [device(1)])[0]!.place).toEqual(at("branches_from", 3));
    expect(on("four", outlets("G1"), [1, 2, 3, 4].map(device))[0]!.place).toEqual(at("rooms_from", 1));
    expect(on("four", outlets("G1", "G1"), [1, 2, 3].map(device))[0]!.place).toEqual(
      at("branches_device", 2),
    );
  });
  test("the one of another floor; of two others, or of two floors, none is", () => {
    const floors = (...floor: string[]) =>
      floor.map((one, index) => ({ outlet: String.fromCharCode(97 + index), from: "G1", floor: one }));
    expect(on("four", floors("N", "n", "S", "N", "N"))[0]!.place).toEqual(at("rooms_from", 3));
    expect(on("four", floors("N", "N", "S", "N", "S"))[0]!.place).toEqual(at("branches_device", 2));
    expect(on("four", floors("N", "N", "S", "N", "W"))[0]!.place).toEqual(at("branches_device", 2));
    expect(on("one", floors("N", "S"))[0]!.place).toEqual(at("branches_device", 2));
  });
  test("outlets that no other floor has were pasted: their rows are cleared", () => {
    // Three floors of four, and 2-09 beside them.
    const rooms = [1, 2, 3].flatMap((floor) =>
      [1, 2, 3, 4].map((number) => ({ outlet: `${floor}-0${number}`, from: `G${floor}`, run: 9 })),
    );
    const pasted = (...more: Row[]) =>
      all({
        passives,
        branches: [1, 2, 3].map((floor) => ({ id: `G${floor}`, device: "four" })),
        rooms: [...rooms, ...more],
      });
    expect(pasted({ outlet: "2-09", from: "G2", run: 9 })).toStrictEqual([
      {
        ...MANY,
        place: at("rooms_from", 13),
        message: "G2 feeds 5: 2-01, 2-02, 2-03, 2-04, 2-09. Its part has 4 ports.",
        expected: "As many as it has ports.",
        undoing: [
          { place: at("rooms_outlet", 13) },
          { place: at("rooms_from", 13) },
          { place: at("rooms_run", 13) },
        ],
        isGuess: true,
      },
    ]);
    const two = pasted({ outlet: "2-09", from: "G2" }, { outlet: "2-10", from: "G2" });
    expect(two[0]!.undoing).toEqual(
      [13, 14].flatMap((row) => ["outlet", "from"].map((key) => ({ place: at(`rooms_${key}`, row) }))),
    );
    // One of the two would do: which, nobody knows.
    const more = pasted(
      { outlet: "1-05", from: "G2" },
      { outlet: "2-05", from: "G2" },
      { outlet: "2-09", from: "G2" },
    );
    expect(more[0]).not.toHaveProperty("undoing");
    // In a house whose floors differ a name of its own says nothing.
    expect(
      all({
        passives,
        branches: [{ id: "G1", device: "four" }],
        rooms: ["1-01", "2-02", "3-03", "4-04", "5-05"].map((outlet) => ({ outlet, from: "G1" })),
      })[0],
    ).not.toHaveProperty("undoing");
  });
});

describe("a head unit", () => {
  const units: Row[] = [
    { name: "single", outputs: "" },
    { name: "quad", outputs: 4 },
  ];
  const on = (type: string, rooms: Row[], branches: Row[] = []) =>
    all({ units, heads: [{ id: "H0" }, { id: "H1", type }], branches, rooms });
  test("of one output: told at the first outlet beside what parts it", () =>
    expect(on("single", outlets("h1", "H1"), [{ id: "G1", from: "H1" }])).toStrictEqual([
      {
        ...MANY,
        place: at("rooms_from", 1),
        message: "The one output of H1 feeds one thing, and 3 are said to hang there: G1, a, b.",
        expected: "One: a splitter parts it.",
      },
    ]));
  test("of four: told at the last device", () =>
    expect(
      on(
        "Quad",
        [],
        [1, 2, 3, 4, 5].map((one) => ({ id: `G${one}`, from: "H1" })),
      ),
    ).toStrictEqual([
      {
        ...MANY,
        place: at("branches_from", 5),
        message:
          "Each of the 4 outputs of H1 feeds one thing, and 5 are said to hang there: G1, G2, G3, G4, G5.",
        expected: "One each: a splitter parts it.",
      },
    ]));
  test("as many as it has outputs; of a kind that is not there it has one", () => {
    expect([
      on("quad", outlets(...times(4, "H1"))),
      on("single", outlets("H1")),
      on("octo", outlets("H1")),
    ]).toEqual([[], [], []]);
    expect(on("octo", outlets("H1", "H1"))).toHaveLength(1);
  });
  test("an outlet that nothing feeds hangs on none", () =>
    expect(said({ heads: [{ id: "" }], rooms: outlets("", "") })).toEqual([]));
});

describe("receivers at one outlet", () => {
  const receivers = (quantity: number | string, run: number | string, verdict = "too many") =>
    all({
      rooms: [
        { outlet: "a", quantity: 9, run: 1, check_connectors: "good" },
        { outlet: "b", quantity, run, check_connectors: verdict },
      ],
    });
  const [count, run] = [at("rooms_quantity", 2), at("rooms_run", 2)];
  test("that nothing splits", () =>
    expect(receivers(2, 20)).toStrictEqual([
      {
        weight: "doubtful",
        place: count,
        message: "b has 2 receivers, and nothing splits its connector.",
        expected: "One, or what splits them, in Split by.",
        usual: { low: 1, high: 1 },
        effect: "Only one of them can be connected.",
        remedy: "Look whether so many were meant, and name what splits them.",
      },
    ]));
  test.each<[number | string, number | string, boolean]>([
    [12, 1, true],
    [5, 4, true],
    // Four may stand at one outlet.
    [4, 1, false],
    [12, 5, false],
    [12, 0, false],
    [12, 1.5, false],
    [12, "", false],
  ])("%d over %j m: exchanged with the run is %s", (quantity, length, isExchanged) =>
    expect(receivers(quantity, length)[0]!.undoing).toEqual(
      isExchanged
        ? [
            { place: count, value: length },
            { place: run, value: quantity },
          ]
        : undefined,
    ),
  );
  test("one, none said, or as many as it has connectors: nothing", () =>
    expect([receivers(1, 20), receivers("", 20), receivers("2", 20), receivers(2, 20, "good")]).toEqual([
      [],
      [],
      [],
      [],
    ]));
});
