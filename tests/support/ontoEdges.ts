/** Figures that lie on a limit to the last digit: what is just allowed, and just not. */
import type { Drawn, GeneratedJob, Row } from "./drawn";
import { onHead } from "./reference/headUnits";
import { isFilled, isSame } from "./reference/job";

export function ontoEdges(draw: Drawn, job: GeneratedJob): void {
  const { fields, blocks } = job;
  const some = (block: string, change: (row: Row) => void): void => {
    for (const row of blocks[block] ?? []) if (Object.keys(row).length > 0 && draw.chance(0.25)) change(row);
  };
  const [date, until] = [Number(fields.site_date), Number(fields.site_until)];
  for (const block of ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"])
    some(block, (row) => {
      row.priced = date;
      row.until = draw.pick([date, until, until + 1, until - 1]);
    });
  some("rooms", (row) => Object.assign(row, { shortest: row.run, longest: row.run }));
  some("labour", (row) => Object.assign(row, { low: row.minutes, high: row.minutes }));
  some("plates", (row) => (row.loss_high = row.loss_low!));
  some("passives", (row) => {
    if (row.kind === "tap") Object.assign(row, { through_low: row.port_low, through_high: row.port_high });
  });
  // As many bands as tuners; as many amperes as are drawn; no volts to spare.
  some("heads", (head) => {
    const unit = blocks.units!.find(({ name }) => isSame(name, head.type))!;
    const supply = blocks.supplies!.find(({ name }) => isSame(name, head.supply));
    const tuners = onHead(job, head);
    if (tuners > 0 && tuners <= 32 && !isFilled(unit, "plan")) unit.bands = tuners;
    if (unit.kind === "A" && supply && draw.chance(0.5)) supply.amps = unit.load!;
    if (isFilled(head, "supply") && supply && draw.chance(0.2)) supply.volts = unit.least!;
  });
  fields.site_level_design = fields.site_level_low!;
  if (draw.chance(0.3)) fields.site_until = date + 1;
}
