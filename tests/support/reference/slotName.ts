import type { Value } from "./job";

/** A slot that was typed as a number is kept as text with its letter. */
export const slotName = (slot: Value | undefined): Value =>
  typeof slot === "number" ? `${Math.abs(slot)}${slot < 0 ? "W" : "E"}` : (slot ?? "");
