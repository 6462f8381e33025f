/**
 * Voltage that is left at a load behind a resistance.
 *
 * Constant current: V = Vs − I·R. Constant power: V = (Vs + √(Vs² − 4PR))/2,
 * the upper of the two roots, at which such loads run.
 *
 * Source: Ohm's and Kirchhoff's laws.
 * Accuracy: exact for a load that keeps its current, or its power, whatever
 *   the voltage; a real head unit lies between.
 * Range: there is no operating point when Vs² < 4PR, nor when I·R > Vs.
 */
import { faults, type Fault } from "../faults";
import type { Amperes, Ohms, Volts, Watts } from "../quantity";

export const LOAD_KINDS = ["A", "W"] as const;
/** What the load keeps constant: its current in amperes or its power in watts. */
export type LoadKind = (typeof LOAD_KINDS)[number];

/** A discriminant this small beside Vs² is a rounding error at the very edge of collapse. */
const ROUNDING = 1e-12;

/**
 * @param supply volts at the source
 * @param load amperes or watts, as `kind` says
 * @param ohms resistance of the loop
 * @param kind "A" constant current, "W" constant power
 * @returns volts at the load; a fault when there is no operating point
 */
export function loadVolts(supply: Volts, load: Amperes | Watts, ohms: Ohms, kind: LoadKind): Volts | Fault {
  if (kind === "A") {
    const volts = supply - load * ohms;
    return volts < 0 ? faults.noOperatingPoint(supply, load, kind, ohms) : volts;
  }
  const discriminant = supply * supply - 4 * load * ohms;
  if (discriminant < -ROUNDING * supply * supply) {
    return faults.noOperatingPoint(supply, load, kind, ohms);
  }
  return (supply + Math.sqrt(Math.max(0, discriminant))) / 2;
}
