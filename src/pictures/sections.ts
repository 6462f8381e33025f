/**
 * The pieces of a one-line diagram, each a small tree for which there is room:
 * one for every head unit, with what comes to it from the sky above it, further
 * ones where devices run deeper than the picture is wide, and one for what
 * nothing feeds. Where a piece takes up what another began, its first box says
 * so. Devices in one line with nothing else on them stand above one another,
 * and outlets that are looped through stand below one another.
 */
import type { Distribution } from "./distribution";
import { placeholder, type Hanging, type Item } from "./items";

/** Devices behind one another in a piece: more would leave their boxes too narrow for their figures. */
export const MOST_LEVELS = 2;
/** Above one another in one column. */
const MOST_ABOVE = 5;

export function sectionsOf({
  heads,
  unused,
  unfed,
}: Pick<Distribution, "heads" | "unused" | "unfed">): readonly Hanging[] {
  const sections: Hanging[] = [];
  const waiting = [...heads].reverse();
  /** Names of dishes that a piece before has shown in full. */
  const shown = new Set<string>();
  for (let one = waiting.pop(); one; one = waiting.pop()) {
    const deeper: Hanging[] = [];
    const above = one.continued ? undefined : skyOf(one.item, shown);
    sections.push({
      ...one,
      ...(above && above.length > 0 && { above }),
      children: filled(one.children.flatMap((child) => shallow(child, 1, deeper))),
    });
    waiting.push(...deeper.reverse().map((below) => ({ ...below, continued: true })));
  }
  const loose = [...unused.map((item): Hanging => ({ item, children: [] })), ...unfed];
  if (loose.length > 0) sections.push({ item: placeholder("Loose ends", ["not fed"]), children: loose });
  return sections;
}

/** What feeds a head unit; a dish that feeds another as well is shown in full there. */
function skyOf(item: Item, shown: Set<string>): Item[] {
  if (item.kind !== "head") return [];
  return item.inlets.map(({ source }) => {
    if (source.kind !== "dish") return source;
    if (shown.has(source.name)) return placeholder(source.name);
    shown.add(source.name);
    return source;
  });
}

/** A head unit or device without anything on it says so. */
const filled = (children: Hanging[]): Hanging[] =>
  children.length > 0 ? children : [{ item: placeholder("no outlets"), children: [] }];

/** The tree down to the deepest level there is room for; `deeper` gets what goes on elsewhere. */
function shallow(one: Hanging, level: number, deeper: Hanging[]): Hanging[] {
  if (one.item.kind !== "device") return looped(one, deeper);
  const { line, last } = inLine(one);
  const above = line.length > 0 ? { above: line } : {};
  if (level < MOST_LEVELS || last.children.every(({ item }) => item.kind === "outlet")) {
    return [
      {
        ...last,
        ...above,
        children: filled(last.children.flatMap((child) => shallow(child, level + 1, deeper))),
      },
    ];
  }
  deeper.push({ ...last, children: last.children.filter(({ item }) => item.kind === "device") });
  const here = last.children
    .filter(({ item }) => item.kind !== "device")
    .flatMap((child) => looped(child, deeper));
  return [
    {
      ...last,
      ...above,
      children: [...here, { item: placeholder(`${last.item.name} goes on below`), children: [] }],
    },
  ];
}

/** Devices that feed one device and nothing else, and the first that does not. */
function inLine(first: Hanging): { line: Item[]; last: Hanging } {
  const line: Item[] = [];
  let last = first;
  while (line.length < MOST_ABOVE && last.children.length === 1 && last.children[0]!.item.kind === "device") {
    line.push(last.item);
    last = last.children[0]!;
  }
  return { line, last };
}

/** An outlet with those that it is looped through to, in their order; a device behind an outlet goes on elsewhere. */
function looped(one: Hanging, deeper: Hanging[]): Hanging[] {
  const rows: Hanging[] = [];
  const waiting = [one];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const devices = next.children.filter(({ item }) => item.kind === "device");
    if (devices.length > 0) deeper.push({ ...next, children: devices });
    rows.push({ item: next.item, children: [] });
    waiting.push(...next.children.filter(({ item }) => item.kind !== "device").reverse());
  }
  return rows;
}

/**
 * A piece cut into smaller ones, in its own order.
 * @param groups the ends of each part, as sets of what stands at the right of the piece
 */
export function cut(section: Hanging, groups: readonly ReadonlySet<Hanging>[]): readonly Hanging[] {
  const seen = new Set<Hanging>();
  return groups.map((group) => pruned(section, group, seen)!);
}

function pruned(one: Hanging, keep: ReadonlySet<Hanging>, seen: Set<Hanging>): Hanging | undefined {
  if (one.children.length === 0) return keep.has(one) ? one : undefined;
  const children = one.children.flatMap((child) => pruned(child, keep, seen) ?? []);
  if (children.length === 0) return undefined;
  const continued = one.continued || seen.has(one);
  seen.add(one);
  return continued ? { item: one.item, children, continued } : { ...one, children };
}
