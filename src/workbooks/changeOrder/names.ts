import { anyText, day } from "../asks";
import { asked, fields, told } from "../names";

/** What a person says of a change order; what was left out is a cell to fill. */
export const order = fields("order", {
  number: asked("Number of this order", {}, anyText("Your number for the change order", { example: "CO-1" })),
  date: asked("Date", { format: "date" }, day("The date of the change order", { example: "2026-11-20" })),
  until: asked(
    "Valid until",
    { format: "date" },
    day("The last day on which the change order can be accepted", { example: "2026-12-15" }),
  ),
  reason: asked("Reason", {}, anyText("Why the work changes, in words for the customer")),
  job: told("Job"),
  customer: told("Customer"),
  place: told("Site address"),
  quotation: told("Changes the quotation"),
  revised: told("As revised in"),
  by: told("Prepared by"),
  net: told("Change of the price without tax", { format: "money" }),
  tax: told("Change of the tax", { format: "money" }),
  change: told("Change of the total", { format: "money" }),
  earlier: told("Total as quoted", { format: "money" }),
  total: told("Revised total", { format: "money" }),
  currency: told("Currency"),
});
