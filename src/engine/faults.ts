/**
 * Every fault that the engine or a function can answer with.
 *
 * A fault is a value, not an exception: a code that a spreadsheet can show and
 * one sentence that says what is wrong, the value seen, the range allowed with
 * its unit, and what to do. Only `#VALUE!` and `#N/A` are used, because those
 * are the two codes with which Excel shows a sentence of ours.
 */

export type FaultCode = "#VALUE!" | "#N/A";

export interface Fault {
  readonly kind: "fault";
  readonly code: FaultCode;
  readonly message: string;
}

const fault = (code: FaultCode, message: string): Fault => ({ kind: "fault", code, message });

export const isFault = (value: unknown): value is Fault =>
  typeof value === "object" && value !== null && (value as Fault).kind === "fault";

/** A value as it is shown inside a sentence: text in quotes, cut at 40 characters. */
export function shown(value: unknown): string {
  if (typeof value === "string") {
    return `"${value.length > 40 ? `${value.slice(0, 39)}…` : value}"`;
  }
  if (typeof value === "number") {
    return Object.is(value, -0)
      ? "0"
      : String(Number.isInteger(value) ? value : Number(value.toPrecision(8)));
  }
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value === null || value === undefined ? "nothing" : "something that is neither number nor text";
}

export interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** The lower limit itself is refused. */
  readonly aboveMin?: boolean;
  readonly integer?: boolean;
  readonly unit?: string;
}

/** "from 0 to 90 deg", "more than 0 m", "a whole number from 1 to 32". */
export function limitsInWords({ min, max, aboveMin, integer, unit }: Limits): string {
  const tail = unit ? ` ${unit}` : "";
  const kind = integer ? "a whole number " : "";
  if (min !== undefined && max !== undefined) {
    return aboveMin
      ? `${kind}more than ${min} and at most ${max}${tail}`
      : `${kind}from ${min} to ${max}${tail}`;
  }
  if (min !== undefined) return aboveMin ? `${kind}more than ${min}${tail}` : `${kind}${min}${tail} or more`;
  if (max !== undefined) return `${kind}${max}${tail} or less`;
  return `${integer ? "a whole number" : "a number"}${unit ? ` in ${unit}` : ""}`;
}

export const faults = {
  missing: (name: string, what: string): Fault => fault("#VALUE!", `${name} is missing. Give ${what}.`),

  notANumber: (name: string, value: unknown, limits: Limits): Fault =>
    fault("#VALUE!", `${name} is ${shown(value)}, which is not a number. Give ${limitsInWords(limits)}.`),

  decimalComma: (name: string, value: string, suggestion: string): Fault =>
    fault(
      "#VALUE!",
      `${name} is ${shown(value)}, text with a decimal comma. Write ${suggestion}, or set the cell to a number.`,
    ),

  outOfRange: (name: string, value: number, limits: Limits, advice = "Check the value and its unit"): Fault =>
    fault(
      "#VALUE!",
      `${name} is ${shown(value)}${limits.unit ? ` ${limits.unit}` : ""}; it must be ${limitsInWords(limits)}. ${advice}.`,
    ),

  notText: (name: string, value: unknown, what: string): Fault =>
    fault("#VALUE!", `${name} is ${shown(value)}, which is not text. Give ${what}.`),

  notAChoice: (name: string, value: unknown, choices: readonly string[]): Fault =>
    fault("#VALUE!", `${name} is ${shown(value)}; it must be one of ${choices.map(shown).join(", ")}.`),

  notASlot: (name: string, value: unknown): Fault =>
    fault(
      "#VALUE!",
      `${name} is ${shown(value)}, which is not an orbital slot. Give degrees east from -180 to 180, or text such as 97W or 28.2E.`,
    ),

  notADate: (name: string, value: unknown): Fault =>
    fault(
      "#VALUE!",
      `${name} is ${shown(value)}, which is not a date. Give a date cell, text such as 2026-07-04, or a decimal year from 1900 to 2200.`,
    ),

  errorCell: (name: string, code: string): Fault =>
    fault("#VALUE!", `${name} holds the error ${code}. Put that cell right first.`),

  badShape: (name: string, rows: number, columns: number, what: string): Fault =>
    fault("#VALUE!", `${name} is ${rows} rows by ${columns} columns; it must be ${what}.`),

  shortColumn: (name: string, have: number, need: number): Fault =>
    fault(
      "#N/A",
      `${name} has ${have} entries where the other columns have ${need}. Give columns of one length.`,
    ),

  tooManyArguments: (name: string, have: number, most: number): Fault =>
    fault("#VALUE!", `${name} was given ${have} arguments; it takes ${most} at the most.`),

  unknownFunction: (name: string): Fault =>
    fault("#N/A", `There is no function ${name}. Look in the function list for the right name.`),

  underTheSlot: (latitude: number, slot: number): Fault =>
    fault(
      "#VALUE!",
      `The site at latitude ${shown(latitude)} deg lies straight under the slot at ${shown(slot)} deg east, where an azimuth has no meaning. Aim the dish at the zenith.`,
    ),

  noResult: (name: string): Fault =>
    fault(
      "#VALUE!",
      `${name} has no finite answer for these values. Check the values and their units, above all very large ones.`,
    ),

  broken: (name: string, detail: string): Fault =>
    fault(
      "#VALUE!",
      `${name} failed inside (${detail}). This is a mistake in Rigsheet: please report it with the values used.`,
    ),
} as const;
