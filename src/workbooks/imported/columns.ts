/**
 * What the columns of a file are taken for: guessed first, shown with a few of their values, changed by a person,
 * and remembered by the file's heads.
 */
import { columnLetters } from "../../formula/address";
import { asWord } from "../typed/plainText";
import { textOf, type ImportedLine } from "./table";

/** What a column can be taken for. */
export interface ColumnMeaning {
  readonly key: string;
  /** As people call it. */
  readonly name: string;
  /** Units of which a column of it has one; the first is the usual. */
  readonly units?: readonly string[];
  /** Without it the file can't be read. */
  readonly needed?: boolean;
  /** Several columns may be taken for it. */
  readonly several?: boolean;
}

/** A column of the file and what it is taken for. */
export interface MappedColumn {
  /** Counted from 0. */
  readonly column: number;
  /** As the file has it; `column C` where it has none. */
  readonly head: string;
  readonly samples: readonly string[];
  /** Absent for a column that is not used. */
  readonly key?: string;
  /** Of a column whose meaning has units. */
  readonly unit?: string;
}

/** What a person chose for a column. */
export interface ColumnChoice {
  /** Absent for "not used". */
  readonly key?: string;
  readonly unit?: string;
}

/** By the column, counted from 0; one that is not there keeps what was guessed. */
export type ColumnChoices = Readonly<Record<number, ColumnChoice>>;

/** How a column is called that has no head. */
export const headless = (column: number): string => `column ${columnLetters(column)}`;

const SAMPLES = 3;
const LONGEST_SAMPLE = 40;

/** The first few different texts of a column. */
export function samplesOf(lines: readonly ImportedLine[], column: number): string[] {
  const samples = new Set<string>();
  for (const { cells } of lines) {
    const text = textOf(cells[column]);
    if (text !== "")
      samples.add(text.length > LONGEST_SAMPLE ? `${text.slice(0, LONGEST_SAMPLE - 1)}…` : text);
    if (samples.size === SAMPLES) break;
  }
  return [...samples];
}

/**
 * Puts a person's choices in the place of what was guessed; a guess gives way to a choice of the same meaning.
 * @param guessed all columns of the file
 */
export function withChoices(
  guessed: readonly MappedColumn[],
  choices: ColumnChoices,
  meanings: readonly ColumnMeaning[],
): MappedColumn[] {
  const several = new Set(meanings.flatMap(({ key, several }) => (several ? [key] : [])));
  const chosen = new Set(
    guessed.flatMap(({ column }) => {
      const key = choices[column]?.key;
      return key === undefined || several.has(key) ? [] : [key];
    }),
  );
  return guessed.map((one) => {
    const { column, head, samples } = one;
    const choice = choices[column];
    if (!choice) return one.key !== undefined && chosen.has(one.key) ? { column, head, samples } : one;
    const { key, unit } = choice;
    return { column, head, samples, ...(key !== undefined && { key }), ...(unit !== undefined && { unit }) };
  });
}

/** A sentence where two columns are taken for one thing that has only one. */
export function takenTwice(
  columns: readonly MappedColumn[],
  meanings: readonly ColumnMeaning[],
): string | undefined {
  for (const { key, name, several } of meanings) {
    const [one, other] = columns.filter((column) => column.key === key);
    if (!several && one && other)
      return `The columns “${one.head}” and “${other.head}” are both taken for “${name}”. Choose one, and “not used” for the other.`;
  }
  return undefined;
}

/** Columns without a head are no sign by which a file is known again. */
export const haveHeads = (columns: readonly MappedColumn[]): boolean =>
  columns.some(({ column, head }) => head !== headless(column));

/** A mapping as it is kept: by the heads of the file, in their order. */
export interface RememberedMapping {
  readonly heads: readonly string[];
  /** For each head. */
  readonly choices: readonly ColumnChoice[];
}

export const remember = (columns: readonly MappedColumn[]): RememberedMapping => ({
  heads: columns.map(({ head }) => asWord(head)),
  choices: columns.map(({ key, unit }) => ({
    ...(key !== undefined && { key }),
    ...(unit !== undefined && { unit }),
  })),
});

export const sameHeads = (columns: readonly MappedColumn[], { heads }: RememberedMapping): boolean =>
  columns.length === heads.length && columns.every(({ head }, index) => asWord(head) === heads[index]);

/** The choices of an earlier file with the same heads; undefined where there was none. */
export function rememberedFor(
  columns: readonly MappedColumn[],
  kept: readonly RememberedMapping[],
  meanings: readonly ColumnMeaning[],
): ColumnChoices | undefined {
  const known = new Set(meanings.map(({ key }) => key));
  const found = kept.find(
    (one) => sameHeads(columns, one) && one.choices.every(({ key }) => key === undefined || known.has(key)),
  );
  return found && Object.fromEntries(columns.map(({ column }, index) => [column, found.choices[index]!]));
}

const MOST_KEPT = 40;

/** The newest first. */
export const keepMapping = (
  kept: readonly RememberedMapping[],
  columns: readonly MappedColumn[],
): RememberedMapping[] => [remember(columns), ...forgetMapping(kept, columns)].slice(0, MOST_KEPT);

export const forgetMapping = (
  kept: readonly RememberedMapping[],
  columns: readonly MappedColumn[],
): RememberedMapping[] => kept.filter((one) => !sameHeads(columns, one));

/** What was stored by an older version or by another program is not trusted. */
export function checkedMappings(stored: unknown): RememberedMapping[] {
  if (!Array.isArray(stored)) return [];
  const isText = (value: unknown): boolean => value === undefined || typeof value === "string";
  return (stored as Partial<RememberedMapping>[])
    .filter(
      (one) =>
        Array.isArray(one?.heads) &&
        Array.isArray(one.choices) &&
        one.heads.length === one.choices.length &&
        one.heads.every((head) => typeof head === "string") &&
        one.choices.every(
          (choice) => typeof choice === "object" && isText(choice?.key) && isText(choice?.unit),
        ),
    )
    .slice(0, MOST_KEPT) as RememberedMapping[];
}

/** What is kept after a file was taken in. */
export function mappingsAfter(
  kept: readonly RememberedMapping[] = [],
  toRemember: readonly MappedColumn[] | undefined,
  forgotten: readonly MappedColumn[] | undefined,
): RememberedMapping[] {
  const rest = forgotten ? forgetMapping(kept, forgotten) : [...kept];
  return toRemember ? keepMapping(rest, toRemember) : rest;
}

/** As a part of settings that may have none. */
export function keptMappings(stored: unknown): { mappings?: RememberedMapping[] } {
  const mappings = checkedMappings(stored);
  return mappings.length > 0 ? { mappings } : {};
}

/**
 * A choice as the command takes it: `Length to riser=run`, `C=run (ft)`, `Paint=not used`.
 * @returns a sentence where the file has no such column, or the column can't be that
 */
export function choiceFrom(
  text: string,
  columns: readonly MappedColumn[],
  meanings: readonly ColumnMeaning[],
): { readonly column: number; readonly choice: ColumnChoice } | string {
  const at = text.lastIndexOf("=");
  const [head, meant] = at < 0 ? [text, ""] : [text.slice(0, at), text.slice(at + 1)];
  const wanted = asWord(head);
  const found =
    columns.find((one) => asWord(one.head) === wanted) ??
    columns.find(({ column }) => columnLetters(column).toLowerCase() === wanted);
  if (!found)
    return `There is no column “${head.trim()}” in the file. It has ${columns.map((one) => `“${one.head}”`).join(", ")}; its letter does as well.`;
  const [, word = "", unit] = /^\s*(.*?)\s*(?:\(([^()]*)\))?\s*$/.exec(meant)!;
  if (/^(?:not used|unused|none|-)?$/.test(asWord(word))) return { column: found.column, choice: {} };
  const meaning = meanings.find((one) => asWord(one.name) === asWord(word) || one.key === asWord(word));
  if (!meaning)
    return `“${word}” is nothing that a column can be. Give one of: ${meanings.map(({ name }) => name).join(", ")}, not used.`;
  const named = unit?.trim();
  if (named !== undefined && !meaning.units?.includes(named))
    return `“${meaning.name}” is given in ${meaning.units?.join(" or ") ?? "no unit"}, not in “${named}”.`;
  return {
    column: found.column,
    choice: { key: meaning.key, ...(named !== undefined && { unit: named }) },
  };
}
