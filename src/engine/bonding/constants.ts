/** Conductor sizes and lengths to flag, and the clause to read for each; wind and air. */
import type { Metres, SquareMillimetres } from "../quantity";

export interface BondRule {
  readonly kind: string;
  readonly leastSize: SquareMillimetres;
  readonly mostLength?: Metres;
  /** Which clause says so, in our words, with how we know. */
  readonly clause: string;
}

/** The international foot, exact by definition; the NEC gives feet. */
const FOOT_M = 0.3048;

/**
 * AWG sizes in mm² (ASTM B258: d = 0.127 mm × 92^((36 − n)/39)), rounded down
 * so that a conductor of that gauge is not flagged for its last digit.
 */
const AWG_6_MM2 = 13.3;
const AWG_8_MM2 = 8.36;
const AWG_10_MM2 = 5.26;
const AWG_14_MM2 = 2.08;
const AWG_17_MM2 = 1.03;

const EN = "IEC/EN 60728-11 (from works that quote it; national annexes differ)";

export const BOND_RULES: readonly BondRule[] = [
  {
    kind: "mast earthing, copper",
    leastSize: 16,
    clause: `${EN}: mast earthing conductor of copper 16 mm² or more`,
  },
  {
    kind: "mast earthing, aluminium",
    leastSize: 25,
    clause: `${EN}: mast earthing conductor of aluminium 25 mm² or more`,
  },
  {
    kind: "mast earthing, steel",
    leastSize: 50,
    clause: `${EN}: mast earthing conductor of steel 50 mm² or more`,
  },
  {
    kind: "cable screen bond, protected",
    leastSize: 2.5,
    clause: `${EN}: bonding conductor of copper, mechanically protected, 2.5 mm² or more`,
  },
  {
    kind: "cable screen bond, unprotected",
    leastSize: 4,
    clause: `${EN}: bonding conductor of copper, unprotected, 4 mm² or more`,
  },
  {
    kind: "mast grounding, copper, NEC",
    leastSize: AWG_10_MM2,
    clause: "NEC 810.21(H) (from summaries): copper 10 AWG or more, run straight",
  },
  {
    kind: "mast grounding, copper-clad steel or bronze, NEC",
    leastSize: AWG_17_MM2,
    clause: "NEC 810.21(H) (from summaries): copper-clad steel or bronze 17 AWG or more, run straight",
  },
  {
    kind: "mast grounding, aluminium, NEC",
    leastSize: AWG_8_MM2,
    clause: "NEC 810.21(H) (from memory): aluminium 8 AWG or more, run straight",
  },
  {
    kind: "electrode bond, NEC",
    leastSize: AWG_6_MM2,
    clause: "NEC 810.21 and 800.100 (from summaries): electrodes bonded together with copper 6 AWG or more",
  },
  {
    kind: "communications bond, one or two family",
    leastSize: AWG_14_MM2,
    mostLength: 20 * FOOT_M,
    clause:
      "NEC 800.100(A), before 2020 820.100(A): 14 AWG or more and no less current capacity than the screen; 20 ft at the most, else a separate rod bonded with 6 AWG",
  },
  {
    kind: "communications bond, other building",
    leastSize: AWG_14_MM2,
    clause:
      "NEC 800.100(A), before 2020 820.100(A): 14 AWG or more and no less current capacity than the screen; as short as practicable",
  },
];

/** Standard atmosphere at sea level and 15 °C (ISO 2533); EN 1991-1-4 recommends 1.25. */
export const AIR_DENSITY_KG_M3 = 1.225;
/** Dish face-on: published values lie from 1.2 to 1.4. */
export const DISH_FORCE_COEFFICIENT = 1.3;
