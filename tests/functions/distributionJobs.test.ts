/**
 * Six jobs from dish to receiver and ten variants through the sheet functions: every answer that a function gives.
 *
 * Source: tests/fixtures/distribution/jobs-as-built.json, as tests/engine/distribution/jobsAsBuilt.test.ts has it.
 */
import type { Matrix } from "../../src/functions/core/cells";
import { answersOf, PLACE, tablesOf } from "../support/distributionTables";
import { heldTo } from "../support/heldTo";
import { changed, type Change, type Inputs } from "../support/jobsAsBuilt";
import { needed } from "../support/outsiderCases";
import fixture from "../fixtures/distribution/jobs-as-built.json";

const { db: DB, volts: VOLTS, amps: AMPERES, metres: METRES } = fixture.tolerance;
const basis = { what: "functions of a distribution", basis: "reference library" } as const;
const python = "people's own Python (jobs-as-built.json)";
const nodal = "a nodal solve and ngspice (jobs-as-built.json)";
const decibels = heldTo({ ...basis, source: python, unit: "dB" });
const volts = heldTo({ ...basis, source: nodal, unit: "V" });
const amperes = heldTo({ ...basis, source: nodal, unit: "A" });
const lengths = heldTo({ ...basis, source: python, unit: "m" });

type Answers = Readonly<Record<string, number>>;
interface OutletAnswer {
  readonly outlet: string;
  readonly head: string;
  readonly output: number;
  readonly level: Answers;
  readonly bands: readonly { band: number; mhz: number; level_hot: number }[];
  readonly carrier_to_noise: Readonly<
    Record<string, { clear: number; needs: number; at_availability: number }>
  >;
  readonly commands: string;
  readonly volts_standing_from_supplies: number;
  readonly volts_standing_worst: number;
  readonly amps_it_gives_most: number;
  readonly volts_at_output_while_it_commands?: number;
}
interface Expected {
  readonly slots_seen?: Readonly<Record<string, Answers>>;
  readonly head_units: readonly Readonly<Record<string, number | string | boolean>>[];
  readonly outlets: readonly OutletAnswer[];
  readonly supplies: readonly { supply: string; amps_most: number }[];
  readonly amplifiers: readonly {
    amplifier: string;
    output_most: number;
    limit: number;
    volts_least: number;
  }[];
  readonly feeds?: readonly { feed: string; volts: number }[];
  readonly bill_pieces?: Answers;
  readonly cable_metres?: Answers;
  readonly metres_by_way?: Answers;
  readonly fails: readonly { check: string; rows: string[]; words: string[] }[];
}

const cases = fixture.jobs.flatMap(({ id, inputs, expected, variants }) => {
  const own = inputs as unknown as Inputs;
  return [
    { name: id, inputs: own, expected: expected as unknown as Expected },
    ...variants.map(({ why, change, expected: other }) => ({
      name: `${id}: ${why}`,
      inputs: changed(own, change as unknown as readonly Change[]),
      expected: other as unknown as Expected,
    })),
  ];
});

/** Where the functions have a word for each check of the fixture: function, column, and the words that fail. */
const FAILING: Readonly<Record<string, readonly (readonly [string, number, readonly string[]])[]>> = {
  head_volts: [["HEADCHECKS", 1, ["low"]]],
  feed_volts: [["HEADCHECKS", 4, ["low"]]],
  amplifier_volts: [["DEVICECHECKS", 3, ["low"]]],
  volts_on_receiver: [["OUTLETCHECKS", 7, ["high"]]],
  commands: [["OUTLETCHECKS", 4, ["dead"]]],
  one_connector: [["OUTLETCHECKS", 6, ["too many"]]],
  open_through: [
    ["OUTLETCHECKS", 8, ["left open"]],
    ["DEVICECHECKS", 6, ["left open"]],
  ],
  resistor_on_power: [
    ["OUTLETCHECKS", 8, ["passes power"]],
    ["DEVICECHECKS", 6, ["passes power"]],
  ],
  bands: [["OUTLETCHECKS", 5, ["bad"]]],
  cn_available: [["OUTLETCHECKS", 3, ["low"]]],
  "none of the fixture": [
    ["OUTLETCHECKS", 0, ["bad"]],
    ["OUTLETCHECKS", 1, ["low", "high"]],
    ["OUTLETCHECKS", 2, ["steep"]],
    ["DEVICECHECKS", 2, ["bad"]],
    ["DEVICECHECKS", 4, ["high", "unused"]],
    ["DEVICECHECKS", 5, ["high"]],
    ["HEADCHECKS", 0, ["bad"]],
    ["HEADCHECKS", 2, ["high"]],
    ["HEADCHECKS", 3, ["low", "high"]],
    ["HEADCHECKS", 5, ["unused"]],
    ["DISHCHECKS", 4, ["bad"]],
    ["FEEDERCHECKS", 1, ["bad"]],
  ],
};
const NAME_OF: Readonly<Record<string, readonly [keyof Inputs, string]>> = {
  OUTLETCHECKS: ["rooms", "outlet"],
  DEVICECHECKS: ["devices", "device"],
  HEADCHECKS: ["heads", "head"],
  DISHCHECKS: ["dishes", "dish"],
  FEEDERCHECKS: ["feeders", "to"],
};

describe.each(cases.map((one) => [one.name, one] as const))("%s", (name, { inputs, expected }) => {
  const tables = tablesOf(inputs);
  const answers = (fn: string): Matrix => answersOf(fn, tables);
  const rowOf = (list: "rooms" | "devices" | "heads" | "dishes", key: string, row: string): number =>
    inputs[list].findIndex((one) => one[key] === row);

  test("outlets", () => {
    const [places, levels, noise, supply, checks] = [
      "OUTLETPLACES",
      "OUTLETLEVELS",
      "OUTLETNOISE",
      "OUTLETVOLTS",
      "OUTLETCHECKS",
    ].map(answers) as [Matrix, Matrix, Matrix, Matrix, Matrix];
    expect(places).toHaveLength(inputs.rooms.length);
    for (const wanted of expected.outlets) {
      const row = rowOf("rooms", "outlet", wanted.outlet);
      const label = `${name} ${wanted.outlet}`;
      const [head, output, , bands, centres] = places[row]!;
      expect([head, output, bands, centres]).toEqual([
        wanted.head,
        wanted.output,
        wanted.bands.map(({ band }) => band).join(", ") || "none",
        wanted.bands.map(({ mhz }) => mhz).join(", "),
      ]);
      ["low_cold", "low_hot", "high_cold", "high_hot"].forEach((corner, column) =>
        decibels.row(`${label} ${corner}`, levels[row]![column], wanted.level[corner]!, DB),
      );
      if (wanted.bands.length > 0)
        decibels.row(
          `${label} own bands`,
          levels[row]![4],
          Math.min(...wanted.bands.map(({ level_hot }) => level_hot)),
          DB,
        );
      const [slot, clear, rain, needs] = noise[row]!;
      const worst = Object.entries(wanted.carrier_to_noise).sort(
        ([, a], [, b]) => a.at_availability - a.needs - (b.at_availability - b.needs),
      )[0];
      expect(slot).toBe(worst?.[0] ?? "");
      if (worst) {
        decibels.row(`${label} C/N`, clear, worst[1].clear, DB);
        decibels.row(`${label} C/N available`, rain, worst[1].at_availability, DB);
        decibels.row(`${label} C/N needed`, needs, worst[1].needs, DB);
      }
      const [, commanding, standing, given] = supply[row]!;
      if (wanted.volts_at_output_while_it_commands !== undefined)
        volts.row(`${label} commands`, commanding, wanted.volts_at_output_while_it_commands, VOLTS);
      const stands = Math.max(wanted.volts_standing_from_supplies, wanted.volts_standing_worst);
      volts.row(`${label} stands`, standing, stands, VOLTS);
      amperes.row(`${label} gives`, given, wanted.amps_it_gives_most, AMPERES);
      expect(checks[row]![4]).toBe(
        wanted.commands === "yes" ? "ok" : wanted.commands === "no" ? "dead" : wanted.commands,
      );
    }
  });

  test("devices, head units, dishes", () => {
    const levels = answers("DEVICELEVELS");
    const devices = answers("DEVICECHECKS");
    for (const wanted of expected.amplifiers) {
      const row = rowOf("devices", "device", wanted.amplifier);
      decibels.row(`${name} ${wanted.amplifier} output`, levels[row]![8], wanted.output_most, DB);
      decibels.row(`${name} ${wanted.amplifier} limit`, levels[row]![9], wanted.limit, DB);
      volts.row(`${name} ${wanted.amplifier}`, devices[row]![0], wanted.volts_least, VOLTS);
    }
    const heads = answers("HEADVOLTS");
    for (const wanted of expected.head_units) {
      const row = rowOf("heads", "head", String(wanted.head));
      const label = `${name} ${wanted.head}`;
      const [off, alone, outlet, on, least, current] = heads[row]!;
      const states = [
        [Number(wanted.volts_least_with_one_on), Number(wanted.amps_with_that_one)],
        [Number(wanted.volts_all_on), Number(wanted.amps_all_on)],
        ...(wanted.fed_without_receivers
          ? [[Number(wanted.volts_all_off), Number(wanted.amps_all_off)]]
          : []),
      ].sort(([a], [b]) => a! - b!);
      volts.row(`${label} all off`, off, Number(wanted.volts_all_off), VOLTS);
      volts.row(`${label} alone`, alone, Number(wanted.volts_least_with_one_on), VOLTS);
      expect(outlet).toBe(wanted.least_one_is);
      volts.row(`${label} all on`, on, Number(wanted.volts_all_on), VOLTS);
      volts.row(`${label} in use`, least, states[0]![0]!, VOLTS);
      amperes.row(`${label} in use`, current, states[0]![1]!, AMPERES);
    }
    for (const { supply, amps_most } of expected.supplies) {
      const head = /^supply of (.+)$/.exec(supply)?.[1];
      // Of an inserter the current through it is that of the line, which may be less.
      if (head === undefined) continue;
      amperes.row(`${name} ${supply}`, heads[rowOf("heads", "head", head)]![6], amps_most, AMPERES);
    }
    const dishes = answers("DISHCHECKS");
    const feeds = new Map<string, number>();
    for (const { feed, volts: at } of expected.feeds ?? []) {
      const dish = feed.split(" ")[0]!;
      feeds.set(dish, Math.min(feeds.get(dish) ?? Infinity, at));
    }
    for (const [dish, least] of feeds)
      volts.row(`${name} feed of ${dish}`, dishes[rowOf("dishes", "dish", dish)]![3], least, VOLTS);
    const seen = Object.entries(expected.slots_seen ?? {});
    inputs.dishes.forEach((dish, row) => {
      const slots = String(dish.slots ?? inputs.slots.map(({ slot }) => slot).join(" "));
      const own = seen.flatMap(([key, at]) =>
        slots.split(" ").includes(key.split(" ")[1]!) ? at.cn_feed_clear! : [],
      );
      if (own.length > 0) decibels.row(`${name} ${dish.dish}`, dishes[row]![2], Math.min(...own), DB);
      expect(dishes[row]![0]).toBe(slots);
    });
  });

  test("what it takes", () => {
    if (!expected.bill_pieces) return;
    const lines = needed(tables);
    const pieces: Record<string, number> = { ...Object.fromEntries(lines("part")) };
    const work = lines("work");
    for (const line of ["connector", "grounding block", "receiver lead", "dish bonding conductor"])
      pieces[line] = work.get(line)!;
    pieces["mains socket, by others"] = work.get("mains socket")!;
    // The fixture has dishes by size.
    const wanted = Object.entries(expected.bill_pieces);
    const dishes = wanted
      .filter(([piece]) => /^dish \d/.test(piece))
      .reduce((sum, [, count]) => sum + count, 0);
    expect(work.get("dish")).toBe(dishes);
    expect(Object.fromEntries(Object.entries(pieces).filter(([, count]) => count > 0))).toEqual(
      Object.fromEntries(wanted.filter(([piece]) => !/^dish \d/.test(piece))),
    );
    for (const [kind, metres] of [
      ["cable", expected.cable_metres!],
      ["route", expected.metres_by_way!],
    ] as const) {
      expect([...lines(kind).keys()].sort()).toEqual(Object.keys(metres).sort());
      for (const [what, value] of Object.entries(metres))
        lengths.row(`${name} ${what}`, lines(kind).get(what), value, METRES);
    }
  });

  test("each check that fails, by its word and its sentence, and no other", () => {
    const failing = Object.entries(FAILING).flatMap(([check, places]) =>
      places.flatMap(([fn, column, words]) =>
        answers(fn).flatMap((cells, row) => {
          const [list, key] = NAME_OF[fn]!;
          const of = (inputs[list] as readonly Readonly<Record<string, unknown>>[])[row];
          return words.includes(String(cells[column]))
            ? [{ check, row: String(of?.[key]), said: cells.at(-1) }]
            : [];
        }),
      ),
    );
    // Of head units' volts the fixture names outlets as well, of feeds the dish; their sentences stand in one row.
    const wanted = expected.fails.flatMap(({ check, rows }) =>
      rows.flatMap((row) =>
        check === "head_volts" && !inputs.heads.some(({ head }) => head === row)
          ? []
          : [`${check}: ${check === "feed_volts" ? String(inputs.heads[0]!.head) : row}`],
      ),
    );
    expect([...new Set(failing.map(({ check, row }) => `${check}: ${row}`))].sort()).toEqual(
      [...new Set(wanted)].sort(),
    );
    for (const { check, rows, words } of expected.fails) {
      const said =
        check === "feed_volts"
          ? answers("DISHCHECKS").map((cells) => String(cells.at(-1)))
          : failing
              .filter((one) => one.check === check && rows.includes(one.row))
              .map((one) => String(one.said));
      expect(said.length).toBeGreaterThan(0);
      for (const text of said) for (const word of words) expect(text).toContain(word);
    }
  });

  test("blanks as null and as an empty text give the same", () => {
    for (const fn of ["OUTLETCHECKS", "NEEDED"])
      expect(
        answersOf(
          fn,
          tables.map((rows) => rows.map((row) => row.map((cell) => cell ?? ""))),
        ),
      ).toEqual(answers(fn));
  });
});

test("lengths in feet give what the same lengths in metres give", () => {
  const { inputs } = fixture.jobs[1]!;
  const metres = tablesOf(inputs as unknown as Inputs);
  const columns: Readonly<Record<number, number>> = {
    [PLACE.outlets]: 7,
    [PLACE.devices]: 4,
    [PLACE.heads]: 5,
    [PLACE.feeders]: 5,
  };
  const feet = metres.map((rows, table) =>
    rows.map((row, index) => {
      if (table === PLACE.settings) return index === 4 ? ["ft"] : row;
      return row.map((cell, column) =>
        column === columns[table] && typeof cell === "number" ? cell / 0.3048 : cell,
      );
    }),
  );
  for (const fn of ["OUTLETPLACES", "OUTLETCHECKS", "DEVICECHECKS", "HEADCHECKS", "FEEDERCHECKS"])
    expect(answersOf(fn, feet).map((row) => row.filter((cell) => typeof cell !== "number"))).toEqual(
      answersOf(fn, metres).map((row) => row.filter((cell) => typeof cell !== "number")),
    );
  answersOf("OUTLETLEVELS", feet).forEach((row, outlet) =>
    row.forEach((level, column) =>
      expect(level).toBeCloseTo(answersOf("OUTLETLEVELS", metres)[outlet]![column] as number, 9),
    ),
  );
  // 88 m of feeder (four cables of 18 and of 4 m), by the foot of 0.3048 m.
  expect(needed(feet)("cable").get("drop, copper")).toBeCloseTo(88 / 0.3048, 6);
});
