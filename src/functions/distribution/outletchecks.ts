import type { CommandVerdict } from "../../engine/distribution/commands";
import { declare } from "../core/declare";
import { answersFor, badRow, inOne, saidAt } from "./answers";
import { TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { openPortWord } from "./openPortWord";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "row: ok, bad",
  "level: ok, low, high",
  "slope: ok, steep",
  "carrier to noise: ok, low; blank where not asked",
  "commands: ok, dead, not judged; blank for a spare outlet",
  "user bands: ok, bad",
  "connectors: ok, too many",
  "applied volts: ok, high",
  "open port: ok, left open, passes power",
  "what is wrong, in sentences",
];

const commandsWord = (verdict: CommandVerdict | null | undefined): string | null => {
  if (!verdict) return null;
  return { yes: "ok", no: "dead", "not judged": "not judged" }[verdict.can];
};

export const outletchecks = declare({
  name: "OUTLETCHECKS",
  group: "Distribution",
  summary: "What holds and what does not at each outlet, with sentences that say what is wrong.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of outlets: a word for each check, and what is wrong with this row.",
    columns: COLUMNS,
  },
  equation:
    "Each figure against its limit: level and slope at the ends of the range and at its own user bands; carrier to noise against what the modulation needs with margin; at most 15 V with all at rest and at least 15.5 V while one commands (EN 50494, EN 50607).",
  source:
    "Limits as given. EN 50494 and EN 50607: volts of commands; slope 15 dB: from memory; 19 V that a receiver bears: common practice, no source",
  accuracy:
    "That of the figures compared. An open port of a splitter, and isolation below 30 dB, are no failing checks.",
  tasks: [
    "What is wrong with this room, and what is to be done?",
    "Can every receiver command its head unit?",
  ],
  examples: [
    {
      formula: exampleFormula("OUTLETCHECKS", TWO_OUTLETS),
      result: [
        ["ok", "ok", "ok", "", "ok", "ok", "ok", "ok", "ok", ""],
        ["ok", "ok", "ok", "", "ok", "ok", "ok", "ok", "ok", ""],
      ],
      source: "by hand: levels from 76 to 80 dBµV lie within 47 to 85, 17.3 V arrive",
    },
  ],
  seeAlso: ["OUTLETLEVELS", "OUTLETNOISE", "OUTLETVOLTS", "DEVICECHECKS"],
  faultsWhen: TABLE_FAULTS,
  compute: (...given) =>
    answersFor("outlets", COLUMNS.length, given, (solved, row) => {
      const { found, job } = solved;
      const said = saidAt(solved, "outlets", row);
      const { checks } = said;
      if (found.tree.pointOfOutlet[row]! < 0) return [...badRow(0, COLUMNS.length), inOne(said)];
      const needed = new Map(job.slots.map((slot) => [slot.name, slot.needed]));
      const judged = found.carrierToNoise[row]!.some(({ slot }) => (needed.get(slot) ?? null) !== null);
      const lowNoise =
        checks.has("carrier to noise in a clear sky") ||
        checks.has("carrier to noise at the availability wanted");
      return [
        "ok",
        checks.has("level too low") ? "low" : checks.has("level too high") ? "high" : "ok",
        checks.has("slope") ? "steep" : "ok",
        judged ? (lowNoise ? "low" : "ok") : null,
        commandsWord(found.commands[row]),
        checks.has("user bands") ? "bad" : "ok",
        checks.has("receivers on a connector") ? "too many" : "ok",
        checks.has("volts on a receiver") ? "high" : "ok",
        openPortWord(checks),
        inOne(said),
      ];
    }),
});
