/** The guest house with head units of the higher voltage, each with its own supply at the lower end of its cable. */
import type { JobInputs } from "../../src/workbooks/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

/** Volts of that supply, on Parts. */
export const BELOW_V = 24;
export const BELOW_KIND = "head unit, higher voltage";
export const BELOW = "supply for the higher voltage";

export const suppliedBelow: JobInputs = {
  ...guestHouse,
  blocks: {
    ...guestHouse.blocks,
    heads: guestHouse.blocks!.heads!.map((row) => ({
      ...row,
      type: BELOW_KIND,
      supply: BELOW,
      at: "",
    })),
    // No volts are predicted below a device that passes power at one port.
    passives: guestHouse.blocks!.passives!.map((row) =>
      row.name === "tap 12 dB" ? { ...row, power: "one port" } : row,
    ),
  },
};
