// Generated from the folders beside this file by `npm run generate`; do not edit.
import type { SheetFunction } from "./core/declare";
import { azimuth } from "./sightline/azimuth";
import { lookangles } from "./sightline/lookangles";

/** Every sheet function, by group and then by name. */
export const allFunctions: readonly SheetFunction[] = [
  azimuth,
  lookangles,
];
