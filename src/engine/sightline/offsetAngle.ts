/**
 * Offset angle of a dish from its rim: a rim that looks round to the slot is
 * taller than wide.
 *
 * Source: offset = acos(width / height) (Wade, microwave antenna book, ch. 5).
 * Accuracy: 1 mm on the rim of a 0.6 m dish moves the angle by about 0.2 deg.
 * Range: width up to the height; a round rim has offset 0.
 */
import { faults, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { acosDeg } from "./angles";

/**
 * @param width of the rim, across, in metres
 * @param height of the rim, along its long axis, in metres
 * @returns degrees between the beam and the square to the rim
 */
export function offsetAngle(width: Metres, height: Metres): Degrees | Fault {
  if (!(width <= height)) {
    return faults.outOfRange(
      "width",
      width,
      { min: 0, max: height, aboveMin: true },
      "The rim of an offset dish is taller than wide: width and height are perhaps exchanged",
    );
  }
  return acosDeg(width / height);
}
