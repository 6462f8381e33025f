/** Regression constants of ITU-R P.838-3, tables 1 to 4; f in GHz, base-10 logarithms. */

export interface Regression {
  /** a, b and c of each bell. */
  readonly bells: readonly (readonly [a: number, b: number, c: number])[];
  readonly slope: number;
  readonly constant: number;
}

/** log10 of k, horizontal polarisation (table 1). */
export const K_HORIZONTAL: Regression = {
  bells: [
    [-5.3398, -0.10008, 1.13098],
    [-0.35351, 1.2697, 0.454],
    [-0.23789, 0.86036, 0.15354],
    [-0.94158, 0.64552, 0.16817],
  ],
  slope: -0.18961,
  constant: 0.71147,
};

/** log10 of k, vertical polarisation (table 2). */
export const K_VERTICAL: Regression = {
  bells: [
    [-3.80595, 0.56934, 0.81061],
    [-3.44965, -0.22911, 0.51059],
    [-0.39902, 0.73042, 0.11899],
    [0.50167, 1.07319, 0.27195],
  ],
  slope: -0.16398,
  constant: 0.63297,
};

/** α itself, horizontal polarisation (table 3). */
export const ALPHA_HORIZONTAL: Regression = {
  bells: [
    [-0.14318, 1.82442, -0.55187],
    [0.29591, 0.77564, 0.19822],
    [0.32177, 0.63773, 0.13164],
    [-5.3761, -0.9623, 1.47828],
    [16.1721, -3.2998, 3.4399],
  ],
  slope: 0.67849,
  constant: -1.95537,
};

/** α itself, vertical polarisation (table 4). */
export const ALPHA_VERTICAL: Regression = {
  bells: [
    [-0.07771, 2.3384, -0.76284],
    [0.56727, 0.95545, 0.54039],
    [-0.20238, 1.1452, 0.26809],
    [-48.2991, 0.791669, 0.116226],
    [48.5833, 0.791459, 0.116479],
  ],
  slope: -0.053739,
  constant: 0.83433,
};
