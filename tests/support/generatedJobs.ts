/**
 * Invented multi-room jobs, drawn from a seed: the same seed gives the same job on every machine. They are what the
 * demonstrations are not: parts in no order, names that a spreadsheet program takes for numbers, days or comparisons,
 * empty rows in the middle, trees several devices deep, both units, all rules of tax and rounding, and about half of
 * them with slips, so that each check is met from both sides. Nothing in them is a real part, price or place.
 */
import { drawn, withGaps, type Drawn, type GeneratedJob, type Row } from "./drawn";
import { crewInto } from "./generatedCrew";
import { moneyInto } from "./generatedMoney";
import { buyingInto } from "./generatedBuying";
import { measure, peak } from "./generatedReadings";
import { slipsInto } from "./generatedSlips";
import { typesInto } from "./generatedTypes";
import { ontoEdges } from "./ontoEdges";
import { slotName } from "./reference/slotName";

/** Names that are something else to a spreadsheet program. */
const ODD = [
  `O'Neil's "tap"`,
  ...["007", "7", "07.0", "3-16", "16/3", "1E5", "100000", "<5", ">=1", "<>", "=7", "-3", "+4", "1,5", "1.5"],
  ...["TRUE", "50%", "12:30", "a, b", "b; c", "2026-11-27", "(8)", "Tür 2", "x & y", "Mar 16", "00", "0"],
];
const LETTERS = "QZMAXKBWCTDVELFHGJ".split("");
const M_PER_FT = 0.3048;
/** 2026-01-01 as a sheet's date number. */
const NEW_YEAR = 46023;

export function generatedJob(seed: number): GeneratedJob {
  const draw = drawn(seed);
  const isFeet = draw.chance(0.4);
  const length = (least: number, most: number): number => {
    const metres = draw.between(least, most, 1);
    return isFeet ? Number((metres / M_PER_FT).toFixed(1)) : metres;
  };
  const odd = draw.shuffled(ODD);
  const letters = draw.shuffled(LETTERS);
  let named = 0;
  /** Falls and rises through the alphabet; one in three is odd. */
  const name = (what: string): string => {
    named++;
    if (odd.length > 0 && draw.chance(0.3)) return odd.pop()!;
    return `${letters[named % letters.length]!}${draw.whole(1, 9)} ${what} ${named}`;
  };
  const quoteDay = NEW_YEAR + draw.whole(0, 900);
  const priced = (decimals = draw.pick([0, 2, 2, 2, 3])): Row => ({
    price: draw.between(1, 300, decimals),
    ...(draw.chance(0.7) ? { supplier: "demonstration" } : {}),
    ...(draw.chance(0.8) ? { priced: quoteDay - draw.whole(0, 200) } : {}),
    until: quoteDay + draw.whole(draw.chance(0.9) ? 60 : 0, 300),
  });
  const each = (): Row => ({
    ...(draw.chance(0.6) ? { per_outlet: draw.whole(0, 3) } : {}),
    ...(draw.chance(0.5) ? { per_branch: draw.between(0, 4, draw.pick([0, 1])) } : {}),
    ...(draw.chance(0.4) ? { per_head: draw.whole(0, 5) } : {}),
    ...(draw.chance(0.5) ? { fixed: draw.whole(1, 3) } : {}),
    ...(draw.chance(0.5) ? { piece: draw.pick(PIECES) } : {}),
  });
  /** In about one row of so many. */
  const now = (share: number, row: () => Row): Row => (draw.chance(share) ? row() : {});

  const cables: Row[] = Array.from({ length: draw.whole(3, 6) }, () => {
    const metal = draw.pick(["", ", copper", ", copper-clad steel"]);
    const series = draw.pick(["6", "7", "11", "6"]);
    return {
      name: name("cable"),
      like: `series ${series}${metal}`,
      ...(draw.chance(0.25)
        ? { k1: draw.between(0.3, 0.6, 3), k2: draw.between(0, 0.003, 4), k0: draw.between(0, 0.4, 2) }
        : {}),
      ...(draw.chance(0.3) ? { loop: draw.between(1.5, 8, 2) } : {}),
      reel: isFeet ? draw.pick([500, 1000]) : draw.pick([100, 150, 250]),
      ...priced(),
    };
  });
  const ideal = (ways: number): number => 10 * Math.log10(ways);
  const passives: Row[] = Array.from({ length: draw.whole(4, 7) }, (_, index) => {
    const isTap = index > 1 && draw.chance(0.4);
    const ways = isTap ? draw.whole(2, 4) : ([4, 2][index] ?? draw.pick([2, 3, 4, 6, 8]));
    const port = isTap ? draw.between(9, 16, 1) : Number((ideal(ways) + draw.between(0.6, 2, 1)).toFixed(1));
    const through = draw.between(0.8, 2.5, 1);
    return {
      name: name(isTap ? "tap" : "splitter"),
      kind: isTap ? "tap" : "splitter",
      ways,
      port_low: port,
      port_high: Number((port + draw.between(0.3, 2, 1)).toFixed(1)),
      ...(isTap ? { through_low: through, through_high: Number((through + 0.6).toFixed(1)) } : {}),
      power: draw.chance(0.85)
        ? draw.pick(["all ports", "towards head unit", "towards head unit"])
        : draw.pick(["no", "one port"]),
      ...priced(),
      ...now(0.7, () => ({ isolation: draw.whole(18, 32) })),
      ...now(0.5, () => ({ drop: draw.pick([0.3, 0.45, 0.7]), ohms: draw.between(0, 0.4, 2), amps: 1 })),
      ...now(0.1, () => ({ commands: draw.pick(["yes", "no"]) })),
    };
  });
  const inLine: Row[] = [
    {
      name: name("amplifier"),
      ...{ kind: "amplifier", ways: 1, power: "all ports" },
      ...priced(),
      ...{ gain_low: draw.whole(12, 20), gain_high: draw.whole(14, 22), noise: draw.between(4, 9, 1) },
      ...{ load: draw.between(0.05, 0.12, 2), least: draw.pick([9, 10, 11]) },
      ...now(0.6, () => ({ most_output: draw.whole(104, 118) })),
    },
    {
      name: name("equaliser"),
      ...{ kind: "equaliser", ways: 1, port_low: 8, port_high: 1.5, power: "all ports" },
      ...priced(),
      ohms: 0.2,
    },
    {
      name: name("filter"),
      ...{ kind: draw.pick(["filter", "attenuator"]), ways: 1, port_low: 3, port_high: 3 },
      power: draw.pick(["all ports", "all ports", "no"]),
      ...priced(),
    },
  ];
  const plans: Row[] = ["A", "B"].flatMap((plan) => {
    const count = draw.pick([8, 12, 16]);
    return Array.from({ length: count }, (_, index) => ({
      plan: `plan ${plan}`,
      band: index + 1,
      centre: Math.round(980 + (index * 1120) / (count - 1)),
      width: draw.pick([40, 50, 60]),
      ...now(0.4, () => ({ standard: index < 8 ? "EN 50494" : "EN 50607" })),
    }));
  });
  const bandsOf = (plan: string): number => plans.filter((row) => row.plan === plan).length;
  const units: Row[] = Array.from({ length: draw.whole(2, 4) }, () => {
    const isWatts = draw.chance(0.5);
    const out = draw.between(84, 100, 1);
    return {
      name: name("unit"),
      bands: draw.pick([8, 12, 16, 24, 32]),
      out_low: out,
      out_high: Number((out + draw.between(-3, 4, 1)).toFixed(1)),
      least: draw.pick([10.5, 11, 9.5]),
      load: isWatts ? draw.between(2, 5, 1) : draw.between(0.15, 0.35, 2),
      kind: isWatts ? "W" : "A",
      ...priced(),
      ...now(0.7, () => ({ standard: draw.pick(["EN 50494", "EN 50607", "EN 50607"]) })),
      ...now(0.4, () => ({ outputs: draw.whole(1, 3) })),
      ...now(0.6, () => ({ noise: draw.between(0.4, 1.2, 1) })),
      ...now(0.3, () => ({ drop: 0.4 })),
    };
  });
  for (const unit of units)
    if (draw.chance(0.6)) {
      unit.plan = draw.pick(["plan A", "plan B"]);
      unit.bands = bandsOf(unit.plan);
    }
  const switches: Row[] = [
    {
      name: name("switch"),
      ...{ bands: 16, out_low: 90, out_high: 88, least: 12, load: 0.25, kind: "A" },
      ...priced(),
      ...{ sits: "fed", standard: "EN 50607", outputs: 2, noise: 8, slots: 4, feeders: draw.pick([1, 2, 4]) },
      // One in five takes less than comes.
      ...{
        in_low: 55,
        in_high: seed % 5 === 0 ? 60 : 95,
        onward_low: 2,
        onward_high: 3.5,
        sense: 0.015,
        powers_feed: "yes",
      },
    },
  ];
  const feeds: Row[] = [
    {
      name: name("feed"),
      ...{ outputs: 4, gain: 54, noise: 0.6, load: draw.pick([0.12, 0.2]), least: 11 },
      ...priced(),
      ...now(0.4, () => ({ if_low: 290, if_high: 2340 })),
    },
  ];
  const resistors: Row[] = [
    { name: name("resistor"), ohms: 75, blocks: "yes", ...priced() },
    { name: name("resistor"), blocks: draw.pick(["yes", "no"]), ...priced() },
  ];
  const routes: Row[] = ["duct", "clips", "riser"].map((route) => ({
    name: `${route} ${draw.whole(1, 9)}`,
    minutes: draw.between(0.5, 6, 1),
    ...now(0.3, () => ({ low: 0.4, high: 9 })),
    ...now(0.5, () => ({ difficulty: draw.pick([1, 1.2, 1.4]) })),
  }));
  const supplies: Row[] = Array.from({ length: draw.whole(2, 4) }, (_, index) => ({
    name: name("supply"),
    volts: draw.pick([13, 14, 18, 15]),
    amps: draw.pick([0.4, 0.5, 1, 2]),
    ...priced(),
    ...(index === 0 ? { stands: "at the head unit" } : now(0.5, () => ({ stands: "in the line" }))),
    ...now(0.4, () => ({ loss_low: 0.6, loss_high: 1.2 })),
    ...now(0.3, () => ({ other_side: draw.pick(["no", "all ports"]) })),
  }));
  const plates: Row[] = Array.from({ length: draw.whole(2, 4) }, () => {
    const low = draw.between(0.4, 2, 1);
    return {
      name: name("plate"),
      loss_low: low,
      loss_high: Number((low + draw.between(0, 1.5, 1)).toFixed(1)),
      ...priced(),
      ...now(0.3, () => ({ power: draw.pick(["all ports", "towards head unit"]), ohms: 0.05 })),
      ...now(0.2, () => ({ connectors: 2 })),
    };
  });
  const loops: Row[] = [18, 14, 10].map((loss) => ({
    name: name("loop plate"),
    ...{ loss_low: loss, loss_high: loss + 0.6 },
    ...priced(),
    ...{ through_low: 1.2, through_high: 1.9, power: "towards head unit", isolation: 28 },
  }));
  const fittings: Row[] = Array.from({ length: draw.whole(2, 8) }, () => ({
    name: name("fitting"),
    ...each(),
    fixed: draw.whole(0, 2),
    pack: draw.pick([1, 5, 10, 50]),
    ...priced(),
  }));
  const receivers: Row[] = draw.chance(0.7)
    ? Array.from({ length: draw.whole(1, 4) }, () => ({
        kind: name("receiver"),
        tuners: draw.whole(1, 4),
        ...now(0.5, () => ({ standard: "EN 50607" })),
        ...now(0.2, () => ({ rest: 13, command: 18, amps: 0.5, bears: 24, noise: 8 })),
      }))
    : [];
  const labour: Row[] = Array.from({ length: draw.whole(2, 8) }, () => {
    const minutes = draw.whole(5, 200);
    return {
      name: name("work"),
      minutes,
      ...each(),
      fixed: draw.whole(0, 2),
      ...(draw.chance(0.4) ? { low: draw.whole(1, minutes), high: minutes + draw.whole(0, 90) } : {}),
      difficulty: draw.pick([1, 1, 1.15, 1.3, 0.9]),
    };
  });
  const kinds: Row[] = draw.chance(0.8)
    ? Array.from({ length: draw.whole(1, 4) }, () => ({ name: name("rooms") }))
    : [];

  const text = (row: Row | undefined, key = "name"): string => String(row![key]);
  const any = (rows: readonly Row[]): string => text(draw.pick(rows));
  const heads: Row[] = [];
  const branches: Row[] = [];
  const rooms: Row[] = [];
  const run = (from: string): string => {
    const metres = length(2, 32);
    const outlet = name("outlet");
    const kind: Row = draw.chance(0.75) && kinds.length > 0 ? { kind: any(kinds) } : {};
    const doubt: Row = draw.chance(0.25)
      ? {
          shortest: Number((metres * draw.between(0.6, 1, 2)).toFixed(1)),
          longest: Number((metres * draw.between(1, 1.6, 2)).toFixed(1)),
        }
      : {};
    rooms.push({
      floor: draw.pick(["ground", "first", "2", "annexe"]),
      room: name("room"),
      outlet,
      ...now(0.93, () => ({
        receiver:
          receivers.length > 0 && draw.chance(0.3)
            ? text(draw.pick(receivers), "kind")
            : draw.pick(["receiver", "receiver", "recorder, 2 tuners", "Recorder, 3 tuners"]),
      })),
      ...(draw.chance(0.6) ? { quantity: draw.chance(0.95) ? 1 : 2 } : {}),
      from,
      ...now(0.6, () => ({ cable: any(cables) })),
      run: metres,
      ...now(0.6, () => ({ plate: any(plates) })),
      ...now(0.4, () => ({ route: any(routes) })),
      ...now(0.04, () => ({ split: text(passives[1]) })),
      ...kind,
      ...doubt,
    });
    return outlet;
  };
  /** A device under `from`, and below it what hangs on its ports. */
  const grow = (from: string, depth: number): void => {
    const device = draw.pick(passives);
    const id = name("branch");
    let above = from;
    if (draw.chance(0.15) && branches.length < 9) {
      above = name("in line");
      const part = draw.chance(0.3) ? draw.pick(supplies.slice(1)) : draw.pick(inLine);
      branches.push({ id: above, from, device: text(part), ...now(0.5, () => ({ length: length(1, 9) })) });
    }
    branches.push({
      id,
      from: above,
      device: text(device),
      ...now(0.6, () => ({ cable: any(cables) })),
      ...now(0.8, () => ({ length: length(0.5, 14) })),
      ...now(0.3, () => ({ route: any(routes) })),
    });
    const used = draw.whole(Math.min(2, Number(device.ways)), Math.min(Number(device.ways), 5));
    for (let port = 0; port < used; port++) {
      const isDeep = port === 0 && depth > 1 && branches.length < 11;
      if (isDeep || (depth > 1 && branches.length < 9 && draw.chance(0.15))) grow(id, depth - 1);
      else if (rooms.length < 26) {
        let last = run(id);
        // A chain of loop-through plates.
        while (draw.chance(0.15) && rooms.length < 26) {
          rooms.at(-1)!.plate = any(loops);
          last = run(last);
        }
      }
    }
  };
  const dishes: Row[] = [];
  const feeders: Row[] = [];
  const headCount = draw.pick([1, 2, 3, 3, 4]);
  for (let nth = 0; nth < headCount; nth++) {
    const id = name("head");
    if (draw.chance(0.1)) run(id);
    else grow(id, draw.whole(1, Math.min(5, 2 + nth + (seed % 3))));
    const isFed = nth > 0 && draw.chance(0.25);
    heads.push({
      id,
      type: text(isFed ? switches[0] : draw.pick(units)),
      ...now(isFed ? 0.8 : 0.3, () => ({ supply: text(supplies[isFed ? 0 : 1]) })),
      ...now(0.5, () => ({ cable: any(cables) })),
      ...now(0.8, () => ({ length: length(2, 30) })),
      ...now(0.4, () => ({ route: any(routes) })),
    });
    const dish = name("dish");
    if (nth === 0 && headCount === 1 && draw.chance(0.4)) continue;
    dishes.push({
      name: dish,
      ...now(0.7, () => ({ size: draw.pick([0.6, 0.8, 1.1]) })),
      ...(isFed ? { feed: text(feeds[0]) } : {}),
      off_focus: draw.pick([0, 1.5]),
      ...now(0.5, () => ({ part: any(fittings) })),
      // Which slots there are is drawn further down: as many as the kind takes.
      slots: isFed ? draw.whole(1, 4) : 1,
    });
    if (isFed)
      feeders.push({
        from: dish,
        to: id,
        length: length(5, 25),
        ...now(0.5, () => ({ cable: any(cables) })),
      });
    else heads.at(-1)!.dish = dish;
  }

  const east = draw.chance(0.5);
  const slotNames = east ? ["13E", "19E", "13.5E", 14, 25] : ["97W", "113W", -105, -100, -90];
  const slots = draw
    .shuffled(slotNames)
    .slice(0, draw.whole(1, 4))
    .map((slot): Row => ({
      slot,
      ...(draw.chance(0.7) ? { service: "programmes" } : {}),
      obstacle: draw.whole(0, draw.chance(0.8) ? 15 : 50),
      ...now(0.7, () => ({
        eirp: draw.between(47, 54, 1),
        symbol_rate: draw.pick([22, 27.5, 30]),
        modulation: draw.pick(["8PSK 2/3", "QPSK 3/4", "8PSK 3/4", "DVB-S QPSK 3/4"]),
      })),
    }));
  for (const [nth, dish] of dishes.entries()) {
    dish.slots = slots
      .slice(0, Number(dish.slots))
      .map(({ slot }) => slotName(slot))
      .join(nth % 2 === 0 ? " " : ", ");
    // Every third gives an obstacle of its own, at times too high.
    if ((seed + nth) % 3 === 0) dish.obstacle = (seed * 7 + nth * 13) % 40;
  }
  const latitude = draw.between(20, 55, 2) * (draw.chance(0.25) ? -1 : 1);
  const discount = draw.pick<Row>([
    {},
    {},
    { discount_sum: draw.between(1, 90, 2), discount_reason: "three houses" },
    { discount_share: draw.between(0.01, 0.2, 3), discount_reason: "three houses" },
  ]);
  const low = draw.pick([950, 950, 250, 47]);
  const job: GeneratedJob = {
    fields: {
      site_job: "Job of a seed (demonstration)",
      site_customer: draw.pick(["Invented customer (demonstration)", "007", "=7 & Co"]),
      site_place: "Invented address (demonstration)",
      site_prepared_by: "demonstration",
      site_quote: draw.pick(["D-24", "3-16", "007", "Q 1"]),
      site_revision: draw.whole(1, 9),
      site_date: quoteDay,
      site_until: quoteDay + draw.whole(1, 59),
      site_latitude: latitude,
      site_longitude: east ? draw.between(-8, 30, 2) : draw.between(-122, -80, 2),
      site_height: draw.whole(0, 1500),
      site_clearance: draw.between(0, 6, 1),
      site_dish: draw.pick([0.6, 0.9, 1.2, 1.8]),
      site_unit: isFeet ? "ft" : "m",
      site_slack: draw.pick([0.5, 1, 2, 3]),
      site_waste: draw.pick([0.02, 0.05, 0.1]),
      site_run_tolerance: draw.pick([0.05, 0.1, 0.2, 0.3]),
      site_low: low,
      site_high: draw.pick([2150, 2340, 1950]),
      site_cold: draw.whole(-30, 5),
      site_hot: draw.whole(25, 70),
      ...{ site_usual_cable: any(cables), site_usual_plate: any(plates), site_usual_route: any(routes) },
      ...now(0.7, () => ({ site_closes: any(resistors) })),
      ...now(0.6, () => ({
        site_availability: draw.pick([99, 99.7, 99.9]),
        site_rain_rate: draw.whole(20, 60),
        site_rain_height: draw.between(2.5, 4.5, 1),
      })),
      ...now(0.4, () => ({ site_dish_loss: 0.5, site_noise_margin: 1 })),
      site_level_low: draw.pick([47, 47, 47, 45, 50]),
      site_level_high: draw.pick([77, 77, 77, 80, 74]),
      site_level_design: draw.pick([53, 55, 51]),
      site_currency: draw.pick(["demonstration money", "EUR", "JPY"]),
      site_contingency: draw.between(0.01, 0.1, 2),
      site_overhead: draw.between(0.02, 0.25, 3),
      site_margin: draw.between(0.05, 0.4, 2),
      site_tax: draw.pick([0.2, 0.19, 0.055, 0.077, 0.1]),
      site_tax_on: draw.pick(["materials and labour", "materials only", "labour only"]),
      site_rounding: draw.pick(["half away", "half even"]),
      labour_rate: draw.between(30, 90, 2),
      site_offset: draw.pick([0, 22.6, 24.5]),
      site_downlink: draw.pick([11700, 12450, 4000]),
      commission_tolerance: draw.pick([2, 3]),
      commission_volts_tolerance: draw.pick([0.5, 1]),
      commission_meter: 1.5,
      ...discount,
    },
    blocks: {
      slots,
      cables: withGaps(draw, draw.shuffled(cables)),
      passives: withGaps(draw, draw.shuffled([...passives, ...inLine])),
      units: withGaps(draw, draw.shuffled([...units, ...switches])),
      feeds,
      plans: withGaps(draw, draw.shuffled(plans)),
      resistors,
      routes: withGaps(draw, routes),
      dishes: withGaps(draw, draw.shuffled(dishes)),
      feeders: withGaps(draw, feeders),
      supplies: withGaps(draw, draw.shuffled(supplies)),
      plates: withGaps(draw, draw.shuffled([...plates, ...loops])),
      fittings: withGaps(draw, draw.shuffled(fittings)),
      receivers: withGaps(draw, receivers),
      labour: withGaps(draw, labour),
      kinds: withGaps(draw, draw.shuffled(kinds)),
      bonds: draw.chance(0.85)
        ? withGaps(
            draw,
            Array.from({ length: draw.whole(1, 6) }, (_, n) => ({
              where: `bond ${n}`,
              kind: draw.pick(BONDS),
              size: draw.pick([1.5, 2.08, 2.5, 4, 5.26, 10, 13.3, 16, 25, 50]),
              length: length(0.5, 9),
              // One of each four names no dish.
              ...(n % 4 === 3 || dishes.length === 0
                ? {}
                : { dish: dishes[(seed + n) % dishes.length]!.name! }),
            })),
          )
        : [],
      options: withGaps(
        draw,
        Array.from({ length: draw.whole(0, 4) }, () => ({
          name: name("option"),
          quantity: draw.pick([1, 2, 3, 0.5]),
          each: draw.between(1, 200, draw.pick([0, 2, 3])),
          chosen: draw.pick(["yes", "no"]),
        })),
      ),
      provisional: Array.from({ length: draw.whole(0, 3) }, () => ({
        name: name("provisional"),
        sum: draw.between(5, 400, 2),
      })),
      assumptions: draw.chance(0.85) ? [{ text: "Ducts are clear." }] : [],
      exclusions: draw.chance(0.85) ? [{ text: "Receivers." }, { text: "3-16" }] : [],
      heads: withGaps(draw, draw.shuffled(heads)),
      branches: withGaps(draw, draw.shuffled(branches)),
      rooms: withGaps(draw, draw.shuffled(rooms)),
    },
    slips: [],
  };
  if (draw.chance(0.3)) shout(draw, job);
  for (const [block, rows] of Object.entries(job.blocks)) if (rows.length === 0) delete job.blocks[block];
  if (draw.chance(0.5)) ontoEdges(draw, job);
  if (draw.chance(0.5)) measure(draw, job);
  if (draw.chance(0.5)) peak(draw, job);
  slipsInto(job, draw, seed);
  // Drawn apart, so that a seed's job is the same as before but for them.
  typesInto(job, drawn(seed + 70_000));
  moneyInto(job, drawn(seed + 90_000));
  crewInto(job, drawn(seed + 110_000));
  buyingInto(job, drawn(seed + 140_000));
  // The reference works out a job once: this one is another than what it was asked about above.
  return structuredClone(job);
}

/** A name is the same name in capitals. */
function shout(draw: Drawn, { blocks }: GeneratedJob): void {
  for (const row of blocks.rooms!)
    if (row.from !== undefined && draw.chance(0.3)) row.from = String(row.from).toUpperCase();
  for (const row of blocks.branches!)
    if (row.cable !== undefined && draw.chance(0.3)) row.cable = String(row.cable).toUpperCase();
}

const PIECES = ["connector", "grounding block", "receiver lead", "dish", "splitter", "wall plate", "floor"];

const BONDS = [
  "mast earthing, copper",
  "mast earthing, aluminium",
  "mast earthing, steel",
  "cable screen bond, protected",
  "cable screen bond, unprotected",
  "mast grounding, copper, NEC",
  "electrode bond, NEC",
  "communications bond, one or two family",
  "communications bond, other building",
];
