import { declare } from "../core/declare";
import { answersFor, figure } from "./answers";
import { BY_OTHERS, ONE_OUTLET_OF_SKY, exampleFormula } from "./exampleFormula";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "slot with the least over what it needs",
  "carrier to noise in a clear sky, dB",
  "carrier to noise at the availability wanted, dB; blank where none is",
  "what its modulation needs with margin, dB",
];

export const outletnoise = declare({
  name: "OUTLETNOISE",
  group: "Distribution",
  summary: "Carrier to noise at each outlet, of the slot that has least over what it needs.",
  parameters: tables,
  result: {
    shape: "table",
    unit: "dB",
    help: "A row for each row of outlets; blank where carrier to noise is not asked.",
    columns: COLUMNS,
  },
  equation:
    "1/(C/N) = Σ 1/(C/N) of dish, feeders, switch input, cables, amplifiers and receiver, in linear terms. A loss L adds kT(1 − 1/L)B, an amplifier or receiver k·290·(F − 1)·B; B is the symbol rate. Rain takes its fade from the carrier and adds 275(1 − 10^(−A/10)) K.",
  source:
    "Friis' equation; rain: ITU-R P.838-3, P.618-13; what modulations need: as NEEDEDCN. Sky of 40 K, efficiency 0.65, losses at the dish 0.8 dB, margin 2 dB: common practice, no source; receiver's noise figure 10 dB: from memory",
  accuracy: "That of the EIRP, some 1 dB. Uplink noise and interference are left out.",
  tasks: [
    "Is the dish large enough for the availability that the customer wants?",
    "Which slot fails first in rain?",
  ],
  examples: [
    {
      formula: exampleFormula("OUTLETNOISE", ONE_OUTLET_OF_SKY),
      result: [["13E", 17.3386, 13.0021, 8.62]],
      tolerance: 1e-3,
      source: BY_OTHERS,
    },
  ],
  seeAlso: ["OUTLETCHECKS", "DISHCHECKS", "CARRIERNOISE", "NEEDEDCN", "RAINFADE"],
  faultsWhen: TABLE_FAULTS,
  compute: (...given) =>
    answersFor("outlets", COLUMNS.length, given, ({ found: { carrierToNoise }, job }, row) => {
      const judged = carrierToNoise[row]!.flatMap((one) => {
        const needed = job.slots.find(({ name }) => name === one.slot)!.needed;
        return needed === null ? [] : [{ ...one, needed, over: (one.rain ?? one.clear) - needed }];
      });
      const [first, ...others] = judged;
      if (!first) return [];
      const worst = others.reduce((least, one) => (one.over < least.over ? one : least), first);
      return [worst.slot, figure(worst.clear), figure(worst.rain), worst.needed];
    }),
});
