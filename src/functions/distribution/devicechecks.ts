import { declare } from "../core/declare";
import { amplifierAt } from "./amplifierAt";
import { answersFor, badRow, figure, inOne, saidAt } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { openPortWord } from "./openPortWord";
import { POWER_CAUTION, SUPPLY_ACCURACY, SUPPLY_EQUATION, SUPPLY_SOURCE } from "./supplyWords";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "least volts at an amplifier in use",
  "greatest current through it or one of its ports, A",
  "row: ok, bad",
  "volts: ok, low; blank but for an amplifier",
  "current: ok, high; unused for an inserter that feeds nothing",
  "output: ok, high; blank where no limit is stated",
  "open port: ok, open, passes power; blank where it divides nothing",
  "what is wrong, in sentences",
];

export const devicechecks = declare({
  name: "DEVICECHECKS",
  group: "Distribution",
  summary: "Volts, current and open ports of each device, with sentences that say what is wrong.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of devices: its figures, a word for each check, and what is wrong with this row.",
    columns: COLUMNS,
  },
  equation: SUPPLY_EQUATION,
  source: SUPPLY_SOURCE,
  accuracy: SUPPLY_ACCURACY,
  tasks: [
    "Does the line amplifier get its volts?",
    "Which through port lacks an end resistor?",
    "Does an inserter stand the wrong way round?",
  ],
  examples: [
    {
      formula: exampleFormula("DEVICECHECKS", TWO_OUTLETS),
      result: [["", 0.1, "ok", "", "ok", "", "ok", ""]],
      tolerance: 1e-6,
      source: "by hand: the head unit takes 0.1 A through it",
    },
  ],
  seeAlso: ["DEVICELEVELS", "OUTLETCHECKS", "HEADCHECKS"],
  faultsWhen: TABLE_FAULTS,
  caution: POWER_CAUTION,
  compute: (...given) =>
    answersFor("devices", COLUMNS.length, given, (solved, row) => {
      const { tree, supply } = solved.found;
      const { kind, amplifier } = solved.job.devices[row]!.part;
      const said = saidAt(solved, "devices", row);
      const { checks } = said;
      if (tree.pointOfDevice[row]! < 0) return [...badRow(2, COLUMNS.length), inOne(said)];
      const hasLimit = (amplifierAt(solved).get(row)?.limit ?? null) !== null;
      const divides = kind === "splitter" || kind === "tap";
      return [
        figure(supply.amplifierLeast[row]),
        figure(supply.deviceMost[row]),
        "ok",
        amplifier ? (checks.has("amplifier volts") ? "low" : "ok") : null,
        checks.has("supply without use") ? "unused" : checks.has("current") ? "high" : "ok",
        hasLimit ? (checks.has("amplifier output") ? "high" : "ok") : null,
        divides ? openPortWord(checks) : null,
        inOne(said),
      ];
    }),
});
