import type { Named } from "../../formula/build";
import { anyText, nameIn, number, oneOf } from "../asks";
import { asked, fields, told } from "../names";

export const cableTypes: Named = { name: "cable_types" };

export const drop = fields("drop", {
  job: asked("Job and outlet", {}, anyText("Which run this is", { required: true })),
  cable: asked("Cable", {}, nameIn(cableTypes, "A built-in cable type", { required: true })),
  unit: asked("Unit of all lengths", {}, oneOf(["m", "ft"], "The unit of the length", { required: true })),
  length: asked(
    "Length",
    { unit: "m or ft", format: "general" },
    number(0.1, 2000, "Length of the run", { required: true }),
  ),
  ways: asked(
    "Splitter before it",
    { unit: "ways", format: "general" },
    number(1, 64, "Ways of the splitter in the run; 1 for none", {
      required: true,
    }),
  ),
  excess: asked(
    "Loss of that splitter beyond the ideal",
    {
      unit: "dB",
      format: "general",
      note: "1 to 3 dB at satellite IF, from memory.",
    },
    number(0, 30, "Excess loss of the splitter at the highest frequency", {
      required: true,
    }),
  ),
  plate: asked(
    "Loss of the outlet",
    { unit: "dB", format: "general" },
    number(0, 30, "Loss of the wall plate", { required: true }),
  ),
  low: asked(
    "Lowest frequency",
    { unit: "MHz", format: "general" },
    number(5, 3000, "Lowest frequency", { required: true }),
  ),
  high: asked(
    "Highest frequency",
    { unit: "MHz", format: "general" },
    number(5, 3000, "Highest frequency", { required: true }),
  ),
  cold: asked(
    "Coldest cable",
    { unit: "°C", format: "general" },
    number(-60, 90, "Coldest cable of the year", { required: true }),
  ),
  hot: asked(
    "Hottest cable",
    { unit: "°C", format: "general" },
    number(-60, 90, "Hottest cable of the year", { required: true }),
  ),
  in_low: asked(
    "Input level, lowest frequency",
    { unit: "dBµV", format: "general" },
    number(20, 140, "Level before the splitter at the lowest frequency", {
      required: true,
    }),
  ),
  in_high: asked(
    "Input level, highest frequency",
    { unit: "dBµV", format: "general" },
    number(20, 140, "Level before the splitter at the highest frequency", {
      required: true,
    }),
  ),
  least: asked(
    "Minimum level at the outlet",
    {
      unit: "dBµV",
      format: "general",
      note: "EN 60728-1: 47 dBµV for satellite IF.",
    },
    number(20, 120, "Minimum level", { required: true }),
  ),
  most: asked(
    "Maximum level at the outlet",
    { unit: "dBµV", format: "general", note: "EN 60728-1: 77 dBµV." },
    number(20, 120, "Maximum level", { required: true }),
  ),
  supply: asked(
    "Supply",
    {
      unit: "V",
      format: "general",
      note: "A receiver gives 13 V at rest (EN 50494, EN 50607: from memory).",
    },
    number(1, 60, "Volts at the supply"),
  ),
  load: asked(
    "Load",
    { unit: "A", format: "general" },
    number(0, 10, "Current of the load", { required: true }),
  ),
  volts_least: asked(
    "Minimum volts at the end",
    {
      unit: "V",
      format: "general",
      note: "The maker's figure; near 10.5 V for head units fed by receivers (from memory).",
    },
    number(1, 60, "Minimum volts that the load needs"),
  ),
  frequency: told("Frequency", { unit: "MHz", format: "integer" }),
  temperature: told("Cable temperature", { unit: "°C", format: "integer" }),
  in: told("Input level", { unit: "dBµV", format: "one" }),
  split: told("Loss of the splitter", { unit: "dB", format: "one" }),
  loss: told("Loss of the cable", { unit: "", format: "one" }),
  level: told("Level at the outlet", { unit: "", format: "one" }),
  verdict: told("Verdict", { unit: "", format: "one" }),
  slope: told("Slope, hot", { unit: "dB", format: "one" }),
  ohms: told("Loop resistance, hot", { unit: "Ω", format: "two" }),
  volts: told("Volts at the end", { unit: "V", format: "two" }),
  power: told("Volts verdict"),
});
