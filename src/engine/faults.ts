/**
 * Every fault that the engine or a function can answer with.
 *
 * A fault is a value, not an exception: a code that a spreadsheet can show and
 * one sentence that says what is wrong, the value seen, the range allowed with
 * its unit, and what to do. Only `#VALUE!` and `#N/A` are used, because those
 * are the two codes with which Excel shows a sentence of ours.
 */
import { argument, asRowsOf, inRow, plain, withoutMarks } from "./argumentNames";

export type FaultCode = "#VALUE!" | "#N/A";

export interface Fault {
  readonly kind: "fault";
  readonly code: FaultCode;
  readonly message: string;
  /** The message with the arguments that it names marked, where it names any. */
  readonly marked?: string;
}

function fault(code: FaultCode, sentence: string): Fault {
  const message = plain(sentence);
  return message === sentence
    ? { kind: "fault", code, message }
    : { kind: "fault", code, message, marked: sentence };
}

export const isFault = (value: unknown): value is Fault =>
  typeof value === "object" && value !== null && (value as Fault).kind === "fault";

/** A value as it is shown inside a sentence: text in quotes, cut at 40 characters. */
export function shown(value: unknown): string {
  if (typeof value === "string") {
    const text = withoutMarks(value);
    return `"${text.length > 40 ? `${text.slice(0, 39)}…` : text}"`;
  }
  if (typeof value === "number") {
    return Object.is(value, -0)
      ? "0"
      : String(Number.isInteger(value) ? value : Number(value.toPrecision(8)));
  }
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value === null || value === undefined ? "nothing" : "something that is neither number nor text";
}

export interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** The lower limit itself is refused. */
  readonly aboveMin?: boolean;
  readonly integer?: boolean;
  readonly unit?: string;
}

/** "from 0 to 90 deg", "more than 0 m", "a whole number from 1 to 32". */
export function limitsInWords({ min, max, aboveMin, integer, unit }: Limits): string {
  const tail = unit ? ` ${unit}` : "";
  const kind = integer ? "a whole number " : "";
  if (min !== undefined && max !== undefined) {
    return aboveMin
      ? `${kind}more than ${min} and at most ${max}${tail}`
      : `${kind}from ${min} to ${max}${tail}`;
  }
  if (min !== undefined) return aboveMin ? `${kind}more than ${min}${tail}` : `${kind}${min}${tail} or more`;
  if (max !== undefined) return `${kind}${max}${tail} or less`;
  return `${integer ? "a whole number" : "a number"}${unit ? ` in ${unit}` : ""}`;
}

const numberInWords = (limits: Limits): string => {
  const words = limitsInWords(limits);
  return words.includes("number") ? words : `a number ${/^\d|^-/.test(words) ? "of " : ""}${words}`;
};

/** How many names a sentence lists before it says how many more there are. */
const MOST_LISTED = 8;

const shortList = (names: readonly string[]): string =>
  names.length > MOST_LISTED
    ? `${names.slice(0, MOST_LISTED).map(shown).join(", ")} and ${names.length - MOST_LISTED} more`
    : names.map(shown).join(", ");

const inVolts = (volts: number): string => `${Math.max(0, volts).toFixed(1)} V`;

/** A figure with so many decimals, and more where they would make it look like the limit that it misses. */
function beside(value: number, limit: number, decimals: number): string {
  let shown = value.toFixed(decimals);
  for (let more = decimals + 1; more <= 4 && Number(shown) === limit; more++) shown = value.toFixed(more);
  return shown;
}
const voltsBeside = (volts: number, limit: number): string => `${beside(Math.max(0, volts), limit, 1)} V`;

/** How the sentences name the argument of that kind. */
const CABLE_TABLE = argument("cables", undefined, "the cable table");

export const faults = {
  missing: (name: string, what: string): Fault =>
    fault("#VALUE!", `${argument(name)} is missing. Enter ${what}.`),

  notANumber: (name: string, value: unknown, limits: Limits): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}, which is not a number. Enter ${numberInWords(limits)}.`,
    ),

  decimalComma: (name: string, value: string, suggestion: string): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}, text with a decimal comma. Write ${suggestion}, or set the cell to a number.`,
    ),

  ambiguousNumber: (name: string, value: string, ways: readonly [string, string]): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}, which can be ${ways[0]} or ${ways[1]}. Write it with a decimal point and without any other mark.`,
    ),

  outOfRange: (name: string, value: number, limits: Limits, advice = "Check the value and its unit"): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}${limits.unit ? ` ${limits.unit}` : ""}; it must be ${limitsInWords(limits)}. ${advice}.`,
    ),

  notText: (name: string, value: unknown, what: string): Fault =>
    fault("#VALUE!", `${argument(name)} is ${shown(value)}, which is not text. Enter ${what}.`),

  notAChoice: (name: string, value: unknown, choices: readonly string[]): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}; it must be one of ${choices.map(shown).join(", ")}.`,
    ),

  notASlot: (name: string, value: unknown): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}, which is not an orbital slot. Enter degrees east from -180 to 180, or text such as 97W or 13E.`,
    ),

  notADate: (name: string, value: unknown): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} is ${shown(value)}, which is not a date. Enter a date cell, text such as 2026-07-04, or a decimal year from 1900 to 2200.`,
    ),

  errorCell: (name: string, code: string): Fault =>
    fault("#VALUE!", `${argument(name)} holds the error ${code}. Put that cell right first.`),

  badShape: (name: string, rows: number, columns: number, what: string): Fault =>
    fault("#VALUE!", `${argument(name)} is ${rows} rows by ${columns} columns; it must be ${what}.`),

  ragged: (name: string): Fault =>
    fault("#VALUE!", `${argument(name)} has rows of different lengths. Give a whole rectangle of cells.`),

  shortColumn: (name: string, have: number, need: number): Fault =>
    fault(
      "#N/A",
      `${argument(name)} has ${have} entries where the other columns have ${need}. Give columns of one length.`,
    ),

  tooManyArguments: (name: string, have: number, most: number): Fault =>
    fault("#VALUE!", `${name} was given ${have} arguments; it takes ${most} at the most.`),

  unknownFunction: (name: string): Fault =>
    fault("#N/A", `There is no function ${name}. Look in the function list for the right name.`),

  noWorking: (name: string, shownOnes: readonly string[]): Fault =>
    fault("#N/A", `The working of ${shown(name)} cannot be shown. It can be for ${shownOnes.join(", ")}.`),

  oneRowOfWork: (name: string): Fault =>
    fault(
      "#VALUE!",
      `SHOWWORK shows one row of ${name} at a time. Give it single values instead of columns.`,
    ),

  underTheSlot: (latitude: number, slot: number): Fault =>
    fault(
      "#VALUE!",
      `The site at latitude ${shown(latitude)} deg lies straight under the slot at ${shown(slot)} deg east, where an azimuth has no meaning. Aim the dish at the zenith.`,
    ),

  outsideMagneticModel: (date: Date, first: string, last: string): Fault =>
    fault(
      "#N/A",
      `${argument("date")} is ${date.toISOString().slice(0, 10)}; the magnetic model WMM2025 holds from ${first} to ${last}. Give a date within that span, or take the declination from a current chart.`,
    ),

  compassBlackout: (horizontal: number): Fault =>
    fault(
      "#N/A",
      `The horizontal magnetic field at this site is ${shown(Math.round(horizontal))} nT; a compass needs 2000 nT or more. Take the bearing from the sun or from a map.`,
    ),

  belowHorizon: (slot: number, elevation: number): Fault =>
    fault(
      "#N/A",
      `The slot at ${shown(slot)} deg east stands at an elevation of ${shown(Number(elevation.toPrecision(3)))} deg; it must be 0 deg or more to be seen. Choose a slot above this site's horizon.`,
    ),

  unknownCable: (name: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `There is no cable ${shown(name)}. Known are ${shortList(known)}. Use one of these names, or add the cable to ${CABLE_TABLE}.`,
    ),

  cableTwice: (name: string): Fault =>
    fault(
      "#VALUE!",
      `The cable ${shown(name)} stands in more than one row of ${CABLE_TABLE}. Give every row its own name.`,
    ),

  cableLikeUnknown: (name: string, like: string, known: readonly string[]): Fault =>
    fault(
      "#VALUE!",
      `The cable ${shown(name)} is said to be like ${shown(like)}, which is not a built-in type. Use one of ${known.map(shown).join(", ")}, or leave it blank and give the figures.`,
    ),

  cableLacks: (name: string, column: string): Fault =>
    fault(
      "#VALUE!",
      `The cable ${shown(name)} has no ${column} in ${CABLE_TABLE}. Fill that column, or name a built-in type in the column "like".`,
    ),

  cableTermBlank: (name: string, term: string): Fault =>
    fault(
      "#VALUE!",
      `The cable ${shown(name)} has a blank ${term} beside other loss coefficients. Give all three of k1, k2 and k0; write 0 for a term that the cable does not have.`,
    ),

  cableGains: (name: string, frequencyMHz: number, decibelsPer100m: number): Fault =>
    fault(
      "#VALUE!",
      `The coefficients of cable ${shown(name)} give ${shown(decibelsPer100m)} dB per 100 m at ${shown(frequencyMHz)} MHz; a cable's loss must be 0 dB or more. Check k1, k2 and k0 in ${CABLE_TABLE}.`,
    ),

  lowAboveHigh: (lowName: string, low: number, highName: string, high: number, unit = ""): Fault => {
    const tail = unit && ` ${unit}`;
    return fault(
      "#VALUE!",
      `${argument(lowName)} is ${shown(low)}${tail}, above ${argument(highName)}, which is ${shown(high)}${tail}. Give the lower value first.`,
    );
  },

  oneFrequency: (lowName: string, highName: string, frequency: number): Fault =>
    fault(
      "#VALUE!",
      `${argument(lowName)} and ${argument(highName)} are both ${shown(frequency)} MHz. Give the two ends of the range.`,
    ),

  noVoltage: (microvolts: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("value")} is ${shown(microvolts)} µV; a level needs more than 0 µV. Check the reading and its unit.`,
    ),

  waysMissing: (position: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("ways", position, `Entry ${position} of the list`)} has an excess loss but no number of ways. Give the ways, or 1 for a plain loss.`,
    ),

  treeUnknownParent: (id: string, parent: string): Fault =>
    fault(
      "#N/A",
      `${shown(id)} is fed from ${shown(parent)}, which is neither an id of this tree nor one of its tops. Check the spelling, or leave it blank for a row fed straight from the top.`,
    ),

  treeDuplicate: (id: string): Fault =>
    fault("#VALUE!", `The id ${shown(id)} is given to more than one row. Give every row its own id.`),

  treeIdIsTop: (id: string): Fault =>
    fault(
      "#VALUE!",
      `The id ${shown(id)} is also the name of a top, such as a head unit. Give the row another id.`,
    ),

  treeLoop: (ids: readonly string[]): Fault =>
    fault(
      "#VALUE!",
      ids.length === 1
        ? `${shown(ids[0])} is fed from itself. Feed it from another row, or leave it blank for a row fed straight from the top.`
        : `The rows ${shortList(ids)} feed one another in a loop, each fed from the next. Feed one of them from outside the loop.`,
    ),

  treeBelowFault: (id: string, bad: string): Fault =>
    fault(
      "#N/A",
      `${shown(id)} hangs below ${shown(bad)}, whose own row has a fault. Put the row of ${shown(bad)} right first.`,
    ),

  notFed: (id: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(id)} is fed from nothing. Name the head unit, device or loop-through outlet that feeds it.`,
    ),

  fedFromItself: (id: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(id)} is fed from itself. Name the head unit, device or loop-through outlet that feeds it.`,
    ),

  fedFromUnknown: (id: string, from: string): Fault =>
    fault(
      "#N/A",
      `${shown(id)} is fed from ${shown(from)}, which is no head unit, device or outlet of this job. Check the spelling, or add its row.`,
    ),

  nameTwice: (id: string): Fault =>
    fault("#VALUE!", `The name ${shown(id)} is given to more than one row. Give each row a name of its own.`),

  nameOfHeadUnit: (id: string): Fault =>
    fault("#VALUE!", `The name ${shown(id)} is also that of a head unit. Give this row another name.`),

  fedByTwo: (id: string, first: string, second: string): Fault =>
    fault(
      "#VALUE!",
      `The name ${shown(id)} stands in two rows, fed from ${shown(first)} and from ${shown(second)}. Keep the row of the one that feeds it, or give the other part a name of its own.`,
    ),

  portBeyond: (feeding: string, id: string, port: number, ports: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(id)} is on port ${shown(port)} of ${shown(feeding)}, which has ${ports === 0 ? "none" : ports === 1 ? "port 1 only" : `ports 1 to ${ports}`}. Give one of its ports, or take a part with more.`,
    ),

  portTaken: (feeding: string, id: string, port: number | "through", by: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(id)} is on ${port === "through" ? "the through port" : `port ${port}`} of ${shown(feeding)}, where ${shown(by)} is already. Give it another port, or leave it blank for the next free one.`,
    ),

  throughTaken: (feeding: string, id: string, by: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(feeding)} has one through port, and ${shown(by)} is on it. Feed ${shown(id)} from ${shown(by)} or from another.`,
    ),

  noPortLeft: (feeding: string, id: string, ports: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(feeding)} has no port left for ${shown(id)}: ${ports === 1 ? "its one port is" : `all ${ports} are`} taken. Take a part with more ports, or feed ${shown(id)} from another.`,
    ),

  noThroughPort: (feeding: string, id: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(id)} is fed from the through port of ${shown(feeding)}, which has none. Take a tap or a loop-through plate there, or feed ${shown(id)} from another.`,
    ),

  partUnknown: (by: string, what: string, name: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `${shown(by)} names the ${what} ${shown(name)}, which has no row. ${known.length === 0 ? "None has one" : `Known are ${shortList(known)}`}. Check the spelling, or add its row.`,
    ),

  /** A row of parts that cannot be used, at the row of the job that names it. */
  partBad: (by: string, what: string, name: string, { code, message }: Fault): Fault =>
    fault(code, `${shown(by)} names the ${what} ${shown(name)}, whose own row has a fault: ${message}`),

  partTwice: (name: string): Fault =>
    fault("#VALUE!", `The name ${shown(name)} stands in more than one row. Give each row its own name.`),

  dishOfSlots: (slots: number): Fault =>
    fault(
      "#VALUE!",
      `One dish is assumed for ${slots} slots, and its loss off the focus is not known. Give the dish a row with its slots and that loss, or each slot a dish.`,
    ),

  supplyNotInLine: (by: string, supply: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(by)} is the supply ${shown(supply)}, which stands at a head unit. Take one that stands in the line, or give this one to its head unit.`,
    ),

  bandsOfPlan: (bands: number, plan: string, planned: number): Fault =>
    fault(
      "#VALUE!",
      `It has ${shown(bands)} user bands, and its band plan ${shown(plan)} lists ${shown(planned)}. Make the two agree.`,
    ),

  bandsNotRead: (value: unknown): Fault =>
    fault(
      "#VALUE!",
      `user bands kept is ${shown(value)}; it must be numbers of user bands, each once, such as 5 or "9 10".`,
    ),

  portNotRead: (value: unknown): Fault =>
    fault("#VALUE!", `port is ${shown(value)}; it must be a whole number from 1, or "through".`),

  modulationUnknown: (typed: string, { code, message }: Fault): Fault =>
    fault(code, `modulation is ${shown(typed)}. ${message}`),

  /** What is wrong with a cell, at the row that it stands in. */
  ofRow: (name: string, { code, message }: Fault): Fault => fault(code, `${shown(name)}: ${message}`),

  modulationNotRead: (value: string): Fault =>
    fault(
      "#VALUE!",
      `modulation is ${shown(value)}; give modulation and code rate, such as "8PSK 2/3", and "DVB-S" before them where it is not DVB-S2.`,
    ),

  dishUnknown: (headUnit: string, dish: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `${shown(headUnit)} is on the dish ${shown(dish)}; known are ${shortList(known)}. Give one of these, or add the dish.`,
    ),

  dishNotSaid: (headUnit: string, known: readonly string[]): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} is the feed of a dish, and there are ${known.length}: ${shortList(known)}. Say which it is on.`,
    ),

  dishTaken: (headUnit: string, dish: string, slots: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} finds no slot left on the dish ${shown(dish)}, whose ${slots === 1 ? "slot is" : `${slots} slots are`} received already. Put it on another dish, or give the dish another slot.`,
    ),

  dishWithoutSlot: (dish: string): Fault =>
    fault("#VALUE!", `The dish ${shown(dish)} has no slot to receive. Enter the slots of the job.`),

  dishHasFeed: (headUnit: string, dish: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} is itself a feed, and the dish ${shown(dish)} has another. Take the dish's feed out, or choose a kind that is a switch.`,
    ),

  feedMissing: (dish: string, headUnit: string): Fault =>
    fault(
      "#VALUE!",
      `A feeder runs from the dish ${shown(dish)} to ${shown(headUnit)}, and the dish has no feed. Name the part that is its feed.`,
    ),

  feederUnknown: (end: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `A feeder names ${shown(end)}, which is no dish and no head unit. Known are ${shortList(known)}. Check the spelling, or add its row.`,
    ),

  feederToFeed: (headUnit: string, dish: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} is the feed of the dish ${shown(dish)} and a feeder comes to it as well. Take the feeder out, or choose a kind that is a switch.`,
    ),

  feederBelowFault: (from: string, to: string): Fault =>
    fault(
      "#N/A",
      `The feeder to ${shown(to)} comes from ${shown(from)}, whose own row has a fault. Put the row of ${shown(from)} right first.`,
    ),

  feedersBad: (headUnit: string): Fault =>
    fault(
      "#N/A",
      `Every feeder that comes to ${shown(headUnit)} has a fault in its own row. Put those rows right first.`,
    ),

  feedersTooMany: (headUnit: string, slot: string, cables: number, most: number): Fault =>
    fault(
      "#VALUE!",
      `Up to this feeder ${shown(cables)} cables come to ${shown(headUnit)} for ${shown(slot)}; its kind takes ${most}. Run fewer cables, or check which slot they are for.`,
    ),

  feedersTooFew: (headUnit: string, slot: string, cables: number, wanted: number): Fault =>
    fault(
      "#VALUE!",
      `Only ${shown(cables)} ${cables === 1 ? "cable comes" : "cables come"} to ${shown(headUnit)} for ${shown(slot)}; its kind takes ${wanted}. Run as many, or leave how many blank.`,
    ),

  dishNamedAsHeadUnit: (name: string): Fault =>
    fault(
      "#VALUE!",
      `The name ${shown(name)} is that of a dish and of a head unit. Give one of them another.`,
    ),

  feederLoop: (headUnits: readonly string[]): Fault =>
    fault(
      "#VALUE!",
      `The head units ${shortList(headUnits)} feed one another in a loop. Feed one of them from a dish.`,
    ),

  feedOutputs: (dish: string, slot: string, outputs: number, wanted: number): Fault =>
    fault(
      "#VALUE!",
      `Up to this feeder ${wanted} cables come from the feed for ${shown(slot)} on ${shown(dish)}, which has ${outputs} ${outputs === 1 ? "output" : "outputs"}. Take a feed with more outputs, or run fewer cables.`,
    ),

  noOnward: (headUnit: string, to: string): Fault =>
    fault(
      "#VALUE!",
      `A feeder runs from ${shown(headUnit)} to ${shown(to)}, and ${shown(headUnit)} has no onward ports. Take a switch that can be cascaded, or feed ${shown(to)} from the dish.`,
    ),

  switchUnfed: (headUnit: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} is a switch that no feeder comes to. Add a feeder to it, from a dish or from another switch.`,
    ),

  slotsBeyond: (headUnit: string, slots: number, most: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} would receive ${slots} slots; its kind receives ${most}. Take a kind for more slots, or leave a feeder out.`,
    ),

  slotUnknown: (name: string, slot: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `${shown(name)} has the slot ${shown(slot)}, which has no row. ${known.length === 0 ? "None has one. Add" : `Known are ${shortList(known)}. Give one of these, or add`} the slot.`,
    ),

  noOperatingPoint: (supply: number, load: number, kind: "A" | "W", ohms: number): Fault =>
    fault(
      "#VALUE!",
      `There is no operating point: ${shown(supply)} V through ${shown(ohms)} ohm cannot feed a load of ${shown(load)} ${kind}. Shorten the run, take a cable of lower resistance, or raise the supply.`,
    ),

  headUnitVolts: (headUnit: string, volts: number, least: number, when: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(headUnit)} gets ${voltsBeside(volts, least)} ${when}; it needs ${shown(least)} V. ${
        volts < 1
          ? "No supply reaches it then: see to the parts on the way that pass no power towards it, or add a supply"
          : "Shorten its runs, take cable of lower loop resistance, or add a supply"
      }.`,
    ),

  feedVolts: (dish: string, slot: string, headUnit: string, volts: number, least: number): Fault =>
    fault(
      "#VALUE!",
      `The feed for ${shown(slot)} on ${shown(dish)} gets ${voltsBeside(volts, least)} from ${shown(headUnit)}; it needs ${shown(least)} V. See to the supply of ${shown(headUnit)}, or take feeders of lower loop resistance.`,
    ),

  amplifierVolts: (amplifier: string, volts: number, least: number, blockedBy: string | null): Fault =>
    fault(
      "#VALUE!",
      `${shown(amplifier)} gets ${voltsBeside(volts, least)}; it needs ${shown(least)} V. ${
        blockedBy === null
          ? "No supply reaches it, or what leads there is too long: put a supply behind the amplifier, or shorten what is between them"
          : `Between it and a supply ${shown(blockedBy)} passes no power: change that part, or put a supply behind the amplifier`
      }.`,
    ),

  receiverVolts: (outlet: string, volts: number, bears: number, from: string | null): Fault =>
    fault(
      "#VALUE!",
      `${voltsBeside(volts, bears)} stand on the receiver of ${shown(outlet)}, whose maximum is ${shown(bears)} V${from === null ? ", from other receivers" : `, from ${from}`}. Between them take a part that passes power towards the head unit only, or a supply that blocks its other side; then look at what was fed that way.`,
    ),

  commandBlocked: (outlet: string, headUnit: string, by: string, what: "power" | "commands"): Fault =>
    fault(
      "#VALUE!",
      `The receiver of ${shown(outlet)} cannot command ${shown(headUnit)}: ${shown(by)} passes no ${what} towards it. Take a part there that does.`,
    ),

  commandStandard: (outlet: string, receiver: string, headUnit: string, kind: string): Fault =>
    fault(
      "#VALUE!",
      `The receiver of ${shown(outlet)} commands by ${receiver}, ${shown(headUnit)} hears ${kind}. Take a receiver or a head unit of the same standard.`,
    ),

  commandWeak: (outlet: string, headUnit: string, volts: number, least: number): Fault =>
    fault(
      "#VALUE!",
      `While the receiver of ${shown(outlet)} commands, ${voltsBeside(volts, least)} arrive at ${shown(headUnit)}; it takes ${shown(least)} V to be heard. Shorten the run, or take cable of lower loop resistance.`,
    ),

  commandDrowned: (outlet: string, headUnit: string, volts: number, most: number, from: string): Fault =>
    fault(
      "#VALUE!",
      `${voltsBeside(volts, most)} stand on the output of ${shown(headUnit)} while all receivers rest, from ${from}; above ${shown(most)} V it does not hear the receiver of ${shown(outlet)}. Power the head unit elsewhere, take a receiver that rests lower, or a kind that is commanded otherwise.`,
    ),

  receiversOnConnector: (outlet: string, receivers: number, places: number, split: string | null): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} has ${receivers} receivers and ${places} ${places === 1 ? "connector" : "connectors"}. ${
        split === null
          ? "Name the splitter that splits them"
          : `${shown(split)} has too few ports: name one with ${receivers}`
      }, or give each an outlet.`,
    ),

  openThroughPort: (name: string): Fault =>
    fault(
      "#VALUE!",
      `The through port of ${shown(name)} is open. Close it with an end resistor that blocks direct current.`,
    ),

  openPorts: (name: string, ports: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(name)} has ${ports} open ${ports === 1 ? "port" : "ports"}. Close each with an end resistor, for an even level on the others.`,
    ),

  resistorOnPower: (name: string, volts: number, watts: number): Fault =>
    fault(
      "#VALUE!",
      `The end resistor on ${shown(name)} passes direct current: ${inVolts(volts)} stand on it, ${shown(Number(watts.toPrecision(2)))} W. Take one that blocks direct current.`,
    ),

  bandMissing: (outlet: string, band: number, headUnit: string, bands: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} keeps user band ${band}, which is none of the ${bands} of ${shown(headUnit)}. Take the number out, and give the receiver the one that it then gets.`,
    ),

  bandStandard: (outlet: string, band: number, standard: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} keeps user band ${band}, which a receiver of ${standard} cannot use. Take the number out, or fit a receiver of the band's standard.`,
    ),

  bandTaken: (outlet: string, band: number, by: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} keeps user band ${band}, which ${shown(by)} on the same output keeps. Let one of them have another band.`,
    ),

  bandsKept: (outlet: string, kept: readonly number[], tuners: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} keeps the user bands ${kept.join(" ")} for ${tuners} ${tuners === 1 ? "tuner" : "tuners"}. Take the surplus out.`,
    ),

  bandsUsedUp: (outlet: string, headUnit: string, standard: string, usable: number, bands: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} (${standard}) can use ${usable === bands ? `the ${bands}` : `${usable} of the ${bands}`} user bands of ${shown(headUnit)} on this output, and too few of them are left. Move receivers to another output, or take a kind with more.`,
    ),

  bandNarrow: (whose: string, width: number, wanted: number, symbolRate: number): Fault =>
    fault(
      "#VALUE!",
      `${whose} ${shown(width)} MHz wide; ${shown(symbolRate)} Msym/s take ${beside(wanted, width, 1)} MHz. Take another band, or a kind with wider ones.`,
    ),

  levelOutside: (outlet: string, level: number, least: number, most: number, where: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} has ${beside(level, level < least ? least : most, 1)} dBµV ${where}; it must be from ${shown(least)} to ${shown(most)} dBµV. ${level < least ? "Shorten the run, take a tap or plate of lower loss, or add an amplifier" : "Add an attenuator, or take a tap or plate of higher loss"}.`,
    ),

  slopeTooMuch: (outlet: string, slope: number, most: number): Fault =>
    fault(
      "#VALUE!",
      `The level at ${shown(outlet)} differs by ${beside(slope, most, 1)} dB over the range; it must be by ${shown(most)} dB or less. Add an equaliser, or shorten the run.`,
    ),

  carrierToNoiseLow: (outlet: string, slot: string, decibels: number, needed: number, when: string): Fault =>
    fault(
      "#VALUE!",
      `${shown(outlet)} has ${Number.isFinite(decibels) ? `${beside(decibels, Number(needed.toFixed(1)), 1)} dB` : "nothing left"} of carrier to noise from ${shown(slot)} ${when}; it needs ${needed.toFixed(1)} dB. Take a larger dish, or see to the level if it is low too.`,
    ),

  amplifierOverdriven: (amplifier: string, level: number, most: number, carriers: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(amplifier)} puts out ${beside(level, Number(most.toFixed(1)), 1)} dBµV; for ${carriers} carriers its limit is ${most.toFixed(1)} dBµV. Put an attenuator before it, or take one of less gain.`,
    ),

  switchInput: (headUnit: string, slot: string, level: number, least: number, most: number): Fault =>
    fault(
      "#VALUE!",
      `An input of ${shown(headUnit)} for ${shown(slot)} has ${beside(level, level < least ? least : most, 1)} dBµV; it must be from ${shown(least)} to ${shown(most)} dBµV. ${level < least ? "Shorten the feeders, or take a feed of more gain" : "Put attenuators in the feeders"}.`,
    ),

  tooMuchCurrent: (what: string, amperes: number, most: number): Fault =>
    fault(
      "#VALUE!",
      `${what} carries ${beside(amperes, most, 2)} A; its limit is ${shown(most)} A. Share the load with another supply, or take a part for more.`,
    ),

  fedBackwards: (what: string, volts: number, amperes: number, other: number): Fault =>
    fault(
      "#VALUE!",
      `${what} of ${shown(volts)} V is fed backwards with ${amperes.toFixed(2)} A, by a supply or a receiver of ${shown(other)} V. Put a part between them that passes power one way only.`,
    ),

  feedsNothing: (what: string): Fault =>
    fault(
      "#VALUE!",
      `${what} feeds nothing: no head unit and no amplifier takes current from it. It may stand the wrong way round, or behind a part that blocks power.`,
    ),

  littleIsolation: (first: string, second: string, decibels: number, wanted: number): Fault =>
    fault(
      "#VALUE!",
      `${shown(first)} and ${shown(second)} are ${decibels.toFixed(1)} dB apart; ${shown(wanted)} dB keep receivers from disturbing one another. Take parts of more isolation, or longer runs.`,
    ),

  noSupplyPoint: (when: string): Fault =>
    fault(
      "#VALUE!",
      `There is no operating point ${when}: what is on cannot carry what the head unit and amplifiers take. Shorten runs, take cable of lower loop resistance, or add a supply.`,
    ),

  /** A fault in one row of a list; a sentence that names the list needs no more than the row. */
  atRow: (name: string, row: number, { code, message, marked = message }: Fault): Fault => {
    const placed = inRow(marked, name, row);
    return {
      kind: "fault",
      code,
      message: `Row ${row} of ${name}: ${message}`,
      marked: placed === marked ? `${argument(name, row, `Row ${row} of ${name}`)}: ${marked}` : placed,
    };
  },

  /** A fault that names entries of one column, as rows of that column. */
  inColumn: (name: string, entries: readonly string[], trouble: Fault): Fault =>
    trouble.marked === undefined ? trouble : { ...trouble, marked: asRowsOf(trouble.marked, name, entries) },

  unknownReceiver: (value: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `${argument("receivers")} is ${shown(value)}, a kind with no tuner count. Give one of ${shortList(known)}, or add the kind to ${argument("catalogue", undefined, "the catalogue")}.`,
    ),

  listedTwice: (name: string, kind: string, first: number, second: number): Fault =>
    fault(
      "#VALUE!",
      `${argument(name)} lists ${shown(kind)} twice, with ${shown(first)} and with ${shown(second)} tuners. Keep one of the two rows.`,
    ),

  tooManyTuners: (what: string, tuners: number, capacity: number): Fault =>
    fault(
      "#VALUE!",
      `${what} needs ${shown(tuners)} tuners, more than the ${shown(capacity)} that one head unit serves. Split it into groups of ${shown(capacity)} or fewer, or use a head unit with more user bands.`,
    ),

  bandsRunOver: (headUnit: string, needed: number, limit: number): Fault =>
    fault(
      "#VALUE!",
      `Head unit ${headUnit} would need ${needed} user bands up to this row; one output has at most ${limit} (EN 50607). Move this row to another head unit.`,
    ),

  longerThanReel: (run: string, length: number, cut: number, reel: number): Fault =>
    fault(
      "#VALUE!",
      `${run} is ${shown(length)}, cut at ${shown(cut)} with slack and waste, and the reel holds ${shown(reel)}. A run is not spliced: choose a longer reel, or put in a joint on purpose and enter two runs.`,
    ),

  noReelOf: (run: string, cable: string): Fault =>
    fault(
      "#VALUE!",
      `${run} is of the cable ${shown(cable)}, of which no reel is given. Add it to the cables, with the length of its reel.`,
    ),

  runWithoutLength: (run: string): Fault =>
    fault(
      "#VALUE!",
      `${run} is named and has no length. Give the length of that run, or 0 where there is no cable.`,
    ),

  runWithoutCable: (run: string, length: number): Fault =>
    fault("#VALUE!", `${run} is ${shown(length)} long but names no cable. Give the cable of that run.`),

  taxClassUnknown: (name: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      `There is no tax class ${shown(name)}${known.length > 0 ? `; known are ${shortList(known)}` : ""}. Use a class that is listed, or list it with its rate.`,
    ),

  marginTooHigh: (margin: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("margin")} is ${shown(margin)}; it must be from 0 to less than 1, a share of the price. Write 0.2 or 20% for twenty per cent.`,
    ),

  sameSlots: (slot: number): Fault =>
    fault(
      "#VALUE!",
      `Both slots stand at ${shown(slot)} deg east; a tilt needs two different ones from -180 to 180 deg east. Use POLSKEW for a single slot.`,
    ),

  noPairAim: (latitude: number): Fault =>
    fault(
      "#VALUE!",
      `At latitude ${shown(latitude)} deg the middle of the two slots lies straight overhead, or they lie opposite each other; an aim needs a middle below 90 deg of elevation. Turn the dish by the slots' own azimuths.`,
    ),

  marginTooWide: (margin: number, elevation: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("margin_deg")} is ${shown(margin)} deg; it must be less than the elevation of ${shown(elevation)} deg. Take a smaller margin, or another place for the dish.`,
    ),

  noPeak: (sum: number): Fault =>
    fault(
      "#VALUE!",
      `The drops to the plus and the minus side add up to ${shown(sum)} dB; at a peak the sum must be more than 0 dB. Search the main lobe again: this is a side lobe, a dip or an unsteady reading.`,
    ),

  peakOutOfReach: (offset: number, least: number, most: number, step: number): Fault =>
    fault(
      "#VALUE!",
      `By these drops the peak would lie ${shown(offset)} from the present setting, in the unit of the step; readings one step of ${shown(step)} to either side speak for ${shown(least)} to ${shown(most)}. The peak is towards ${offset > 0 ? "+" : "-"}: turn there by two steps at most and read again.`,
    ),

  stepTooWide: (sum: number, limit: number): Fault =>
    fault(
      "#VALUE!",
      `The drops to the plus and the minus side add up to ${shown(sum)} dB; the step must be small enough to keep the sum at ${shown(limit)} dB or less. Turn by a smaller step.`,
    ),

  notInDecibels: (): Fault =>
    fault(
      "#VALUE!",
      `${argument("reading")} is "percent"; quality in percent does not fall with the beam, so it must be "dB". Read level in dBµV or carrier-to-noise in dB, and enter those.`,
    ),

  notTheMainLobe: (width: number, expected: number, least: number, most: number): Fault =>
    fault(
      "#VALUE!",
      `The readings show a beam ${shown(width)} deg wide; this dish's is about ${shown(expected)} deg, so it must be ${shown(expected * least)} to ${shown(expected * most)} deg. ${
        width < expected
          ? "Search the main lobe again, this may be a side lobe; or the step was more than the one entered."
          : "Check that the reading is in dB and not a quality in percent, and that the step was as entered."
      }`,
    ),

  dishTooSmall: (diameter: number, frequency: number, wavelengths: number, wavelength: number): Fault =>
    fault(
      "#VALUE!",
      `The dish is ${shown(diameter)} m across; at ${shown(frequency)} MHz it must be ${shown(Number((wavelengths * wavelength).toPrecision(3)))} m or more, ${wavelengths === 1 ? "a wavelength" : `${wavelengths} wavelengths`}, for the formula to hold. Check the diameter in metres and the frequency in MHz.`,
    ),

  rainTooRare: (percent: number, least: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("percent")} is ${shown(percent)} %; for this path it must be from ${shown(least)} to 5 %. Below that the method of ITU-R P.618 gives less fade for a rarer case, which cannot be. Plan for ${shown(least)} % or more.`,
    ),

  beyondMainLobe: (error: number, limit: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("error_deg")} is ${shown(error)} deg; for this beamwidth it must be from ${shown(-limit)} to ${shown(limit)} deg, beyond which the main lobe ends. Aim the dish better, or check the beamwidth.`,
    ),

  modeNotInTable: (standard: string, modulation: string, rate: string, known: readonly string[]): Fault =>
    fault(
      "#N/A",
      known.length === 0
        ? `${standard} has no ${modulation}. Give QPSK, or DVB-S2 as the standard.`
        : `The table here has no ${standard} ${modulation} with code rate ${shown(rate)}. It has ${known.join(", ")}; write the rate as text such as '3/4, because a sheet turns 3/4 into a date.`,
    ),

  notRising: (low: number, likely: number, high: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("low")}, ${argument("likely")} and ${argument("high")} are ${shown(low)}, ${shown(likely)} and ${shown(high)}; none may be less than the one before. Put them in order.`,
    ),

  notRisingFrequencies: (before: number, value: number): Fault =>
    fault(
      "#VALUE!",
      `${argument("frequencies")} has ${shown(value)} MHz after ${shown(before)} MHz; they must rise from column to column. Put the columns in order, in MHz.`,
    ),

  tuningWordOut: (word: number, standard: string, bits: number): Fault =>
    fault(
      "#VALUE!",
      `The tuning word would be ${shown(word)}, and ${standard} has ${bits} bits for it: 0 to ${2 ** bits - 1}. Check the frequencies, in MHz, and the standard.`,
    ),

  noResult: (name: string): Fault =>
    fault(
      "#VALUE!",
      `${name} has no finite answer for these values. Check the values and their units, above all very large ones.`,
    ),

  broken: (name: string, detail: string): Fault =>
    fault(
      "#VALUE!",
      `${name} failed inside (${detail}). This is a mistake in Rigsheet: please report it with the values used.`,
    ),
} as const;
