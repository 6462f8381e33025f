/** What is known of a cable, and the built-in types. */
import { isFault, type Fault } from "../faults";
import { COPPER_CLAD_STEEL_IACS_PCT } from "../power/constants";
import { wireOhms } from "../power/wireOhms";
import type { Ohms } from "../quantity";
import { CABLE_REFERENCE_C, SERIES, type SeriesFigures } from "./constants";
import { METRES_PER_FOOT } from "./lengthUnits";
import { nameKey } from "./nameKey";

/** Loss at 20 °C in dB per 100 m = k1·√f + k2·f + k0, f in MHz. */
export interface LossCoefficients {
  readonly k1: number;
  readonly k2: number;
  readonly k0: number;
}

/** One half of the figures may be at fault while the other serves. */
export interface Cable {
  readonly name: string;
  readonly loss: LossCoefficients | Fault;
  /** Centre conductor and shield in series, ohms per 100 m at 20 °C. */
  readonly loop: Ohms | Fault;
}

/** Cables by the key of their name; a fault where the row cannot be used at all. */
export type CableBook = ReadonlyMap<string, Cable | Fault>;

const METRES_IN_100_FT = 100 * METRES_PER_FOOT;

/** RF flows in the copper cladding, so both conductors share one loss and differ in the loop alone. */
function typesOf(figures: SeriesFigures): Cable[] {
  const { series, k1, k2, k0, awg, shieldOhmsPer1000ft } = figures;
  const per100m = 100 / METRES_IN_100_FT;
  const loss = { k1: k1 * per100m, k2: k2 * per100m, k0: k0 * per100m };
  const shield = (shieldOhmsPer1000ft / 10) * per100m;
  const copper = wireOhms(awg, 100, 100, CABLE_REFERENCE_C) + shield;
  const clad = wireOhms(awg, 100, COPPER_CLAD_STEEL_IACS_PCT, CABLE_REFERENCE_C) + shield;
  return [
    { name: series, loss, loop: clad },
    { name: `${series}, copper`, loss, loop: copper },
    { name: `${series}, copper-clad steel`, loss, loop: clad },
  ];
}

const BUILT_IN: ReadonlyMap<string, Cable> = new Map(
  SERIES.flatMap(typesOf).map((cable) => [nameKey(cable.name), cable]),
);

/** The names of the built-in types, for help and sentences. */
export const BUILT_IN_CABLES: readonly string[] = [...BUILT_IN.values()].map(({ name }) => name);

/** @returns the built-in type of that name, if there is one */
export const builtInCable = (name: string): Cable | undefined => BUILT_IN.get(nameKey(name));

/** The names in a user's table that can be used, for sentences. */
export const namesIn = (book: CableBook): string[] =>
  [...book.values()].flatMap((cable) => (isFault(cable) ? [] : [cable.name]));
