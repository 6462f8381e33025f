/**
 * How a survey lies in its file: where its heads stand, in one row or two, and what each column is taken for, by its
 * head and by what stands below it.
 */
import { headless, samplesOf, type MappedColumn } from "../imported/columns";
import { textOf, type ImportedLine, type ImportedTable } from "../imported/table";
import { bareLength } from "./bareLength";
import {
  guessesOf,
  type HeadGuess,
  isNumbered,
  isOther,
  isUnitText,
  unitBelow,
  unitNamed,
} from "./headWords";
import { FIGURES, FURTHER, LENGTHS, NEEDED, unitSpelled, type LengthUnit } from "./meanings";
import { matchName, type SurveyLists } from "./partNames";
import { TOTAL } from "./totalWords";

/** A survey may begin with a title and a few words; its head stands within so many lines. */
const HEAD_WITHIN = 20;
/** Lines that are looked at to tell what a column holds. */
const LOOKED_AT = 200;
/** Whole heads count more than words of them, and both more than what stands below. */
const HEAD_WEIGHT = 10;
const LEAST_SCORE = 4;

export interface Head {
  /** Its place among the filled lines; -1 where there is none. */
  readonly index: number;
  /** How many lines it takes: heads may stand in two rows. */
  readonly rows: number;
  readonly texts: readonly string[];
  /** As its lines have it. */
  readonly raw: readonly (readonly string[])[];
  /** A line of units stands below it. */
  readonly units?: ImportedLine;
}

/** A survey's lines with where each of its columns lies; a column that stands for nothing is not among them. */
export interface Layout {
  readonly head: Head;
  readonly columns: ReadonlyMap<string, number>;
  readonly notes: readonly number[];
}

/** What a head may mean; of two rows the lower says it, unless only both together do. */
function guessesFor({ texts, raw }: Pick<Head, "texts" | "raw">, column: number): HeadGuess[] {
  const text = texts[column] ?? "";
  if (/\d/.test(text.replace(/\s*[([].*$/, "").replace(/\b[a-z]+ [12]$/i, ""))) return [];
  const below = raw.length > 1 ? guessesOf(raw[1]![column] ?? "") : [];
  return below[0]?.weight === 1 ? below : guessesOf(text);
}

/** How much of a head row it is: how many of its cells are heads, the needed ones above all. */
export function headScore(head: Pick<Head, "texts" | "raw">): number {
  const keys = new Map<string, number>();
  let others = 0;
  for (const [column, text] of head.texts.entries()) {
    const [best] = guessesFor(head, column);
    if (best) keys.set(best.key, Math.max(keys.get(best.key) ?? 0, best.weight));
    else if (text !== "" && (/\d/.test(text) || text.length > 40)) others++;
  }
  const sum = [...keys.values()].reduce((total, weight) => total + weight, 0);
  const hasBothEnds = keys.has("shortest") && keys.has("longest");
  const needed = NEEDED.filter((key) => keys.has(key) || (key === "run" && hasBothEnds)).length;
  return keys.size < 2 ? Math.min(sum, 0.9) : sum + needed - 0.6 * others;
}

/** @returns index -1 where no line is like a head */
export function findHead(filled: readonly ImportedLine[], wanted?: number): Head {
  if (wanted !== undefined) {
    const index = filled.findIndex(({ line }) => line === wanted);
    const texts = textsOf(filled[index]);
    return withUnits(filled, { index, rows: index < 0 ? 0 : 1, texts, raw: [texts] });
  }
  let best: Head = { index: -1, rows: 0, texts: [], raw: [] };
  // Sums of tenths have a tail: a line of data that reaches 1.5 is no head.
  let most = 1.5 + 1e-6;
  for (const [index, line] of filled.entries()) {
    if (line.line > HEAD_WITHIN) break;
    const texts = textsOf(line);
    const one = { index, rows: 1, texts, raw: [texts] };
    const below = textsOf(filled[index + 1]);
    const isWithin = (filled[index + 1]?.line ?? 0) <= HEAD_WITHIN;
    const both = isWithin ? joined(texts, below) : undefined;
    const two = both && { index, rows: 2, texts: both, raw: [texts, below] };
    const [scoreOfOne, scoreOfTwo] = [headScore(one), two ? headScore(two) - 0.4 : 0];
    if (two && scoreOfTwo > most && scoreOfTwo > scoreOfOne + 0.3) [most, best] = [scoreOfTwo, two];
    else if (scoreOfOne > most) [most, best] = [scoreOfOne, one];
  }
  return withUnits(filled, best);
}

const textsOf = (line: ImportedLine | undefined): string[] => (line?.cells ?? []).map(textOf);

/** A head over several columns stands for each of them. */
function joined(upper: readonly string[], lower: readonly string[]): string[] | undefined {
  if (lower.some((text) => /^\d|\d{2}$/.test(text)) || lower.every((text) => isUnitText(text) || text === ""))
    return undefined;
  let above = "";
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, index) => {
    const [over, under] = [upper[index] ?? "", lower[index] ?? ""];
    above = over !== "" ? over : under === "" ? "" : above;
    return under === "" ? over : `${over === "" ? above : over} ${under}`.trim();
  });
}

/** Units stand below the heads of lengths, in a line that names no outlet. */
function withUnits(filled: readonly ImportedLine[], head: Head): Head {
  const below = filled[head.index + head.rows];
  if (head.index < 0 || !below) return head;
  const texts = textsOf(below);
  const under = (wanted: (key: string) => boolean): string[] =>
    head.texts.flatMap((_, column) => {
      const [guess] = guessesFor(head, column);
      return guess?.weight === 1 && wanted(guess.key) ? [texts[column] ?? ""] : [];
    });
  const lengths = under((key) => LENGTHS.has(key)).filter((text) => text !== "");
  const names = under((key) => key === "outlet" || key === "room" || key === "receiver");
  const areUnits = lengths.length > 0 && lengths.every(isUnitText) && names.every((text) => text === "");
  return areUnits ? { ...head, units: below } : head;
}

/** Whether a line has the heads, or the units below them, once more. */
export function headsIn(line: ImportedLine, { head, columns }: Layout): boolean {
  const texts = textsOf(line);
  // A receiver called "receiver" with its length beside it is an outlet's.
  if (/^\d/.test(texts[columns.get("run") ?? -1] ?? "")) return false;
  const again = [...head.raw, ...(head.units ? [textsOf(head.units)] : [])].some((row) => {
    const filled = row.filter((text) => text !== "").length;
    const same = row.filter((text, index) => text !== "" && sameText(text, texts[index])).length;
    return (
      same >= Math.min(2, filled) &&
      same > 0 &&
      same >= filled / 2 &&
      texts.filter((text) => text !== "").length <= filled + 1
    );
  });
  if (again) return true;
  const keys = NEEDED.map((key) => columns.get(key)).filter((column) => column !== undefined);
  return (
    keys.length === NEEDED.length &&
    NEEDED.every((key) =>
      guessesOf(texts[columns.get(key)!] ?? "").some((guess) => guess.key === key && guess.weight === 1),
    )
  );
}

export const sameText = (one: string, other = ""): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();

export interface GuessedColumns {
  readonly columns: readonly MappedColumn[];
  /** Why a person has to look first, in a sentence. */
  readonly unsure?: string;
}

interface Candidate {
  readonly column: number;
  readonly key: string;
  readonly score: number;
}

/** @param body the lines below the head */
export function guessColumns(
  { hiddenColumns = [] }: ImportedTable,
  head: Head,
  body: readonly ImportedLine[],
  lists: SurveyLists,
): GuessedColumns {
  const lines = body.slice(0, LOOKED_AT);
  const width = Math.max(head.texts.length, ...lines.map(({ cells }) => cells.length), 0);
  const hidden = new Set(hiddenColumns);
  const outlets = lines.filter(({ cells }) => !cells.some((cell) => TOTAL.test(textOf(cell).slice(0, 40))));
  const all = Array.from({ length: width }, (_, column) => ({
    column,
    head: head.texts[column] || headless(column),
    samples: samplesOf(outlets, column),
  })).filter(({ column, samples }) => samples.length > 0 || (head.texts[column] ?? "") !== "");
  const candidates = all
    .flatMap(({ column }) => candidatesFor(column, head, lines, lists))
    // What is hidden is older, or in the way: no figure is taken from there.
    .filter(({ column, key }) => !hidden.has(column) || !FIGURES.has(key))
    .map((one) => (hidden.has(one.column) ? { ...one, score: one.score - 2 } : one))
    .sort((a, b) => b.score - a.score || a.column - b.column);
  const taken = new Map<number, string>();
  for (const { column, key, score } of candidates) {
    const isFree = !taken.has(column) && (key === "note" || ![...taken.values()].includes(key));
    if (isFree && score >= LEAST_SCORE) taken.set(column, key);
  }
  const pairs = pairedColumns(candidates);
  for (const { outlet, run } of pairs) taken.set(outlet, "outlet").set(run, "run");
  const columns = all.map((one): MappedColumn => {
    const key = taken.get(one.column);
    const isLength = key !== undefined && LENGTHS.has(key);
    const unit = isLength ? unitOf(head, one.column) : undefined;
    return { ...one, ...(key !== undefined && { key }), ...(unit !== undefined && { unit }) };
  });
  const unsure =
    pairs.length > 0 && head.index >= 0
      ? `Each line seems to hold ${pairs.length} outlets, ${pairs.map(({ outlet }) => `“${head.texts[outlet]}”`).join(", ")}, each with a run beside it. Say whether it does.`
      : whyUnsure(head, columns, candidates, lines);
  return { columns, ...(unsure !== undefined && { unsure }) };
}

/** Columns of outlets that stand next to each other, a run beside each. */
function pairedColumns(candidates: readonly Candidate[]): { outlet: number; run: number }[] {
  const likely = (key: string): number[] =>
    candidates
      .filter((one) => one.key === key && one.score >= HEAD_WEIGHT * 0.65)
      .map(({ column }) => column)
      .sort((a, b) => a - b);
  const [outlets, runs] = [likely("outlet"), likely("run")];
  const alternate =
    outlets.length >= 2 &&
    outlets.length === runs.length &&
    outlets.every(
      (outlet, index) => outlet < runs[index]! && runs[index]! < (outlets[index + 1] ?? Infinity),
    );
  return alternate ? outlets.map((outlet, index) => ({ outlet, run: runs[index]! })) : [];
}

/** As the file names it, known or not; undefined where it does not. */
function unitOf(head: Head, column: number): string | undefined {
  const named = unitNamed(head.texts[column] ?? "");
  if (named !== undefined) return unitSpelled(named) ?? named;
  return head.units && unitBelow(textOf(head.units.cells[column]));
}

function whyUnsure(
  head: Head,
  columns: readonly MappedColumn[],
  candidates: readonly Candidate[],
  lines: readonly ImportedLine[],
): string | undefined {
  if (head.index < 0)
    return "The file has no head row, so its columns are only guessed by what they hold. Say for each column what it is.";
  const its = (key: string): MappedColumn | undefined => columns.find((one) => one.key === key);
  const rivalOf = (key: string, margin: number): MappedColumn | undefined => {
    const scoreOf = (column: number): number =>
      candidates.find((one) => one.column === column && one.key === key)?.score ?? 0;
    const chosen = its(key);
    return (
      chosen &&
      columns.find(
        (one) =>
          one.key === undefined &&
          candidates.find(({ column }) => column === one.column)?.key === key &&
          scoreOf(one.column) >= HEAD_WEIGHT * 0.6 &&
          scoreOf(one.column) >= scoreOf(chosen.column) - margin,
      )
    );
  };
  const run = its("run");
  const rival = rivalOf("run", 3.5);
  if (run && rival && lengthShare(textsBelow(lines, rival.column)) > 0.5)
    return `“${run.head}” and “${rival.head}” both look like the run. Say which it is; a length that is added to it is “Run, a further part”.`;
  const further = its(FURTHER);
  if (run && further)
    return `“${further.head}” is taken for a part that is added to “${run.head}”. Say whether it is, or whether it is not used.`;
  const outlet = its("outlet");
  const other = rivalOf("outlet", 1.5);
  if (outlet && other)
    return `“${outlet.head}” and “${other.head}” both look like the outlets' names. Say which it is.`;
  if (outlet && guessesFor(head, outlet.column).every(({ key }) => key !== "outlet"))
    return `“${outlet.head}” seems to hold the outlets' names. Say whether it does.`;
  if (!outlet && its("room"))
    return "No column names the outlets. Say which does; or each outlet is called after its room, numbered where a room has several.";
  return undefined;
}

const textsBelow = (lines: readonly ImportedLine[], column: number): string[] =>
  lines.map(({ cells }) => textOf(cells[column])).filter((text) => text !== "");

function candidatesFor(
  column: number,
  head: Head,
  lines: readonly ImportedLine[],
  lists: SurveyLists,
): Candidate[] {
  const text = head.texts[column] ?? "";
  const below = textsBelow(lines, column);
  const scores = new Map<string, number>();
  const add = (key: string, score: number): void => void scores.set(key, (scores.get(key) ?? 0) + score);
  const guesses = head.index < 0 ? [] : guessesFor(head, column);
  guesses.forEach(({ key, weight }, order) => add(key, weight * HEAD_WEIGHT - order * 0.5));
  if (/\b(?:totale?|gesamt\w*|all)\b/i.test(text) && scores.has("run")) add("run", 4);
  const other = isOther(text);
  for (const key of ["cable", "plate", "receiver", "from"] as const) {
    const share = listShare(key, below, lists[key] ?? []);
    if (share >= 0.3) add(key, share * (key === "from" ? 4 : 7) - (scores.has(key) ? 0 : 1));
  }
  const lengths = lengthShare(below);
  if (below.length > 0) {
    for (const key of FIGURES)
      if (scores.has(key) && lengths < 0.3 && !(LENGTHS.has(key) && mostlyMissing(below))) add(key, -5.5);
    if (
      scores.has("outlet") &&
      below.length >= 4 &&
      new Set(below.map((one) => one.toLowerCase())).size < below.length / 2
    )
      add("outlet", -5);
    if (scores.has("receiver") && below.every((one) => /^\d{1,2}$/.test(one))) add("receiver", -7);
  }
  if (other && !scores.has("cable") && !scores.has("plate") && !scores.has("receiver")) return [];
  if (head.index < 0 || text === "" || isNumbered(text) || scores.size === 0)
    guessByContent(below, lengths, head.index < 0, add);
  return [...scores].map(([key, score]) => ({ column, key, score }));
}

/** What a column without a head holds. */
function guessByContent(
  below: readonly string[],
  lengths: number,
  isHeadless: boolean,
  add: (key: string, score: number) => void,
): void {
  if (below.length === 0) return;
  const isRow = below.every((text, index) => text === String(Number(below[0]) + index));
  const unique = new Set(below.map((text) => text.toLowerCase())).size === below.length;
  const short = below.every((text) => text.length <= 14);
  const figures = below.filter((text) => /\d/.test(text)).length / below.length;
  if (unique && short && figures > 0.7 && lengths < 1 && !isRow) add("outlet", 6);
  else if (!isHeadless && unique && short && figures > 0.7 && !below.some((text) => /[.,]\d/.test(text)))
    add("outlet", isRow ? 4 : 5);
  // Not a running number: how many there are of each.
  if (!isHeadless && !unique && below.length >= 3 && below.every((text) => /^[1-9]$/.test(text)))
    add("quantity", 5);
  if (!isHeadless) return;
  if (lengths > 0.8 && below.some((text) => /[.,]\d|\d ?(?:m|ft)\b|['"]/.test(text))) add("run", 6);
  else if (lengths > 0.8 && !isRow && below.some((text) => Number(text) > 3)) add("run", 4.5);
  if (below.filter((text) => FLOORS.test(text)).length / below.length > 0.6) add("floor", 6);
}

const FLOORS = /floor|ground|^(?:[EUDK]G|\d\. ?OG|\d(?:st|nd|rd|th)|basement|attic|L\d|GF|[A-Z]?\d?F)$/i;

const LIKE_LENGTH =
  /^[<>=]?\d+(?:[.,]\d+)?(?:[.,]\d{3})*(?: ?(?:m|cm|mm|ft|feet|in|yd|metres?|meters?)\b\.?| ?['"].*)?(?: ?(?:-{1,2}|–|—|to|\/|\.{2,3}|…|bis|\+\/-|±) ?\d.*)?$/i;

function lengthShare(below: readonly string[]): number {
  if (below.length === 0) return 0;
  return (
    below.filter((text) => text.length <= 40 && LIKE_LENGTH.test(bareLength(text).text)).length / below.length
  );
}

const mostlyMissing = (below: readonly string[]): boolean =>
  below.every((text) => /^(?:tbd|n\/a|[-?]+)$/i.test(text));

function listShare(key: string, below: readonly string[], list: readonly string[]): number {
  if (below.length === 0 || list.length === 0) return 0;
  const different = [...new Set(below)];
  const known = new Set(
    different.filter((text) => text.length <= 60 && "name" in matchName(key, text, list)),
  );
  return below.filter((text) => known.has(text)).length / below.length;
}

/** "All lengths in feet", said in words above the heads or below the outlets. */
export function unitSaid(lines: readonly ImportedLine[]): LengthUnit | undefined {
  for (const { cells } of lines) {
    for (const cell of cells) {
      const text = textOf(cell);
      const found =
        text.length <= 200 &&
        /\b(?:lengths?|runs?|measure\w*|dimensions?|distances?|figures|values|all|alle|längen|maße|longueurs|mesures|medidas|misure)\b.{0,40}?\b(?:in|en) (m|cm|mm|ft|feet|foot|inch(?:es)?|metres?|meters?|mètres?|metern?|metros|metri|centimet(?:re|er)s?)\b/i.exec(
          text,
        );
      const unit = found ? unitSpelled(found[1]!.replace(/^metern$/i, "meter")) : undefined;
      if (unit) return unit;
    }
  }
  return undefined;
}
