import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { ofTheJob } from "./jobTables";
import { keysOf } from "./nameKeys";
import { cables, plates } from "./names/parts";
import { rooms } from "./names/rooms";
import { site } from "./names/site";
import { ALERTS, cableUsed, lesser, ofALevel, verdictOf } from "./rowFormulas";

export const roomsSheet: SheetDefinition = {
  name: "Rooms",
  kind: "input",
  alerts: ALERTS,
  intro: "A row for each outlet. Fill the boxed columns; the others follow.",
  frozenColumns: 3,
  print: { orientation: "landscape", through: "strongest" },
  parts: [
    blockPart(rooms, {
      heading: "Outlets",
      prepared: 30,
      rowName: rooms.outlet,
      formulas: {
        verdict: verdictOf(rooms.outlet, rooms.check.row, [
          rooms.check.level,
          rooms.check.slope,
          rooms.check.noise,
          rooms.check.commands,
          rooms.check.bands,
          rooms.check.connectors,
          rooms.check.applied,
          rooms.check.port,
        ]),
        margin: ofALevel(f`${rooms.weakest}-${site.level_low}`),
        place: ofTheJob("OUTLETPLACES"),
        // Of the corners, and of its own user bands where an equaliser makes another frequency the weakest.
        weakest: ofALevel(
          lesser(
            lesser(f`${rooms.level.low_hot}`, f`${rooms.level.high_hot}`),
            f`IF(${rooms.level.own}="",${rooms.level.low_hot},${rooms.level.own})`,
          ),
        ),
        strongest: ofALevel(
          f`(${rooms.level.low_cold}+${rooms.level.high_cold}+ABS(${rooms.level.low_cold}-${rooms.level.high_cold}))/2`,
        ),
        level: ofTheJob("OUTLETLEVELS"),
        slope: ofALevel(f`${rooms.level.low_hot}-${rooms.level.high_hot}`),
        noise: ofTheJob("OUTLETNOISE"),
        volts: ofTheJob("OUTLETVOLTS"),
        check: ofTheJob("OUTLETCHECKS"),
        stretched_check: ofALevel(f`IF(${rooms.level.stretched}<${site.level_low},"low","ok")`),
        least: f`IF(${rooms.outlet}="","",IF(${rooms.shortest}="",${rooms.run}*(1-${site.run_tolerance}),${rooms.shortest}))`,
        most: f`IF(${rooms.outlet}="","",IF(${rooms.longest}="",${rooms.run}*(1+${site.run_tolerance}),${rooms.longest}))`,
        cable_used: cableUsed(f`${rooms.outlet}=""`, rooms.cable),
        plate_used: f`IF(${rooms.outlet}="","",IF(${rooms.plate}="",IF(${site.usual_plate}="","",${site.usual_plate}),${rooms.plate}))`,
        parts_cost: f`IF(${rooms.outlet}="","",IF(${rooms.plate_used}="",0,INDEX(${plates.price},MATCH(${rooms.plate_used},${plates.name},0)))+${rooms.run}*INDEX(${cables.each},MATCH(${rooms.cable_used},${cables.name},0)))`,
        // Three-point mean (PERT, from memory): (low + 4 likely + high) / 6, less the likely one.
        expected_extra: f`IF(${rooms.outlet}="","",(${rooms.least}+${rooms.most}-2*${rooms.run})/6*INDEX(${cables.each},MATCH(${rooms.cable_used},${cables.name},0)))`,
        // Of the same three points: ((high - low) / 6)².
        variance: f`IF(${rooms.outlet}="","",((${rooms.most}-${rooms.least})/6*INDEX(${cables.each},MATCH(${rooms.cable_used},${cables.name},0)))^2)`,
        from_key: keysOf(rooms.from),
        cable_key: keysOf(rooms.cable_used),
        plate_key: keysOf(rooms.plate_used),
        head_key: keysOf(rooms.place.head),
        split_key: keysOf(rooms.split),
        kind_key: keysOf(rooms.kind),
      },
    }),
  ],
};
