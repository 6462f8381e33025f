/** Levels, volts, currents and checks of devices. */
import { isFilled } from "../job";
import { bandsOf } from "./bands";
import { corners, levelBehind } from "./levels";
import { closesPorts, openPorts } from "./supply";
import { numberIn, rowNamed, straight, wordIn, type Answer, type Tables } from "./tables";
import { kindAt, stepsTo, type Thing } from "./tree";
import {
  everyState,
  fedBackwards,
  isHigher,
  isLower,
  isOnPower,
  SLIGHT,
  LEAST_AMPS,
  leastIn,
  statesAt,
  statesInUse,
  statesWatched,
  type Worked,
} from "./worked";

/** Intermodulation of n carriers: 7.5·log10(n − 1) dB less (practice with distribution amplifiers, from memory). */
const derating = (carriers: number): number => (carriers > 1 ? 7.5 * Math.log10(carriers - 1) : 0);

const below = (thing: Thing): Thing[] => [thing, ...thing.children.flatMap(below)];
const isAmplifier = (thing: Thing): boolean => thing.what === "device" && kindAt(thing) === "amplifier";

/** Carriers that a device carries: the user bands of its output. */
const carriersAt = ({ tables }: Worked, thing: Thing): number => bandsOf(tables, thing.head).length;

/** Whether a supply feeds into the line above: an inserter, or one of its head unit that stands in the line. */
function isLineFed(tables: Tables, thing: Thing): boolean {
  const own = rowNamed(tables.supplies, "supply", thing.head.row.supply);
  const isInserter = (one: Thing): boolean => one.what === "device" && kindAt(one) === "inserter";
  const above = (one: Thing | undefined): boolean =>
    one !== undefined && (isInserter(one) || above(one.parent));
  const stands = own && wordIn(own, "stands");
  // Its own supply stands at its first output.
  return above(thing.parent) || (thing.output === 1 && (stands === "in the line" || stands === ""));
}

export function amplifierFigures(worked: Worked, thing: Thing) {
  const { tables } = worked;
  const steps = stepsTo(thing);
  const outlets = below(thing).filter(({ what }) => what === "outlet");
  const watched = statesWatched(worked, thing.head, outlets);
  return {
    output: Math.max(...corners(tables).map((at) => levelBehind(tables, thing, steps, at))),
    limit: numberIn(thing.part!, "output_most") - derating(carriersAt(worked, thing)),
    // Without a supply on its line nobody misses it while nobody below it is on.
    volts: leastIn(
      (watched.length > 0 && !isLineFed(tables, thing)
        ? watched
        : statesInUse(worked, thing.head, outlets)
      ).flatMap((state) => (state ? [state.at(thing)] : [])),
    ),
    leastVolts: numberIn(thing.part!, "least_volts"),
  };
}

export function deviceLevels(worked: Worked, thing: Thing): Answer[] {
  const { tables } = worked;
  const kind = kindAt(thing);
  const hasPorts = kind === "splitter" || kind === "tap";
  const ofPort = straight(tables, numberIn(thing.part!, "port_low"), numberIn(thing.part!, "port_high"));
  const steps = stepsTo(thing);
  const amplifier = isAmplifier(thing) ? amplifierFigures(worked, thing) : undefined;
  const isLimited = amplifier && isFilled(thing.part!, "output_most");
  return [
    thing.head.name,
    thing.output,
    thing.port,
    thing.children.length,
    ...corners(tables).map((at) => levelBehind(tables, thing, steps, at) - (hasPorts ? ofPort(at.mhz) : 0)),
    amplifier ? amplifier.output : null,
    isLimited ? amplifier.limit : null,
  ];
}

export function deviceChecks(worked: Worked, thing: Thing): Answer[] {
  const { tables } = worked;
  const amplifier = isAmplifier(thing) ? amplifierFigures(worked, thing) : undefined;
  const amps = Math.max(
    ...everyState(statesAt(worked, thing.head)).map((state) =>
      Math.max(state.through(thing), thing.source ? state.supplyAmps(`device ${thing.name}`) : 0),
    ),
  );
  const isUnused = thing.source !== undefined && amps < LEAST_AMPS;
  const isOver = isHigher(amps, numberIn(thing.part!, "amps", Infinity), SLIGHT);
  const backwards = fedBackwards(worked, thing.head);
  let current = isOver ? "high" : isUnused ? "unused" : "ok";
  // Where one supply feeds another, what flows follows from that, and only that is said.
  if (backwards.length > 0 && !thing.source) current = "ok";
  if (backwards.includes(`device ${thing.name}`)) current = "high";
  const isLimited = amplifier && isFilled(thing.part!, "output_most");
  const kind = kindAt(thing);
  const { through } = openPorts(thing);
  const isOpen = through && !closesPorts(tables);
  const port = isOpen ? "left open" : isOnPower(worked, thing) ? "passes power" : "ok";
  return [
    amplifier?.volts ?? null,
    amps,
    "ok",
    amplifier ? (isLower(amplifier.volts ?? Infinity, amplifier.leastVolts, SLIGHT) ? "low" : "ok") : null,
    current,
    isLimited ? (isHigher(amplifier.output, amplifier.limit) ? "high" : "ok") : null,
    kind === "splitter" || kind === "tap" ? port : null,
  ];
}
