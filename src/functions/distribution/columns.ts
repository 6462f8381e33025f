/** The columns of the tables of a job, in their order on the sheets. */
import { faults, isFault, type Fault } from "../../engine/faults";
import { LENGTH_UNITS } from "../../engine/signal/lengthUnits";
import { slotName } from "../../engine/sightline/slotName";
import type { PortWanted } from "../../engine/distribution/job";
import {
  choice,
  number,
  optional,
  slot,
  text,
  type EachParameter,
  type NumberSpec,
} from "../core/parameters";
import { IGNORED, PRICE } from "./rows";

const word = (name: string, wanted?: string): EachParameter<string> => text({ name, help: "", wanted });
const maybe = (name: string): EachParameter<string | undefined> => optional(word(name));
const figure = (name: string, spec: Omit<NumberSpec, "name" | "help"> = {}): EachParameter<number> =>
  number({ name, help: "", ...spec });

const decibels = (name: string): EachParameter<number> => figure(name, { unit: "dB", min: 0, max: 200 });
const level = (name: string): EachParameter<number> => figure(name, { unit: "dBµV", min: -50, max: 200 });
const volts = (name: string): EachParameter<number> => figure(name, { unit: "V", min: 0, max: 100 });
const amperes = (name: string): EachParameter<number> => figure(name, { unit: "A", min: 0, max: 100 });
const megahertz = (name: string): EachParameter<number> =>
  figure(name, { unit: "MHz", min: 5, max: 10_000, advice: "Give MHz, not GHz" });
const length = (name: string): EachParameter<number> =>
  figure(name, { min: 0, max: 100_000, advice: "Check the length and its unit" });
const pieces = (name: string, max = 1000): EachParameter<number> =>
  figure(name, { integer: true, min: 1, max });
const yesOrNo = (name: string): EachParameter<"yes" | "no"> =>
  choice({ name, help: "", choices: ["yes", "no"] });
const standard = (name: string) =>
  choice({ name, help: "", choices: ["EN 50494", "EN 50607", "maker's own"] });
const passes = (name: string) =>
  choice({ name, help: "", choices: ["no", "one port", "all ports", "towards head unit"] });

/** A whole number, or a word; a sheet may have the number as text beside the word. */
const port: EachParameter<PortWanted> = {
  ...word("port"),
  optional: true,
  read: (cell) => {
    if (isFault(cell)) return cell;
    const typed = typeof cell === "string" ? cell.trim().toLowerCase() : cell;
    if (typed === null || typed === "") return null;
    if (typed === "through") return "through";
    const found = typeof typed === "boolean" ? NaN : Number(typed);
    return Number.isInteger(found) && found >= 1 ? found : faults.portNotRead(cell);
  },
};

/** What stands in one cell, parted by blanks, commas or semicolons. */
const partsOf = (typed: string): string[] => typed.split(/[\s,;]+/).filter((one) => one !== "");

/** Numbers of user bands: 5, "9 10", "9, 10". */
const kept: EachParameter<readonly number[]> = {
  ...word("user bands kept"),
  optional: true,
  read: (cell) => {
    if (isFault(cell)) return cell;
    const numbers = partsOf(String(cell ?? "")).map(Number);
    const sound = numbers.every((one) => Number.isInteger(one) && one >= 1);
    return typeof cell !== "boolean" && sound && new Set(numbers).size === numbers.length
      ? numbers
      : faults.bandsNotRead(cell);
  },
};

const orbital = slot({ name: "slot", help: "" });

/** Degrees east of each slot: "97W 113W", or one as a number. */
const slots: EachParameter<readonly number[] | undefined> = {
  ...word("slots"),
  optional: true,
  read: (cell) => {
    if (isFault(cell)) return cell;
    if (typeof cell !== "string") {
      const one = cell === null ? undefined : orbital.read(cell);
      return isFault(one) || one === undefined ? one : [one];
    }
    const read = partsOf(cell).map(orbital.read);
    return read.find(isFault) ?? (read.length === 0 ? undefined : (read as number[]));
  },
};

export interface SlotTyped {
  readonly name: string;
  readonly east: number;
}

/** An orbital slot with the name that the job has for it. */
const slotTyped: EachParameter<SlotTyped> = {
  ...orbital,
  read: (cell): SlotTyped | Fault => {
    const east = orbital.read(cell);
    if (isFault(east)) return east;
    return {
      east,
      name: typeof cell === "string" ? cell.trim() : slotName(east),
    };
  },
};

export const OUTLETS = {
  floor: maybe("floor"),
  room: maybe("room"),
  outlet: word("outlet", "a name for the outlet"),
  receiver: maybe("receiver"),
  /** None is a spare outlet. */
  quantity: optional(figure("how many", { integer: true, min: 0, max: 1000 }), 1),
  from: maybe("fed from"),
  cable: maybe("cable"),
  run: length("run"),
  plate: maybe("wall plate"),
};

export const OUTLET_DETAILS = {
  route: maybe("route"),
  port,
  split: maybe("split by"),
  kept,
  shortest: optional(length("shortest run")),
  longest: optional(length("longest run")),
};

export const DEVICES = {
  device: word("device", "a name for the device"),
  from: maybe("fed from"),
  part: word("part", "the name of a device or of a supply"),
  cable: maybe("cable"),
  length: optional(length("length")),
  port,
  route: maybe("route"),
};

export const HEAD_UNITS = {
  head: word("head unit", "a name for the head unit"),
  kind: word("kind", "the kind of head unit"),
  dish: maybe("dish"),
  supply: maybe("supply"),
  cable: maybe("cable"),
  length: optional(length("length")),
  route: maybe("route"),
};

const dishSize = figure("dish size", {
  unit: "m",
  min: 0,
  aboveMin: true,
  max: 10,
  advice: "Give metres, not centimetres",
});

export const DISHES = {
  dish: word("dish", "a name for the dish"),
  size: optional(dishSize),
  slots,
  feed: maybe("feed"),
  offFocus: optional(decibels("loss off the focus")),
};

export const FEEDERS = {
  from: word("from", "a dish, or the switch before it"),
  to: word("to", "the head unit that it comes to"),
  slot: optional(orbital),
  quantity: optional(pieces("how many")),
  cable: maybe("cable"),
  length: optional(length("length"), 0),
  route: maybe("route"),
};

export const SLOTS = {
  slot: slotTyped,
  what: IGNORED,
  obstacle: IGNORED,
  eirp: optional(figure("EIRP", { unit: "dBW", min: -50, max: 150 })),
  symbolRate: optional(
    figure("symbol rate", {
      unit: "Msym/s",
      min: 0,
      aboveMin: true,
      max: 1000,
      advice: "Give Msym/s, not ksym/s",
    }),
  ),
  modulation: maybe("modulation"),
};

export const SETTINGS = {
  latitude: optional(figure("latitude", { unit: "deg", min: -90, max: 90 })),
  longitude: optional(figure("longitude", { unit: "deg", min: -180, max: 180 })),
  height: optional(figure("height", { unit: "m", min: -500, max: 10_000 }), 0),
  dishSize: optional(dishSize),
  unit: optional(choice({ name: "unit", help: "", choices: LENGTH_UNITS }), "m"),
  low: megahertz("lowest frequency"),
  high: megahertz("highest frequency"),
  cold: figure("coldest", { unit: "°C", min: -60, max: 90 }),
  hot: figure("hottest", { unit: "°C", min: -60, max: 90 }),
  levelLow: level("minimum level"),
  levelHigh: level("maximum level"),
  tolerance: optional(figure("length tolerance", { min: 0, max: 1, advice: "Give a share, such as 0.1" }), 0),
  cable: maybe("usual cable"),
  plate: maybe("usual wall plate"),
  route: maybe("usual route"),
  endResistor: maybe("end resistor"),
  availability: optional(figure("availability", { unit: "%", min: 50, max: 99.999 })),
  rainRate: optional(figure("rain rate", { unit: "mm/h", min: 0, max: 300 })),
  rainHeight: optional(figure("rain height", { unit: "km", min: 0, max: 20 })),
  // Common practice, no source, as is the margin; the slope is from memory.
  dishLoss: optional(decibels("losses at the dish"), 0.8),
  margin: optional(decibels("carrier-to-noise margin"), 2),
  slope: optional(decibels("greatest slope"), 15),
};

export const DEVICE_PARTS = {
  name: maybe("device"),
  kind: optional(
    choice({
      name: "kind",
      help: "",
      choices: ["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter"],
    }),
    "splitter",
  ),
  ways: optional(pieces("ways", 256)),
  portLow: optional(decibels("loss to a port, lowest frequency")),
  portHigh: optional(decibels("loss to a port, highest frequency")),
  throughLow: optional(decibels("loss through, lowest frequency")),
  throughHigh: optional(decibels("loss through, highest frequency")),
  power: optional(passes("power-passing ports"), "no"),
  ...PRICE,
  isolation: optional(decibels("isolation")),
  // Of a diode, from memory.
  drop: optional(volts("diode drop"), 0.7),
  ohms: optional(figure("pass resistance", { unit: "ohm", min: 0, max: 1000 }), 0),
  amperes: optional(amperes("greatest current")),
  gainLow: optional(decibels("gain, lowest frequency")),
  gainHigh: optional(decibels("gain, highest frequency")),
  noise: optional(decibels("noise figure")),
  output: optional(level("greatest output")),
  load: optional(amperes("load")),
  least: optional(volts("minimum volts")),
  commands: optional(yesOrNo("passes commands"), "yes"),
};

export const PLATES = {
  name: maybe("wall plate"),
  portLow: decibels("loss, lowest frequency"),
  portHigh: decibels("loss, highest frequency"),
  ...PRICE,
  throughLow: optional(decibels("loss through, lowest frequency")),
  throughHigh: optional(decibels("loss through, highest frequency")),
  power: optional(passes("power-passing ports"), "all ports"),
  drop: optional(volts("diode drop"), 0.7),
  ohms: optional(figure("pass resistance", { unit: "ohm", min: 0, max: 1000 }), 0),
  amperes: optional(amperes("greatest current")),
  isolation: optional(decibels("isolation")),
  connectors: optional(pieces("connectors", 16), 1),
};

export const SUPPLIES = {
  name: maybe("supply"),
  volts: volts("volts"),
  amperes: optional(amperes("greatest current")),
  ...PRICE,
  stands: optional(
    choice({ name: "stands", help: "", choices: ["in the line", "at the head unit"] }),
    "in the line",
  ),
  lossLow: optional(decibels("loss, lowest frequency"), 0),
  lossHigh: optional(decibels("loss, highest frequency"), 0),
  otherSide: optional(choice({ name: "other side passes", help: "", choices: ["no", "all ports"] }), "no"),
};

export const HEAD_UNIT_KINDS = {
  name: maybe("head unit"),
  bands: optional(pieces("user bands", 32)),
  outLow: level("output, lowest frequency"),
  outHigh: level("output, highest frequency"),
  least: volts("minimum volts"),
  load: figure("load", { unit: "A or W", min: 0, max: 1000 }),
  loadKind: choice({ name: "unit of the load", help: "", choices: ["A", "W"] }),
  ...PRICE,
  sits: optional(choice({ name: "sits", help: "", choices: ["on the dish", "fed"] }), "on the dish"),
  standard: optional(standard("control standard")),
  passBlock: optional(yesOrNo("commands pass a DC block")),
  deafAbove: optional(volts("hears nothing above")),
  outputs: optional(pieces("outputs", 64), 1),
  plan: maybe("band plan"),
  noise: optional(decibels("noise figure")),
  slots: optional(pieces("slots", 64), 1),
  feeders: optional(pieces("feeders per slot", 64), 4),
  inputLow: optional(level("input, minimum")),
  inputHigh: optional(level("input, maximum")),
  onwardLow: optional(decibels("onward loss, lowest frequency")),
  onwardHigh: optional(decibels("onward loss, highest frequency")),
  drop: optional(volts("diode drop at each output")),
  sense: optional(amperes("current taken at each output")),
  powersFeed: optional(yesOrNo("powers its feed"), "no"),
  aiming: IGNORED,
};

export const RECEIVERS = {
  name: maybe("kind"),
  tuners: optional(figure("tuners", { integer: true, min: 1, max: 32 })),
  standard: optional(standard("control standard"), "EN 50494"),
  // 13 and 18 V: EN 50494. 0.4 A and 10 dB: from memory. 19 V: common practice, no source.
  rest: optional(volts("volts at rest"), 13),
  command: optional(volts("volts while commanding"), 18),
  amperes: optional(amperes("greatest current"), 0.4),
  bears: optional(volts("maximum applied volts"), 19),
  noise: optional(decibels("noise figure"), 10),
};

export const FEEDS = {
  name: maybe("feed"),
  outputs: pieces("outputs", 64),
  gain: decibels("gain"),
  noise: decibels("noise figure"),
  ifLow: optional(megahertz("intermediate frequency, lowest")),
  ifHigh: optional(megahertz("intermediate frequency, highest")),
  load: amperes("load"),
  least: volts("minimum volts"),
  ...PRICE,
};

export const BAND_PLANS = {
  plan: maybe("plan"),
  band: pieces("band", 32),
  centre: optional(megahertz("centre")),
  width: optional(figure("width", { unit: "MHz", min: 0, aboveMin: true, max: 3000 })),
  standard: optional(standard("standard")),
};

export const END_RESISTORS = {
  name: maybe("end resistor"),
  ohms: optional(figure("resistance", { unit: "ohm", min: 0, aboveMin: true, max: 100_000 }), 75),
  blocks: optional(yesOrNo("blocks power"), "no"),
  ...PRICE,
};
