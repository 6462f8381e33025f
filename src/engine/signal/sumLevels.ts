/**
 * Level of several carriers together.
 *
 * L = 10·log10(Σ 10^(Li/10)).
 *
 * Source: the powers of carriers that are not in step add.
 * Accuracy: exact; n equal carriers are 10·log10(n) above one of them.
 * Range: any levels. Not for the same carrier met twice, which interferes.
 */
import type { DecibelMicrovolts } from "../quantity";

/**
 * @param levels dBµV, at least one
 * @returns dBµV
 */
export function sumLevels(levels: readonly DecibelMicrovolts[]): DecibelMicrovolts {
  // Relative to the greatest, so that no power of ten overflows.
  const greatest = levels.reduce((a, b) => Math.max(a, b));
  return greatest + 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** ((level - greatest) / 10), 0));
}
