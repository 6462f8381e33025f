/**
 * The tuning word that a receiver sends to its head unit: which frequency of
 * the intermediate band is to be put on the receiver's user band.
 *
 * Source: EN 50494, T = round((F_IF + F_UB)/4 − 350), 10 bits, steps of 4 MHz;
 *   EN 50607, T = F_IF − 100, 11 bits, steps of 1 MHz. Both formulas were seen
 *   in open driver code, not in the standards' own text.
 * Accuracy: exact; a tie of EN 50494's rounding goes up.
 * Range: words that the bits hold; others are refused.
 */
import { faults, type Fault } from "../faults";
import type { Megahertz } from "../quantity";

export const TUNING_STANDARDS = ["EN 50494", "EN 50607"] as const;
export type TuningStandard = (typeof TUNING_STANDARDS)[number];

const BITS: Readonly<Record<TuningStandard, number>> = { "EN 50494": 10, "EN 50607": 11 };

/**
 * @param ifFrequency wanted frequency of the intermediate band in MHz
 * @param bandFrequency centre of the user band in MHz; EN 50607 doesn't use it
 * @param standard which of the two standards the head unit follows
 * @returns the tuning word
 */
export function tuningWord(
  ifFrequency: Megahertz,
  bandFrequency: Megahertz | undefined,
  standard: TuningStandard,
): number | Fault {
  if (standard === "EN 50494" && bandFrequency === undefined) {
    return faults.missing("band_frequency", "the centre of the user band in MHz, which EN 50494 needs");
  }
  const word =
    standard === "EN 50494"
      ? Math.round((ifFrequency + bandFrequency!) / 4 - 350)
      : Math.round(ifFrequency - 100);
  const bits = BITS[standard];
  return word >= 0 && word < 2 ** bits ? word : faults.tuningWordOut(word, standard, bits);
}
