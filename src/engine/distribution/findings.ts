/** What is asked of every distribution: each finding a sentence at the rows that it is about. */
import type { Distribution } from "./distribution";
import type { Finding, Wanted } from "./finding";
import { rowFindings } from "./findingsOfRows";
import { signalFindings } from "./findingsOfSignal";
import { supplyFindings } from "./findingsOfSupply";

/** @returns what does not hold, in the order of the checks; rows that are bad have faults of their own */
export const findings = (found: Distribution, wanted: Wanted): Finding[] => [
  ...supplyFindings(found),
  ...rowFindings(found),
  ...signalFindings(found, wanted),
];
