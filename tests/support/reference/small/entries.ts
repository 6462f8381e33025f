/**
 * Which entries of a small template are missing or out of bounds, by the rules of its input cells, with the words that
 * its check says of them: the label of a field; of a list the column's head and the first row at fault. Of the
 * definition only the inputs are read: what they ask for, and the bounds.
 */
import { parseRange } from "../../../../src/formula/address";
import type { Book } from "../../../../src/workbooks/book";
import type {
  Block,
  Column,
  Fields,
  InputRule,
  WorkbookDefinition,
} from "../../../../src/workbooks/definition";
import { field, filledRows, isFilled, plain, rowsOf, type Job, type Row, type Value } from "../job";

export interface Entries {
  readonly found: number;
  readonly places: readonly string[];
}

/** Whether a filled cell must be filled here; by the words beside it, its formula is not read. */
export type Needed = Readonly<Record<string, (job: Job) => boolean>>;

/** 1900-01-01 to 9999-12-31, as sheets count days. */
const FIRST_DAY = 1;
const LAST_DAY = 2_958_465;

export function entriesOn(
  definition: WorkbookDefinition,
  sheet: string,
  job: Job,
  book: Book,
  needed: Needed = {},
): Entries {
  const { parts } = definition.sheets.find(({ name }) => name === sheet)!;
  let found = 0;
  const places: string[] = [];
  for (const part of parts) {
    if (part.kind === "fields")
      for (const { label } of wrongFields(definition, part, job, needed)) {
        found++;
        places.push(label);
      }
    if (part.kind === "block")
      for (const column of part.columns) {
        const wrong = wrongRows(definition, part, column, job, book);
        found += wrong.length;
        if (wrong.length > 0) places.push(`${column.head} of ${String(wrong[0])}`);
      }
  }
  return { found, places };
}

const wrongFields = (definition: WorkbookDefinition, { fields }: Fields, job: Job, needed: Needed) =>
  fields.filter(({ name, input }) => {
    if (!input) return false;
    // Blanks alone are no text.
    const isBlank = !isFilled(job.fields, name) || String(job.fields[name]).trim() === "";
    if (isBlank && (input.rule.kind === "text" || !isFilled(job.fields, name)))
      return input.required === true || (needed[name]?.(job) ?? false);
    return !isFit(definition, job, job.fields[name]!, input.rule);
  });

/** Names of the rows at fault in a column; of a row that has lost its name only that is told, by its number. */
function wrongRows(
  definition: WorkbookDefinition,
  { name, rowName, columns }: Block,
  { key, input }: Column,
  job: Job,
  book: Book,
): Value[] {
  const rowKey = rowName ?? columns.find((column) => column.input)?.key ?? "";
  if (!input) return [];
  if (key === rowKey) {
    // Below the thin row, and sheets count from 1.
    const top = parseRange(book.names.find((one) => one.name === `${name}_${key}`)!.range)!.top + 2;
    return rowsOf(job, name).flatMap((row, at) =>
      !isFilled(row, key) && Object.keys(row).some((other) => isFilled(row, other))
        ? [`row ${top + at}`]
        : [],
    );
  }
  return filledRows(job, name, rowKey).flatMap((row: Row) => {
    const isWrong = isFilled(row, key)
      ? !isFit(definition, job, row[key]!, input.rule)
      : input.required === true;
    return isWrong ? [row[rowKey]!] : [];
  });
}

function isFit(definition: WorkbookDefinition, job: Job, value: Value, rule: InputRule["rule"]): boolean {
  switch (rule.kind) {
    case "number": {
      const { min = -Infinity, max = Infinity, integer, atLeast, atMost } = rule;
      if (typeof value !== "number" || value < min || value > max) return false;
      if (integer && !Number.isInteger(value)) return false;
      const isAbove = (over: number, orEqual?: true): boolean => over > 0 || (over === 0 && orEqual === true);
      const blank = (bound: { name: string }): boolean => !isFilled(job.fields, bound.name);
      return (
        (!atLeast || blank(atLeast) || isAbove(value - field(job, atLeast.name), atLeast.orEqual)) &&
        (!atMost || blank(atMost) || isAbove(field(job, atMost.name) - value, atMost.orEqual))
      );
    }
    case "date":
      return typeof value === "number" && value >= FIRST_DAY && value <= LAST_DAY;
    case "choice":
      return rule.choices.some((choice) => plain(choice) === plain(value));
    case "named":
      return offered(definition, job, rule.name).some((one) => plain(one) === plain(value));
    default:
      return true;
  }
}

function offered(definition: WorkbookDefinition, job: Job, name: string): Value[] {
  const words = definition.sheets
    .flatMap(({ parts }) => parts)
    .find((part) => part.kind === "words" && part.name === name);
  if (words?.kind === "words") return [...words.words];
  const [block, key] = name.split("_") as [string, string];
  return rowsOf(job, block).flatMap((row) => (isFilled(row, key) ? [row[key]!] : []));
}
