import { block, fields, result, told } from "../../names";

export const diagnosis = block("diagnosis", {
  cause: result("Cause", { width: 26 }),
  where: result("Where", { width: 18 }),
  probability: result("Probability", { unit: "by the model", width: 12, format: "percent" }),
  evidence: result("Evidence", { width: 62 }),
  next: result("Next measurement, which would decide", { width: 56 }),
});

export const readings = fields("diagnosis", {
  band: told("Measured at", { unit: "MHz", format: "integer" }),
});
