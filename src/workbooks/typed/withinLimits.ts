import type { Reading } from "./reading";
import { sentences } from "./sentences";
import type { NumberKind } from "./typedKind";

/** @param unit as the sentence names it */
export function withinLimits(
  text: string,
  value: number,
  { min = -Infinity, max = Infinity, integer, quantity }: NumberKind,
  unit: string | undefined,
): Reading<number> {
  if (integer && !Number.isInteger(value)) return { refused: sentences.notWhole(text) };
  if (value >= min && value <= max) return { value };
  const shown = quantity === "share" ? percent : String;
  const named = quantity === "share" || unit === undefined ? "" : ` ${unit}`;
  const limits =
    max === Infinity
      ? `${shown(min)}${named} or more`
      : min === -Infinity
        ? `${shown(max)}${named} or less`
        : `from ${shown(min)} to ${shown(max)}${named}`;
  return { refused: sentences.outOfRange(text, `${shown(value)}${named}`, limits) };
}

/** A share as people write it. */
export const percent = (share: number): string => `${Number((share * 100).toPrecision(12))}%`;
