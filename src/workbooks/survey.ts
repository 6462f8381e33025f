/**
 * Understands a site survey: a table of outlets, one a line, with a head row.
 * Each bad line is reported by its number and reason; none is repaired.
 */
import { faults, isFault, type Fault } from "../engine/faults";
import { METRES_PER_FOOT } from "../engine/signal/lengthUnits";
import { number } from "../functions/core/parameters";

/** A line of the file with its number, counted from 1. */
export interface SurveyLine {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface SurveyTrouble {
  readonly line: number;
  readonly reason: string;
}

export interface Survey {
  /** Rows for the Rooms block, by column key. */
  readonly rows: readonly Readonly<Record<string, number | string>>[];
  readonly troubles: readonly SurveyTrouble[];
}

/** What a column of the survey may be called; compared without case, blanks and the unit in brackets. */
const HEADS: Readonly<Record<string, readonly string[]>> = {
  floor: ["floor", "storey", "level", "building"],
  room: ["room", "location"],
  outlet: ["outlet", "outlet id", "id", "point"],
  receiver: ["receiver", "receiver kind", "kind"],
  quantity: ["quantity", "receivers", "qty", "pieces"],
  from: ["fed from", "from", "branch", "feed"],
  cable: ["cable", "cable type"],
  run: ["run", "length", "cable length", "run length"],
  plate: ["wall plate", "plate"],
  note: ["note", "notes", "remark", "remarks"],
};
const NEEDED = ["outlet", "receiver", "run"] as const;
/** The survey's heads as we write them. */
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
];

const runLength = number({
  name: "run",
  help: "",
  unit: "m",
  min: 0,
  max: 2000,
  advice: "Check the number and the column head's unit",
});
const receivers = number({
  name: "quantity",
  help: "",
  min: 0,
  max: 32,
  integer: true,
  advice: "One line is one outlet",
});

/**
 * @param lines the file's lines, head first; empty ones are passed over
 * @param unit unit of the workbook's lengths; a head such as `run (ft)` is converted to it
 */
export function readSurvey(lines: readonly SurveyLine[], unit: "m" | "ft"): Survey {
  const filled = lines.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  const [head, ...body] = filled;
  if (!head)
    return {
      rows: [],
      troubles: [{ line: 1, reason: "The file is empty. Give a head row and a line for each outlet." }],
    };
  const columns = columnsOf(head);
  const missing = NEEDED.filter((key) => !columns.has(key));
  if (missing.length > 0) {
    const reason = `The head row lacks ${missing.map((key) => `"${HEADS[key]![0]}"`).join(", ")}. It has ${head.cells.map((cell) => `"${cell.trim()}"`).join(", ")}.`;
    return { rows: [], troubles: [{ line: head.line, reason }] };
  }
  const factor = lengthFactor(head, columns.get("run")!, unit);
  if (typeof factor === "string") return { rows: [], troubles: [{ line: head.line, reason: factor }] };

  const rows: Record<string, number | string>[] = [];
  const troubles: SurveyTrouble[] = [];
  const seen = new Map<string, number>();
  for (const { line, cells } of body) {
    const reasons: string[] = [];
    if (cells.length > head.cells.length) {
      reasons.push(
        `The line has ${cells.length} cells where the head row has ${head.cells.length}. Put text that holds a comma in quotes.`,
      );
    }
    const row: Record<string, number | string> = {};
    for (const [key, column] of columns) {
      const text = (cells[column] ?? "").trim();
      const value = key === "run" ? lengthOf(text, factor) : key === "quantity" ? quantityOf(text) : text;
      if (isFault(value)) reasons.push(value.message);
      else if (value !== "") row[key] = value;
    }
    for (const key of ["outlet", "receiver"] as const) {
      if (row[key] === undefined)
        reasons.push(
          faults.missing(key, key === "outlet" ? "a name of its own" : "the kind of receiver").message,
        );
    }
    const outlet = String(row.outlet ?? "").toLowerCase();
    const before = seen.get(outlet);
    if (outlet && before !== undefined)
      reasons.push(
        `The outlet "${row.outlet}" stands on line ${before} already. Give each outlet a name of its own.`,
      );
    if (outlet && before === undefined) seen.set(outlet, line);
    if (reasons.length > 0) troubles.push({ line, reason: reasons.join(" ") });
    else rows.push(row);
  }
  if (body.length === 0)
    troubles.push({ line: head.line, reason: "There is a head row and no outlet below it." });
  return { rows, troubles };
}

const plainHead = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[([].*$/, "")
    .replace(/[_\s]+/g, " ")
    .trim();

function columnsOf(head: SurveyLine): Map<string, number> {
  const columns = new Map<string, number>();
  for (const [index, cell] of head.cells.entries()) {
    const key = Object.keys(HEADS).find((one) => HEADS[one]!.includes(plainHead(cell)));
    if (key && !columns.has(key)) columns.set(key, index);
  }
  return columns;
}

/** What a length of the file is multiplied by, or a sentence about a unit that is not known. */
function lengthFactor(head: SurveyLine, column: number, unit: "m" | "ft"): number | string {
  const text = head.cells[column]!;
  const named = /[([]\s*([^)\]]*?)\s*[)\]]/.exec(text)?.[1]?.toLowerCase();
  if (named === undefined || named === unit) return 1;
  if (/^(m|metres?|meters?)$/.test(named)) return unit === "m" ? 1 : 1 / METRES_PER_FOOT;
  if (/^(ft|feet|foot|')$/.test(named)) return unit === "ft" ? 1 : METRES_PER_FOOT;
  return `The column "${text.trim()}" names a unit that is not known. Write "run (m)" or "run (ft)".`;
}

function numberOf(text: string): number | string {
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : text;
}

function lengthOf(text: string, factor: number): number | Fault {
  if (text === "") return faults.missing("run", "its length");
  const read = runLength.read(numberOf(text));
  return isFault(read) ? read : Math.round(read * factor * 1e6) / 1e6;
}

function quantityOf(text: string): number | "" | Fault {
  return text === "" ? "" : receivers.read(numberOf(text));
}
