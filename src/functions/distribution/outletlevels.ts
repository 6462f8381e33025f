import { declare } from "../core/declare";
import { answersFor, figure } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { weakestAtLongest } from "./longest";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "lowest frequency, coldest, dBµV",
  "lowest frequency, hottest, dBµV",
  "highest frequency, coldest, dBµV",
  "highest frequency, hottest, dBµV",
  "least at its own user bands, hottest, dBµV; blank without a band plan",
  "least when hottest with every length at its longest, dBµV",
];

export const outletlevels = declare({
  name: "OUTLETLEVELS",
  group: "Distribution",
  summary: "The level at each outlet at the ends of the range, cold and hot, and at its own user bands.",
  parameters: tables,
  result: {
    shape: "table",
    unit: "dBµV",
    help: "A row for each row of outlets; blank for a blank or bad row.",
    columns: COLUMNS,
  },
  equation:
    "Level = output of the head unit − Σ losses of cables and parts + Σ gains, down to the outlet's connector. Losses of parts lie on a straight line between the ends of the range, cables as CABLELOSS.",
  source: "Decibels along a path add; cables as CABLELOSS.",
  accuracy:
    "That of the figures given; reflections between parts are left out. A head unit levels its output.",
  tasks: [
    "Will the far bedroom have enough signal?",
    "Is the level still enough if every run turns out longer?",
  ],
  examples: [
    {
      formula: exampleFormula("OUTLETLEVELS", TWO_OUTLETS),
      result: [
        [80, 80, 77, 77, "", 76.9],
        [79, 79, 76, 76, "", 75.8],
      ],
      tolerance: 1e-9,
      source:
        "by hand: 85 − 4 − 1 and 83 − 5 − 1 dBµV, and 1 dB less after 20 m; 83 − 5 − 1.1 with runs of a tenth more",
    },
  ],
  seeAlso: ["OUTLETCHECKS", "DEVICELEVELS", "CABLELOSS", "TREELOSS"],
  faultsWhen: TABLE_FAULTS,
  compute: (...given) =>
    answersFor("outlets", COLUMNS.length, given, (solved, row) => {
      const { tree, levels, bandLevels } = solved.found;
      if (tree.pointOfOutlet[row]! < 0) return [];
      const own = bandLevels[row]!;
      return [
        levels.lowCold[row]!,
        levels.lowHot[row]!,
        levels.highCold[row]!,
        levels.highHot[row]!,
        own.length > 0 ? figure(Math.min(...own)) : null,
        weakestAtLongest(solved)[row]!,
      ].map(figure);
    }),
});
