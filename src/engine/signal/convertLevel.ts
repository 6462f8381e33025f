/**
 * A level across 75 Ω in another unit.
 *
 * dBµV = 20·log10(µV); dBmV = dBµV − 60; dBm = dBµV − 90 − 10·log10(75).
 *
 * Source: P = V²/R.
 * Accuracy: exact.
 * Range: any level; a voltage above 0 µV.
 */
import { faults, type Fault } from "../faults";
import type { DecibelMicrovolts } from "../quantity";
import { LEVEL_OHMS } from "./constants";

export const LEVEL_UNITS = ["dBµV", "dBuV", "dBmV", "dBm", "µV", "uV"] as const;
export type LevelUnit = (typeof LEVEL_UNITS)[number];

/** What a level in dBµV is above the same level in dBm: 120 dB from µV to V, less 30 dB from W to mW. */
const DBM_TO_DBUV = 90 + 10 * Math.log10(LEVEL_OHMS);
const DBMV_TO_DBUV = 60;

/**
 * @param value the level, in `from`
 * @param from its unit
 * @param to the unit wanted
 * @returns the level in `to`; a fault for a voltage that is not above 0
 */
export function convertLevel(value: number, from: LevelUnit, to: LevelUnit): number | Fault {
  const isVoltage = from === "µV" || from === "uV";
  if (isVoltage && value <= 0) return faults.noVoltage(value);
  return fromDecibelMicrovolts(toDecibelMicrovolts(value, from), to);
}

function toDecibelMicrovolts(value: number, unit: LevelUnit): DecibelMicrovolts {
  switch (unit) {
    case "dBµV":
    case "dBuV":
      return value;
    case "dBmV":
      return value + DBMV_TO_DBUV;
    case "dBm":
      return value + DBM_TO_DBUV;
    case "µV":
    case "uV":
      return 20 * Math.log10(value);
  }
}

function fromDecibelMicrovolts(level: DecibelMicrovolts, unit: LevelUnit): number {
  switch (unit) {
    case "dBµV":
    case "dBuV":
      return level;
    case "dBmV":
      return level - DBMV_TO_DBUV;
    case "dBm":
      return level - DBM_TO_DBUV;
    case "µV":
    case "uV":
      return 10 ** (level / 20);
  }
}
