/**
 * Invented multi-room jobs, drawn from a seed: the same seed gives the same job on every machine. They are what the
 * demonstrations are not: parts in no order, names that a spreadsheet program takes for numbers, days or comparisons,
 * empty rows in the middle, trees several devices deep, both units, all rules of tax and rounding, and about half of
 * them with slips, so that each check is met from both sides. Nothing in them is a real part, price or place.
 */
import { drawn, withGaps, type Drawn, type GeneratedJob, type Row } from "./drawn";
import { measure, peak } from "./generatedReadings";
import { slipsInto } from "./generatedSlips";
import { ontoEdges } from "./ontoEdges";

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
  });

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
      power: draw.chance(0.85) ? "all ports" : draw.pick(["no", "one port"]),
      ...priced(),
    };
  });
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
    };
  });
  const supplies: Row[] = Array.from({ length: draw.whole(2, 4) }, (_, index) => ({
    name: name("supply"),
    volts: draw.pick([13, 14, 18, 15]),
    amps: draw.pick([0.4, 0.5, 1, 2]),
    ...(index === 0 ? { by: "a receiver" } : draw.chance(0.5) ? { by: "this job" } : {}),
    ...priced(),
  }));
  const plates: Row[] = Array.from({ length: draw.whole(2, 4) }, () => {
    const low = draw.between(0.4, 2, 1);
    return {
      name: name("plate"),
      loss_low: low,
      loss_high: Number((low + draw.between(0, 1.5, 1)).toFixed(1)),
      ...priced(),
    };
  });
  const fittings: Row[] = Array.from({ length: draw.whole(2, 8) }, () => ({
    name: name("fitting"),
    ...each(),
    fixed: draw.whole(0, 2),
    pack: draw.pick([1, 5, 10, 50]),
    ...priced(),
  }));
  const receivers: Row[] = draw.chance(0.7)
    ? Array.from({ length: draw.whole(1, 4) }, () => ({ kind: name("receiver"), tuners: draw.whole(1, 4) }))
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
      receiver:
        receivers.length > 0 && draw.chance(0.3)
          ? text(draw.pick(receivers), "kind")
          : draw.pick(["receiver", "receiver", "recorder, 2 tuners", "Recorder, 3 tuners"]),
      ...(draw.chance(0.6) ? { quantity: draw.chance(0.9) ? 1 : 2 } : {}),
      from,
      cable: any(cables),
      run: metres,
      plate: any(plates),
      ...kind,
      ...doubt,
    });
    return outlet;
  };
  /** A device under `from`, and below it what hangs on its ports. */
  const grow = (from: string, depth: number): void => {
    const device = draw.pick(passives);
    const id = name("branch");
    branches.push({ id, from, device: text(device), cable: any(cables), length: length(0.5, 14) });
    const used = draw.whole(Math.min(2, Number(device.ways)), Math.min(Number(device.ways), 5));
    for (let port = 0; port < used; port++) {
      const isDeep = port === 0 && depth > 1 && branches.length < 11;
      if (isDeep || (depth > 1 && branches.length < 9 && draw.chance(0.15))) grow(id, depth - 1);
      else if (rooms.length < 26) run(id);
    }
  };
  const headCount = draw.pick([1, 2, 3, 3, 4]);
  for (let nth = 0; nth < headCount; nth++) {
    const id = name("head");
    const before = branches.length;
    const outletsBefore = rooms.length;
    if (draw.chance(0.1)) run(id);
    else grow(id, draw.whole(1, Math.min(5, 2 + nth + (seed % 3))));
    const ownBranches = branches.slice(before);
    const ownRooms = rooms.slice(outletsBefore);
    const at: Row = draw.chance(0.35)
      ? {}
      : ownRooms.length > 0 && (ownBranches.length === 0 || draw.chance(0.6))
        ? { at: text(draw.pick(ownRooms), "outlet") }
        : { at: text(draw.pick(ownBranches), "id") };
    const owner = heads.find((row) => row.supply !== undefined);
    const isShared = owner !== undefined && draw.chance(0.3);
    heads.push({
      id,
      type: any(units),
      ...(isShared ? { shares: text(owner, "id") } : { supply: any(supplies) }),
      cable: any(cables),
      length: length(2, 30),
      ...at,
    });
    if (isShared && draw.chance(0.6)) owner.common = draw.between(0.1, 1.5, 2);
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
    }));
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
      passives: withGaps(draw, draw.shuffled(passives)),
      units: withGaps(draw, draw.shuffled(units)),
      supplies: withGaps(draw, draw.shuffled(supplies)),
      plates: withGaps(draw, draw.shuffled(plates)),
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
  return job;
}

/** A name is the same name in capitals. */
function shout(draw: Drawn, { blocks }: GeneratedJob): void {
  for (const row of blocks.rooms!)
    if (row.from !== undefined && draw.chance(0.3)) row.from = String(row.from).toUpperCase();
  for (const row of blocks.branches!)
    if (row.cable !== undefined && draw.chance(0.3)) row.cable = String(row.cable).toUpperCase();
}

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
