import { fields, told } from "./names";

/** The master check, and the cells that it counts. */
export const checks = fields(
  "checks",
  {
    failed: told("Checks that need attention", { format: "integer" }),
    verdict: told("In the head of every sheet"),
  },
  ["result", "entries"],
);
