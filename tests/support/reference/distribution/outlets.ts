/** Levels, carrier to noise, volts and checks of outlets. */
import { howMany, receiverOf } from "./bands";
import { commandsOf, type Commands } from "./commands";
import { carrierToNoise, corners, hot, levelBehind } from "./levels";
import { neededOf } from "./sky";
import { closesPorts, openPorts, statesFor, type State, type Unit } from "./supply";
import { numberIn, rowNamed, settingsOf } from "./tables";
import { stepsToReceiver, type Thing } from "./tree";
import { isHigher, isLower, isOnPower, leastIn, SLIGHT, statesAt, voltsIn, type Worked } from "./worked";

export interface SlotNoise {
  readonly slot: string;
  readonly clear: number;
  readonly inRain: number | undefined;
  readonly needed: number;
}

/** Carrier to noise of every slot at an outlet, where it is asked. */
export function noiseAt({ tables, bands, slots }: Worked, outlet: Thing): SlotNoise[] {
  const settings = settingsOf(tables);
  const own = (bands.get(outlet)?.bands ?? []).flatMap(({ mhz }) => mhz ?? []);
  const frequencies = own.length > 0 ? own : [numberIn(settings, "low"), numberIn(settings, "high")];
  const figure = receiverOf(tables, outlet.row)?.noiseFigure ?? 10;
  return (slots.get(outlet.head) ?? []).flatMap((at) => {
    if (!at.sky || at.clear === undefined) return [];
    const worked = (ratio: number): number => carrierToNoise(tables, outlet, at, ratio, frequencies, figure);
    const modulation = String(rowNamed(tables.slots, "slot", at.slot)!.modulation);
    return [
      {
        slot: at.slot,
        clear: worked(at.clear),
        inRain: at.inRain === undefined ? undefined : worked(at.inRain),
        needed: neededOf(modulation) + numberIn(settings, "margin", 2),
      },
    ];
  });
}

export interface OutletLevels {
  /** Low cold, low hot, high cold, high hot. */
  readonly corners: readonly number[];
  /** Hot and cold at each of its own bands. */
  readonly ownHot: readonly number[];
  readonly ownCold: readonly number[];
  readonly longest: number;
}

export function levelsAt({ tables, bands }: Worked, outlet: Thing): OutletLevels {
  const steps = stepsToReceiver(outlet);
  const four = corners(tables);
  const own = (bands.get(outlet)?.bands ?? []).flatMap(({ mhz }) => mhz ?? []);
  const { celsius: cold } = four[0]!;
  const ends = [four[0]!.mhz, four[2]!.mhz];
  const longest = [...ends, ...own].map((mhz) => levelBehind(tables, outlet, steps, hot(tables, mhz), true));
  return {
    corners: four.map((at) => levelBehind(tables, outlet, steps, at)),
    ownHot: own.map((mhz) => levelBehind(tables, outlet, steps, hot(tables, mhz))),
    ownCold: own.map((mhz) => levelBehind(tables, outlet, steps, { mhz, celsius: cold })),
    longest: Math.min(...longest),
  };
}

/** Of several receivers at an outlet the worst counts. */
export function outletVolts(worked: Worked, outlet: Thing) {
  const { idle, alone, commanding, standing, units } = statesAt(worked, outlet.head);
  const figures = (states: typeof alone, of: (state: State, unit: Unit) => number): number[] =>
    statesFor(outlet, states).map(({ unit, state }) => voltsIn(state, (one) => of(one, unit)));
  const fromSupplies = Math.max(
    ...units
      .filter((unit) => unit.outlet === outlet)
      .map((unit) => voltsIn(idle, (state) => state.standing(unit))),
  );
  const given = [alone, commanding].flatMap((states) => figures(states, (state, unit) => state.given(unit)));
  return {
    head: leastIn(figures(alone, (state) => state.headVolts(outlet.head))),
    commanding: leastIn(figures(commanding, (state) => state.outputVolts(outlet))),
    fromSupplies,
    standing: Math.max(fromSupplies, ...figures(standing, (state, unit) => state.standing(unit))),
    gives: given.length > 0 ? Math.max(...given) : undefined,
  };
}

/** Of the checks of an outlet, all but its own row's. */
export function outletChecks(worked: Worked, outlet: Thing) {
  const { tables } = worked;
  const settings = settingsOf(tables);
  const levels = levelsAt(worked, outlet);
  const receiver = receiverOf(tables, outlet.row);
  const [least, most] = [numberIn(settings, "level_least"), numberIn(settings, "level_most")];
  const [lowCold, lowHot, highCold, highHot] = levels.corners as [number, number, number, number];
  const weakest = Math.min(...levels.corners, ...levels.ownHot);
  const strongest = Math.max(...levels.corners, ...levels.ownCold);
  let level = "ok";
  if (isLower(weakest, least)) level = "low";
  else if (isHigher(strongest, most)) level = "high";
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const slope = Math.max(
    spread([lowHot, highHot, ...levels.ownHot]),
    spread([lowCold, highCold, ...levels.ownCold]),
  );
  const noise = noiseAt(worked, outlet);
  const isNoisy = noise.some(
    ({ clear, inRain, needed }) => isLower(clear, needed) || isLower(inRain ?? Infinity, needed),
  );
  const details = tables.outlet_details[outlet.index] ?? {};
  const splitBy = rowNamed(tables.device_parts, "part", details.split_by);
  const connectors = splitBy
    ? numberIn(splitBy, "ways", 1)
    : outlet.part
      ? numberIn(outlet.part, "connectors", 1)
      : 1;
  const { through } = openPorts(outlet);
  const isOpen = through && !closesPorts(tables);
  const commands: Commands | undefined = commandsOf(tables, outlet, statesAt(worked, outlet.head));
  return {
    level,
    slope: isHigher(slope, numberIn(settings, "slope_most", 15)) ? "steep" : "ok",
    noise: noise.length === 0 ? null : isNoisy ? "low" : "ok",
    commands,
    bands: worked.bands.get(outlet)?.isBad ? "bad" : "ok",
    connectors: receiver && howMany(outlet.row) > connectors ? "too many" : "ok",
    applied:
      receiver && isHigher(outletVolts(worked, outlet).standing, receiver.appliedMost, SLIGHT)
        ? "high"
        : "ok",
    openPort: isOpen ? "left open" : isOnPower(worked, outlet) ? "passes power" : "ok",
  };
}
