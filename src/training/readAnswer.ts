/**
 * What a trainee typed into an answer cell, as people type: a number, text with
 * a decimal comma, a unit behind it, a percentage that the program turned into
 * a share. What can't be read without guessing is left to the trainer.
 */
import { isBookError } from "../workbooks/book";
import type { AnswerKind } from "./exercise";
import { readNumber } from "./readNumber";
import { asDate, typedCell, type TypedCell } from "./typedCell";

export type ReadAnswer =
  | { readonly kind: "blank" }
  /** Ways to read it, the likeliest first. */
  | { readonly kind: "number"; readonly readings: readonly number[]; readonly unit?: string }
  | { readonly kind: "word"; readonly word: string }
  /** An error of the spreadsheet. */
  | { readonly kind: "error"; readonly text: string }
  | { readonly kind: "unclear"; readonly text: string; readonly why: string };

/** Ways to write a unit, by what is asked; money may bear any sign. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  deg: ["°", "degree", "degrees", "deg."],
  m: ["metre", "metres", "meter", "meters"],
  dB: ["db", "decibel", "decibels"],
  dBµV: ["dbµv", "dbuv"],
  ohm: ["ohms", "ω"],
  V: ["v", "volt", "volts"],
  A: ["a", "amp", "amps", "ampere", "amperes"],
  "%": ["percent", "per cent"],
  hours: ["h", "hour"],
};
/** Units that say something else was answered, with what one is in the unit asked for where that is plain. */
const UNITS = [
  ...["deg", "rad", "grad", "m", "ft", "feet", "foot", "in", "mm", "cm", "km", "db", "dbm", "dbmv", "dbµv"],
  ...["v", "volt", "volts", "mv", "a", "ma", "w", "mw", "ohm", "ohms", "kohm", "ghz", "mhz", "%", "percent"],
];
/** Remarks that change nothing. */
const REMARKS = /^(?:rounded|approx\.?|about|roughly|money|[nesw]{1,3})$/i;
const NEGATION = /\b(?:not|no|or|less|more|than|if|wrong|without)\b/i;
const NOTHING = /^(?:[?.\-–—_/]+|n\/?a\.?|none|nothing|(?:i )?do(?:n['’]?t| not) know\.?|dunno|no answer)$/i;
/** Errors by which a formula has lost what it pointed at, or a function that another program lacks. */
const LOST = /^#(?:REF!|NAME\?|VALUE!)$/;
const ERROR = /^#(?:NUM!|DIV\/0!|N\/A|REF!|NAME\?|VALUE!|NULL!)$/;

/** @param raw the answer cell, or its bare value; `undefined` for an empty one */
export function readAnswer(answer: AnswerKind, raw: unknown): ReadAnswer {
  const cell = typedCell(raw);
  const { value } = cell;
  if (value === undefined || (typeof value === "string" && value.trim() === "")) return readEmpty(cell);
  if (typeof value === "string" && NOTHING.test(value.trim())) return { kind: "blank" };
  const error = isBookError(value) ? value.error : typeof value === "string" ? value.trim() : "";
  if (ERROR.test(error)) {
    return LOST.test(error)
      ? unclear(error, `the cell holds the error ${error}: what its formula pointed at is gone`)
      : { kind: "error", text: error };
  }
  if (typeof value === "boolean") return unclear(String(value), "a truth value");
  if (isBookError(value)) return unclear(error, "an error");
  if (answer.kind === "choice") return readWord(answer.choices, value);
  return typeof value === "number" ? readCell(answer.unit, value, cell.format) : readText(answer, value);
}

const unclear = (text: string, why: string): ReadAnswer => ({ kind: "unclear", text, why });

function readEmpty({ formula, note }: TypedCell): ReadAnswer {
  if (formula !== undefined) {
    return unclear(
      `=${formula}`.slice(0, 60),
      "a formula without its result: open the sheet in a spreadsheet program and save it once",
    );
  }
  return note === undefined || note.trim() === ""
    ? { kind: "blank" }
    : unclear(note.slice(0, 60), "the cell is empty, and a note hangs on it");
}

function readCell(unit: string, value: number, format: string | undefined): ReadAnswer {
  const date = format === undefined ? undefined : asDate(value, format);
  if (date) {
    return unclear(
      date.shown,
      `the program made a date or a time of what was typed, perhaps of ${date.meant}`,
    );
  }
  if (unit !== "%") return { kind: "number", readings: [value] };
  if (format === undefined) return { kind: "number", readings: withShare([value]) };
  return { kind: "number", readings: [format.includes("%") ? 100 * value : value] };
}

/** A cell that shows 21.1 % holds 0.211. */
const withShare = (readings: readonly number[]): number[] =>
  readings.flatMap((value) => (Math.abs(value) <= 1 ? [value, value * 100] : [value]));

function readText(answer: AnswerKind & { readonly kind: "number" }, typed: string): ReadAnswer {
  const text = answer.unit === "row" ? typed.trim().replace(/^(?:row|no\.?|number)\s+(?=\d)/i, "") : typed;
  // Only money is written with a point for thousands.
  const found = readNumber(answer.unit === "money" && /^[\d.,]+$/.test(text.trim()) ? `${text} money` : text);
  if (!found) return unclear(typed, "no plain number");
  const { readings, behind, attached } = found;
  const key = behind.toLowerCase().replaceAll("μ", "µ");
  const asked = answer.unit.toLowerCase();
  const number = {
    kind: "number",
    readings: answer.unit === "%" ? withShare(readings) : readings,
  } as const;
  const isUnit = (word: string): boolean => word === asked || (SAME[answer.unit]?.includes(word) ?? false);
  if (key === "" || isUnit(key)) return number;
  if (answer.unit === "money" && /^(?:\p{Sc}|money$)/u.test(behind)) return number;
  if (UNITS.includes(key)) return { ...number, unit: behind };
  const [first, ...others] = key.split(/\s+/);
  if (isUnit(first!) && others.every((word) => REMARKS.test(word))) return number;
  if (REMARKS.test(key)) return number;
  // A count may say of what: "3 head units", "4 Drop cable".
  if (answer.exact && !attached && !NEGATION.test(key)) return number;
  return unclear(typed, `what stands behind the number is not understood: "${behind.slice(0, 30)}"`);
}

/** Words to compare: no case, no quotation marks, no full stop, one sign for "times". */
const tidy = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[“”"‘’']/g, "")
    .replace(/\s*[×*]\s*/g, " x ")
    .replace(/[.!?]+$/g, "")
    .replace(/\s+/g, " ")
    .trim();

const OTHER_WORDS: Readonly<Record<string, string>> = { okay: "ok", "o.k": "ok", "all right": "ok" };

function readWord(choices: readonly string[], value: string | number): ReadAnswer {
  if (typeof value === "number") return unclear(String(value), "a number where a word is asked");
  const known = (text: string): string | undefined =>
    choices.find((choice) => tidy(choice) === (OTHER_WORDS[text] ?? text));
  const whole = tidy(value);
  // A reason in brackets or behind a comma takes nothing away.
  const short = tidy(whole.replace(/\([^()]*\)$/, "").replace(/[,;:].*$/, ""));
  const bare = short.replace(/^(?:it is|its|is|too) /, "");
  for (const text of [whole, short, bare]) {
    const word = known(text);
    if (word !== undefined) return { kind: "word", word };
  }
  return unclear(value, "not one of the list");
}
