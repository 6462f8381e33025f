/** Lengths in two units: feet with inches, metres with centimetres. */
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import { readNumeral } from "./readNumeral";

const INCHES_PER_FOOT = 12;
const FEET = /^(\d+(?:[.,]\d+)?) ?(?:'|(?:ft|feet|foot)\b\.?) ?-? ?(\d.*)$/i;
const INCHES = /^(\d+(?:[.,]\d+)?|(?:\d+ )?\d+\/\d+) ?(?:"|(?:in|inch|inches)\.?)$/i;
const METRES = /^(\d+) ?m ?(\d{2})(?: ?cm)?$/i;

/**
 * `41' 6 1/2"`, `41 ft 6 in`, `41'-6"`.
 * @param text as `asFigures` gives it
 * @returns metres; NaN where feet are followed by what is no inches (twelve and more, a mark that is missing);
 *   undefined for what does not begin with feet and go on
 */
export function feetAndInches(text: string): number | undefined {
  const [, feet, behind] = FEET.exec(text) ?? [];
  if (feet === undefined) return undefined;
  const [, inches] = INCHES.exec(behind!) ?? [];
  const numeral =
    inches === undefined ? undefined : readNumeral(inches, { context: {}, mixed: true, fractions: true });
  const value = numeral && "value" in numeral ? numeral.value : NaN;
  if (!/^\d+$/.test(feet) || !(value < INCHES_PER_FOOT)) return NaN;
  return (Number(feet) + value / INCHES_PER_FOOT) * METRES_PER_FOOT;
}

/** `9 m 50`, as it is said, and `9 m 50 cm`. @returns metres */
export function metresAndCentimetres(text: string): number | undefined {
  const [, metres, centimetres] = METRES.exec(text) ?? [];
  return metres === undefined ? undefined : Number(metres) + Number(centimetres) / 100;
}
