import { declare } from "../core/declare";
import { answersFor, figure, inOne, saidAt } from "./answers";
import { leastClear, leastFeedVolts } from "./dishFigures";
import { BY_OTHERS, ONE_OUTLET_OF_SKY, exampleFormula } from "./exampleFormula";
import { TABLE_FAULTS, tables } from "./tables";

/** Whoever goes up there. */
const ROOF_CAUTION =
  "A dish stands on a roof or a mast: leave work at height, near overhead lines, and its bonding to those who are trained and licensed for it.";

const COLUMNS = [
  "slots",
  "how many they are",
  "least carrier to noise in a clear sky at its feed, dB; blank where not asked",
  "least volts of its feed; blank without",
  "row: ok, bad",
  "what is wrong, in sentences",
];

export const dishchecks = declare({
  name: "DISHCHECKS",
  group: "Distribution",
  summary: "The slots of each dish, carrier to noise and volts at its feed, and what is wrong.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of dishes; one blank row where the table is left out.",
    columns: COLUMNS,
  },
  equation:
    "C/N = EIRP − free-space loss + gain of the dish − losses − 10·log10(k·T·B); T is 40 K of sky and the feed's own noise, B the symbol rate.",
  source: "As CARRIERNOISE. Efficiency 0.65, 40 K of sky: common practice, no source",
  accuracy: "That of the EIRP, some 1 dB.",
  tasks: ["Is this dish large enough?", "Does the feed on the roof get its volts?"],
  examples: [
    {
      formula: exampleFormula("DISHCHECKS", ONE_OUTLET_OF_SKY),
      result: [["13E", 1, 17.3393, "", "ok", ""]],
      tolerance: 1e-3,
      source: BY_OTHERS,
    },
  ],
  seeAlso: ["OUTLETNOISE", "HEADCHECKS", "FEEDERCHECKS", "CARRIERNOISE"],
  faultsWhen: TABLE_FAULTS,
  caution: ROOF_CAUTION,
  compute: (...given) =>
    answersFor("dishes", COLUMNS.length, given, (solved, row) => {
      const { slots } = solved.job.dishes[row]!;
      return [
        slots.join(" "),
        slots.length,
        figure(leastClear(solved).get(row)),
        figure(leastFeedVolts(solved).get(row)),
        solved.found.trunks.dishFaults[row] ? "bad" : "ok",
        inOne(saidAt(solved, "dishes", row)),
      ];
    }),
});
