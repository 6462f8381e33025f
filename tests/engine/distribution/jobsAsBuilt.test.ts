/**
 * Six jobs from dish to receiver and ten variants, every answer.
 *
 * Source: tests/fixtures/distribution/jobs-as-built.json: invented jobs, worked
 * independently by people who had not seen this code: levels, noise, bands,
 * counts and minutes in Python, direct current by a nodal solve of their own
 * and again in ngspice. Made for this project, ours; every stated default is in
 * its conventions.
 */
import { distributionOf, type Distribution } from "../../../src/engine/distribution/distribution";
import { ADVICE, type CheckOfDistribution, type RowOf } from "../../../src/engine/distribution/finding";
import { findings } from "../../../src/engine/distribution/findings";
import { labourMinutes } from "../../../src/engine/distribution/labourMinutes";
import { isUnseen } from "../../../src/engine/distribution/sky";
import { isFault } from "../../../src/engine/faults";
import { heldTo } from "../../support/heldTo";
import {
  amountsOf,
  changed,
  jobAsBuilt,
  LABOUR_RATES,
  type Change,
  type Inputs,
} from "../../support/jobsAsBuilt";
import fixture from "../../fixtures/distribution/jobs-as-built.json";

const { db: DB, volts: VOLTS, amps: AMPERES, metres: METRES, minutes: MINUTES } = fixture.tolerance;
/** Of the fixture's own solve. */
const OPTIONS = { leastVolts: 1, leakOhms: 1e7 };

const basis = { what: "distributionOf", basis: "reference library" } as const;
const python = "people's own Python (jobs-as-built.json)";
const decibels = heldTo({ ...basis, source: python, unit: "dB" });
const volts = heldTo({ ...basis, source: "a nodal solve and ngspice (jobs-as-built.json)", unit: "V" });
const amperes = heldTo({ ...basis, source: "a nodal solve and ngspice (jobs-as-built.json)", unit: "A" });
const lengths = heldTo({ ...basis, source: python, unit: "m" });
const minutes = heldTo({ ...basis, what: "labourMinutes", source: python, unit: "min" });

interface Expected {
  readonly slots_seen?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly head_units: readonly Readonly<Record<string, number | string | boolean>>[];
  readonly outlets: readonly OutletAnswer[];
  readonly supplies: readonly { supply: string; amps_most: number; limit: number }[];
  readonly amplifiers: readonly {
    amplifier: string;
    output_most: number;
    limit: number;
    carriers: number;
    volts_least: number;
  }[];
  readonly feeds?: readonly { feed: string; volts: number }[];
  readonly least_isolation?: { outlets: string[]; db: number };
  readonly bill_pieces?: Readonly<Record<string, number>>;
  readonly cable_metres?: Readonly<Record<string, number>>;
  readonly metres_by_way?: Readonly<Record<string, number>>;
  readonly labour_minutes?: Readonly<Record<string, number>>;
  readonly labour_minutes_total?: number;
  readonly fails: readonly { check: string; rows: string[]; words: string[] }[];
}
interface OutletAnswer {
  readonly outlet: string;
  readonly head: string;
  readonly output: number;
  readonly level: Readonly<Record<string, number>>;
  readonly slope_hot: number;
  readonly slope_cold: number;
  readonly bands: readonly { band: number; mhz: number; level_hot: number }[];
  readonly carrier_to_noise: Readonly<
    Record<string, { clear: number; needs: number; at_availability: number }>
  >;
  readonly commands: string;
  readonly commands_stopped_by?: string;
  readonly volts_standing_from_supplies: number;
  readonly volts_standing_worst: number;
  readonly amps_it_gives_most: number;
  readonly volts_at_output_while_it_commands?: number;
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

/** What the fixture calls each check. */
const CHECKS: Readonly<Partial<Record<CheckOfDistribution, string>>> = {
  "head unit volts": "head_volts",
  "feed volts": "feed_volts",
  "amplifier volts": "amplifier_volts",
  "volts on a receiver": "volts_on_receiver",
  commands: "commands",
  "receivers on a connector": "one_connector",
  "open through port": "open_through",
  "end resistor on power": "resistor_on_power",
  "user bands": "bands",
  "carrier to noise at the availability wanted": "cn_available",
};

describe.each(cases.map((one) => [one.name, one] as const))("%s", (name, { inputs, expected }) => {
  const job = jobAsBuilt(inputs);
  let found: Distribution;
  beforeAll(() => {
    found = distributionOf(job, OPTIONS);
  });
  const outletOf = (outlet: string): number => job.outlets.findIndex((one) => one.name === outlet);

  test("has no bad row", () => {
    const { tree, trunks, supply } = found;
    expect(
      [...tree.deviceFaults, ...tree.outletFaults, ...trunks.headFaults, ...trunks.feederFaults].filter(
        isFault,
      ),
    ).toEqual([]);
    expect([...supply.faults]).toEqual([]);
    expect(supply.fellBack).toBe(0);
  });

  test("what is seen of each slot", () => {
    for (const [key, wanted] of Object.entries(expected.slots_seen ?? {})) {
      const [head, slot] = key.split(" ") as [string, string];
      const index = job.headUnits.findIndex((one) => one.name === head);
      const seen = found.seen[index]!.find((one) => !isUnseen(one) && one.slot.name === slot)!;
      if (isUnseen(seen)) throw new Error(seen.fault.message);
      const answers: Record<string, unknown> = {
        elevation: seen.elevation,
        range_km: seen.range,
        rain_db: seen.rain,
        cn_feed_clear: seen.atFeed?.clear,
        cn_feed_rain: seen.atFeed?.rain,
        cn_out_clear: seen.atOutput?.clear,
        cn_out_rain: seen.atOutput?.rain,
        input_least: seen.input?.least,
        input_most: seen.input?.most,
      };
      for (const [what, value] of Object.entries(wanted))
        decibels.row(`${name} ${key} ${what}`, answers[what], value, DB);
    }
  });

  test("levels, slope, bands and carrier to noise at each outlet", () => {
    for (const wanted of expected.outlets) {
      const outlet = outletOf(wanted.outlet);
      const label = `${name} ${wanted.outlet}`;
      const { levels, tree } = found;
      const point = tree.pointOfOutlet[outlet]!;
      const output = tree.output[point]!;
      expect([job.headUnits[tree.row[output]!]!.name, tree.port[output]]).toEqual([
        wanted.head,
        wanted.output,
      ]);
      const { lowCold, lowHot, highCold, highHot } = levels;
      decibels.row(`${label} low cold`, lowCold[outlet], wanted.level.low_cold!, DB);
      decibels.row(`${label} low hot`, lowHot[outlet], wanted.level.low_hot!, DB);
      decibels.row(`${label} high cold`, highCold[outlet], wanted.level.high_cold!, DB);
      decibels.row(`${label} high hot`, highHot[outlet], wanted.level.high_hot!, DB);
      decibels.row(`${label} slope hot`, lowHot[outlet]! - highHot[outlet]!, wanted.slope_hot, DB);
      decibels.row(`${label} slope cold`, lowCold[outlet]! - highCold[outlet]!, wanted.slope_cold, DB);
      expect(found.bands.bands[outlet]!.map(({ number, centre }) => [number, centre])).toEqual(
        wanted.bands.map(({ band, mhz }) => [band, mhz]),
      );
      wanted.bands.forEach(({ band, level_hot }, index) =>
        decibels.row(`${label} band ${band}`, found.bandLevels[outlet]![index], level_hot, DB),
      );
      expect(found.carrierToNoise[outlet]!.map(({ slot }) => slot).sort()).toEqual(
        Object.keys(wanted.carrier_to_noise).sort(),
      );
      for (const { slot, clear, rain } of found.carrierToNoise[outlet]!) {
        const cn = wanted.carrier_to_noise[slot]!;
        decibels.row(`${label} ${slot} C/N`, clear, cn.clear, DB);
        decibels.row(`${label} ${slot} C/N available`, rain, cn.at_availability, DB);
        decibels.row(
          `${label} ${slot} needs`,
          job.slots.find((one) => one.name === slot)!.needed,
          cn.needs,
          DB,
        );
      }
    }
  });

  test("amplifiers and isolation", () => {
    const wanted = expected.amplifiers;
    expect(found.amplifiers.map(({ device }) => job.devices[device]!.name)).toEqual(
      wanted.map(({ amplifier }) => amplifier),
    );
    found.amplifiers.forEach(({ device, most, limit, carriers }, index) => {
      const one = wanted[index]!;
      decibels.row(`${name} ${one.amplifier} output`, most, one.output_most, DB);
      decibels.row(`${name} ${one.amplifier} limit`, limit, one.limit, DB);
      expect(carriers).toBe(one.carriers);
      volts.row(`${name} ${one.amplifier}`, found.supply.amplifierLeast[device], one.volts_least, VOLTS);
    });
    if (!expected.least_isolation) return;
    const least = found.isolation.reduce((a, b) => (b.decibels < a.decibels ? b : a));
    decibels.row(`${name} isolation`, least.decibels, expected.least_isolation.db, DB);
    expect(least.outlets.map((outlet) => job.outlets[outlet]!.name)).toEqual(
      expected.least_isolation.outlets,
    );
  });

  test("volts and amperes of head units, supplies and feeds", () => {
    for (const wanted of expected.head_units) {
      const index = job.headUnits.findIndex((one) => one.name === wanted.head);
      const { allOff, allOn, leastAlone, fedWithoutReceivers } = found.supply.headUnits[index]!;
      const label = `${name} ${wanted.head}`;
      volts.row(`${label} all off`, allOff.volts, Number(wanted.volts_all_off), VOLTS);
      volts.row(`${label} alone`, leastAlone?.volts, Number(wanted.volts_least_with_one_on), VOLTS);
      volts.row(`${label} all on`, allOn.volts, Number(wanted.volts_all_on), VOLTS);
      amperes.row(`${label} all off`, allOff.amperes, Number(wanted.amps_all_off), AMPERES);
      amperes.row(`${label} alone`, leastAlone?.amperes, Number(wanted.amps_with_that_one), AMPERES);
      amperes.row(`${label} all on`, allOn.amperes, Number(wanted.amps_all_on), AMPERES);
      expect({
        alone: job.outlets[leastAlone!.outlet]!.name,
        fedWithoutReceivers,
        least: job.headUnits[index]!.kind.leastVolts,
      }).toEqual({
        alone: wanted.least_one_is,
        fedWithoutReceivers: wanted.fed_without_receivers,
        least: wanted.least_v,
      });
    }
    const nameOf = ({ head, device }: { head: number; device: number }): string =>
      head >= 0 ? `supply of ${job.headUnits[head]!.name}` : `supply ${String(job.devices[device]!.name)}`;
    expect(found.nodes.sources.map(nameOf)).toEqual(expected.supplies.map(({ supply }) => supply));
    expected.supplies.forEach(({ supply, amps_most, limit }, index) => {
      amperes.row(`${name} ${supply}`, found.supply.supplyMost[index], amps_most, AMPERES);
      expect(found.nodes.sources[index]!.mostAmperes).toBe(limit);
    });
    for (const { feed, volts: wanted } of expected.feeds ?? []) {
      const index = found.nodes.feeds.findIndex(
        ({ dish, slot }) => feed === `${job.dishes[dish]!.name} ${slot}`,
      );
      volts.row(`${name} ${feed}`, found.supply.feedLeast[index], wanted, VOLTS);
    }
  });

  test("what each receiver gives, what stands on it, whether it can command", () => {
    for (const wanted of expected.outlets) {
      const outlet = outletOf(wanted.outlet);
      const label = `${name} ${wanted.outlet}`;
      const { supply, commands, tree } = found;
      amperes.row(`${label} gives`, supply.given[outlet], wanted.amps_it_gives_most, AMPERES);
      volts.row(`${label} supplies`, supply.fromSupplies[outlet], wanted.volts_standing_from_supplies, VOLTS);
      volts.row(`${label} stands`, supply.standing[outlet], wanted.volts_standing_worst, VOLTS);
      if (wanted.volts_at_output_while_it_commands !== undefined)
        volts.row(
          `${label} commands`,
          supply.outputCommanding[outlet],
          wanted.volts_at_output_while_it_commands,
          VOLTS,
        );
      const verdict = commands[outlet]!;
      expect(verdict.can).toBe(wanted.commands);
      if (wanted.commands_stopped_by)
        expect(verdict).toMatchObject({
          because: "blocked",
          point: tree.pointOfDevice[job.devices.findIndex((one) => one.name === wanted.commands_stopped_by)],
        });
    }
  });

  test("pieces, metres and minutes", () => {
    if (!expected.bill_pieces) return;
    const { counts } = found;
    const bill: Record<string, number> = {
      ...Object.fromEntries(counts.parts),
      ...Object.fromEntries([...counts.dishes].map(([size, count]) => [`dish ${size} m`, count])),
      "dish bonding conductor": job.dishes.length,
      "grounding block": counts.groundingBlocks,
      connector: counts.connectors,
      "receiver lead": counts.receiverLeads,
      "mains socket, by others": counts.mainsSockets,
    };
    expect(Object.fromEntries(Object.entries(bill).filter(([, count]) => count > 0))).toEqual(
      expected.bill_pieces,
    );
    const metres = (found: ReadonlyMap<string, number>, wanted: Readonly<Record<string, number>>) => {
      expect([...found.keys()].sort()).toEqual(Object.keys(wanted).sort());
      for (const [what, value] of Object.entries(wanted))
        lengths.row(`${name} ${what}`, found.get(what), value, METRES);
    };
    metres(counts.metresByCable, expected.cable_metres!);
    metres(counts.metresByRoute, expected.metres_by_way!);
    const labour = labourMinutes(found.tree, counts, LABOUR_RATES, amountsOf(inputs));
    const lines: Record<string, number> = {
      ...Object.fromEntries([...labour.routes].map(([route, value]) => [`cable, ${route}`, value])),
      terminations: labour.terminations,
      dishes: labour.dishes,
      feeds: labour.feeds,
      "head units": labour.headUnits,
      supplies: labour.supplies,
      devices: labour.devices,
      plates: labour.plates,
      "end resistors": labour.endResistors,
      "grounding blocks": labour.groundingBlocks,
      "bonding of dishes": labour.dishBonds,
      measuring: labour.measuring,
      floors: labour.floors,
      job: labour.job,
    };
    const wanted = expected.labour_minutes!;
    expect(
      Object.keys(lines)
        .filter((line) => lines[line]! > 0)
        .sort(),
    ).toEqual(Object.keys(wanted).sort());
    for (const [line, value] of Object.entries(wanted))
      minutes.row(`${name} ${line}`, lines[line], value, MINUTES);
    minutes.row(`${name} total`, labour.total, expected.labour_minutes_total!, MINUTES);
  });

  test("each check that fails, at its rows and with its words, and no other", () => {
    const nameOf = ({ list, row }: RowOf): string =>
      list === "dishes"
        ? // The fixture names the feed: "D1 19E" of the dish D1.
          job.dishes[row]!.name
        : String(job[list][row]!.name);
    const limits = {
      levelLeast: Number(inputs.site.level_low),
      levelMost: Number(inputs.site.level_high),
      slopeMost: Number(inputs.site.slope_most),
      isolationLeast: 30,
    };
    const all = findings(found, limits).filter(({ check }) => !ADVICE.has(check));
    const seen = all.flatMap(({ check, rows }) =>
      rows.map((row) => `${CHECKS[check] ?? check}: ${nameOf(row)}`),
    );
    const wanted = expected.fails.map(({ check, rows, words }) => ({
      check,
      words,
      rows: check === "feed_volts" ? rows.map((row) => row.split(" ")[0]!) : rows,
    }));
    expect([...new Set(seen)].sort()).toEqual(
      [...new Set(wanted.flatMap(({ check, rows }) => rows.map((row) => `${check}: ${row}`)))].sort(),
    );
    for (const { check, rows, words } of wanted) {
      const said = all.filter((one) => CHECKS[one.check] === check && rows.includes(nameOf(one.rows[0]!)));
      expect(said.length).toBeGreaterThan(0);
      for (const { fault } of said) for (const word of words) expect(fault.message).toContain(word);
    }
  });
});
