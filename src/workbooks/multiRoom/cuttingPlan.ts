/** For crew and buyer: which run is cut from which reel, and what is left; the same packing as the reels on Materials. */
import { call, f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, gridPart } from "../parts";
import { CUTTING } from "./materials";
import { keysOf, sought, sumOf } from "./nameKeys";
import { branches } from "./names/branches";
import { cablesCut, cutplan, cutting } from "./names/cuttingPlan";
import { feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { cablesBought } from "./names/materials";
import { cables } from "./names/parts";
import { rooms } from "./names/rooms";
import { rests, site } from "./names/site";

const ofEachCable = (formula: Formula): Formula => f`IF(${cables.name}="","",${formula})`;
const inPlan = (column: Named): Formula => call("SUMIFS", column, cutplan.cable_key, sought(cables.name));
/** 1, 2, 3 … in the rows of a block, none in its thin rows. */
const linesOf = (rows: Named): Formula =>
  f`IF((ROW(${rows})=MIN(ROW(${rows})))+(ROW(${rows})=MAX(ROW(${rows})))>0,"",ROW(${rows})-MIN(ROW(${rows})))`;

/** What could be cut of the reels in stock, if cable had no ends. */
const inStock = sumOf(rests.length, rests.key, cables.name);
const toBuy = f`ROUNDUP(ROUND((${cablesCut.used}-${inStock})/${cables.reel},9),0)`;

export const cuttingPlanSheet: SheetDefinition = {
  name: "Cutting plan",
  kind: "print",
  alerts: ["not planned"],
  intro: "Which run is cut from which reel, for crew and buyer: the reels that Materials buys.",
  print: { orientation: "portrait", through: "left", repeatHeads: true },
  parts: [
    blockPart(cablesCut, {
      heading: "Each cable",
      prepared: 6,
      mirrors: cables,
      formulas: {
        cable: ofEachCable(f`${cables.name}`),
        bought: ofEachCable(f`${cablesBought.quantity}`),
        least: ofEachCable(f`IF(${toBuy}<0,0,${toBuy})`),
        share: ofEachCable(
          f`IF(${cablesCut.used}+${cablesCut.left}=0,"",${cablesCut.left}/(${cablesCut.used}+${cablesCut.left}))`,
        ),
        remark: ofEachCable(
          f`IF(ISERROR(${cablesCut.bought}),"a run cannot be planned",IF(IFERROR(${cablesCut.bought}=${cablesCut.least},FALSE),IF(${cablesCut.pieces}=0,"none is needed","no fewer reels are possible"),"runs are not joined: length alone would need fewer"))`,
        ),
        pieces: ofEachCable(inPlan(cutplan.plan.pieces)),
        used: ofEachCable(inPlan(cutplan.plan.used)),
        left: ofEachCable(inPlan(cutplan.plan.left)),
      },
    }),
    gridPart(
      "How the lengths came about",
      [""],
      [
        [cutting.at, [f`IF(${site.cut_at}="","likely",${site.cut_at})`]],
        [cutting.tolerance, [f`IF(${site.cut_at}="longest",0+${site.run_tolerance},0)`]],
        [cutting.slack, [f`0+${site.slack}`]],
        [cutting.waste, [f`0+${site.waste}`]],
        [cutting.spare, [f`0+${site.spare_runs}`]],
        [cutting.spare_least, [f`0+${site.spare_runs_least}`]],
      ],
    ),
    {
      kind: "text",
      heading: "How to read it",
      lines: [
        "Cut = (length of the run + slack of both ends together) × (1 + waste). A run may have a longest length of its own on Rooms.",
        "From each reel the longest is cut first: what a run does not take is then still of use for the next (common practice, no source).",
        "Reels in stock come first and are not bought. A reel with many cuts goes on in the line below, without its figures.",
        "Runs are not joined. Lengths are as planned, not as found: measure before a cut that leaves little.",
      ],
    },
    blockPart(cutplan, {
      heading: "Each reel",
      prepared: 30,
      mirrors: rooms,
      formulas: {
        plan: call(
          "RIG.CUTPLAN",
          ...[linesOf(rooms.outlet), cables.name, cables.reel, rooms.run_used, rooms.cable_used],
          ...[site.slack, site.waste, rooms.outlet],
          ...[branches.length, branches.cable_used, branches.id],
          ...[heads.length, heads.cable_used, heads.id],
          ...[feeders.length, feeders.cable_used, feeders.check.cables, feeders.from, feeders.to],
          ...CUTTING,
        ),
        cable_key: keysOf(cutplan.plan.cable),
      },
    }),
  ],
};
