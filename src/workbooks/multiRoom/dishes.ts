import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { ofTheJob } from "./jobTables";
import { keysOf } from "./nameKeys";
import { dishes, feeders } from "./names/dishes";
import { cables } from "./names/parts";
import { site } from "./names/site";
import { ALERTS, cableUsed, verdictOf } from "./rowFormulas";

export const dishesSheet: SheetDefinition = {
  name: "Dishes",
  kind: "input",
  alerts: ALERTS,
  intro:
    "A row for each dish, and one for each bundle of like cables to a switch. With no row there is one dish, of Site's size, for all its slots.",
  print: { orientation: "landscape", through: "verdict" },
  parts: [
    blockPart(dishes, {
      heading: "Dishes",
      prepared: 4,
      formulas: {
        verdict: verdictOf(dishes.name, dishes.seen.row, []),
        seen: ofTheJob("DISHCHECKS"),
        feed_key: keysOf(dishes.feed),
        part_key: keysOf(dishes.part),
      },
    }),
    blockPart(feeders, {
      heading: "Feeders, to head units that do not sit on a dish",
      prepared: 4,
      formulas: {
        verdict: verdictOf(feeders.from, feeders.check.row, []),
        check: ofTheJob("FEEDERCHECKS"),
        cable_used: cableUsed(f`${feeders.from}=""`, feeders.cable),
        together: f`IF(${feeders.from}="","",${feeders.check.cables}*${feeders.length})`,
        variance: f`IF(${feeders.from}="","",(${feeders.together}*${site.run_tolerance}/3*INDEX(${cables.each},MATCH(${feeders.cable_used},${cables.name},0)))^2)`,
        cable_key: keysOf(feeders.cable_used),
      },
    }),
    {
      kind: "text",
      heading: "Caution",
      lines: [
        "Roofs and ladders: safe footing, fall protection, a second person; keep mast, dish and ladder well clear of overhead lines; stop in wind and lightning.",
        "Each dish and mast is bonded by the local code and licensed practice: list its conductors on Bonding.",
      ],
    },
  ],
};
