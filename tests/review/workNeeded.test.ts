/** What is said of work that is lacking or counted twice: each finding whole, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { workNeeded } from "../../src/review/rules/workNeeded";
import { at, atField, found, smallBook, type Row } from "./smallBook";

type Blocks = Readonly<Record<string, readonly Row[]>>;
const told = (labour: readonly Row[], blocks: Blocks = {}, fields: Row = {}): Finding[] =>
  found(workNeeded, smallBook({ rooms: [{ outlet: "a" }], labour, ...blocks }, fields));
const said = (...asked: Parameters<typeof told>): string[] => told(...asked).map(({ message }) => message);
/** Each as often. */
const counted = (...quantities: readonly number[]): Blocks => ({
  work: quantities.map((quantity) => ({ quantity })),
});

describe("no work at all", () => {
  const FREE = {
    weight: "wrong",
    place: at("labour_name", 1),
    expected: "Each kind of work with how often it is done.",
    effect: "All labour is free.",
    remedy: "Fill the labour units on Parts, or list labour on Terms as 0 on purpose.",
  };
  test("listed", () =>
    expect(told([{ name: "" }])).toStrictEqual([{ ...FREE, message: "No work is listed." }]));
  test("counted", () =>
    expect(told([{ name: "Run a cable" }, { name: "Tidy up" }], counted(0, 0))).toStrictEqual([
      { ...FREE, message: "Nothing counts any of the work that is listed." },
    ]));
  test("on purpose, without a job, or where nothing is named: nothing", () => {
    const onpurpose = [{ what: "Labour", why: "by the owner" }];
    expect(told([{ name: "" }], { onpurpose })).toEqual([]);
    expect(told([{ name: "" }], { rooms: [{ outlet: "" }] })).toEqual([]);
    expect(told([])).toEqual([]);
  });
});

describe("what every job takes", () => {
  const LACKS = {
    weight: "doubtful",
    effect: "The price holds nothing for it.",
    remedy: "Enter how often it is done, or say under Exclusions who does it.",
  };
  test("is not named, or not counted", () =>
    expect(
      told(
        [
          { name: "Tidy up", per_outlet: 1 },
          { name: "Align the reflector", per_outlet: 1 },
        ],
        { ...counted(1, 0), bonds: [{ where: "mast" }] },
      ),
    ).toStrictEqual([
      {
        ...LACKS,
        place: at("labour_name", 1),
        message: "No work is named for running cables.",
        expected: "Work for running cables, unless others do it.",
      },
      {
        ...LACKS,
        place: at("labour_per_outlet", 2),
        message: "Nothing counts “Align the reflector”.",
        expected: "Work for mounting and aligning the dish, unless others do it.",
      },
      {
        ...LACKS,
        place: at("labour_name", 1),
        message: "No work is named for bonding or earthing.",
        expected: "Work for bonding or earthing, unless others do it.",
      },
    ]));
  test("has no count of its own where that column is not there", () =>
    expect(told([{ name: "Dish" }, { name: "Run a cable" }], counted(1, 0))[0]!.place).toEqual(
      at("labour_name", 1),
    ));
  test.each<[string, string[], Blocks, string[]]>([
    ["all of it, in other words", ["PULL wire", "Antenna", "Earthing"], { bonds: [{ where: "mast" }] }, []],
    ["no bonds, so none made", ["Wire", "Mount"], {}, []],
    ["a list in another language", ["Montage"], { bonds: [{ where: "mast" }] }, []],
    ["cables by their routes", ["Mount"], { route_work: [{ hours: 0 }, { hours: 2 }] }, []],
    [
      "no cable by its route",
      ["Mount"],
      { route_work: [{ hours: 0 }] },
      ["No work is named for running cables."],
    ],
    ["of two of one kind one counted", ["Run a cable", "Pull a cable", "Dish"], counted(0, 3, 1), []],
  ])("%s", (_, names, blocks, messages) =>
    expect(
      said(
        names.map((name) => ({ name })),
        blocks,
      ),
    ).toEqual(messages),
  );
});

describe("cables by their routes", () => {
  const byRoute = { route_work: [{ hours: 2 }] };
  const DOUBTFUL = { weight: "doubtful", remedy: "Look at the minutes and counts of this kind of work." };
  test("and for each outlet as well", () =>
    expect(
      told(
        [
          { name: "Run and label it", per_outlet: 1 },
          { name: "End the cable", per_outlet: 1 },
          { name: "Lay it in the duct", per_outlet: 0 },
          { name: "Pull it", per_outlet: 2 },
          { name: "Dish", fixed: 1 },
        ],
        { ...byRoute, ...counted(1, 1, 1, 0, 1) },
      ),
    ).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("labour_per_outlet", 1),
        message: "Run and label it is counted for each outlet, and cables are counted by their routes too.",
        expected: "One of the two.",
        effect: "Running a cable is priced twice.",
      },
    ]));
  test("without any route that counts: once is right", () =>
    expect(said([{ name: "Run the cable", per_outlet: 1 }, { name: "Dish" }])).toEqual([]));

  const routes = (usual: string, blocks: Blocks): Finding[] =>
    told([{ name: "Dish" }], { ...byRoute, ...blocks }, { site_usual_route: usual });
  const all = {
    rooms: [
      { outlet: "a", run: 3, route: "" },
      { outlet: "b", run: "", route: "" },
      { outlet: "c", run: 4, route: "duct" },
    ],
    branches: [{ length: 5, route: "" }],
    heads: [{ length: 6, route: "" }],
    feeders: [{ length: 7, route: "" }],
  };
  test("others without one", () => {
    const without = {
      ...DOUBTFUL,
      place: atField("site_usual_route"),
      expected: "A route in each row, or the usual one here.",
      effect: "Nothing is charged for running them.",
    };
    expect(routes("", all)).toStrictEqual([
      { ...without, message: "4 cables have no route, and others have." },
    ]);
    expect(routes("", { rooms: all.rooms })).toStrictEqual([
      { ...without, message: "1 cable has no route, and others have." },
    ]);
  });
  test("a usual route, or none without: nothing", () => {
    expect(routes("duct", all)).toEqual([]);
    // A workbook that has no usual route to fill.
    expect(told([{ name: "Dish" }], { ...byRoute, ...all })).toEqual([]);
    expect(routes("", { rooms: [{ outlet: "a", run: 3, route: "duct" }] })).toEqual([]);
    expect(told([{ name: "Run a cable" }, { name: "Dish" }], all, { site_usual_route: "" })).toEqual([]);
  });
});

describe("how often, and how long", () => {
  const DOUBTFUL = { weight: "doubtful", remedy: "Look at the minutes and counts of this kind of work." };
  /** Without a word that every job has, so that nothing else is said. */
  const work = (row: Row, outlets?: number, computed: Row = {}): Finding[] =>
    told([{ name: "Tidy up", ...row }], { work: [computed] }, { count_outlets: outlets });
  test.each([["per_outlet"], ["per_branch"], ["per_head"]])("more than a day by its count %s", (key) => {
    const often = {
      ...DOUBTFUL,
      place: at(`labour_${key}`, 1),
      expected: "How often for one; usually once.",
      effect: "All of it is multiplied.",
    };
    expect(work({ minutes: 241, [key]: 2 })).toStrictEqual([
      { ...often, message: "Tidy up is counted 2 times for each: 8 hours." },
    ]);
    expect(work({ minutes: 130, difficulty: 2, [key]: 2 })).toStrictEqual([
      { ...often, message: "Tidy up is counted 2 times for each: 8.7 hours." },
    ]);
    expect(work({ minutes: 240, difficulty: "", [key]: 2 })).toEqual([]);
    expect(work({ minutes: 500, [key]: 1 })).toEqual([]);
    expect(work({ minutes: 500, [key]: "often" })).toEqual([]);
  });
  test("as often for each outlet as there are outlets", () => {
    expect(work({ minutes: 6, per_outlet: 5 }, 5)).toMatchObject([
      { place: at("labour_per_outlet", 1), message: "Tidy up is counted 5 times for each: 0.5 hours." },
    ]);
    expect(work({ minutes: 6, per_outlet: 4 }, 4)).toEqual([]);
    expect(work({ minutes: 6, per_outlet: 5 }, 6)).toEqual([]);
    expect(work({ minutes: 6, per_branch: 5 }, 5)).toEqual([]);
  });
  test("for each outlet, and as often for the job as there are outlets", () => {
    expect(work({ minutes: 6, per_outlet: 1, fixed: 5 }, 5)).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("labour_fixed", 1),
        message: "Tidy up is counted for each outlet and 5 times for the job, as many as there are outlets.",
        expected: "One of the two.",
        effect: "It is priced twice.",
      },
    ]);
    expect(work({ minutes: 6, per_outlet: 0, fixed: 5 }, 5)).toEqual([]);
    expect(work({ minutes: 6, fixed: 5 }, 5)).toEqual([]);
    expect(work({ minutes: 6, per_outlet: 1, fixed: 4 }, 5)).toEqual([]);
  });
  test("less than five minutes on the whole job", () => {
    expect(work({ minutes: 1.6 }, 9, { hours: 0.08 })).toStrictEqual([
      {
        ...DOUBTFUL,
        place: at("labour_minutes", 1),
        message: "Tidy up takes 4.8 minutes on the whole job.",
        expected: "96, if 1.6 hours were meant.",
        effect: "Nearly nothing is charged for it.",
      },
    ]);
    expect(work({ minutes: 5 }, 9, { hours: 5 / 60 })).toEqual([]);
    expect(work({ minutes: 5 }, 9, { hours: 0 })).toEqual([]);
    expect(work({ minutes: 1.6, piece: "Connector " }, 9, { hours: 0.08 })).toEqual([]);
    expect(work({ minutes: 1.6, piece: "splitter" }, 9, { hours: 0.08 })).toHaveLength(1);
  });
});
