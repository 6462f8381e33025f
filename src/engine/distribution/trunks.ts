/**
 * What comes to each head unit from the sky: as the feed of a dish, by feeders
 * from the feeds of dishes, or by feeders from the switch before it.
 */
import { faults, isFault, type Fault } from "../faults";
import { nameKey } from "../signal/nameKey";
import type { DistributionJob, FeederRow, HeadUnitRow } from "./job";

/** One slot that a head unit receives. */
export interface Inlet {
  readonly slot: string;
  /** Index of the dish that it comes from. */
  readonly dish: number;
  /** Index of the feeder that it comes by; -1 where the head unit is the feed. */
  readonly feeder: number;
  /** Index of the switch before it; -1 where it comes from the dish. */
  readonly above: number;
}

export interface Trunks {
  /** By head unit. */
  readonly inlets: readonly (readonly Inlet[])[];
  /** Indexes of the head units, each after the switch before it. */
  readonly order: readonly number[];
  /** By feeder: its cables, 0 where the row is bad. */
  readonly cables: readonly number[];
  readonly dishFaults: readonly (Fault | null)[];
  readonly headFaults: readonly (Fault | null)[];
  readonly feederFaults: readonly (Fault | null)[];
}

/** @param job with all its parts looked up */
export function trunksOf(job: DistributionJob): Trunks {
  const { dishes, feeders, headUnits } = job;
  const dishOf = new Map<string, number>();
  const headOf = new Map<string, number>();
  const headFaults = headUnits.map(named(headOf));
  const dishFaults = dishes.map(named(dishOf)).map((fault, dish) => {
    const { name } = dishes[dish]!;
    return fault ?? (headOf.has(nameKey(name)) ? faults.dishNamedAsHeadUnit(name) : null);
  });
  const feederFaults: (Fault | null)[] = feeders.map(() => null);
  const inlets: Inlet[][] = headUnits.map(() => []);

  const feedsTaken = dishes.map(() => 0);
  headUnits.forEach((head, index) => {
    if (head.kind.sits !== "on the dish") return;
    const dish = theDish(head);
    if (headFaults[index]) {
      // A bad row keeps its slots, so that mending it gives no other head unit another one.
      if (!isFault(dish)) feedsTaken[dish]! += head.kind.slots;
    } else if (isFault(dish)) headFaults[index] = dish;
    else if (dishFaults[dish])
      headFaults[index] = dishes[dish]!.isAssumed
        ? dishFaults[dish]!
        : faults.treeBelowFault(head.name, dishes[dish]!.name);
    else {
      const { name, slots, feed } = dishes[dish]!;
      const first = feedsTaken[dish]!;
      if (feed) headFaults[index] = faults.dishHasFeed(head.name, name);
      else if (slots.length === 0) headFaults[index] = faults.dishWithoutSlot(name);
      else if (first >= slots.length) headFaults[index] = faults.dishTaken(head.name, name, slots.length);
      feedsTaken[dish] = first + head.kind.slots;
      for (const slot of slots.slice(first, first + head.kind.slots))
        inlets[index]!.push({ slot, dish, feeder: -1, above: -1 });
    }
  });

  const known = [...dishes, ...headUnits].map(({ name }) => name);
  const incoming: number[][] = headUnits.map(() => []);
  /** By head unit: whether a feeder to it is bad. */
  const hasBadFeeder = headUnits.map(() => false);
  feeders.forEach(({ from, to, fault }, index) => {
    const head = headOf.get(nameKey(to));
    if (fault) feederFaults[index] = fault;
    else if (head === undefined) feederFaults[index] = faults.feederUnknown(to, known);
    else if (!dishOf.has(nameKey(from)) && !headOf.has(nameKey(from)))
      feederFaults[index] = faults.feederUnknown(from, known);
    else if (headUnits[head]!.kind.sits === "on the dish")
      feederFaults[index] = faults.feederToFeed(to, headUnits[head]!.dish ?? dishes[0]?.name ?? "");
    else incoming[head]!.push(index);
    if (feederFaults[index] && head !== undefined) hasBadFeeder[head] = true;
  });

  const order = cascadeOrder(
    headUnits.map((_, head) =>
      incoming[head]!.flatMap((feeder) => headOf.get(nameKey(feeders[feeder]!.from)) ?? []),
    ),
  );
  const reached = new Set(order);
  const looped = headUnits.flatMap(({ name }, head) => (reached.has(head) ? [] : [{ name, head }]));
  for (const { head } of looped) headFaults[head] ??= faults.feederLoop(looped.map(({ name }) => name));

  const outputsTaken = new Map<string, number>();
  const cables = feeders.map(() => 0);
  for (const head of order) {
    const { name, kind, fault } = headUnits[head]!;
    if (fault || kind.sits !== "fed") continue;
    /** By slot of a dish: the cables for it, and the last feeder that has some. */
    const bundles = new Map<string, { slot: string; pieces: number; feeder: number }>();
    for (const feeder of incoming[head]!) {
      const come = slotsBy(feeders[feeder]!, feeder);
      if (isFault(come)) {
        feederFaults[feeder] = come;
        hasBadFeeder[head] = true;
        continue;
      }
      for (const inlet of come) {
        const key = `${inlet.dish} ${nameKey(inlet.slot)}`;
        const before = bundles.get(key)?.pieces ?? 0;
        const pieces = before + cables[feeder]! / come.length;
        if (pieces > kind.feedersPerSlot)
          feederFaults[feeder] ??= faults.feedersTooMany(name, inlet.slot, pieces, kind.feedersPerSlot);
        if (before === 0) inlets[head]!.push(inlet);
        bundles.set(key, { slot: inlet.slot, pieces, feeder });
      }
    }
    for (const { slot, pieces, feeder } of bundles.values())
      if (pieces < kind.feedersPerSlot)
        feederFaults[feeder] ??= faults.feedersTooFew(name, slot, pieces, kind.feedersPerSlot);
    const slots = inlets[head]!.length;
    if (slots > kind.slots) headFaults[head] ??= faults.slotsBeyond(name, slots, kind.slots);
    if (slots === 0)
      headFaults[head] ??= hasBadFeeder[head] ? faults.feedersBad(name) : faults.switchUnfed(name);
  }
  return { inlets, order, cables, dishFaults, headFaults, feederFaults };

  function theDish({ name, dish }: HeadUnitRow): number | Fault {
    const names = (): string[] => dishes.map((one) => one.name);
    if (dish === null) return dishes.length === 1 ? 0 : faults.dishNotSaid(name, names());
    return dishOf.get(nameKey(dish)) ?? faults.dishUnknown(name, dish, names());
  }

  function slotsBy(row: FeederRow, feeder: number): Inlet[] | Fault {
    const above = headOf.get(nameKey(row.from)) ?? -1;
    const dish = dishOf.get(nameKey(row.from)) ?? -1;
    const each = headUnits[headOf.get(nameKey(row.to))!]!.kind.feedersPerSlot;
    const all = above >= 0 ? inlets[above]!.map(({ slot }) => slot) : dishes[dish]!.slots;
    const asked = row.slot === null ? all : all.filter((slot) => nameKey(slot) === nameKey(row.slot!));
    if (above >= 0 ? headFaults[above] : dishFaults[dish]) return faults.feederBelowFault(row.from, row.to);
    if (above >= 0 && !headUnits[above]!.kind.onward) return faults.noOnward(row.from, row.to);
    if (all.length === 0) return faults.dishWithoutSlot(row.from);
    if (asked.length === 0) return faults.slotUnknown(row.from, row.slot ?? "", all);
    const wanted = row.quantity ?? each * asked.length;
    if (above >= 0) {
      cables[feeder] = wanted;
      return inlets[above]!.filter(({ slot }) => asked.includes(slot)).map((inlet) => ({
        ...inlet,
        feeder,
        above,
      }));
    }
    const { feed, name } = dishes[dish]!;
    if (!feed) return faults.feedMissing(name, row.to);
    cables[feeder] = wanted;
    for (const slot of asked) {
      const key = `${dish} ${nameKey(slot)}`;
      const taken = (outputsTaken.get(key) ?? 0) + wanted / asked.length;
      outputsTaken.set(key, taken);
      if (taken > feed.outputs) return faults.feedOutputs(name, slot, feed.outputs, taken);
    }
    return asked.map((slot) => ({ slot, dish, feeder, above: -1 }));
  }
}

/** What is wrong with a row itself; the first row of each name is entered, a second one is a fault. */
const named =
  (rows: Map<string, number>) =>
  ({ name, fault }: { readonly name: string; readonly fault: Fault | null }, index: number): Fault | null => {
    const isFirst = !rows.has(nameKey(name));
    if (isFirst) rows.set(nameKey(name), index);
    return fault ?? (isFirst ? null : faults.nameTwice(name));
  };

/** @returns the head units, each after those before it; those in a loop are left out */
function cascadeOrder(before: readonly (readonly number[])[]): number[] {
  const left = before.map((heads) => heads.length);
  const after: number[][] = before.map(() => []);
  before.forEach((heads, head) => heads.forEach((one) => after[one]!.push(head)));
  const order = left.flatMap((count, head) => (count === 0 ? [head] : []));
  for (let at = 0; at < order.length; at++)
    for (const next of after[order[at]!]!) if (--left[next]! === 0) order.push(next);
  return order;
}
