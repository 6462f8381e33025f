import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { ALL_CORNERS, PAIR_TO_CORNERS } from "./corners";
import { keysOf } from "./nameKeys";
import { branches } from "./names/branches";
import { heads } from "./names/headUnits";
import { cables, plates, receivers } from "./names/parts";
import { rooms } from "./names/rooms";
import { corner, site } from "./names/site";

/** Where an outlet's feed stands among the branches; an error for one that hangs on a head unit. */
export const AT_BRANCH = f`MATCH(${rooms.from},${branches.id},0)`;
const AT_HEAD = f`MATCH(${rooms.from},${heads.id},0)`;

/** Between channels at one outlet, in dB: EN 60728-1, from memory. */
export const GREATEST_SLOPE = 15;

export const roomsSheet: SheetDefinition = {
  name: "Rooms",
  kind: "input",
  intro: "A row for each outlet. Fill the boxed columns; the others follow.",
  frozenColumns: 3,
  print: { orientation: "landscape", through: "note" },
  parts: [
    blockPart(rooms, {
      heading: "Outlets",
      prepared: 30,
      rowName: rooms.outlet,
      formulas: {
        verdict: f`IF(${rooms.outlet}="","",IF(IFERROR(${rooms.check.low}="ok",FALSE),${rooms.check.high},${rooms.check.low}))`,
        // A receiver commands the head unit with volts and a tone over this path (EN 50494, EN 50607).
        commands: f`IF(${rooms.outlet}="","",IF(IFERROR(INDEX(${branches.loss.stops},${AT_BRANCH})>0,FALSE),"dead",IF(IFERROR(INDEX(${branches.loss.forks},${AT_BRANCH})>0,FALSE),"doubtful",IF(ISTEXT(${rooms.head})*(ISERROR(MATCH(${rooms.from},${branches.id},0))+ISNUMBER(INDEX(${branches.loss.stops},${AT_BRANCH}))),"ok",""))))`,
        margin: f`IF(${rooms.outlet}="","",${rooms.weakest}-${site.level_low})`,
        tuners: f`RIG.TUNERCOUNT(${rooms.receiver},${rooms.quantity},${receivers.table})`,
        head: f`IF(${rooms.outlet}="","",IFERROR(INDEX(${branches.head},${AT_BRANCH}),INDEX(${heads.id},${AT_HEAD})))`,
        bands: f`RIG.USERBANDS(${rooms.head},${rooms.tuners})`,
        // The lesser of two as (a + b - |a - b|) / 2: an error in a condition would spoil the whole column.
        weakest: f`IF(${rooms.outlet}="","",(${rooms.level.low_hot}+${rooms.level.high_hot}-ABS(${rooms.level.low_hot}-${rooms.level.high_hot}))/2)`,
        strongest: f`IF(${rooms.outlet}="","",(${rooms.level.low_cold}+${rooms.level.high_cold}+ABS(${rooms.level.low_cold}-${rooms.level.high_cold}))/2)`,
        check: f`RIG.WINDOW(${rooms.extremes},${site.level_low},${site.level_high})`,
        slope: f`IF(${rooms.outlet}="","",${rooms.level.low_hot}-${rooms.level.high_hot})`,
        // Of what one outlet gets at one time: hot and cold each by themselves.
        slope_check: f`IF(${rooms.outlet}="","",IF(IFERROR((ABS(${rooms.slope})>${GREATEST_SLOPE})+(ABS(${rooms.level.low_cold}-${rooms.level.high_cold})>${GREATEST_SLOPE})>0,FALSE),"steep",IF(ISERROR(${rooms.slope}),"","ok")))`,
        least: f`IF(${rooms.outlet}="","",IF(${rooms.shortest}="",${rooms.run}*(1-${site.run_tolerance}),${rooms.shortest}))`,
        most: f`IF(${rooms.outlet}="","",IF(${rooms.longest}="",${rooms.run}*(1+${site.run_tolerance}),${rooms.longest}))`,
        // Loss is proportional to length; the high end in heat loses most, so this is never too hopeful.
        stretched: f`IF(${rooms.outlet}="","",${rooms.weakest}-${rooms.loss.high_hot}/(${rooms.run}+(${rooms.run}=0))*(${rooms.most}-${rooms.run})-IFERROR(INDEX(${branches.loss.stretch},${AT_BRANCH}),0)-INDEX(${heads.lead.high_hot},MATCH(${rooms.head},${heads.id},0))*${site.run_tolerance})`,
        stretched_check: f`IF(${rooms.outlet}="","",IF(IFERROR(${rooms.stretched}<${site.level_low},TRUE),"low","ok"))`,
        parts_cost: f`IF(${rooms.outlet}="","",INDEX(${plates.price},MATCH(${rooms.plate},${plates.name},0))+${rooms.run}*INDEX(${cables.each},MATCH(${rooms.cable},${cables.name},0)))`,
        // Three-point mean (PERT, from memory): (low + 4 likely + high) / 6, less the likely one.
        expected_extra: f`IF(${rooms.outlet}="","",(${rooms.least}+${rooms.most}-2*${rooms.run})/6*INDEX(${cables.each},MATCH(${rooms.cable},${cables.name},0)))`,
        // Of the same three points: ((high - low) / 6)².
        variance: f`IF(${rooms.outlet}="","",((${rooms.most}-${rooms.least})/6*INDEX(${cables.each},MATCH(${rooms.cable},${cables.name},0)))^2)`,
        loss: f`RIG.CABLELOSS(${rooms.cable},${rooms.run},${corner.frequency},${corner.temperature},${site.unit},${cables.table})`,
        level: f`IF(${rooms.outlet}="","",IFERROR(INDEX(${branches.level},${AT_BRANCH},${ALL_CORNERS}),INDEX(${heads.level},${AT_HEAD},${ALL_CORNERS}))-${rooms.loss}-INDEX(${plates.loss},MATCH(${rooms.plate},${plates.name},0),${PAIR_TO_CORNERS}))`,
        from_key: keysOf(rooms.from),
        cable_key: keysOf(rooms.cable),
        plate_key: keysOf(rooms.plate),
        head_key: keysOf(rooms.head),
        kind_key: keysOf(rooms.kind),
      },
    }),
  ],
};
