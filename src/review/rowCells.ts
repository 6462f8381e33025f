/** The input cells of a whole row: to clear it where it stands twice, or to fill it where it is missing. */
import type { Book, BookValue } from "../workbooks/book";
import type { Undoing } from "./finding";
import type { Input } from "./inputsIn";
import { isBlank, namedCells } from "./namedCells";

const inputsOf = (inputs: readonly Input[], block: string): readonly Input[] =>
  inputs.filter((one) => one.block === block);

/** @param index counted from the top of the block's names; its closing row may be cleared too */
export function clearing(read: Book, inputs: readonly Input[], block: string, index: number): Undoing[] {
  return inputsOf(inputs, block).flatMap(({ name }) => {
    const cell = namedCells(read, name)[index];
    return cell && !isBlank(cell.value) ? [{ place: cell.place }] : [];
  });
}

export type RowValues = Readonly<Record<string, BookValue | undefined>>;

/** @param values by the column's key */
export function filling(
  inputs: readonly Input[],
  block: string,
  index: number,
  values: RowValues,
): Undoing[] {
  return inputsOf(inputs, block).flatMap(({ name, cells }): Undoing[] => {
    const cell = cells.find((one) => one.index === index);
    const value = values[name.slice(block.length + 1)];
    return cell && value !== undefined && value !== "" ? [{ place: cell.place, value }] : [];
  });
}

/** @returns the rows of a block in which nothing is filled, the nearest to one of them first */
export function freeRows(inputs: readonly Input[], block: string, near = 0): number[] {
  const columns = inputsOf(inputs, block);
  const free = (columns[0]?.cells ?? []).flatMap(({ index }) =>
    columns.every(({ cells }) => isBlank(cells.find((one) => one.index === index)?.value)) ? [index] : [],
  );
  return [near, ...free.filter((one) => one !== near)].filter((one) => free.includes(one));
}

/** Whether two rows of a block hold the same, but for some columns. */
export function areSameRows(
  inputs: readonly Input[],
  block: string,
  [one, other]: readonly [number, number],
  but: ReadonlySet<string> = new Set(),
): boolean {
  return inputsOf(inputs, block)
    .filter(({ name }) => !but.has(name))
    .every(({ cells }) => {
      const [a, b] = [one, other].map((index) => cells.find((cell) => cell.index === index)?.value);
      return isBlank(a) ? isBlank(b) : a === b;
    });
}
