/** What can be asked of a distribution, and how what does not hold is said. */
import type { Fault } from "../faults";
import type { DecibelMicrovolts, Decibels } from "../quantity";

export type CheckOfDistribution =
  | "head unit volts"
  | "feed volts"
  | "amplifier volts"
  | "volts on a receiver"
  | "commands"
  | "receivers on a connector"
  | "open through port"
  | "end resistor on power"
  | "user bands"
  | "level too low"
  | "level too high"
  | "slope"
  /** One that is not to be seen, or of which the site says too little. */
  | "slot"
  | "carrier to noise in a clear sky"
  | "carrier to noise at the availability wanted"
  | "amplifier output"
  | "switch input too low"
  | "switch input too high"
  | "current"
  | "supply without use"
  /** Advice: never a failing check. */
  | "open ports"
  | "isolation";

export type RowList = "dishes" | "headUnits" | "devices" | "outlets";

export interface RowOf {
  readonly list: RowList;
  readonly row: number;
}

export interface Finding {
  readonly check: CheckOfDistribution;
  /** The first is where its sentence stands. */
  readonly rows: readonly RowOf[];
  readonly fault: Fault;
}

export const ADVICE: ReadonlySet<CheckOfDistribution> = new Set(["open ports", "isolation"]);

export interface Wanted {
  readonly levelLeast: DecibelMicrovolts;
  readonly levelMost: DecibelMicrovolts;
  readonly slopeMost: Decibels;
  /** Between outlets; from memory. */
  readonly isolationLeast: Decibels;
}
