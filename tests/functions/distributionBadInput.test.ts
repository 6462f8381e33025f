/** What the functions of a distribution say of rows, parts and settings that are wrong: at the row, once, in a sentence. */
import fc from "fast-check";
import { isFault, type Fault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import { tries } from "../support/tries";
import { answersOf, PLACE, tablesOf, type PartRows } from "../support/distributionTables";
import { changed, type Change, type Inputs } from "../support/jobsAsBuilt";
import fixture from "../fixtures/distribution/jobs-as-built.json";

const jobs = fixture.jobs.map(({ inputs }) => inputs as unknown as Inputs);
const SMALLEST = jobs[0]!;
const CASCADE = jobs[1]!;
const ANNEXE = jobs[3]!;

const CHECKS = [
  ["OUTLETCHECKS", "rooms", "outlet"],
  ["DEVICECHECKS", "devices", "device"],
  ["HEADCHECKS", "heads", "head"],
  ["DISHCHECKS", "dishes", "dish"],
  ["FEEDERCHECKS", "feeders", "to"],
] as const;

/** Every sentence of a job, with the row that it stands at. */
function said(inputs: Inputs, tables: readonly Argument[] = tablesOf(inputs)): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [name, list, key] of CHECKS)
    answersOf(name, tables).forEach((cells, row) => {
      const text = cells.at(-1)!;
      if (isFault(text)) found.all = text.message;
      else if (text !== "")
        found[String((inputs[list] as readonly Record<string, unknown>[])[row]?.[key])] = String(text);
    });
  return found;
}
const saidAfter = (
  inputs: Inputs,
  change: readonly Change[],
  parts: PartRows = {},
): Record<string, string> => {
  const other = changed(inputs, change);
  return said(other, tablesOf(other, parts));
};
const below = (row: string, bad: string): string =>
  `"${row}" hangs below "${bad}", whose own row has a fault. Put the row of "${bad}" right first.`;
const match = (pattern: RegExp): string => expect.stringMatching(pattern) as string;

test("the jobs themselves are sound", () => {
  expect([SMALLEST, CASCADE, ANNEXE].map((inputs) => said(inputs))).toEqual([{}, {}, {}]);
});

describe("the mistakes that the trade makes", () => {
  test("a device fed by two", () => {
    const twice = saidAfter(ANNEXE, [
      ["insert first", "devices", { device: "S2", part: "4-way splitter", from: "S1" }],
    ]);
    expect(twice.S2).toBe(
      'The name "S2" stands in two rows, fed from "S1" and from "P1". Keep the row of the one that feeds it, or give the other part a name of its own.',
    );
    expect(twice.X1).toBe(below("X1", "S2"));
  });

  test("a port beyond its ways", () => {
    expect(saidAfter(SMALLEST, [["rooms", "2", "port", 5]])).toEqual({
      "2": '"2" is on port 5 of "S1", which has ports 1 to 4. Give one of its ports, or take a part with more.',
    });
  });

  test("an amplifier behind a block without power; an inserter the wrong way round", () => {
    const change: readonly Change[] = [
      ["devices", "P1", "from", "E1"],
      ["devices", "A1", "from", "P1"],
      ["devices", "S2", "from", "A1"],
    ];
    expect(saidAfter(ANNEXE, change)).toEqual({
      A1: match(/^"A1" gets 0\.0 V; it needs 15 V\. Between it and a supply "P1" passes no power:/),
    });
  });

  test("a receiver's voltage on an inserter", () => {
    const low = { stands: "in the line", volts: 12, amps: 1, receiver_side: "all" };
    const found = saidAfter(
      SMALLEST,
      [
        ["heads", "H1", "supply", "inserter 12 V"],
        ["rooms", "3", "run", 60],
      ],
      {
        supplies: { "inserter 12 V": low },
      },
    );
    expect(found.H1).toMatch(
      /^The supply of "H1" of 12 V is fed backwards with \d\.\d\d A, by a supply or a receiver of 18 V\./,
    );
    // Held down to 12 V less what the lead drops, the head unit hears no command either.
    expect(found["1"]).toMatch(
      /^While the receiver of "1" commands, 11\.\d V arrive at "H1"; it takes 15\.5 V/,
    );
  });

  test("a tap's through port left open", () => {
    const change: readonly Change[] = [
      ["devices", "S1", "part", "tap 16 dB, steered"],
      ["site", "closes", null],
    ];
    const one = changed(SMALLEST, change);
    const found = said({ ...one, rooms: one.rooms.slice(0, 1) });
    expect(found).toEqual({
      S1: 'The through port of "S1" is open. Close it with an end resistor that blocks direct current.',
    });
  });

  test("what closes open ports is not known: said where a port is open", () => {
    expect(saidAfter(jobs[2]!, [["site", "closes", "stopper"]])).toEqual({
      R6: '"end resistor" names the end resistor "stopper", which has no row. Known are "end resistor", "end resistor, plain". Check the spelling, or add its row.',
    });
  });
});

describe("cells", () => {
  const other: Fault = { kind: "fault", code: "#N/A", message: "A sentence of another cell." };
  test.each<[string, string, string | number, string]>([
    ["rooms", "run", "14 m", '"2": run is "14 m", which is not a number. Enter a number from 0 to 100000.'],
    [
      "rooms",
      "run",
      "1,5",
      '"2": run is "1,5", text with a decimal comma. Write 1.5, or set the cell to a number.',
    ],
    ["rooms", "run", -3, '"2": run is -3; it must be from 0 to 100000. Check the length and its unit.'],
    ["rooms", "port", "left", '"2": port is "left"; it must be a whole number from 1, or "through".'],
    ["rooms", "port", 0, '"2": port is 0; it must be a whole number from 1, or "through".'],
    [
      "rooms",
      "pin",
      "1-2",
      '"2": user bands kept is "1-2"; it must be numbers of user bands, each once, such as 5 or "9 10".',
    ],
    [
      "rooms",
      "quantity",
      1.5,
      '"2": how many is 1.5; it must be a whole number from 0 to 1000. Check the value and its unit.',
    ],
    ["rooms", "longest", 9, '"2": run is 14, above longest run, which is 9. Give the lower value first.'],
    [
      "rooms",
      "plate",
      "plat",
      '"2" names the wall plate "plat", which has no row. Known are "plate", "loop plate 18 dB", "loop plate 14 dB", "loop plate 10 dB". Check the spelling, or add its row.',
    ],
    ["rooms", "receiver", "reciever", '"2" names the receiver "reciever", which has no row.'],
    ["rooms", "cable", "dropp", '"2": There is no cable "dropp".'],
    ["rooms", "split", "5-way", '"2" names the device "5-way", which has no row.'],
    [
      "rooms",
      "from",
      "S9",
      '"2" is fed from "S9", which is no head unit, device or outlet of this job. Check the spelling, or add its row.',
    ],
  ])("%s: %s is %j", (list, key, value, sentence) => {
    const found = saidAfter(SMALLEST, [[list, "2", key, value]]);
    expect(Object.keys(found)).toEqual(["2"]);
    expect(found["2"]).toContain(sentence);
  });

  test("an error of another cell goes on to its row", () => {
    const tables = tablesOf(SMALLEST);
    const outlets = tables[PLACE.outlets]!.map((row, index) =>
      row.map((cell, column): Cell => (index === 1 && column === 7 ? other : cell)),
    );
    const checks = answersOf("OUTLETCHECKS", [outlets, ...tables.slice(1)]);
    expect(checks.map((row) => [row[0], row.at(-1)])).toEqual([
      ["ok", ""],
      ["bad", '"2": A sentence of another cell.'],
      ["ok", ""],
      ["ok", ""],
    ]);
  });

  test("columns at the end of a table may be left out, surplus ones may not", () => {
    const tables = tablesOf(SMALLEST);
    const narrow = tables.map((rows, table) =>
      table === PLACE.details
        ? rows.map((row) => row.slice(0, 1))
        : table === PLACE.dishes
          ? rows.map((row) => row.slice(0, 2))
          : rows,
    );
    expect(answersOf("OUTLETLEVELS", narrow)).toEqual(answersOf("OUTLETLEVELS", tables));
    const wide = tables.map((rows, table) =>
      table === PLACE.devices ? rows.map((row) => [...row, 1]) : rows,
    );
    expect(said(SMALLEST, wide).all).toMatch(
      /^devices is 1 rows by 8 columns; it must be at most 7 columns: device, fed from/,
    );
    const details = [...tables[PLACE.details]!, ["riser", null, null, null, null, null]];
    expect(said(SMALLEST, [tables[0]!, details, ...tables.slice(2)]).all).toMatch(
      /^outlets has 4 entries where the other columns have 5/,
    );
  });
});

describe("parts", () => {
  test("a figure that is missing, at the row that names the part; what hangs below says so once", () => {
    const found = saidAfter(SMALLEST, [], { devices: { "4-way splitter": { port_high: null } } });
    expect(found).toEqual({
      S1: '"S1" names the device "4-way splitter", whose own row has a fault: loss to a port, highest frequency is missing. Enter a number.',
      ...Object.fromEntries(["1", "2", "3", "4"].map((row) => [row, below(row, "S1")])),
    });
  });

  test.each<[string, PartRows, RegExp]>([
    ["ways", { devices: { "4-way splitter": { ways: null } } }, /^"S1" names .*: ways is missing/],
    ["kind", { devices: { "4-way splitter": { kind: "divider" } } }, /kind is "divider"; it must be one of/],
    [
      "kind of head unit",
      { head_units: { "feed head unit, 8 bands": { out_low: null } } },
      /^"H1" names the kind of head unit .*: output, lowest frequency is missing/,
    ],
    [
      "band plan",
      { head_units: { "feed head unit, 8 bands": { band_plan: "9 bands" } } },
      /names the band plan "9 bands", which has no row/,
    ],
    [
      "bands of the plan",
      { head_units: { "feed head unit, 8 bands": { bands: 7 } } },
      /It has 7 user bands, and its band plan "8 bands" lists 8/,
    ],
    ["cable", { cables: { drop: { k2: null } } }, /^"H1": The cable "drop" has a blank k2/],
    ["cable that gains", { cables: { drop: { k0: -90 } } }, /a cable's loss must be 0 dB or more/],
    [
      "one figure of two",
      { plates: { plate: { through_low: 1 } } },
      /^"1" names the wall plate "plate", whose own row has a fault: loss through, highest frequency is missing/,
    ],
  ])("%s", (_, parts, sentence) => {
    const found = said(SMALLEST, tablesOf(SMALLEST, parts));
    expect(Object.values(found).filter((text) => !text.includes("hangs below"))).toEqual(
      expect.arrayContaining([match(sentence)]),
    );
    expect(Object.values(found).some((text) => /undefined|NaN|Infinity/.test(text))).toBe(false);
  });

  test("a part that stands twice; a supply in the line that is none", () => {
    const tables = tablesOf(SMALLEST);
    const plates = tables[10]!;
    const twice = tables.map((rows, table) => (table === 10 ? [...plates, plates[0]!] : rows));
    expect(said(SMALLEST, twice)["1"]).toBe(
      '"1" names the wall plate "plate", whose own row has a fault: The name "plate" stands in more than one row. Give each row its own name.',
    );
    expect(saidAfter(ANNEXE, [["devices", "P1", "part", "mains pack 18 V"]]).P1).toBe(
      '"P1" is the supply "mains pack 18 V", which stands at a head unit. Take one that stands in the line, or give this one to its head unit.',
    );
  });

  test("a row with a fault of its own stays on its port", () => {
    // The through port of the tap is taken, if by a device that is not known.
    const change: readonly Change[] = [
      ["devices", "S1", "part", "tap 16 dB, steered"],
      ["site", "closes", null],
      ["insert first", "devices", { device: "S2", part: "unknown", from: "S1" }],
    ];
    const one = changed(SMALLEST, change);
    const found = said({ ...one, rooms: one.rooms.slice(0, 1) });
    expect(Object.keys(found)).toEqual(["S2"]);
  });
});

describe("dishes, feeders, slots", () => {
  test.each<[string, Inputs, readonly Change[], Record<string, RegExp>]>([
    [
      "an unknown feed",
      CASCADE,
      [["dishes", "D1", "feed", "quattro"]],
      {
        D1: /^"D1" names the feed "quattro", which has no row/,
        H1: /comes from "D1", whose own row has a fault/,
        H2: /comes from "H1", whose own row/,
      },
    ],
    [
      "a slot that is no slot",
      SMALLEST,
      [["dishes", "D1", "slots", "13 E"]],
      { D1: /^"D1": slots? is "13", which is not an orbital slot/, H1: /^"H1" hangs below "D1"/ },
    ],
    [
      "a slot that the job has not",
      SMALLEST,
      [["dishes", "D1", "slots", "19E"]],
      { D1: /^"D1" has the slot "19E", which has no row\. Known are "13E"/, H1: /^"H1" hangs below "D1"/ },
    ],
    [
      "a slot below the horizon",
      SMALLEST,
      [["site", "longitude", -150]],
      { D1: /^The slot at 13 deg east stands at an elevation of -/ },
    ],
    ["no latitude", SMALLEST, [["site", "latitude", null]], { D1: /^latitude is missing/ }],
    ["availability without rain", SMALLEST, [["site", "rain_rate", null]], { D1: /^rain rate is missing/ }],
    [
      "no size",
      SMALLEST,
      [["dishes", "D1", "size", null]],
      { D1: /^"D1": dish size is missing/, H1: /^"H1" hangs below "D1"/ },
    ],
  ])("%s", (_, inputs, change, sentences) => {
    const found = saidAfter(inputs, change);
    const expected = Object.fromEntries(Object.entries(sentences).map(([row, words]) => [row, match(words)]));
    expect(found).toEqual(expected);
  });

  test("no dish has a row: what is wrong with the one assumed is said at the head unit", () => {
    const one = { ...SMALLEST, dishes: [] };
    expect(said(one)).toEqual({ H1: "dish size is missing. Enter a number in m." });
    expect(said({ ...one, site: { ...one.site, dish_size: 0.8 } })).toEqual({});
    expect(said({ ...one, slots: [] })).toEqual({
      H1: 'The dish "dish" has no slot to receive. Enter the slots of the job.',
    });
  });
});

describe("settings", () => {
  test.each<[string, string | number | null, RegExp]>([
    ["low", null, /^lowest frequency is missing/],
    [
      "low",
      2150,
      /^lowest frequency and highest frequency are both 2150 MHz\. Give the two ends of the range\.$/,
    ],
    ["low", 2200, /^lowest frequency is 2200 MHz, above highest frequency/],
    ["hot", -20, /^coldest is -15 °C, above hottest/],
    ["level_low", 78, /^minimum level is 78 dBµV, above maximum level/],
    ["unit", "yd", /^unit is "yd"; it must be one of "m", "ft"/],
    ["availability", 100, /^availability is 100 %/],
  ])("%s is %j", (key, value, sentence) => {
    expect(saidAfter(SMALLEST, [["site", key, value]])).toEqual({ all: match(sentence) });
  });

  test("left out, or too many", () => {
    const tables = tablesOf(SMALLEST);
    const withSettings = (settings: Argument): Argument[] =>
      tables.map((rows, table) => (table === PLACE.settings ? settings : rows));
    expect(said(SMALLEST, withSettings(null) as Matrix[]).all).toBe(
      "settings is missing. Enter a column of 22 settings.",
    );
    expect(said(SMALLEST, withSettings([...tables[PLACE.settings]!, [1]])).all).toBe(
      "settings is 23 rows by 1 columns; it must be one column of 22 settings.",
    );
  });
});

test("blank rows give blanks, and a job without any row asks for no settings", () => {
  const tables = tablesOf({
    ...SMALLEST,
    rooms: [{}, ...SMALLEST.rooms.slice(0, 1), {}, ...SMALLEST.rooms.slice(1)],
  });
  const checks = answersOf("OUTLETCHECKS", tables);
  expect(checks.map((row) => row[0])).toEqual(["", "ok", "", "ok", "ok", "ok"]);
  expect(checks[0]).toEqual(Array(10).fill(""));
  const blank = tables.map((rows) => rows.map((row) => row.map(() => null)));
  for (const [name] of CHECKS)
    expect(
      answersOf(name, blank)
        .flat()
        .every((cell) => cell === ""),
    ).toBe(true);
  expect(answersOf("NEEDED", blank)).toEqual([["", "", ""]]);
});

test("the same tables are solved once, changed ones anew", () => {
  const tables = tablesOf(SMALLEST);
  const before = answersOf("OUTLETLEVELS", tables);
  const copy = tables.map((rows) => rows.map((row) => [...row]));
  expect(answersOf("OUTLETLEVELS", copy)).toEqual(before);
  copy[PLACE.outlets]![0]![7] = 80;
  expect(answersOf("OUTLETLEVELS", copy)).not.toEqual(before);
  expect(answersOf("OUTLETLEVELS", tables)).toEqual(before);
});

describe("any value in any cell: numbers, words and sentences, never an exception", () => {
  const NAMES = allFunctions.filter(({ group }) => group === "Distribution").map(({ name }) => name);
  const odd = fc.constantFrom<Cell>(
    ...[
      null,
      "",
      "  ",
      "text",
      "12",
      "1,5",
      "through",
      "no",
      true,
      0,
      -1,
      0.5,
      1,
      2,
      40,
      1e308,
      -1e308,
      Infinity,
    ],
    ...["S1", "H1", "D1", "1", "13E", "97W 113W", "EN 50607", "maker's own", "fed", "W", "yes", "recorder"],
    { kind: "fault", code: "#N/A", message: "A sentence of another cell." },
  );
  const place = fc.record({ table: fc.nat(16), row: fc.nat(40), column: fc.nat(30), cell: odd });
  const sound = (cell: unknown): boolean =>
    isFault(cell)
      ? !/failed inside|undefined|NaN|\[object/.test(cell.message)
      : typeof cell === "number"
        ? Number.isFinite(cell)
        : typeof cell === "string" && !/undefined|NaN|Infinity V|\[object/.test(cell);

  test.each(jobs.map((inputs, index) => [index + 1, inputs] as const))("job %d", (_, inputs) => {
    const tables = tablesOf(inputs);
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 3 }), (places) => {
        const changed = tables.map((rows) => rows.map((row) => [...row]));
        for (const { table, row, column, cell } of places) {
          const rows = changed[table]!;
          const cells = rows[row % Math.max(1, rows.length)];
          if (cells) cells[column % cells.length] = cell;
        }
        for (const name of NAMES) {
          const answer = allFunctions.find((one) => one.name === name)!.call(changed);
          const cells = (Array.isArray(answer) ? answer.flat() : [answer]) as Cell[];
          expect([name, cells.filter((one) => !sound(one))]).toEqual([name, []]);
        }
      }),
      { numRuns: tries(100, 1000) },
    );
  });
});
