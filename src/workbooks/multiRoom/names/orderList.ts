import { block, result } from "../../names";

/** A row for each part that is bought. */
export const orders = block("orders", {
  supplier: result("Order from", { width: 20 }),
  article: result("Article", { width: 14 }),
  part: result("Part", { width: 31 }),
  quantity: result("Quantity", { width: 10, format: "integer" }),
  sold: result("Sold by", { width: 20 }),
  price: result("Quoted price", { unit: "money", width: 14, format: "money" }),
  priced: result("Priced on", { width: 12, format: "date" }),
  until: result("Valid until", { width: 12, format: "date" }),
  note: result("Note", { width: 11 }),
  sum: result("Sum", { unit: "money", width: 12, format: "money" }),
  together: result("Supplier's sum", { unit: "money", width: 14, format: "money" }),
});
