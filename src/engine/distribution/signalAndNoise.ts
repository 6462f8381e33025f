/**
 * A carrier and the noise beside it, carried from part to part.
 *
 * A part of loss L at the temperature T adds k·T·(1 − 1/L)·B at its output; an
 * amplifier or a receiver of noise figure F adds k·290·(F − 1)·B at its input:
 * F − 1, since the noise of what stands before it is counted there already.
 *
 * Source: Friis, Noise figures of radio receivers (1944), as powers carried
 *   from stage to stage; Roddy, Satellite Communications, 4th ed., ch. 12.
 * Accuracy: exact for matched parts at one frequency.
 */
import type { DecibelMicrovolts, Decibels, Kelvin } from "../quantity";
import { convertLevel } from "../signal/convertLevel";
import { noiseTemperature } from "../signal/noiseTemperature";
import { BOLTZMANN_J_PER_K } from "../signal/radioConstants";

/** Hertz over which noise is counted. */
type Hertz = number;
/** 10·log10 of milliwatts in a watt. */
const WATT_DBM = 30;

export interface Signal {
  readonly level: DecibelMicrovolts;
  /** Its power in the band, as a temperature: watts are k times it times the band. */
  readonly noise: Kelvin;
}

const ratio = (decibels: Decibels): number => 10 ** (decibels / 10);

/** After a part that takes away and adds the noise of its own warmth. */
export const afterLoss = ({ level, noise }: Signal, loss: Decibels, part: Kelvin): Signal => ({
  level: level - loss,
  noise: noise / ratio(loss) + part * (1 - 1 / ratio(loss)),
});

/** With a part's own noise at its input, as a temperature. */
export const withNoise = ({ level, noise }: Signal, own: Kelvin): Signal => ({ level, noise: noise + own });

/** After an amplifier; its noise figure at 290 K. */
export const afterGain = (signal: Signal, gain: Decibels, noiseFigure: Decibels): Signal => {
  const { level, noise } = withNoise(signal, noiseTemperature(noiseFigure));
  return { level: level + gain, noise: noise * ratio(gain) };
};

/** After a part that holds its output at a level, whatever comes in. */
export const levelledTo = (signal: Signal, to: DecibelMicrovolts, noiseFigure: Decibels): Signal =>
  afterGain(signal, to - signal.level, noiseFigure);

/** The noise as a level. */
export const noiseLevel = ({ noise }: Signal, band: Hertz): DecibelMicrovolts =>
  // Only a voltage can be refused.
  convertLevel(10 * Math.log10(BOLTZMANN_J_PER_K * noise * band) + WATT_DBM, "dBm", "dBµV") as number;

export const carrierToNoise = (signal: Signal, band: Hertz): Decibels =>
  signal.level - noiseLevel(signal, band);
