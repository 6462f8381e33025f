import { cornersOf, levelAt } from "../../engine/distribution/levels";
import { between } from "../../engine/distribution/losses";
import { THROUGH } from "../../engine/distribution/ports";
import { lossToPort } from "../../engine/distribution/tree";
import { declare } from "../core/declare";
import { answersFor, figure } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { amplifierAt } from "./amplifierAt";
import { portsUsed } from "./portsUsed";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "head unit",
  "its output",
  'port that it is fed from, a number or "through"',
  "ports in use",
  "level at a numbered port, lowest frequency, coldest, dBµV",
  "the same, lowest frequency, hottest",
  "the same, highest frequency, coldest",
  "the same, highest frequency, hottest",
  "greatest output of an amplifier, dBµV",
  "its limit for the carriers that it carries, dBµV",
];

export const devicelevels = declare({
  name: "DEVICELEVELS",
  group: "Distribution",
  summary: "Where each device hangs, its level at a port, and an amplifier's output against its limit.",
  parameters: tables,
  result: {
    shape: "table",
    unit: "dBµV",
    help: "A row for each row of devices; blank for a blank or bad row.",
    columns: COLUMNS,
  },
  equation:
    "Level = output of the head unit − Σ losses + Σ gains, down to behind the device's own loss to a port. An amplifier's limit is its greatest output − 7.5·log10(n − 1) for n user bands.",
  source: "Decibels along a path add. 7.5·log10(n − 1): distribution-amplifier practice, from memory",
  accuracy: "That of the figures given; reflections between parts are left out.",
  tasks: ["What level comes out of this splitter?", "Is the amplifier driven too hard?"],
  examples: [
    {
      formula: exampleFormula("DEVICELEVELS", TWO_OUTLETS),
      result: [["H1", 1, 1, 2, 81, 81, 78, 78, "", ""]],
      tolerance: 1e-9,
      source: "by hand: 85 − 4 and 83 − 5 dBµV",
    },
  ],
  seeAlso: ["DEVICECHECKS", "OUTLETLEVELS", "TREELOSS"],
  faultsWhen: TABLE_FAULTS,
  compute: (...given) =>
    answersFor("devices", COLUMNS.length, given, (solved, row) => {
      const { tree, losses } = solved.found;
      const point = tree.pointOfDevice[row]!;
      if (point < 0) return [];
      const output = tree.output[point]!;
      const { lowCold, lowHot, highCold, highHot } = cornersOf(tree);
      const amplifier = amplifierAt(solved).get(row);
      return [
        solved.job.headUnits[tree.row[output]!]!.name,
        tree.port[output]!,
        tree.port[point] === THROUGH ? "through" : tree.port[point]!,
        portsUsed(solved)[point]!,
        ...[lowCold, lowHot, highCold, highHot].map((where) =>
          figure(levelAt(tree, losses, point, output, where) - between(lossToPort(tree, point, 1), where)),
        ),
        figure(amplifier?.most),
        figure(amplifier?.limit),
      ];
    }),
});
