/** Commissioning a second time; what Diagnosis makes of the readings is its own (tests/engine/diagnosis) and is read here. */
import { eachRow, field, isFilled, rowsOf, type Cells, type Job, type Row, type Value } from "./job";
import { levelsOf, shown } from "./rooms";
import { answersOf } from "./tablesOf";

/** A meter that finds nothing was read: off, but by no figure. */
const NO_SIGNAL = "no signal";

/** At an outlet, all receivers unplugged, supply on. */
const voltsDue = (job: Job, room: Row): Value =>
  shown(answersOf(job).OUTLETVOLTS[rowsOf(job, "rooms").indexOf(room)]?.[4]);
const placeOf = (job: Job, room: Row) =>
  answersOf(job).OUTLETPLACES[rowsOf(job, "rooms").indexOf(room)] ?? [];

/** How far a reading lies outside its range; nothing where it is not read. */
function outside(reading: Value | undefined, least: number, most: number): Value {
  if ((reading ?? "") === "") return "";
  if (reading === NO_SIGNAL || Number.isNaN(least + most)) return "";
  const level = Number(reading);
  return level < least ? level - least : level > most ? level - most : 0;
}

export function commissioningSheet(job: Job): Cells {
  const rows = rowsOf(job, "rooms");
  const column = (of: (row: Row, index: number) => Value): Value[] => eachRow<Value>(rows, "outlet", of, "");
  const least = (row: Row, end: number): number => Math.min(...levelsOf(job, row).slice(end, end + 2));
  const most = (row: Row, end: number): number => Math.max(...levelsOf(job, row).slice(end, end + 2));
  const lowOff = (row: Row): Value => outside(row.built_low, least(row, 0), most(row, 0));
  const highOff = (row: Row): Value => outside(row.built_high, least(row, 2), most(row, 2));
  const voltsOff = (row: Row): Value => {
    const due = voltsDue(job, row);
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
    // Nothing is due at an outlet whose row is bad.
    if (Number.isNaN(least(row, 0))) return "look";
    const tolerance = field(job, "commission_tolerance");
    return isOff(lowOff(row), tolerance) ||
      isOff(highOff(row), tolerance) ||
      isOff(voltsOff(row), field(job, "commission_volts_tolerance"))
      ? "look"
      : "ok";
  };
  const known = (level: number): Value => (Number.isNaN(level) ? "" : level);
  return {
    commission_outlet: column((row) => row.outlet!),
    commission_floor: column((row) => row.floor ?? ""),
    commission_room: column((row) => row.room ?? ""),
    commission_head: column((row) => shown(placeOf(job, row)[0])),
    commission_bands: column((row) => shown(placeOf(job, row)[3])),
    commission_centres: column((row) => shown(placeOf(job, row)[4])),
    commission_low_from: column((row) => known(least(row, 0))),
    commission_low_to: column((row) => known(most(row, 0))),
    commission_low: column((row) => row.built_low ?? ""),
    commission_high_from: column((row) => known(least(row, 2))),
    commission_high_to: column((row) => known(most(row, 2))),
    commission_high: column((row) => row.built_high ?? ""),
    commission_volts_due: column((row) => voltsDue(job, row)),
    commission_volts: column((row) => row.built_volts ?? ""),
    commission_verdict: column(verdict),
    commission_low_off: column(lowOff),
    commission_high_off: column(highOff),
    commission_volts_off: column(voltsOff),
    commission_due_low: column((row) => known((least(row, 0) + most(row, 0)) / 2)),
    commission_due_high: column((row) => known((least(row, 2) + most(row, 2)) / 2)),
  };
}
