/**
 * The answers of every training set worked out a second time, from handbook
 * equations, sharing no code with the product.
 *
 * Look angles: spherical Earth, Roddy, Satellite Communications, 4th ed., ch. 3
 * (within 0.03 deg of the ellipsoid). Cable: α = k1·√f + k2·f + k0 and 0.0011
 * per °F. Ohm's law; copper 0.00393 per °C, IEC 60028 (from memory). Splitters:
 * 10·log10 N. Tuning words: EN 50494 and EN 50607 as in open driver code. Margin
 * as a share of the price: definition. Packing of reels is not needed: the
 * reference says how many reels the total fills.
 */
/* eslint-disable @typescript-eslint/no-explicit-any -- the drawn numbers of every set, by name */

export interface ReferenceAnswer {
  readonly value: number | string;
  /** Greatest difference allowed, in the answer's unit; none for words. */
  readonly limit: number;
}

type Reference = (n: any) => Record<string, ReferenceAnswer>;

const exact = (value: number | string): ReferenceAnswer => ({ value, limit: 1e-8 });
const within = (value: number, limit: number): ReferenceAnswer => ({ value, limit });
const rad = Math.PI / 180;

/** dB per 100 m: k1, k2, k0, and the loop's ohms per 100 m. */
const CABLES: Record<string, [number, number, number, number]> = {
  "thin drop": [0.74, 0.002, 1.2, 15.2],
  drop: [0.64, 0.0007, 0.45, 4.9],
  "better drop": [0.51, 0.001, 0.34, 3.6],
  trunk: [0.35, 0.0026, 0.46, 2.1],
};

const loss = (cable: string, metres: number, mhz: number, celsius: number): number => {
  const [k1, k2, k0] = CABLES[cable]!;
  const fahrenheit = 32 + 1.8 * celsius;
  return ((k1 * Math.sqrt(mhz) + k2 * mhz + k0) * metres * (1 + 0.0011 * (fahrenheit - 68))) / 100;
};

const word = (value: number, least: number, most: number): ReferenceAnswer =>
  exact(value < least ? "low" : value > most ? "high" : "ok");

const lookAngles: Reference = (n) => {
  // Roddy's own form: angle b at the Earth's centre, azimuth by quadrant.
  const B = n.longitude - n.slot;
  const cosB = Math.cos(B * rad) * Math.cos(n.latitude * rad);
  const b = Math.acos(cosB);
  const A = Math.asin(Math.min(1, Math.sin(Math.abs(B) * rad) / Math.sin(b))) / rad;
  const azimuth = n.latitude > 0 ? (B < 0 ? 180 - A : 180 + A) : B < 0 ? A : 360 - A;
  const [R, a] = [6371, 42164];
  const d = Math.sqrt(R * R + a * a - 2 * R * a * cosB);
  const elevation = Math.acos((a * Math.sin(b)) / d) / rad;
  const e = elevation * rad;
  const offset = Math.acos(n.rimWidth / n.rimHeight) / rad;
  const margin = n.margin * rad;
  return {
    azimuth: within(azimuth, 0.06),
    elevation: within(elevation, 0.05),
    compass: within((azimuth - n.declination + 720) % 360, 0.06),
    setback: within((n.obstacle - n.dish) / Math.tan(e - margin), 0.09),
    ray: within(n.dish + n.chimney * Math.tan(e), 0.09),
    offset: exact(offset),
    tilt: within(elevation - offset, 0.05),
  };
};

const cable: Reference = (n) => {
  const metres = n.feet * 0.3048;
  const hot = loss(n.cable, metres, n.high, n.hot);
  const level = n.level - hot - n.plate;
  return {
    metres: exact(metres),
    lossLow: exact(loss(n.cable, metres, n.low, 20)),
    high: exact(loss(n.cable, metres, n.high, 20)),
    hotLoss: exact(hot),
    slope: exact(loss(n.cable, metres, n.high, 20) - loss(n.cable, metres, n.low, 20)),
    level: exact(level),
    verdict: word(level, 47, 77),
  };
};

const splitters: Reference = (n) => {
  const one = 10 * Math.log10(n.ways) + n.excess;
  const both = one + 10 * Math.log10(n.ways2) + n.excess2;
  // What a tap of T dB passes on: 1 less the share 10^(-T/10) of its branch.
  const through = n.through - 10 * Math.log10(1 - 10 ** (-n.tap / 10));
  const level = n.level - both - n.cable;
  return {
    first: exact(one),
    both: exact(both),
    through: exact(through),
    branch: exact(one + through + n.tap2),
    level: exact(level),
    verdict: word(level, 47, 77),
  };
};

const ceil = (a: number, b: number): number => {
  let whole = 0;
  while (whole * b < a - 1e-9) whole++;
  return whole;
};

const tuners: Reference = (n) => {
  const all = n.receivers + 2 * n.two + 4 * n.four;
  const units = ceil(all, n.capacity);
  const count = (kind: string): number => ({ receiver: 1, "recorder, 2 tuners": 2 })[kind] ?? 4;
  const before = (n.rooms as string[]).slice(0, -1).reduce((sum, kind) => sum + count(kind), 0);
  return {
    tuners: exact(all),
    units: exact(units),
    free: exact(units * n.capacity - all),
    band: exact(before + 1),
    // Quarters only, and never a half: up from 0.75, down from 0.25.
    word: exact(Math.floor((n.frequency + n.band - 1400 + 2) / 4)),
    word2: exact(n.frequency - 100),
  };
};

const supply: Reference = (n) => {
  const cold = (n.loop * n.feet * 0.3048) / 100;
  const factor = 1 + 0.00393 * (n.hot - 20);
  const hot = cold * factor;
  const drop = (n.milliamperes / 1000) * hot;
  const volts = n.supply - drop;
  // Constant power: V² − Vs·V + P·R = 0, the upper root by Newton's way from the supply.
  let v = n.supply;
  for (let step = 0; step < 60; step++) v -= (v * v - n.supply * v + n.watts * hot) / (2 * v - n.supply);
  return {
    ohms: exact(cold),
    hotOhms: exact(hot),
    drop: exact(drop),
    volts: exact(volts),
    verdict: word(volts, n.least, n.most),
    run: exact(((n.supply - n.least) * 1000 * 100) / (n.milliamperes * n.loop * factor)),
    power: within(v, 1e-6),
  };
};

const pricing: Reference = (n) => {
  const runs = n.runs as number[];
  let cut = 0;
  for (const run of runs) cut += (run + n.slack) * (1 + n.waste / 100);
  const reels = ceil(cut, n.reel);
  const materials = reels * n.reelPrice + n.others;
  const labour = n.outlets * n.rate * (n.minutes / 60);
  const cost = materials + labour;
  const price = (100 * cost) / (100 - n.margin);
  const lowered = (price * (100 - n.discount)) / 100;
  return {
    cable: exact(cut),
    reels: exact(reels),
    materials: exact(materials),
    labour: exact(labour),
    price: exact(price),
    total: exact(price + (price * n.tax) / 100),
    left: exact((100 * (lowered - cost)) / lowered),
  };
};

const smallJob: Reference = (n) => {
  const all = n.receivers + 2 * n.recorders;
  const units = ceil(all, n.capacity);
  const splitter = 10 * Math.log10(n.ways) + n.excess;
  const inHeat = loss(n.cable, n.feet * 0.3048, n.high, n.hot);
  const ohms = (CABLES[n.cable]![3] * n.trunk * (1 + 0.00393 * (n.hot - 20))) / 100;
  const cost = units * n.unitPrice + n.parts + n.hours * n.rate;
  return {
    tuners: exact(all),
    units: exact(units),
    splitter: exact(splitter),
    loss: exact(inHeat),
    level: exact(n.level - splitter - inHeat - n.plate),
    volts: exact(n.supply - n.amperes * ohms),
    cost: exact(cost),
    total: exact(((100 * cost) / (100 - n.margin)) * (1 + n.tax / 100)),
  };
};

export const references: Readonly<Record<string, Reference>> = {
  "look-angles": lookAngles,
  cable,
  splitters,
  tuners,
  supply,
  pricing,
  "small-job": smallJob,
};
