import { declare } from "../core/declare";
import { answersFor, figure } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { POWER_CAUTION, SUPPLY_ACCURACY, SUPPLY_EQUATION, SUPPLY_SOURCE } from "./supplyWords";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "volts at its head unit with its receiver on alone, at rest",
  "volts at the head unit's output while its receiver commands and the others rest",
  "volts that stand at its connector from supplies and other receivers",
  "greatest current that its receiver gives, A",
  "volts that stand at its connector from supplies alone",
];

export const outletvolts = declare({
  name: "OUTLETVOLTS",
  group: "Distribution",
  summary: "Volts and current of each outlet's receiver, and what stands at its connector from elsewhere.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of outlets; only what stands at its connector for a spare one.",
    columns: COLUMNS,
  },
  equation: SUPPLY_EQUATION,
  source: SUPPLY_SOURCE,
  accuracy: SUPPLY_ACCURACY,
  tasks: [
    "Does this receiver alone carry the head unit?",
    "Do 24 V stand on a receiver that bears 19 V?",
    "Is a receiver's command heard at the head unit?",
  ],
  examples: [
    {
      formula: exampleFormula("OUTLETVOLTS", TWO_OUTLETS),
      result: [
        [12.4, 17.4, 0, 0.1, 0],
        [12.3, 17.3, 0, 0.1, 0],
      ],
      tolerance: 1e-3,
      source: "by hand: 13 and 18 V less 0.5 V of the diode and 0.1 A through 1 and 2 ohms",
    },
  ],
  seeAlso: ["HEADVOLTS", "OUTLETCHECKS", "LOADVOLTS", "LOOPOHMS"],
  faultsWhen: TABLE_FAULTS,
  caution: POWER_CAUTION,
  compute: (...given) =>
    answersFor("outlets", COLUMNS.length, given, ({ found: { tree, supply }, job }, row) => {
      const point = tree.pointOfOutlet[row]!;
      if (point < 0) return [];
      const { alone } = supply.headUnits[tree.row[tree.output[point]!]!]!;
      const stands = [supply.fromSupplies[row]!, supply.standing[row]!].filter(
        (volts) => !Number.isNaN(volts),
      );
      const standing = stands.length > 0 ? Math.max(...stands) : null;
      const fromSupplies = figure(supply.fromSupplies[row]);
      if (!job.outlets[row]!.receiver) return [null, null, standing, null, fromSupplies];
      return [
        figure(alone.get(row)),
        figure(supply.outputCommanding[row]),
        standing,
        figure(supply.given[row]),
        fromSupplies,
      ];
    }),
});
