/**
 * Head units a second time: Ohm's and Kirchhoff's laws along the path of the supply.
 *
 * Constant current V = Vs - I·R; constant power V = (Vs + √(Vs² - 4·P·R))/2 (help page of LOADVOLTS). Two that share a
 * supply and a lead: what the other takes at its least volts is taken off first (the workbook's About). The longest
 * cable: (Vs - Vmin)/(I·r), or (Vs - V)·V/(P·r) with V the greater of Vmin and Vs/2 (help page of LONGESTRUN).
 */
import { headLevel, keyOf, pathUp, soFar } from "./branches";
import { lossOf, ohmsOf, priceEach, varianceOf } from "./cables";
import {
  corners,
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  isSame,
  named,
  orNought,
  rowsOf,
  sum,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";
import { isFedBy, outletRows, tunersOf } from "./rooms";

const unitOf = (job: Job, head: Row): Row | undefined => named(rowsOf(job, "units"), "name", head.type);
export const headRows = (job: Job): readonly Row[] => filledRows(job, "heads", "id");

/** The row whose supply feeds it: its own, or the one that it shares. */
export function feedOf(job: Job, head: Row): Row | undefined {
  if (!isFilled(head, "shares")) return head;
  const owner = named(rowsOf(job, "heads"), "id", head.shares);
  // One that shares as well has nothing to give.
  return owner && !isFilled(owner, "shares") ? owner : undefined;
}
const supplyOf = (job: Job, head: Row): Row | undefined =>
  named(rowsOf(job, "supplies"), "name", feedOf(job, head)?.supply);

/** Whose supply it is, as it is named, there or not. */
const feedName = (row: Row): Value => (isFilled(row, "shares") ? row.shares! : row.id!);
const sharers = (job: Job, head: Row): Row[] => {
  return headRows(job).filter((row) => isSame(feedName(row), feedName(head)));
};

/** At its least volts. */
const greatestOf = (job: Job, head: Row): number => {
  const unit = unitOf(job, head);
  return unit?.kind === "W" ? figure(unit, "load") / figure(unit, "least") : figure(unit, "load");
};

interface Way {
  readonly via: Value;
  readonly outlet: Row | undefined;
}
/** Where the supply feeds in: nowhere but at the lower end, at a branch, or at an outlet, and so at what feeds that. */
function wayOf(job: Job, head: Row): Way | undefined {
  if (!isFilled(head, "at")) return { via: "", outlet: undefined };
  const branch = named(rowsOf(job, "branches"), "id", head.at);
  if (branch) return { via: branch.id!, outlet: undefined };
  const outlet = named(rowsOf(job, "rooms"), "outlet", head.at);
  if (!outlet) return undefined;
  return { via: outlet.from ?? "", outlet };
}

interface Circuit {
  readonly shared: number;
  readonly offered: number;
  readonly lead: number;
  readonly run: number;
  readonly along: number;
  readonly path: number;
  readonly volts: number;
  readonly current: number;
}
export function circuitOf(job: Job, head: Row): Circuit {
  const unit = unitOf(job, head);
  const feed = feedOf(job, head);
  const shared = feed ? orNought(feed, "common") : NaN;
  const others = sharers(job, head).filter((row) => row !== head);
  const offered =
    figure(supplyOf(job, head), "volts") - shared * sum(others.map((row) => greatestOf(job, row)));
  const way = wayOf(job, head);
  const lead = ohmsOf(job, head.cable, figure(head, "length"));
  const run = way?.outlet ? ohmsOf(job, way.outlet.cable, figure(way.outlet, "run")) : 0;
  const along = way ? (way.via === "" ? 0 : soFar(job, way.via)[4]!) : NaN;
  const path = shared + lead + run + along;
  const load = figure(unit, "load");
  const volts =
    unit?.kind === "W" ? (offered + Math.sqrt(offered ** 2 - 4 * load * path)) / 2 : offered - load * path;
  const works = volts > 0 ? volts : NaN;
  return {
    shared,
    offered,
    lead,
    run,
    along,
    path,
    volts: works,
    current: unit?.kind === "W" ? load / works : load,
  };
}

/** Where the cables of all that share a supply part: what they take at their least volts is lost before. */
const partingOf = (job: Job, head: Row): number =>
  circuitOf(job, head).offered - circuitOf(job, head).shared * greatestOf(job, head);

function longestOf(job: Job, head: Row): number {
  const unit = unitOf(job, head);
  const [supply, least, load] = [partingOf(job, head), figure(unit, "least"), figure(unit, "load")];
  if (supply < least) return NaN;
  const ohmsEach = ohmsOf(job, head.cable, 1);
  if (unit?.kind === "W") {
    const volts = Math.max(least, supply / 2);
    return ((supply - volts) * volts) / (load * ohmsEach);
  }
  return (supply - least) / (load * ohmsEach);
}

export const onHead = (job: Job, head: Row): number =>
  sum(
    outletRows(job)
      .filter((row) => isFedBy(job, row, head))
      .map((row) => orNone(tunersOf(job, row))),
  );

/** What is not known counts as nothing in a sum of many: a check of its own names it. */
const orNone = (value: number): number => (Number.isNaN(value) ? 0 : value);

/** Pieces that this job buys for it. */
export const boughtFor = (job: Job, head: Row): number =>
  isFilled(head, "shares") || supplyOf(job, head)?.by === "a receiver" ? 0 : 1;

/** Devices on the way that pass no power: how many, and the sum of their rows. */
const stopsOf = (job: Job, head: Row): [number, number] => {
  const via = wayOf(job, head)?.via;
  if (via === undefined) return [NaN, NaN];
  if (via === "") return [0, 0];
  const so = soFar(job, via);
  return [so[5]!, so[7]!];
};

export function headUnitsSheet(job: Job): Cells {
  const rows = rowsOf(job, "heads");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "id", of, "");
  const columns = (of: (row: Row) => Value[], width: number): Value[][] =>
    eachRow<Value[]>(
      rows,
      "id",
      of,
      Array.from({ length: width }, () => ""),
    );
  const tolerance = field(job, "site_run_tolerance");
  const bands = (row: Row): number => figure(unitOf(job, row), "bands");
  const least = (row: Row): number => figure(unitOf(job, row), "least");
  const length = (row: Row): number => figure(row, "length");
  const power = (row: Row): Value => {
    const { volts } = circuitOf(job, row);
    // A supply below the least volts is an error, not a word: taken from the formula.
    const supplied = figure(supplyOf(job, row), "volts");
    return Number.isNaN(volts - least(row)) || supplied < least(row)
      ? NaN
      : volts < least(row) - 1e-9
        ? "low"
        : "ok";
  };
  const stopped = (row: Row): Value => {
    const [count, place] = stopsOf(job, row);
    return Number.isNaN(count) || count === 0
      ? ""
      : count > 1
        ? "several"
        : (rowsOf(job, "branches")[place - 2]!.id ?? NaN);
  };
  const wanted = sum(outletRows(job).map((row) => tunersOf(job, row)));
  const most = Math.max(...filledRows(job, "units", "name").map((row) => figure(row, "bands")));
  return {
    heads_tuners: column((row) => onHead(job, row)),
    heads_bands: column(bands),
    heads_spare: column((row) => bands(row) - onHead(job, row)),
    heads_capacity: column((row) =>
      Number.isNaN(bands(row) - onHead(job, row)) ? NaN : onHead(job, row) > bands(row) ? "high" : "ok",
    ),
    heads_volts: column((row) => circuitOf(job, row).volts),
    heads_least: column(least),
    heads_power: column(power),
    heads_stopped: column(stopped),
    heads_longest: column((row) => longestOf(job, row)),
    heads_source: column((row) => feedOf(job, row)?.supply ?? NaN),
    heads_bought: column((row) => boughtFor(job, row)),
    heads_feed: column(feedName),
    heads_shared: column((row) => circuitOf(job, row).shared),
    heads_greatest: column((row) => greatestOf(job, row)),
    heads_offered: column((row) => circuitOf(job, row).offered),
    heads_shared_end: column((row) => partingOf(job, row)),
    heads_supplied: column((row) => figure(supplyOf(job, row), "volts")),
    heads_draw: column((row) => figure(unitOf(job, row), "load")),
    heads_kind: column((row) => unitOf(job, row)?.kind ?? NaN),
    heads_via: column((row) => wayOf(job, row)?.via ?? NaN),
    heads_lead_cable: column((row) => row.cable ?? ""),
    heads_run_cable: column((row) => wayOf(job, row)?.outlet?.cable ?? ""),
    heads_lead_length: column(length),
    heads_run_length: column((row) => wayOf(job, row)?.outlet?.run ?? ""),
    heads_ohms: columns(
      (row) => [circuitOf(job, row).lead, wayOf(job, row)?.outlet ? circuitOf(job, row).run : ""],
      2,
    ),
    heads_along: column((row) => circuitOf(job, row).along),
    heads_path: column((row) => circuitOf(job, row).path),
    heads_stops: column((row) => stopsOf(job, row)[0]),
    heads_place: column((row) => stopsOf(job, row)[1]),
    heads_current: column((row) => circuitOf(job, row).current),
    heads_together: column((row) => sum(sharers(job, row).map((one) => orNone(circuitOf(job, one).current)))),
    heads_amps: column((row) => figure(supplyOf(job, row), "amps")),
    // Nothing is said where the supply feeds in on the way: which legs are on decides.
    heads_legs: column((row) => (isFilled(row, "at") ? "" : partingOf(job, row))),
    heads_lead: columns((row) => corners((corner) => lossOf(job, row.cable, length(row), corner)), 4),
    heads_level: columns((row) => corners((corner) => headLevel(job, row, corner)), 4),
    heads_variance: column((row) =>
      varianceOf(length(row) * (1 - tolerance), length(row) * (1 + tolerance), priceEach(job, row.cable)),
    ),
    heads_type_key: column((row) => keyOf(row.type)),
    heads_supply_key: column((row) => keyOf(row.supply)),
    heads_cable_key: column((row) => keyOf(row.cable)),
    heads_feed_key: column((row) => keyOf(feedName(row))),
    heads_wanted: wanted,
    heads_fewest: Math.ceil(wanted / most),
  };
}
void pathUp;
