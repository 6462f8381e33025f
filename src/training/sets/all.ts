/** Every training set, in the order in which a course would take them. */
import type { AnySet } from "../exercise";
import { badQuoteSet } from "./badQuoteSet";
import { cableSet } from "./cableSet";
import { lookAngleSet } from "./lookAngleSet";
import { pricingSet } from "./pricingSet";
import { smallJobSet } from "./smallJobSet";
import { splitterSet } from "./splitterSet";
import { supplySet } from "./supplySet";
import { tunerSet } from "./tunerSet";

export const trainingSets: readonly AnySet[] = [
  lookAngleSet,
  cableSet,
  splitterSet,
  tunerSet,
  supplySet,
  pricingSet,
  smallJobSet,
  badQuoteSet,
];

export const trainingSetOf = (id: string): AnySet | undefined => trainingSets.find((set) => set.id === id);
