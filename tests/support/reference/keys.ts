import type { Value } from "./job";

/** What the first formula of a counted column shows of a name. */
export const keyOf = (value: Value | undefined): Value =>
  (value ?? "") === "" ? "" : typeof value === "number" ? value : `_${value}`;
