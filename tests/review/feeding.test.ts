/** What is said of an outlet, a device or a switch whose feed is not there, is two, or goes round: each finding whole. */
import { feeding } from "../../src/review/rules/feeding";
import type { Book } from "../../src/workbooks/book";
import { at, found, messages, smallBook, type Row } from "./smallBook";

const said = (book: Book): string[] => messages(feeding, book);
const LOST = "Its level cannot be found, and its tuners are counted nowhere.";
const heads: Row[] = [{ id: "H1" }];
/** Rows of a block by two of its columns. */
const pairs =
  (name: string, other: string) =>
  (...rows: [string, string][]): Row[] =>
    rows.map(([one, two]) => ({ [name]: one, [other]: two }));
const devices = pairs("id", "from");
const outlets = pairs("outlet", "from");
const feeders = pairs("from", "to");
const switches = pairs("id", "type");

test("a tree from its head unit down, outlets that pass on to the next included: nothing", () => {
  const book = smallBook({
    heads,
    branches: devices(["G1", "H1"], ["G2", "g1"]),
    rooms: outlets(["a", "G1"], ["b", "A"], ["c", "H1"]),
  });
  expect(said(book)).toEqual([]);
  expect(said(smallBook({}))).toEqual([]);
});

describe("fed from nothing", () => {
  const UNFED = {
    weight: "wrong",
    expected: "A device, head unit or outlet of this workbook.",
    effect: LOST,
    remedy: "Enter the name of what feeds it as it stands on Distribution, Head units or Rooms.",
  };
  test("a blank, and a name that is not there, of an outlet and of a device", () =>
    expect(
      found(
        feeding,
        smallBook({ heads, branches: devices(["G1", "H9"]), rooms: outlets(["a", ""], ["b", "G7"]) }),
      ),
    ).toStrictEqual([
      { ...UNFED, place: at("rooms_from", 1), message: "Nothing feeds a." },
      { ...UNFED, place: at("rooms_from", 2), message: "b is fed from G7, which is not there." },
      { ...UNFED, place: at("branches_from", 1), message: "G1 is fed from H9, which is not there." },
    ]));
  test("a name with a blank at its end", () =>
    expect(
      found(feeding, smallBook({ heads, branches: devices(["G1", "H1"]), rooms: outlets(["a", "G1 "]) })),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: at("rooms_from", 1),
        message: "a is fed from “G1 ”, with a blank at its end.",
        expected: "“G1”, as in branches_id A2.",
        effect: LOST,
        remedy: "Enter the name again.",
        meant: "G1",
      },
    ]));
  const renamed = (...ids: string[]) =>
    found(
      feeding,
      smallBook({
        heads,
        branches: ids.map((id) => ({ id, from: "H1" })),
        rooms: outlets(["a", "G2"], ["b", "H1"], ["c", "G3 new"]),
      }),
    );
  test("what feeds nothing and is called so with a word more was renamed", () => {
    const [finding] = renamed("G2 old", "G3 new");
    expect(finding).toStrictEqual({
      ...UNFED,
      place: at("rooms_from", 1),
      message: "a is fed from G2, which is not there.",
      undoing: [{ place: at("branches_id", 1), value: "G2" }],
      isGuess: true,
    });
  });
  test.each([
    ["two begin so", ["G2 old", "G2 new", "G3 new"]],
    ["none begins so", ["G3 new", "G2old"]],
    ["it begins otherwise", ["old G2 ", "G3 new"]],
  ])("%s: nothing was", (_, ids) => {
    const [finding] = renamed(...ids);
    expect(finding!.message).toBe("a is fed from G2, which is not there.");
    expect(finding).not.toHaveProperty("undoing");
  });
  test("what feeds something was not renamed", () => {
    const rooms = outlets(["a", "G3"]);
    const idle = { branches: devices(["G3 new", "H1"]), heads: [{ id: "H1" }], rooms };
    expect(found(feeding, smallBook(idle))[0]).toHaveProperty("undoing");
    for (const used of [
      { rooms: [...rooms, { outlet: "b", from: "g3 NEW" }] },
      { branches: devices(["G3 new", "H1"], ["G4", "G3 new"]) },
    ])
      expect(found(feeding, smallBook({ ...idle, ...used }))[0]).not.toHaveProperty("undoing");
  });
});

describe("two feeders of one name", () => {
  const TWICE = {
    weight: "wrong",
    place: at("branches_id", 2),
    message: "g1 is the name of another feeder too, in branches_id A2.",
    effect: "Its feed is ambiguous; the first match is used.",
    remedy: "Rename one, and correct “fed from” where it was meant.",
  };
  const two = devices(["G1", "H1"], ["g1", "H1"]);
  test("the second has lost the name that something is fed from", () =>
    expect(
      found(
        feeding,
        smallBook({
          heads,
          branches: two,
          rooms: outlets(["a", "G1"], ["b", "G2"], ["c", "G2"], ["d", "G3"]),
        }),
      ),
    ).toStrictEqual([
      { ...TWICE, meant: "G2", expected: "A name of its own: G2, by what is fed from it." },
      expect.objectContaining({ message: "d is fed from G3, which is not there." }),
    ]));
  test("without one that is lost it needs a name of its own", () =>
    expect(found(feeding, smallBook({ heads, branches: two }))).toStrictEqual([
      { ...TWICE, expected: "A name of its own." },
    ]));
  test("a head unit called as a device; the name lost by a device is wanted by another", () =>
    expect(
      found(
        feeding,
        smallBook({
          heads: [{ id: "H1" }, { id: "G1" }, { id: "G1" }],
          branches: devices(["G1", "H1"], ["G5", "H2"]),
        }),
      ).map(({ message, place, meant }) => [message, place, meant]),
    ).toEqual([
      ["G1 is the name of another feeder too, in branches_id A2.", at("heads_id", 2), "H2"],
      ["G1 is the name of another feeder too, in branches_id A2.", at("heads_id", 3), undefined],
    ]));
});

describe("one outlet in two rows", () => {
  test("of two feeders", () =>
    expect(
      found(
        feeding,
        smallBook({ heads: [{ id: "H1" }, { id: "H2" }], rooms: outlets(["a", "H1"], ["A", "H2"]) }),
      ),
    ).toContainEqual({
      weight: "wrong",
      place: at("rooms_from", 2),
      message: "A is fed from H2 here and from H1 further up.",
      expected: "One feeder for each outlet.",
      effect: "It is counted and priced twice, and its tuners on both.",
      remedy: "Clear the row that is wrong, or give the second outlet a name of its own.",
    }));
  const both = [{ id: "H1" }, { id: "H2" }];
  test("of one feeder, or one of them of none: that is another rule's", () => {
    expect(said(smallBook({ heads: both, rooms: outlets(["a", "H1"], ["a", "h1"]) }))).toEqual([]);
    expect(said(smallBook({ heads: both, rooms: outlets(["a", ""], ["a", "h1"]) }))).toEqual([
      "Nothing feeds a.",
    ]);
    expect(said(smallBook({ heads: both, rooms: outlets(["a", ""], ["a", "H1"], ["a", "H2"]) }))).toEqual([
      "a is fed from H2 here and from H1 further up.",
      "Nothing feeds a.",
    ]);
    expect(said(smallBook({ heads: both, rooms: outlets(["a", "H1 "], ["a", "h1"]) }))).toEqual([
      "a is fed from “H1 ”, with a blank at its end.",
    ]);
    expect(said(smallBook({ rooms: [{ outlet: "a" }] }))).toEqual([]);
  });
});

describe("round in a ring", () => {
  test("is told once, at the one of it that stands highest, with how many it goes round by", () =>
    expect(
      found(
        feeding,
        smallBook({
          branches: devices(["G1", "G2"], ["G2", "G3"], ["G3", "G2"]),
          rooms: outlets(["a", "a"]),
        }),
      ),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: at("branches_from", 2),
        message: "G2 is fed by itself, round by 1 other.",
        expected: "A way from each device and outlet back to a head unit.",
        effect: "No level behind it can be found.",
        remedy: "Compare “fed from” with the plan; one of them names the wrong one.",
      },
      expect.objectContaining({ place: at("rooms_from", 1), message: "a is fed by itself." }),
    ]));
  test("of three; and of two of one name the first counts", () => {
    expect(said(smallBook({ branches: devices(["G1", "G2"], ["G2", "G3"], ["G3", "G1"]) }))).toEqual([
      "G1 is fed by itself, round by 2 others.",
    ]);
    expect(said(smallBook({ heads, branches: devices(["G1", "H1"], ["G1", "G1"]) }))).toEqual([
      "G1 is the name of another feeder too, in branches_id A2.",
    ]);
  });
});

describe("dishes and switches", () => {
  const NOT_THERE = {
    weight: "wrong",
    effect: "What comes from it cannot be found, and nothing of it is counted.",
    remedy: "Enter the name as it stands on Dishes or Head units.",
  };
  test("named where they are not there", () =>
    expect(
      found(
        feeding,
        smallBook({
          dishes: [{ name: "D1" }],
          heads: [
            { id: "H1", dish: "D9" },
            { id: "H2", dish: "d1" },
          ],
          feeders: feeders(["X1", "H1"], ["d1", "Y1"], ["h1", "H2"]),
        }),
      ),
    ).toStrictEqual([
      {
        ...NOT_THERE,
        place: at("heads_dish", 1),
        message: "D9 is named here, and is not there.",
        expected: "A dish of the sheet Dishes.",
      },
      {
        ...NOT_THERE,
        place: at("feeders_from", 1),
        message: "X1 is named here, and is not there.",
        expected: "A dish, or the switch before.",
      },
      {
        ...NOT_THERE,
        place: at("feeders_to", 2),
        message: "Y1 is named here, and is not there.",
        expected: "A head unit of this workbook.",
      },
    ]));
  test("without dishes the one dish is called so", () => {
    const said = (dish: string, dishes: Row[]) =>
      messages(feeding, smallBook({ dishes, heads: [{ id: "H1", dish }] }));
    expect(said("Dish", [])).toEqual([]);
    expect(said("Dish", [{ name: "D1" }])).toEqual(["Dish is named here, and is not there."]);
  });
  test("a dish that was given another name; one whose name a device has was not", () => {
    const of = (...ids: string[]) =>
      found(
        feeding,
        smallBook({
          dishes: [{ name: "D1 north" }],
          heads: [{ id: "H1", dish: "D1" }],
          branches: ids.map((id) => ({ id, from: "H1" })),
        }),
      );
    expect(of()).toStrictEqual([
      {
        ...NOT_THERE,
        place: at("heads_dish", 1),
        message: "D1 is named here, and is not there.",
        expected: "A dish of the sheet Dishes.",
        undoing: [{ place: at("dishes_name", 1), value: "D1" }],
        isGuess: true,
      },
    ]);
    expect(of("D1")[0]).not.toHaveProperty("undoing");
  });
});

describe("a switch to which no feeder comes", () => {
  const dishes = [{ name: "D1" }];
  const alike = (...ids: string[]): Row[] => ids.map((id) => ({ id, type: "switch" }));
  const NONE = {
    weight: "wrong",
    effect: "What hangs on it cannot be worked out, and no cable to it is bought.",
    remedy: "Compare with the plan: was its row left out?",
  };
  const lost = (id: string) => `No feeder comes to ${id}, and one comes to each other of its kind.`;
  test("has its row put into the gap, with what the rows between switches have", () => {
    const book = smallBook({
      dishes,
      heads: alike("S1", "S2", "S3", "S4"),
      feeders: [
        {},
        { from: "D1", to: "S1", cable: "thick", length: 90 },
        { from: "S1", to: "S2", cable: "coax", length: 10 },
        {},
        { from: "S3", to: "S4", cable: "coax", length: 20 },
        {},
      ],
    });
    const [finding, ...others] = found(feeding, book);
    expect(others).toEqual([]);
    const { undoing, ...rest } = finding!;
    expect(rest).toStrictEqual({
      ...NONE,
      place: at("feeders_from", 4),
      message: lost("S3"),
      expected: "A row from a dish, or from the switch before, likely S2.",
      isGuess: true,
    });
    expect(new Set(undoing)).toEqual(
      new Set([
        { place: at("feeders_from", 4), value: "S2" },
        { place: at("feeders_to", 4), value: "S3" },
        { place: at("feeders_cable", 4), value: "coax" },
        { place: at("feeders_length", 4), value: 15 },
      ]),
    );
  });
  test("without a gap the row after them, not one before", () => {
    const rows = [{}, ...feeders(["D1", "S1"], ["S1", "S2"]), {}];
    const [finding] = found(feeding, smallBook({ dishes, heads: alike("S1", "S2", "S3"), feeders: rows }));
    expect(finding!.place).toEqual(at("feeders_from", 4));
    expect(finding!.undoing).toEqual([
      { place: at("feeders_from", 4), value: "S2" },
      { place: at("feeders_to", 4), value: "S3" },
    ]);
  });
  test("without a free row it is told at the switch; what it feeds itself is not before it", () => {
    const rows = feeders(["D1", "S1"], ["S3", "S2"]);
    expect(
      found(feeding, smallBook({ dishes, heads: alike("S1", "S2", "S3"), feeders: rows })),
    ).toStrictEqual([
      {
        ...NONE,
        place: at("heads_id", 3),
        message: lost("S3"),
        expected: "A row from a dish, or from the switch before, likely S1.",
      },
    ]);
  });
  test("nothing is put in where no row between switches is there, or it is not known which is before", () => {
    const told = (...ids: string[]) =>
      found(
        feeding,
        smallBook({
          dishes,
          heads: alike(...ids, "S9"),
          feeders: [...ids.map((to) => ({ from: "D1", to })), {}],
        }),
      );
    const row = { ...NONE, message: lost("S9") };
    expect(told("S1")).toStrictEqual([
      {
        ...row,
        place: at("feeders_from", 2),
        expected: "A row from a dish, or from the switch before, likely S1.",
      },
    ]);
    expect(told("S1", "S2")).toStrictEqual([
      { ...row, place: at("feeders_from", 3), expected: "A row from a dish, or from the switch before." },
    ]);
  });
  test.each<[string, Row[], Row[]]>([
    [
      "the only one of its kind",
      switches(["S1", "A"], ["S2", "A"], ["S3", "B"]),
      feeders(["D1", "S1"], ["D1", "S2"]),
    ],
    ["two of a kind", switches(["S1", "A"], ["S2", "A"], ["S3", "A"]), feeders(["D1", "S1"])],
    [
      "one of each kind",
      switches(["S1", "A"], ["S2", "A"], ["S3", "B"], ["S4", "B"]),
      feeders(["D1", "S1"], ["D1", "S3"]),
    ],
    [
      "with two to one of the others",
      switches(["S1", "A"], ["S2", "A"]),
      feeders(["D1", "S1"], ["D1", "S1"]),
    ],
  ])("%s: nothing", (_, heads, rows) =>
    expect(said(smallBook({ dishes, heads, feeders: rows }))).toEqual([]),
  );
});

describe("a feeder the wrong way round", () => {
  const dishes = [{ name: "D1" }];
  const three = [{ id: "S1" }, { id: "S2" }, { id: "S3" }];
  test("goes to a switch that has one, from one that has none", () =>
    expect(
      found(
        feeding,
        smallBook({ dishes, heads: three, feeders: feeders(["D1", "S1"], ["S2", "s1"], ["D1", "S3"]) }),
      ),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: at("feeders_from", 2),
        message: "The feeder from S2 to s1: another comes there, and none to S2.",
        expected: "From s1 to S2, likely.",
        undoing: [
          { place: at("feeders_from", 2), value: "s1" },
          { place: at("feeders_to", 2), value: "S2" },
        ],
        isGuess: true,
        effect: "Neither can be worked out, nor what hangs on them.",
        remedy: "Compare with the plan: was it typed the wrong way round?",
      },
    ]));
  test.each<[string, Row[]]>([
    ["two of them", feeders(["D1", "S1"], ["S2", "S1"], ["S3", "S1"])],
    ["two dishes to one", feeders(["D1", "S1"], ["D1", "S1"], ["S1", "S2"], ["D1", "S3"])],
    ["one comes to where it is from", feeders(["D1", "S1"], ["S2", "S1"], ["D1", "S2"], ["D1", "S3"])],
  ])("%s: nothing", (_, rows) =>
    expect(said(smallBook({ dishes, heads: three, feeders: rows }))).toEqual([]),
  );
});

describe("a number of cables that does not fit", () => {
  const book = (quantities: readonly (number | string)[], more: Row = { check_row: "bad" }): Book =>
    smallBook({
      dishes: [{ name: "D1" }],
      heads: quantities.map((_, index) => ({ id: `S${index + 1}` })),
      feeders: quantities.map((quantity, index) => ({
        from: "D1",
        to: `S${index + 1}`,
        quantity,
        ...(quantity !== "" && more),
      })),
    });
  test("where the other rows leave it to their kind", () =>
    expect(found(feeding, book(["", 3], { check_row: "bad", check_trouble: "S2 takes 4." }))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("feeders_quantity", 2),
        message: "3 cables run from D1 to S2: S2 takes 4.",
        expected: "Blank, as in the other rows: what the kind of head unit asks.",
        undoing: [{ place: at("feeders_quantity", 2) }],
        isGuess: true,
        effect: "What hangs on it is not worked out, and another number of cables is bought.",
        remedy: "Clear the cell, or correct the number.",
      },
    ]));
  test.each<[string, Book, string[]]>([
    ["one, without a reason", book(["", 1]), ["1 cable runs from D1 to S2: they do not fit."]],
    [
      "a reason that is an error",
      book(["", 2], { check_row: "bad", check_trouble: { error: "#N/A" } }),
      ["2 cables run from D1 to S2: they do not fit."],
    ],
    ["two rows counted", book([2, 2]), []],
    ["the only row", book([2]), []],
    ["a number that fits", book(["", 2], { check_row: "good" }), []],
    ["no number", book(["", "two"]), []],
  ])("%s", (_, of, wanted) => expect(said(of)).toEqual(wanted));
});
