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
) => ({
  name: result("Part", { width: 34 }),
  needed,
  quantity: result("To buy", { unit, width: 12, format: "integer" }),
  price: result("Price", { unit: "money", width: 12, format: "money" }),
  sum: result("Sum", { unit: "money", width: 14, format: "money" }),
});

export const cablesBought = block(
  "cables_bought",
  bought("reels", result("All lengths", { unit: "m or ft", width: 20, format: "one" })),
);
export const passivesBought = block("passives_bought", bought());
export const unitsBought = block("units_bought", bought());
export const suppliesBought = block("supplies_bought", bought());
export const platesBought = block("plates_bought", bought());
export const fittingsBought = block("fittings_bought", {
  ...bought("packs"),
  pieces: result("Counted in the distribution", { unit: "pieces", width: 14, format: "general" }),
});
export const feedsBought = block("feeds_bought", bought());
export const resistorsBought = block("resistors_bought", bought());
