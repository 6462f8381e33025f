/**
 * What a job needs: parts by name, cable and routes by length, pieces of work.
 *
 * Two connectors for each piece of cable that has a length; a grounding block, and two more, for each cable that comes from
 * a dish; end resistors on open splitter, tap and through ports and on the onward outputs of the last switch, if the site
 * has one to close them with; a lead for each receiver and one more for what splits them; a mains socket for each supply.
 */
import { isFilled, isSame, plain, type Row, type Value } from "../job";
import { howMany, receiverOf } from "./bands";
import { dishesOf, feedersOf, isOnDish } from "./dishes";
import { openPorts } from "./supply";
import { numberIn, rowNamed, settingsOf, type Tables } from "./tables";
import { kindOf, type Thing, type Tree } from "./tree";

export interface Needed {
  readonly kind: "part" | "cable" | "route" | "work";
  readonly name: string;
  readonly quantity: number;
}

export const WORK = [
  ...["connector", "grounding block", "end resistor", "receiver lead", "mains socket", "dish"],
  ...["further slot on a dish", "feed", "head unit on a dish", "switch", "splitter", "tap", "amplifier"],
  ...["equaliser", "attenuator", "filter", "supply", "wall plate", "dish bonding conductor"],
  ...["outlet to measure", "floor", "outlet", "device", "head unit"],
] as const;
type Work = (typeof WORK)[number];

class Sums {
  private readonly names = new Map<string, { name: string; quantity: number }>();
  add(name: Value | undefined, quantity = 1): void {
    if (name === undefined || plain(name) === "" || quantity === 0) return;
    const known = this.names.get(plain(name));
    this.names.set(plain(name), {
      name: known?.name ?? String(name),
      quantity: (known?.quantity ?? 0) + quantity,
    });
  }
  all = (kind: Needed["kind"]): Needed[] => [...this.names.values()].map((one) => ({ kind, ...one }));
}

export function neededOf(tables: Tables, tree: Tree): Needed[] {
  const settings = settingsOf(tables);
  const [parts, cables, routes] = [new Sums(), new Sums(), new Sums()];
  const work = new Map<Work, number>(WORK.map((name) => [name, 0]));
  const count = (name: Work, quantity = 1): void => void work.set(name, work.get(name)! + quantity);
  const own = (row: Row, key: string): Value | undefined => (isFilled(row, key) ? row[key] : settings[key]);

  function pieces(row: Row, route: Value | undefined, length: number, how = 1): void {
    if (!(length > 0)) return;
    count("connector", 2 * how);
    cables.add(own(row, "cable"), length * how);
    routes.add(route, length * how);
  }
  const grounded = (cablesOffDish: number): void => {
    count("grounding block", cablesOffDish);
    count("connector", 2 * cablesOffDish);
  };
  const supply = (name: Value | undefined): void => {
    parts.add(name);
    count("supply");
    count("mains socket");
  };

  for (const dish of dishesOf(tables)) {
    if (dish.isBad) continue;
    count("dish");
    count("dish bonding conductor");
    count("further slot on a dish", Math.max(0, dish.slots.length - 1));
    if (!dish.feed) continue;
    count("feed", dish.slots.length);
    parts.add(dish.feed.feed, dish.slots.length);
  }

  const feeders = feedersOf(tables);
  /** A head unit on a dish, or a switch right behind it: feeders without a length are no cables. */
  const isAtDish = (head: Row, depth = 0): boolean => {
    const kind = rowNamed(tables.head_unit_kinds, "kind", head.kind);
    const inputs = feeders.filter(({ to }) => to === head);
    if (!kind || depth > feeders.length) return false;
    if (isOnDish(kind)) return true;
    return (
      inputs.length > 0 &&
      inputs.every(({ from, metres }) => metres === 0 && (!from || isAtDish(from, depth + 1)))
    );
  };
  for (const { row, from, metres, cables: how } of feeders) {
    pieces(row, own(row, "route"), numberIn(row, "length", 0), how);
    if (metres > 0 && (!from || isAtDish(from))) grounded(how);
  }

  const before = new Set(feeders.map(({ from }) => from));
  const named = (rows: readonly Row[], key: string): readonly Row[] =>
    rows.filter((row) => isFilled(row, key));
  count("head unit", named(tables.head_units, "head").length);
  for (const { row, kind } of tree.heads) {
    parts.add(kind.kind);
    count(isOnDish(kind) ? "head unit on a dish" : "switch");
    if (rowNamed(tables.supplies, "supply", row.supply)) supply(row.supply);
    const isLast = isFilled(kind, "onward_low") && !before.has(row);
    if (isLast) closed(numberIn(kind, "slots", 1) * numberIn(kind, "per_slot", 4));
  }
  function closed(open: number): void {
    if (!isFilled(settings, "resistor")) return;
    count("end resistor", open);
    parts.add(settings.resistor, open);
  }

  /** A thing's own cable; it comes from a dish where nothing above it has one. */
  const hasCable = ({ above }: Thing): boolean => above.some(({ isCable }) => isCable);
  const comesFromDish = ({ parent, head }: Thing): boolean =>
    parent ? !hasCable(parent) && comesFromDish(parent) : isAtDish(head.row);
  for (const thing of [...tree.heads.flatMap(({ outputs }) => outputs), ...tree.devices, ...tree.outlets]) {
    const { numbered, through } = openPorts(thing);
    if (thing.what !== "output") closed(numbered.length + (through ? 1 : 0));
    if (!hasCable(thing)) continue;
    const route = thing.what === "outlet" ? (tables.outlet_details[thing.index] ?? {}) : thing.row;
    pieces(thing.row, own(route, "route"), numberIn(thing.row, thing.what === "outlet" ? "run" : "length"));
    if (comesFromDish(thing)) grounded(1);
  }

  // Parts of rows that hang on nothing are needed as well; only their cables have no place yet.
  for (const row of named(tables.devices, "device")) {
    count("device");
    if (tree.own.has(row)) continue;
    const part = rowNamed(tables.device_parts, "part", row.part);
    if (part) {
      parts.add(part.part);
      count(kindOf(part) as Work);
    } else if (rowNamed(tables.supplies, "supply", row.part)) supply(row.part);
  }
  const floors = new Set<string>();
  for (const row of named(tables.outlets, "outlet")) {
    count("outlet");
    count("outlet to measure");
    if (isFilled(row, "floor")) floors.add(plain(row.floor));
    if (tree.own.has(row)) continue;
    const plate = rowNamed(tables.plates, "plate", own(row, "plate"));
    if (plate) {
      parts.add(plate.plate);
      count("wall plate");
    }
    const receivers = receiverOf(tables, row) ? howMany(row) : 0;
    count("receiver lead", receivers);
    const { split_by } = tables.outlet_details[tables.outlets.indexOf(row)] ?? {};
    const splitBy = rowNamed(tables.device_parts, "part", split_by);
    if (!splitBy) continue;
    count("receiver lead");
    parts.add(splitBy.part);
    count(kindOf(splitBy) as Work);
    if (kindOf(splitBy) === "splitter") closed(Math.max(0, numberIn(splitBy, "ways") - receivers));
  }
  const isAny = named(tables.outlets, "outlet").length > 0;
  count("floor", isAny ? Math.max(1, floors.size) : 0);
  return [
    ...parts.all("part"),
    ...cables.all("cable"),
    ...routes.all("route"),
    ...[...work].map(([name, quantity]) => ({ kind: "work" as const, name, quantity })),
  ];
}

/** @returns quantity of a piece of work, part, cable or route; nothing where there is none */
export const quantityOf = (needed: readonly Needed[], kind: Needed["kind"], name: string): number =>
  needed.find((one) => one.kind === kind && isSame(one.name, name))?.quantity ?? 0;
