import { userBands } from "../../engine/tuners/userBands";
import { declare } from "../core/declare";
import { headUnitsList, tunersList } from "./parameters";

export const userbands = declare({
  name: "USERBANDS",
  group: "Tuners",
  summary: "The user bands that each row gets on its head unit, handed out in row order.",
  parameters: [headUnitsList, tunersList],
  result: {
    shape: "column",
    help: 'For each row its bands, such as "1" or "2-3"; "none" where there is no tuner.',
  },
  equation: "On each head unit the first row starts at band 1, each later row at the next band that is free.",
  source: "One tuner takes one user band (EN 50494); at most 32 on one output (EN 50607:2015, scope)",
  accuracy:
    "Exact. Numbers are the head unit's own slots; their frequencies are set by the head unit, not by the standard.",
  tasks: ["Which user band do I set in each receiver?", "Is a user band handed out twice?"],
  examples: [
    {
      formula: "RIG.USERBANDS({1;2;1},{1;2;2})",
      result: [["1"], ["1-2"], ["2-3"]],
      source: "by hand: head unit 1 gives band 1 and then 2-3, head unit 2 gives 1-2",
    },
  ],
  seeAlso: ["ALLOT", "TUNERCOUNT", "TUNINGWORD"],
  faultsWhen: [
    "The bands of a head unit run past 32: the row that runs over says so and takes none.",
    "A row with tuners has no head unit, or a row with a head unit no number of tuners.",
  ],
  compute: userBands,
});
