import type { VoltsAndAmperes } from "../../engine/distribution/supplyOfHeadUnits";
import type { Solved } from "./solved";

/** @returns a head unit's least volts in the states in which it has to work; null where it has to in none */
export function leastInUse({ found: { supply, trunks } }: Solved, head: number): VoltsAndAmperes | null {
  const { allOff, allOn, leastAlone, fedWithoutReceivers } = supply.headUnits[head]!;
  const handsOn = trunks.inlets.some((some) => some.some(({ above }) => above === head));
  const isUsed = fedWithoutReceivers || leastAlone !== null || handsOn;
  if (!isUsed) return null;
  return [leastAlone, fedWithoutReceivers ? allOff : null].reduce<VoltsAndAmperes>(
    (least, one) => (one && one.volts < least.volts ? one : least),
    allOn,
  );
}
