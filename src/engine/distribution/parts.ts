/**
 * What is known of each kind of part in a distribution, already looked up:
 * losses at the two ends of the range (a straight line lies between), what
 * passes the supply, what passes commands.
 */
import type { Fault } from "../faults";
import type { LoadKind } from "../power/loadVolts";
import type {
  Amperes,
  DecibelMicrovolts,
  Decibels,
  Megahertz,
  Metres,
  Ohms,
  Volts,
  Watts,
} from "../quantity";
import type { Cable } from "../signal/cable";

/** At the low and at the high end of the range; a loss is positive. */
export interface AtEnds {
  readonly low: Decibels;
  readonly high: Decibels;
}

/**
 * What the ports of a part let through of the supply. One port is the first of
 * a splitter and the through port of a tap. Towards the head unit only means a
 * diode in each port, while a through port passes both ways.
 */
export type PowerPassing = "no" | "one port" | "all ports" | "towards head unit";

export interface PowerPath {
  readonly passes: PowerPassing;
  /** Of its diodes. */
  readonly drop: Volts;
  /** Of one port. */
  readonly ohms: Ohms;
  /** Null where no limit is stated. */
  readonly mostAmperes: Amperes | null;
}

export type DeviceKind =
  "splitter" | "tap" | "amplifier" | "equaliser" | "attenuator" | "filter" | "inserter";

export interface DevicePart {
  readonly kind: DeviceKind;
  /** Name of the part, for the bill. */
  readonly name: string;
  /** Ports apart from a tap's through port. */
  readonly ways: number;
  /** To a port; negative is an amplifier's gain. */
  readonly port: AtEnds;
  /** Of a tap. */
  readonly through: AtEnds | null;
  /** Between its ports; null where not stated. */
  readonly isolation: Decibels | null;
  readonly power: PowerPath;
  readonly passesCommands: boolean;
  readonly amplifier: AmplifierFigures | null;
  /** Of an inserter; its volts stand on the head unit's side. */
  readonly supply: SupplyPart | null;
}

export interface AmplifierFigures {
  readonly noiseFigure: Decibels;
  /** For two carriers; null where not stated. */
  readonly mostOutput: DecibelMicrovolts | null;
  /** Taken at the port away from the head unit. */
  readonly load: Amperes;
  readonly leastVolts: Volts;
}

export interface SupplyPart {
  readonly name: string;
  readonly stands: "in the line" | "at the head unit";
  readonly volts: Volts;
  /** Null where no limit is stated. */
  readonly mostAmperes: Amperes | null;
  /** In the line. */
  readonly loss: AtEnds;
  /** What the side away from the head unit passes. */
  readonly otherSide: "no" | "all ports";
}

export interface PlatePart {
  readonly name: string;
  readonly port: AtEnds;
  /** Of a loop-through plate; null for a plain one. */
  readonly through: AtEnds | null;
  readonly isolation: Decibels | null;
  readonly power: PowerPath;
  /** How many receivers it can be connected to. */
  readonly connectors: number;
}

export type ControlStandard = "EN 50494" | "EN 50607" | "maker's own";

export interface UserBand {
  readonly number: number;
  /** Null where its kind has no band plan. */
  readonly centre: Megahertz | null;
  /** Null where not stated: then it is not judged. */
  readonly width: Megahertz | null;
  /** Null where its kind does not say how it is commanded: then any receiver may use it. */
  readonly standard: ControlStandard | null;
}

export interface HeadUnitKind {
  readonly name: string;
  /** A feed itself, or a switch that feeders come to. */
  readonly sits: "on the dish" | "fed";
  /** Null where its maker does not say: commands are not judged. */
  readonly standard: ControlStandard | null;
  /** For a maker's own standard; null where not stated. */
  readonly commandsPassBlock: boolean | null;
  /** For a maker's own standard: above these volts it hears nothing; null for no such limit. */
  readonly deafAbove: Volts | null;
  readonly outputs: number;
  readonly bands: readonly UserBand[];
  /** What each output is levelled to. */
  readonly output: AtEnds;
  /** Null: carrier to noise is not asked. */
  readonly noiseFigure: Decibels | null;
  readonly slots: number;
  readonly feedersPerSlot: number;
  /** Levels wanted at a switch's inputs; null is not judged. */
  readonly input: { readonly least: DecibelMicrovolts; readonly most: DecibelMicrovolts } | null;
  /** From an input to the next switch; null where there are no onward ports. */
  readonly onward: AtEnds | null;
  readonly leastVolts: Volts;
  readonly load: Amperes | Watts;
  readonly loadKind: LoadKind;
  /** Of a diode from each output to the common load; null for none. */
  readonly outputDrop: Volts | null;
  /** Taken at each output, where the outputs do not power the unit; null where they do. */
  readonly senseAmperes: Amperes | null;
  readonly powersFeed: boolean;
}

export interface FeedPart {
  readonly name: string;
  readonly outputs: number;
  readonly gain: Decibels;
  readonly noiseFigure: Decibels;
  readonly lowIf: Megahertz;
  readonly highIf: Megahertz;
  readonly load: Amperes;
  readonly leastVolts: Volts;
}

export interface ReceiverKind {
  readonly name: string;
  readonly tuners: number;
  readonly standard: ControlStandard;
  readonly restVolts: Volts;
  readonly commandVolts: Volts;
  readonly mostAmperes: Amperes;
  /** Maximum applied volts at its connector. */
  readonly bearsVolts: Volts;
  readonly noiseFigure: Decibels;
}

export interface EndResistor {
  readonly name: string;
  readonly ohms: Ohms;
  readonly blocksPower: boolean;
}

/** A piece of cable; no run at all is a part that sits right at the one before it. */
export interface Run {
  readonly cable: Cable | Fault;
  readonly length: Metres;
  readonly route: string;
}
