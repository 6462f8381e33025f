/** The rows of a distribution as someone types them, with their parts looked up. */
import type { Fault } from "../faults";
import type { Celsius, Decibels, Degrees, Kilometres, Megahertz, Metres } from "../quantity";
import type {
  DevicePart,
  EndResistor,
  FeedPart,
  HeadUnitKind,
  PlatePart,
  ReceiverKind,
  Run,
  SupplyPart,
} from "./parts";

/** A name that was given, left blank, or could not be read. */
export type Name = string | null | Fault;

/**
 * What every row has. Nothing is worked from a row with a fault of its own, such as a part that is not known, and what
 * hangs below it has a fault that names it.
 */
interface RowOfJob {
  readonly fault: Fault | null;
}

export interface DishRow extends RowOfJob {
  readonly name: string;
  /** It has no row of its own: what is wrong with it is said at the head units on it. */
  readonly isAssumed: boolean;
  /** Null: carrier to noise is not asked. */
  readonly size: Metres | null;
  /** Names of slots. */
  readonly slots: readonly string[];
  /** Null: the head unit on it is its feed. */
  readonly feed: FeedPart | null;
  readonly offFocus: Decibels;
}

/** A bundle of like cables. */
export interface FeederRow extends RowOfJob {
  /** A dish or the switch before it. */
  readonly from: string;
  readonly to: string;
  /** Null: all slots of the dish. */
  readonly slot: string | null;
  /** Null: what the kind of head unit asks for each slot. */
  readonly quantity: number | null;
  readonly run: Run;
}

export interface HeadUnitRow extends RowOfJob {
  readonly name: string;
  readonly kind: HeadUnitKind;
  /** Null: the only dish, or none for a switch that has feeders. */
  readonly dish: string | null;
  readonly supply: SupplyPart | null;
  /** To the first part on output 1; null where that part sits right there. */
  readonly run: Run | null;
}

/** A port's number, a tap's or plate's through port, or null for the next free one. */
export type PortWanted = number | "through" | null;

export interface DeviceRow extends RowOfJob {
  readonly name: Name;
  readonly part: DevicePart;
  readonly from: Name;
  readonly port: PortWanted;
  readonly run: Run | null;
}

export interface OutletRow extends RowOfJob {
  readonly name: Name;
  readonly from: Name;
  readonly port: PortWanted;
  readonly run: Run | null;
  readonly plate: PlatePart | null;
  /** Null for a spare outlet. */
  readonly receiver: ReceiverKind | null;
  readonly quantity: number;
  /** What splits several receivers behind the plate. */
  readonly split: DevicePart | null;
  /** User bands kept. */
  readonly kept: readonly number[];
}

export interface SlotRow {
  readonly name: string;
  readonly east: Degrees;
  /** dBW; null: carrier to noise is not asked. */
  readonly eirp: Decibels | null;
  /** In Msym/s; null: carrier to noise is not asked. */
  readonly symbolRate: Megahertz | null;
  /** Carrier to noise that its modulation needs, with margin; null: not judged. */
  readonly needed: Decibels | null;
}

export interface SiteRain {
  /** % of an average year. */
  readonly availability: number;
  /** mm/h, exceeded for 0.01 % of the year. */
  readonly rate: number;
  /** Above sea level. */
  readonly height: Kilometres;
}

export interface Site {
  /** The ends of the range that parts' figures refer to. */
  readonly low: Megahertz;
  readonly high: Megahertz;
  readonly cold: Celsius;
  readonly hot: Celsius;
  /** A fault where carrier to noise is asked and the site does not say where it is. */
  readonly latitude: Degrees | Fault;
  readonly longitude: Degrees | Fault;
  readonly height: Metres;
  /** Pointing, ageing, surface of the dish. */
  readonly dishLoss: Decibels;
  /** Null: only a clear sky is judged. */
  readonly rain: SiteRain | Fault | null;
  /** What closes open ports; null for nothing, a fault where the part is not known. */
  readonly endResistor: EndResistor | Fault | null;
}

export interface DistributionJob {
  readonly site: Site;
  readonly slots: readonly SlotRow[];
  readonly dishes: readonly DishRow[];
  readonly feeders: readonly FeederRow[];
  readonly headUnits: readonly HeadUnitRow[];
  readonly devices: readonly DeviceRow[];
  readonly outlets: readonly OutletRow[];
}
