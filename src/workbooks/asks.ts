/** What an input asks for: the rule of its cell with the words of its hint. */
import type { Named } from "../formula/build";
import type { InputRule } from "./definition";

type More = Omit<InputRule, "what" | "rule">;

export const anyText = (what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "text" },
});

export const day = (what: string, more: More = {}): InputRule => ({ what, ...more, rule: { kind: "date" } });

export const orbitalSlot = (what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "slot" },
});

export const anyNumber = (what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "number" },
});

export const number = (min: number, max: number, what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "number", min, max },
});

export const whole = (min: number, max: number, what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "number", min, max, integer: true },
});

export const oneOf = (choices: readonly string[], what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "choice", choices },
});

/** A number, or one of the words that say as much: a meter that shows "no signal" was read. */
export const numberOr = (
  orWords: readonly string[],
  min: number,
  max: number,
  what: string,
  more: More = {},
): InputRule => ({ what, ...more, rule: { kind: "number", min, max, orWords } });

/** A word of a list on another sheet. */
export const nameIn = (list: Named, what: string, more: More = {}): InputRule => ({
  what,
  ...more,
  rule: { kind: "named", name: list.name },
});

/** A port of what feeds: its number, or the port that a line goes on through. */
export const portOf = (what: string): InputRule => numberOr(["through"], 1, 64, what, { example: "2" });
