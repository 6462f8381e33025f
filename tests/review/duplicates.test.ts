/** What is said of what stands twice, under one name or nearly, each finding whole and each bound on both sides. */
import { duplicates } from "../../src/review/rules/duplicates";
import { at, found, messages, smallBook, type Row } from "./smallBook";

type Blocks = Parameters<typeof smallBook>[0];
const all = (blocks: Blocks) => found(duplicates, smallBook(blocks));
const said = (blocks: Blocks): string[] => messages(duplicates, smallBook(blocks));

describe("a name that stands twice", () => {
  const TWICE = { weight: "wrong", remedy: "Clear the row that was pasted twice, or rename it." };
  test("in a row that is the same throughout: it is cleared", () =>
    expect(
      all({
        plates: [
          { name: "flat", price: 6, note: "" },
          { name: "deep", price: 6 },
          { name: "flat", price: 6, note: "  " },
        ],
      }),
    ).toStrictEqual([
      {
        ...TWICE,
        place: at("plates_name", 3),
        message: "The part flat stands in A2 already.",
        expected: "Each once, under a name of its own.",
        effect: "The first is taken; both are bought.",
        undoing: [{ place: at("plates_name", 3) }, { place: at("plates_price", 3) }],
      },
    ]));
  test("in a row that differs: which of the two is called wrongly is not known", () =>
    expect(
      all({
        plates: [
          { name: "flat", price: 6 },
          { name: "FLAT ", price: 7 },
        ],
      }),
    ).toStrictEqual([
      {
        ...TWICE,
        place: at("plates_name", 2),
        message: "The part FLAT  stands in A2 already.",
        expected: "Each once, under a name of its own.",
        effect: "The first is taken; both are bought.",
      },
    ]));
  test("three times: both others are held to the first", () =>
    expect(said({ labour: [{ name: "fit" }, { name: "fit" }, { name: "fit" }] })).toEqual([
      "The work fit stands in A2 already.",
      "The work fit stands in A2 already.",
    ]));
  test("a site cost of one name may be two; a row pasted again is one", () => {
    const way = { name: "way", cost: 40 };
    expect(said({ sites: [way, { ...way, cost: 50 }] })).toEqual([]);
    expect(said({ sites: [way, way] })).toEqual(["The site cost way stands in A2 already."]);
  });
  test("in two lists, or nowhere: nothing", () => {
    expect(said({ plates: [{ name: "x" }], units: [{ name: "x" }] })).toEqual([]);
    expect(said({ plates: [{ name: "" }, { name: "" }] })).toEqual([]);
    expect(said({})).toEqual([]);
  });
});

describe("an outlet that stands twice is likely the one left out of its series", () => {
  /** Outlets by name, the last row of each its own. */
  const outlets = (...names: string[]): Row[] => names.map((outlet, index) => ({ outlet, run: index }));
  const meant = (...names: string[]) => all({ rooms: outlets(...names) }).map((one) => one.meant);
  test("whole", () =>
    expect(all({ rooms: outlets("A-08", "A-08", "A-10") })).toStrictEqual([
      {
        weight: "wrong",
        place: at("rooms_outlet", 2),
        message: "The outlet A-08 stands in A2 already.",
        expected: "Each once, under a name of its own: likely “A-09”.",
        effect: "It is counted and priced twice.",
        remedy: "Clear the row that was pasted twice, or rename it.",
        meant: "A-09",
        isGuess: true,
      },
    ]));
  test.each<[string, string[], (string | undefined)[]]>([
    ["a letter behind the number", ["8a", "8a", "10a"], ["9a"]],
    ["no row above", ["x", "", "X", "10"], [undefined]],
    ["no number above", ["hall", "hall", "bar"], [undefined]],
    ["no row below", ["A-08", "A-08"], [undefined]],
    ["the next but two below", ["A-08", "A-08", "A-11"], [undefined]],
    ["it is there already", ["A-09", "A-08", "A-08", "A-10"], [undefined]],
    ["it is there already, in capitals", ["a-09", "A-08", "A-08", "A-10"], [undefined]],
    ["the one below in capitals", ["a-08", "a-08", "A-10"], ["a-09"]],
    ["as on the other floor", ["1-08", "1-09a", "2-08", "2-08", "2-20"], ["2-09a"]],
    ["two floors that do not agree", ["1-08", "1-09a", "3-08", "3-10b", "2-08", "2-08", "2-20"], [undefined]],
    ["two floors that do", ["1-08", "1-09a", "3-08", "3-09a", "2-08", "2-08", "2-20"], ["2-09a"]],
  ])("%s", (_, names, wanted) => expect(meant(...names)).toEqual(wanted));
  test("a row that is the same is cleared, and has no other name", () => {
    const row = { outlet: "A-08", run: 9 };
    expect(all({ rooms: [row, row, { outlet: "A-10", run: 9 }] })).toStrictEqual([
      expect.objectContaining({
        expected: "Each once, under a name of its own.",
        undoing: [{ place: at("rooms_outlet", 2) }, { place: at("rooms_run", 2) }],
      }),
    ]);
  });
  test("a part is in no series", () =>
    expect(
      all({
        plates: [
          { name: "p8", price: 1 },
          { name: "p8", price: 2 },
          { name: "p10", price: 3 },
        ],
      })[0],
    ).not.toHaveProperty("meant"));
});

describe("two outlets of one room whose names differ by a nought or a stroke", () => {
  const rooms = (...rows: [outlet: string, floor: string, room: string][]) => ({
    rooms: rows.map(([outlet, floor, room]) => ({ outlet, floor, room })),
  });
  test("whole", () =>
    expect(all(rooms(["G-07", "G", "Bar"], ["g 7", "g", "BAR"]))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_outlet", 2),
        message: "g 7 in BAR is likely G-07 of A2 again.",
        expected: "Each outlet once.",
        effect: "It is counted and priced twice.",
        remedy: "Clear one of the two rows, or give them names that tell them apart.",
        undoing: [
          { place: at("rooms_floor", 2) },
          { place: at("rooms_room", 2) },
          { place: at("rooms_outlet", 2) },
        ],
        isGuess: true,
      },
    ]));
  test.each<[string, Blocks, string[]]>([
    ["on two floors", rooms(["G-07", "G", "Bar"], ["G7", "F", "Bar"]), []],
    ["in two rooms", rooms(["G-07", "G", "Bar"], ["G7", "G", "Hall"]), []],
    ["without a room", rooms(["G-07", "G", ""], ["G7", "G", ""]), []],
    ["7 and 70", rooms(["G-7", "G", "Bar"], ["G-70", "G", "Bar"]), []],
    ["0 and none", rooms(["G-0", "G", "Bar"], ["G", "G", "Bar"]), []],
    ["107 and 1-07", rooms(["G107", "G", "Bar"], ["G1-07", "G", "Bar"]), []],
    [
      "the same name is the other rule's",
      rooms(["G-07", "G", "Bar"], ["g-07", "G", "Bar"]),
      ["The outlet g-07 stands in A2 already."],
    ],
    [
      "a third is held to the first",
      rooms(["G-07", "G", "Bar"], ["G7", "G", "Bar"], ["G.7", "G", "Bar"]),
      ["G7 in Bar is likely G-07 of A2 again.", "G.7 in Bar is likely G-07 of A2 again."],
    ],
  ])("%s", (_, blocks, wanted) => expect(said(blocks)).toEqual(wanted));
});

test("a chosen option that is a provisional sum as well", () => {
  const blocks = (chosen: string, sum = "MAST") => ({
    options: [
      { name: "Aerial", chosen: "yes" },
      { name: "Mast", chosen },
    ],
    provisional: [{ name: "Crane" }, { name: sum }],
  });
  expect(all(blocks("Yes"))).toStrictEqual([
    {
      weight: "doubtful",
      place: at("provisional_name", 2),
      message: "MAST is an option that is chosen, in A3, and a provisional sum.",
      expected: "One of the two.",
      effect: "It is priced twice.",
      remedy: "Clear one of the two rows.",
    },
  ]);
  expect([said(blocks("no")), said(blocks("")), said(blocks("yes", "Tower"))]).toEqual([[], [], []]);
});

describe("two rows that say the same in other words", () => {
  const sums = (...rows: [name: string, sum: number | string][]) => ({
    provisional: rows.map(([name, sum]) => ({ name, sum })),
  });
  test("whole", () =>
    expect(
      all(sums(["Scaffold for the mast", 500], ["Crane", 500], ["Mast scaffolding", 500])),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: at("provisional_name", 3),
        message: "Mast scaffolding is likely Scaffold for the mast of A2 again: the sum is the same.",
        expected: "Each once.",
        effect: "It is priced twice.",
        remedy: "Clear one of the two rows, or say in their names what tells them apart.",
        undoing: [{ place: at("provisional_name", 3) }, { place: at("provisional_sum", 3) }],
        isGuess: true,
      },
    ]));
  test.each<[string, Blocks, number]>([
    ["of another sum", sums(["Scaffold for the mast", 500], ["Mast scaffolding", 501]), 0],
    ["of no sum", sums(["Scaffold for the mast", ""], ["Mast scaffolding", ""]), 0],
    ["one word shared", sums(["Scaffold", 500], ["Scaffold hire", 500]), 0],
    ["small words are none", sums(["Hire of the crane", 500], ["Crane of the tower", 500]), 0],
    ["of one name", sums(["Mast scaffold", 500], ["mast scaffold", 500]), 1],
    // Of five words three are 60 %; of six they are half.
    ["three of five", sums(["red blue green", 500], ["red blue green", 500]), 1],
    [
      "three of the shorter one's five",
      sums(["red blue green black white", 5], ["red blue green grey pink long", 5]),
      1,
    ],
    [
      "three of the shorter one's six",
      sums(["red blue green black white tall", 5], ["red blue green grey pink long", 5]),
      0,
    ],
    ["other figures", sums(["Mast of 6 m, scaffold", 500], ["Mast of 9 m, scaffold", 500]), 0],
    [
      "the same figures in another order",
      sums(["Mast 6 m 2 legs scaffold", 5], ["2 legs mast scaffold 6 m", 5]),
      1,
    ],
  ])("%s: %#", (_, blocks, count) => expect(all(blocks)).toHaveLength(count));
  test.each([
    ["fittings", "price", "piece", "price"],
    ["labour", "minutes", "piece", "time"],
    ["sites", "cost", undefined, "cost"],
    ["options", "each", undefined, "price"],
  ])("%s too, by %s and %s", (block, amount, piece, what) => {
    const rows = (first: string, second: string): Row[] =>
      [
        ["Mast scaffold", first],
        ["Scaffolding mast", second],
      ].map(([name, of]) => ({ name: name!, [amount]: 9, ...(piece && { [piece]: of! }) }));
    expect(said({ [block]: rows("outlet", "Outlet") })).toEqual([
      `Scaffolding mast is likely Mast scaffold of A2 again: the ${what} is the same.`,
    ]);
    if (piece)
      expect([said({ [block]: rows("outlet", "dish") }), said({ [block]: rows("", "") })]).toEqual([[], []]);
  });
});

describe("a bundle of cables in two rows", () => {
  const rows = (...cables: [from: string, to: string, slot: string][]) => ({
    feeders: cables.map(([from, to, slot]) => ({ from, to, slot })),
  });
  test("whole", () =>
    expect(all(rows(["D1", "S1", "Ku"], ["d1", "s1", "KU"], ["D1", "S1", "Ku"]))).toStrictEqual(
      [2, 3].map((row) => ({
        weight: "wrong",
        place: at("feeders_from", row),
        message: `The cables from ${row === 2 ? "d1 to s1" : "D1 to S1"} stand in A2 already.`,
        expected: "One row for each bundle, with how many cables it has.",
        effect: "They are counted and bought twice.",
        remedy: "Clear the row that was pasted twice.",
        undoing: ["from", "to", "slot"].map((key) => ({ place: at(`feeders_${key}`, row) })),
      })),
    ));
  test("to another head unit, of another slot, or to nowhere: nothing", () => {
    expect(said(rows(["D1", "S1", "Ku"], ["D1", "S2", "Ku"], ["D1", "S1", "C"], ["D2", "S1", "Ku"]))).toEqual(
      [],
    );
    expect(said(rows(["D1", "", "Ku"], ["D1", "", "Ku"]))).toEqual([]);
  });
});
