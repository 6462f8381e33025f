/**
 * Bending stress in a round mast at the end of an arm.
 *
 * Source: σ = M/Z, M = F·arm, Z = π(D⁴ − d⁴)/(32·D); elementary beam theory.
 * Accuracy: exact for a straight tube bent within its elastic range; welds,
 *   holes, clamps, the attachment and the roof are not looked at.
 * Range: wall up to half the outside diameter (a solid bar).
 */
import { faults, type Fault } from "../faults";
import type { Megapascals, Metres, Millimetres, Newtons } from "../quantity";

/**
 * @param force in newtons, across the mast
 * @param arm in metres from the force down to the upper clamp
 * @param outside diameter in mm
 * @param wall thickness in mm
 * @returns stress in MPa
 */
export function mastStress(
  force: Newtons,
  arm: Metres,
  outside: Millimetres,
  wall: Millimetres,
): Megapascals | Fault {
  const inside = outside - 2 * wall;
  if (inside < 0) {
    const limits = { min: 0, aboveMin: true, max: outside / 2, unit: "mm" };
    return faults.outOfRange("wall_mm", wall, limits, "A wall is at most half the outside diameter");
  }
  const section = (Math.PI * (outside ** 4 - inside ** 4)) / (32 * outside);
  return (force * arm * 1000) / section;
}
