/** The arguments that the power functions share. */
import { LOAD_KINDS, type LoadKind } from "../../engine/power/loadVolts";
import { choice, number, optional, type EachParameter } from "../core/parameters";

export const supply = number({
  name: "supply",
  help: "Voltage at the source.",
  unit: "V",
  min: 0,
  aboveMin: true,
  max: 1000,
});

export const load = number({
  name: "load",
  help: "What the load draws: amperes, or watts when kind is W.",
  min: 0,
  max: 1000,
  advice: "Give amperes or watts, not milliamperes",
});

export const ohms = number({
  name: "ohms",
  help: "Resistance of the loop, there and back.",
  unit: "ohm",
  min: 0,
  max: 1_000_000,
});

export const kind = optional(
  choice({
    name: "kind",
    help: "What the load keeps constant: A its current, W its power.",
    choices: LOAD_KINDS,
  }),
  "A",
) as EachParameter<LoadKind>;

export const POWER_CAUTION =
  "Have mains supplies and fixed wiring done by licensed people and to the local code; this figure certifies nothing.";
