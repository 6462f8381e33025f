/**
 * Names that calculated cells had in earlier versions of a template, with those
 * of today: so what reads a filled workbook by its names finds them in an older
 * one. Inputs keep their names; those that went are in `multiRoom/givenUp.ts`.
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
  branches_fed: "branches_level_used",
  branches_head: "branches_level_head",
  heads_bands: "heads_fed_bands",
  heads_current: "heads_fed_amps",
  heads_level_high_cold: "heads_fed_high_cold",
  heads_level_high_hot: "heads_fed_high_hot",
  heads_level_low_cold: "heads_fed_low_cold",
  heads_level_low_hot: "heads_fed_low_hot",
  heads_power: "heads_check_power",
  heads_tuners: "heads_fed_tuners",
  heads_volts: "heads_fed_least",
  price_drift: "price_expected_extra",
  price_line_outlets: "price_line_fittings",
  price_outlets: "price_fittings",
  price_part_outlets: "price_part_fittings",
  price_times_outlets: "price_times_fittings",
  rooms_bands: "rooms_place_bands",
  rooms_check_low: "rooms_check_level",
  rooms_commands: "rooms_check_commands",
  rooms_drift: "rooms_expected_extra",
  rooms_enough: "rooms_check_level",
  rooms_even: "rooms_check_slope",
  rooms_fits_enough: "rooms_check_level",
  rooms_head: "rooms_place_head",
  rooms_own: "rooms_parts_cost",
  rooms_slope_check: "rooms_check_slope",
  rooms_stretched: "rooms_level_stretched",
  rooms_tuners: "rooms_place_tuners",
  rooms_within: "rooms_stretched_check",
};

const SHEETS: Readonly<Record<string, string>> = { Branches: "Distribution" };

/** @returns what a sheet of the template is called today; the same where it has kept its name */
export const todaysSheet = (name: string): string => SHEETS[name] ?? name;

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
