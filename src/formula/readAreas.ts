/** The areas of a workbook that a formula reads. */
import { parseRange, type Zone } from "./address";
import { treeOf } from "./parse";
import { readReference, zoneOf, type Reference } from "./reference";
import { tokensOf } from "./tokens";
import { childrenOf, type FormulaNode } from "./tree";

export interface Area {
  readonly sheet: string;
  readonly zone: Zone;
}

/** What is needed of a workbook to know where its names and sheets lie. */
export interface NamedAreas {
  readonly names: readonly { readonly name: string; readonly sheet: string; readonly range: string }[];
  readonly sheets: readonly { readonly name: string }[];
}

/**
 * @param sheet the sheet on which the formula stands
 * @param formula a broken one gives what can be made out
 */
export function readAreas(book: NamedAreas, sheet: string, formula: string): Area[] {
  const tree = treeOf(formula);
  if (tree) return areasOf(book, sheet, tree);
  return tokensOf(formula).flatMap(({ kind, text }): Area[] => {
    if (kind === "name") return areasOfName(book, text);
    const cells = kind === "reference" ? readReference(text) : undefined;
    return cells ? areasOfCells(book, sheet, cells) : [];
  });
}

/** The areas that a part of a formula reads. */
export function areasOf(book: NamedAreas, sheet: string, node: FormulaNode): Area[] {
  if (node.kind === "name") return node.sheet?.includes("]") ? [] : areasOfName(book, node.name);
  if (node.kind === "reference") return areasOfCells(book, sheet, node.cells);
  const inside = childrenOf(node).flatMap((child) => areasOf(book, sheet, child));
  const [first, last] = inside;
  const isRange = node.kind === "operator" && node.operator === ":" && inside.length === 2;
  return isRange && first!.sheet === last!.sheet ? [around(first!, last!)] : inside;
}

/** Put together once for each list of names, and anew where one was added. */
const known = new WeakMap<
  NamedAreas["names"],
  { readonly count: number; readonly areas: Map<string, Area> }
>();

function areasOfName({ names }: NamedAreas, written: string): Area[] {
  let found = known.get(names);
  if (found?.count !== names.length) {
    const areas = new Map<string, Area>();
    for (const { name, sheet, range } of names) {
      const zone = parseRange(range);
      const key = name.toUpperCase();
      if (zone && !areas.has(key)) areas.set(key, { sheet, zone });
    }
    known.set(names, (found = { count: names.length, areas }));
  }
  const area = found.areas.get(written.toUpperCase());
  return area ? [area] : [];
}

function areasOfCells({ sheets }: NamedAreas, own: string, cells: Reference): Area[] {
  // Cells of another file are none of this workbook.
  if (cells.file !== undefined) return [];
  const zone = zoneOf(cells);
  const { sheet = own, lastSheet } = cells;
  if (lastSheet === undefined) return [{ sheet, zone }];
  const ends = [sheet, lastSheet].map((one) => sheets.findIndex(({ name }) => name === one));
  return sheets.slice(Math.min(...ends), Math.max(...ends) + 1).map(({ name }) => ({ sheet: name, zone }));
}

const around = ({ sheet, zone: a }: Area, { zone: b }: Area): Area => ({
  sheet,
  zone: {
    top: Math.min(a.top, b.top),
    left: Math.min(a.left, b.left),
    bottom: Math.max(a.bottom, b.bottom),
    right: Math.max(a.right, b.right),
  },
});

export const meet = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.zone.top <= b.zone.bottom &&
  b.zone.top <= a.zone.bottom &&
  a.zone.left <= b.zone.right &&
  b.zone.left <= a.zone.right;
