/**
 * Flags an earthing or bonding conductor that is thinner or longer than the
 * figure of the clause to read.
 *
 * It flags, it does not certify: what it lets pass may still be wrong by the
 * local code, which a licensed electrician knows.
 *
 * Source: IEC/EN 60728-11 by way of works that quote it; NEC 810.21(H) and
 *   800.100 (until 2017 in 820.100), see constants.
 * Accuracy: size and length only. Route, joints, clamps, electrodes and
 *   lightning protection are not looked at.
 */
import { faults, type Fault } from "../faults";
import type { BondRule } from "./constants";
import type { Metres, SquareMillimetres } from "../quantity";

export const LOOK_CLOSER = "look closer";
export const NO_FLAG = "no flag";

export interface BondFinding {
  readonly word: typeof LOOK_CLOSER | typeof NO_FLAG;
  /** What was found, if anything, and the clause to read. */
  readonly clause: string;
}

/**
 * @param rule the kind of conductor
 * @param size cross-section in mm²
 * @param length in metres; needed where the clause limits it
 * @returns whether to look closer, and the clause to read
 */
export function bondCheck(
  rule: BondRule,
  size: SquareMillimetres,
  length: Metres | undefined,
): BondFinding | Fault {
  if (rule.mostLength !== undefined && length === undefined) {
    return faults.missing("length", `the conductor's length, which ${rule.kind} is held to`);
  }
  const found: string[] = [];
  if (size < rule.leastSize) found.push("size is below the clause's figure");
  // A length given in feet may come back a rounding error longer.
  if (rule.mostLength !== undefined && length! > rule.mostLength * (1 + 1e-9)) {
    found.push("length is beyond the clause's figure");
  }
  return found.length > 0
    ? { word: LOOK_CLOSER, clause: `${found.join(", ")}; ${rule.clause}` }
    : { word: NO_FLAG, clause: rule.clause };
}
