/**
 * Pieces of work of a distribution, as labour is priced: each takes its
 * minutes, whatever part it is.
 *
 * Source: counting, as counts.ts.
 * Accuracy: exact. Of a row with a fault of its own no part counts; it is still
 *   an outlet, a device or a head unit of the job.
 */
import type { Counts } from "./counts";
import type { DeviceKind } from "./parts";
import type { Tree } from "./tree";

export interface Piece {
  readonly name: string;
  readonly quantity: number;
}

/**
 * @param floors how many different ones
 * @returns each line, also those of none
 */
export function workOf({ job }: Tree, counts: Counts, floors: number): Piece[] {
  const sound = <T extends { readonly fault: unknown }>(rows: readonly T[]): T[] =>
    rows.filter(({ fault }) => !fault);
  const dishes = sound(job.dishes);
  const headUnits = sound(job.headUnits);
  const outlets = sound(job.outlets);
  const devices = [
    ...sound(job.devices).map(({ part }) => part.kind),
    ...outlets.flatMap(({ split }) => split?.kind ?? []),
  ];
  const ofKind = (kind: DeviceKind): Piece => ({
    name: kind,
    quantity: devices.filter((one) => one === kind).length,
  });
  const sitting = (sits: "on the dish" | "fed"): number =>
    headUnits.filter(({ kind }) => kind.sits === sits).length;
  const slots = (some: typeof dishes): number => some.reduce((sum, dish) => sum + dish.slots.length, 0);
  return [
    { name: "connector", quantity: counts.connectors },
    { name: "grounding block", quantity: counts.groundingBlocks },
    { name: "end resistor", quantity: counts.endResistors },
    { name: "receiver lead", quantity: counts.receiverLeads },
    { name: "mains socket", quantity: counts.mainsSockets },
    { name: "dish", quantity: dishes.length },
    {
      name: "further slot on a dish",
      quantity: dishes.reduce((sum, dish) => sum + Math.max(0, dish.slots.length - 1), 0),
    },
    { name: "feed", quantity: slots(dishes.filter(({ feed }) => feed)) },
    { name: "head unit on a dish", quantity: sitting("on the dish") },
    { name: "switch", quantity: sitting("fed") },
    ...(["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter"] as const).map(ofKind),
    { name: "supply", quantity: counts.mainsSockets },
    { name: "wall plate", quantity: outlets.filter(({ plate }) => plate).length },
    { name: "dish bonding conductor", quantity: dishes.length },
    { name: "outlet to measure", quantity: job.outlets.length },
    { name: "floor", quantity: floors },
    { name: "outlet", quantity: job.outlets.length },
    { name: "device", quantity: job.devices.length },
    { name: "head unit", quantity: job.headUnits.length },
  ];
}
