/**
 * From a slot to the dish: carrier, and carrier to noise behind the feed, in clear sky and in the rain that is exceeded
 * for the part of the year that may be lost.
 *
 * Look angles on the ellipsoid WGS84. Free space 20·log10(4πd/λ) at 11.7 GHz; gain 0.65·(πD/λ)²; noise 40 K and
 * 290·(10^(NF/10) − 1) K (domain: practice, no source). Rain: ITU-R P.838-3 and P.618-13 section 2.2.1.1, circular
 * tilt of 45°; it adds 275·(1 − 10^(−A/10)) K.
 */
import { referenceAngles } from "../../referenceSight";
import { isFilled, type Row } from "../job";
import { numberIn, rowNamed, settingsOf, type Tables } from "./tables";

const GHZ = 11.7;
const WAVE_M = 299_792_458 / (GHZ * 1e9);
export const BOLTZMANN = 1.380649e-23;
/** 0 dBm in 75 Ω, in dBµV. */
export const DBUV_OF_DBM = 108.750612633917;
const SKY_K = 40;
const RAIN_K = 275;
const RAD = Math.PI / 180;

export const timesOf = (decibels: number): number => 10 ** (decibels / 10);
export const decibelsOf = (times: number): number => 10 * Math.log10(times);
/** Noise that an amplifier adds at its input, in kelvins: F − 1, because the source has its own. */
export const ownNoise = (figure: number): number => 290 * (timesOf(figure) - 1);

/** Of P.838-3: log10 k, or α, is Σ a·exp(−((log10 f − b)/c)²) + m·log10 f + c. */
interface Regression {
  readonly terms: readonly (readonly [number, number, number])[];
  readonly slope: number;
  readonly constant: number;
}
const K_H: Regression = {
  terms: [
    [-5.3398, -0.10008, 1.13098],
    [-0.35351, 1.2697, 0.454],
    [-0.23789, 0.86036, 0.15354],
    [-0.94158, 0.64552, 0.16817],
  ],
  slope: -0.18961,
  constant: 0.71147,
};
const K_V: Regression = {
  terms: [
    [-3.80595, 0.56934, 0.81061],
    [-3.44965, -0.22911, 0.51059],
    [-0.39902, 0.73042, 0.11899],
    [0.50167, 1.07319, 0.27195],
  ],
  slope: -0.16398,
  constant: 0.63297,
};
const ALPHA_H: Regression = {
  terms: [
    [-0.14318, 1.82442, -0.55187],
    [0.29591, 0.77564, 0.19822],
    [0.32177, 0.63773, 0.13164],
    [-5.3761, -0.9623, 1.47828],
    [16.1721, -3.2998, 3.4399],
  ],
  slope: 0.67849,
  constant: -1.95537,
};
const ALPHA_V: Regression = {
  terms: [
    [-0.07771, 2.3384, -0.76284],
    [0.56727, 0.95545, 0.54039],
    [-0.20238, 1.1452, 0.26809],
    [-48.2991, 0.791669, 0.116226],
    [48.5833, 0.791459, 0.116479],
  ],
  slope: -0.053739,
  constant: 0.83433,
};
const regressed = ({ terms, slope, constant }: Regression): number => {
  const f = Math.log10(GHZ);
  return terms.reduce((sum, [a, b, c]) => sum + a * Math.exp(-(((f - b) / c) ** 2)), slope * f + constant);
};

/** @returns dB per kilometre; with a tilt of 45° the term of polarisation falls away */
function specificRain(rate: number): number {
  const [kH, kV] = [10 ** regressed(K_H), 10 ** regressed(K_V)];
  const k = (kH + kV) / 2;
  const alpha = (kH * regressed(ALPHA_H) + kV * regressed(ALPHA_V)) / (2 * k);
  return k * rate ** alpha;
}

interface Place {
  readonly latitude: number;
  readonly elevation: number;
  readonly heightKm: number;
  readonly rate: number;
  readonly rainKm: number;
  readonly percent: number;
}

/** @returns dB exceeded for that percentage of a year */
function rainLoss({ latitude, elevation, heightKm, rate, rainKm, percent }: Place): number {
  if (rainKm <= heightKm || rate <= 0) return 0;
  const sine = Math.sin(elevation * RAD);
  const cosine = Math.cos(elevation * RAD);
  const φ = Math.abs(latitude);
  const slant = (rainKm - heightKm) / sine;
  const ground = slant * cosine;
  const γ = specificRain(rate);
  const across = 1 / (1 + 0.78 * Math.sqrt((ground * γ) / GHZ) - 0.38 * (1 - Math.exp(-2 * ground)));
  const ζ = Math.atan2(rainKm - heightKm, ground * across) / RAD;
  const along = ζ > elevation ? (ground * across) / cosine : slant;
  const χ = φ < 36 ? 36 - φ : 0;
  const up =
    1 /
    (1 +
      Math.sqrt(sine) *
        (31 * (1 - Math.exp(-elevation / (1 + χ))) * (Math.sqrt(along * γ) / GHZ ** 2) - 0.45));
  const often = γ * along * up;
  let β = 0;
  if (percent < 1 && φ < 36) β = -0.005 * (φ - 36) + (elevation >= 25 ? 0 : 1.8 - 4.25 * sine);
  const exponent = 0.655 + 0.033 * Math.log(percent) - 0.045 * Math.log(often) - β * (1 - percent) * sine;
  return often * (percent / 0.01) ** -exponent;
}

/** What a slot gives behind the feed of a dish. */
export interface FromSky {
  readonly elevation: number;
  readonly rangeKm: number;
  readonly rain: number | undefined;
  /** At the aperture with the dish's gain and losses in it: what a gain of 0 dB would give, dBm. */
  readonly carrier: number;
  readonly symbolRate: number;
  /** Noise over carrier behind the feed, as ratios; in rain only where that is asked. */
  readonly clear: number;
  readonly inRain: number | undefined;
}

export interface DishFigures {
  readonly metres: number;
  readonly offFocus: number;
}

/** @returns nothing where the slot lacks one of the figures, so that carrier to noise is not asked of it */
export function fromSky(
  tables: Tables,
  slotName: string,
  dish: DishFigures,
  noiseFigure: number,
): FromSky | undefined {
  const slot: Row | undefined = rowNamed(tables.slots, "slot", slotName);
  if (!slot || !["eirp", "symbol_rate", "modulation"].every((key) => isFilled(slot, key))) return undefined;
  const settings = settingsOf(tables);
  const [latitude, longitude] = [numberIn(settings, "latitude"), numberIn(settings, "longitude")];
  const height = numberIn(settings, "height", 0);
  const { elevation, range } = referenceAngles(latitude, longitude, degreesOf(slotName), height);
  const free = 20 * Math.log10((4 * Math.PI * range * 1000) / WAVE_M);
  const gain = decibelsOf(0.65 * ((Math.PI * dish.metres) / WAVE_M) ** 2);
  const losses = numberIn(settings, "dish_losses", 0.8) + dish.offFocus;
  const carrier = numberIn(slot, "eirp") + 30 - free + gain - losses;
  const symbolRate = numberIn(slot, "symbol_rate") * 1e6;
  const noise = (kelvins: number): number => decibelsOf(BOLTZMANN * kelvins * symbolRate * 1000);
  const system = SKY_K + ownNoise(noiseFigure);
  const isAsked = ["availability", "rain_rate", "rain_height"].every((key) => isFilled(settings, key));
  const rain = isAsked
    ? rainLoss({
        latitude,
        elevation,
        heightKm: height / 1000,
        rate: numberIn(settings, "rain_rate"),
        rainKm: numberIn(settings, "rain_height"),
        percent: 100 - numberIn(settings, "availability"),
      })
    : undefined;
  return {
    elevation,
    rangeKm: range,
    rain,
    carrier,
    symbolRate,
    clear: timesOf(noise(system) - carrier),
    inRain:
      rain === undefined
        ? undefined
        : timesOf(noise(system + RAIN_K * (1 - timesOf(-rain))) - (carrier - rain)),
  };
}

/** "13E" is 13, "97W" is −97; plain numbers stand for themselves. */
export function degreesOf(slot: string): number {
  const [, figure, side] = /^(-?[\d.]+)\s*°?\s*([EW]?)$/i.exec(slot.trim()) ?? [];
  return Number(figure) * (side?.toUpperCase() === "W" ? -1 : 1);
}

/** Es/N0 of an ideal receiver: EN 302 307-1 table 13. */
const DVB_S2: Readonly<Record<string, number>> = {
  ...{ "QPSK 1/4": -2.35, "QPSK 1/3": -1.24, "QPSK 2/5": -0.3, "QPSK 1/2": 1, "QPSK 3/5": 2.23 },
  ...{ "QPSK 2/3": 3.1, "QPSK 3/4": 4.03, "QPSK 4/5": 4.68, "QPSK 5/6": 5.18, "QPSK 8/9": 6.2 },
  ...{ "QPSK 9/10": 6.42, "8PSK 3/5": 5.5, "8PSK 2/3": 6.62, "8PSK 3/4": 7.91, "8PSK 5/6": 9.35 },
  ...{ "8PSK 8/9": 10.69, "8PSK 9/10": 10.98, "16APSK 2/3": 8.97, "16APSK 9/10": 13.13 },
  ...{ "32APSK 3/4": 12.73, "32APSK 4/5": 13.64, "32APSK 9/10": 16.05 },
};
/** Eb/N0 over the user's bits: EN 300 421 table 5. */
const DVB_S: Readonly<Record<string, number>> = { "1/2": 4.5, "2/3": 5, "3/4": 5.5, "5/6": 6, "7/8": 6.4 };

/** @returns dB that the ideal receiver needs, without any margin */
export function neededOf(modulation: string): number {
  const words = modulation.trim().toUpperCase().split(/\s+/);
  if (words[0] !== "DVB-S") return DVB_S2[words.filter((word) => word !== "DVB-S2").join(" ")] ?? NaN;
  const [top, bottom] = words[2]!.split("/").map(Number);
  return DVB_S[words[2]!]! + decibelsOf((2 * (top! / bottom!) * 188) / 204);
}
