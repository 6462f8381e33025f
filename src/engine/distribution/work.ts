/**
 * Pieces of work of a distribution, as labour is priced: each takes its
 * minutes, whatever part it is.
 *
 * Source: counting, as counts.ts.
 * Accuracy: exact. Of a row with a fault of its own no part counts; it is still
 *   an outlet, a device or a head unit of the job.
 */
import type { Counts } from "./counts";
import type { Tree } from "./tree";

export const DEVICES = ["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter"] as const;

export type Work =
  | (typeof DEVICES)[number]
  | "connector"
  | "grounding block"
  | "end resistor"
  | "receiver lead"
  | "mains socket"
  | "dish"
  | "further slot on a dish"
  | "feed"
  | "head unit on a dish"
  | "switch"
  | "supply"
  | "wall plate"
  | "dish bonding conductor"
  | "outlet to measure"
  | "floor"
  | "outlet"
  | "device"
  | "head unit";

/**
 * @param floors how many different ones
 * @returns how many of each, also of those of which there are none
 */
export function workOf({ job }: Tree, counts: Counts, floors: number): ReadonlyMap<Work, number> {
  const sound = <T extends { readonly fault: unknown }>(rows: readonly T[]): T[] =>
    rows.filter(({ fault }) => !fault);
  const dishes = sound(job.dishes);
  const headUnits = sound(job.headUnits);
  const outlets = sound(job.outlets);
  const devices = [
    ...sound(job.devices).map(({ part }) => part.kind),
    ...outlets.flatMap(({ split }) => split?.kind ?? []),
  ];
  const sitting = (sits: "on the dish" | "fed"): number =>
    headUnits.filter(({ kind }) => kind.sits === sits).length;
  const slots = (some: typeof dishes): number => some.reduce((sum, dish) => sum + dish.slots.length, 0);
  return new Map<Work, number>([
    ["connector", counts.connectors],
    ["grounding block", counts.groundingBlocks],
    ["end resistor", counts.endResistors],
    ["receiver lead", counts.receiverLeads],
    ["mains socket", counts.mainsSockets],
    ["dish", dishes.length],
    ["further slot on a dish", dishes.reduce((sum, dish) => sum + Math.max(0, dish.slots.length - 1), 0)],
    ["feed", slots(dishes.filter(({ feed }) => feed))],
    ["head unit on a dish", sitting("on the dish")],
    ["switch", sitting("fed")],
    ...DEVICES.map((kind) => [kind, devices.filter((one) => one === kind).length] as const),
    ["supply", counts.mainsSockets],
    ["wall plate", outlets.filter(({ plate }) => plate).length],
    ["dish bonding conductor", dishes.length],
    ["outlet to measure", job.outlets.length],
    ["floor", floors],
    ["outlet", job.outlets.length],
    ["device", job.devices.length],
    ["head unit", job.headUnits.length],
  ]);
}
