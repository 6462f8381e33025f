/** What the one-line diagram shows, from the dish to the outlet: each part with its figures and its verdict. */
import type { DeviceKind } from "../engine/distribution/parts";

/** Levels in dBµV, from the weakest to the strongest over the band, cold and hot. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

interface Common {
  readonly name: string;
  /** Name of what feeds it; empty for a dish or a head unit. */
  readonly from: string;
  /** Which port of that: a number or through; empty where it has none or is not known. */
  readonly port: string;
  /** Its cable, and the length of it in the workbook's unit; no length where it sits right there. */
  readonly cable: string;
  readonly length: number | undefined;
  /** Levels in dBµV at the four corners, in their order; `undefined` unless all are known. */
  readonly corners: readonly number[] | undefined;
  readonly levels: Span | undefined;
  /** Words for what fails; empty when nothing does. */
  readonly troubles: readonly string[];
  /** The workbook's sentences about it. */
  readonly sentence: string;
}

export interface Dish extends Common {
  readonly kind: "dish";
  /** In metres. */
  readonly size: number | undefined;
  readonly slots: string;
  /** Empty where the head unit on it is its feed. */
  readonly feed: string;
  /** What its feed gets: carrier to noise, volts. */
  readonly seen: string;
}

/** A bundle of like cables from a dish, or from the switch before. */
export interface Feeder {
  readonly slot: string;
  /** How many; `undefined` where that is not known. */
  readonly cables: number | undefined;
  readonly cable: string;
  readonly length: number | undefined;
}

/** What a head unit gets from the sky: from a dish, or from the switch before it; no feeders where it sits on the dish. */
export interface Inlet {
  readonly source: Dish | Placeholder;
  readonly feeders: readonly Feeder[];
}

/** Ports that nothing hangs on. */
export interface OpenPorts {
  readonly words: string;
  /** The end resistor that closes them; empty for nothing. */
  readonly by: string;
}

export interface HeadUnit extends Common {
  readonly kind: "head";
  readonly type: string;
  /** A switch is fed by feeders; any other is the feed of a dish. */
  readonly isSwitch: boolean;
  readonly inlets: readonly Inlet[];
  readonly supply: string;
  /** Volts in use, then tuners and bands, in words. */
  readonly volts: string;
  readonly tuners: string;
  /** The onward ports of a last switch. */
  readonly onward: OpenPorts | undefined;
}

export interface Device extends Common {
  readonly kind: "device";
  /** Undefined for a part that Parts does not list. */
  readonly shape: DeviceKind | undefined;
  readonly part: string;
  /** Of its limit, where it amplifies. */
  readonly output: string;
  readonly open: OpenPorts | undefined;
}

export interface Outlet extends Common {
  readonly kind: "outlet";
  readonly room: string;
  readonly plate: string;
  /** Its plate has a through port for the next outlet. */
  readonly loops: boolean;
  /** Its through port is the last one, and closed. */
  readonly ends: boolean;
  /** User bands, receivers and what splits them; empty for a spare outlet. */
  readonly receiver: string;
  readonly verdict: string;
}

/** Stands for what is drawn elsewhere, at the head of what nothing feeds, or in the place of what is not there. */
export interface Placeholder extends Common {
  readonly kind: "nothing";
}

export type Item = Dish | HeadUnit | Device | Outlet | Placeholder;

export interface Hanging {
  readonly item: Item;
  readonly children: Hanging[];
  /** What stands above it in its column, the uppermost first: one feeds the next, or all of them feed it. */
  readonly above?: readonly Item[];
  /** Drawn in full elsewhere: here only its name, and that it goes on. */
  readonly continued?: boolean;
}

export const placeholder = (name: string, troubles: readonly string[] = []): Placeholder => ({
  kind: "nothing",
  name,
  from: "",
  port: "",
  cable: "",
  length: undefined,
  corners: undefined,
  levels: undefined,
  troubles,
  sentence: "",
});
