/** Clean jobs for the review: nothing in them is wrong, doubtful or worth a note. Everything in them is invented. */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { JobInputs } from "../../src/workbooks/definition";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

type Row = Record<string, number | string>;
export interface Job {
  fields: Record<string, number | string>;
  blocks: Record<string, Row[]>;
}

const copyOf = (inputs: JobInputs): Job => JSON.parse(JSON.stringify(inputs)) as Job;

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** The two faults that the demonstration has on purpose mended, its thin conductor and its wishes too. */
export function mendedGuestHouse(): Job {
  const job = copyOf(guestHouse);
  job.blocks.heads![2]!.cable = "trunk";
  Object.assign(job.blocks.rooms![23]!, { cable: "trunk", run: 30 });
  job.blocks.bonds![3]!.size = 4;
  job.fields.site_level_design = 48;
  // Lengths as they were measured: a doubt of a tenth leaves the farthest outlet at its limit.
  job.fields.site_run_tolerance = 0.02;
  return job;
}

/** The guest house as it was before the distribution was one tree, a simple job, mended as well. */
export function mendedEarlierHouse(): Job {
  const job = JSON.parse(readFileSync(path.join(__dirname, "../fixtures/quotes/house.json"), "utf8")) as Job;
  job.blocks.heads![2]!.cable = "trunk";
  Object.assign(job.blocks.rooms![23]!, { cable: "trunk", run: 30 });
  job.blocks.bonds![2]!.size = 4;
  job.blocks.bonds!.slice(0, 2).forEach((bond, index) => (bond.dish = `D${index + 1}`));
  job.fields.site_level_design = 48;
  job.fields.site_run_tolerance = 0.02;
  // What it does not say of its kinds would be a note each.
  for (const unit of job.blocks.units!) Object.assign(unit, { standard: "EN 50607", noise: 0.7 });
  job.blocks.receivers = [
    ...job.blocks.receivers!,
    { kind: "receiver", tuners: 1 },
    { kind: "recorder", tuners: 2 },
    { kind: "2 tuners", tuners: 2 },
  ].map((kind) => ({ ...kind, standard: "EN 50607" }));
  for (const slot of job.blocks.slots!)
    Object.assign(slot, { eirp: 51, symbol_rate: 27.5, modulation: "QPSK 3/4" });
  return job;
}

/** The apartment block cut to some floors, from the roof down; a mains pack stands at the last switch. */
export function blockOf(floors: number): Job {
  const job = copyOf(apartmentBlock);
  const kept = new Set(
    Array.from({ length: floors }, (_, index) => `H${String(10 - index).padStart(2, "0")}`),
  );
  const floorOf = (name: unknown): string => `H${String(name).slice(1, 3)}`;
  job.blocks.heads = job.blocks.heads!.filter(({ id }) => kept.has(String(id)));
  job.blocks.branches = job.blocks.branches!.filter(({ id }) => kept.has(floorOf(id)));
  job.blocks.rooms = job.blocks.rooms!.filter(({ from }) => kept.has(floorOf(from)));
  job.blocks.feeders = job.blocks.feeders!.filter(({ to }) => kept.has(String(to)));
  job.blocks.heads.at(-1)!.supply = "mains pack 18 V, 2.5 A";
  job.fields.site_level_design = 48;
  // Lengths as they were measured: a doubt of a tenth leaves the farthest outlet at its limit.
  job.fields.site_run_tolerance = 0.02;
  return job;
}

const FEET = 3.280839895;
const RUNS = ["run", "shortest", "longest"] as const;
const LENGTHS = {
  heads: ["length"],
  branches: ["length"],
  feeders: ["length"],
  rooms: RUNS,
  bonds: ["length"],
  cables: ["reel"],
} as const;

/** Changes the lengths that a row has; a blank stays blank. */
function changeLengths(row: Row, keys: readonly string[], change: (length: number) => number): void {
  for (const key of keys) if (row[key] !== undefined && row[key] !== "") row[key] = change(Number(row[key]));
}

/** The same lengths, told in feet. */
function inFeet(job: Job): void {
  job.fields.site_unit = "ft";
  job.fields.site_slack = Math.round(Number(job.fields.site_slack) * FEET);
  for (const [block, keys] of Object.entries(LENGTHS))
    for (const row of job.blocks[block]!)
      changeLengths(row, keys, (length) => Math.round(length * FEET * 2) / 2);
  for (const route of job.blocks.routes!)
    changeLengths(route, ["minutes", "low", "high"], (minutes) => Math.round((minutes / FEET) * 100) / 100);
}

const PRICED = ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"];

/** Prices in money of another worth. */
function inMoney(job: Job, name: string, worth: number): void {
  job.fields.site_currency = name;
  job.fields.labour_rate = Math.round(Number(job.fields.labour_rate) * worth);
  const told = (price: unknown): number => Math.round(Number(price) * worth);
  for (const block of PRICED) for (const row of job.blocks[block]!) row.price = told(row.price);
  for (const row of job.blocks.options!) row.each = told(row.each);
  for (const row of job.blocks.provisional!) row.sum = told(row.sum);
}

/** Rows as somebody sorted them: by name from the last to the first. */
function turned(job: Job): void {
  for (const block of ["rooms", "branches", "heads", "feeders", "cables", "fittings"])
    job.blocks[block] = [...job.blocks[block]!].reverse();
}

/** Shares that a job may do without, by their labels on Site. */
const MAY_BE_NONE = {
  site_tax: "Tax",
  site_contingency: "Contingency",
  site_overhead: "Overhead",
  site_waste: "Waste added to each run",
} as const;

/** A clean job says on Terms why a share is 0. */
function tellZeros(job: Job): void {
  for (const [name, what] of Object.entries(MAY_BE_NONE))
    if (job.fields[name] === 0)
      job.blocks.onpurpose = [...(job.blocks.onpurpose ?? []), { what, why: "as the office decided" }];
}

/** One in so many is a whole block of 240 outlets. */
const WHOLE_BLOCK = 25;

/** A job of another size and other settings for each seed. */
export function cleanJob(seed: number): Job {
  const random = randomFrom(seed);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!;
  const floors = seed % WHOLE_BLOCK === 0 ? 10 : 1 + Math.floor(random() * 3);
  const job = random() < 0.6 && floors < 10 ? mendedGuestHouse() : blockOf(floors);
  Object.assign(job.fields, {
    site_job: "House (demonstration)",
    site_margin: 0.12 + Math.round(random() * 30) / 100,
    site_tax: pick([0, 0.05, 0.0775, 0.19, 0.2, 0.25]),
    site_tax_on: pick(["materials and labour", "materials only", "labour only"]),
    site_rounding: pick(["half away", "half even"]),
    site_contingency: pick([0, 0.02, 0.05]),
    site_overhead: pick([0, 0.08, 0.15]),
    site_waste: pick([0, 0.05, 0.1]),
    site_slack: pick([1, 2, 3]),
    site_revision: 1 + Math.floor(random() * 5),
    site_hot: pick([40, 50, 55]),
    site_cold: pick([-25, -15, 0]),
    labour_rate: 40 + Math.round(random() * 40),
  });
  tellZeros(job);
  const shorter = 0.75 + random() * 0.25;
  for (const room of job.blocks.rooms!)
    changeLengths(room, RUNS, (length) => Math.max(2, Math.round(length * shorter * 2) / 2));
  // Some outlets are left away, as in another house; each device keeps at least one, and what loops through stays.
  const left = new Map<unknown, number>();
  for (const { from } of job.blocks.rooms!) left.set(from, (left.get(from) ?? 0) + 1);
  job.blocks.rooms = job.blocks.rooms!.filter(({ from, outlet }) => {
    if (left.has(outlet) || left.get(from)! <= 2 || random() > 0.15) return true;
    left.set(from, left.get(from)! - 1);
    return false;
  });
  for (const block of PRICED)
    for (const part of job.blocks[block]!)
      part.price = Math.round(Number(part.price) * (0.8 + random() * 0.4) * 100) / 100;
  job.blocks.options![0]!.chosen = pick(["yes", "no"]);
  if (random() < 0.2) inFeet(job);
  if (random() < 0.2) inMoney(job, "demonstration shells", 100);
  if (random() < 0.3) turned(job);
  if (random() < 0.2) job.blocks.provisional = [];
  if (random() < 0.2) job.blocks.options = [];
  return job;
}
