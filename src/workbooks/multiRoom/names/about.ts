import { fields, told } from "../../names";

/** Beside the versions on About. */
export const filledIn = fields("about", {
  by: told("Filled in by"),
  date: told("Date of the quote", { format: "date" }),
});
