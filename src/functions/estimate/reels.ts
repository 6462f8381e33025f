import { isFault } from "../../engine/faults";
import { packReels } from "../../engine/estimate/packReels";
import { runsOfCable } from "../../engine/estimate/runsOfCable";
import { declare } from "../core/declare";
import { optional, text } from "../core/parameters";
import {
  bundleCounts,
  cuttingOf,
  cuttingParameters,
  reelLength,
  runCables,
  runLengths,
  slack,
  waste,
} from "./parameters";

const cable = text({
  name: "cable",
  help: "The cable to count: only its runs are packed. A column beside reel gives a row for each cable.",
  wanted: "a cable's name",
});

export const reels = declare({
  name: "REELS",
  group: "Estimate",
  summary: "Whole reels of cable to order when no run may be spliced.",
  parameters: [
    runLengths("lengths", "Length of each run, as one list; blank rows and 0 are no runs."),
    reelLength,
    optional(slack, 0),
    optional(waste, 0),
    optional(runCables("cables", "The cable of each run, as one list beside lengths; goes with cable.")),
    optional(cable),
    optional(runLengths("more_lengths", "A second list of runs, such as those of another sheet.")),
    optional(runCables("more_cables", "The cable of each run in more_lengths.")),
    optional(runLengths("extra_lengths", "A third list of runs.")),
    optional(runCables("extra_cables", "The cable of each run in extra_lengths.")),
    optional(runLengths("bundle_lengths", "Length of each cable of a bundle, a row a bundle.")),
    optional(runCables("bundle_cables", "The cable of each bundle.")),
    bundleCounts,
    ...cuttingParameters,
  ],
  result: { shape: "cell", unit: "reels", help: "Whole number of reels to buy; 0 where there is no run." },
  equation:
    "cut = (length + slack) × (1 + waste), of the likely or the longest length; reels in stock are filled first, then the cuts are packed whole onto reels: first-fit decreasing and fullest first against a lower bound, then an exact search.",
  source:
    "Bin packing: Martello & Toth, Knapsack Problems (1990), ch. 8; lower bound: Fekete & Schepers (2001); bound of first-fit decreasing: Dósa (2007)",
  accuracy:
    "The least number of reels for up to a few dozen runs. Above 100 different lengths, or where the search is cut off at 100,000 steps, at most 11/9 of the least plus 6/9; on random jobs at most 3.5 % above what the total length needs with 240 runs, 1.1 % with 10,000. Total length over reel length is only a lower bound.",
  tasks: [
    "How many reels of cable do I order?",
    "How many reels of each kind of cable, over all sheets?",
    "Will the runs come off two reels without a joint?",
  ],
  examples: [
    {
      formula: "RIG.REELS({140;95;95;60;180},500,10,0.1)",
      result: 2,
      source:
        "by hand: cuts of 165, 115.5, 115.5, 77 and 209 ft, 682 ft in all; 209 + 165 + 115.5 and 115.5 + 77 come off two reels of 500 ft",
    },
    {
      formula: "RIG.REELS({60;60;60},100)",
      result: 3,
      source: "by hand: no two runs of 60 come off one reel of 100, though 180 in all would need only two",
    },
    {
      formula: 'RIG.REELS({40},100,0,0,{"drop"},"drop",,,,,{18},{"drop"},{4})',
      result: 2,
      source: "by hand: 40 and four feeders of 18 are 112; 40 + 3 · 18 = 94 come off the first reel",
    },
    {
      formula:
        'RIG.REELS({60;30},100,,,{"drop";"drop"},"drop",,,,,,,,"longest",{66;""},0.2,0.5,,{40},{"drop"})',
      result: 2,
      source:
        "by hand: 66 and 30 · 1.2 = 36, and one spare run of 66; 36 comes off the 40 in stock, and no two of 66 off a reel of 100",
    },
  ],
  seeAlso: ["CUTPLAN", "ROUNDMONEY", "SELLPRICE"],
  faultsWhen: [
    "A run with its slack and waste is longer than the reel.",
    "cable is given without cables, or cables without cable, or a run has a length and no cable.",
    "A list of cables, of counts or of longest lengths is not as long as its list of lengths.",
    "stock_lengths are given without stock_cables.",
  ],
  compute: (
    lengths,
    reel,
    slack,
    waste,
    cables,
    cable,
    moreLengths,
    moreCables,
    extraLengths,
    extraCables,
    bundleLengths,
    bundleCables,
    bundleCounts,
    ...given
  ) => {
    const { cutting, spare, started, withLongest } = cuttingOf(given);
    const runs = runsOfCable(
      withLongest([
        { name: "lengths", lengths, cables, cablesName: "cables" },
        { name: "more_lengths", lengths: moreLengths, cables: moreCables, cablesName: "more_cables" },
        { name: "extra_lengths", lengths: extraLengths, cables: extraCables, cablesName: "extra_cables" },
        {
          name: "bundle_lengths",
          lengths: bundleLengths,
          cables: bundleCables,
          cablesName: "bundle_cables",
          counts: bundleCounts,
          countsName: "bundle_counts",
        },
      ]),
      cable,
      cutting,
      spare,
    );
    if (isFault(runs)) return runs;
    const rests = started(cable);
    if (isFault(rests)) return rests;
    const packing = packReels(runs, reel, slack, waste, rests);
    return isFault(packing) ? packing : packing.reels.filter(({ started }) => !started).length;
  },
});
