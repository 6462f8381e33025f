import { perSolved } from "./perSolved";

/** By row of the devices: an amplifier's output and its limit. */
export const amplifierAt = perSolved(
  ({ found: { amplifiers } }) => new Map(amplifiers.map((one) => [one.device, one])),
);
