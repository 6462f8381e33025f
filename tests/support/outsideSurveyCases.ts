/** Plays the surveys of `fixtures/fieldSurveys` as a host reads them, and counts what became of every line. */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { readTables } from "../../src/hosts/file/readTables";
import { columnLetters } from "../../src/formula/address";
import type { ColumnChoice } from "../../src/workbooks/imported/columns";
import type { ImportedTable } from "../../src/workbooks/imported/table";
import { readSurvey } from "../../src/workbooks/survey/readSurvey";
import type { Survey, SurveySetting } from "../../src/workbooks/survey/survey";

export interface SurveyCase {
  readonly file: string;
  readonly why: string;
  readonly lengths: "m" | "ft";
  readonly parts: Readonly<Record<"cables" | "plates" | "receivers" | "feeds", readonly string[]>>;
  readonly rows: readonly Readonly<Record<string, string | number>>[];
  readonly asks?: readonly {
    readonly line: number;
    readonly about: string;
    readonly words?: readonly (string | number)[];
  }[];
  readonly mayAsk?: readonly number[];
  readonly heads: string;
  readonly mapping?: Readonly<Record<string, string>>;
}

/** The maker's words for the columns of Rooms. */
const KEYS: Readonly<Record<string, string>> = { fed_from: "from", remarks: "note" };
const keyOf = (word: string): string => KEYS[word] ?? word;

export interface Played {
  readonly survey: Survey;
  /** What was said before the columns were chosen as the maker says. */
  readonly before?: Survey;
  readonly right: number;
  /** Lines that were to be asked about, and were. */
  readonly asked: number;
  /** Lines that could have been read, and were asked about. */
  readonly askedTooMuch: readonly string[];
  /** Lines that came out otherwise than they are, or were lost, without a question. */
  readonly wrong: readonly string[];
  /** Read where a question was wanted, and said in a note. */
  readonly said: readonly string[];
}

export const casesIn = (folder: string): SurveyCase[] =>
  readdirSync(folder)
    .filter((name) => /^\d+\.json$/.test(name))
    .sort()
    .map((name) => JSON.parse(readFileSync(path.join(folder, name), "utf8")) as SurveyCase);

export async function play(folder: string, one: SurveyCase): Promise<Played> {
  const { cables, plates, receivers, feeds } = one.parts;
  const setting: SurveySetting = {
    unit: one.lengths,
    lists: { cable: cables, plate: plates, receiver: receivers, from: feeds },
  };
  const tables = await readTables(new Uint8Array(readFileSync(path.join(folder, one.file))));
  const first = readSurvey(tables, setting);
  const mapped =
    first.unsure !== undefined && one.mapping ? remapped(tables, first, setting, one.mapping) : undefined;
  return { ...judge(one, mapped ?? first, first), ...(mapped && { before: first }) };
}

/** As a person chooses in the table: what is not the maker's word is changed. */
function remapped(
  tables: readonly ImportedTable[],
  { columns }: Survey,
  setting: SurveySetting,
  mapping: Readonly<Record<string, string>>,
): Survey {
  const isPaired = Object.values(mapping).filter((word) => word === "outlet").length > 1;
  const wanted = new Map(Object.entries(mapping).map(([head, word]) => [plain(head), word]));
  const seen = new Set<string>();
  const choices = columns.flatMap(({ column, head, key, unit }): [number, ColumnChoice][] => {
    const word = wanted.get(plain(head)) ?? wanted.get(columnLetters(column).toLowerCase());
    if (word === undefined) return [];
    // A second length is added to the first; where there is a second outlet too, it is that one's.
    const isFurther = word === "run" && seen.has("run") && !isPaired;
    const meant = word === "unused" ? undefined : isFurther ? "further" : keyOf(word);
    seen.add(word);
    return [
      [
        column,
        { ...(meant !== undefined && { key: meant }), ...(unit !== undefined && meant === key && { unit }) },
      ],
    ];
  });
  return readSurvey(tables, setting, { columns: Object.fromEntries(choices) });
}

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, " ");

const COMPARED = [
  "floor",
  "room",
  "outlet",
  "receiver",
  "quantity",
  "fed_from",
  "cable",
  "run",
  "shortest",
  "longest",
  "plate",
  "remarks",
];
/** What must not be there where the maker has nothing. */
const NOT_INVENTED = ["shortest", "longest", "receiver", "cable", "plate", "fed_from"];

function judge(one: SurveyCase, survey: Survey, first: Survey): Omit<Played, "before"> {
  const troubled = new Map<number, string>();
  for (const { line, reason, who = "" } of survey.troubles)
    troubled.set(line, `${troubled.get(line) ?? ""} ${who} ${reason}`.trim());
  const notes = survey.notes.join(" ");
  const isSaid = (line: number): boolean => new RegExp(`lines? [^.]*\\b${line}\\b`, "i").test(notes);
  const mayAsk = new Set(one.mayAsk ?? []);
  const asks = new Set((one.asks ?? []).map(({ line }) => line));
  let right = 0;
  let asked = 0;
  const [wrong, said, askedTooMuch]: string[][] = [[], [], []];
  const rows = survey.rows.map((row, index) => ({ row, line: survey.lines[index]!, used: false }));
  for (const expected of one.rows) {
    const at = Number(expected.line);
    const found =
      rows.find(({ line, used, row }) => line === at && !used && row.outlet === expected.outlet) ??
      rows.find(({ line, used }) => line === at && !used);
    if (!found) {
      if (troubled.has(at)) {
        if (mayAsk.has(at)) asked++;
        else if (asks.has(at)) continue;
        else askedTooMuch!.push(`${at}: ${troubled.get(at)}`);
      } else wrong!.push(`${at}: lost`);
      continue;
    }
    found.used = true;
    const differing = COMPARED.filter((word) => !same(word, expected[word], found.row[keyOf(word)]));
    if (differing.length === 0) right++;
    else
      wrong!.push(
        `${at}: ${differing.map((word) => `${word} ${JSON.stringify(found.row[keyOf(word)])} for ${JSON.stringify(expected[word])}`).join(", ")}`,
      );
  }
  for (const { row, line, used } of rows) if (!used) wrong!.push(`${line}: read as ${JSON.stringify(row)}`);
  for (const { line, about, words } of one.asks ?? []) {
    const sentence = about === "head" || line === 1 ? first.unsure : troubled.get(line);
    const isThere = (word: string | number): boolean =>
      sentence!.toLowerCase().includes(String(word).toLowerCase());
    if (sentence !== undefined && (words ?? []).every(isThere)) asked++;
    else if (sentence !== undefined)
      wrong!.push(`${line}: asked without ${(words ?? []).join(", ")}: ${sentence}`);
    else if (isSaid(line) || (about === "head" && survey.notes.length > 0)) said!.push(`${line} (${about})`);
    else wrong!.push(`${line}: not asked (${about}: ${(words ?? []).join(" ")})`);
  }
  return { survey, right, asked, askedTooMuch: askedTooMuch!, wrong: wrong!, said: said! };
}

function same(
  word: string,
  wanted: string | number | undefined | null,
  got: string | number | undefined,
): boolean {
  if (wanted === undefined || wanted === null || wanted === "")
    return got === undefined || !NOT_INVENTED.includes(word);
  if (typeof wanted === "number") return Math.abs(Number(got) - wanted) <= 0.011;
  if (got === undefined) return word === "quantity" && String(wanted) === "1";
  return plain(String(got)) === plain(String(wanted));
}
