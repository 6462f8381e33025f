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
import { kindOf, type Tree } from "./tree";

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
    count("dish");
    count("dish bonding conductor");
    count("further slot on a dish", Math.max(0, dish.slots.length - 1));
    if (!dish.feed) continue;
    count("feed", dish.slots.length);
    parts.add(dish.feed.feed, dish.slots.length);
  }

  for (const { row, dish, cables: how } of feedersOf(tables)) {
    pieces(row, own(row, "route"), numberIn(row, "length", 0), how);
    if (dish) grounded(how);
  }

  const before = new Set(feedersOf(tables).map(({ from }) => from));
  for (const { row, kind, outputs } of tree.heads) {
    parts.add(kind.kind);
    count("head unit");
    count(isOnDish(kind) ? "head unit on a dish" : "switch");
    if (rowNamed(tables.supplies, "supply", row.supply)) supply(row.supply);
    const used = outputs.filter(({ children }) => children.length > 0);
    if (used.some(({ output }) => output === 1)) pieces(row, own(row, "route"), numberIn(row, "length", 0));
    if (isOnDish(kind)) grounded(used.length);
    const isLast = isFilled(kind, "onward_low") && !before.has(row);
    if (isLast) closed(numberIn(kind, "slots", 1) * numberIn(kind, "per_slot", 4));
  }
  function closed(open: number): void {
    if (!isFilled(settings, "resistor")) return;
    count("end resistor", open);
    parts.add(settings.resistor, open);
  }
  const openAt = ({ numbered, through }: ReturnType<typeof openPorts>): number =>
    numbered.length + (through ? 1 : 0);

  for (const thing of tree.devices) {
    count("device");
    pieces(thing.row, own(thing.row, "route"), numberIn(thing.row, "length", 0));
    if (thing.source) {
      supply(thing.part!.supply);
      continue;
    }
    parts.add(thing.part!.part);
    count(kindOf(thing.part!) as Work);
    closed(openAt(openPorts(thing)));
  }

  const floors = new Set<string>();
  for (const thing of tree.outlets) {
    const details = tables.outlet_details[thing.index] ?? {};
    count("outlet");
    count("outlet to measure");
    if (isFilled(thing.row, "floor")) floors.add(plain(thing.row.floor));
    pieces(thing.row, own(details, "route"), numberIn(thing.row, "run"));
    if (thing.part) {
      parts.add(thing.part.plate);
      count("wall plate");
    }
    closed(openAt(openPorts(thing)));
    const receivers = receiverOf(tables, thing.row) ? howMany(thing.row) : 0;
    count("receiver lead", receivers);
    const splitBy = rowNamed(tables.device_parts, "part", details.split_by);
    if (!splitBy) continue;
    count("receiver lead");
    parts.add(splitBy.part);
    count(kindOf(splitBy) as Work);
    if (kindOf(splitBy) === "splitter") closed(Math.max(0, numberIn(splitBy, "ways") - receivers));
  }
  count("floor", Math.max(1, floors.size));
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
