/**
 * Resistance of a cable's loop: centre conductor out, shield back.
 *
 * R = r·L·[1 + 0.00393·(T − 20)], with r the loop's ohms at 20 °C.
 *
 * Source: copper's temperature coefficient, IEC 60028 (from memory), used for
 *   aluminium and clad steel as well; theirs is 0.0001 to 0.001 higher.
 * Accuracy: that of the loop figure; the built-in ones are from memory and
 *   within some 30 %, so take the maker's.
 * Range: −60 to 90 °C.
 */
import { isFault, type Fault } from "../faults";
import type { Celsius, Metres, Ohms } from "../quantity";
import type { Cable } from "../signal/cable";
import { atTemperature } from "./atTemperature";

/**
 * @param cable its loop resistance, in ohms per 100 m at 20 °C
 * @param length metres of cable, one way
 * @param temperature degrees Celsius of the cable
 * @returns ohms there and back
 */
export function loopOhms(cable: Cable, length: Metres, temperature: Celsius): Ohms | Fault {
  return isFault(cable.loop) ? cable.loop : atTemperature((cable.loop / 100) * length, temperature);
}
