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

function areasOfName({ names }: NamedAreas, written: string): Area[] {
  const found = names.find(({ name }) => name.toUpperCase() === written.toUpperCase());
  const zone = found && parseRange(found.range);
  return zone ? [{ sheet: found.sheet, zone }] : [];
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
