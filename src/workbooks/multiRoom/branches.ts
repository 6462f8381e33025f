import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { ALL_CORNERS, PAIR_TO_CORNERS } from "./corners";
import { countOf, keysOf } from "./nameKeys";
import { branches } from "./names/branches";
import { heads } from "./names/headUnits";
import { cables, passives } from "./names/parts";
import { rooms } from "./names/rooms";
import { corner, site } from "./names/site";

const DEVICE = f`MATCH(${branches.device},${passives.name},0)`;

export const branchesSheet: SheetDefinition = {
  name: "Branches",
  kind: "input",
  intro:
    "A row for each splitter or tap: what feeds it, through how much trunk cable, and the level at its ports.",
  frozenColumns: 1,
  print: { orientation: "landscape", through: "ways" },
  parts: [
    blockPart(branches, {
      heading: "Branches",
      prepared: 10,
      formulas: {
        head: f`RIG.TREEROOT(${branches.id},${branches.from},${heads.id})`,
        level: f`IF(${branches.id}="","",INDEX(${heads.level},MATCH(${branches.head},${heads.id},0),${ALL_CORNERS})-${branches.loss_corners}+INDEX(${passives.pass},${DEVICE},${PAIR_TO_CORNERS})-INDEX(${passives.port},${DEVICE},${PAIR_TO_CORNERS}))`,
        power: f`IF(${branches.id}="","",INDEX(${passives.power},${DEVICE}))`,
        // A tap's line on to the next branch is not one of its ports.
        fed: f`IF(${branches.id}="","",${countOf(rooms.from_key, branches.id)}+${countOf(branches.from_key, branches.id)}*(INDEX(${passives.kind},${DEVICE})="splitter"))`,
        ways: f`IF(${branches.id}="","",INDEX(${passives.ways},${DEVICE}))`,
        trunk: f`RIG.CABLELOSS(${branches.cable},${branches.length},${corner.frequency},${corner.temperature},${site.unit},${cables.table})`,
        own: f`IF(${branches.id}="","",${branches.trunk}+INDEX(${passives.pass},${DEVICE},${PAIR_TO_CORNERS}))`,
        ohms: f`RIG.LOOPOHMS(${branches.cable},${branches.length},INDEX(${corner.temperature},1,4),${site.unit},${cables.table})`,
        stops: f`IF(${branches.id}="","",(INDEX(${passives.power},${DEVICE})="no")*1)`,
        ones: f`IF(${branches.id}="","",(INDEX(${passives.power},${DEVICE})="one port")*1)`,
        // With one such device on a path, the sum of these along it is that device's row.
        place: f`IF(${branches.id}="","",${branches.stops}*MATCH(${branches.id},${branches.id},0))`,
        stretch: f`IF(${branches.id}="","",${branches.trunk.high_hot}*${site.run_tolerance})`,
        // Which of its ports passes power is not known: of several that are used, at most one.
        forks: f`IF(${branches.id}="","",${branches.ones}*(${countOf(rooms.from_key, branches.id)}+${countOf(branches.from_key, branches.id)}>1))`,
        loss: f`RIG.TREELOSS(${branches.id},${branches.from},${branches.sum},${heads.id})`,
        variance: f`IF(${branches.id}="","",(${branches.length}*${site.run_tolerance}/3*INDEX(${cables.each},MATCH(${branches.cable},${cables.name},0)))^2)`,
        from_key: keysOf(branches.from),
        device_key: keysOf(branches.device),
        cable_key: keysOf(branches.cable),
      },
    }),
  ],
};
