/**
 * Supply voltage down a cable, and a wire's resistance, line by line: the steps
 * of loadVolts and wireOhms, with their sources, accuracy and range.
 */
import { isFault, type Fault } from "../faults";
import { CONDUCTOR_REFERENCE_C, COPPER_OHM_MM2_PER_M, COPPER_PER_C } from "../power/constants";
import { loadVolts, type LoadKind } from "../power/loadVolts";
import { wireOhms } from "../power/wireOhms";
import type { Amperes, Celsius, Ohms, Volts, Watts } from "../quantity";
import { METRES_PER_FOOT, toMetres, type LengthUnit } from "../signal/lengthUnits";
import { arithmetic, Working, type Step } from "./steps";

const OHM = "Ohm's law";
const KIRCHHOFF = "Kirchhoff's law of voltages";
const POWER = "P = V·(Vs − V)/R solved for the upper V, at which such a load runs";

function atLoad(
  work: Working,
  supply: Volts,
  load: Amperes | Watts,
  ohms: Ohms,
  kind: LoadKind,
  left: Volts,
): void {
  work.given("Vs", "voltage at the source", supply, "V");
  work.given("R", "resistance of the loop, there and back", ohms, "ohm");
  if (kind === "A") {
    work.given("I", "current, kept constant by the load", load, "A");
    const drop = work.worked(
      "ΔV",
      "voltage along the cable, I·R",
      load * ohms,
      "V",
      arithmetic`${load}·${ohms}`,
      OHM,
    );
    work.worked("V", "voltage at the load, Vs − ΔV", left, "V", arithmetic`${supply} − ${drop}`, KIRCHHOFF);
    return;
  }
  work.given("P", "power, kept constant by the load", load, "W");
  const square = work.worked(
    "D",
    "what stands under the root, Vs² − 4·P·R; below 0 the load cannot be fed",
    // At the very edge of collapse a rounding error may take it below 0, as in loadVolts.
    Math.max(0, supply * supply - 4 * load * ohms),
    "V²",
    arithmetic`${supply}^2 − 4·${load}·${ohms}`,
    POWER,
  );
  work.worked(
    "V",
    "voltage at the load, (Vs + √D)/2",
    left,
    "V",
    arithmetic`(${supply} + √(${square}))/2`,
    POWER,
  );
}

/** Parameters as for loadVolts. */
export function loadVoltsSteps(
  supply: Volts,
  load: Amperes | Watts,
  ohms: Ohms,
  kind: LoadKind,
): readonly Step[] | Fault {
  const left = loadVolts(supply, load, ohms, kind);
  if (isFault(left)) return left;
  const work = new Working();
  atLoad(work, supply, load, ohms, kind, left);
  return work.steps;
}

/** Parameters as for loadVolts; ends with the voltage that the cable takes. */
export function voltDropSteps(
  supply: Volts,
  load: Amperes | Watts,
  ohms: Ohms,
  kind: LoadKind,
): readonly Step[] | Fault {
  const left = loadVolts(supply, load, ohms, kind);
  if (isFault(left)) return left;
  const work = new Working();
  atLoad(work, supply, load, ohms, kind, left);
  work.worked(
    "Vs − V",
    "voltage that the cable takes",
    supply - left,
    "V",
    arithmetic`${supply} − ${left}`,
    KIRCHHOFF,
  );
  return work.steps;
}

const B258 = "ASTM B258";
const IEC60028 = "Copper, IEC 60028 (from memory)";

/** Parameters as for wireOhms, the length in its own unit. */
export function wireOhmsSteps(
  awg: number,
  length: number,
  conductivityPct: number,
  temperature: Celsius,
  unit: LengthUnit,
): readonly Step[] {
  const work = new Working();
  work.given("n", "American wire gauge", awg, "AWG");
  work.given("L", "length of wire", length, unit);
  const metres = toMetres(length, unit);
  if (unit === "ft") {
    work.worked(
      "L",
      "length in metres",
      metres,
      "m",
      arithmetic`${length}·${METRES_PER_FOOT}`,
      "The international foot, by definition",
    );
  }
  work.given("c", "conductivity, % of annealed copper's", conductivityPct, "% IACS");
  work.given("T", "temperature", temperature, "°C");
  const d = work.worked(
    "d",
    "diameter, 0.127·92^((36 − n)/39)",
    0.127 * 92 ** ((36 - awg) / 39),
    "mm",
    arithmetic`0.127·92^((36 − ${awg})/39)`,
    B258,
  );
  const area = work.worked(
    "A",
    "cross-section, π/4·d²",
    (Math.PI / 4) * d * d,
    "mm²",
    arithmetic`π/4·${d}^2`,
    "Geometry",
  );
  const cold = work.worked(
    "R20",
    "resistance at 20 °C, ρ/A·L·100/c",
    (COPPER_OHM_MM2_PER_M / area) * metres * (100 / conductivityPct),
    "ohm",
    arithmetic`${COPPER_OHM_MM2_PER_M}/${area}·${metres}·100/${conductivityPct}`,
    IEC60028,
  );
  const factor = work.worked(
    "t",
    "factor for the temperature, 1 + 0.00393·(T − 20)",
    1 + COPPER_PER_C * (temperature - CONDUCTOR_REFERENCE_C),
    "",
    arithmetic`1 + ${COPPER_PER_C}·(${temperature} − ${CONDUCTOR_REFERENCE_C})`,
    IEC60028,
  );
  work.worked(
    "R",
    "resistance of the wire",
    wireOhms(awg, metres, conductivityPct, temperature),
    "ohm",
    arithmetic`${cold}·${factor}`,
    IEC60028,
  );
  return work.steps;
}
