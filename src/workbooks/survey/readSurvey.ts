/**
 * Understands a site survey: a table of outlets, one a line, with a head row.
 * It tells what it understood, so that a person can look before anything is
 * written. Each bad line is reported by its number and reason; none is repaired.
 */
import { faults, isFault, type Fault } from "../../engine/faults";
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import { number } from "../../functions/core/parameters";
import { columnNumbers, type ColumnNumbers } from "./columnNumbers";
import {
  findHead,
  isUnitLine,
  knownUnit,
  LENGTHS,
  nameOf,
  NEEDED,
  textOf,
  unitBelow,
  unitNamed,
  type Head,
  type SurveyLine,
} from "./heads";

/** A file's lines, and how they were told apart. */
export interface SurveyTable {
  /** "text, semicolons, UTF-8" or "sheet Survey of a workbook". */
  readonly source: string;
  /** The cells are parted by commas. */
  readonly parted: boolean;
  readonly lines: readonly SurveyLine[];
}

export interface SurveyTrouble {
  readonly line: number;
  readonly reason: string;
}

/** A column as it was understood. */
export interface SurveyColumn {
  /** As the file has it. */
  readonly head: string;
  /** As we call it; absent for a column that is not used. */
  readonly name?: string;
  /** Its key in the Rooms block. */
  readonly key?: string;
  readonly unit?: "m" | "ft";
  /** Its lengths are converted into the workbook's unit. */
  readonly converted?: boolean;
}

export type SurveyRow = Readonly<Record<string, number | string>>;

export interface Survey {
  readonly source: string;
  readonly columns: readonly SurveyColumn[];
  /** Rows for the Rooms block, by column key. */
  readonly rows: readonly SurveyRow[];
  /** The line of each row. */
  readonly lines: readonly number[];
  readonly troubles: readonly SurveyTrouble[];
  /** What a person should know of how the file was read. */
  readonly notes: readonly string[];
}

const length = (name: string) =>
  number({
    name,
    help: "",
    unit: "m",
    min: 0,
    max: 2000,
    advice: "Check the number and the column head's unit",
  });
const READERS: Readonly<Record<string, ReturnType<typeof number>>> = {
  run: length("run"),
  shortest: length("shortest run"),
  longest: length("longest run"),
  quantity: number({
    name: "quantity",
    help: "",
    min: 0,
    max: 32,
    integer: true,
    advice: "One line is one outlet",
  }),
};

/**
 * @param table the file's lines; empty ones are passed over
 * @param unit unit of the workbook's lengths; a head such as `run (ft)` is converted to it
 */
export function readSurvey({ source, parted, lines }: SurveyTable, unit: "m" | "ft"): Survey {
  const filled = lines.filter(({ cells }) => cells.some((cell) => textOf(cell) !== ""));
  const head = findHead(filled);
  const refused = (line: number, reason: string): Survey => ({
    source,
    columns: [],
    rows: [],
    lines: [],
    troubles: [{ line, reason }],
    notes: [],
  });
  if (!head) return refused(1, "The file is empty. Give a head row and a line for each outlet.");
  if (!head.fits) return refused(head.line.line, lacking(head));

  const units = filled[head.index + 1];
  const unitRow = units && isUnitLine(units, head) ? units : undefined;
  const body = filled.slice(head.index + (unitRow ? 2 : 1));
  const factors = new Map<string, number>();
  const columns: SurveyColumn[] = [];
  for (const [index, cell] of head.line.cells.entries()) {
    const text = textOf(cell);
    const key = [...head.columns].find(([, column]) => column === index)?.[0];
    if (key === undefined) {
      if (text !== "") columns.push({ head: text });
    } else if (LENGTHS.has(key)) {
      const named = unitNamed(text) ?? (unitRow && unitBelow(unitRow, index));
      const known = named === undefined ? unit : knownUnit(named);
      if (known === undefined) {
        return refused(
          head.line.line,
          `The column "${text}" names a unit that is not known. Write "${nameOf(key)} (m)" or "${nameOf(key)} (ft)".`,
        );
      }
      factors.set(key, factorBetween(known, unit));
      columns.push({ head: text, name: nameOf(key), key, unit: known, converted: known !== unit });
    } else columns.push({ head: text, name: nameOf(key), key });
  }
  if (body.length === 0) {
    return { ...refused(head.line.line, "There is a head row and no outlet below it."), columns };
  }

  const numbers = new Map(
    [...head.columns]
      .filter(([key]) => Object.hasOwn(READERS, key))
      .map(([key, column]) => [
        key,
        columnNumbers(
          nameOf(key),
          body.map(({ cells }) => trimmed(cells[column])),
          parted,
        ),
      ]),
  );
  const notes = [
    head.index > 0
      ? `${inWords(head.index, "line")} above the head row ${head.index === 1 ? "is" : "are"} passed over.`
      : "",
    unitRow ? `Line ${unitRow.line} holds units.` : "",
    ...[...numbers].map(([key, { comma }]) =>
      comma === undefined
        ? ""
        : `The decimal commas of "${nameOf(key)}" are read as points: ${comma} is ${comma.replace(",", ".")}.`,
    ),
  ].filter((note) => note !== "");

  const rows: SurveyRow[] = [];
  const rowLines: number[] = [];
  const troubles: SurveyTrouble[] = [];
  const seen = new Map<string, number>();
  for (const line of body) {
    const { row, reasons } = readLine(line, head, numbers, factors);
    const outlet = String(row.outlet ?? "").toLowerCase();
    const before = seen.get(outlet);
    if (outlet && before !== undefined)
      reasons.push(
        `The outlet "${row.outlet}" stands on line ${before} already. Give each outlet a name of its own.`,
      );
    if (outlet && before === undefined) seen.set(outlet, line.line);
    if (reasons.length > 0) troubles.push({ line: line.line, reason: reasons.join(" ") });
    else {
      rows.push(row);
      rowLines.push(line.line);
    }
  }
  return { source, columns, rows, lines: rowLines, troubles, notes };
}

/** The survey without the outlets that the workbook has already: each of them is a bad line. */
export function withoutKnown(survey: Survey, known: readonly string[]): Survey {
  const names = new Set(known.map((name) => name.trim().toLowerCase()));
  const isKnown = (row: SurveyRow): boolean => names.has(String(row.outlet).toLowerCase());
  const twice = survey.rows.flatMap((row, index) =>
    isKnown(row)
      ? [
          {
            line: survey.lines[index]!,
            reason: `The outlet "${row.outlet}" is on the sheet Rooms already. Give each outlet a name of its own.`,
          },
        ]
      : [],
  );
  return {
    ...survey,
    rows: survey.rows.filter((row) => !isKnown(row)),
    lines: survey.lines.filter((_, index) => !isKnown(survey.rows[index]!)),
    troubles: [...survey.troubles, ...twice].sort((a, b) => a.line - b.line),
  };
}

export const inWords = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

function readLine(
  { cells }: SurveyLine,
  head: Head,
  numbers: ReadonlyMap<string, ColumnNumbers>,
  factors: ReadonlyMap<string, number>,
): { row: SurveyRow; reasons: string[] } {
  const reasons: string[] = [];
  const width = head.line.cells.length;
  const last = cells.findLastIndex((cell) => textOf(cell) !== "") + 1;
  if (last > width) {
    reasons.push(
      `The line has ${last} cells where the head row has ${width}. Put text that holds a comma in quotes.`,
    );
  }
  const row: Record<string, number | string> = {};
  for (const [key, column] of head.columns) {
    const cell = trimmed(cells[column]);
    const reader = numbers.get(key);
    const value = reader ? numberOf(key, cell, reader, factors.get(key) ?? 1) : textOf(cell);
    if (isFault(value)) reasons.push(value.message);
    else if (value !== "") row[key] = value;
  }
  for (const key of ["outlet", "receiver"] as const) {
    if (row[key] === undefined)
      reasons.push(
        faults.missing(key, key === "outlet" ? "a name of its own" : "the kind of receiver").message,
      );
  }
  return { row, reasons };
}

function numberOf(
  key: string,
  cell: string | number,
  { read }: ColumnNumbers,
  factor: number,
): number | "" | Fault {
  if (cell === "") return key === "run" ? faults.missing("run", "its length") : "";
  const plain = read(cell);
  const value = isFault(plain) ? plain : READERS[key]!.read(plain);
  return isFault(value) ? value : Math.round(value * factor * 1e6) / 1e6;
}

const trimmed = (cell: string | number | undefined): string | number =>
  typeof cell === "number" ? cell : textOf(cell);

function lacking({ line, columns }: Head): string {
  const missing = NEEDED.filter((key) => !columns.has(key)).map((key) => `"${nameOf(key)}"`);
  const cells = line.cells.map((cell) => `"${textOf(cell)}"`);
  const shown = cells.slice(0, 12).join(", ") + (cells.length > 12 ? ", …" : "");
  return `The head row lacks ${missing.join(", ")}. It has ${shown}.`;
}

function factorBetween(from: "m" | "ft", to: "m" | "ft"): number {
  if (from === to) return 1;
  return from === "ft" ? METRES_PER_FOOT : 1 / METRES_PER_FOOT;
}
