import { isFault } from "../../engine/faults";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { tunerCountSteps } from "../../engine/working/tunerSteps";
import { declare } from "../core/declare";
import { number, optional, text } from "../core/parameters";
import { catalogue } from "./parameters";

const receivers = text({
  name: "receivers",
  help: 'Kind of receiver: "receiver", "recorder, 2 tuners" (any number from 1 to 32), or a kind of the catalogue.',
  wanted: 'a kind such as "receiver" or "recorder, 2 tuners"',
});

const quantities = optional(
  number({
    name: "quantities",
    help: "How many of that kind.",
    integer: true,
    min: 0,
    max: 10_000,
    advice: "Count whole receivers",
  }),
  1,
);

export const tunercount = declare({
  name: "TUNERCOUNT",
  group: "Tuners",
  summary: "How many tuners, and so user bands, a row's receivers need.",
  parameters: [receivers, quantities, catalogue],
  result: { shape: "cell", unit: "tuners", help: "Number of tuners: those of the kind times the quantity." },
  equation: "tuners = tuners of the kind × quantity; the catalogue counts before the built-in kinds.",
  source:
    "One tuner takes one user band (EN 50494); a two-tuner recorder counting as two: common practice, no source",
  accuracy:
    "Exact counting. A receiver that shows one channel while it records another has two tuners or more.",
  tasks: ["How many tuners does this room need?", "How many user bands does a recorder take?"],
  examples: [
    {
      formula: 'RIG.TUNERCOUNT({"recorder, 2 tuners";"receiver"})',
      result: [[2], [1]],
      source: "common practice, no source: a two-tuner recorder counts as two, a receiver as one",
    },
  ],
  seeAlso: ["HEADUNITS", "ALLOT", "USERBANDS"],
  faultsWhen: [
    "The kind is neither built in nor in the catalogue; the sentence lists the known ones.",
    "The catalogue lists a kind twice with different numbers, or without a number.",
  ],
  compute: (kind, quantity, ownKinds) => {
    const count = tunersOfKind(kind, ownKinds);
    return isFault(count) ? count : count * quantity;
  },
  working: tunerCountSteps,
});
