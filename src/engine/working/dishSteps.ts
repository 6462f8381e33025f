/**
 * Dish and path, line by line: the steps of beamwidth, dishGain and
 * freeSpaceLoss, with their sources, accuracy and range.
 */
import { isFault, type Fault } from "../faults";
import type { Kilometres, Megahertz, Metres } from "../quantity";
import { beamwidth } from "../signal/beamwidth";
import { dishGain } from "../signal/dishGain";
import { freeSpaceLoss } from "../signal/freeSpaceLoss";
import { BEAMWIDTH_DEG, LIGHT_M_PER_S, wavelengthM } from "../signal/radioConstants";
import { arithmetic, Working, type Step } from "./steps";

const DISH = "Roddy, Satellite Communications, 4th ed., ch. 12";
const P525 = "ITU-R P.525";

function wavelength(work: Working, frequency: Megahertz): Metres {
  const f = work.given("f", "frequency in the air", frequency, "MHz");
  const c = work.taken("c", "speed of light", LIGHT_M_PER_S, "m/s", "SI, by definition");
  return work.worked("λ", "wavelength, c/f", wavelengthM(f), "m", arithmetic`${c}/(${f}·1000000)`, "c = λ·f");
}

/** Parameters as for beamwidth. */
export function beamwidthSteps(diameter: Metres, frequency: Megahertz): readonly Step[] | Fault {
  const width = beamwidth(diameter, frequency);
  if (isFault(width)) return width;
  const work = new Working();
  work.given("D", "diameter of the dish", diameter, "m");
  const λ = wavelength(work, frequency);
  work.worked(
    "θ",
    "width between the half-power points, 70·λ/D",
    width,
    "deg",
    arithmetic`${BEAMWIDTH_DEG}·${λ}/${diameter}`,
    "Maral & Bousquet, Satellite Communications Systems (from memory)",
  );
  return work.steps;
}

/** Parameters as for dishGain. */
export function dishGainSteps(
  diameter: Metres,
  frequency: Megahertz,
  efficiency: number,
): readonly Step[] | Fault {
  const gain = dishGain(diameter, frequency, efficiency);
  if (isFault(gain)) return gain;
  const work = new Working();
  work.given("D", "diameter of the dish", diameter, "m");
  work.given("η", "aperture efficiency", efficiency);
  const λ = wavelength(work, frequency);
  const round = work.worked(
    "r",
    "rim in wavelengths, π·D/λ",
    (Math.PI * diameter) / λ,
    "",
    arithmetic`π·${diameter}/${λ}`,
    DISH,
  );
  work.worked(
    "G",
    "gain, 10·log10(η) + 20·log10(r)",
    gain,
    "dBi",
    arithmetic`10·log10(${efficiency}) + 20·log10(${round})`,
    DISH,
  );
  return work.steps;
}

/** Parameters as for freeSpaceLoss. */
export function freeSpaceSteps(range: Kilometres, frequency: Megahertz): readonly Step[] {
  const work = new Working();
  work.given("d", "distance to the satellite", range, "km");
  const λ = wavelength(work, frequency);
  const ratio = work.worked(
    "q",
    "4π·d/λ, the distance in metres",
    (4 * Math.PI * range * 1000) / λ,
    "",
    arithmetic`4·π·${range}·1000/${λ}`,
    P525,
  );
  work.worked(
    "L",
    "loss of free space, 20·log10(q)",
    freeSpaceLoss(range, frequency),
    "dB",
    arithmetic`20·log10(${ratio})`,
    P525,
  );
  return work.steps;
}
