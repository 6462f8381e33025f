import { estimate } from "../workbooks/multiRoom/names";

/** Inputs by the metre or the foot, though their unit does not say so. */
export const BY_THE_UNIT: ReadonlySet<string> = new Set([
  estimate.cables.price.name,
  estimate.cables.reel.name,
  estimate.routes.minutes.name,
]);
