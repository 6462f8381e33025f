import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { PAIR_TO_CORNERS } from "./corners";
import { keysOf, sumOf } from "./nameKeys";
import { branches } from "./names/branches";
import { heads, headsNeeded } from "./names/headUnits";
import { cables, supplies, units } from "./names/parts";
import { rooms } from "./names/rooms";
import { corner, site } from "./names/site";
import { supplyPath, TYPE } from "./supplyPath";

export const headUnitsSheet: SheetDefinition = {
  name: "Head units",
  kind: "input",
  intro:
    "A row for each head unit: its tuners against its user bands, and its volts at the end of its cable.",
  frozenColumns: 1,
  print: { orientation: "landscape", through: "common" },
  parts: [
    blockPart(heads, {
      heading: "Head units",
      prepared: 6,
      formulas: {
        tuners: f`IF(${heads.id}="","",${sumOf(rooms.tuners, rooms.head_key, heads.id)})`,
        bands: f`IF(${heads.id}="","",INDEX(${units.bands},${TYPE}))`,
        spare: f`IF(${heads.id}="","",${heads.bands}-${heads.tuners})`,
        // A row in error shows its error; in the condition it would spoil the whole column.
        capacity: f`IF(${heads.id}="","",IF(IFERROR(${heads.spare}<0,FALSE),"high",IF(ISERROR(${heads.spare}),${heads.spare},"ok")))`,
        volts: f`RIG.LOADVOLTS(${heads.offered},${heads.draw},${heads.path},${heads.kind})`,
        least: f`IF(${heads.id}="","",INDEX(${units.least},${TYPE}))`,
        power: f`RIG.WINDOW(${heads.volts},${heads.least},${heads.supplied})`,
        // The one branch on the way up that passes no power; several cannot be told apart by a sum.
        stopped: f`IF(${heads.id}="","",IF(IFERROR(${heads.stops}=1,FALSE),INDEX(${branches.id},IFERROR(${heads.place}+(${heads.stops}<>1),1)),IF(IFERROR(${heads.stops}>1,FALSE),"several","")))`,
        longest: f`RIG.LONGESTRUN(${heads.shared_end},${heads.least},${heads.draw},${heads.cable},${heads.kind},INDEX(${corner.temperature},1,4),${site.unit},${cables.table})`,
        source: f`IF(${heads.id}="","",IF(${heads.shares}="",${heads.supply},INDEX(${heads.supply},MATCH(${heads.shares},${heads.id},0))))`,
        // What a receiver feeds needs none.
        bought: f`IF(${heads.id}="","",(${heads.shares}="")*(IFERROR(INDEX(${supplies.by},MATCH(${heads.supply},${supplies.name},0)),"")<>"a receiver"))`,
        feed: f`IF(${heads.id}="","",IF(${heads.shares}="",${heads.id},${heads.shares}))`,
        shared: f`IF(${heads.id}="","",INDEX(${heads.common},MATCH(${heads.feed},${heads.id},0))+0)`,
        // No head unit that has its volts draws more, so a shared lead is never taken too well.
        greatest: f`IF(${heads.id}="","",IF(IFERROR(${heads.kind}="W",FALSE),${heads.draw}/${heads.least},${heads.draw}))`,
        offered: f`IF(${heads.id}="","",${heads.supplied}-${heads.shared}*(${sumOf(heads.greatest, heads.feed_key, heads.feed)}-${heads.greatest}))`,
        shared_end: f`IF(${heads.id}="","",${heads.supplied}-${heads.shared}*${sumOf(heads.greatest, heads.feed_key, heads.feed)})`,
        ...supplyPath,
        lead: f`RIG.CABLELOSS(${heads.cable},${heads.length},${corner.frequency},${corner.temperature},${site.unit},${cables.table})`,
        level: f`IF(${heads.id}="","",INDEX(${units.out},${TYPE},${PAIR_TO_CORNERS})-${heads.lead})`,
        variance: f`IF(${heads.id}="","",(${heads.length}*${site.run_tolerance}/3*INDEX(${cables.each},MATCH(${heads.cable},${cables.name},0)))^2)`,
        type_key: keysOf(heads.type),
        supply_key: keysOf(heads.supply),
        cable_key: keysOf(heads.cable),
        feed_key: keysOf(heads.feed),
      },
      others: { supply: { required: f`(${heads.shares}="")` } },
    }),
    fieldsPart("Head units needed", [
      worked(headsNeeded.wanted, f`SUM(${rooms.tuners})`),
      worked(
        headsNeeded.fewest,
        f`IF(MAX(${units.bands})=0,"",ROUNDUP(${headsNeeded.wanted}/MAX(${units.bands}),0))`,
      ),
    ]),
  ],
};
