import type { VoltsAndAmperes } from "../../engine/distribution/supplyOfHeadUnits";
import type { Solved } from "./solved";
import { handingOn } from "./supplyOfHead";

/** @returns a head unit's least volts in the states in which it has to work; null where it has to in none */
export function leastInUse(solved: Solved, head: number): VoltsAndAmperes | null {
  const { allOff, allOn, leastAlone, fedWithoutReceivers } = solved.found.supply.headUnits[head]!;
  const isUsed = fedWithoutReceivers || leastAlone !== null || handingOn(solved).has(head);
  if (!isUsed) return null;
  return [leastAlone, fedWithoutReceivers ? allOff : null].reduce<VoltsAndAmperes>(
    (least, one) => (one && one.volts < least.volts ? one : least),
    allOn,
  );
}
