/** Invented cables of the exercises (demonstration), near those of the trade, with figures that can be typed. */
import type { Cable } from "../../engine/signal/cable";
import type { Given } from "../exercise";
import { forgotten } from "../slips/terms";

interface TrainingCable extends Cable {
  readonly loss: { readonly k1: number; readonly k2: number; readonly k0: number };
  readonly loop: number;
}

export const TRAINING_CABLES: readonly TrainingCable[] = [
  { name: "thin drop", loss: { k1: 0.74, k2: 0.002, k0: 1.2 }, loop: 15.2 },
  { name: "drop", loss: { k1: 0.64, k2: 0.0007, k0: 0.45 }, loop: 4.9 },
  { name: "better drop", loss: { k1: 0.51, k2: 0.001, k0: 0.34 }, loop: 3.6 },
  { name: "trunk", loss: { k1: 0.35, k2: 0.0026, k0: 0.46 }, loop: 2.1 },
];

export const cableNamed = (name: string): TrainingCable =>
  TRAINING_CABLES.find((cable) => cable.name === name)!;

/** The row of such a cable in the table that the functions take. */
export const cableRow = (name: string): readonly (string | number | null)[] => {
  const { loss, loop } = cableNamed(name);
  return [name, null, loss.k1, loss.k2, loss.k0, loop];
};

/** The figures of a cable as drawn numbers, so that they can be misread one by one. */
export const figuresOf = (name: string): { k1: number; k2: number; k0: number; loop: number } => {
  const { loss, loop } = cableNamed(name);
  return { ...loss, loop };
};

const UNIT = "dB/100 m";

export const lossFigures = ({
  cable,
  k1,
  k2,
  k0,
}: {
  readonly cable: string;
  readonly k1: number;
  readonly k2: number;
  readonly k0: number;
}): Given[] => [
  { label: "Cable (demonstration)", value: cable },
  { label: "k1 of the cable", called: "k1", value: k1, unit: UNIT, of: "k1", invites: [forgotten] },
  { label: "k2 of the cable", called: "k2", value: k2, unit: UNIT, of: "k2", invites: [forgotten] },
  { label: "k0 of the cable", called: "k0", value: k0, unit: UNIT, of: "k0", invites: [forgotten] },
];
