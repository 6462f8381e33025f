/** Reads the rows of a job into what the engine takes: parts looked up, blanks filled in, or with a fault. */
import type { DeviceRow, DishRow, FeederRow, HeadUnitRow, OutletRow } from "../../engine/distribution/job";
import type { DevicePart, HeadUnitKind, PlatePart, Run } from "../../engine/distribution/parts";
import { faults, isFault, type Fault } from "../../engine/faults";
import type { Degrees, Metres } from "../../engine/quantity";
import type { Cable } from "../../engine/signal/cable";
import { cableLoss } from "../../engine/signal/cableLoss";
import { CABLE_REFERENCE_C } from "../../engine/signal/constants";
import { findCable } from "../../engine/signal/findCable";
import { toMetres } from "../../engine/signal/lengthUnits";
import { slotName } from "../../engine/sightline/slotName";
import { DISHES, OUTLET_DETAILS, OUTLETS, type DEVICES, type FEEDERS, type HEAD_UNITS } from "./columns";
import type { OutletTyped } from "./outletRows";
import { hasPart, partNamed } from "./partBook";
import { inserterOf, receiverNamed, type Parts } from "./partTables";
import type { ReadRow } from "./rows";
import type { Settings } from "./settings";
import type { SlotRead } from "./slotRows";

/** In place of a part that is not known, in rows that nothing is worked from. */
const NO_DEVICE: DevicePart = {
  kind: "splitter",
  name: "",
  ways: 0,
  port: { low: 0, high: 0 },
  through: null,
  isolation: null,
  power: { passes: "no", drop: 0, ohms: 0, mostAmperes: null },
  passesCommands: true,
  amplifier: null,
  supply: null,
};
const NO_HEAD_UNIT: HeadUnitKind = {
  name: "",
  sits: "on the dish",
  standard: null,
  commandsPassBlock: null,
  deafAbove: null,
  outputs: 0,
  bands: [],
  output: { low: 0, high: 0 },
  noiseFigure: null,
  slots: 0,
  feedersPerSlot: 0,
  input: null,
  onward: null,
  leastVolts: 0,
  load: 0,
  loadKind: "A",
  outputDrop: null,
  senseAmperes: null,
  powersFeed: false,
};

/** Of a piece without length nothing is asked. */
const NO_CABLE: Cable = { name: "", loss: { k1: 0, k2: 0, k0: 0 }, loop: 0 };

interface RunTyped {
  readonly cable: string | undefined;
  readonly route: string | undefined;
}

/** Of a bad row on a dish the slots are known as soon as its kind is, and no other gets them. */
const stoodInFor = (kind: HeadUnitKind | Fault): HeadUnitKind =>
  isFault(kind) || kind.sits !== "on the dish" ? NO_HEAD_UNIT : { ...NO_HEAD_UNIT, slots: kind.slots };

/** The first of some that is a fault. */
const firstFault = (...some: unknown[]): Fault | null => some.find(isFault) ?? null;

/** A sentence that does not name its row is led by the name. */
const atRow = (name: string | null | undefined, fault: Fault | null): Fault | null =>
  fault && name && !fault.message.includes(`"${name}"`) ? faults.ofRow(name, fault) : fault;

export class JobRows {
  constructor(
    private readonly settings: Settings,
    private readonly parts: Parts,
    readonly slots: readonly SlotRead[],
  ) {}

  outlet({ values, fault }: OutletTyped): OutletRow {
    const name = values.outlet ?? null;
    const by = String(name);
    const given = fault ? null : values;
    const plate = given && this.plate(by, given.plate);
    const receiver =
      given?.receiver === undefined || given.quantity === 0
        ? null
        : receiverNamed(this.parts.receivers, by, given.receiver);
    const split = given?.split === undefined ? null : this.devicePart(by, given.split);
    const run = given && this.run(given.run, given);
    const own = atRow(name, fault ?? firstFault(plate, receiver, split, run) ?? this.lengthsOf(values));
    const isBad = own !== null;
    return {
      fault: own,
      name,
      from: values.from ?? null,
      port: values.port ?? null,
      run: isBad ? null : (run as Run),
      plate: isBad ? null : (plate as PlatePart | null),
      receiver: isBad ? null : (receiver as OutletRow["receiver"]),
      quantity: receiver ? values.quantity : 1,
      split: isBad ? null : (split as DevicePart | null),
      kept: isBad ? [] : values.kept,
    };
  }

  device({ values, fault }: ReadRow<typeof DEVICES>): DeviceRow {
    const name = values.device ?? null;
    const part = fault ? NO_DEVICE : this.inLine(String(name), values.part);
    const run = fault ? null : this.runOrNone(values.length, values);
    const own = atRow(name, fault ?? firstFault(part, run));
    return {
      fault: own,
      name,
      part: own ? NO_DEVICE : (part as DevicePart),
      from: values.from ?? null,
      port: values.port ?? null,
      run: own ? null : (run as Run | null),
    };
  }

  headUnit({ values, fault }: ReadRow<typeof HEAD_UNITS>): HeadUnitRow {
    const name = values.head ?? "";
    const kind = fault ? NO_HEAD_UNIT : partNamed(this.parts.kinds, name, values.kind);
    const supply =
      fault || values.supply === undefined ? null : partNamed(this.parts.supplies, name, values.supply);
    const run = fault ? null : this.runOrNone(values.length, values);
    const own = atRow(values.head, fault ?? firstFault(kind, supply, run));
    return {
      fault: own,
      name,
      kind: own ? stoodInFor(kind) : (kind as HeadUnitKind),
      dish: values.dish ?? null,
      supply: own ? null : (supply as HeadUnitRow["supply"]),
      run: own ? null : (run as Run | null),
    };
  }

  dish({ values, fault }: ReadRow<typeof DISHES>): DishRow {
    const name = values.dish ?? "";
    const slots = fault ? [] : this.slotsOf(name, values.slots);
    const feed = fault || values.feed === undefined ? null : partNamed(this.parts.feeds, name, values.feed);
    const size = values.size ?? this.settings.dishSize;
    const unsaid =
      !isFault(slots) && slots.length > 1 && values.offFocus === undefined
        ? faults.missing(DISHES.offFocus.name, "a number in dB, as the dish has two slots or more")
        : null;
    const own = atRow(values.dish, fault ?? firstFault(slots, feed) ?? unsaid ?? this.sizeless(size, slots));
    return {
      fault: own,
      name,
      isAssumed: false,
      size: size ?? null,
      slots: isFault(slots) ? [] : slots,
      feed: own ? null : (feed as DishRow["feed"]),
      offFocus: values.offFocus ?? 0,
    };
  }

  /** Where no dish has a row. */
  assumedDish(): DishRow {
    const name = "dish";
    const slots = this.slotsOf(name, undefined);
    const { dishSize: size } = this.settings;
    const needsRow = !isFault(slots) && slots.length > 1 && this.slots.some(({ slot }) => slot.eirp !== null);
    return {
      fault:
        firstFault(slots) ??
        (needsRow ? faults.dishOfSlots(slots.length) : null) ??
        this.sizeless(size, slots),
      name,
      isAssumed: true,
      size: size ?? null,
      slots: isFault(slots) ? [] : slots,
      feed: null,
      offFocus: 0,
    };
  }

  feeder({ values, fault }: ReadRow<typeof FEEDERS>): FeederRow {
    const { from = "", to = "", slot, quantity, length } = values;
    const run = fault ? null : this.run(length, values);
    const found = fault || slot === undefined ? null : this.slotNamed(from, slot);
    return {
      fault: atRow(values.to, fault ?? firstFault(run, found)),
      from,
      to,
      slot: isFault(found) ? null : found,
      quantity: quantity ?? null,
      run: isFault(run) || !run ? { cable: NO_CABLE, length: 0, route: "" } : run,
    };
  }

  private lengthsOf({ run, shortest, longest }: Partial<OutletTyped["values"]>): Fault | null {
    if (run === undefined) return null;
    if (shortest !== undefined && shortest > run)
      return faults.lowAboveHigh(OUTLET_DETAILS.shortest.name, shortest, OUTLETS.run.name, run);
    if (longest !== undefined && longest < run)
      return faults.lowAboveHigh(OUTLETS.run.name, run, OUTLET_DETAILS.longest.name, longest);
    return null;
  }

  private plate(by: string, own: string | undefined): PlatePart | Fault | null {
    const name = own ?? this.settings.plate;
    return name === undefined ? null : partNamed(this.parts.plates, by, name);
  }

  private devicePart(by: string, name: string): DevicePart | Fault {
    return partNamed(this.parts.devices, by, name);
  }

  /** A device, or a supply as the inserter that it is in a line. */
  private inLine(by: string, name: string): DevicePart | Fault {
    if (hasPart(this.parts.devices, name) || !hasPart(this.parts.supplies, name))
      return this.devicePart(by, name);
    const supply = partNamed(this.parts.supplies, by, name);
    if (isFault(supply)) return supply;
    return supply.stands === "in the line" ? inserterOf(supply) : faults.supplyNotInLine(by, name);
  }

  private runOrNone(length: number | undefined, typed: RunTyped): Run | Fault | null {
    return length === undefined ? null : this.run(length, typed);
  }

  private run(length: number, typed: RunTyped): Run | Fault {
    const metres: Metres = toMetres(length, this.settings.unit);
    const route = typed.route ?? this.settings.route ?? "";
    const name = typed.cable ?? this.settings.cable;
    if (length === 0) return { cable: NO_CABLE, length: 0, route };
    if (name === undefined) return faults.missing("cable", "a cable's name here, or the usual cable");
    const cable = findCable(name, this.parts.cables);
    const fault = isFault(cable) ? cable : this.unusable(cable);
    return fault ?? { cable, length: metres, route };
  }

  /** What is missing of a cable, or makes it an amplifier. */
  private unusable(cable: Cable): Fault | null {
    const { low, high } = this.settings;
    return firstFault(
      cable.loss,
      cable.loop,
      ...[low, high].map((frequency) => cableLoss(cable, 1, frequency, CABLE_REFERENCE_C)),
    );
  }

  /** @param east of the dish's slots; undefined for all of the job's */
  private slotsOf(by: string, east: readonly Degrees[] | undefined): string[] | Fault {
    const named = east
      ? east.map((one) => this.slotNamed(by, one))
      : this.slots.map(({ slot }) => this.slotNamed(by, slot.east));
    return named.find(isFault) ?? (named as string[]);
  }

  private slotNamed(by: string, east: Degrees): string | Fault {
    const found = this.slots.find(({ slot }) => slot.east === east);
    if (!found) {
      return faults.slotUnknown(
        by,
        slotName(east),
        this.slots.map(({ slot }) => slot.name),
      );
    }
    const { slot, fault } = found;
    return fault ? faults.partBad(by, "slot", slot.name, fault) : slot.name;
  }

  /** Carrier to noise is asked, and there is no size to work it with. */
  private sizeless(size: Metres | undefined, slots: readonly string[] | Fault): Fault | null {
    if (size !== undefined || isFault(slots)) return null;
    const asked = this.slots.some(({ slot }) => slots.includes(slot.name) && slot.eirp !== null);
    return asked ? faults.missing(DISHES.size.name, DISHES.size.wanted) : null;
  }
}
