/**
 * Names that calculated cells had in earlier versions of a template, with those
 * of today: so what reads a filled workbook by its names finds them in an older
 * one. Inputs have kept their names from the first version on.
 */
import type { Book } from "./book";

/** Beginnings of a block's names. */
const BLOCKS: Readonly<Record<string, string>> = {
  buycables: "cables_bought",
  buypassives: "passives_bought",
  buyunits: "units_bought",
  buysupplies: "supplies_bought",
  buyplates: "plates_bought",
  buyfittings: "fittings_bought",
  bykind: "kinds_priced",
  quoteoptions: "options_quoted",
  quoteassumptions: "assumptions_quoted",
  quoteexclusions: "exclusions_quoted",
};

const CELLS: Readonly<Record<string, string>> = {
  heads_parting: "heads_shared_end",
  price_drift: "price_expected_extra",
  price_line_outlets: "price_line_fittings",
  price_outlets: "price_fittings",
  price_part_outlets: "price_part_fittings",
  price_times_outlets: "price_times_fittings",
  rooms_bearable: "rooms_check_high",
  rooms_drift: "rooms_expected_extra",
  rooms_enough: "rooms_check_low",
  rooms_even: "rooms_slope_check",
  rooms_fits: "rooms_check",
  rooms_fits_bearable: "rooms_check_high",
  rooms_fits_enough: "rooms_check_low",
  rooms_own: "rooms_parts_cost",
  rooms_within: "rooms_stretched_check",
};

/** @returns undefined for a name that is today's already, or gone */
export function todaysName(name: string): string | undefined {
  const cell = CELLS[name];
  if (cell !== undefined) return cell;
  const [block, ...column] = name.split("_");
  const today = BLOCKS[block!];
  return today === undefined || column.length === 0 ? undefined : [today, ...column].join("_");
}

/**
 * The old names stay beside those of today, because the workbook's own formulas go by them.
 *
 * @returns the same book where it has no name of an earlier version
 */
export function withTodaysNames(book: Book): Book {
  const had = new Set(book.names.map(({ name }) => name));
  const today = book.names.flatMap((one) => {
    const name = todaysName(one.name);
    return name === undefined || had.has(name) ? [] : [{ ...one, name }];
  });
  return today.length === 0 ? book : { ...book, names: [...book.names, ...today] };
}
