import { block, fields, result, told, type ColumnWords } from "../../names";

export const count = fields("count", {
  outlets: told("Outlets", { format: "integer" }),
  branches: told("Splitters and taps", { format: "integer" }),
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

export const buycables = block(
  "buycables",
  bought("reels", result("All runs", { unit: "m or ft", width: 20, format: "one" })),
);
export const buypassives = block("buypassives", bought());
export const buyunits = block("buyunits", bought());
export const buysupplies = block("buysupplies", bought());
export const buyplates = block("buyplates", bought());
export const buyfittings = block("buyfittings", bought("packs"));
