import { block, fields, result, results, told } from "../../names";
import { keyed } from "../nameKeys";

/** How the lengths came about. */
export const cutting = fields("cutting", {
  at: told("Length taken", { unit: "of a run" }),
  tolerance: told("Tolerance", { unit: "share", format: "percent" }),
  slack: told("Slack, both ends", { unit: "m or ft", format: "two" }),
  waste: told("Waste", { unit: "share", format: "percent" }),
  spare: told("Spare runs", { unit: "share", format: "percent" }),
  spare_least: told("Spare runs at least", { unit: "runs", format: "integer" }),
});

/** A row for each cable of Parts. */
export const cablesCut = block("cables_cut", {
  cable: result("Cable", { width: 26 }),
  bought: result("Reels to buy", { unit: "reels", width: 8, format: "integer" }),
  least: result("Least by length", { unit: "reels", width: 11, format: "integer" }),
  remark: result("Remark", { width: 56 }),
  pieces: result("Pieces", { unit: "pieces", width: 8, format: "integer" }),
  share: result("Share left", { unit: "share", width: 8, format: "percent" }),
  used: result("Total cut", { unit: "m or ft", width: 9, format: "two" }),
  left: result("Left over", { unit: "m or ft", width: 9, format: "two" }),
});

/** A row for each reel, and for a reel's further lines. */
export const cutplan = block("cutplan", {
  plan: results(
    "",
    { width: 9, format: "text", lines: 2 },
    {
      cable: { head: "Cut from cable", width: 26 },
      reel: { head: "Reel", width: 8 },
      from: { head: "From", width: 11 },
      cuts: { head: "Cuts, in order: what for, and its length", width: 56 },
      pieces: { head: "Pieces cut", unit: "pieces", width: 8, format: "integer" },
      held: { head: "Reel holds", unit: "m or ft", width: 8, format: "one" },
      used: { head: "Used", unit: "m or ft", width: 9, format: "two" },
      left: { head: "Left", unit: "m or ft", width: 9, format: "two" },
    },
  ),
  cable_key: keyed("Cable"),
});
