/**
 * A job's cables: (k1·√f + k2·f + k0) dB per 100 m at 20 °C, 0.198 % more for each °C; loop ohms per 100 m at 20 °C,
 * 0.393 % more for each °C, always at the hottest. Maker's figures go before those of the built-in type.
 */
import { cableLoss, loopOhms } from "../../cablePhysics";
import { isFilled, type Row } from "../job";
import { numberIn, rowNamed, settingsOf, type Tables } from "./tables";

const BUILT_IN = /^series (59|6|7|11)(, copper|, copper-clad steel)?$/i;

export interface Cable {
  readonly loss: (metres: number, mhz: number, celsius: number) => number;
  readonly ohms: (metres: number) => number;
}

/** @returns nothing where no such cable is known, or where it lacks what it must have */
export function cableNamed(tables: Tables, name: string): Cable | undefined {
  const row: Row | undefined = rowNamed(tables.cables, "name", name);
  const like = String(row ? (row.like ?? "") : name)
    .trim()
    .toLowerCase();
  const type = BUILT_IN.test(like) ? like : undefined;
  const hot = numberIn(settingsOf(tables), "hot");
  const own = row && isFilled(row, "k1");
  if (!own && !type) return undefined;
  if (!type && !(row && isFilled(row, "loop"))) return undefined;
  return {
    loss: (metres, mhz, celsius) =>
      own
        ? ((numberIn(row, "k1") * Math.sqrt(mhz) + numberIn(row, "k2") * mhz + numberIn(row, "k0")) *
            metres *
            (1 + 0.00198 * (celsius - 20))) /
          100
        : cableLoss(type!, metres, mhz, celsius),
    ohms: (metres) =>
      row && isFilled(row, "loop")
        ? (numberIn(row, "loop") * metres * (1 + 0.00393 * (hot - 20))) / 100
        : loopOhms(type!, metres, hot),
  };
}
