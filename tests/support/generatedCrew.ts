/** The crew of a drawn job: its day, what being on site costs, and floors and rooms where work is harder. */
import type { Drawn, GeneratedJob, Row } from "./drawn";

const UNITS = ["job", "day on site", "person and day", "floor"] as const;

/** Three jobs in four say something of it. */
export function crewInto(job: GeneratedJob, draw: Drawn): void {
  if (draw.chance(0.25)) return;
  const now = (share: number, row: () => Row): Row => (draw.chance(share) ? row() : {});
  Object.assign(
    job.fields,
    now(0.7, () => ({ crew_size: draw.whole(1, 4) })),
    now(0.8, () => ({ crew_hours: draw.pick([8, 7.5, 6, 9, 0.4, 25]) })),
    now(0.3, () => ({ crew_days: draw.pick([1, 2.5, 6, 20]) })),
    now(0.5, () => ({ crew_speed: draw.between(0, 0.3, 2) })),
    now(0.5, () => ({ crew_difficulty: draw.between(0, 0.3, 2) })),
  );
  for (const row of job.blocks.labour ?? []) {
    if (row.name === undefined) continue;
    if (draw.chance(0.25)) row.per_floor = draw.whole(1, 3);
    if (draw.chance(0.2)) {
      row.per_day = draw.pick([1, 1, 2, 0.5]);
      row.minutes = draw.pick([15, 20, 30, row.minutes ?? 10]);
      delete row.low;
      delete row.high;
    }
  }
  const sites = Array.from({ length: draw.whole(0, 6) }, (_, at): Row => {
    if (at > 0 && draw.chance(0.1)) return {};
    const cost = draw.between(0, 150, draw.pick([0, 2]));
    return {
      name: draw.pick([`site cost ${at}`, `007`, "3-16"]),
      ...now(0.7, () => ({ kind: draw.pick(["travel", "access hire", "permit"]) })),
      ...now(0.5, () => ({ quantity: draw.pick([2, 3, 0.5, 0]) })),
      ...now(0.8, () => ({ per: draw.pick(UNITS) })),
      ...now(0.3, () => ({ days: draw.pick([1, 5, 30]) })),
      cost,
      ...now(0.4, () => ({ low: Number((cost * 0.8).toFixed(2)), high: cost + draw.whole(-5, 40) })),
      ...now(0.1, () => ({ low: cost })),
    };
  });
  if (sites.length > 0) job.blocks.sites = sites;
  const rooms = (job.blocks.rooms ?? []).filter(({ outlet }) => outlet !== undefined);
  const places = Array.from({ length: draw.whole(0, 4) }, (): Row => {
    const outlet = rooms.length > 0 ? draw.pick(rooms) : {};
    const floor: Row = outlet.floor === undefined ? {} : { floor: outlet.floor };
    const room: Row = outlet.room === undefined ? {} : { room: outlet.room };
    const shouted: Row = { floor: String(outlet.floor ?? "x").toUpperCase() };
    return {
      ...draw.pick([floor, floor, { ...floor, ...room }, room, shouted, { floor: "cellar" }, {}]),
      ...now(0.95, () => ({ factor: draw.pick([1.2, 1.5, 2, 0.8, 1.35, 12]) })),
    };
  });
  if (places.length > 0) job.blocks.places = places;
}
