/**
 * Jobs with planted faults, as a crew would measure them. Made from physics and
 * habits of the trade and written apart from the diagnosis: it imports nothing
 * of it. Sizes of faults are assumptions, no source.
 */
export interface Planted {
  readonly cause: string;
  readonly where: string;
}

export interface SimulatedOutlet {
  readonly name: string;
  readonly branch: string;
  readonly predicted: number[];
  measured: number[];
  volts: number;
}

/** mulberry32: the same numbers on every machine. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const SIMULATED_CAUSES = [
  "misaligned",
  "wrong or wet cable",
  "unrated splitter in the run",
  "bad connector",
  "leg that passes no power",
  "wrong port",
  "inserter missing or weak",
  "over-level",
] as const;

const SUPPLY = 18;
const NOISE_DBUV = 20;

export function simulateJob(seed: number, faults: number, frequencies: readonly number[]) {
  const random = randomFrom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
  const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

  // Two branches of four or so below one head unit, the second behind the first.
  const count = 6 + Math.floor(random() * 5);
  const top = between(88, 92);
  const outlets: SimulatedOutlet[] = Array.from({ length: count }, (_, index) => {
    const far = index >= count / 2;
    const run = between(5, 40);
    return {
      name: `R${index + 1}`,
      branch: far ? "B2" : "B1",
      // A drop cable of 0.21 dB a metre at 2150 MHz.
      predicted: frequencies.map(
        (f) => top - (far ? 14 : 8) - 2 * (f / 2150) - 0.21 * run * Math.sqrt(f / 2150),
      ),
      measured: [],
      volts: SUPPLY,
    };
  });
  const headOff = between(-1, 1);
  /** dB lost beyond the prediction, by outlet and frequency. */
  const extra = outlets.map(() => {
    const own = 0.4 * gauss();
    return frequencies.map(() => own - headOff);
  });
  const planted: Planted[] = [];
  const used = new Set<string>();
  while (planted.length < faults) {
    const cause = pick(SIMULATED_CAUSES);
    const index = Math.floor(random() * count);
    const outlet = outlets[index]!;
    const whole = cause === "misaligned" || cause === "inserter missing or weak" || cause === "over-level";
    if (used.has(cause) || used.has(outlet.name) || (whole && used.has("H1"))) continue;
    const add = (at: number, loss: (f: number) => number) =>
      frequencies.forEach((f, k) => (extra[at]![k]! += loss(f)));
    let where: string = whole ? "H1" : outlet.name;
    if (cause === "misaligned") {
      const loss = between(3, 9);
      outlets.forEach((_, at) => add(at, () => loss));
    } else if (cause === "over-level") {
      const gain = between(4, 10);
      outlets.forEach((_, at) => add(at, () => -gain));
    } else if (cause === "inserter missing or weak") {
      const missing = random() < 0.6;
      const left = missing ? 0 : between(6, 14);
      const loss = missing || random() < 0.4 ? 999 : between(1, 8);
      outlets.forEach((one, at) => {
        one.volts = Math.min(one.volts, left);
        add(at, () => loss);
      });
    } else if (cause === "wrong or wet cable") {
      // A length of soaked cable: loss grows as the root of the frequency.
      const loss = between(4, 12);
      add(index, (f) => loss * Math.sqrt(f / 2150));
    } else if (cause === "unrated splitter in the run") {
      // A two-way divider for 5 to 1000 MHz: its 4 dB, and a fall beyond its rating.
      const fall = between(5, 12);
      add(index, (f) => 4 + fall * Math.max(0, (f - 1000) / 1150) ** 1.2);
      if (random() < 0.75) outlet.volts = 0;
    } else if (cause === "bad connector") {
      const way = random();
      if (way < 0.2) {
        outlet.volts = 0;
        add(index, () => 999);
      } else if (way < 0.6) {
        // A gap in the centre conductor is a small capacitor in series with 150 ohms, and blocks or hinders the supply.
        const picofarads = between(0.25, 0.9);
        add(index, (f) => {
          const reactance = 1e6 / (2 * Math.PI * f * picofarads);
          return 10 * Math.log10(1 + (reactance / 150) ** 2);
        });
        outlet.volts = random() < 0.3 ? 0 : Math.min(outlet.volts, between(2, 15));
      } else {
        // Corroded: loss of any tilt, a few ohms that the load feels.
        const loss = between(3, 11);
        const tilt = between(-3, 3);
        add(index, (f) => loss + tilt * (f / 2150 - 0.7));
        outlet.volts = Math.min(outlet.volts, random() < 0.7 ? between(5, 16) : 17.8);
      }
    } else if (cause === "leg that passes no power") {
      outlet.volts = 0;
    } else {
      const others = outlets.filter(
        (one) =>
          !used.has(one.name) &&
          frequencies.some((_, k) => Math.abs(one.predicted[k]! - outlet.predicted[k]!) > 4),
      );
      if (random() < 0.5 && others.length > 0) {
        const other = pick(others);
        const to = outlets.indexOf(other);
        frequencies.forEach((_, k) => {
          const gap = other.predicted[k]! - outlet.predicted[k]!;
          extra[index]![k]! -= gap;
          extra[to]![k]! += gap;
        });
        used.add(other.name);
        where = index < to ? `${outlet.name} and ${other.name}` : `${other.name} and ${outlet.name}`;
      } else {
        // On the line onwards instead of the tap.
        const gain = between(5, 13);
        add(index, () => -gain);
      }
    }
    used.add(cause).add(where).add(outlet.name);
    planted.push({ cause, where });
  }
  outlets.forEach((outlet, at) => {
    outlet.measured = outlet.predicted.map((level, k) => {
      const seen = level - extra[at]![k]! + between(-1.5, 1.5);
      return Math.max(seen, NOISE_DBUV + between(-4, 4));
    });
    outlet.volts = Math.max(0, outlet.volts + (outlet.volts > 0 ? between(-0.5, 0.3) : between(0, 0.2)));
  });
  return { outlets, planted };
}
