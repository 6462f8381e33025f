/**
 * A cable's loss and loop resistance, line by line: the steps of cableLoss,
 * cableSlope and loopOhms, with their sources, accuracy and range.
 */
import { isFault, type Fault } from "../faults";
import { CONDUCTOR_REFERENCE_C, COPPER_PER_C } from "../power/constants";
import { loopOhms } from "../power/loopOhms";
import type { Celsius, Megahertz, Metres } from "../quantity";
import { builtInCable, type Cable, type LossCoefficients } from "../signal/cable";
import { cableLoss } from "../signal/cableLoss";
import { cableSlope } from "../signal/cableSlope";
import { CABLE_REFERENCE_C, LOSS_PER_C } from "../signal/constants";
import { METRES_PER_FOOT, toMetres, type LengthUnit } from "../signal/lengthUnits";
import { arithmetic, Working, type Step } from "./steps";

const FOOT = "The international foot, by definition";
const LOSS = "Conductor loss grows with √f, dielectric loss with f";

const sourceOf = (cable: Cable, builtIn: string): string =>
  builtInCable(cable.name) === cable ? `Built-in type: ${builtIn}` : "The cable table";

/** The cable and its length, in metres from here on. */
function run(work: Working, cable: Cable, length: number, unit: LengthUnit): Metres {
  work.given("cable", "kind of cable", cable.name);
  work.given("L", "length, one way", length, unit);
  if (unit === "m") return length;
  return work.worked(
    "L",
    "length in metres",
    toMetres(length, unit),
    "m",
    arithmetic`${length}·${METRES_PER_FOOT}`,
    FOOT,
  );
}

/** Loss at one frequency; the caller has made sure that the cable has one. */
function lossAt(
  work: Working,
  coefficients: LossCoefficients,
  metres: Metres,
  frequency: Megahertz,
  temperature: Celsius,
  mark: string,
): number {
  const { k1, k2, k0 } = coefficients;
  const f = work.given(`f${mark}`, "frequency in the cable", frequency, "MHz");
  const per100m = work.worked(
    `α${mark}`,
    "loss of 100 m at 20 °C, k1·√f + k2·f + k0",
    k1 * Math.sqrt(f) + k2 * f + k0,
    "dB/100 m",
    arithmetic`${k1}·√(${f}) + ${k2}·${f} + ${k0}`,
    LOSS,
  );
  const cold = work.worked(
    `A20${mark}`,
    "loss of this length at 20 °C",
    (per100m / 100) * metres,
    "dB",
    arithmetic`${per100m}/100·${metres}`,
    "Decibels along a path add",
  );
  const factor = work.worked(
    `t${mark}`,
    "factor for the temperature, 1 + 0.00198·(T − 20)",
    1 + LOSS_PER_C * (temperature - CABLE_REFERENCE_C),
    "",
    arithmetic`1 + ${LOSS_PER_C}·(${temperature} − ${CABLE_REFERENCE_C})`,
    "Published drop-cable rule of 0.0011 per °F",
  );
  return work.worked(
    `A${mark}`,
    "loss of the cable",
    cold * factor,
    "dB",
    arithmetic`${cold}·${factor}`,
    LOSS,
  );
}

function coefficientsOf(work: Working, cable: Cable, { k1, k2, k0 }: LossCoefficients): void {
  const source = sourceOf(
    cable,
    "fitted to the ANSI/SCTE 74 kind of table, from memory, partly also seen printed",
  );
  work.taken("k1", "coefficient of √f", k1, "dB/100 m", source);
  work.taken("k2", "coefficient of f", k2, "dB/100 m", source);
  work.taken("k0", "constant term", k0, "dB/100 m", source);
}

/** Parameters as for cableLoss, the length in its own unit. */
export function cableLossSteps(
  cable: Cable,
  length: number,
  frequency: Megahertz,
  temperature: Celsius,
  unit: LengthUnit,
): readonly Step[] | Fault {
  if (isFault(cable.loss)) return cable.loss;
  const loss = cableLoss(cable, toMetres(length, unit), frequency, temperature);
  if (isFault(loss)) return loss;
  const work = new Working();
  const metres = run(work, cable, length, unit);
  work.given("T", "temperature of the cable", temperature, "°C");
  coefficientsOf(work, cable, cable.loss);
  lossAt(work, cable.loss, metres, frequency, temperature, "");
  return work.steps;
}

/** Parameters as for cableSlope, the length in its own unit. */
export function cableSlopeSteps(
  cable: Cable,
  length: number,
  low: Megahertz,
  high: Megahertz,
  temperature: Celsius,
  unit: LengthUnit,
): readonly Step[] | Fault {
  if (isFault(cable.loss)) return cable.loss;
  const slope = cableSlope(cable, toMetres(length, unit), low, high, temperature);
  if (isFault(slope)) return slope;
  const work = new Working();
  const metres = run(work, cable, length, unit);
  work.given("T", "temperature of the cable", temperature, "°C");
  coefficientsOf(work, cable, cable.loss);
  const lossLow = lossAt(work, cable.loss, metres, low, temperature, " low");
  const lossHigh = lossAt(work, cable.loss, metres, high, temperature, " high");
  work.worked("S", "slope, A high − A low", slope, "dB", arithmetic`${lossHigh} − ${lossLow}`, LOSS);
  return work.steps;
}

/** Parameters as for loopOhms, the length in its own unit. */
export function loopOhmsSteps(
  cable: Cable,
  length: number,
  temperature: Celsius,
  unit: LengthUnit,
): readonly Step[] | Fault {
  const ohms = loopOhms(cable, toMetres(length, unit), temperature);
  if (isFault(ohms)) return ohms;
  if (isFault(cable.loop)) return cable.loop;
  const work = new Working();
  const metres = run(work, cable, length, unit);
  work.given("T", "temperature of the cable", temperature, "°C");
  const per100m = work.taken(
    "r",
    "loop resistance of 100 m at 20 °C, centre and shield in series",
    cable.loop,
    "ohm/100 m",
    sourceOf(cable, "wire after ASTM B258, shield from memory"),
  );
  const cold = work.worked(
    "R20",
    "loop resistance of this length at 20 °C",
    (per100m / 100) * metres,
    "ohm",
    arithmetic`${per100m}/100·${metres}`,
    "Resistances in series add",
  );
  const factor = work.worked(
    "t",
    "factor for the temperature, 1 + 0.00393·(T − 20)",
    1 + COPPER_PER_C * (temperature - CONDUCTOR_REFERENCE_C),
    "",
    arithmetic`1 + ${COPPER_PER_C}·(${temperature} − ${CONDUCTOR_REFERENCE_C})`,
    "Copper, IEC 60028 (from memory)",
  );
  work.worked(
    "R",
    "loop resistance",
    ohms,
    "ohm",
    arithmetic`${cold}·${factor}`,
    "Copper, IEC 60028 (from memory)",
  );
  return work.steps;
}
