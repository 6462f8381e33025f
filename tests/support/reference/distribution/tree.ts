/**
 * The tree of a job: what hangs on what, at which port, and what lies between. Everything is a thing with an upper end and
 * a foot; from the foot of its parent to its own upper end lie steps: the parent's port, a cable, the thing itself.
 *
 * A blank port is the next free one, devices before outlets, after the ports that are named. At a tap a device takes the
 * through port and an outlet a numbered one; what hangs on an outlet takes its through port; at a head unit the port is
 * the output. A head unit's own cable and its supply in the line belong to output 1.
 */
import { isFilled, plain, type Row, type Value } from "../job";
import { cableNamed } from "./cable";
import { namedAlike, ownFaults } from "./rowFaults";
import { metresOf, numberIn, rowNamed, settingsOf, straight, wordIn, type Tables } from "./tables";

/** How direct current passes: both ways, towards the head unit only, or not at all. */
export interface Passage {
  readonly way: "both" | "up" | "none";
  readonly ohms: number;
  readonly drop: number;
}
export const FREE: Passage = { way: "both", ohms: 0, drop: 0 };
const BLOCKED: Passage = { way: "none", ohms: 0, drop: 0 };

export interface Step {
  /** The device, outlet or head unit that it belongs to. */
  readonly of: string;
  readonly isCable?: boolean;
  /** Decibels lost at a frequency and a temperature; less than nothing in an amplifier. */
  readonly loss: (mhz: number, celsius: number, isLongest: boolean) => number;
  /** Of an amplifier, at its input. */
  readonly noiseFigure?: number;
  readonly passage: Passage;
  readonly commands: boolean;
}

export type Port = number | "through";
export interface Source {
  readonly of: string;
  readonly volts: number;
  readonly amps: number;
}

export interface Thing {
  readonly what: "output" | "device" | "outlet";
  readonly name: string;
  readonly row: Row;
  /** Row number in its table. */
  readonly index: number;
  readonly parent: Thing | undefined;
  /** Of its parent, or of itself for an output of a head unit. */
  readonly port: Port;
  readonly head: HeadUnit;
  readonly output: number;
  readonly children: Thing[];
  /** Ports that are taken, by children and by rows that are bad. */
  readonly taken: Set<Port>;
  /** From the parent's foot to the upper end, and on to the foot. */
  readonly above: readonly Step[];
  readonly below: readonly Step[];
  /** What feeds in at its upper end. */
  readonly source: Source | undefined;
  /** An amplifier's, at its foot: amperes. */
  readonly load: number;
  /** From the foot of an outlet to its connector; from there to a receiver, by the port of what splits it. */
  readonly tail: readonly Step[];
  readonly split: (port: number) => readonly Step[];
  readonly part: Row | undefined;
}

export interface HeadUnit {
  readonly name: string;
  readonly row: Row;
  readonly index: number;
  readonly kind: Row;
  readonly outputs: Thing[];
}

export interface Tree {
  readonly heads: readonly HeadUnit[];
  /** In the order of the rows; those whose row, or one above it, is bad are missing. */
  readonly devices: readonly Thing[];
  readonly outlets: readonly Thing[];
  /** Rows that are bad by themselves, with a word for why; what has no place is none of them. */
  readonly own: ReadonlyMap<Row, string>;
}

const isOnePort = (kind: string): boolean => !["splitter", "tap"].includes(kind);
export const kindOf = (part: Row): string => wordIn(part, "kind", "splitter");
/** Of a thing of the devices' table; a part of the supplies is an inserter there. */
export const kindAt = ({ part }: Thing): string =>
  part !== undefined && isFilled(part, "part") ? kindOf(part) : "inserter";
export const waysOf = (part: Row): number => (isOnePort(kindOf(part)) ? 1 : numberIn(part, "ways"));

/** What passes at a port of a device, a plate or between the two ends of one. */
function passageOf(part: Row, port: Port | "only", isPlate = false): Passage {
  const power = wordIn(part, "power", isPlate ? "all ports" : "no");
  const ohms = numberIn(part, "ohms", 0);
  const both: Passage = { way: "both", ohms, drop: 0 };
  if (power === "all ports") return both;
  if (power === "towards head unit")
    return port === "through" ? both : { way: "up", ohms, drop: numberIn(part, "drop", 0.7) };
  if (power !== "one port") return BLOCKED;
  if (port === "only" || port === "through") return both;
  return !isPlate && kindOf(part) === "splitter" && port === 1 ? both : BLOCKED;
}

export const isLoop = (plate: Row | undefined): boolean =>
  plate !== undefined && isFilled(plate, "through_low");

/** @returns every thing of the job that hangs on a head unit by sound rows alone */
export function treeOf(tables: Tables): Tree {
  const settings = settingsOf(tables);
  const own = ownFaults(tables);
  const bad = new Map(own);
  const alike = new Set(namedAlike(tables));
  for (const row of alike) bad.set(row, "named twice");
  const tolerance = numberIn(settings, "length_tolerance", 0);
  const passesCommands = (part: Row): boolean => wordIn(part, "commands", "yes") === "yes";
  const filled = (rows: readonly Row[], key: string): readonly Row[] =>
    rows.filter((row) => isFilled(row, key));
  const deviceRows = filled(tables.devices, "device");
  const outletRows = filled(tables.outlets, "outlet");
  const headRows = filled(tables.head_units, "head");
  const detailsOf = (row: Row): Row => tables.outlet_details[tables.outlets.indexOf(row)] ?? {};

  const nameOf = (row: Row): Value => (row.head ?? row.device ?? row.outlet)!;
  /** A cable of so many metres, and as many as it may have at most. */
  function cable(of: string, name: Value, length: number, longest: number): Step[] {
    if (!(length > 0)) return [];
    const found = cableNamed(tables, String(name))!;
    return [
      {
        of,
        isCable: true,
        loss: (mhz, celsius, isLongest) =>
          found.loss(metresOf(tables, isLongest ? longest : length), mhz, celsius),
        passage: { way: "both", ohms: found.ohms(metresOf(tables, length)), drop: 0 },
        commands: true,
      },
    ];
  }
  const cableNameOf = (row: Row): Value => (isFilled(row, "cable") ? row.cable! : settings.cable!);
  const lead = (of: string, row: Row): Step[] => {
    const length = numberIn(row, "length", 0);
    return cable(of, cableNameOf(row), length, length * (1 + tolerance));
  };

  /** The step through one port of a thing, or through the thing itself. */
  const portStep = (of: string, part: Row, port: Port | "only", isPlate = false): Step => {
    const ends = port === "through" ? "through" : "port";
    return {
      of,
      loss: straight(tables, numberIn(part, `${ends}_low`), numberIn(part, `${ends}_high`)),
      passage: passageOf(part, port, isPlate),
      commands: passesCommands(part),
    };
  };

  /** The step from the foot of a parent into the port at which something hangs. */
  const outOf = (parent: Thing, port: Port): Step[] => {
    if (parent.what === "output" || parent.part === undefined) return [];
    if (parent.what === "outlet") return [portStep(parent.name, parent.part, "through", true)];
    return isOnePort(kindAt(parent)) ? [] : [portStep(parent.name, parent.part, port)];
  };

  const supplyOf = (name: Value | undefined): Row | undefined => rowNamed(tables.supplies, "supply", name);
  const isInLine = (supply: Row): boolean => wordIn(supply, "stands", "in the line") === "in the line";
  const sourceOf = (of: string, supply: Row): Source => ({
    of,
    volts: numberIn(supply, "volts"),
    amps: numberIn(supply, "amps", Infinity),
  });
  const supplyStep = (of: string, supply: Row): Step => ({
    of,
    loss: straight(tables, numberIn(supply, "loss_low", 0), numberIn(supply, "loss_high", 0)),
    passage: wordIn(supply, "other_side", "no") === "all ports" ? FREE : BLOCKED,
    commands: true,
  });

  const heads: HeadUnit[] = [];
  for (const row of headRows) {
    const kind = rowNamed(tables.head_unit_kinds, "kind", row.kind);
    if (bad.has(row)) continue;
    const head: HeadUnit = {
      name: String(row.head),
      row,
      index: tables.head_units.indexOf(row),
      kind: kind!,
      outputs: [],
    };
    const supply = supplyOf(row.supply);
    for (let output = 1; output <= numberIn(kind!, "outputs", 1); output++) {
      const inLine = output === 1 && supply && isInLine(supply) ? supply : undefined;
      head.outputs.push({
        what: "output",
        name: head.name,
        row,
        index: head.index,
        parent: undefined,
        port: output,
        head,
        output,
        children: [],
        taken: new Set(),
        above: output === 1 ? lead(head.name, row) : [],
        below: inLine ? [supplyStep(head.name, inLine)] : [],
        source: inLine && sourceOf(head.name, inLine),
        load: 0,
        tail: [],
        split: () => [],
        part: undefined,
      });
    }
    heads.push(head);
  }

  /** Who names whom, and which port is whose. */
  const parentRow = (row: Row): Row | undefined =>
    [...headRows, ...deviceRows, ...outletRows].find((other) => plain(nameOf(other)) === plain(row.fed_from));
  const childRows = new Map<Row, Row[]>();
  for (const row of [...deviceRows, ...outletRows]) {
    const parent = isFilled(row, "fed_from") ? parentRow(row) : undefined;
    if (!parent) bad.set(row, "fed from nothing");
    else if (!alike.has(row)) childRows.set(parent, [...(childRows.get(parent) ?? []), row]);
  }
  const portIn = (row: Row): Value | undefined => (isFilled(row, "device") ? row.port : detailsOf(row).port);

  const plateOf = (row: Row): Row | undefined =>
    rowNamed(tables.plates, "plate", isFilled(row, "plate") ? row.plate : settings.plate);

  /** @returns the ports of the children of a row, in their order */
  function portsOf(
    children: readonly Row[],
    numbered: number,
    hasThrough: boolean,
    isTap: boolean,
  ): (Port | undefined)[] {
    const taken = new Set<Port>();
    const named = children.map((row): Port | undefined => {
      const port = portIn(row);
      if (port === undefined || port === "") return undefined;
      return plain(port) === "through" ? "through" : Number(port);
    });
    const free = (row: Row): Port | undefined => {
      const order: Port[] = Array.from({ length: numbered }, (_, index) => index + 1);
      if (hasThrough && (!isTap || isFilled(row, "device")) && !taken.has("through")) return "through";
      return order.find((port) => !taken.has(port));
    };
    const isPort = (port: Port): boolean =>
      port === "through" ? hasThrough : Number.isInteger(port) && port >= 1 && port <= numbered;
    const given = named.map((port, index) => {
      if (port === undefined) return undefined;
      if (!isPort(port) || taken.has(port)) {
        bad.set(children[index]!, taken.has(port) ? "port used twice" : "no such port");
        return undefined;
      }
      taken.add(port);
      return port;
    });
    return given.map((port, index) => {
      if (port !== undefined || named[index] !== undefined) return port;
      const next = free(children[index]!);
      if (next === undefined) bad.set(children[index]!, "no free port");
      else taken.add(next);
      return next;
    });
  }

  const devices: Thing[] = [];
  const outlets: Thing[] = [];

  function hang(row: Row, parent: Thing, port: Port): void {
    const isDevice = isFilled(row, "device");
    const name = String(nameOf(row));
    if (bad.has(row)) return;
    const place = {
      name,
      row,
      parent,
      port,
      head: parent.head,
      output: parent.what === "output" ? Number(port) : parent.output,
      children: [],
      taken: new Set<Port>(),
    };
    const from = outOf(parent, port);
    if (!isDevice) {
      const plate = plateOf(row);
      const details = detailsOf(row);
      const splitBy = rowNamed(tables.device_parts, "part", details.split_by);
      const run = numberIn(row, "run");
      const longest = numberIn(details, "longest", run * (1 + tolerance));
      const thing: Thing = {
        ...place,
        what: "outlet",
        index: tables.outlets.indexOf(row),
        above: [...from, ...cable(name, cableNameOf(row), run, longest)],
        below: [],
        source: undefined,
        load: 0,
        tail: plate ? [portStep(name, plate, 1, true)] : [],
        split: (own) => (splitBy ? [portStep(name, splitBy, own)] : []),
        part: plate,
      };
      parent.children.push(thing);
      outlets.push(thing);
      hangAll(row, thing, isLoop(plate) ? 0 : -1, isLoop(plate), false);
      return;
    }
    const part = rowNamed(tables.device_parts, "part", row.part);
    const supply = part ? undefined : supplyOf(row.part);
    const kind = part ? kindOf(part) : "inserter";
    const isAmplifier = kind === "amplifier";
    const through: Step[] = [];
    if (part && isOnePort(kind))
      through.push({
        ...portStep(name, part, "only"),
        ...(isAmplifier
          ? {
              loss: (mhz: number) =>
                -straight(tables, numberIn(part, "gain_low"), numberIn(part, "gain_high"))(mhz),
              noiseFigure: numberIn(part, "noise_figure"),
            }
          : {}),
      });
    const thing: Thing = {
      ...place,
      what: "device",
      index: tables.devices.indexOf(row),
      above: [...from, ...lead(name, row), ...through],
      below: supply ? [supplyStep(name, supply)] : [],
      source: supply && sourceOf(name, supply),
      load: isAmplifier ? numberIn(part!, "load_amps", 0) : 0,
      tail: [],
      split: () => [],
      part: part ?? supply,
    };
    parent.children.push(thing);
    devices.push(thing);
    const ways = part ? waysOf(part) : 1;
    hangAll(row, thing, ways, kind === "tap", kind === "tap");
  }

  function hangAll(row: Row, thing: Thing, numbered: number, hasThrough: boolean, isTap: boolean): void {
    const children = childRows.get(row) ?? [];
    portsOf(children, numbered, hasThrough, isTap).forEach((port, index) => {
      if (port === undefined) return;
      thing.taken.add(port);
      hang(children[index]!, thing, port);
    });
  }

  for (const head of heads) {
    const children = childRows.get(head.row) ?? [];
    portsOf(children, head.outputs.length, false, false).forEach((port, index) => {
      if (port !== undefined) hang(children[index]!, head.outputs[Number(port) - 1]!, port);
    });
  }
  const inOrder = (things: Thing[]): Thing[] => things.sort((a, b) => a.index - b.index);
  return { heads, devices: inOrder(devices), outlets: inOrder(outlets), own };
}

/** From the head unit's output down to the foot of a thing. */
export const stepsTo = (thing: Thing): Step[] => [
  ...(thing.parent ? stepsTo(thing.parent) : []),
  ...thing.above,
  ...thing.below,
];
/** Down to a receiver of an outlet, behind what splits it. */
export const stepsToReceiver = (outlet: Thing, port = 1): Step[] => [
  ...stepsTo(outlet),
  ...outlet.tail,
  ...outlet.split(port),
];
