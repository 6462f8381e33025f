/**
 * The units in which people give what a column asks for, and what one of each is in the column's own.
 *
 * Sources: SI brochure (2019) for the prefixes; the international foot, inch and yard (1959, exact); degrees
 * Fahrenheit and kelvin by their definitions; 1 mV is 60 dBµV by arithmetic.
 */
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import { EITHER_LENGTH, EITHER_LOAD, type NumberKind, type Quantity } from "./typedKind";

/** Times `by`, plus `plus`, is the value in the quantity's base unit. */
export interface Unit {
  readonly by: number;
  readonly plus?: number;
}

const INCH = METRES_PER_FOOT / 12;
const words = (by: number, ...spellings: string[]): [string, Unit][] => spellings.map((one) => [one, { by }]);

/**
 * Spelled as `asFigures` leaves them and in small letters, full stops left out; a spelling in which the case
 * tells a milli from a mega stands under `AS_SPELLED`.
 */
const UNITS: Readonly<Partial<Record<Quantity, ReadonlyMap<string, Unit>>>> = {
  length: new Map([
    ...words(1, "m", "metre", "metres", "meter", "meters", "mètre", "mètres", "metri", "metro", "metros"),
    ...words(0.01, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    ...words(0.001, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    ...words(1000, "km"),
    ...words(METRES_PER_FOOT, "ft", "foot", "feet", "'"),
    ...words(INCH, '"', "in", "inch", "inches"),
    ...words(3 * METRES_PER_FOOT, "yd", "yds", "yard", "yards"),
  ]),
  frequency: new Map([
    ...words(1, "mhz"),
    ...words(1000, "ghz"),
    ...words(0.001, "khz"),
    ...words(1e-6, "hz"),
  ]),
  temperature: new Map<string, Unit>([
    ...words(1, "°c", "c", "°", "celsius", "°celsius", "deg c"),
    ...["°f", "f", "fahrenheit", "°fahrenheit", "deg f"].map((one): [string, Unit] => [
      one,
      { by: 5 / 9, plus: -160 / 9 },
    ]),
    ["k", { by: 1, plus: -273.15 }],
    ["kelvin", { by: 1, plus: -273.15 }],
  ]),
  level: new Map<string, Unit>([...words(1, "dbμv", "dbuv"), ["dbmv", { by: 1, plus: 60 }]]),
  decibels: new Map(words(1, "db")),
  volts: new Map([
    ...words(1, "v", "volt", "volts", "vdc", "v dc", "v=", "v ="),
    ...words(0.001, "mv"),
    ...words(1000, "kv"),
  ]),
  current: new Map([
    ...words(1, "a", "amp", "amps", "ampere", "amperes", "adc", "a dc"),
    ...words(0.001, "ma"),
    ...words(1e-6, "μa", "ua"),
  ]),
  power: new Map([...words(1, "w", "watt", "watts"), ...words(0.001, "mw"), ...words(1000, "kw")]),
  minutes: new Map([
    ...words(1, "min", "mins", "minute", "minutes", "minuten", "minuter", "minuti", "minutos", "'"),
    ...words(60, "h", "hr", "hrs", "hour", "hours", "std", "stunde", "stunden", "heure", "heures"),
    ...words(60, "tim", "timme", "timmar", "timer", "ora", "ore", "hora", "horas", "uur"),
    ...words(1 / 60, "s", "sec", "secs", "second", "seconds", "sek", "sekunden"),
  ]),
  angle: new Map(words(1, "°", "deg", "degs", "degree", "degrees")),
  pieces: new Map(
    words(
      1,
      "pcs",
      "pc",
      "piece",
      "pieces",
      "off",
      "x",
      "stk",
      "stck",
      "stück",
      "st",
      "-way",
      "way",
      "ways",
      "port",
      "ports",
    ),
  ),
};

/** Mega for milli, by the capital: nobody means it, but it is not unmistakable either. */
const AS_SPELLED = /^M(?:V|A|W)$/;

/** The unit of the base in which `UNITS` counts, where it is not the column's own. */
const OWN: Readonly<Record<string, number>> = { m: 1, ft: METRES_PER_FOOT, km: 1000 };

/** What the value is stored in, and shown as in a sentence; undefined where nobody has said. */
export function storedUnit(
  { unit, quantity }: NumberKind,
  lengths: "m" | "ft" | undefined,
): string | undefined {
  if (unit === EITHER_LENGTH) return lengths;
  if (unit === EITHER_LOAD) return undefined;
  return quantity === "plain" || quantity === "money" ? undefined : unit;
}

/**
 * Turns a number with its unit into the column's own.
 * @param spelled the unit as it was typed, brought to `asFigures`
 * @returns undefined for a unit that does not measure this quantity
 */
export function converterFor(
  { quantity, unit }: NumberKind,
  spelled: string,
  lengths: "m" | "ft" | undefined,
): ((value: number) => number) | undefined {
  const bare = spelled.replace(/\./g, "").trim();
  // A column's own words for its unit, whatever they are.
  if (unit !== undefined && unit !== EITHER_LENGTH && sameUnit(bare, unit)) return (value) => value;
  if (AS_SPELLED.test(bare)) return undefined;
  const found = UNITS[quantity]?.get(bare.toLowerCase());
  const own = quantity === "length" ? OWN[storedUnit({ kind: "number", quantity, unit }, lengths) ?? ""] : 1;
  if (!found || own === undefined) return undefined;
  // A bare "in" among metres is as likely a word that was not finished.
  if (bare.toLowerCase() === "in" && own !== METRES_PER_FOOT) return undefined;
  const { by, plus = 0 } = found;
  return own === by && plus === 0 ? (value) => value : (value) => rounded((value * by + plus) / own);
}

/** From metres into the column's own unit; NaN where that is not known. */
export const fromMetresInto = (unit: string | undefined, metres: number): number =>
  rounded(metres / (OWN[unit ?? ""] ?? NaN));

/** To a millionth of the unit, far below what anybody measures: a conversion leaves no tail of digits. */
export const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

const sameUnit = (one: string, other: string): boolean => plainUnit(one) === plainUnit(other);
const plainUnit = (unit: string): string =>
  unit
    .normalize("NFKC")
    .toLowerCase()
    .replace(/\s*\/\s*/g, " per ")
    .replace(/\s+/g, " ");
