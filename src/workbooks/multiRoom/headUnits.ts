import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { ofTheJob } from "./jobTables";
import { keysOf } from "./nameKeys";
import { heads, headsNeeded } from "./names/headUnits";
import { cables, units } from "./names/parts";
import { rooms } from "./names/rooms";
import { site } from "./names/site";
import { ALERTS, cableUsed, verdictOf } from "./rowFormulas";

export const headUnitsSheet: SheetDefinition = {
  name: "Head units",
  kind: "input",
  alerts: ALERTS,
  intro:
    "A row for each head unit: its dish, its supply, its tuners against its user bands, and the volts that reach it with all receivers off, one on alone, and all on.",
  frozenColumns: 1,
  print: { orientation: "landscape", through: "fed_tuners" },
  parts: [
    blockPart(heads, {
      heading: "Head units",
      prepared: 6,
      formulas: {
        verdict: verdictOf(heads.id, heads.check.row, [
          heads.check.power,
          heads.check.current,
          heads.check.input,
          heads.check.feed,
          heads.check.supply,
        ]),
        fed: ofTheJob("HEADVOLTS"),
        least: f`IF(${heads.id}="","",INDEX(${units.least},MATCH(${heads.type},${units.name},0)))`,
        spare: f`IF(${heads.fed.bands}="","",${heads.fed.bands}-${heads.fed.tuners})`,
        check: ofTheJob("HEADCHECKS"),
        cable_used: cableUsed(f`(${heads.id}="")+(${heads.length}="")>0`, heads.cable),
        variance: f`IF(${heads.id}="","",IF(${heads.length}="",0,(${heads.length}*${site.run_tolerance}/3*INDEX(${cables.each},MATCH(${heads.cable_used},${cables.name},0)))^2))`,
        type_key: keysOf(heads.type),
        supply_key: keysOf(heads.supply),
        cable_key: keysOf(heads.cable_used),
      },
    }),
    fieldsPart("Head units needed", [
      worked(headsNeeded.wanted, f`SUM(${rooms.place.tuners})`),
      worked(
        headsNeeded.fewest,
        f`IF(MAX(${units.bands})=0,"",ROUNDUP(${headsNeeded.wanted}/MAX(${units.bands}),0))`,
      ),
    ]),
  ],
};
