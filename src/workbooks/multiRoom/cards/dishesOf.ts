/** The dishes of a job as its cards need them: what stands on the roof, and what comes down from it. */
import type { Book } from "../../book";
import { namedColumn, namedValue } from "../../named";
import { estimate } from "../names";
import { filledRows, one, readerOf, text } from "./cardWords";

export interface DishOnCard {
  readonly name: string;
  /** Among the dishes, counted from the first row of data. */
  readonly row: number;
  readonly size: string;
  readonly slots: string;
  /** Empty where the head unit on it is its feed. */
  readonly feed: string;
  readonly location: string;
  readonly mounting: string;
  readonly height: string;
  readonly offFocus: string;
  readonly clear: string;
  readonly volts: string;
  readonly conductors: readonly string[];
}

/** @returns the dishes of Dishes, or the one of Site where it has no row */
export function dishesOf(book: Book): DishOnCard[] {
  const { aims, bonds, site, slots } = estimate;
  const { at } = readerOf(book, "dishes");
  const ofBond = readerOf(book, "bonds").at;
  const all = namedColumn(book, slots.slot.name).map(text).filter(Boolean).join(" ");
  const names = namedColumn(book, aims.dish.name);
  const only = filledRows(book, aims.dish.name).length === 1;
  const given = (row: number, key: string, digits: number): string => {
    const value = at(row, key);
    return typeof value === "number" ? one(value, digits) : "";
  };
  return filledRows(book, aims.dish.name).map((row): DishOnCard => {
    const name = text(names[row]);
    const belongs = (bond: number): boolean => {
      const dish = text(ofBond(bond, "dish")).trim();
      return dish === "" ? only : dish.toLowerCase() === name.trim().toLowerCase();
    };
    return {
      name,
      row: row - 1,
      size: given(row, "size", 2) || one(namedValue(book, site.dish.name), 2),
      slots: text(at(row, "slots")) || all,
      feed: text(at(row, "feed")),
      location: text(at(row, "location")),
      mounting: text(at(row, "mounting")),
      height: given(row, "height", 1),
      offFocus: given(row, "off_focus", 1),
      clear: given(row, "seen_clear", 1),
      volts: given(row, "seen_volts", 1),
      conductors: filledRows(book, bonds.where.name)
        .filter(belongs)
        .map((bond) => `${text(ofBond(bond, "where"))}, ${one(ofBond(bond, "size"))} mm²`),
    };
  });
}

/** What is known of a dish in one line; its slots last, because the alignment has them too. */
export const dishInWords = ({ name, size, slots, location, mounting }: DishOnCard): string =>
  [`${name} ${size} m`, location, mounting, slots].filter(Boolean).join(", ");
