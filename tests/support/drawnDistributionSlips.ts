/** What is done wrong on purpose in drawn distributions: one slip a job, at a row of its own. */
import type { Drawn, Row } from "./drawn";
import type { Writable } from "./drawnDistribution";

const filled = (rows: readonly Row[], key: string): Row[] => rows.filter((row) => (row[key] ?? "") !== "");

const SLIPS: Readonly<Record<string, (draw: Drawn, tables: Writable) => void>> = {
  "an outlet fed from nothing known": (draw, { outlets }) => {
    draw.pick(filled(outlets, "outlet")).fed_from = "nobody";
  },
  "a device of an unknown part": (draw, { devices }) => {
    const rows = filled(devices, "device");
    if (rows.length > 0) draw.pick(rows).part = "no such part";
  },
  "a port beyond the ways": (draw, { outlets, outlet_details }) => {
    const row = draw.pick(filled(outlets, "outlet"));
    outlet_details[outlets.indexOf(row)]!.port = 40;
  },
  "a plate of an unknown name": (draw, { outlets }) => {
    draw.pick(filled(outlets, "outlet")).plate = "no such plate";
  },
  "a head unit of an unknown kind": (draw, { head_units }) => {
    draw.pick(filled(head_units, "head")).kind = "no such kind";
  },
  "a run left out": (draw, { outlets }) => {
    delete draw.pick(filled(outlets, "outlet")).run;
  },
  "a receiver of no known kind": (draw, { outlets }) => {
    draw.pick(filled(outlets, "outlet")).receiver = "wireless";
  },
  "a cable of no known name": (draw, { outlets, devices }) => {
    draw.pick([...filled(outlets, "outlet"), ...filled(devices, "length")]).cable = "washing line";
  },
  "a name given twice": (draw, { outlets, devices }) => {
    const rows = filled(outlets, "outlet");
    const [a, b] = draw.shuffled(rows);
    if (b && draw.chance(0.5)) b.outlet = a!.outlet!;
    else if (filled(devices, "device").length > 0) a!.outlet = draw.pick(filled(devices, "device")).device!;
  },
  "a figure left out of a part": (draw, tables) => {
    const [table, figures] = draw.pick([
      ["device_parts", ["port_high", "ways", "through_low", "gain_high"]],
      ["plates", ["port_low", "through_high"]],
      ["supplies", ["volts"]],
      ["head_unit_kinds", ["out_low", "load", "least_volts"]],
    ] as const);
    const figure = draw.pick<string>(figures);
    const rows = filled(tables[table], figure);
    if (rows.length > 0) delete draw.pick(rows)[figure];
  },
  "a supply of no known name": (draw, { head_units }) => {
    draw.pick(filled(head_units, "head")).supply = "dynamo";
  },
  "devices fed from each other": (draw, { devices }) => {
    const rows = filled(devices, "device");
    if (rows.length < 2) return;
    const [a, b] = draw.shuffled(rows) as [Row, Row];
    a.fed_from = b.device!;
    b.fed_from = a.device!;
    delete a.port;
    delete b.port;
  },
  "two receivers at one connector": (draw, { outlets, outlet_details }) => {
    const row = draw.pick(filled(outlets, "outlet"));
    if (row.receiver !== undefined) row.how_many = 2;
    delete outlet_details[outlets.indexOf(row)]!.split_by;
    delete outlet_details[outlets.indexOf(row)]!.kept;
  },
  "a band kept that is none of the plan": (draw, { outlets, outlet_details }) => {
    const row = draw.pick(filled(outlets, "receiver"));
    outlet_details[outlets.indexOf(row)]!.kept = 31;
  },
  "an inserter and splitters open to receivers": (_, { supplies, device_parts }) => {
    for (const row of supplies) if (row.stands !== "at the head unit") row.other_side = "all ports";
    for (const row of device_parts) if (row.kind !== "tap") row.power = "all ports";
  },
  "a receiver of another control standard": (draw, { outlets, receivers, outlet_details }) => {
    const row = draw.pick(filled(outlets, "outlet"));
    row.receiver = draw.pick(filled(receivers, "kind")).kind!;
    delete outlet_details[outlets.indexOf(row)]!.kept;
  },
  "supplies of unequal volts against each other": (draw, { supplies, device_parts }) => {
    for (const row of supplies) if (row.stands !== "at the head unit") row.other_side = "all ports";
    for (const row of supplies) row.volts = draw.pick([18, 22, 24]);
    for (const row of device_parts) if (row.kind === "splitter") row.power = "all ports";
  },
  // A feed has no more outputs than are asked of it; a switch may be asked for more.
  "too few or too many cables in a feeder": (draw, { feeders, head_units }) => {
    const rows = filled(feeders, "to");
    if (rows.length === 0) return;
    const row = draw.pick(rows);
    row.how_many = head_units.some(({ head }) => head === row.from) ? draw.pick([1, 3, 5]) : 1;
  },
  "no supply": (_, { head_units }) => head_units.forEach((row) => delete row.supply),
};

export function slipsIntoTables(draw: Drawn, tables: Writable): string[] {
  if (filled(tables.outlets, "outlet").length === 0) return [];
  const name = draw.pick(Object.keys(SLIPS));
  SLIPS[name]!(draw, tables);
  return [name];
}
