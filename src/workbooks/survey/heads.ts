/** The columns of a site survey: what their heads may be called, and the unit that a head names. */
import { textOf, type ImportedLine } from "../imported/table";

/**
 * What people call a column, in the languages of the writings that a workbook can choose; compared without
 * capitals, blanks at the ends and the unit. The first is what we call it.
 */
const HEADS: Readonly<Record<string, readonly string[]>> = {
  floor: [
    "floor",
    "storey",
    "level",
    "building",
    "etage",
    "étage",
    "geschoss",
    "stockwerk",
    "piano",
    "våning",
  ],
  room: ["room", "location", "suite", "zimmer", "raum", "pièce", "chambre", "stanza", "habitación", "rum"],
  outlet: [
    "outlet",
    "outlet id",
    "outlet no",
    "outlet name",
    "id",
    "point",
    "drop",
    "drop id",
    "dose",
    "prise",
    "presa",
    "toma",
    "uttag",
  ],
  receiver: ["receiver", "receiver kind", "kind", "gerät", "récepteur", "ricevitore"],
  quantity: ["quantity", "receivers", "qty", "pieces", "how many", "anzahl", "quantité"],
  from: ["fed from", "from", "device", "splitter", "branch", "feed"],
  cable: ["cable", "cable type", "kabel", "câble"],
  run: [
    "run",
    "length",
    "cable length",
    "run length",
    "length to riser",
    "länge",
    "kabellänge",
    "longueur",
    "lunghezza",
    "longitud",
    "längd",
  ],
  plate: ["wall plate", "plate"],
  shortest: ["shortest run", "shortest"],
  longest: ["longest run", "longest"],
  route: ["route", "cable route", "way"],
  port: ["port", "port no"],
  split: ["split by"],
  kept: ["user bands kept", "kept user bands"],
  kind: ["price group", "room kind", "room type"],
  note: ["note", "notes", "remark", "remarks", "comment", "comments", "bemerkung", "bemerkungen", "remarque"],
};
const KEYS: ReadonlyMap<string, string> = new Map(
  Object.entries(HEADS).flatMap(([key, heads]) => heads.map((head): [string, string] => [head, key])),
);
export const NEEDED = ["outlet", "run"] as const;
/** Columns that hold a length. */
export const LENGTHS: ReadonlySet<string> = new Set(["run", "shortest", "longest"]);
/** Columns that hold a number. */
export const FIGURES: ReadonlySet<string> = new Set([...LENGTHS, "quantity", "port"]);
/** The survey's heads as we write them, and the columns of the Rooms block that they fill. */
export const SURVEY_HEADS = [
  "floor",
  "room",
  "outlet",
  "receiver",
  "quantity",
  "fed from",
  "cable",
  "run (m)",
  "wall plate",
  "note",
  "route",
  "user bands kept",
];
export const SURVEY_KEYS = [
  "floor",
  "room",
  "outlet",
  "receiver",
  "quantity",
  "from",
  "cable",
  "run",
  "plate",
  "note",
  "route",
  "kept",
];

/** What we call a column. */
export const nameOf = (key: string): string => HEADS[key]![0]!;

export interface Head {
  readonly line: ImportedLine;
  /** Its place among the filled lines. */
  readonly index: number;
  /** Where each column lies, by its key. */
  readonly columns: ReadonlyMap<string, number>;
  /** Every column that an estimate needs is there. */
  readonly fits: boolean;
}

/** A survey may begin with a title and a few words; its head stands within so many lines. */
const HEAD_WITHIN = 20;

/** @returns the first line that has all the heads needed, or else the one that has most of them */
export function findHead(filled: readonly ImportedLine[]): Head | undefined {
  let best: Head | undefined;
  for (const [index, line] of filled.entries()) {
    if (line.line > HEAD_WITHIN && best) break;
    const columns = columnsOf(line);
    const fits = NEEDED.every((key) => columns.has(key));
    if (!best || fits || columns.size > best.columns.size) best = { line, index, columns, fits };
    if (fits) break;
  }
  return best;
}

/** No head is as long: patterns are not tried on a page of text. */
const LONGEST_HEAD = 60;

export function columnsOf({ cells }: ImportedLine): Map<string, number> {
  const columns = new Map<string, number>();
  for (const [index, cell] of cells.entries()) {
    const text = textOf(cell);
    const key = text.length > LONGEST_HEAD ? undefined : KEYS.get(plainHead(text));
    if (key && !columns.has(key)) columns.set(key, index);
  }
  return columns;
}

const UNIT_AT_END = /(?:^|[\s,_/])(?:in )?(m|ft|feet|foot|metres?|meters?)\.?$/i;

const plainHead = (text: string): string =>
  text
    .toLowerCase()
    .normalize("NFC")
    .replace(/[([].*$/, "")
    .replace(/[_\s]+/g, " ")
    .trim()
    .replace(UNIT_AT_END, "")
    .replace(/[:*.,\s]+$/, "");

/** The unit that a head names: `run (ft)`, `Run [m]`, `length_m`; undefined where it names none. */
export function unitNamed(head: string): string | undefined {
  if (head.length > LONGEST_HEAD) return undefined;
  const bracketed = /[([]\s*([^)\]]*?)\s*[)\]]/.exec(head)?.[1];
  const named = (bracketed ?? UNIT_AT_END.exec(head.trim())?.[1])?.toLowerCase();
  return named === EITHER ? undefined : named;
}

/** Our own workbooks name a length's unit so: it is the one that Site names. */
const EITHER = "m or ft";
/** Below a head row some people, and our own workbooks, write the units. */
const UNIT_BELOW = /^[([]?\s*(m or ft|m|ft|feet|foot|metres?|meters?)\.?\s*[)\]]?$/i;

/** Whether the line holds units rather than an outlet. */
export function isUnitLine({ cells }: ImportedLine, { columns }: Head): boolean {
  const at = (key: string): string => textOf(cells[columns.get(key)!]);
  return at("outlet") === "" && at("receiver") === "" && UNIT_BELOW.test(at("run"));
}

/** The unit that a line of units has for a column; undefined where it has none. */
export function unitBelow(line: ImportedLine, column: number): string | undefined {
  const named = UNIT_BELOW.exec(textOf(line.cells[column]))?.[1]?.toLowerCase();
  return named === EITHER ? undefined : named;
}

/** @returns undefined for a unit that is not known */
export function knownUnit(named: string): "m" | "ft" | undefined {
  if (/^(m|metres?|meters?)\.?$/.test(named)) return "m";
  return /^(ft|feet|foot|'|′)\.?$/.test(named) ? "ft" : undefined;
}
