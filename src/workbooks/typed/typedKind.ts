/** What a column or field may hold, as the reader of typed values has to know it. */
import type { Format, InputRule } from "../definition";

/** What a number measures; `plain` for one that takes no unit but the column's own. */
export type Quantity =
  | "length"
  | "money"
  | "share"
  | "frequency"
  | "temperature"
  | "level"
  | "decibels"
  | "volts"
  | "current"
  | "power"
  | "minutes"
  | "latitude"
  | "longitude"
  | "angle"
  | "pieces"
  | "plain";

export interface NumberKind {
  readonly kind: "number";
  readonly quantity: Quantity;
  /** Of the value that is stored; `m or ft` is the one that the workbook names. */
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly integer?: boolean;
  /** Words that are taken as well. */
  readonly orWords?: readonly string[];
}

export type TypedKind =
  | NumberKind
  | { readonly kind: "text"; readonly maxLength: number }
  | { readonly kind: "date"; readonly min: number; readonly max: number }
  | { readonly kind: "slot" }
  /** One of the words; where it is `open`, a text that is none of them is taken as well. */
  | { readonly kind: "choice"; readonly choices: readonly string[]; readonly open?: boolean }
  /** The names of a list that stands elsewhere in the workbook: whoever knows it makes an open choice of it. */
  | { readonly kind: "named"; readonly name: string };

export const EITHER_LENGTH = "m or ft";
export const EITHER_LOAD = "A or W";

/** By the unit that a column names beside its head. */
const BY_UNIT: Readonly<Record<string, Quantity>> = {
  m: "length",
  ft: "length",
  km: "length",
  [EITHER_LENGTH]: "length",
  MHz: "frequency",
  "°C": "temperature",
  dBµV: "level",
  dB: "decibels",
  V: "volts",
  A: "current",
  W: "power",
  min: "minutes",
  "deg north": "latitude",
  "deg east": "longitude",
  deg: "angle",
  "deg magnetic": "angle",
  pieces: "pieces",
  ports: "pieces",
  ways: "pieces",
  money: "money",
};

const DATE_MIN = 36_526; // 2000-01-01
const DATE_MAX = 73_050; // 2099-12-31
export const DATES = { min: DATE_MIN, max: DATE_MAX } as const;
export const LONGEST_TEXT = 250;

/** A column or a field of a definition. */
export interface Asked {
  readonly input?: InputRule;
  readonly unit?: string;
  readonly format?: Format;
}

/** @returns undefined for what nobody fills */
export function typedKind({ input, unit, format }: Asked): TypedKind | undefined {
  if (!input) return undefined;
  const { rule } = input;
  switch (rule.kind) {
    case "text":
      return { kind: "text", maxLength: LONGEST_TEXT };
    case "date":
      return { kind: "date", ...DATES };
    case "number":
      return { ...rule, quantity: quantityOf(unit, format), ...(unit !== undefined && { unit }) };
    default:
      return rule;
  }
}

function quantityOf(unit: string | undefined, format: Format | undefined): Quantity {
  if (format === "percent") return "share";
  if (format === "money") return "money";
  return (unit !== undefined && Object.hasOwn(BY_UNIT, unit) && BY_UNIT[unit]) || "plain";
}
