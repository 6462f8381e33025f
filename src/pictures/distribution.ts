/**
 * The distribution as the workbook has it: head units with what comes to them
 * from the sky, the devices and outlets that hang on them, and whatever hangs
 * on nothing. Figures and verdicts are the workbook's own; nothing is computed
 * again here.
 */
import { isFault } from "../engine/faults";
import { distributionTree } from "../engine/signal/distributionTree";
import type { LengthUnit } from "../engine/signal/lengthUnits";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { filledRows, textOf } from "./columns";
import type { Dish, Hanging, Item } from "./items";
import { readDevices } from "./readDevices";
import { readHeadUnits } from "./readHeadUnits";
import { readOutlets } from "./readOutlets";
import { readSky } from "./readSky";
import { portsTaken } from "./rowFigures";

export interface Distribution {
  /** Of every length, as people write it. */
  readonly unit: LengthUnit;
  /** Of every outlet that names none; empty where Site names none. */
  readonly usual: { readonly cable: string; readonly plate: string };
  readonly heads: readonly Hanging[];
  /** Dishes that feed no head unit. */
  readonly unused: readonly Dish[];
  /** Devices and outlets that no head unit feeds, side by side. */
  readonly unfed: readonly Hanging[];
}

/** @param book a computed multi-room estimate */
export function readDistribution(book: Book): Distribution {
  const { site } = estimate;
  const [unit, cable, plate] = [site.unit, site.usual_cable, site.usual_plate].map(({ name }) =>
    textOf(namedValue(book, name)),
  );
  const sky = readSky(book);
  const taken = portsTaken(book);
  const headUnits = readHeadUnits(book, filledRows(book, "heads", "id"), sky);
  const rows = [
    ...readDevices(book, filledRows(book, "branches", "id"), taken),
    ...readOutlets(book, filledRows(book, "rooms", "outlet"), taken),
  ].map(hanging);
  const heads = headUnits.map(hanging);
  const tree = distributionTree(
    rows.map(({ item }) => item.name),
    // A row without a feed stands in the tree's top, which here is nothing.
    rows.map(({ item }) => item.from || item.name),
    heads.map(({ item }) => item.name),
  );
  const headOf = new Map(heads.map((head) => [head.item.name, head]).reverse() as [string, Hanging][]);
  const fedBy = rows.map((_, index): Hanging | undefined => {
    const place = tree.rows[index];
    if (!place || isFault(place)) return undefined;
    return place.parent < 0 ? headOf.get(place.root) : rows[place.parent];
  });
  rows.forEach((row, index) => fedBy[index]?.children.push(row));
  for (const one of [...heads, ...rows]) one.children.sort(byPort);
  const used = new Set(headUnits.flatMap(({ inlets }) => inlets.map(({ source }) => source.name)));
  return {
    unit: unit === "ft" ? "ft" : "m",
    usual: { cable: cable!, plate: plate! },
    heads,
    unused: sky.dishes.filter(({ name }) => sky.given && !used.has(name)),
    unfed: rows.filter((_, index) => !fedBy[index]).map(unfedOf),
  };
}

const hanging = (item: Item): Hanging => ({ item, children: [] });

/** Outlets before devices, each in the order of the ports; rows of one port as they stand. */
const byPort = ({ item: a }: Hanging, { item: b }: Hanging): number =>
  Number(a.kind === "device") - Number(b.kind === "device") || portNumber(a) - portNumber(b);
const portNumber = ({ port }: Item): number => Number(port) || 0;

const unfedOf = ({ item }: Hanging): Hanging =>
  hanging({ ...item, troubles: ["not fed", ...item.troubles.filter((word) => word !== "unknown")] });

/** Everything of a distribution, each once. */
export function itemsOf({ heads, unused, unfed }: Distribution): readonly Item[] {
  const dishes = new Map<string, Item>();
  const items: Item[] = [];
  const waiting = [...heads, ...unfed].reverse();
  for (let one = waiting.pop(); one; one = waiting.pop()) {
    if (one.item.kind === "head")
      for (const { source } of one.item.inlets) if (source.kind === "dish") dishes.set(source.name, source);
    items.push(one.item);
    waiting.push(...[...one.children].reverse());
  }
  return [...dishes.values(), ...unused, ...items];
}
