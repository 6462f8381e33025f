/**
 * Loss from a splitter's input to one of its equal outputs.
 *
 * L = 10·log10(N) + excess.
 *
 * Source: equal division of power among N outputs.
 * Accuracy: exact for the ideal part. The excess is the maker's: a published
 *   explanation of splitters has 3.5, 7 and 10.5 dB below 1 GHz for 2, 4 and 8
 *   ways (0.5 to 1.5 dB of excess); in the satellite band 2 to 4 dB, from memory.
 * Range: equal outputs; an unequal 3-way is a 2-way whose one leg is split again.
 */
import type { Decibels } from "../quantity";

/**
 * @param ways number of equal outputs
 * @param excess dB beyond the ideal division
 * @returns dB, positive
 */
export const splitterLoss = (ways: number, excess: Decibels): Decibels => 10 * Math.log10(ways) + excess;
