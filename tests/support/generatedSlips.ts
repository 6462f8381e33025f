/**
 * What people do wrong in a job, one by one, so that the other side of each check is met. Each is a slip of the pen
 * whose consequences the reference can work out from the words of the sheets.
 */
import type { Drawn, GeneratedJob, Row } from "./drawn";

type Slip = (job: GeneratedJob, draw: Drawn) => void;

const filled = (job: GeneratedJob, block: string): Row[] =>
  (job.blocks[block] ?? []).filter((row) => Object.keys(row).length > 0);
const one = (job: GeneratedJob, draw: Drawn, block: string): Row => draw.pick(filled(job, block));
const change =
  (block: string, key: string, to: (row: Row, job: GeneratedJob) => number | string | undefined): Slip =>
  (job, draw) => {
    if (filled(job, block).length === 0) return;
    const row = one(job, draw, block);
    const value = to(row, job);
    if (value === undefined) delete row[key];
    else row[key] = value;
  };
const changeField =
  (name: string, value: number | string | undefined): Slip =>
  ({ fields }) => {
    if (value === undefined) delete fields[name];
    else fields[name] = value;
  };
const blank = (block: string, key: string): Slip => change(block, key, () => undefined);
/** A part that nothing uses. */
const unusedPart =
  (block: string, more: Row): Slip =>
  (job) => {
    job.blocks[block]!.push({
      name: "unused part",
      price: 12,
      until: Number(job.fields.site_date) + 100,
      ...more,
    });
  };

const SLIPS: Readonly<Record<string, Slip>> = {
  "no customer": changeField("site_customer", undefined),
  "no obstacle": blank("slots", "obstacle"),
  "clearance out of bounds": changeField("site_clearance", 25),
  "revision not whole": changeField("site_revision", 1.5),
  "offset out of bounds": changeField("site_offset", 61),
  "tolerance missing": changeField("commission_meter", undefined),
  "design floor under the least level": changeField("site_level_design", 30),
  "a narrow range": (job) => void (job.fields.site_high = Number(job.fields.site_low) + 400),
  "rounding spelled otherwise": (job) => void (job.fields.written_as = "Klingon"),
  "currency missing": changeField("site_currency", undefined),
  "margin of carrier to noise out of bounds": changeField("site_noise_margin", 50),
  "no such usual end resistor": changeField("site_closes", "no such resistor"),
  "no usual route": changeField("site_usual_route", undefined),
  "outputs of a feed out of bounds": unusedPart("feeds", {
    outputs: 100,
    gain: 54,
    noise: 0.6,
    load: 0.1,
    least: 11,
  }),
  "band out of bounds": (job) =>
    void (job.blocks.plans ??= []).push({ plan: "unused plan", band: 40, centre: 1000 }),
  "ohms out of bounds": unusedPart("resistors", { ohms: 100_000 }),
  "minutes of a route out of bounds": (job) =>
    void (job.blocks.routes ??= []).push({ name: "unused", minutes: -1 }),
  "a device without a part": blank("branches", "device"),
  "reel out of bounds": unusedPart("cables", { like: "series 6", reel: 5 }),
  "cable without its k0": unusedPart("cables", { like: "series 6", k1: 0.5, k2: 0.001, reel: 100 }),
  "bands out of bounds": unusedPart("units", {
    bands: 33,
    out_low: 90,
    out_high: 90,
    least: 10.5,
    load: 3,
    kind: "W",
  }),
  "amps missing": unusedPart("supplies", { volts: 13 }),
  "tap without its line": unusedPart("passives", {
    ...{ kind: "tap", ways: 2, port_low: 12, port_high: 12.5, through_low: 1, power: "all ports" },
  }),
  "receiver without tuners": (job) => void (job.blocks.receivers ??= []).push({ kind: "unused receiver" }),
  "difficulty out of bounds": change("labour", "difficulty", () => 11),
  "rate out of bounds": changeField("labour_rate", 0.5),
  "bond without a size": blank("bonds", "size"),
  "option chosen maybe": change("options", "chosen", () => "maybe"),
  "reading out of bounds": change("rooms", "built_volts", () => 120),
  "axis misspelled": change("peaks", "axis", () => "azimut"),
  "log without a date": (job) =>
    void (job.blocks.log = [{ what: "first" }, { date: 46100, who: "x", what: "y", why: "z" }]),
  "cause out of bounds": (job) => void (job.blocks.causes = [{ cause: "misaligned", chance: 0.7 }]),
  "outlet fed by nothing": blank("rooms", "from"),
  "outlet fed by an unknown name": change("rooms", "from", () => "nowhere"),
  "branch fed by an unknown name": change("branches", "from", () => "nowhere"),
  "branches in a ring": (job) => {
    const [first] = filled(job, "branches");
    if (first) first.from = first.id!;
  },
  "unknown cable at an outlet": change("rooms", "cable", () => "no such cable"),
  "unknown plate": change("rooms", "plate", () => "no such plate"),
  "unknown device": change("branches", "device", () => "no such device"),
  "unknown receiver": change("rooms", "receiver", () => "gadget"),
  "two outlets of one name": (job) => {
    const [first, second] = filled(job, "rooms");
    if (second) second.outlet = String(first!.outlet).toLowerCase();
  },
  "a fitting twice": (job) => void job.blocks.fittings!.push({ ...filled(job, "fittings")[0]! }),
  "a wildcard in a name": (job) => {
    job.blocks.plates!.push({ ...filled(job, "plates")[0]!, name: "unused * and ~" });
  },
  "very long run": change("rooms", "run", ({ run }) => Number((Number(run) * 2.2).toFixed(1))),
  "run longer than a reel": change("rooms", "run", () => 1999),
  "a hot head unit": change("units", "out_low", () => 118),
  "a steep head unit": change("units", "out_high", ({ out_low }) => Number(out_low) - 20),
  "a weak head unit": change("units", "out_high", () => 60),
  "a device that stops power": change("passives", "power", () => "no"),
  "a device that passes it at one port": change("passives", "power", () => "one port"),
  "least level low": changeField("site_level_low", 40),
  "greatest level high": changeField("site_level_high", 90),
  "a splitter that loses nothing": change("passives", "port_low", ({ kind, port_low: now }) =>
    kind === "splitter" ? 0.5 : kind === "tap" ? 10 : now,
  ),
  "ends swapped": change("plates", "loss_high", () => 0.1),
  "a tap's line above its port": unusedPart("passives", {
    ...{
      kind: "tap",
      ways: 2,
      port_low: 12,
      port_high: 12.5,
      through_low: 13,
      through_high: 13.5,
      power: "all ports",
    },
  }),
  "shortest above the run": change("rooms", "shortest", ({ run }) => Number(run) + 5),
  "longest below the run": change("rooms", "longest", ({ run }) => Number(run) / 2),
  "fewer ways than it feeds": change("passives", "ways", () => 1),
  "tuners beyond the bands": change("rooms", "quantity", () => 20),
  "no receiver at an outlet": change("rooms", "quantity", () => 0),
  "low volts": change("supplies", "volts", () => 8),
  "a heavy load": change("units", "load", ({ kind }) => (kind === "W" ? 9 : 1)),
  "a weak supply": change("supplies", "amps", () => 0.05),
  "two on one head unit": (job) => {
    const head = filled(job, "heads")[0]!;
    for (const row of filled(job, "rooms").slice(0, 2)) row.from = head.id!;
  },
  "a dish that is not there": change("heads", "dish", () => "D99"),
  "a feeder from nowhere": (job) => {
    const [first] = filled(job, "feeders");
    if (first) first.from = "D99";
    else job.blocks.feeders = [{ from: "D99", to: filled(job, "heads")[0]!.id!, length: 5 }];
  },
  "a feed that is not known": change("dishes", "feed", () => "no such feed"),
  "nothing closes ports": (job) => void delete job.fields.site_closes,
  "an end resistor on power": (job) => {
    for (const row of filled(job, "resistors")) row.blocks = "no";
  },
  "two on one port": (job) => {
    for (const row of filled(job, "rooms").slice(0, 2)) row.port = 1;
  },
  "a port beyond": change("rooms", "port", () => 64),
  "two receivers at one connector": change("rooms", "quantity", () => 2),
  "two keep one user band": (job) => {
    for (const row of filled(job, "rooms").slice(0, 2)) row.kept = "2";
  },
  "a user band that is not there": change("rooms", "kept", () => "31"),
  "a small dish": change("dishes", "size", () => 0.35),
  "volts from an inserter at the receivers": (job) => {
    const supplies = filled(job, "supplies");
    // Two supplies on one line would fight through the resistance of a contact.
    const other = filled(job, "passives").find(({ kind }) => kind === "filter" || kind === "attenuator")!;
    for (const row of filled(job, "branches"))
      if (supplies.some(({ name }) => name === row.device)) row.device = other.name!;
    for (const row of supplies)
      Object.assign(row, { volts: 24, stands: "in the line", other_side: "all ports" });
    for (const row of [...filled(job, "passives"), ...filled(job, "plates")]) row.power = "all ports";
    for (const row of filled(job, "heads")) row.supply = supplies[0]!.name!;
  },
  "a head unit of a maker's own": change("units", "standard", () => "maker's own"),
  "an amplifier at its limit": change("passives", "most_output", ({ kind }) =>
    kind === "amplifier" ? 85 : undefined,
  ),
  "unknown supply": change("heads", "supply", () => "no such supply"),
  "a high obstacle": change("slots", "obstacle", () => 80),
  "no slots": (job) => void delete job.blocks.slots,
  "price without a date": blank("plates", "until"),
  "price past its date": change("fittings", "until", (_, job) => Number(job.fields.site_date) - 1),
  "price of tomorrow": change("passives", "priced", (_, job) => Number(job.fields.site_date) + 1),
  "quote past its date": (job) => void (job.fields.site_until = job.fields.site_date!),
  "no labour": (job) => void delete job.blocks.labour,
  "no time at all": (job) => {
    delete job.blocks.labour;
    delete job.blocks.routes;
  },
  "a least alone": (job) => {
    if (!job.blocks.labour) return;
    const row = filled(job, "labour")[0]!;
    delete row.high;
    row.low = 1;
  },
  "work that nothing counts": (job) =>
    void job.blocks.labour?.push({ name: "idle work", minutes: 30, difficulty: 1 }),
  "discounts of both kinds": (job) =>
    Object.assign(job.fields, { discount_sum: 10, discount_share: 0.05, discount_reason: "x" }),
  "discount without a reason": (job) => {
    Object.assign(job.fields, { discount_sum: 20 });
    delete job.fields.discount_reason;
    delete job.fields.discount_share;
  },
  "discount of half": (job) => {
    Object.assign(job.fields, { discount_share: 0.5, discount_reason: "a wager" });
    delete job.fields.discount_sum;
  },
  "no tax": changeField("site_tax", 0),
  "no waste": changeField("site_waste", 0),
  "no tax on purpose": (job) => {
    job.fields.site_tax = 0;
    (job.blocks.onpurpose ??= []).push({ what: "Tax", why: "reverse charge" });
  },
  "a free fitting": change("fittings", "price", () => 0),
  "a free fitting on purpose": (job, draw) => {
    const row = one(job, draw, "fittings");
    row.price = 0;
    (job.blocks.onpurpose ??= []).push({ what: String(row.name), why: "supplied by the customer" });
  },
  "no minutes": (job, draw) => {
    if (!job.blocks.labour) return;
    const row = one(job, draw, "labour");
    row.minutes = 0;
    delete row.low;
    delete row.high;
  },
  "a pack missing": blank("fittings", "pack"),
  "no outlets": (job) => void delete job.blocks.rooms,
  "no branches": (job) => {
    const head = filled(job, "heads")[0]!;
    for (const row of filled(job, "rooms")) row.from = head.id!;
    for (const row of filled(job, "heads")) delete row.at;
    delete job.blocks.branches;
  },
};

export const SLIP_NAMES = Object.keys(SLIPS);

/** Of two jobs in three one slip or two; the first in turn, so that so many jobs meet each. */
export function slipsInto(job: GeneratedJob, draw: Drawn, seed: number): void {
  if (seed % 3 === 0) return;
  const first = SLIP_NAMES[(seed - Math.floor(seed / 3) - 1) % SLIP_NAMES.length]!;
  const wanted = draw.chance(0.3) ? [first, draw.pick(SLIP_NAMES)] : [first];
  for (const name of new Set(wanted)) {
    SLIPS[name]!(job, draw);
    job.slips.push(name);
  }
}
