/**
 * Understands a site survey: a table of outlets, one a line, with a head row.
 * It tells what it understood, so that a person can look before anything is
 * written. Each bad line is reported by its number and reason; none is repaired.
 */
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import { textOf, type ImportedCell, type ImportedLine, type ImportedTable } from "../imported/table";
import { asFigures } from "../typed/plainText";
import { readTyped } from "../typed/readTyped";
import type { Reading, TypedContext } from "../typed/reading";
import { LONGEST_TEXT } from "../typed/typedKind";
import { rounded } from "../typed/units";
import type { Writing } from "../typed/writing";
import { columnReader, type ColumnReader } from "./columnReader";
import {
  FIGURES,
  findHead,
  isUnitLine,
  knownUnit,
  LENGTHS,
  nameOf,
  NEEDED,
  unitBelow,
  unitNamed,
  type Head,
} from "./heads";
import { lineKind } from "./lineKinds";
import { Totals } from "./totals";

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

/** A run that is no usual drop, in metres; common practice, no source. */
const LONG_RUN = 200;
const SEPARATOR = /^sep=/i;

/**
 * @param table the file's lines; empty ones are passed over
 * @param unit unit of the workbook's lengths; a head such as `run (ft)` is converted to it
 * @param writing how the workbook's people write numbers, where they have chosen
 */
export function readSurvey({ source, lines }: ImportedTable, unit: "m" | "ft", writing?: Writing): Survey {
  const filled = lines.filter(
    ({ line, cells }) => cells.some((cell) => textOf(cell) !== "") && !(line === 1 && isSeparator(cells)),
  );
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
  const inUnit = new Map<string, "m" | "ft">();
  const unnamed = new Set<string>();
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
      if (named === undefined) unnamed.add(key);
      inUnit.set(key, known);
      columns.push({ head: text, name: nameOf(key), key, unit: known, converted: known !== unit });
    } else columns.push({ head: text, name: nameOf(key), key });
  }
  if (body.length === 0) {
    return { ...refused(head.line.line, "There is a head row and no outlet below it."), columns };
  }

  const kinds = body.map((line) => ({ line, as: lineKind(line, head) }));
  const outlets = kinds.filter(({ as }) => as.kind === "outlet").map(({ line }) => line);
  const readers = new Map(
    [...head.columns]
      .filter(([key]) => FIGURES.has(key))
      .map(([key, column]) => {
        const context: TypedContext = { ...(writing && { writing }), lengths: inUnit.get(key) ?? unit };
        return [
          key,
          columnReader(
            key,
            outlets.map(({ cells }) => cells[column] ?? ""),
            context,
          ),
        ] as const;
      }),
  );
  const factor = (key: string): number => factorBetween(inUnit.get(key) ?? unit, unit);

  const rows: SurveyRow[] = [];
  const rowLines: number[] = [];
  const troubles: SurveyTrouble[] = [];
  const seen = new Map<string, number>();
  const totals = new Totals();
  let passed = 0;
  let sums = 0;
  let floor = floorAbove(filled, head);
  for (const { line, as } of kinds) {
    if (as.kind === "repeated") passed++;
    else if (as.kind === "floor") floor = as.floor;
    else if (as.kind === "total") {
      sums++;
      const column = head.columns.get("run")!;
      const figure = readers.get("run")!.read(line.cells[column] ?? "");
      const value = "refused" in figure ? undefined : figure.value;
      const reason = totals.check(line, as.name, value, column, inUnit.get("run") ?? unit);
      if (reason !== undefined) troubles.push({ line: line.line, reason });
    } else {
      const { row, reasons } = readLine(line, head, readers, factor);
      floor = row.floor === undefined ? floor : String(row.floor);
      if (floor !== undefined) row.floor = floor;
      totals.add(typeof row.run === "number" ? row.run / factor("run") : undefined);
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
  }
  const notes = [
    head.index > 0
      ? `${inWords(head.index, "line")} above the head row ${head.index === 1 ? "is" : "are"} passed over.`
      : "",
    unitRow ? `Line ${unitRow.line} holds units.` : "",
    ...[...readers].map(([key, { comma }]) =>
      comma === undefined
        ? ""
        : `The decimal commas of "${nameOf(key)}" are read as points: ${comma} is ${comma.replace(",", ".")}.`,
    ),
    unnamed.has("run") ? unitNote(outlets, head, unit) : "",
    passed > 0 ? passedOver(passed, "the heads again, or a page's foot") : "",
    sums > 0 ? passedOver(sums, "a sum, held against the runs above it") : "",
    head.columns.has("receiver")
      ? ""
      : "No column names the receivers: choose them on Rooms, where an outlet without one has no tuner and needs no user band.",
    ...(head.columns.has("receiver") ? sparesOf(rows, rowLines) : []),
    lookAt(rows, rowLines, unit),
    ...(head.columns.has("receiver") ? [] : countsOf(rows, rowLines)),
  ].filter((note) => note !== "");
  return { source, columns, rows, lines: rowLines, troubles, notes };
}

const passedOver = (count: number, what: string): string =>
  `${inWords(count, "line")} with ${what}, ${count === 1 ? "is" : "are"} passed over.`;

/** As some workbook programs begin a text file. */
const isSeparator = ([first, ...others]: readonly ImportedCell[]): boolean =>
  SEPARATOR.test(textOf(first)) && others.every((cell) => textOf(cell) === "");

/** A floor's heading may stand above the heads, too. */
function floorAbove(filled: readonly ImportedLine[], head: Head): string | undefined {
  const above = filled[head.index - 1];
  const as = above && lineKind(above, head);
  return as?.kind === "floor" && !head.columns.has("floor") ? as.floor : undefined;
}

/** Bare numbers of a column whose head names no unit are taken in the workbook's own; that is said. */
function unitNote(outlets: readonly ImportedLine[], head: Head, unit: string): string {
  const column = head.columns.get("run")!;
  const figures = (line: ImportedLine): string =>
    asFigures(textOf(line.cells[column]).slice(0, LONGEST_TEXT));
  const bare = outlets.filter((line) => /^[+-]?[\d., ]*\d$/.test(figures(line)));
  if (bare.length === 0) return "";
  const others = outlets.some((line) => /\d ?[a-z'"]/i.test(figures(line)));
  const which = others ? `Line ${bare[0]!.line}` : `“${textOf(head.line.cells[column])}”`;
  return `${which} names no unit: it is taken in ${unit}, the unit of this workbook.`;
}

/** A blank receiver is a spare outlet; that is said, for it may have been forgotten. */
function sparesOf(rows: readonly SurveyRow[], lines: readonly number[]): string[] {
  const spare = lines.filter((_, index) => rows[index]!.receiver === undefined);
  if (spare.length === 0) return [];
  const shown = spare.slice(0, 5).join(", ") + (spare.length > 5 ? ", …" : "");
  return [
    spare.length === 1
      ? `Line ${shown} names no receiver: it is a spare outlet.`
      : `Lines ${shown} name no receiver: they are spare outlets.`,
  ];
}

/** Without receivers a quantity may have been meant as outlets. */
function countsOf(rows: readonly SurveyRow[], lines: readonly number[]): string[] {
  return rows.flatMap(({ quantity }, index) =>
    quantity === undefined || quantity === 1
      ? []
      : [`Line ${lines[index]!}: ${quantity} is taken as the receivers at one outlet, not as outlets.`],
  );
}

/** Runs that can be so, and are more often a slip. */
function lookAt(rows: readonly SurveyRow[], lines: readonly number[], unit: "m" | "ft"): string {
  const long = LONG_RUN / factorBetween(unit, "m");
  const odd = rows.flatMap(({ run }, index) =>
    run === 0 || Number(run) > long ? [`line ${lines[index]!} (${run} ${unit})`] : [],
  );
  return odd.length > 0
    ? `Look again at the run of ${odd.slice(0, 5).join(", ")}${odd.length > 5 ? ", …" : ""}.`
    : "";
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
  { cells }: ImportedLine,
  head: Head,
  readers: ReadonlyMap<string, ColumnReader>,
  factor: (key: string) => number,
): { row: Record<string, number | string>; reasons: string[] } {
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
    const cell = cells[column] ?? "";
    const reading = readers.get(key)?.read(cell) ?? nameIn(cell);
    if ("refused" in reading) reasons.push(`${nameOf(key)}: ${reading.refused}`);
    else if (typeof reading.value === "number") row[key] = rounded(reading.value * factor(key));
    else if (reading.value !== undefined) row[key] = reading.value;
  }
  const missing = (key: string, what: string): void => {
    const wanted =
      head.columns.has(key) &&
      row[key] === undefined &&
      !reasons.some((one) => one.startsWith(`${nameOf(key)}:`));
    if (wanted) reasons.push(`${nameOf(key)} is missing. Enter ${what}.`);
  };
  missing("outlet", "a name of its own");
  missing("run", "its length");
  return { row, reasons };
}

function nameIn(cell: ImportedCell): Reading<number | string | undefined> {
  if (typeof cell === "object" && cell.shown === undefined)
    return {
      refused:
        "the file holds a date here, into which a workbook program turns names such as 3-16. Type the name itself as text",
    };
  return readTyped(textOf(cell), { kind: "text", maxLength: LONGEST_TEXT });
}

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
