/** The size that the name of a dish tells, and the dish of a size among the fittings of Parts. */
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { filledCells } from "./namedCells";

const METRES = /\b(\d+(?:[.,]\d+)?) ?(m|cm)\b/;
const CENTIMETRES = 100;
/** Half a hand's breadth. */
const SAME_METRES = 0.051;

/** @returns metres; undefined where the name tells none */
export function metresIn(name: string): number | undefined {
  const [, figures, unit] = METRES.exec(name) ?? [];
  return Number(figures?.replace(",", ".")) / (unit === "cm" ? CENTIMETRES : 1) || undefined;
}

export const isSameSize = (a: number, b: number): boolean => Math.abs(a - b) < SAME_METRES;

/** @param size metres */
export const dishFitting = (read: Book, size: number): string | undefined =>
  filledCells(read, estimate.fittings.name.name)
    .map(({ value }) => String(value))
    .find((name) => {
      const said = metresIn(name);
      return said !== undefined && isSameSize(said, size);
    });
