/** The outsider's cases of typed values, and how an answer is held against one. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { isoDate } from "../../../src/workbooks/sheetDate";
import { DATES, LONGEST_TEXT, type TypedKind } from "../../../src/workbooks/typed/typedKind";

export const TYPED_FIXTURES = path.join(__dirname, "../../fixtures/typed");

interface Expected {
  readonly reads?: string | number | null;
  readonly refused?: true;
}

export interface TypedCase {
  readonly id: string;
  readonly column: string;
  readonly locale: string;
  readonly typed: string;
  readonly expect: Expected;
  readonly alsoAcceptable?: readonly Expected[];
  readonly never?: readonly (string | number)[];
  readonly currency?: string;
  readonly axis?: "latitude" | "longitude";
  readonly choices?: readonly string[];
  readonly why: string;
}

export const typedCases = JSON.parse(
  readFileSync(path.join(TYPED_FIXTURES, "typed-values.json"), "utf8"),
) as readonly TypedCase[];

/** What a cell came to hold; undefined is a blank one. */
export type Outcome = { readonly value: number | string | undefined } | { readonly refused: string };

const number = (quantity: string, min: number, max: number, unit?: string): TypedKind =>
  ({ kind: "number", quantity, min, max, unit }) as TypedKind;

/** Limits as our own columns of the kind have them, or wider. */
const KINDS: Readonly<Record<string, TypedKind>> = {
  name: { kind: "text", maxLength: LONGEST_TEXT },
  text: { kind: "text", maxLength: LONGEST_TEXT },
  length_m: number("length", 0, 2000, "m or ft"),
  length_ft: number("length", 0, 2000, "m or ft"),
  money: number("money", 0, 10_000_000, "money"),
  percent: number("share", 0, 1, "share"),
  whole: { ...number("pieces", 0, 10_000, "pieces"), integer: true } as TypedKind,
  slot: { kind: "slot" },
  latitude: number("latitude", -90, 90, "deg north"),
  longitude: number("longitude", -180, 180, "deg east"),
  mhz: number("frequency", 5, 50_000, "MHz"),
  db: number("decibels", -60, 60, "dB"),
  dbuv: number("level", 0, 140, "dBµV"),
  celsius: number("temperature", -60, 90, "°C"),
  amps: number("current", 0, 20, "A"),
  volts: number("volts", 0, 100, "V"),
  minutes: number("minutes", 0, 10_000, "min"),
  date: { kind: "date", ...DATES },
};

export const kindFor = ({ column, axis, choices }: TypedCase): TypedKind =>
  choices ? { kind: "choice", choices } : KINDS[axis ?? column]!;

/** `right` is the maker's first choice, `soft` another that does no harm, `never` one that does. */
export type Verdict = "right" | "soft" | "wrong" | "never";

export function verdictOf(one: TypedCase, outcome: Outcome): Verdict {
  const fits = ({ refused, reads }: Expected): boolean =>
    "refused" in outcome ? refused === true : !refused && same(one, reads, outcome.value);
  if (!("refused" in outcome) && one.never?.some((value) => same(one, value, outcome.value))) return "never";
  if (fits(one.expect)) return "right";
  return one.alsoAcceptable?.some(fits) ? "soft" : "wrong";
}

function same({ column }: TypedCase, wanted: string | number | null | undefined, got: unknown): boolean {
  if (wanted === null || wanted === undefined || got === undefined)
    return wanted === null && got === undefined;
  if (column === "date" && typeof got === "number" && typeof wanted === "string")
    return isoDate(got) === wanted;
  if (column === "slot") return plainSlot(got) === plainSlot(wanted);
  // Our shares are stored as sheets store them, 20 % as 0.2.
  const value = column === "percent" && typeof got === "number" ? got * 100 : got;
  if (typeof wanted !== "number" || typeof value !== "number") return wanted === value;
  return Math.abs(value - wanted) <= 1e-6 * Math.max(Math.abs(wanted), 1e-9);
}

const plainSlot = (slot: unknown): string => String(slot).replace(/[\s°]/g, "").toUpperCase();
