import { convertLevel } from "../../engine/signal/convertLevel";
import { declare } from "../core/declare";
import { number } from "../core/parameters";
import { levelUnit } from "./parameters";

export const level = declare({
  name: "LEVEL",
  group: "Signal",
  summary: "A level across 75 Ω in another unit.",
  parameters: [
    number({ name: "value", help: "The level as it was read." }),
    levelUnit("from", "Unit of the value."),
    levelUnit("to", "Unit wanted."),
  ],
  result: { shape: "cell", help: "The level in the unit wanted." },
  equation: "dBµV = 20·log10(µV); dBmV = dBµV − 60; dBm = dBµV − 90 − 10·log10(75).",
  source: "P = V²/R with R = 75 Ω.",
  accuracy: "Exact. A meter with a 50 Ω input reads otherwise.",
  tasks: ["The meter shows dBm: what is that in dBµV?", "The data sheet gives dBmV: what is that in dBµV?"],
  examples: [
    {
      formula: 'RIG.LEVEL(47,"dBµV","dBm")',
      result: -61.751,
      tolerance: 0.001,
      source: "P = V²/R, worked by hand",
    },
    { formula: 'RIG.LEVEL(17,"dBmV","dBuV")', result: 77, tolerance: 1e-9, source: "1 mV = 1000 µV" },
  ],
  seeAlso: ["WINDOW", "SUMLEVEL"],
  faultsWhen: ["A voltage is not above 0 µV."],
  compute: convertLevel,
});
