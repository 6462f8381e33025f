import type { CheckOfDistribution } from "../../engine/distribution/finding";

/** Of a part with a through port, or one that divides the signal. */
export const openPortWord = (checks: ReadonlySet<CheckOfDistribution>): string =>
  checks.has("open through port") ? "left open" : checks.has("end resistor on power") ? "passes power" : "ok";
