import { carrierToNoise } from "../../engine/signal/carrierToNoise";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";
import { diameterM, dishFrequency, efficiency, rangeKm } from "./radioParameters";

export const carriernoise = declare({
  name: "CARRIERNOISE",
  group: "Signal",
  summary: "Carrier-to-noise ratio at a dish.",
  parameters: [
    number({
      name: "eirp",
      help: "Radiated power of the carrier towards the site.",
      unit: "dBW",
      min: -100,
      max: 150,
    }),
    rangeKm,
    dishFrequency,
    diameterM,
    number({
      name: "noise_k",
      help: "Noise temperature of dish and head unit together.",
      unit: "K",
      min: 0,
      aboveMin: true,
      max: 1_000_000,
    }),
    number({
      name: "bandwidth",
      help: "Noise bandwidth of the carrier, about its symbol rate; with the bit rate in Mbit/s instead the answer is Eb/N0.",
      unit: "MHz",
      min: 0,
      aboveMin: true,
      max: 10_000,
      advice: "Give MHz, not kHz",
    }),
    optional(
      number({ name: "losses", help: "Rain, gas, pointing and other losses.", unit: "dB", min: 0, max: 200 }),
      0,
    ),
    efficiency,
  ],
  result: { shape: "cell", unit: "dB", help: "Carrier-to-noise ratio." },
  equation: "EIRP − free-space loss − losses + dish gain − 10·log10(k·T·B).",
  source: "Roddy, Satellite Communications, 4th ed., ch. 12 and 16.",
  accuracy: "That of the figures given; uplink noise and interference are left out.",
  tasks: ["Does this dish do for this transmission?", "How much rain margin is left?"],
  examples: [
    {
      formula: "RIG.CARRIERNOISE(55,38020,12500,0.4572,170,40,2,0.55)",
      result: 10.3,
      tolerance: 0.1,
      source:
        "Roddy, Satellite Communications, 4th ed., example 16.1: 18 in dish, 40 Mbit/s, Eb/N0 (free-space constant rounded to 32.4)",
    },
  ],
  seeAlso: ["NEEDEDCN", "RAINFADE", "NOISETEMP", "DISHGAIN"],
  faultsWhen: ["The dish is smaller than a wavelength."],
  compute: (eirp, range, frequency, diameter, noise, bandwidth, losses, efficiency) =>
    carrierToNoise({ eirp, range, frequency, diameter, noise, bandwidth, losses, efficiency }),
});
