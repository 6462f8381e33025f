/** Room types of a drawn job: some of its outlets leave to a type what they had of their own, and some do not. */
import type { Drawn, GeneratedJob, Row } from "./drawn";

const KEYS = ["receiver", "quantity", "cable", "plate", "route", "split", "kind"] as const;
const RUNS = ["run", "shortest", "longest"] as const;
const NAMES = ["double room", "double room, balcony", "Suite", "007", "flat 2E1", "<5"];

/** Two jobs in three have types. */
export function typesInto(job: GeneratedJob, draw: Drawn): void {
  const rooms = (job.blocks.rooms ?? []).filter((row) => row.outlet !== undefined);
  if (rooms.length === 0 || draw.chance(0.35)) return;
  const types = Array.from({ length: draw.whole(1, 4) }, (_, at) => typeLike(job, draw, rooms, NAMES[at]!));
  for (const row of rooms) if (draw.chance(0.6)) give(row, draw.pick(types), draw);
  const first = rooms[0]!;
  if (draw.chance(0.15)) first.type = "no such type";
  if (draw.chance(0.1)) types.push({ ...types[0]!, name: String(types[0]!.name).toUpperCase() });
  if (draw.chance(0.25)) types.push({ name: "unused type", minutes: 5 });
  if (draw.chance(0.1)) types[0]!.minutes = -5;
  job.blocks.types = draw.chance(0.2) ? [types[0]!, {}, ...types.slice(1)] : types;
}

function typeLike(job: GeneratedJob, draw: Drawn, rooms: readonly Row[], name: string): Row {
  const sample = draw.pick(rooms);
  const type: Row = { name };
  for (const key of KEYS) if (sample[key] !== undefined && draw.chance(0.7)) type[key] = sample[key];
  if (draw.chance(0.5)) for (const key of RUNS) if (sample[key] !== undefined) type[key] = sample[key];
  if (draw.chance(0.4)) type.outlets = draw.whole(1, 2);
  const fittings = (job.blocks.fittings ?? []).filter((row) => row.name !== undefined);
  if (fittings.length > 0 && draw.chance(0.5)) {
    type.fitting = draw.pick(fittings).name!;
    if (draw.chance(0.6)) type.pieces = draw.pick([0, 1, 2, 0.5]);
  }
  if (draw.chance(0.5)) type.minutes = draw.between(0, 40, 1);
  return type;
}

function give(row: Row, type: Row, draw: Drawn): void {
  row.type = draw.chance(0.2) ? String(type.name).toUpperCase() : type.name!;
  for (const key of [...KEYS, ...RUNS]) if (type[key] !== undefined && draw.chance(0.75)) delete row[key];
  if (type.receiver !== undefined && draw.chance(0.05)) row.receiver = "none";
}
