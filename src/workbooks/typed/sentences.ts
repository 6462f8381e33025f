/** What is said when a typed value is not taken: why, and what to type. The cell keeps what it had. */
import { EITHER_LOAD, type NumberKind } from "./typedKind";
import { WRITING_LABEL } from "./writing";

const LONGEST_SHOWN = 60;
const quoted = (text: string): string =>
  `“${text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN - 1)}…` : text}”`;

/** What each measures, and how it is typed. */
const WAYS: Readonly<
  Record<NumberKind["quantity"], (unit: string | undefined) => readonly [what: string, how: string]>
> = {
  length: (unit) =>
    unit === undefined
      ? ["a length", "it as a number alone: nothing names the unit of this workbook's lengths yet"]
      : unit === "ft"
        ? ["a length", `it in ft, or with its unit: 41.5, 41' 6" or 12.6 m`]
        : ["a length", `it in ${unit}, or with its unit: 9.5, 950 cm or 31' 2"`],
  money: () => ["a price", "a number, such as 47.27"],
  share: () => ["a share", "it with its sign: 20% or 0.5%"],
  frequency: () => ["a frequency", "it in MHz, or with its unit: 1200 or 1.2 GHz"],
  temperature: () => ["a temperature", "it in °C, or with its unit: -15, 55 °C or 131 °F"],
  level: () => ["a level", "it in dBµV, or with its unit: 61.5, 61.5 dBµV or 1.5 dBmV"],
  decibels: () => ["a number of decibels", "it in dB: 3.5 or 3.5 dB"],
  volts: () => ["a voltage", "it in V, or with its unit: 18, 18 V or 18000 mV"],
  current: () => ["a current", "it in A, or with its unit: 0.35 or 350 mA"],
  power: () => ["a power", "it in W: 7.2 or 7.2 W"],
  minutes: () => ["a time", "it in minutes, or with its unit: 90, 1.5 h or 1 h 30 min"],
  latitude: () => ["a latitude", "it in degrees north, or with its letter: 51.5, 51.5 N or 33.9 S"],
  longitude: () => ["a longitude", "it in degrees east, or with its letter: -0.12, 0.12 W or 8.54 E"],
  angle: () => ["an angle", "it in degrees: 22.6 or 22.6°"],
  pieces: () => ["a count", "a number, such as 4"],
  plain: (unit) =>
    unit === EITHER_LOAD
      ? ["a load", "the number alone, and choose A or W beside it"]
      : ["a number", `one${unit ? ` (${unit})` : ""}, such as 2.5`],
};

export const sentences = {
  notTaken: (text: string, kind: NumberKind, unit: string | undefined): string => {
    const [what, how] = WAYS[kind.quantity](unit);
    return `${quoted(text)} can't be read as ${what}. Type ${how}.`;
  },

  twoNumbers: (text: string, grouped: string, decimal: string): string =>
    `${quoted(text)} can be ${grouped} or ${decimal}. Type ${grouped} or ${decimal}.`,

  outOfRange: (text: string, shown: string, limits: string): string =>
    `${quoted(text)} is ${shown}; here it must be ${limits}. Check the number and its unit.`,

  orWords: (words: readonly string[]): string => `Or type ${words.map(quoted).join(" or ")}.`,

  notWhole: (text: string): string => `${quoted(text)} is not a whole number. Type one, such as 4.`,

  bareShare: (text: string, asShare: string, asPercent: string): string =>
    `${quoted(text)} can be ${asShare} or ${asPercent}. Type it with its sign: ${asShare} or ${asPercent}.`,

  otherMoney: (text: string, currency: string | undefined): string =>
    `${quoted(text)} names a currency, and ${
      currency
        ? `the prices here are in “${currency}”. Type the sum in it, as a number alone`
        : "none is named for the prices here. Type the sum as a number alone"
    }.`,

  notSlot: (text: string): string =>
    `${quoted(text)} is no orbital slot. Type its degrees from 0 to 180 with E or W behind them, such as 97W or 13.5E.`,

  notDate: (text: string): string =>
    `${quoted(text)} is no date that can be read. Type year, month and day, such as 2026-11-27, or the month as a word, such as 27 Nov 2026.`,

  noSuchDay: (text: string): string =>
    `${quoted(text)} is no day of the calendar. Type one such as 2026-11-27.`,

  twoDates: (text: string, days: readonly string[], chosen: string | undefined): string =>
    `${quoted(text)} can be ${days.join(" or ")}. Type it so${
      chosen === undefined
        ? `, or choose how dates are typed under “${WRITING_LABEL}”`
        : `: “${chosen}” has no one order for it`
    }.`,

  wrongOrder: (text: string, day: string, chosen: string): string =>
    `${quoted(text)} has no such month: “${WRITING_LABEL}” is “${chosen}”. Type ${day} if that is meant.`,

  dateBeyond: (text: string, first: string, last: string): string =>
    `${quoted(text)} lies outside of ${first} to ${last}. Check the year.`,

  noChoice: (text: string, choices: readonly string[]): string =>
    `${quoted(text)} is not among the words for this cell. Type or choose one of: ${list(choices)}.`,

  tooLong: (length: number, most: number): string =>
    `That is ${length} characters long; a cell for text takes ${most}. Shorten it.`,
};

const MOST_LISTED = 12;
const list = (choices: readonly string[]): string =>
  choices.length > MOST_LISTED
    ? `${choices.slice(0, MOST_LISTED).join(", ")}, … (${choices.length} in all)`
    : choices.join(", ");
