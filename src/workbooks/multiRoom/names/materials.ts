import { block, fields, result, told, type ColumnWords } from "../../names";

export const count = fields("count", {
  outlets: told("Outlets", { format: "integer" }),
  branches: told("Devices of Distribution", { format: "integer" }),
  heads: told("Head units", { format: "integer" }),
});

/** What is bought of one list of Parts. */
const bought = (
  unit = "pieces",
  needed: ColumnWords = result("Needed", { unit: "pieces", width: 20, format: "general" }),
  spareUnit = "pieces",
) => ({
  name: result("Part", { width: 34 }),
  needed,
  spares: result("Spares", { unit: spareUnit, width: 10, format: "integer" }),
  quantity: result("To buy", { unit, width: 12, format: "integer" }),
  sold: result("Sold by", { width: 20 }),
  price: result("Price", { unit: "money", width: 12, format: "money" }),
  sum: result("Sum", { unit: "money", width: 14, format: "money" }),
});

const TOGETHER = { order: ["name", "sum"] } as const;

export const cablesBought = block(
  "cables_bought",
  {
    ...bought("reels", result("All lengths", { unit: "m or ft", width: 20, format: "one" }), "runs"),
    runs: result("Runs", { unit: "pieces", width: 14, format: "integer" }),
  },
  TOGETHER,
);
export const passivesBought = block("passives_bought", bought(), TOGETHER);
export const unitsBought = block("units_bought", bought(), TOGETHER);
export const suppliesBought = block("supplies_bought", bought(), TOGETHER);
export const platesBought = block("plates_bought", bought(), TOGETHER);
export const fittingsBought = block(
  "fittings_bought",
  {
    ...bought("packs"),
    pieces: result("Counted in the distribution", { unit: "pieces", width: 14, format: "general" }),
  },
  TOGETHER,
);
export const feedsBought = block("feeds_bought", bought(), TOGETHER);
export const resistorsBought = block("resistors_bought", bought(), TOGETHER);
