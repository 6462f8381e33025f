/**
 * The guest house with head units of the higher voltage on its dishes, each with its own supply at the lower end of its
 * cable, whose volts stand at outlets too: it is open to them, and so is every device but the annexe's tap.
 */
import type { JobInputs } from "../../src/workbooks/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

/** Volts of that supply, on Parts. */
export const BELOW_V = 24;
export const BELOW_KIND = "head unit, higher voltage";
export const BELOW = "supply for the higher voltage";
/** Two take the two slots of the one dish. */
const ON: Readonly<Record<string, string>> = { H1: "D1", H2: "D1", H3: "D2" };

export const suppliedBelow: JobInputs = {
  ...guestHouse,
  blocks: {
    ...guestHouse.blocks,
    dishes: guestHouse.blocks!.dishes!.map((row) =>
      Object.fromEntries(Object.entries(row).filter(([key]) => key !== "feed")),
    ),
    feeders: [],
    heads: guestHouse.blocks!.heads!.map((row) => ({
      ...row,
      type: BELOW_KIND,
      dish: ON[String(row.id)]!,
      supply: BELOW,
    })),
    supplies: guestHouse.blocks!.supplies!.map((row) =>
      row.name === BELOW ? { ...row, other_side: "all ports" } : row,
    ),
    passives: guestHouse.blocks!.passives!.map((row) => ({
      ...row,
      power: row.name === "tap 12 dB" ? "no" : "all ports",
    })),
  },
};
