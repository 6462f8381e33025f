import { argument } from "../../engine/argumentNames";
import { cuttingPlan, type PlanLine } from "../../engine/estimate/cuttingPlan";
import type { Run } from "../../engine/estimate/packReels";
import { runRows, withSpares } from "../../engine/estimate/runsOfCable";
import { faults, isFault, type Fault } from "../../engine/faults";
import { declare } from "../core/declare";
import { list, number, optional, text } from "../core/parameters";
import {
  bundleCounts,
  cuttingOf,
  cuttingParameters,
  reelLengths,
  runCables,
  runLengths,
  slack,
  waste,
} from "./parameters";

const MOST_LINES = 1_000_000;
const COLUMNS = [
  "cable",
  "reel, counted from 1",
  "from: new, in stock, or not planned",
  "cuts in order: name and length",
  "pieces",
  "what the reel held; of what is not planned the reason",
  "used of the reel",
  "left on the reel",
];
const BLANK: readonly ""[] = COLUMNS.map(() => "" as const);

const names = (name: string, help: string) => optional(list(text({ name, help, wanted: "a name" })));

export const cutplan = declare({
  name: "CUTPLAN",
  group: "Estimate",
  summary: "Which run is cut from which reel, in order: the reels that REELS counts.",
  parameters: [
    list(
      number({
        name: "lines",
        help: "Which lines of the plan are wanted, as a list: 1 is the first; a blank one stays blank.",
        integer: true,
        min: 1,
        max: MOST_LINES,
        advice: "Count the lines from 1",
      }),
    ),
    list(text({ name: "cables", help: "The cables that are planned, as a list.", wanted: "a cable's name" })),
    reelLengths,
    runLengths("lengths", "Length of each run, as one list; blank rows and 0 are no runs."),
    runCables("run_cables", "The cable of each run, as one list beside lengths."),
    optional(slack, 0),
    optional(waste, 0),
    names("run_names", "What each run in lengths is for, as one list."),
    optional(runLengths("more_lengths", "A second list of runs, such as those of another sheet.")),
    optional(runCables("more_cables", "The cable of each run in more_lengths.")),
    names("more_names", "What each run in more_lengths is for."),
    optional(runLengths("extra_lengths", "A third list of runs.")),
    optional(runCables("extra_cables", "The cable of each run in extra_lengths.")),
    names("extra_names", "What each run in extra_lengths is for."),
    optional(runLengths("bundle_lengths", "Length of each cable of a bundle, a row a bundle.")),
    optional(runCables("bundle_cables", "The cable of each bundle.")),
    bundleCounts,
    names("bundle_from", "Where each bundle comes from."),
    names("bundle_to", "Where each bundle goes."),
    ...cuttingParameters,
  ],
  result: {
    shape: "table",
    help: "A row for each of lines. A reel with many cuts goes on in a further line, which says neither what it held nor what is left. What cannot be planned comes first, with the reason.",
    columns: COLUMNS,
  },
  equation: "As REELS; from each reel the longest is cut first. left = what the reel held − Σ cuts.",
  source: "As REELS; the order of cutting: common practice, no source",
  accuracy: "As REELS, from the same packing. Lengths in the cuts are shown to two decimals.",
  tasks: ["Which run do I cut from which reel?", "What will be left on the reels?"],
  examples: [
    {
      formula:
        'RIG.CUTPLAN({1;2;3},{"drop"},{100},{60;50;40},{"drop";"drop";"drop"},0,0,{"1-1";"1-2";"1-3"})',
      result: [
        ["drop", 1, "new", "1-1: 60; 1-3: 40", 2, 100, 100, 0],
        ["drop", 2, "new", "1-2: 50", 1, 100, 50, 50],
        ["", "", "", "", "", "", "", ""],
      ],
      source: "by hand: 60 + 40 fill a reel, 50 takes a second",
    },
  ],
  seeAlso: ["REELS"],
  faultsWhen: [
    "cables and reels are not of one length, or a list beside lengths is not as long as it.",
    "In the row of a run that can't be planned: it has no cable, one without a reel, or is longer than the reel.",
  ],
  compute: (
    lines,
    cables,
    reels,
    lengths,
    runCables,
    slack = 0,
    waste = 0,
    runNames,
    moreLengths,
    moreCables,
    moreNames,
    extraLengths,
    extraCables,
    extraNames,
    bundleLengths,
    bundleCables,
    bundleCounts,
    bundleFrom,
    bundleTo,
    ...given
  ) => {
    if (cables.length !== reels.length) return faults.shortColumn("reels", reels.length, cables.length);
    const { cutting, spare, started, withLongest } = cuttingOf(given);
    const rows = runRows(
      withLongest([
        {
          name: "lengths",
          lengths,
          cables: runCables,
          cablesName: "run_cables",
          to: runNames,
          toName: "run_names",
        },
        {
          name: "more_lengths",
          lengths: moreLengths,
          cables: moreCables,
          cablesName: "more_cables",
          to: moreNames,
          toName: "more_names",
        },
        {
          name: "extra_lengths",
          lengths: extraLengths,
          cables: extraCables,
          cablesName: "extra_cables",
          to: extraNames,
          toName: "extra_names",
        },
        {
          name: "bundle_lengths",
          lengths: bundleLengths,
          cables: bundleCables,
          cablesName: "bundle_cables",
          counts: bundleCounts,
          countsName: "bundle_counts",
          from: bundleFrom,
          fromName: "bundle_from",
          to: bundleTo,
          toName: "bundle_to",
        },
      ]),
      cutting,
    );
    if (isFault(rows)) return rows;
    const unplanned: PlanLine[] = [];
    const runsOf = new Map<string, Run[]>();
    const plan: PlanLine[] = [];
    for (const cable of cables) if (typeof cable === "string") runsOf.set(cable.toLowerCase(), []);
    lengths.forEach((length, index) => {
      const name = runNames?.[index];
      if (length !== null || typeof name !== "string") return;
      const run = argument("lengths", index + 1, `Run ${index + 1} of lengths`);
      unplanned.push({ cable: "", cuts: name, fault: faults.runWithoutLength(run) });
    });
    for (const row of rows) {
      const { cable = "" } = row;
      const runs = runsOf.get(cable.toLowerCase());
      if ("fault" in row) unplanned.push({ cable, cuts: row.name, fault: row.fault });
      else if (!runs)
        unplanned.push({ cable, cuts: row.run.name ?? "", fault: faults.noReelOf(row.run.label, cable) });
      else for (let time = 0; time < row.times; time++) runs.push(row.run);
    }
    for (const [index, cable] of cables.entries()) {
      if (cable === null) continue;
      if (isFault(cable)) return faults.atRow("cables", index + 1, cable);
      const runs = withSpares(runsOf.get(cable.toLowerCase())!, spare);
      if (runs.length === 0) continue;
      const rests = started(cable);
      if (isFault(rests)) return rests;
      const reel = reels[index] ?? faults.missing("reels", `the length of a reel of ${cable}`);
      if (isFault(reel)) {
        const fault = faults.atRow("reels", index + 1, reel);
        unplanned.push({ cable, cuts: `${runs.length} runs: no length of a reel`, fault });
      } else plan.push(...cuttingPlan({ cable, reel, runs, started: rests }, slack, waste));
    }
    const all = [...unplanned, ...plan];
    return lines.map((line) => {
      if (line === null) return BLANK;
      if (isFault(line)) return BLANK.map(() => line);
      const at = all[line - 1];
      return at ? shownLine(at) : BLANK;
    });
  },
});

function shownLine(line: PlanLine): (string | number | Fault)[] {
  if ("fault" in line) return [line.cable, "", "not planned", line.cuts, "", line.fault, "", ""];
  const { cable, reel, from, length = "", cuts, pieces, used = "", left = "" } = line;
  return [cable, reel, from, cuts, pieces, length, used, left];
}
