/** What is said of a verdict of the workbook: the row, its figure, its limit and where it is put right. */
import type { Finding } from "../../src/review/finding";
import { limits } from "../../src/review/rules/limits";
import type { Book } from "../../src/workbooks/book";
import { at, found, messages, smallBook, type Row } from "./smallBook";

const said = (book: Book): string[] => messages(limits, book);
/** Where each is put right is the table's of src/review/mendedBy.ts; here that its row is the one that is told of. */
const apart = (
  book: Book,
): { findings: Omit<Finding, "mends">[]; mended: (Finding["place"] | undefined)[] } => {
  const all = found(limits, book);
  return {
    findings: all.map(({ mends: _, ...finding }) => finding),
    mended: all.map(({ mends }) => mends?.[0]?.place),
  };
};
const NOT_WORKING = "It will not work as quoted.";

test("good throughout, and nothing at all: nothing", () => {
  const row = {
    outlet: "a",
    check_level: "good",
    check_noise: "good",
    check_bands: "good",
    weakest: 20,
    noise_clear: 1,
  };
  expect(said(smallBook({ rooms: [row] }))).toEqual([]);
  expect(said(smallBook({}))).toEqual([]);
});

test.each<[string, Row, Row, Record<string, number>, string, string | undefined]>([
  [
    "rooms",
    { check_level: "low" },
    { weakest: 42.004 },
    { site_level_low: 47 },
    "a has too little level: 42 dBµV.",
    "At least 47 dBµV.",
  ],
  [
    "rooms",
    { check_level: "high" },
    { strongest: 82.126 },
    { site_level_high: 77 },
    "a has too much level: 82.13 dBµV.",
    "At most 77 dBµV.",
  ],
  [
    "rooms",
    { check_slope: "steep" },
    { slope: 14 },
    { slope: 12 },
    "a has too much difference between the ends of the range: 14 dB.",
    undefined,
  ],
  [
    "rooms",
    { check_applied: "high" },
    { volts_applied: 24 },
    {},
    "a has too many volts from elsewhere at its connector: 24 V.",
    undefined,
  ],
  [
    "heads",
    { check_power: "low" },
    { fed_least: 11, least: 12.5 },
    {},
    "a has too few volts: 11 V.",
    "At least 12.5 V.",
  ],
  [
    "heads",
    { check_current: "high" },
    { fed_supplied: 3 },
    {},
    "a has too much current for its supply: 3 A.",
    undefined,
  ],
  [
    "branches",
    { check_power: "low" },
    { check_volts: 14 },
    {},
    "a has too few volts to amplify: 14 V.",
    undefined,
  ],
  [
    "branches",
    { check_current: "high" },
    { check_amps: 2 },
    {},
    "a has too much current through it: 2 A.",
    undefined,
  ],
  [
    "branches",
    { check_output: "high" },
    { level_greatest: 110, level_limit: 105 },
    {},
    "a has too much output for the carriers that it carries: 110 dBµV.",
    "At most 105 dBµV.",
  ],
])("%s %j %j", (block, verdict, figures, fields, message, expected) => {
  const name = block === "rooms" ? "outlet" : "id";
  const good = { [name]: "good", ...Object.fromEntries(Object.keys(verdict).map((key) => [key, "good"])) };
  const [finding, ...others] = found(
    limits,
    smallBook({ [block]: [good, { [name]: "a", ...verdict, ...figures }] }, fields),
  );
  expect(others).toEqual([]);
  expect(finding).toMatchObject({ weight: "wrong", message, effect: NOT_WORKING });
  expect(finding!.expected).toBe(expected);
  expect(finding!.place).toEqual(at(`${block}_${Object.keys(verdict)[0]}`, 2));
});

describe("a level", () => {
  test("whole, with a cell of its own row to put it right", () => {
    const rows: Row[] = [
      { outlet: "a", check_level: "good", run: 5 },
      { outlet: "b", check_level: "low", weakest: 42, run: 90 },
    ];
    expect(apart(smallBook({ rooms: rows }, { site_level_low: 47 }))).toStrictEqual({
      findings: [
        {
          weight: "wrong",
          place: at("rooms_check_level", 2),
          message: "b has too little level: 42 dBµV.",
          expected: "At least 47 dBµV.",
          effect: NOT_WORKING,
          remedy: "Shorten the run, take a better cable, or a splitter that loses less.",
        },
      ],
      mended: [at("rooms_run", 2)],
    });
  });
  test("that is no number has no figure, and without a limit nothing is expected", () => {
    const rows = [{ outlet: "", check_level: "low", weakest: { error: "#N/A" } }];
    expect(apart(smallBook({ rooms: rows })).findings).toStrictEqual([
      {
        weight: "wrong",
        place: at("rooms_check_level", 1),
        message: " has too little level.",
        effect: NOT_WORKING,
        remedy: "Shorten the run, take a better cable, or a splitter that loses less.",
      },
    ]);
  });
});

describe("volts", () => {
  const SUPPLY = "Take a cable with less resistance, a supply with more volts, or move it nearer.";
  const NOTHING = "No supply reaches it: add one, or mend what stands between.";
  const remedies = (block: string, row: Row) =>
    found(limits, smallBook({ [block]: [row] })).map(({ remedy }) => remedy);
  test.each([
    [0.9, NOTHING],
    [1, SUPPLY],
    [{ error: "#N/A" }, SUPPLY],
  ])("%j at a head unit", (volts, remedy) =>
    expect(remedies("heads", { id: "H1", check_power: "low", fed_least: volts })).toEqual([remedy]),
  );
  test("less than one too many, and less than one ampere, is not no supply", () => {
    const [applied] = remedies("rooms", { outlet: "a", check_applied: "high", volts_applied: 0.5 });
    expect(applied).toMatch(/^Take devices that pass power towards the head unit only/);
    expect(remedies("heads", { id: "H1", check_current: "high", fed_supplied: 0.5 })).toEqual([
      "Take a supply that gives more.",
    ]);
    expect(remedies("rooms", { outlet: "a", check_level: "low", weakest: 0.5 })[0]).toMatch(
      /^Shorten the run/,
    );
  });

  const weak = (head: Row, supplies: Row[], units: Row[]) =>
    found(
      limits,
      smallBook({
        heads: [
          { id: "H0", check_power: "good" },
          { id: "H1", check_power: "low", fed_least: 11, ...head },
        ],
        supplies,
        units,
      }),
    );
  const head = { supply: "Plug", type: "Quattro" };
  const plug = [
    { name: "box", volts: 24 },
    { name: "plug", volts: 12 },
  ];
  const unit = [{ name: "quattro", least: 12.5 }];
  test("whose supply gives fewer than the head unit needs: its entry is the cause", () => {
    const [finding] = weak(head, plug, unit);
    expect(finding!.cause).toEqual(at("heads_supply", 2));
    expect(finding!.place).toEqual(at("heads_check_power", 2));
  });
  test.each<[string, Row, Row[], Row[]]>([
    ["as many as it needs", head, [{ name: "plug", volts: 12.5 }], unit],
    ["another supply's", { ...head, supply: "box" }, plug, unit],
    ["of a supply that is not there", { ...head, supply: "brick" }, plug, unit],
    ["of a kind that is not there", { ...head, type: "octo" }, plug, unit],
    ["no number", head, [{ name: "plug", volts: "12" }], unit],
    ["none needed", head, plug, [{ name: "quattro", least: "" }]],
  ])("%s: nothing is the cause", (_, row, supplies, units) =>
    expect(weak(row, supplies, units)[0]!.cause).toBeUndefined(),
  );
  test("too much current is at the supply's entry where one is chosen, and has no such cause", () => {
    const of = (supply: string) =>
      found(
        limits,
        smallBook({
          heads: [{ id: "H1", check_current: "high", fed_supplied: 3, supply, type: "quattro" }],
          supplies: plug,
          units: unit,
        }),
      )[0]!;
    expect(of("plug").place).toEqual(at("heads_supply", 1));
    expect(of("plug")).not.toHaveProperty("cause");
    expect(of("").place).toEqual(at("heads_check_current", 1));
  });
  test("of an outlet are not its head unit's", () => {
    const [finding] = found(
      limits,
      smallBook({
        rooms: [{ outlet: "a", check_applied: "high", volts_applied: 24 }],
        heads: [head],
        supplies: plug,
        units: unit,
      }),
    );
    expect(finding).not.toHaveProperty("cause");
  });
});

describe("carrier to noise", () => {
  const noise = (row: Row): Book =>
    smallBook({
      rooms: [
        { outlet: "good", check_noise: "good" },
        { outlet: "a", check_noise: "low", noise_slot: "Ku 3", cable: "coax", ...row },
      ],
    });
  test("in clear sky, whole", () =>
    expect(apart(noise({ noise_clear: 9.126, noise_rain: "", noise_needed: 10 })).findings).toStrictEqual([
      {
        weight: "wrong",
        place: at("rooms_check_noise", 2),
        message: "a has too little carrier to noise of Ku 3: 9.13 dB in clear sky.",
        expected: "At least 10 dB.",
        effect: "Pictures break up, or never come.",
        remedy: "Take a larger dish, or a feed with less noise; a level that is too low adds noise as well.",
      },
    ]));
  const RAIN = "a has too little carrier to noise of Ku 3: 8 dB at the availability wanted.";
  test.each<[string, Row, string]>([
    ["enough in clear sky, too little in rain", { noise_clear: 12, noise_rain: 8, noise_needed: 10 }, RAIN],
    ["just enough in clear sky", { noise_clear: 10, noise_rain: 8, noise_needed: 10 }, RAIN],
    [
      "too little in both",
      { noise_clear: 9, noise_rain: 8, noise_needed: 10 },
      "a has too little carrier to noise of Ku 3: 9 dB in clear sky.",
    ],
    ["nothing known of clear sky", { noise_rain: 8, noise_needed: 10 }, RAIN],
    ["no figure", { noise_needed: 10 }, "a has too little carrier to noise of Ku 3."],
    [
      "no slot",
      { noise_slot: undefined as never, noise_clear: 9 },
      "a has too little carrier to noise of a slot: 9 dB in clear sky.",
    ],
  ])("%s", (_, row, message) => expect(said(noise(row))).toEqual([message]));
  test("without a limit nothing is expected", () =>
    expect(found(limits, noise({ noise_clear: 9 }))[0]).not.toHaveProperty("expected"));
  test("is put right in its own row", () =>
    expect(apart(noise({ noise_clear: 9 })).mended).toEqual([at("rooms_cable", 2)]));
});

describe("verdicts without a figure", () => {
  const row = (outlet: string, more: Row = {}): Row => ({
    outlet,
    check_bands: "bad",
    place_head: "H1",
    ...more,
  });
  test("whole, with the reason that the workbook gives", () => {
    const book = smallBook({
      rooms: [
        row("a", { check_bands: "good", kept: "" }),
        row("b", { check_trouble: "No band is left.", kept: "" }),
      ],
    });
    expect(apart(book)).toStrictEqual({
      findings: [
        {
          weight: "wrong",
          place: at("rooms_check_bands", 2),
          message: "b has not the user bands that it needs. No band is left.",
          effect: NOT_WORKING,
          remedy: "Add an output or a head unit, or keep other user bands.",
        },
      ],
      mended: [at("rooms_kept", 2)],
    });
  });
  test.each<[string, string, Row, string]>([
    ["rooms", "check_commands", { check_commands: "dead" }, "a cannot command its head unit."],
    ["rooms", "check_connectors", { check_connectors: "too many" }, "a has more receivers than connectors."],
    ["rooms", "check_port", { check_port: "left open" }, "a has a through port that nothing closes."],
    ["branches", "check_port", { check_port: "left open" }, "a has a through port that nothing closes."],
    ["heads", "check_input", { check_input: "low" }, "a has a level at its inputs that it does not take."],
    ["heads", "check_input", { check_input: "high" }, "a has a level at its inputs that it does not take."],
    ["heads", "check_feed", { check_feed: "low" }, "a does not give its feed the volts that it needs."],
  ])("%s %s %j", (block, column, verdict, message) => {
    const book = smallBook({
      [block]: [{ [block === "rooms" ? "outlet" : "id"]: "a", check_trouble: "", ...verdict }],
    });
    expect(found(limits, book)).toMatchObject([{ message, place: at(`${block}_${column}`, 1) }]);
  });
  test("a reason that is an error is none; one without a name has none", () => {
    expect(said(smallBook({ rooms: [row("", { check_trouble: { error: "#N/A" } })] }))).toEqual([
      " has not the user bands that it needs.",
    ]);
  });
  test("an outlet that cannot command gets no band either: one finding", () =>
    expect(said(smallBook({ rooms: [row("a", { check_commands: "dead" })] }))).toEqual([
      "a cannot command its head unit.",
    ]));

  const ONE = " has not the user bands that it needs.";
  test.each<[string, Row[], string[]]>([
    ["two of one head unit are told each", [row("a"), row("b")], [`a${ONE}`, `b${ONE}`]],
    [
      "three are one finding",
      [row("a"), row("x", { place_head: "H2" }), row("b"), row("c")],
      ["a and 2 more of H1 have not the user bands that they need.", `x${ONE}`],
    ],
    [
      "three of none are told each",
      [
        row("a", { place_head: undefined as never }),
        row("b", { place_head: undefined as never }),
        row("c", { place_head: undefined as never }),
      ],
      [`a${ONE}`, `b${ONE}`, `c${ONE}`],
    ],
  ])("%s", (_, rooms, wanted) => expect(said(smallBook({ rooms }))).toEqual(wanted));
  test("three that cannot command are one, three open ports three", () => {
    const three = (verdict: Row): Row[] =>
      ["a", "b", "c"].map((outlet) => ({ outlet, place_head: "H1", ...verdict }));
    expect(said(smallBook({ rooms: three({ check_commands: "dead" }) }))).toEqual([
      "a and 2 more of H1 cannot command it.",
    ]);
    expect(said(smallBook({ rooms: three({ check_port: "left open" }) }))).toHaveLength(3);
  });

  const KEEPS = "Its receiver keeps user band 7, which H1 has not.";
  const places = (rooms: Row[]) => found(limits, smallBook({ rooms })).map(({ place }) => place);
  test("a band that a receiver keeps is looked for at its entry", () => {
    const kept = { kept: "7", check_trouble: KEEPS };
    expect(places([row("a", kept), row("b", { kept: "", check_trouble: KEEPS })])).toEqual([
      at("rooms_kept", 1),
      at("rooms_check_bands", 2),
    ]);
    // Without that reason the entry is not at fault, nor is it of many, nor of another verdict.
    expect(places([row("a", { kept: "7", check_trouble: "No band is left." })])).toEqual([
      at("rooms_check_bands", 1),
    ]);
    expect(places(["a", "b", "c"].map((one) => row(one, kept)))).toEqual([at("rooms_check_bands", 1)]);
    expect(places([{ outlet: "a", check_commands: "dead", ...kept }])).toEqual([
      at("rooms_check_commands", 1),
    ]);
  });
});
