/** Constants of cables and levels. */

/** Frequencies between which the cable model is used; above 1000 MHz it is extrapolated. */
export const CABLE_LOW_MHZ = 5;
export const CABLE_HIGH_MHZ = 3000;

/** Temperature to which cable figures refer. */
export const CABLE_REFERENCE_C = 20;

/**
 * Growth of a cable's loss with temperature: a published drop-cable rule,
 * α(T) = α(68 °F)·[1 + 0.0011·(T − 68)] with T in °F, turned into °C.
 */
export const LOSS_PER_C = 0.0011 * 1.8;

export interface SeriesFigures {
  readonly series: string;
  /** dB per 100 ft = k1·√f + k2·f + k0, f in MHz. */
  readonly k1: number;
  readonly k2: number;
  readonly k0: number;
  /** Centre conductor, American wire gauge. */
  readonly awg: number;
  /** Shield, ohms per 1000 ft. */
  readonly shieldOhmsPer1000ft: number;
}

/**
 * Built-in 75 Ω drop cables. Loss: least squares over the maximum attenuation
 * of the ANSI/SCTE 74 kind of table at 20 °C, 5 to 1000 MHz, greatest residual
 * 0.05 dB; that table from memory, its series 6 and 11 rows from 750 MHz also
 * seen printed. The constant term is needed: without it the best k2 of series
 * 59 and 6 is negative. Centre conductors and shields (aluminium foil and
 * braid): from memory, the shield within 40 % only; series 7 between its
 * neighbours.
 */
export const SERIES: readonly SeriesFigures[] = [
  { series: "series 59", k1: 0.22556, k2: 0.00060554, k0: 0.35773, awg: 20, shieldOhmsPer1000ft: 12 },
  { series: "series 6", k1: 0.196464, k2: 0.00020693, k0: 0.13583, awg: 18, shieldOhmsPer1000ft: 9 },
  { series: "series 7", k1: 0.155328, k2: 0.00030395, k0: 0.10362, awg: 16, shieldOhmsPer1000ft: 6 },
  { series: "series 11", k1: 0.10687, k2: 0.0008008, k0: 0.14112, awg: 14, shieldOhmsPer1000ft: 4 },
];

/** The impedance of the cables, in which levels in volts and in watts are compared. */
export const LEVEL_OHMS = 75;
