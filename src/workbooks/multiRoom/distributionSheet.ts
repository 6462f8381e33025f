import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { ofTheJob } from "./jobTables";
import { keysOf } from "./nameKeys";
import { branches } from "./names/branches";
import { cables, passives } from "./names/parts";
import { ALERTS, cableUsed, verdictOf } from "./rowFormulas";
import { site } from "./names/site";

export const distributionSheet: SheetDefinition = {
  name: "Distribution",
  kind: "input",
  alerts: ALERTS,
  intro:
    "A row for each splitter, tap, amplifier, filter or inserter between head units and outlets: what feeds it, by which cable, and the level at its ports.",
  frozenColumns: 2,
  print: { orientation: "landscape", through: "level" },
  parts: [
    blockPart(branches, {
      heading: "Devices",
      prepared: 10,
      formulas: {
        verdict: verdictOf(branches.id, branches.check.row, [
          branches.check.power,
          branches.check.current,
          branches.check.output,
          branches.check.port,
        ]),
        level: ofTheJob("DEVICELEVELS"),
        check: ofTheJob("DEVICECHECKS"),
        // An inserter stands among the supplies and has one port.
        ways: f`IF(${branches.id}="","",IFERROR(INDEX(${passives.ways},MATCH(${branches.device},${passives.name},0)),1))`,
        cable_used: cableUsed(f`(${branches.id}="")+(${branches.length}="")>0`, branches.cable),
        variance: f`IF(${branches.id}="","",IF(${branches.length}="",0,(${branches.length}*${site.run_tolerance}/3*INDEX(${cables.each},MATCH(${branches.cable_used},${cables.name},0)))^2))`,
        from_key: keysOf(branches.from),
        device_key: keysOf(branches.device),
        cable_key: keysOf(branches.cable_used),
      },
    }),
  ],
};
