import { METER_ERROR_DB } from "../../engine/diagnosis/causes";
import { diagnose as likelyCauses } from "../../engine/diagnosis/diagnose";
import { isFault } from "../../engine/faults";
import { declare } from "../core/declare";
import { list, number, optional, table, text } from "../core/parameters";
import { causesOf, frequenciesOf, readingsOf } from "./diagnosisArguments";

const volts = (name: string, help: string) =>
  optional(list(number({ name, help, unit: "V", min: 0, max: 100 })));

const names = (name: string, help: string, wanted: string) => optional(list(text({ name, help, wanted })));

export const diagnose = declare({
  name: "DIAGNOSE",
  group: "Signal",
  summary:
    "Likely causes of measured levels that miss the prediction, over all readings of the job together.",
  parameters: [
    list(text({ name: "outlets", help: "The name of each outlet, as a list.", wanted: "a name" })),
    list(
      text({
        name: "fed_from",
        help: "The branch, head unit or outlet that feeds each outlet, as a list; blank is one head unit for all.",
        wanted: "a list as long as outlets",
      }),
    ),
    table({
      name: "predicted",
      help: "Predicted levels in dBµV: a row for each outlet, a column for each frequency.",
      wanted: "a block of levels in dBµV",
    }),
    table({
      name: "measured",
      help: "Measured levels in dBµV, in the same places; blank where none was measured.",
      wanted: "a block of levels in dBµV",
    }),
    optional(
      table({
        name: "frequencies",
        help: "Frequencies of the columns in MHz, rising; 950 and 2150 when left out.",
        wanted: "a row of frequencies in MHz",
      }),
    ),
    optional(
      table({
        name: "volts",
        help: "Volts measured at each outlet, as a list; blank where none were measured.",
        wanted: "a list of volts",
      }),
    ),
    volts("predicted_volts", "Volts that should be there: one value for all outlets, or a list."),
    optional(
      list(
        text({ name: "branches", help: "The name of each splitter or tap, as a list.", wanted: "a name" }),
      ),
    ),
    optional(
      list(
        text({
          name: "branches_from",
          help: "What feeds each branch, as a list.",
          wanted: "a list as long as branches",
        }),
      ),
    ),
    optional(
      table({
        name: "causes",
        help: "Figures of your own, two to six columns: cause, chance for each place, loss at the lowest and the highest frequency in dB, spread as a share of it, further tilt in dB. A blank keeps the built-in figure.",
        wanted: "a table of causes",
      }),
    ),
    optional(
      number({
        name: "meter_error",
        help: "The meter reads within ± this.",
        unit: "dB",
        min: 0.1,
        max: 10,
      }),
      METER_ERROR_DB,
    ),
    optional(list(text({ name: "heads", help: "The name of each head unit, as a list.", wanted: "a name" }))),
    optional(
      table({
        name: "head_volts",
        help: "Volts measured at each head unit, as a list; blank where none were measured.",
        wanted: "a list of volts",
      }),
    ),
    volts("predicted_head_volts", "Volts that should be at each head unit, as a list."),
    names(
      "head_dishes",
      "The dish on which each head unit is the feed, as a list; blank is the only one of dishes, or none for a switch.",
      "a list as long as heads",
    ),
    names(
      "feeders_from",
      "The dish, or the switch before, that each bundle of feeders comes from, as a list.",
      "a name",
    ),
    names(
      "feeders_to",
      "The head unit that each bundle goes to, as a list.",
      "a list as long as feeders_from",
    ),
    names("dishes", "The name of each dish, as a list.", "a name"),
  ],
  result: {
    shape: "table",
    help: "Up to eight rows, likeliest first. Probabilities are of the model stated, not of the world: none is certain.",
    columns: ["cause", "where", "probability", "evidence", "next measurement"],
  },
  equation:
    "Weight = chance × evidence: levels = predicted + offsets + meter error − what the cause takes, all normal, sizes integrated out; none, one or two causes below each head unit, or one above several of them that reaches them all; probability = share of the weight.",
  source:
    "Bayes' rule with linear regression: Bishop, Pattern Recognition and Machine Learning (2006), 3.5 (from memory); chances and sizes of causes: our assumptions, no source",
  accuracy:
    "On 2,000 simulated jobs with one fault, meter error ±1.5 dB and volts read at every outlet: the cause first in more than 85 %. Real faults follow no model; without volts, causes that differ only by them stay mixed.",
  tasks: [
    "Why does this outlet read too low?",
    "Is it the dish, the cable or a splitter?",
    "What do I measure next to find the fault?",
  ],
  examples: [
    {
      formula: 'RIG.DIAGNOSE({"R1"},{"H1"},{62,58},{"",""})',
      result: [
        [
          "nothing is measured yet",
          "",
          0,
          "No outlet has a measured level.",
          "Measure every outlet at the lowest and the highest frequency, and its volts, and enter them.",
        ],
      ],
      source: "Without a reading nothing follows; worked by hand",
    },
  ],
  seeAlso: ["TREELOSS", "CABLESLOPE", "WINDOW"],
  faultsWhen: [
    "A list or block is not as long as outlets, or a block has not a column for each frequency.",
    "An outlet is fed in a loop, or a name stands twice.",
    "A measured level has no prediction beside it.",
    "causes names a cause that is not in the list.",
  ],
  caution:
    "Nothing here is certain: measure again before taking anything apart. Switch the supply off before opening it; roofs, ladders and mains by the local code and licensed practice.",
  compute: (
    outlets,
    fedFrom,
    predicted,
    measured,
    frequencyRow,
    volts,
    voltsPredicted,
    branches,
    branchesFrom,
    causeTable,
    meterError,
    headNames,
    headVolts,
    headVoltsPredicted,
    headDishes,
    feedersFrom,
    feedersTo,
    dishes,
  ) => {
    const frequencies = frequenciesOf(frequencyRow);
    if (isFault(frequencies)) return frequencies;
    const causes = causesOf(causeTable);
    if (isFault(causes)) return causes;
    const sorted = readingsOf({
      outlets,
      fedFrom,
      predicted,
      measured,
      frequencies,
      volts: volts?.flat() ?? [],
      voltsPredicted: voltsPredicted ?? [],
      branches: branches ?? [],
      branchesFrom: branchesFrom ?? [],
      heads: headNames ?? [],
      headVolts: headVolts?.flat() ?? [],
      headVoltsPredicted: headVoltsPredicted ?? [],
      headDishes: headDishes ?? [],
      feedersFrom: feedersFrom ?? [],
      feedersTo: feedersTo ?? [],
      dishes: dishes ?? [],
    });
    if (isFault(sorted)) return sorted;
    return likelyCauses(sorted.heads, causes, meterError, sorted.doubts, sorted.above).map((row) => [
      row.cause,
      row.where,
      row.probability,
      row.evidence,
      row.next,
    ]);
  },
});
