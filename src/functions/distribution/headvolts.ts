import { cornersOf, levelAt } from "../../engine/distribution/levels";
import { declare } from "../core/declare";
import { answersFor, figure, type Answer } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { leastInUse } from "./leastInUse";
import { ownSupplyMost, tunersOfHeads } from "./supplyOfHead";
import { leadsOfHeads, leastApart } from "./signalOfHead";
import type { Solved } from "./solved";
import { POWER_CAUTION, SUPPLY_ACCURACY, SUPPLY_EQUATION, SUPPLY_SOURCE } from "./supplyWords";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "volts with all receivers off",
  "least volts with one receiver on alone",
  "the outlet of that receiver",
  "volts with all receivers on",
  "least volts in use",
  "current that it draws then, A",
  "greatest current of its own supply, A",
  "tuners",
  "user bands of all its outputs",
  "level at the end of its own cable, dBµV: low cold",
  "low hot",
  "high cold",
  "high hot",
  "least isolation between two outlets of one output, dB; blank where not stated",
  "those two outlets",
];

function levelsAtLead(solved: Solved, head: number): Answer[] {
  const { tree, losses } = solved.found;
  const { lowCold, lowHot, highCold, highHot } = cornersOf(tree);
  return [lowCold, lowHot, highCold, highHot].map((where) =>
    figure(levelAt(tree, losses, leadsOfHeads(solved)[head]!, tree.firstOutput[head]!, where)),
  );
}

function isolationOf(solved: Solved, head: number): Answer[] {
  const least = leastApart(solved).get(head);
  if (!least) return [null, null];
  const names = least.outlets.map((outlet) => String(solved.job.outlets[outlet]!.name));
  return [least.decibels, names.join(", ")];
}

export const headvolts = declare({
  name: "HEADVOLTS",
  group: "Distribution",
  summary: "Volts and current at each head unit with all receivers off, one on alone and all on.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of head units; blank for a blank one.",
    columns: COLUMNS,
  },
  equation: SUPPLY_EQUATION,
  source: SUPPLY_SOURCE,
  accuracy: SUPPLY_ACCURACY,
  tasks: [
    "Does the head unit get its minimum volts whoever is on?",
    "How much current does the mains pack give?",
    "How many user bands are left?",
  ],
  examples: [
    {
      formula: exampleFormula("HEADVOLTS", TWO_OUTLETS),
      result: [[0, 12.3, "B", 12.4333, 12.3, 0.1, "", 3, 4, 85, 85, 83, 83, "", ""]],
      tolerance: 1e-3,
      source:
        "by hand: 13 − 0.5 − 0.1·2 V with B alone; 12.5 V less 0.1 A through 1 and 2 ohms side by side with both on",
    },
  ],
  seeAlso: ["HEADCHECKS", "OUTLETVOLTS", "LOADVOLTS", "TUNERCOUNT"],
  faultsWhen: TABLE_FAULTS,
  caution: POWER_CAUTION,
  compute: (...given) =>
    answersFor("headUnits", COLUMNS.length, given, (solved, row) => {
      const { found, job } = solved;
      const { kind, fault } = job.headUnits[row]!;
      if (fault) return [];
      const { allOff, allOn, leastAlone } = found.supply.headUnits[row]!;
      const least = leastInUse(solved, row);
      return [
        figure(allOff.volts),
        figure(leastAlone?.volts),
        leastAlone ? String(job.outlets[leastAlone.outlet]!.name) : null,
        figure(allOn.volts),
        figure(least?.volts),
        figure(least?.amperes),
        figure(ownSupplyMost(solved).get(row)),
        tunersOfHeads(solved)[row]!,
        kind.outputs * kind.bands.length,
        ...levelsAtLead(solved, row),
        ...isolationOf(solved, row),
      ];
    }),
});
