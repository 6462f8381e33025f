/** What is said of one row that differs on floors that are copies of each other, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { floorsAlike } from "../../src/review/rules/floorsAlike";
import type { Book } from "../../src/workbooks/book";
import { at, found, messages, smallBook, type Row } from "./smallBook";

const of = (book: Book, begin: string): Finding[] =>
  found(floorsAlike, book).filter(({ message }) => message.startsWith(begin));
const said = (book: Book): string[] => messages(floorsAlike, book);
const blanks = (count: number): Row[] => Array.from({ length: count }, () => ({}));

/** Outlets 1-01, 1-02 … on so many floors, each alike but for some; `undefined` leaves one out, with its row. */
function outlets(
  floors: number,
  numbers: number,
  but: Readonly<Record<string, Row | undefined>> = {},
  name = (floor: number, number: number) => `${floor}-0${number}`,
): Row[] {
  return Array.from({ length: floors * numbers }, (_, index) => {
    const [floor, number] = [Math.floor(index / numbers) + 1, (index % numbers) + 1];
    const outlet = name(floor, number);
    return outlet in but && but[outlet] === undefined
      ? undefined
      : {
          outlet,
          floor: `${floor}`,
          room: `Room ${floor}0${number}`,
          type: "single",
          from: `S${floor}-1`,
          receiver: "twin",
          plate: "flat",
          cable: "coax",
          route: "riser",
          run: 12,
          ...but[outlet],
        };
  }).filter((row) => row !== undefined);
}
const house = (...asked: Parameters<typeof outlets>): Book => smallBook({ rooms: outlets(...asked) });

/** One device a floor, S1-1 to S4-1. */
const devices = (count: number, but: Readonly<Record<string, Row>> = {}): Row[] =>
  Array.from({ length: count }, (_, index) => {
    const id = `S${index + 1}-1`;
    return { id, device: "splitter", length: 12, cable: "coax", ...but[id] };
  });

test("alike throughout: nothing", () => {
  expect(said(house(4, 3))).toEqual([]);
  expect(said(smallBook({ branches: devices(4) }))).toEqual([]);
  expect(said(smallBook({}))).toEqual([]);
});

test("in a workbook that has not the other columns: nothing", () => {
  const names = (rows: Row[], key: string): Row[] => rows.map((row) => ({ [key]: row[key] }));
  expect(
    said(smallBook({ rooms: names(outlets(4, 3), "outlet"), branches: names(devices(4), "id") })),
  ).toEqual([]);
  // The one room of two outlets, of which neither run nor feed is known.
  const rooms = Array.from({ length: 12 }, (_, index) => ({
    outlet: `o${index}`,
    room: `Room ${index % 11}`,
  }));
  expect(said(smallBook({ rooms }))).toEqual([
    "o11 is in Room 0 as o0 is, with the same run and feed; other rooms have one outlet.",
  ]);
});

const COMPARED = {
  effect: "It is priced and predicted otherwise than its like.",
  remedy: "Compare with the plan; say in the note why it differs, if it does.",
};

test.each([
  ["type", "type", "doubtful", "single"],
  ["receiver", "receiver", "worth knowing", "twin"],
  ["plate", "wall plate", "worth knowing", "flat"],
  ["cable", "cable", "worth knowing", "coax"],
  ["route", "route", "worth knowing", "riser"],
])("the one %s that is not that of the other floors", (column, what, weight, usual) =>
  expect(found(floorsAlike, house(4, 3, { "2-02": { [column]: "another" } }))).toStrictEqual([
    {
      weight,
      place: at(`rooms_${column}`, 5),
      message: `The ${what} of 2-02 is “another”, on the other floors (1-02) “${usual}”.`,
      expected: `“${usual}”, if the floors are alike.`,
      meant: usual,
      ...COMPARED,
    },
  ]),
);

test("the one feed: meant is that of its own floor, where the others count theirs", () => {
  const feed = {
    weight: "doubtful",
    place: at("rooms_from", 5),
    expected: "The one of its own floor that the others have.",
    ...COMPARED,
  };
  expect(found(floorsAlike, house(4, 3, { "2-02": { from: "S2-2" } }))).toStrictEqual([
    {
      ...feed,
      message: "The feed of 2-02 is “S2-2”, on the other floors (1-02) “S1-1”.",
      meant: "S2-1",
      isGuess: true,
    },
  ]);
  const rows = outlets(4, 3).map((row) => ({ ...row, from: row.outlet === "2-02" ? "Mast" : "Cellar" }));
  expect(found(floorsAlike, smallBook({ rooms: rows }))).toStrictEqual([
    { ...feed, message: "The feed of 2-02 is “Mast”, on the other floors (1-02) “Cellar”." },
  ]);
});

test("a blank among filled ones, and a filled one among blanks", () => {
  expect(found(floorsAlike, house(4, 3, { "1-02": { plate: "" } }))).toStrictEqual([
    {
      weight: "worth knowing",
      place: at("rooms_plate", 2),
      message: "The wall plate of 1-02 is blank, on the other floors (2-02) “flat”.",
      expected: "“flat”, if the floors are alike.",
      meant: "flat",
      ...COMPARED,
    },
  ]);
  const rows = outlets(4, 3).map((row) => ({ ...row, plate: row.outlet === "2-02" ? "flat" : "" }));
  expect(found(floorsAlike, smallBook({ rooms: rows }))).toStrictEqual([
    {
      weight: "worth knowing",
      place: at("rooms_plate", 5),
      message: "The wall plate of 2-02 is “flat”, on the other floors (1-02) blank.",
      expected: "blank, if the floors are alike.",
      undoing: [{ place: at("rooms_plate", 5) }],
      ...COMPARED,
    },
  ]);
});

test("five floors that say the same leave little doubt", () => {
  const weights = (floors: number) =>
    found(floorsAlike, house(floors, 3, { "2-02": { plate: "deep" } })).map(({ weight }) => weight);
  expect([weights(5), weights(6)]).toEqual([["worth knowing"], ["doubtful"]]);
});

test("two floors are enough to hold a third to; two against two, or three kinds, say nothing", () => {
  expect(said(house(3, 4, { "2-02": { plate: "deep" } }))).toEqual([
    "The wall plate of 2-02 is “deep”, on the other floors (1-02) “flat”.",
  ]);
  const two = { "1-02": { plate: "deep" }, "2-02": { plate: "deep" } };
  expect(said(house(4, 3, two))).toEqual([]);
  expect(said(house(4, 3, { "1-02": { plate: "deep" }, "2-02": { plate: "round" } }))).toEqual([]);
  // Capitals make no other kind.
  expect(said(house(4, 3, { "2-02": { plate: "FLAT" } }))).toEqual([]);
});

test("one or two of a column are slips, three another kind of floor", () => {
  const deep = (...names: string[]) =>
    house(4, 3, Object.fromEntries(names.map((one) => [one, { plate: "deep" }])));
  expect(said(deep("1-01", "2-02"))).toEqual([
    "The wall plate of 1-01 is “deep”, on the other floors (2-01) “flat”.",
    "The wall plate of 2-02 is “deep”, on the other floors (1-02) “flat”.",
  ]);
  expect(said(deep("1-01", "2-02", "2-03"))).toEqual([]);
});

test("fewer than twelve outlets are no copies", () =>
  expect(said(house(3, 3, { "2-02": { plate: "deep" } }))).toEqual([]));

describe("a run", () => {
  test("three times that of the other floors", () =>
    expect(found(floorsAlike, house(4, 3, { "2-02": { run: 36 }, "3-02": { run: 11 } }))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_run", 5),
        message: "The run of 2-02 is 36, on the other floors 11 to 12.",
        expected: "A length like those of the other floors.",
        usual: { low: 11, high: 12 },
        effect: "Its level and the cable to buy go by it.",
        remedy: "Compare with the plan, above all the decimal point.",
      },
    ]));
  test.each([
    [36, ["The run of 2-02 is 36, on the other floors 12."]],
    [35.9, []],
    [4.1, []],
    [4, ["The run of 2-02 is 4, on the other floors 12."]],
  ])("of %d m, all others 12", (run, wanted) =>
    expect(said(house(4, 3, { "2-02": { run } }))).toEqual(wanted),
  );
  test("is held to lengths alone, and to two at least", () => {
    expect(said(house(4, 3, { "1-02": { run: "" }, "2-02": { run: 36 } }))).toEqual([
      "The run of 2-02 is 36, on the other floors 12.",
    ]);
    expect(said(house(4, 3, { "1-02": { run: "long" }, "2-02": { run: 36 }, "3-02": { run: 0 } }))).toEqual(
      [],
    );
    expect(said(house(4, 3, { "2-02": { run: 0 } }))).toEqual([]);
  });
});

describe("a number that one floor has not", () => {
  const GAP = "An outlet there, as on the other floors; or a note that there is none.";
  test("with its row empty: what it is likely to be is put in there", () => {
    const rows = outlets(4, 4, {
      "1-02": { run: 9, note: "by the window", kept: "A" },
      "3-02": { run: 11, split: "two ways" },
      "4-02": { run: 14, split: "two ways" },
    }).map((row) => (row.outlet === "2-02" ? {} : row));
    const [finding, ...others] = found(floorsAlike, smallBook({ rooms: rows }));
    expect(others).toEqual([]);
    const { undoing, ...rest } = finding!;
    expect(rest).toStrictEqual({
      weight: "doubtful",
      place: at("rooms_outlet", 6),
      isGuess: true,
      message: "Floor 2 has 2-01 and 2-03, and not what is 1-02 on another floor.",
      expected: GAP,
      effect: "It is neither priced nor planned.",
      remedy: "Compare with the plan: was its row deleted?",
    });
    // What two of three floors have it has too, with the middle run; its room and its note nobody knows.
    expect(Object.fromEntries(undoing!.map(({ place, value }) => [place.sheet, value]))).toEqual({
      rooms_outlet: "2-02",
      rooms_floor: "2",
      rooms_type: "single",
      rooms_from: "S2-1",
      rooms_receiver: "twin",
      rooms_plate: "flat",
      rooms_cable: "coax",
      rooms_route: "riser",
      rooms_run: 11,
      rooms_split: "two ways",
    });
    expect(new Set(undoing!.map(({ place }) => place.cell))).toEqual(new Set(["A7"]));
  });
  test("with its row deleted: the place is where it was, and a free row takes it", () => {
    const rows = outlets(4, 4, { "2-02": undefined });
    const [without] = found(floorsAlike, smallBook({ rooms: rows }));
    expect(without).toStrictEqual({
      weight: "doubtful",
      place: at("rooms_outlet", 6),
      message: "Floor 2 has 2-01 and 2-03, and not what is 1-02 on another floor.",
      expected: GAP,
      effect: "It is neither priced nor planned.",
      remedy: "Compare with the plan: was its row deleted?",
    });
    const [free] = found(floorsAlike, smallBook({ rooms: [...rows, {}] }));
    expect(free!.undoing).toContainEqual({ place: at("rooms_outlet", 16), value: "2-02" });
  });
  test("what half of the other floors have is not put in", () => {
    const rows = outlets(5, 4, { "1-02": { split: "two ways" }, "3-02": { split: "two ways" } }).map((row) =>
      row.outlet === "2-02" ? {} : row,
    );
    const [finding] = found(floorsAlike, smallBook({ rooms: rows }));
    expect(finding!.undoing!.map(({ place }) => place.sheet)).not.toContain("rooms_split");
    expect(finding!.undoing).toContainEqual({ place: at("rooms_plate", 6), value: "flat" });
  });
  const lacking = (floors: number, numbers: number, ...names: string[]): Book =>
    house(floors, numbers, Object.fromEntries(names.map((one) => [one, undefined])));
  test.each<[string, () => Book, string[]]>([
    [
      "two side by side",
      () => lacking(4, 4, "2-02", "2-03"),
      ["Floor 2 has 2-01 and 2-04, and not what is 1-02 on another floor, and 1 more."],
    ],
    [
      "four",
      () => lacking(4, 7, "2-02", "2-03", "2-04", "2-05"),
      ["Floor 2 has 2-01 and 2-06, and not what is 1-02 on another floor, and 3 more."],
    ],
    ["five", () => lacking(4, 7, "2-02", "2-03", "2-04", "2-05", "2-06"), []],
    [
      "on the first floor",
      () => lacking(4, 4, "1-02"),
      ["Floor 1 has 1-01 and 1-03, and not what is 2-02 on another floor."],
    ],
    [
      "of three floors",
      () => lacking(3, 5, "2-02"),
      ["Floor 2 has 2-01 and 2-03, and not what is 1-02 on another floor."],
    ],
    ["at the end of a floor", () => lacking(4, 4, "2-04"), []],
    ["at its beginning", () => lacking(4, 4, "2-01"), []],
    ["on two floors, one each", () => lacking(4, 4, "2-02", "3-03"), []],
    ["the same on two floors of five", () => lacking(5, 4, "2-02", "3-02"), []],
    [
      "one that another floor has twice",
      () => smallBook({ rooms: [...outlets(4, 4, { "2-02": undefined }), { outlet: "3-02" }] }),
      [],
    ],
    [
      "8, 9, 10 and 11 are numbers",
      () => house(4, 4, { "2-9": undefined }, (floor, number) => `${floor}-${number + 7}`),
      ["Floor 2 has 2-8 and 2-10, and not what is 1-9 on another floor."],
    ],
    [
      "and 10 is after 9",
      () => house(4, 4, { "2-10": undefined }, (floor, number) => `${floor}-${number + 7}`),
      ["Floor 2 has 2-9 and 2-11, and not what is 1-10 on another floor."],
    ],
  ])("%s", (_, book, wanted) => expect(of(book(), "Floor ").map(({ message }) => message)).toEqual(wanted));
});

describe("devices of a floor without outlets", () => {
  const LEFT_OUT = {
    weight: "doubtful",
    place: at("branches_id", 4),
    expected: "Its outlets, as on the other floors; or no devices.",
    effect: "They are neither priced nor planned, and its devices are bought for nothing.",
    remedy: "Compare with the plan: were its rows left out?",
  };
  test("the outlets of the other floors are put into free rows, if there are enough", () => {
    const rooms = outlets(3, 4);
    const [finding] = found(
      floorsAlike,
      smallBook({ rooms: [...rooms, ...blanks(4)], branches: devices(4) }),
    );
    const { undoing, ...rest } = finding!;
    const message = "Floor 4 has 1 device and no outlet; the other floors have 4 each.";
    expect(rest).toStrictEqual({ ...LEFT_OUT, message, isGuess: true });
    const put = (column: string) =>
      undoing!.filter(({ place }) => place.sheet === column).map(({ place, value }) => [place.cell, value]);
    expect(put("rooms_outlet")).toEqual([
      ["A14", "4-01"],
      ["A15", "4-02"],
      ["A16", "4-03"],
      ["A17", "4-04"],
    ]);
    expect(put("rooms_floor").map(([, value]) => value)).toEqual(["4", "4", "4", "4"]);
    expect(put("rooms_from").map(([, value]) => value)).toEqual(["S4-1", "S4-1", "S4-1", "S4-1"]);
    expect(put("rooms_room")).toEqual([]);
    const [tight] = found(floorsAlike, smallBook({ rooms: [...rooms, ...blanks(3)], branches: devices(4) }));
    expect(tight).toStrictEqual({ ...LEFT_OUT, message });
  });
  const second = (floors: number[]): Row[] => floors.map((floor) => ({ id: `T${floor}-1`, device: "tap" }));
  const OUT = "Floor 4 has 1 device and no outlet; the other floors have";
  test.each<[string, Row[], Row[], string[]]>([
    [
      "two devices",
      outlets(3, 4),
      [...devices(4), ...second([1, 2, 3, 4])],
      ["Floor 4 has 2 devices and no outlet; the other floors have 4 each."],
    ],
    ["one that two other floors have", outlets(3, 4), second([1, 2, 4]), [`${OUT} 4 each.`]],
    ["one that one other floor has", outlets(3, 4), second([1, 4]), []],
    ["a cellar with a device of its own beside", outlets(3, 4), [...devices(4), { id: "K4-1" }], []],
    ["two floors without outlets", outlets(3, 4), devices(5), []],
    ["floors counted with a nought", outlets(3, 4), [1, 2, 3].map((floor) => ({ id: `S0${floor}-1` })), []],
    [
      "four of five numbers on all floors",
      outlets(3, 5, { "2-02": undefined }),
      devices(4),
      [`${OUT} 4 each.`],
    ],
    ["four of six", outlets(4, 6, { "2-02": undefined, "2-03": undefined }), devices(5), []],
  ])("%s", (_, rooms, branches, wanted) =>
    expect(said(smallBook({ rooms, branches })).filter((one) => one.includes(" and no outlet; "))).toEqual(
      wanted,
    ),
  );
});

describe("devices", () => {
  test("the one part, and the one lead, that are not those of the other floors", () => {
    const book = smallBook({ branches: devices(4, { "S2-1": { device: "tap" }, "S3-1": { length: 40 } }) });
    expect(found(floorsAlike, book)).toStrictEqual([
      {
        weight: "doubtful",
        place: at("branches_device", 2),
        message: "The part of S2-1 is “tap”, on the other floors (S1-1) “splitter”.",
        expected: "“splitter”, if the floors are alike.",
        meant: "splitter",
        ...COMPARED,
      },
      {
        weight: "doubtful",
        place: at("branches_length", 3),
        message: "The lead of S3-1 is 40, on the other floors 12.",
        expected: "A length like those of the other floors.",
        usual: { low: 12, high: 12 },
        effect: "Its level and the cable to buy go by it.",
        remedy: "Compare with the plan, above all the decimal point.",
      },
    ]);
  });
  test("three, or one beside them that stands on two floors alone, say nothing", () => {
    const odd = { "S2-1": { device: "tap" } };
    expect(said(smallBook({ branches: devices(3, odd) }))).toEqual([]);
    expect(said(smallBook({ branches: [...devices(4, odd), { id: "T1-1" }, { id: "T2-1" }] }))).toEqual([]);
    expect(
      said(smallBook({ branches: [...devices(4, odd), ...["T1-1", "T2-1", "T3-1"].map((id) => ({ id }))] })),
    ).toEqual(["The part of S2-1 is “tap”, on the other floors (S1-1) “splitter”."]);
  });
  const BLANK = {
    weight: "doubtful",
    place: at("branches_length", 2),
    expected: "A length like those of the other floors, unless it sits right at what feeds it.",
    effect: "Its cable is neither bought nor reckoned with.",
    remedy: "Compare with the plan.",
  };
  test("a lead left blank", () => {
    expect(found(floorsAlike, smallBook({ branches: devices(4, { "S2-1": { length: "" } }) }))).toStrictEqual(
      [{ ...BLANK, message: "The lead of S2-1 is blank, on the other floors 12.", meant: 12, isGuess: true }],
    );
    const book = smallBook({ branches: devices(4, { "S2-1": { length: "" }, "S3-1": { length: 10 } }) });
    expect(found(floorsAlike, book)).toStrictEqual([
      {
        ...BLANK,
        message: "The lead of S2-1 is blank, on the other floors 10 to 12.",
        usual: { low: 10, high: 12 },
      },
    ]);
  });
  test.each<[string, Readonly<Record<string, Row>>]>([
    ["two blanks", { "S1-1": { length: "" }, "S2-1": { length: "" } }],
    ["one blank, and one that is no length", { "S1-1": { length: "?" }, "S2-1": { length: "" } }],
    ["one blank, and one of nothing", { "S1-1": { length: 0 }, "S2-1": { length: "" } }],
  ])("%s: nothing is said", (_, but) => expect(said(smallBook({ branches: devices(4, but) }))).toEqual([]));
});

/** Outlets that no floor counts: a, b, c … on a floor, fed from something. */
const fed = (...groups: [floor: string, from: string, count: number][]): Row[] =>
  groups
    .flatMap(([floor, from, count]) => Array.from({ length: count }, () => ({ floor, from })))
    .map((row, index) => ({ outlet: String.fromCharCode(97 + index), ...row }));

describe("an outlet on a device of another floor", () => {
  test("is told", () =>
    expect(
      found(
        floorsAlike,
        smallBook({ rooms: fed(["North", "N1", 3], ["South", "s1", 3], ["South", "N1", 1]) }),
      ),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_from", 7),
        message: "g is fed from N1, which else feeds another floor alone.",
        expected: "What feeds the others of its floor, such as S1.",
        effect: "Its run, its level and its head unit are those of another place.",
        remedy: "Compare with the plan.",
      },
    ]));
  const TOLD = " is fed from N1, which else feeds another floor alone.";
  test.each<[string, Row[], string[]]>([
    [
      "two beside it, two at home",
      fed(["North", "N1", 2], ["South", "S1", 2], ["South", "N1", 1]),
      [`e${TOLD}`],
    ],
    ["one beside it", fed(["North", "N1", 1], ["South", "S1", 3], ["South", "N1", 1]), []],
    ["one at home", fed(["North", "N1", 3], ["South", "S1", 1], ["South", "N1", 1]), []],
    ["two of them", fed(["North", "N1", 3], ["South", "S1", 3], ["South", "N1", 2]), []],
    [
      "one on each of two floors",
      fed(["North", "N1", 3], ["South", "S1", 3], ["South", "N1", 1], ["West", "W1", 3], ["West", "N1", 1]),
      [],
    ],
    [
      "what feeds its floor feeds another too",
      fed(["North", "N1", 3], ["South", "S1", 3], ["South", "N1", 1], ["West", "S1", 2]),
      [],
    ],
    [
      "nothing feeds the others of its floor",
      fed(["North", "N1", 3], ["South", "", 3], ["South", "N1", 1]),
      [],
    ],
    ["no floor is said", fed(["North", "N1", 3], ["", "S1", 3], ["", "N1", 1]), []],
  ])("%s", (_, rooms, wanted) => expect(said(smallBook({ rooms }))).toEqual(wanted));
});

describe("a floor that one outlet alone has", () => {
  test("among three others of its feed", () =>
    expect(
      found(
        floorsAlike,
        smallBook({ rooms: fed(["North", "N1", 2], ["Attic", "n1", 1], ["NORTH", "N1", 1]) }),
      ),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_floor", 3),
        message: "c alone is on “Attic”; the 3 others of N1 are on “North”.",
        expected: "“North”, as those fed beside it.",
        meant: "North",
        effect: "A floor more is counted, and difficulties of its floor pass it by.",
        remedy: "Compare with the plan.",
      },
    ]));
  test.each<[string, Row[]]>([
    ["two others", fed(["North", "N1", 2], ["Attic", "N1", 1])],
    ["the others on two floors", fed(["North", "N1", 3], ["South", "N1", 2], ["Attic", "N1", 1])],
    ["two on it", fed(["North", "N1", 3], ["Attic", "N1", 1], ["Attic", "A1", 1])],
    ["one without a floor", fed(["North", "N1", 3], ["", "N1", 1])],
    ["nothing feeds any", fed(["North", "", 3], ["Attic", "", 1])],
  ])("%s: nothing", (_, rooms) => expect(said(smallBook({ rooms }))).toEqual([]));
});

describe("a row copied with its room and run", () => {
  /** Each outlet in a room of its own. */
  const rooms = (count: number, ...more: Row[]): Row[] => [
    ...Array.from({ length: count }, (_, index) => ({
      outlet: String.fromCharCode(97 + index),
      floor: "North",
      room: `Room ${index + 1}`,
      run: 10 + index,
      from: "N1",
    })),
    ...more,
  ];
  const copy = { outlet: "z", floor: "north", room: "ROOM 1", run: 10, from: "n1" };
  test("among twelve", () =>
    expect(found(floorsAlike, smallBook({ rooms: rooms(11, copy) }))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_room", 12),
        message: "z is in ROOM 1 as a is, with the same run and feed; other rooms have one outlet.",
        expected: "Its own room and run: was the row copied?",
        effect: "Its length, and what the crew finds on its list, are another room's.",
        remedy: "Compare with the plan.",
        undoing: ["floor", "room", "outlet", "from", "run"].map((key) => ({ place: at(`rooms_${key}`, 12) })),
        isGuess: true,
      },
    ]));
  const Z = "z is in ROOM 1 as a is, with the same run and feed; other rooms have one outlet.";
  test.each<[string, Row[], string[]]>([
    ["among eleven", rooms(10, copy), []],
    [
      "two rooms of several among 24",
      rooms(22, copy, { ...copy, outlet: "y", room: "Room 2", run: 11 }),
      [Z, "y is in Room 2 as b is, with the same run and feed; other rooms have one outlet."],
    ],
    ["two rooms of several among 23", rooms(21, copy, { ...copy, outlet: "y", room: "Room 2", run: 11 }), []],
    [
      "a third in the room is held to the first",
      rooms(11, copy, { ...copy, outlet: "y" }),
      [Z, Z.replace("z", "y")],
    ],
    ["of another run", rooms(11, { ...copy, run: 11 }), []],
    ["of another feed", rooms(11, { ...copy, from: "N2" }), []],
    [
      "on another floor",
      rooms(11, { ...copy, floor: "South" }, { outlet: "y", floor: "South", room: "Hall" }),
      [],
    ],
    ["of the same name", rooms(11, { ...copy, outlet: "A" }), []],
    ["without rooms", rooms(11, copy).map((row) => ({ ...row, room: "" })), []],
  ])("%s", (_, of, wanted) => expect(said(smallBook({ rooms: of }))).toEqual(wanted));
});

describe("one of another cable than all the others", () => {
  const listed = (name: string, cables: readonly string[]): Row[] =>
    cables.map((cable, index) => ({ [name]: `${name} ${index + 1}`, cable }));
  const six = Array.from({ length: 6 }, (_, index) => (index === 0 ? "Coax" : "coax"));
  const ODD = {
    weight: "worth knowing",
    expected: "“Coax”, unless it is meant.",
    effect: "It loses, costs and resists otherwise.",
    remedy: "Compare with the plan.",
  };
  test("a feeder and a lead, among six others", () => {
    const cables = [...six, "thin"];
    expect(
      found(floorsAlike, smallBook({ feeders: listed("from", cables), branches: listed("id", cables) })),
    ).toStrictEqual([
      {
        ...ODD,
        place: at("feeders_cable", 7),
        message: "The feeder of from 7 is of “thin”, the 6 others are of “Coax”.",
      },
      {
        ...ODD,
        place: at("branches_cable", 7),
        message: "The lead of id 7 is of “thin”, the 6 others are of “Coax”.",
      },
    ]);
  });
  test.each<[string, string[]]>([
    ["five others", [...six.slice(1), "thin"]],
    ["two of it", [...six, "thin", "thin"]],
    ["two, each another", [...six, "thin", "thick"]],
    ["one blank", [...six, ""]],
    ["the others blank", [...six.map(() => ""), "thin"]],
    ["all alike", six],
  ])("%s: nothing", (_, cables) =>
    expect(said(smallBook({ feeders: listed("from", cables), branches: listed("id", cables) }))).toEqual([]),
  );
});
