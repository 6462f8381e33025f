/** Commissioning a second time; what Diagnosis makes of the readings is its own (tests/engine/diagnosis) and is read here. */
import { pathUp, soFar } from "./branches";
import { headUnitsSheet } from "./headUnits";
import { eachRow, field, isFilled, rowsOf, type Cells, type Job, type Row, type Value } from "./job";
import { bandsOf, levelsOf } from "./rooms";

/** A meter that finds nothing was read: off, but by no figure. */
const NO_SIGNAL = "no signal";

/** At an outlet, its receiver unplugged: nothing behind a device that passes nothing; unsaid behind one at one port. */
function voltsDue(job: Job, room: Row, legs: readonly Value[]): Value {
  const path = pathUp(job, room.from);
  if (!path) return NaN;
  const so = path.branches.length > 0 ? soFar(job, room.from) : undefined;
  if (so && so[5]! > 0) return 0;
  if (so && so[6]! > 0) return "";
  return legs[rowsOf(job, "heads").indexOf(path.head)] ?? NaN;
}

/** How far a reading lies outside its range; nothing where it is not read. */
function outside(reading: Value | undefined, least: number, most: number): Value {
  if ((reading ?? "") === "") return "";
  if (reading === NO_SIGNAL) return "";
  const level = Number(reading);
  if (Number.isNaN(least + most)) return NaN;
  return level < least ? level - least : level > most ? level - most : 0;
}

export function commissioningSheet(job: Job): Cells {
  const rows = rowsOf(job, "rooms");
  const column = (of: (row: Row, index: number) => Value): Value[] => eachRow<Value>(rows, "outlet", of, "");
  const legs = headUnitsSheet(job).heads_legs as readonly Value[];
  const bands = bandsOf(job);
  const least = (row: Row, end: number): number => Math.min(...levelsOf(job, row).slice(end, end + 2));
  const most = (row: Row, end: number): number => Math.max(...levelsOf(job, row).slice(end, end + 2));
  const lowOff = (row: Row): Value => outside(row.built_low, least(row, 0), most(row, 0));
  const highOff = (row: Row): Value => outside(row.built_high, least(row, 2), most(row, 2));
  const voltsOff = (row: Row): Value => {
    const due = voltsDue(job, row, legs);
    return isFilled(row, "built_volts") && due !== "" && !Number.isNaN(due)
      ? Number(row.built_volts) - Number(due)
      : "";
  };
  const isOff = (off: Value, limit: number): boolean =>
    off !== "" && !(Math.abs(Number(off)) <= limit + 1e-9);
  const verdict = (row: Row): Value => {
    // Both ends belong to a reading: taken from the formula.
    if (!isFilled(row, "built_low") || !isFilled(row, "built_high")) return "to measure";
    if (row.built_low === NO_SIGNAL || row.built_high === NO_SIGNAL) return "look";
    const tolerance = field(job, "commission_tolerance");
    return isOff(lowOff(row), tolerance) ||
      isOff(highOff(row), tolerance) ||
      isOff(voltsOff(row), field(job, "commission_volts_tolerance"))
      ? "look"
      : "ok";
  };
  return {
    commission_outlet: column((row) => row.outlet!),
    commission_floor: column((row) => row.floor ?? ""),
    commission_room: column((row) => row.room ?? ""),
    commission_head: column((row) => pathUp(job, row.from)?.head.id ?? NaN),
    commission_bands: column((_, index) => bands[index]!),
    commission_low_from: column((row) => least(row, 0)),
    commission_low_to: column((row) => most(row, 0)),
    commission_low: column((row) => row.built_low ?? ""),
    commission_high_from: column((row) => least(row, 2)),
    commission_high_to: column((row) => most(row, 2)),
    commission_high: column((row) => row.built_high ?? ""),
    commission_volts_due: column((row) => voltsDue(job, row, legs)),
    commission_volts: column((row) => row.built_volts ?? ""),
    commission_verdict: column(verdict),
    commission_low_off: column(lowOff),
    commission_high_off: column(highOff),
    commission_volts_off: column(voltsOff),
    commission_due_low: column((row) => (least(row, 0) + most(row, 0)) / 2),
    commission_due_high: column((row) => (least(row, 2) + most(row, 2)) / 2),
  };
}
