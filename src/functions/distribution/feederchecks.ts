import { declare } from "../core/declare";
import { answersFor } from "./answers";
import { FOUR_FEEDERS, exampleFormula } from "./exampleFormula";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "cables of the bundle, 0 where it cannot be worked out",
  "row: ok, bad",
  "what is wrong, in sentences",
];

export const feederchecks = declare({
  name: "FEEDERCHECKS",
  group: "Distribution",
  summary: "How many cables each bundle of feeders has, and what is wrong with its row.",
  parameters: tables,
  result: { shape: "table", help: "A row for each row of feeders; blank for a blank one.", columns: COLUMNS },
  equation: "Cables = how many, or what the kind of head unit takes for each slot × slots.",
  source: "Counting; four feeders a slot for a feed of four outputs: common practice, no source",
  accuracy: "Exact.",
  tasks: ["How many cables go from the dish to the switch?", "Has the feed enough outputs?"],
  examples: [
    {
      formula: exampleFormula("FEEDERCHECKS", FOUR_FEEDERS),
      result: [[4, "ok", ""]],
      source: "by hand: one slot of four feeders",
    },
  ],
  seeAlso: ["DISHCHECKS", "HEADCHECKS", "NEEDED"],
  faultsWhen: TABLE_FAULTS,
  compute: (...given) =>
    answersFor("feeders", COLUMNS.length, given, ({ found: { trunks } }, row) => {
      const fault = trunks.feederFaults[row];
      return [trunks.cables[row]!, fault ? "bad" : "ok", fault?.message ?? null];
    }),
});
