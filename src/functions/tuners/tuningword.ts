import { TUNING_STANDARDS, tuningWord } from "../../engine/tuners/tuningWord";
import { tuningWordSteps } from "../../engine/working/tunerSteps";
import { declare } from "../core/declare";
import { choice, number, optional } from "../core/parameters";

const frequency = { unit: "MHz", min: 250, max: 2350, advice: "Give MHz, not GHz" } as const;

export const tuningword = declare({
  name: "TUNINGWORD",
  group: "Tuners",
  summary: "The tuning word that puts a frequency of the intermediate band on a user band.",
  parameters: [
    number({
      ...frequency,
      name: "if_frequency",
      help: "Wanted frequency of the satellite intermediate band.",
    }),
    optional(
      number({
        ...frequency,
        name: "band_frequency",
        help: "Centre of the user band. EN 50494 needs it; EN 50607 doesn't use it and it may be blank.",
      }),
    ),
    optional(
      choice({
        name: "standard",
        help: "The standard that the head unit follows.",
        choices: TUNING_STANDARDS,
      }),
      "EN 50494",
    ),
  ],
  result: { shape: "cell", help: "Whole number: 0 to 1023 for EN 50494, 0 to 2047 for EN 50607." },
  equation: "EN 50494: T = round((IF + band) ÷ 4 − 350). EN 50607: T = IF − 100, to the nearest MHz.",
  source: "EN 50494 and EN 50607; the formulas as seen in open driver code, not in the standards' text",
  accuracy: "Exact. EN 50494 tunes in steps of 4 MHz, EN 50607 in steps of 1 MHz.",
  tasks: [
    "Which tuning word should the bus monitor show?",
    "Does a captured command tune to the right frequency?",
  ],
  examples: [
    {
      formula: "RIG.TUNINGWORD(1102,1210)",
      result: 228,
      source: "EN 50494, by hand: (1102 + 1210) ÷ 4 − 350",
    },
    {
      formula: 'RIG.TUNINGWORD(1580,,"EN 50607")',
      result: 1480,
      source: "EN 50607, by hand: 1580 − 100",
    },
  ],
  seeAlso: ["USERBANDS"],
  faultsWhen: [
    "The word does not fit into the bits that the standard has for it.",
    "EN 50494 without the frequency of the user band.",
  ],
  compute: tuningWord,
  working: tuningWordSteps,
});
