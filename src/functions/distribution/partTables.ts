/** The tables of parts: each row as the engine wants it, or with what it lacks. */
import type {
  AtEnds,
  ControlStandard,
  DevicePart,
  EndResistor,
  FeedPart,
  HeadUnitKind,
  PlatePart,
  PowerPath,
  ReceiverKind,
  SupplyPart,
  UserBand,
} from "../../engine/distribution/parts";
import { faults, isFault, type Fault } from "../../engine/faults";
import { nameKey } from "../../engine/signal/nameKey";
import { MOST_USER_BANDS_BASIC, TUNERS_BY_KIND } from "../../engine/tuners/constants";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import type { CableBook } from "../../engine/signal/cable";
import { isBlank, type Matrix } from "../core/cells";
import { cables as cableTable } from "../signal/cableTable";
import {
  BAND_PLANS,
  DEVICE_PARTS,
  END_RESISTORS,
  FEEDS,
  HEAD_UNIT_KINDS,
  PLATES,
  RECEIVERS,
  SUPPLIES,
} from "./columns";
import { hasPart, knownIn, partBook, partNamed, type PartBook } from "./partBook";
import { readRow, readTable, type Columns, type ReadRow, type ValuesOf } from "./rows";

export interface Parts {
  readonly cables: CableBook | undefined;
  readonly devices: PartBook<DevicePart>;
  readonly plates: PartBook<PlatePart>;
  readonly supplies: PartBook<SupplyPart>;
  readonly kinds: PartBook<HeadUnitKind>;
  readonly receivers: PartBook<ReceiverKind>;
  readonly feeds: PartBook<FeedPart>;
  readonly endResistors: PartBook<EndResistor>;
}

/** The tables of a job by name, as a function is given them. */
export type Tables = Readonly<Partial<Record<string, Matrix>>>;

/** @param range the site's lowest and highest frequency, where a feed does not say its own */
export function readParts(tables: Tables, range: { low: number; high: number }): Parts | Fault {
  // A table left out between others arrives as a blank cell.
  const isGiven = tables.cables?.some((row) => row.some((cell) => !isBlank(cell)));
  const cables = isGiven ? cableTable.readWhole(tables.cables!) : undefined;
  if (isFault(cables)) return cables;
  const broken: Fault[] = [];
  const rows = <const C extends Columns>(name: string, columns: C): ReadRow<C>[] => {
    const found = readTable(name, tables[name], columns);
    if (!isFault(found)) return found;
    broken.push(found);
    return [];
  };
  const plans = bandPlans(rows("band_plans", BAND_PLANS));
  const named = ({ name }: { name: string | undefined }): string | undefined => name;
  const parts: Parts = {
    cables,
    devices: partBook("device", rows("device_parts", DEVICE_PARTS), named, devicePart),
    plates: partBook("wall plate", rows("plates", PLATES), named, platePart),
    supplies: partBook("supply", rows("supplies", SUPPLIES), named, supplyPart),
    kinds: partBook("kind of head unit", rows("head_unit_kinds", HEAD_UNIT_KINDS), named, (values, name) =>
      headUnitKind(values, name, plans),
    ),
    receivers: partBook("receiver", rows("receivers", RECEIVERS), named, receiverKind),
    feeds: partBook("feed", rows("feeds", FEEDS), named, (values, name) => feedPart(values, name, range)),
    endResistors: partBook("end resistor", rows("end_resistors", END_RESISTORS), named, endResistor),
  };
  return broken[0] ?? parts;
}

const missing = (name: string): Fault => faults.missing(name, "a number");

/** @returns both figures, null where both are blank, a fault where one is */
function bothOrNone(
  what: string,
  low: number | undefined,
  high: number | undefined,
  [first, second] = ["lowest frequency", "highest frequency"],
): AtEnds | null | Fault {
  if (low === undefined && high === undefined) return null;
  if (low === undefined) return missing(`${what}, ${first}`);
  return high === undefined ? missing(`${what}, ${second}`) : { low, high };
}

const both = (what: string, low: number | undefined, high: number | undefined): AtEnds | Fault =>
  bothOrNone(what, low, high) ?? missing(`${what}, lowest frequency`);

interface PowerTyped {
  readonly power: PowerPath["passes"];
  readonly drop: number;
  readonly ohms: number;
  readonly amperes: number | undefined;
}
const powerPath = ({ power, drop, ohms, amperes }: PowerTyped): PowerPath => ({
  passes: power,
  drop,
  ohms,
  mostAmperes: amperes ?? null,
});

function devicePart(values: ValuesOf<typeof DEVICE_PARTS>, name: string): DevicePart | Fault {
  const { kind, ways, isolation, commands } = values;
  const isAmplifier = kind === "amplifier";
  const gain = isAmplifier ? both("gain", values.gainLow, values.gainHigh) : null;
  if (isFault(gain)) return gain;
  const port = gain
    ? { low: -gain.low, high: -gain.high }
    : both("loss to a port", values.portLow, values.portHigh);
  if (isFault(port)) return port;
  const through = kind === "tap" ? both("loss through", values.throughLow, values.throughHigh) : null;
  if (isFault(through)) return through;
  if (kind === "splitter" && ways === undefined) return missing("ways");
  if (isAmplifier && values.noise === undefined) return missing("noise figure");
  return {
    kind,
    name,
    ways: kind === "splitter" || kind === "tap" ? (ways ?? 1) : 1,
    port,
    through,
    isolation: isolation ?? null,
    power: powerPath(values),
    passesCommands: commands === "yes",
    amplifier: isAmplifier
      ? {
          noiseFigure: values.noise!,
          mostOutput: values.output ?? null,
          load: values.load ?? 0,
          leastVolts: values.least ?? 0,
        }
      : null,
    supply: null,
  };
}

function platePart(values: ValuesOf<typeof PLATES>, name: string): PlatePart | Fault {
  const through = bothOrNone("loss through", values.throughLow, values.throughHigh);
  if (isFault(through)) return through;
  return {
    name,
    port: { low: values.portLow, high: values.portHigh },
    through,
    isolation: values.isolation ?? null,
    power: powerPath(values),
    connectors: values.connectors,
  };
}

const supplyPart = (values: ValuesOf<typeof SUPPLIES>, name: string): SupplyPart => ({
  name,
  stands: values.stands,
  volts: values.volts,
  mostAmperes: values.amperes ?? null,
  loss: { low: values.lossLow, high: values.lossHigh },
  otherSide: values.otherSide,
});

/** @returns a supply as the inserter that it is in a line */
export const inserterOf = (supply: SupplyPart): DevicePart => ({
  kind: "inserter",
  name: supply.name,
  ways: 1,
  port: supply.loss,
  through: null,
  isolation: null,
  power: { passes: "no", drop: 0, ohms: 0, mostAmperes: null },
  passesCommands: true,
  amplifier: null,
  supply,
});

type PlannedBand = ValuesOf<typeof BAND_PLANS>;

/** A plan takes several rows. */
function bandPlans(rows: readonly ReadRow<typeof BAND_PLANS>[]): PartBook<readonly PlannedBand[]> {
  const byPlan = new Map<string, { name: string; rows: ReadRow<typeof BAND_PLANS>[] }>();
  for (const row of rows) {
    const { plan } = row.values;
    if (plan === undefined) continue;
    const found = byPlan.get(nameKey(plan));
    if (found) found.rows.push(row);
    else byPlan.set(nameKey(plan), { name: plan, rows: [row] });
  }
  const parts = [...byPlan].map(([key, { name, rows: some }]) => {
    const bands = some.map(({ values }) => values);
    const fault = some.find((row) => row.fault)?.fault ?? twice(bands.map(({ band }) => band));
    return [key, { name, part: fault ?? bands }] as const;
  });
  return { what: "band plan", parts: new Map(parts) };
}

function twice(numbers: readonly number[]): Fault | null {
  const second = numbers.find((one, index) => numbers.indexOf(one) !== index);
  return second === undefined ? null : faults.partTwice(String(second));
}

function headUnitKind(
  values: ValuesOf<typeof HEAD_UNIT_KINDS>,
  name: string,
  plans: PartBook<readonly PlannedBand[]>,
): HeadUnitKind | Fault {
  const { standard = null, plan, bands: count } = values;
  const planned = plan === undefined ? null : partNamed(plans, name, plan);
  if (isFault(planned)) return planned;
  if (planned && count !== undefined && count !== planned.length)
    return faults.bandsOfPlan(count, plan!, planned.length);
  if (!planned && count === undefined) return missing("user bands");
  const input = bothOrNone("input", values.inputLow, values.inputHigh, ["minimum", "maximum"]);
  if (isFault(input)) return input;
  const onward = bothOrNone("onward loss", values.onwardLow, values.onwardHigh);
  if (isFault(onward)) return onward;
  const numbers = Array.from({ length: count ?? 0 }, (_, index) => ({
    band: index + 1,
    centre: undefined,
    width: undefined,
    standard: undefined,
  }));
  return {
    name,
    sits: values.sits,
    standard,
    commandsPassBlock: values.passBlock === undefined ? null : values.passBlock === "yes",
    deafAbove: values.deafAbove ?? null,
    outputs: values.outputs,
    bands: (planned ?? numbers).map((one): UserBand => ({
      number: one.band,
      centre: one.centre ?? null,
      width: one.width ?? null,
      standard: one.standard ?? usualStandard(standard, one.band),
    })),
    output: { low: values.outLow, high: values.outHigh },
    noiseFigure: values.noise ?? null,
    slots: values.slots,
    feedersPerSlot: values.feeders,
    input: input && { least: input.low, most: input.high },
    onward,
    leastVolts: values.least,
    load: values.load,
    loadKind: values.loadKind,
    outputDrop: values.drop ?? null,
    senseAmperes: values.sense ?? null,
    powersFeed: values.powersFeed === "yes",
  };
}

/** EN 50494 has bands 1 to 8; bands of a maker's own kind are its own. */
const usualStandard = (kind: ControlStandard | null, band: number): ControlStandard | null =>
  kind === null || kind === "maker's own" ? kind : band <= MOST_USER_BANDS_BASIC ? "EN 50494" : "EN 50607";

function receiverKind(values: ValuesOf<typeof RECEIVERS>, name: string): ReceiverKind | Fault {
  const tuners = values.tuners ?? tunersOfKind(name);
  if (isFault(tuners)) return missing("tuners");
  return {
    name,
    tuners,
    standard: values.standard,
    restVolts: values.rest,
    commandVolts: values.command,
    mostAmperes: values.amperes,
    bearsVolts: values.bears,
    noiseFigure: values.noise,
  };
}

/** @returns the kind of a row, or of a word that needs none */
export function receiverNamed(book: PartBook<ReceiverKind>, by: string, name: string): ReceiverKind | Fault {
  if (hasPart(book, name)) return partNamed(book, by, name);
  const tuners = tunersOfKind(name);
  return isFault(tuners)
    ? faults.partUnknown(by, book.what, name, [...new Set([...knownIn(book), ...TUNERS_BY_KIND.keys()])])
    : receiverKind(readRow([name, tuners], 0, RECEIVERS)!.values, name);
}

function feedPart(
  values: ValuesOf<typeof FEEDS>,
  name: string,
  range: { readonly low: number; readonly high: number },
): FeedPart | Fault {
  const { ifLow = range.low, ifHigh = range.high } = values;
  if (ifLow > ifHigh) return faults.lowAboveHigh(FEEDS.ifLow.name, ifLow, FEEDS.ifHigh.name, ifHigh, "MHz");
  return {
    name,
    outputs: values.outputs,
    gain: values.gain,
    noiseFigure: values.noise,
    lowIf: ifLow,
    highIf: ifHigh,
    load: values.load,
    leastVolts: values.least,
  };
}

const endResistor = ({ ohms, blocks }: ValuesOf<typeof END_RESISTORS>, name: string): EndResistor => ({
  name,
  ohms,
  blocksPower: blocks === "yes",
});
