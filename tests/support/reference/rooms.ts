/** Rooms a second time. */
import { headLevel, keyOf, pathUp, portLevel, soFar } from "./branches";
import { lossOf, priceEach, varianceOf } from "./cables";
import {
  corners,
  eachRow,
  field,
  figure,
  isFilled,
  isSame,
  named,
  rowsOf,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";

const ENDS = ["low", "low", "high", "high"] as const;
/** EN 60728-1, from memory: between any two channels at one outlet. */
const MOST_SLOPE_DB = 15;
/** A difference below it counts as none (help page of WINDOW). */
const NOTHING = 1e-9;

const plateOf = (job: Job, room: Row): Row | undefined => named(rowsOf(job, "plates"), "name", room.plate);
export const outletRows = (job: Job): readonly Row[] =>
  rowsOf(job, "rooms").filter((row) => isFilled(row, "outlet"));

export function levelsOf(job: Job, room: Row): number[] {
  const path = pathUp(job, room.from);
  if (!path) return corners(() => NaN);
  return corners((corner) => {
    const first = path.branches[0];
    const source = first ? portLevel(job, first, corner) : headLevel(job, path.head, corner);
    const plate = figure(plateOf(job, room), `loss_${ENDS[corner]!}`);
    return source - lossOf(job, room.cable, figure(room, "run"), corner) - plate;
  });
}

/** Its own figure, or the one of the parts list, each as many times as there are of it. */
export function tunersOf(job: Job, room: Row): number {
  const count = isFilled(room, "quantity") ? figure(room, "quantity") : 1;
  const listed = named(rowsOf(job, "receivers"), "kind", room.receiver);
  if (listed) return figure(listed, "tuners") * count;
  const kind = String(room.receiver ?? "")
    .trim()
    .toLowerCase();
  if (kind === "receiver") return count;
  const recorder = /^recorder, (\d+) tuners?$/.exec(kind);
  return recorder ? Number(recorder[1]) * count : NaN;
}

/** Bands one after another on each head unit, in the order of the rows (help page of USERBANDS). */
export function bandsOf(job: Job): Value[] {
  const taken = new Map<string, number>();
  return rowsOf(job, "rooms").map((room) => {
    if (!isFilled(room, "outlet")) return "";
    const head = pathUp(job, room.from)?.head;
    const tuners = tunersOf(job, room);
    if (!head || Number.isNaN(tuners)) return NaN;
    if (tuners === 0) return "none";
    const first = (taken.get(String(head.id)) ?? 0) + 1;
    const last = first + tuners - 1;
    if (last > 32) return NaN;
    taken.set(String(head.id), last);
    return first === last ? String(first) : `${first}-${last}`;
  });
}

export const leastRun = (job: Job, room: Row): number =>
  isFilled(room, "shortest")
    ? figure(room, "shortest")
    : figure(room, "run") * (1 - field(job, "site_run_tolerance"));
export const mostRun = (job: Job, room: Row): number =>
  isFilled(room, "longest")
    ? figure(room, "longest")
    : figure(room, "run") * (1 + field(job, "site_run_tolerance"));

const isUnder = (value: number, limit: number): boolean => value < limit - NOTHING;

/** low, ok or high. */
export const windowOf = (value: number, least: number, most: number): string =>
  isUnder(value, least) ? "low" : isUnder(most, value) ? "high" : "ok";

/** Hot; between the ends of the band at one temperature. */
export const slopeOf = (levels: readonly number[]): number => levels[1]! - levels[3]!;

/** Whether receivers can command the head unit: nothing on the way may stop what they send. */
export function commandsOf(job: Job, room: Row): Value {
  const path = pathUp(job, room.from);
  if (!path) return "";
  if (path.branches.length === 0) return "ok";
  const [, , , , , stops, , , , forks] = soFar(job, room.from);
  // Of a device that is not known nothing can be said.
  if (Number.isNaN(stops! + forks!)) return "";
  return stops! > 0 ? "dead" : forks! > 0 ? "doubtful" : "ok";
}

/** With every length on the way as long as it may be. */
export function stretchedOf(job: Job, room: Row): number {
  const path = pathUp(job, room.from);
  if (!path) return NaN;
  const trunks = path.branches.length > 0 ? soFar(job, room.from)[8]! : 0;
  const lead =
    lossOf(job, path.head.cable, figure(path.head, "length"), 3) * field(job, "site_run_tolerance");
  const run = lossOf(job, room.cable, mostRun(job, room) - figure(room, "run"), 3);
  return Math.min(...levelsOf(job, room)) - trunks - lead - run;
}

export function roomsSheet(job: Job): Cells {
  const rows = rowsOf(job, "rooms");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "outlet", of, "");
  const columns = (of: (row: Row) => Value[], width: number): Value[][] =>
    eachRow<Value[]>(
      rows,
      "outlet",
      of,
      Array.from({ length: width }, () => ""),
    );
  const [least, greatest] = [field(job, "site_level_low"), field(job, "site_level_high")];
  const weakest = (row: Row): number => Math.min(...levelsOf(job, row));
  const strongest = (row: Row): number => Math.max(...levelsOf(job, row));
  const judged = (value: number, of: () => Value): Value => (Number.isNaN(value) ? NaN : of());
  const fits = (row: Row): Value[] => [
    judged(weakest(row), () => windowOf(weakest(row), least, greatest)),
    judged(strongest(row), () => windowOf(strongest(row), least, greatest)),
  ];
  // Where there is no level, nothing is said of the slope, and the level at the longest lengths is taken to be too low.
  const even = (row: Row): Value => {
    const [lowCold, lowHot, highCold, highHot] = levelsOf(job, row) as [number, number, number, number];
    const slope = Math.max(Math.abs(lowCold - highCold), Math.abs(lowHot - highHot));
    return Number.isNaN(slope) ? "" : isUnder(MOST_SLOPE_DB, slope) ? "steep" : "ok";
  };
  // Of the level alone: the slope has a column of its own.
  const verdict = (row: Row): Value => {
    const [enough, bearable] = fits(row) as [Value, Value];
    return enough === "ok" ? bearable : enough;
  };
  const each = (row: Row): number => priceEach(job, row.cable);
  const run = (row: Row): number => figure(row, "run");
  return {
    rooms_verdict: column(verdict),
    rooms_commands: column((row) => commandsOf(job, row)),
    rooms_margin: column((row) => weakest(row) - least),
    rooms_tuners: column((row) => tunersOf(job, row)),
    rooms_head: column((row) => pathUp(job, row.from)?.head.id ?? NaN),
    rooms_bands: bandsOf(job),
    rooms_weakest: column(weakest),
    rooms_strongest: column(strongest),
    rooms_check: columns(fits, 2),
    rooms_slope: column((row) => slopeOf(levelsOf(job, row))),
    rooms_slope_check: column(even),
    rooms_least: column((row) => leastRun(job, row)),
    rooms_most: column((row) => mostRun(job, row)),
    rooms_stretched: column((row) => stretchedOf(job, row)),
    rooms_stretched_check: column((row) => (stretchedOf(job, row) >= least - NOTHING ? "ok" : "low")),
    rooms_parts_cost: column((row) => run(row) * each(row) + figure(plateOf(job, row), "price")),
    rooms_expected_extra: column(
      (row) => ((leastRun(job, row) + 4 * run(row) + mostRun(job, row)) / 6 - run(row)) * each(row),
    ),
    rooms_variance: column((row) => varianceOf(leastRun(job, row), mostRun(job, row), each(row))),
    rooms_loss: columns((row) => corners((corner) => lossOf(job, row.cable, run(row), corner)), 4),
    rooms_level: columns((row) => levelsOf(job, row), 4),
    rooms_from_key: column((row) => keyOf(row.from)),
    rooms_cable_key: column((row) => keyOf(row.cable)),
    rooms_plate_key: column((row) => keyOf(row.plate)),
    rooms_head_key: column((row) => keyOf(pathUp(job, row.from)?.head.id ?? NaN)),
    rooms_kind_key: column((row) => keyOf(row.kind)),
  };
}

export const isFedBy = (job: Job, room: Row, head: Row): boolean =>
  isSame(pathUp(job, room.from)?.head.id, head.id);
