/**
 * The longest cable that still leaves a load its least voltage.
 *
 * Constant current: L = (Vs − Vmin)/(I·r). Constant power:
 * L = (Vs − V)·V/(P·r) with V the greater of Vmin and Vs/2, because below half
 * the supply such a load has no stable operating point.
 *
 * Source: {@link loadVolts} solved for the resistance.
 * Accuracy: that of the loop resistance; see {@link loopOhms}.
 * Range: a least voltage up to the supply.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Amperes, Celsius, Metres, Volts, Watts } from "../quantity";
import type { Cable } from "../signal/cable";
import type { LoadKind } from "./loadVolts";
import { loopOhms } from "./loopOhms";

/**
 * @param supply volts at the source
 * @param leastVolts volts that the load needs
 * @param load amperes or watts, as `kind` says
 * @param cable its loop resistance
 * @param kind "A" constant current, "W" constant power
 * @param temperature degrees Celsius of the cable
 * @returns metres
 */
export function longestRun(
  supply: Volts,
  leastVolts: Volts,
  load: Amperes | Watts,
  cable: Cable,
  kind: LoadKind,
  temperature: Celsius,
): Metres | Fault {
  if (leastVolts > supply) return faults.lowAboveHigh("least_volts", leastVolts, "supply", supply, "V");
  const ohmsPerMetre = loopOhms(cable, 1, temperature);
  if (isFault(ohmsPerMetre)) return ohmsPerMetre;
  if (kind === "A") return (supply - leastVolts) / (load * ohmsPerMetre);
  const volts = Math.max(leastVolts, supply / 2);
  return ((supply - volts) * volts) / (load * ohmsPerMetre);
}
