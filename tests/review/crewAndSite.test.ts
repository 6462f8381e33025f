/** What is said of days, travel, hire and difficulties, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { crewAndSite } from "../../src/review/rules/crewAndSite";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

type Fields = Parameters<typeof smallBook>[1];
const JOB: Row[] = [{ outlet: "a", floor: "North", room: "Bar" }];
const all = (blocks: Parameters<typeof smallBook>[0], fields: Fields = {}): Finding[] =>
  found(crewAndSite, smallBook({ rooms: JOB, ...blocks }, fields));
const SAY = {
  weight: "doubtful",
  remedy: "Compare with what was agreed for being on site; correct the cell, or say on Log why it is so.",
};

test("without a job nothing is looked at", () =>
  expect(
    messages(crewAndSite, smallBook({ rooms: [{ outlet: "" }] }, { crew_days: 2, work_days_needed: 8 })),
  ).toEqual([]));

describe("typed days on site", () => {
  const days = (typed: number | string, needed: number | string = 8) =>
    all({}, { crew_days: typed, work_days_needed: needed });
  test("too few", () =>
    expect(days(7)).toStrictEqual([
      {
        ...SAY,
        weight: "wrong",
        place: atField("crew_days"),
        message: "7 days on site are typed; the hours need 8.",
        expected: "8 days, as the hours count them: clear the cell, or plan longer days or a second crew.",
        effect: "What is paid by the day is priced for too few days.",
        meant: 8,
      },
    ]));
  test("far too many", () =>
    expect(days(24)).toStrictEqual([
      {
        ...SAY,
        place: atField("crew_days"),
        message: "24 days on site are typed; the hours need 8.",
        expected: "About 8.",
        effect: "What is paid by the day is priced for too many days.",
        usual: { low: 8, high: 24 },
      },
    ]));
  // A day that is begun is a day.
  test.each([[8], [7.5], [23.9], [""], ["7"]])("%j where 8 are needed: nothing", (typed) =>
    expect(days(typed)).toEqual([]),
  );
  test.each([[0], [-1], [""]])("7 where %j are needed: nothing", (needed) =>
    expect(days(7, needed)).toEqual([]),
  );
});

describe("site costs", () => {
  const FIELDS: Fields = { labour_rate: 40, crew_hours: 8, work_days: 8, work_together: 1000 };
  const cost = (row: Row, fields: Fields = {}) =>
    all(
      {
        sites: [
          { name: "Other" },
          { name: "Tower", kind: "", per: "", days: "", cost: "", quantity: "", ...row },
        ],
      },
      { ...FIELDS, ...fields },
    );
  const place = (column: string) => at(`sites_${column}`, 2);
  const parts = (findings: Finding[]) => findings.map((one) => one.place!.sheet.slice("sites_".length));

  test("hired for longer than the crew is there", () => {
    expect(cost({ kind: "hire", days: 9 })).toStrictEqual([
      {
        ...SAY,
        place: place("days"),
        message: "Tower is paid for 9 days, and the crew is on site for 8.",
        expected: "At most 8 days, unless it is to stand longer.",
        effect: "Every day of it is charged.",
        usual: { low: 1, high: 8 },
      },
    ]);
    expect([
      cost({ days: 8 }),
      cost({ days: 9 }, { work_days: 0 }),
      cost({ days: 9 }, { work_days: "" }),
    ]).toEqual([[], [], []]);
  });
  test("travel once for the job", () =>
    expect(cost({ kind: "Travel", per: "job", cost: 40 })).toStrictEqual([
      {
        ...SAY,
        place: place("per"),
        message: "Tower is paid once for the job, and the crew is on site for 8 days.",
        expected: "a day on site, unless the crew stays there.",
        effect: "All but the first day's way is given away.",
        meant: "day on site",
        isGuess: true,
      },
    ]));
  test.each<[string, Row, Fields, string[]]>([
    ["per nothing is per job", {}, {}, ["per"]],
    ["per day", { per: "day on site" }, {}, []],
    ["per job for some days", { days: 3 }, {}, []],
    ["as often as there are days", { quantity: 8 }, {}, []],
    ["once less", { quantity: 7 }, {}, ["per"]],
    ["two days", {}, { work_days: 2 }, ["per"]],
    ["one day", {}, { work_days: 1 }, []],
    ["hire", { kind: "hire" }, {}, []],
  ])("travel, %s", (_, row, fields, columns) =>
    expect(parts(cost({ kind: "travel", ...row }, fields))).toEqual(columns),
  );
  test("travel that costs more than half of a day of the crew", () =>
    expect(cost({ kind: "travel", per: "day on site", cost: 161 })).toStrictEqual([
      {
        ...SAY,
        place: place("cost"),
        message: "Tower costs 161 each, and a day of the crew 320.",
        expected: "Less than 160 (common practice, no source).",
        effect: "It is charged for every day or person.",
        usual: { low: 20, high: 160 },
      },
    ]));
  test.each<[string, Row, Fields, string[]]>([
    ["half of it", { per: "day on site", cost: 160 }, {}, []],
    ["of the job", { per: "job", cost: 161, days: 1 }, {}, []],
    ["per nothing, once for the job besides", { cost: 161 }, {}, ["per", "cost"]],
    ["of a crew without a rate", { per: "day on site", cost: 161 }, { labour_rate: "" }, []],
    ["of a crew without hours", { per: "day on site", cost: 161 }, { crew_hours: 0 }, []],
    ["hire", { kind: "hire", per: "day on site", cost: 161 }, {}, []],
    ["no cost", { per: "day on site" }, {}, []],
  ])("travel, %s", (_, row, fields, columns) =>
    expect(parts(cost({ kind: "travel", ...row }, fields))).toEqual(columns),
  );
  test("one that comes to more than all labour, where nothing else is said of it", () => {
    expect(cost({ kind: "hire", cost: 500, priced_sum: 1000.5 })).toStrictEqual([
      {
        ...SAY,
        place: place("cost"),
        message: "Tower comes to 1000.50, all labour to 1000.00.",
        expected: "Less than the labour (common practice, no source).",
        effect: "It is charged as it stands.",
      },
    ]);
    expect(cost({ kind: "hire", cost: 500, priced_sum: 1000 })).toEqual([]);
    expect(cost({ kind: "hire", cost: 500, priced_sum: "" })).toEqual([]);
    expect(cost({ kind: "hire", cost: 500, priced_sum: 1000.5 }, { work_together: 0 })).toEqual([]);
    expect(parts(cost({ kind: "hire", days: 9, cost: 500, priced_sum: 1000.5 }))).toEqual(["days"]);
  });
});

describe("a cost between its lowest and its highest", () => {
  const cost = (cost: number | string, low: number | string, high: number | string) =>
    all({
      sites: [
        { name: "Other", cost: 1 },
        { name: "Tower", cost, low, high },
      ],
    });
  const place = (column: string) => at(`sites_${column}`, 2);
  const WRONG = { ...SAY, weight: "wrong", effect: "The price and its range go by these figures." };
  test.each([
    [100, 90, 120],
    [90, 90, 120],
    [120, 90, 120],
    [100, "", ""],
    ["", 90, 120],
    ["", 120, 90],
  ])("%j of %j to %j: nothing", (of, low, high) => expect(cost(of, low, high)).toEqual([]));
  test("one of the two blank", () => {
    const blank = {
      ...WRONG,
      message: "Tower: of lowest and highest cost one is blank.",
      expected: "Both, or neither.",
    };
    expect(cost(100, "", 120)).toStrictEqual([{ ...blank, place: place("low") }]);
    expect(cost("", 90, "")).toStrictEqual([{ ...blank, place: place("high") }]);
  });
  test.each([
    // The point slipped in the highest: ten times as much is not under the cost.
    [100, 90, 12, "high", 120],
    [100, 90, 10, "high", 100],
    [100, 90, 9.9, "high", undefined],
    [90, 90, 12, "high", 120],
    // It slipped in the lowest.
    [100, 900, 120, "low", 90],
    [100, 1000, 120, "low", 100],
    [100, 1010, 120, "low", undefined],
  ])("a cost of %d between %d and %d: the %sest is off", (of, low, high, column, meant) =>
    expect(cost(of, low, high)).toStrictEqual([
      {
        ...WRONG,
        place: place(column),
        message: `Tower: the lowest cost is ${low} and the highest ${high}.`,
        expected: "The lowest first.",
        ...(meant !== undefined && { meant, isGuess: true }),
      },
    ]),
  );
  test.each([89, 121])("a cost of %d outside", (of) =>
    expect(cost(of, 90, 120)).toStrictEqual([
      {
        ...WRONG,
        place: place("cost"),
        message: `Tower: it costs ${of}, and from 90 to 120.`,
        expected: "Between the two.",
        usual: { low: 90, high: 120 },
      },
    ]),
  );
});

describe("difficulties", () => {
  const rooms: Row[] = [
    { outlet: "a", floor: "North", room: "Bar 1" },
    { outlet: "b", floor: "2nd floor", room: "Hall" },
  ];
  const places = (...rows: [floor: string, room: string][]) =>
    all({ rooms, places: rows.map(([floor, room]) => ({ floor, room, factor: 1.2 })) });
  const LOST = { ...SAY, weight: "wrong", effect: "Its difficulty stretches nothing." };
  test("of places that are there", () =>
    expect(places(["NORTH", ""], ["", "hall"], ["2nd floor", "Hall"], ["", ""], ["", ""])).toEqual([]));
  test("of a floor and of a room that no outlet has", () =>
    expect(places(["South", ""], ["", "Attic"], ["North", "Attic"], ["South", "Attic"])).toStrictEqual([
      {
        ...LOST,
        place: at("places_floor", 1),
        message: "No outlet is on a floor called “South”.",
        expected: "A floor as Rooms names it.",
      },
      {
        ...LOST,
        place: at("places_room", 2),
        message: "No outlet is in a room called “Attic”.",
        expected: "A room as Rooms names it.",
      },
      {
        ...LOST,
        place: at("places_room", 3),
        message: "No outlet is in a room called “Attic”.",
        expected: "A room as Rooms names it.",
      },
      {
        ...LOST,
        place: at("places_floor", 4),
        message: "No outlet is on a floor called “South”.",
        expected: "A floor as Rooms names it.",
      },
    ]));
  test("of one that Rooms writes with other blanks and strokes", () =>
    expect(places(["2nd-Floor", ""], ["", "bar1"])).toStrictEqual([
      {
        ...LOST,
        place: at("places_floor", 1),
        message: "No outlet is on a floor called “2nd-Floor”.",
        expected: "“2nd floor”, as Rooms names it.",
        meant: "2nd floor",
      },
      {
        ...LOST,
        place: at("places_room", 2),
        message: "No outlet is in a room called “bar1”.",
        expected: "“Bar 1”, as Rooms names it.",
        meant: "Bar 1",
      },
    ]));
  test("twice of one place", () => {
    const twice = {
      ...SAY,
      weight: "wrong",
      expected: "Each place once, with one factor.",
      effect: "The first is taken.",
    };
    expect(
      places(["North", ""], ["", "Hall"], ["north", ""], ["North", "Hall"], ["", "HALL"], ["NORTH", ""]),
    ).toStrictEqual([
      { ...twice, place: at("places_floor", 3), message: "The difficulty of north stands in A2 already." },
      { ...twice, place: at("places_room", 5), message: "The difficulty of HALL stands in A3 already." },
      { ...twice, place: at("places_floor", 6), message: "The difficulty of NORTH stands in A2 already." },
    ]);
  });
});
