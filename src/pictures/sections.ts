/**
 * The pieces of a one-line diagram, each a small tree for which there is room:
 * one for every head unit, further ones where a chain of branches runs deeper
 * than the picture is wide, and one for what nothing feeds. Where a piece takes
 * up what another began, its first box says so.
 */
import type { Distribution, Hanging, Placeholder } from "./distribution";

/** Branches behind one another in a piece: more would leave their boxes too narrow for their figures. */
export const MOST_LEVELS = 3;

const placeholder = (name: string, troubles: readonly string[] = []): Placeholder => ({
  kind: "nothing",
  name,
  from: "",
  cable: "",
  length: undefined,
  corners: undefined,
  levels: undefined,
  troubles,
});

export function sectionsOf({ heads, unfed }: Pick<Distribution, "heads" | "unfed">): readonly Hanging[] {
  const sections: Hanging[] = [];
  const waiting = [...heads].reverse();
  for (let one = waiting.pop(); one; one = waiting.pop()) {
    const deeper: Hanging[] = [];
    sections.push({
      ...one,
      children: filled(one.children.map((child) => shallow(child, 1, deeper))),
    });
    waiting.push(...deeper.reverse().map((branch) => ({ ...branch, continued: true })));
  }
  if (unfed.length > 0) {
    sections.push({ item: placeholder("Loose ends", ["not fed"]), children: [...unfed] });
  }
  return sections;
}

/** A branch without anything on it says so. */
const filled = (children: Hanging[]): Hanging[] =>
  children.length > 0 ? children : [{ item: placeholder("no outlets"), children: [] }];

/** The tree down to the deepest level there is room for; `deeper` gets the branches whose own go on elsewhere. */
function shallow(one: Hanging, level: number, deeper: Hanging[]): Hanging {
  if (one.item.kind !== "branch") return one;
  if (level < MOST_LEVELS || one.children.every(({ item }) => item.kind === "outlet")) {
    return { ...one, children: filled(one.children.map((child) => shallow(child, level + 1, deeper))) };
  }
  deeper.push({ ...one, children: one.children.filter(({ item }) => item.kind === "branch") });
  const here = one.children.filter(({ item }) => item.kind === "outlet");
  return {
    ...one,
    children: [...here, { item: placeholder(`${one.item.name} goes on below`), children: [] }],
  };
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
  return { ...one, children, ...(continued && { continued }) };
}
