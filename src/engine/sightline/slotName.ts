import type { Degrees } from "../quantity";

/** @returns an orbital slot as people write it: 97W, 13E */
export const slotName = (east: Degrees): string => `${Math.abs(east)}${east < 0 ? "W" : "E"}`;
