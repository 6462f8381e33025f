/**
 * How tightly operators bind, as in Excel: references first, then a sign, percent,
 * powers, and comparisons last. So -2^2 is 4. Source: Microsoft, "Calculation
 * operators and precedence in Excel", from memory.
 */
import type { Operator } from "./tree";

export const BINDING: Readonly<Record<Operator, number>> = {
  ":": 90,
  " ": 85,
  ",": 80,
  "^": 50,
  "*": 40,
  "/": 40,
  "+": 30,
  "-": 30,
  "&": 20,
  "=": 10,
  "<>": 10,
  "<": 10,
  ">": 10,
  "<=": 10,
  ">=": 10,
};

/** Of a sign before and a percent sign behind. */
export const SIGN_BINDING = 70;
