/**
 * A calculation laid open line by line, so that a trainee can follow it and a
 * clerk can check it with a pocket calculator.
 */

export interface Step {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number | string;
  readonly unit: string;
  /** The arithmetic with its numbers filled in; angles in degrees. Empty for what was given. */
  readonly line: string;
  readonly source: string;
}

/** Where a step's number comes from when it is an argument. */
const GIVEN = "your figure, or its default";

/** Digits shown of a number within a line; the value beside it has them all. */
const DIGITS = 8;

const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/**
 * A line of arithmetic with its numbers filled in: arithmetic`${a}·√(${f})`. A
 * negative number gets brackets, so that 3 − (-2) can be read, unless it has them.
 */
export const arithmetic = (words: TemplateStringsArray, ...numbers: number[]): string =>
  words.reduce((line, word, index) => {
    const number = short(numbers[index - 1]!);
    const enclosed = /[(;] ?$/.test(line) && /^[;)]/.test(word);
    return line + (number.startsWith("-") && !enclosed ? `(${number})` : number) + word;
  });

/** Collects steps. Each call hands its value back, for the lines that follow. */
export class Working {
  readonly steps: Step[] = [];

  /** What the person put in. */
  given<V extends number | string>(symbol: string, meaning: string, value: V, unit = ""): V {
    this.steps.push({ symbol, meaning, value, unit, line: "", source: GIVEN });
    return value;
  }

  /** A figure taken from a table, a standard or nature. */
  taken(symbol: string, meaning: string, value: number, unit: string, source: string): number {
    this.steps.push({ symbol, meaning, value, unit, line: "", source });
    return value;
  }

  /** A line worked out from those above it. */
  worked(symbol: string, meaning: string, value: number, unit: string, line: string, source: string): number {
    this.steps.push({ symbol, meaning, value, unit, line, source });
    return value;
  }
}
