/**
 * The reference program of the tests against the six jobs as they are built and their ten variants. The answers in
 * tests/fixtures/distribution/jobs-as-built.json were worked apart from this project's code, direct current by a nodal
 * solve and again in ngspice; invented jobs, ours. Tolerances are the file's.
 */
import asBuilt from "../../fixtures/distribution/jobs-as-built.json";
import { referenceOf } from "../../support/reference/distribution";
import { changed, tablesOf, type Inputs } from "../../support/reference/distribution/asBuilt";
import { quantityOf } from "../../support/reference/distribution/counts";
import { amplifierFigures } from "../../support/reference/distribution/devices";
import { feedVolts, headFigures } from "../../support/reference/distribution/heads";
import { leastIsolation } from "../../support/reference/distribution/isolation";
import { levelsAt, noiseAt, outletVolts } from "../../support/reference/distribution/outlets";
import { decibelsOf } from "../../support/reference/distribution/sky";
import type { Answer, Tables } from "../../support/reference/distribution/tables";
import type { Thing } from "../../support/reference/distribution/tree";
import { everyState, workedOut, type Worked } from "../../support/reference/distribution/worked";

/** As the file's networks: 10 megohms from every node to the return; under 1 V a load draws nothing. */
const LIMITS = { leakOhms: 1e7, leastVolts: 1, contactOhms: 0 };
const { tolerance } = asBuilt;
type Unit = "db" | "volts" | "amps" | "metres" | "minutes";

interface Outlet {
  readonly outlet: string;
  readonly head: string;
  readonly output: number;
  readonly level: Readonly<Record<"low_cold" | "low_hot" | "high_cold" | "high_hot", number>>;
  readonly slope_hot: number;
  readonly slope_cold: number;
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
interface Head {
  readonly head: string;
  readonly least_one_is: string;
  readonly least_v: number;
  readonly fed_without_receivers: boolean;
  readonly [figure: string]: string | number | boolean;
}
interface Failing {
  readonly check: string;
  readonly rows: readonly string[];
}
interface Expected {
  readonly slots_seen?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly head_units: readonly Head[];
  readonly outlets?: readonly Outlet[];
  readonly supplies?: readonly { supply: string; amps_most: number; limit: number }[];
  readonly amplifiers?: readonly Readonly<Record<string, number | string>>[];
  readonly feeds?: readonly { feed: string; volts: number }[];
  readonly least_isolation?: { outlets: readonly string[]; db: number };
  readonly bill_pieces?: Readonly<Record<string, number>>;
  readonly cable_metres?: Readonly<Record<string, number>>;
  readonly metres_by_way?: Readonly<Record<string, number>>;
  readonly labour_minutes?: Readonly<Record<string, number>>;
  readonly labour_minutes_total?: number;
  readonly fails: readonly Failing[];
}

const cases = asBuilt.jobs.flatMap((job) => [
  { name: job.id, inputs: job.inputs as unknown as Inputs, expected: job.expected as unknown as Expected },
  ...job.variants.map((variant) => ({
    name: `${job.id}: ${variant.why}`,
    inputs: changed(job.inputs as unknown as Inputs, variant.change),
    expected: variant.expected as unknown as Expected,
  })),
]);

/** Greatest difference seen of each unit. */
const worst: Record<Unit, number> = { db: 0, volts: 0, amps: 0, metres: 0, minutes: 0 };

/** Gathers what differs, so that one run shows all of it. */
function comparison() {
  const differences: string[] = [];
  return {
    differences,
    near(what: string, got: number | undefined, wanted: number, unit: Unit): void {
      const off = Math.abs((got ?? NaN) - wanted);
      if (!(off <= tolerance[unit])) differences.push(`${what}: ${got}, wanted ${wanted}`);
      else worst[unit] = Math.max(worst[unit], off);
    },
    same(what: string, got: unknown, wanted: unknown): void {
      if (JSON.stringify(got) !== JSON.stringify(wanted))
        differences.push(`${what}: ${JSON.stringify(got)}, wanted ${JSON.stringify(wanted)}`);
    },
  };
}
type Comparison = ReturnType<typeof comparison>;

function compareOutlet(compare: Comparison, worked: Worked, outlet: Thing, wanted: Outlet): void {
  const what = `outlet ${wanted.outlet}`;
  const levels = levelsAt(worked, outlet);
  const [lowCold, lowHot, highCold, highHot] = levels.corners as [number, number, number, number];
  compare.same(what, [outlet.head.name, outlet.output], [wanted.head, wanted.output]);
  Object.entries({ low_cold: lowCold, low_hot: lowHot, high_cold: highCold, high_hot: highHot }).forEach(
    ([corner, level]) => compare.near(`${what} ${corner}`, level, wanted.level[corner as "low_hot"], "db"),
  );
  compare.near(`${what} slope hot`, lowHot - highHot, wanted.slope_hot, "db");
  compare.near(`${what} slope cold`, lowCold - highCold, wanted.slope_cold, "db");
  const bands = worked.bands.get(outlet)!.bands.map(({ band, mhz }) => [band, mhz]);
  compare.same(
    `${what} bands`,
    bands,
    wanted.bands.map(({ band, mhz }) => [band, mhz]),
  );
  wanted.bands.forEach(({ level_hot }, index) =>
    compare.near(`${what} own level ${index}`, levels.ownHot[index], level_hot, "db"),
  );
  const noise = noiseAt(worked, outlet);
  compare.same(
    `${what} slots`,
    noise.map(({ slot }) => slot),
    Object.keys(wanted.carrier_to_noise),
  );
  for (const { slot, clear, inRain, needed } of noise) {
    const here = wanted.carrier_to_noise[slot]!;
    compare.near(`${what} ${slot} clear`, clear, here.clear, "db");
    compare.near(`${what} ${slot} rain`, inRain, here.at_availability, "db");
    compare.near(`${what} ${slot} needed`, needed, here.needs, "db");
  }
  const volts = outletVolts(worked, outlet);
  compare.near(
    `${what} standing, supplies`,
    volts.fromSupplies,
    wanted.volts_standing_from_supplies,
    "volts",
  );
  compare.near(`${what} standing`, volts.standing, wanted.volts_standing_worst, "volts");
  compare.near(`${what} gives`, volts.gives, wanted.amps_it_gives_most, "amps");
  if (wanted.volts_at_output_while_it_commands !== undefined)
    compare.near(`${what} commanding`, volts.commanding, wanted.volts_at_output_while_it_commands, "volts");
}

function compareSlots(
  compare: Comparison,
  worked: Worked,
  wanted: NonNullable<Expected["slots_seen"]>,
): void {
  const seen = [...worked.slots].flatMap(([head, slots]) =>
    slots.map((slot) => [`${head.name} ${slot.slot}`, slot] as const),
  );
  compare.same(
    "slots seen",
    seen.map(([name]) => name),
    Object.keys(wanted),
  );
  for (const [name, { sky, input, clear, inRain }] of seen) {
    const here = wanted[name]!;
    const decibels = (ratio: number | undefined): number => -decibelsOf(ratio ?? NaN);
    const got: Record<string, number | undefined> = {
      ...{ elevation: sky?.elevation, range_km: sky?.rangeKm, rain_db: sky?.rain },
      ...{ cn_feed_clear: decibels(sky?.clear), cn_feed_rain: decibels(sky?.inRain) },
      ...{ input_least: input?.least, input_most: input?.most },
      ...{ cn_out_clear: decibels(clear), cn_out_rain: decibels(inRain) },
    };
    for (const [figure, value] of Object.entries(here))
      compare.near(`${name} ${figure}`, got[figure], value, "db");
  }
}

/** Where a failing check of the file stands in the columns: function, column, the word of it. */
const CHECKS: Readonly<
  Record<string, readonly (readonly ["OUTLETCHECKS" | "DEVICECHECKS" | "HEADCHECKS", number, string])[]>
> = {
  head_volts: [["HEADCHECKS", 1, "low"]],
  feed_volts: [["HEADCHECKS", 4, "low"]],
  cn_available: [["OUTLETCHECKS", 3, "low"]],
  open_through: [
    ["OUTLETCHECKS", 8, "left open"],
    ["DEVICECHECKS", 6, "left open"],
  ],
  resistor_on_power: [["OUTLETCHECKS", 8, "passes power"]],
  volts_on_receiver: [["OUTLETCHECKS", 7, "high"]],
  commands: [["OUTLETCHECKS", 4, "dead"]],
  one_connector: [["OUTLETCHECKS", 6, "too many"]],
  amplifier_volts: [["DEVICECHECKS", 3, "low"]],
  bands: [["OUTLETCHECKS", 5, "bad"]],
};
const GOOD = new Set<Answer>(["ok", "not judged", "said", null]);

/** Rows and columns that do not pass, of outlets, devices and head units. */
function failing(tables: Tables): string[] {
  const answers = referenceOf(tables, LIMITS);
  const names = {
    OUTLETCHECKS: ["outlets", "outlet"],
    DEVICECHECKS: ["devices", "device"],
    HEADCHECKS: ["head_units", "head"],
  } as const;
  return (Object.keys(names) as (keyof typeof names)[]).flatMap((check) => {
    const [table, key] = names[check];
    const words = (row: readonly Answer[]): Answer[] =>
      check === "DEVICECHECKS" ? row.map((answer, column) => (column < 2 ? null : answer)) : [...row];
    return answers[check].flatMap((row, index) =>
      words(row).flatMap((answer, column) =>
        GOOD.has(answer) ? [] : [`${check} ${column} ${answer} ${tables[table][index]![key]}`],
      ),
    );
  });
}

function wantedFailing(tables: Tables, fails: readonly Failing[]): string[] {
  return fails.flatMap(({ check, rows }) => {
    const columns = CHECKS[check]!;
    const isThere = (of: string, row: string): boolean => {
      const [table, key] = {
        OUTLETCHECKS: ["outlets", "outlet"],
        DEVICECHECKS: ["devices", "device"],
        HEADCHECKS: ["head_units", "head"],
      }[of] as ["outlets", "outlet"];
      return tables[table].some((one) => one[key] === row);
    };
    return columns.flatMap(([of, column, word]) =>
      // Volts at a head unit or feed name outlets, or a dish, beside it.
      (check === "feed_volts"
        ? tables.feeders
            .filter(({ from }) => rows.some((row) => row.startsWith(String(from))))
            .map(({ to }) => String(to))
        : rows
      )
        .filter((row) => isThere(of, row))
        .map((row) => `${of} ${column} ${word} ${row}`),
    );
  });
}

const MINUTES_OF_WORK: Readonly<Record<string, readonly (readonly [string, number])[]>> = {
  terminations: [["connector", asBuilt.parts.labour.termination]],
  dishes: [
    ["dish", asBuilt.parts.labour.dish],
    ["further slot on a dish", asBuilt.parts.labour.further_slot],
  ],
  feeds: [["feed", asBuilt.parts.labour.feed]],
  "head units": [
    ["head unit on a dish", asBuilt.parts.labour.on_dish_head_unit],
    ["switch", asBuilt.parts.labour.switch],
  ],
  supplies: [["supply", asBuilt.parts.labour.supply]],
  devices: (["splitter", "tap", "equaliser", "amplifier"] as const).map((kind) => [
    kind,
    asBuilt.parts.labour[kind],
  ]),
  plates: [["wall plate", asBuilt.parts.labour.plate]],
  "end resistors": [["end resistor", asBuilt.parts.labour.end_resistor]],
  "grounding blocks": [["grounding block", asBuilt.parts.labour.earth_block]],
  "bonding of dishes": [["dish bonding conductor", asBuilt.parts.labour.dish_bond]],
  measuring: [["outlet to measure", asBuilt.parts.labour.measure_outlet]],
  floors: [["floor", asBuilt.parts.labour.floor]],
};
/** The file's words for pieces that are work here. */
const WORK_OF_PIECE: Readonly<Record<string, string>> = {
  "dish bonding conductor": "dish bonding conductor",
  "grounding block": "grounding block",
  connector: "connector",
  "receiver lead": "receiver lead",
  "mains socket, by others": "mains socket",
  "end resistor": "end resistor",
};

function compareCounts(compare: Comparison, tables: Tables, inputs: Inputs, wanted: Expected): void {
  const needed = referenceOf(tables, LIMITS).NEEDED;
  const pieces = Object.entries(wanted.bill_pieces!);
  const isDish = (name: string): boolean => /^dish [\d.]+ m$/.test(name);
  const dishes = pieces.reduce((sum, [name, some]) => sum + (isDish(name) ? some : 0), 0);
  compare.same("dishes", quantityOf(needed, "work", "dish"), dishes);
  const parts = pieces.filter(([name]) => !isDish(name));
  for (const [name, some] of parts) {
    const work = WORK_OF_PIECE[name];
    compare.same(`pieces of ${name}`, quantityOf(needed, work ? "work" : "part", work ?? name), some);
  }
  const known = parts.map(([name]) => name);
  compare.same(
    "other parts",
    needed.filter(({ kind, name }) => kind === "part" && !known.includes(name)),
    [],
  );
  const lengths = (kind: "cable" | "route", metres: Readonly<Record<string, number>>): void => {
    for (const [name, length] of Object.entries(metres))
      compare.near(`metres of ${name}`, quantityOf(needed, kind, name), length, "metres");
    compare.same(
      `each ${kind}`,
      needed.filter((one) => one.kind === kind).length,
      Object.keys(metres).length,
    );
  };
  lengths("cable", wanted.cable_metres!);
  lengths("route", wanted.metres_by_way!);
  let total = 0;
  for (const [line, minutes] of Object.entries(wanted.labour_minutes!)) {
    const way = /^cable, (.+)$/.exec(line)?.[1];
    const each = asBuilt.parts.labour.ways_min_per_m as Readonly<Record<string, number>>;
    let got = (MINUTES_OF_WORK[line] ?? []).reduce(
      (sum, [name, one]) => sum + quantityOf(needed, "work", name) * one,
      0,
    );
    if (way !== undefined) got = quantityOf(needed, "route", way) * each[way]!;
    if (line === "job") got = asBuilt.parts.labour.job;
    compare.near(`minutes, ${line}`, got, minutes, "minutes");
    total += got * (line === "floors" || line === "job" ? 1 : Number(inputs.site.difficulty ?? 1));
  }
  compare.near("minutes", total, wanted.labour_minutes_total!, "minutes");
}

test.each(cases)("$name", ({ inputs, expected }) => {
  const tables = tablesOf(inputs);
  const worked = workedOut(tables, LIMITS);
  const compare = comparison();
  const { tree } = worked;

  for (const wanted of expected.head_units) {
    const figures = headFigures(
      worked,
      tree.heads.find(({ name }) => name === wanted.head)!,
    );
    const got: Record<string, number | undefined> = {
      ...{
        volts_all_off: figures.off,
        volts_least_with_one_on: figures.leastAlone,
        volts_all_on: figures.allOn,
      },
      ...{
        amps_all_off: figures.ampsOff,
        amps_with_that_one: figures.ampsAlone,
        amps_all_on: figures.ampsAllOn,
      },
    };
    for (const [figure, value] of Object.entries(got))
      compare.near(
        `${wanted.head} ${figure}`,
        value,
        Number(wanted[figure]),
        figure.startsWith("amps") ? "amps" : "volts",
      );
    compare.same(`${wanted.head} least one`, figures.leastIs, wanted.least_one_is);
    compare.same(`${wanted.head} fed without receivers`, figures.off > 1, wanted.fed_without_receivers);
  }
  for (const wanted of expected.outlets ?? [])
    compareOutlet(
      compare,
      worked,
      tree.outlets.find(({ name }) => name === wanted.outlet)!,
      wanted,
    );
  for (const { supply, amps_most } of expected.supplies ?? []) {
    const head = /^supply of (.+)$/.exec(supply)?.[1];
    const key = head ? `output ${head}` : `device ${/^supply (.+)$/.exec(supply)![1]}`;
    const amps = worked.systems.flatMap(({ states }) =>
      everyState(states).map((state) => state.supplyAmps(key)),
    );
    compare.near(supply, Math.max(...amps), amps_most, "amps");
  }
  for (const wanted of expected.amplifiers ?? []) {
    const thing = tree.devices.find(({ name }) => name === wanted.amplifier)!;
    const { output, limit, volts } = amplifierFigures(worked, thing);
    compare.near(`${thing.name} output`, output, Number(wanted.output_most), "db");
    compare.near(`${thing.name} limit`, limit, Number(wanted.limit), "db");
    compare.near(`${thing.name} volts`, volts, Number(wanted.volts_least), "volts");
  }
  for (const { feed, volts } of expected.feeds ?? []) {
    const got = feedVolts(worked).find(({ dish, slot }) => `${dish} ${slot}` === feed);
    compare.near(`feed ${feed}`, got?.volts, volts, "volts");
  }
  if (expected.least_isolation) {
    const got = leastIsolation(tables, tree);
    compare.same("least isolation between", got?.outlets, expected.least_isolation.outlets);
    compare.near("least isolation", got?.decibels, expected.least_isolation.db, "db");
  }
  if (expected.slots_seen) compareSlots(compare, worked, expected.slots_seen);
  if (expected.bill_pieces) compareCounts(compare, tables, inputs, expected);
  compare.same("fails", failing(tables).sort(), wantedFailing(tables, expected.fails).sort());
  expect(compare.differences).toEqual([]);
});

afterAll(() => {
  const said = Object.entries(worst).map(([unit, off]) => `${unit} ${off.toExponential(1)}`);
  process.stdout.write(`  the reference program against the jobs as built, worst: ${said.join(", ")}\n`);
});
