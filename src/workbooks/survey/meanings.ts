/** What a column of a site survey can be taken for: the inputs of Rooms, and two that only a survey has. */
import type { ColumnMeaning } from "../imported/columns";
import { rooms } from "../multiRoom/names/rooms";
import { OF, type ColumnWords } from "../names";

/** A length that is added to the run: what was measured in two parts. */
export const FURTHER = "further";
/** How many outlets the line stands for. */
export const OUTLETS = "outlets";

export const LENGTH_UNITS = ["m", "ft", "cm", "mm", "in", "yd"] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Columns that hold a length. */
export const LENGTHS: ReadonlySet<string> = new Set(["run", FURTHER, "shortest", "longest"]);
/** Columns that hold a number. */
export const FIGURES: ReadonlySet<string> = new Set([...LENGTHS, "quantity", "port", OUTLETS]);
/** Without them a survey is none. */
export const NEEDED = ["outlet", "run"] as const;

const KEYS = [
  "floor",
  "room",
  "outlet",
  "receiver",
  "quantity",
  "from",
  "cable",
  "run",
  FURTHER,
  "shortest",
  "longest",
  "plate",
  "note",
  "route",
  "port",
  "split",
  "kept",
  "kind",
  "type",
  OUTLETS,
] as const;

const OWN: Readonly<Record<string, string>> = {
  [FURTHER]: "Run, a further part",
  [OUTLETS]: "How many outlets on the line",
};

/** The column of the Rooms block itself says what it takes. */
export const columnOf = (key: string): ColumnWords =>
  (rooms[OF].columns as Readonly<Record<string, ColumnWords>>)[
    key === FURTHER ? "run" : key === OUTLETS ? "quantity" : key
  ]!;

/** As people call a column. */
export const nameOf = (key: string): string => OWN[key] ?? columnOf(key).head;

export const MEANINGS: readonly ColumnMeaning[] = KEYS.map((key) => ({
  key,
  name: nameOf(key),
  ...(LENGTHS.has(key) && { units: LENGTH_UNITS }),
  ...((NEEDED as readonly string[]).includes(key) && { needed: true }),
  ...((key === "note" || key === FURTHER) && { several: true }),
}));

/** A bare number in the unit, in metres. */
const IN_METRES: Readonly<Record<LengthUnit, number>> = {
  m: 1,
  ft: 0.3048,
  cm: 0.01,
  mm: 0.001,
  in: 0.0254,
  yd: 0.9144,
};

export const factorBetween = (from: LengthUnit, to: LengthUnit): number =>
  from === to ? 1 : IN_METRES[from] / IN_METRES[to];

const SPELLED: Readonly<Record<LengthUnit, RegExp>> = {
  m: /^(?:m|mtrs?|lm|lfm|ml|lfdm|metres?|meters?|m[eè]tres?|metri|metros?)$/,
  ft: /^(?:ft|feet|foot|')$/,
  cm: /^(?:cm|centimet(?:re|er)s?)$/,
  mm: /^(?:mm|millimet(?:re|er)s?)$/,
  in: /^(?:in|inch|inches|")$/,
  yd: /^(?:yds?|yards?)$/,
};

/** @returns undefined for a word that is no unit of length */
export const unitSpelled = (word: string): LengthUnit | undefined => {
  const plain = word.toLowerCase().replace(/\.$/, "").replace("′", "'").trim();
  return LENGTH_UNITS.find((unit) => SPELLED[unit].test(plain));
};
