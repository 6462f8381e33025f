import { DVB_STANDARDS, MODULATIONS, neededCarrierToNoise } from "../../engine/signal/neededCarrierToNoise";
import { declare } from "../core/declare";
import { choice, text } from "../core/parameters";

export const neededcn = declare({
  name: "NEEDEDCN",
  group: "Signal",
  summary: "Carrier-to-noise ratio that a transmission needs.",
  parameters: [
    choice({ name: "standard", help: "Standard of the transmission.", choices: DVB_STANDARDS }),
    choice({ name: "modulation", help: "Modulation; DVB-S has QPSK only.", choices: MODULATIONS }),
    text({
      name: "code_rate",
      help: "Code rate as text such as '3/4 (a sheet turns 3/4 into a date), or as a number such as 0.75.",
      wanted: "text such as '3/4, or 0.75",
    }),
  ],
  result: {
    shape: "cell",
    unit: "dB",
    help: "Carrier-to-noise ratio in the Nyquist bandwidth, equal to Es/N0 there.",
  },
  equation: "DVB-S2: the table's Es/N0. DVB-S: the table's Eb/N0 + 10·log10(2·r·188/204).",
  source:
    "DVB-S: EN 300 421 table 5. DVB-S2: EN 302 307-1 table 13 (ideal receiver, normal frames, no pilots).",
  accuracy:
    "As printed. For DVB-S2 add 1 to 3 dB for a real receiver and the link (common practice, no source); DVB-S figures hold 0.8 dB of margin.",
  tasks: ["What C/N does the receiver need before the picture breaks up?"],
  examples: [
    {
      formula: 'RIG.NEEDEDCN("DVB-S2","8PSK","2/3")',
      result: 6.62,
      tolerance: 1e-9,
      source: "EN 302 307-1 table 13",
    },
    {
      formula: 'RIG.NEEDEDCN("DVB-S2","32APSK","4/5")',
      result: 13.64,
      tolerance: 1e-9,
      source: "EN 302 307-1 table 13, read in public transcriptions that agree",
    },
    {
      formula: 'RIG.NEEDEDCN("DVB-S","QPSK","3/4")',
      result: 6.91,
      tolerance: 0.01,
      source: "EN 300 421 table 5: Eb/N0 5.5 dB, worked to Es/N0 by hand",
    },
  ],
  seeAlso: ["CARRIERNOISE"],
  faultsWhen: ["The standard has no such mode: not every modulation goes with every code rate."],
  compute: neededCarrierToNoise,
});
