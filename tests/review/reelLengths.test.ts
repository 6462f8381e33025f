/** Runs longer than their reel: each finding whole, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { reelLengths } from "../../src/review/rules/reelLengths";
import { at, atField, found, smallBook, type Row } from "./smallBook";

type Blocks = Readonly<Record<string, readonly Row[]>>;
/** A run is cut at a quarter more than it and its slack of 2: of 78 at just 100. */
const SITE = { site_slack: 2, site_waste: 0.25, site_usual_cable: "coax" };
const told = (blocks: Blocks, fields: Row = SITE): Finding[] =>
  found(reelLengths, smallBook({ cables: [{ name: "Coax", reel: 100 }], ...blocks }, fields));
const rooms = (...runs: readonly (number | string)[]): Blocks => ({
  rooms: runs.map((run, index) => ({ outlet: `o${index + 1}`, run, cable: "" })),
});
const LONG = {
  weight: "wrong",
  expected: "Runs that a reel holds.",
  effect: "The cable cannot be counted, so there is no price.",
  remedy:
    "Compare the length with the plan; or choose a longer reel, or part the run with a joint on purpose.",
};

test("one that does not come off its reel, beside one that just does, and ones that do", () =>
  expect(told(rooms(78, 80, "80", 3, 0))).toStrictEqual([
    {
      ...LONG,
      place: at("rooms_run", 2),
      message: "o2: 80 of Coax is cut at 102.5 with slack and waste, and a reel holds 100.",
      meant: 8,
      isGuess: true,
    },
  ]));

test.each([
  ["rooms", "outlet", "run"],
  ["branches", "id", "length"],
  ["heads", "id", "length"],
  ["feeders", "from", "length"],
])("of %s, by its own cable or the usual one", (block, named, run) => {
  const rows = (cable: string): Row[] => [{ [named]: "X", [run]: 80, cable }];
  const usual = (usual: string) => ({ ...SITE, site_usual_cable: usual });
  expect(told({ [block]: rows("") })).toMatchObject([{ place: at(`${block}_${run}`, 1) }]);
  expect(told({ [block]: rows("COAX ") }, usual("thick"))).toHaveLength(1);
  expect(told({ [block]: rows(" ") }, usual("thick"))).toEqual([]);
  expect(told({ [block]: rows("thick") })).toEqual([]);
  expect(told({ [block]: [{ ...rows("")[0], [named]: "" }] })).toEqual([]);
  expect(told({ [block]: [{ [named]: "X", cable: "coax" }] })).toEqual([]);
});

test.each([
  ["that a reel just holds", 100, 10],
  ["of 3, the shortest", 30, 3],
  ["that no reel holds", 101, undefined],
  ["shorter than any", 29, undefined],
])("a tenth of it %s: whether a decimal point was lost", (_, run, meant) =>
  expect(
    told({ ...rooms(run), cables: [{ name: "coax", reel: 10 }] }, { site_usual_cable: "coax" }).map(
      (finding) => [finding.meant, finding.isGuess],
    ),
  ).toEqual([[meant, meant && true]]),
);

describe("most of the runs", () => {
  test("tell the reel, or the slack where it alone is too long", () => {
    expect(told(rooms(80, 81, 5))).toStrictEqual([
      {
        ...LONG,
        place: at("cables_reel", 1),
        message: "A reel of Coax holds 100, and 2 of its 3 runs are cut longer with a slack of 2.",
      },
    ]);
    const slack = (site_slack: number) => told(rooms(1, 2), { ...SITE, site_slack });
    expect(slack(80)[0]!.place).toEqual(at("cables_reel", 1));
    expect(slack(81)).toStrictEqual([
      {
        ...LONG,
        place: atField("site_slack"),
        message: "A reel of Coax holds 100, and 2 of its 2 runs are cut longer with a slack of 81.",
      },
    ]);
  });
  test("half of them, or one alone, tell themselves", () => {
    expect(told(rooms(80, 5)).map(({ place }) => place)).toEqual([at("rooms_run", 1)]);
    expect(told(rooms(80)).map(({ place }) => place)).toEqual([at("rooms_run", 1)]);
  });
});

test.each<[string, Row, number]>([
  ["a waste of all of it", { site_waste: 1 }, 1],
  ["more", { site_waste: 1.01 }, 0],
  ["less than none", { site_waste: -0.01 }, 0],
  ["no number", { site_waste: "much" }, 0],
  ["a slack less than none", { site_slack: -1 }, 0],
  ["neither, so that it is cut as it is", { site_slack: undefined, site_waste: undefined }, 1],
])("%s", (_, fields, count) => expect(told(rooms(101), { ...SITE, ...fields })).toHaveLength(count));

test("a reel of no length holds nothing against a run", () => {
  for (const reel of [0, -5, "100"])
    expect(told({ ...rooms(80), cables: [{ name: "Coax", reel }] })).toEqual([]);
  expect(told({ ...rooms(80), cables: [{ name: "Coax" }] })).toEqual([]);
});

describe("a reel in stock", () => {
  test("may be longer than a new one", () => {
    const stock = (cable: string, length: number | string) =>
      told({ ...rooms(80), rests: [{ cable, length }] }).length;
    expect(stock(" coax", 102.5)).toBe(0);
    expect(stock("coax", 102)).toBe(1);
    expect(stock("thick", 150)).toBe(1);
    expect(stock("coax", "150")).toBe(1);
  });
  test("of more than four new ones is many", () => {
    const rests = [
      { cable: "coax", length: 400 },
      { cable: "COAX", length: 401 },
      { cable: "thick", length: 900 },
      { cable: "coax", length: "900" },
    ];
    expect(told({ rests })).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rests_length", 2),
        message: "401 of COAX are said to be left on one reel; a new one has 100.",
        expected: "What is left on this reel; each reel in stock has a row of its own.",
        usual: { low: 1, high: 100 },
        effect: "Runs are cut from it, and no cable is bought for them.",
        remedy: "Look at the reels in the store, and at the decimal point.",
      },
    ]);
  });
});

test("of two cables each is told, and what is in stock after them", () =>
  expect(
    told({
      cables: [
        { name: "Coax", reel: 100 },
        { name: "Thick", reel: 50 },
      ],
      branches: [
        { id: "T", length: 600, cable: "Thick" },
        { id: "C", length: 80, cable: "Coax" },
      ],
      rests: [{ cable: "Thick", length: 201 }],
    }).map(({ place }) => place),
  ).toEqual([at("branches_length", 2), at("branches_length", 1), at("rests_length", 1)]));
