/**
 * Carrier-to-noise ratio that a transmission needs for quasi error-free
 * reception, in its Nyquist bandwidth (the symbol rate), where it equals Es/N0.
 *
 * Source: DVB-S: EN 300 421 table 5, Eb/N0 in an IF loop, of which
 *   Es/N0 = Eb/N0 + 10·log10(2·r·188/204). DVB-S2: EN 302 307-1 table 13, ideal
 *   receiver, normal frames, no pilots.
 * Accuracy: as printed. Real receivers of DVB-S2 need 1 to 3 dB more (common
 *   practice, no source); DVB-S figures hold 0.8 dB of margin.
 * Range: the 28 modes of the table for normal frames, and the five of DVB-S.
 */
import { faults, type Fault } from "../faults";
import type { Decibels } from "../quantity";

export const DVB_STANDARDS = ["DVB-S", "DVB-S2"] as const;
export type DvbStandard = (typeof DVB_STANDARDS)[number];
export const MODULATIONS = ["QPSK", "8PSK", "16APSK", "32APSK"] as const;
export type Modulation = (typeof MODULATIONS)[number];

/** EN 300 421 table 5: Eb/N0 in dB, referred to the user bit rate. */
const DVB_S_EB_N0: Readonly<Record<string, Decibels>> = {
  "1/2": 4.5,
  "2/3": 5.0,
  "3/4": 5.5,
  "5/6": 6.0,
  "7/8": 6.4,
};
/** Share of a DVB-S packet that is user data (the rest is Reed-Solomon's). */
const OUTER_CODE_RATE = 188 / 204;
const QPSK_BITS = 2;

/**
 * EN 302 307-1 table 13: Es/N0 in dB. Of 16APSK and 32APSK the rates from 3/4 to 8/9 were not read in the standard
 * itself, but in several public transcriptions of its table, which agree to the last digit.
 */
const DVB_S2_ES_N0: Readonly<Record<Modulation, Readonly<Record<string, Decibels>>>> = {
  QPSK: {
    "1/4": -2.35,
    "1/3": -1.24,
    "2/5": -0.3,
    "1/2": 1.0,
    "3/5": 2.23,
    "2/3": 3.1,
    "3/4": 4.03,
    "4/5": 4.68,
    "5/6": 5.18,
    "8/9": 6.2,
    "9/10": 6.42,
  },
  "8PSK": { "3/5": 5.5, "2/3": 6.62, "3/4": 7.91, "5/6": 9.35, "8/9": 10.69, "9/10": 10.98 },
  "16APSK": { "2/3": 8.97, "3/4": 10.21, "4/5": 11.03, "5/6": 11.61, "8/9": 12.89, "9/10": 13.13 },
  "32APSK": { "3/4": 12.73, "4/5": 13.64, "5/6": 14.28, "8/9": 15.69, "9/10": 16.05 },
};

const CODE_RATES = [...new Set(Object.values(DVB_S2_ES_N0).flatMap(Object.keys)), "7/8"];
const asNumber = (rate: string): number => {
  const [upper, lower] = rate.split("/").map(Number) as [number, number];
  return upper / lower;
};
/** A rate given as 0.67 or 0.833 is still recognised. */
const RATE_ROUNDING = 0.004;

/** @returns the code rate as a fraction, from text such as "3/4" or a number such as 0.75 */
function codeRate(given: string): string {
  const tidy = given.replaceAll(" ", "");
  if (tidy.includes("/")) return tidy;
  const value = Number(tidy);
  return CODE_RATES.find((rate) => Math.abs(asNumber(rate) - value) < RATE_ROUNDING) ?? tidy;
}

/**
 * @param standard DVB-S or DVB-S2
 * @param modulation QPSK is the only one of DVB-S
 * @param rate code rate as text, "3/4", or as a number, 0.75
 * @returns dB; a fault for a mode that the table here lacks
 */
export function neededCarrierToNoise(
  standard: DvbStandard,
  modulation: Modulation,
  rate: string,
): Decibels | Fault {
  const fraction = codeRate(rate);
  const modes = standard === "DVB-S" ? (modulation === "QPSK" ? DVB_S_EB_N0 : {}) : DVB_S2_ES_N0[modulation];
  const found = Object.hasOwn(modes, fraction) ? modes[fraction] : undefined;
  if (found === undefined) {
    return faults.modeNotInTable(standard, modulation, fraction, Object.keys(modes));
  }
  if (standard === "DVB-S2") return found;
  return found + 10 * Math.log10(QPSK_BITS * asNumber(fraction) * OUTER_CODE_RATE);
}
