import { isUnseen } from "../../engine/distribution/sky";
import { declare } from "../core/declare";
import { answersFor, badRow, inOne, saidAt } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { feedsOfHeads } from "./supplyOfHead";
import { POWER_CAUTION, SUPPLY_ACCURACY, SUPPLY_EQUATION, SUPPLY_SOURCE } from "./supplyWords";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "row: ok, bad",
  "volts: ok, low",
  "current of its own supply: ok, high",
  "input of a switch: ok, low, high; blank where not judged",
  "volts of the feeds that it powers: ok, low; blank without",
  "own supply: ok, unused; blank without",
  "what is wrong, in sentences",
];

export const headchecks = declare({
  name: "HEADCHECKS",
  group: "Distribution",
  summary: "What holds and what does not at each head unit, with sentences that say what is wrong.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of head units: a word for each check, and what is wrong with this row.",
    columns: COLUMNS,
  },
  equation: SUPPLY_EQUATION,
  source: SUPPLY_SOURCE,
  accuracy: SUPPLY_ACCURACY,
  tasks: ["Was a supply forgotten?", "Is the level at the switch's input within its window?"],
  examples: [
    {
      formula: exampleFormula("HEADCHECKS", TWO_OUTLETS),
      result: [["ok", "ok", "ok", "", "", "", ""]],
      source: "by hand: 12.3 V are more than 10 V; no switch and no supply of its own",
    },
  ],
  seeAlso: ["HEADVOLTS", "DISHCHECKS", "FEEDERCHECKS", "OUTLETCHECKS"],
  faultsWhen: TABLE_FAULTS,
  caution: POWER_CAUTION,
  compute: (...given) =>
    answersFor("headUnits", COLUMNS.length, given, (solved, row) => {
      const { trunks, seen } = solved.found;
      const { kind, fault, supply: own } = solved.job.headUnits[row]!;
      const said = saidAt(solved, "headUnits", row);
      const { checks } = said;
      if (fault) return [...badRow(0, COLUMNS.length), inOne(said)];
      const judged = kind.input && seen[row]!.some((one) => !isUnseen(one) && one.input);
      const feeds = feedsOfHeads(solved).get(row);
      return [
        trunks.headFaults[row] ? "bad" : "ok",
        checks.has("head unit volts") ? "low" : "ok",
        checks.has("current") ? "high" : "ok",
        judged
          ? checks.has("switch input too low")
            ? "low"
            : checks.has("switch input too high")
              ? "high"
              : "ok"
          : null,
        feeds === undefined ? null : feeds ? "ok" : "low",
        own ? (checks.has("supply without use") ? "unused" : "ok") : null,
        inOne(said),
      ];
    }),
});
