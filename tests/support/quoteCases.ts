/**
 * The outsider's cases (tests/fixtures/quotes/README.md) as books: the edits
 * of a case are put into the demonstration's inputs, or typed over a formula
 * of the book that is laid out from it.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { address, parseRange } from "../../src/formula/address";
import type { Book, BookCell } from "../../src/workbooks/book";
import type { JobInputs, WorkbookDefinition } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { singleDrop, singleDropExample } from "../../src/workbooks/singleDrop/definition";
import {
  CHECK_CELLS,
  FORMULA_CELLS,
  GONE,
  PLACEHOLDERS,
  renamed,
  SUPPLIED_BELOW,
  type Copy,
} from "./movedSince";
import { BELOW, BELOW_KIND } from "./suppliedBelow";

type Value = number | string | null;
export interface Edit {
  readonly field?: string;
  readonly column?: string;
  readonly row?: string;
  /** 1-based. */
  readonly index?: number;
  readonly formulaCell?: string;
  readonly "delete row"?: { readonly column: string; readonly row: string; readonly index: number };
  readonly value?: Value;
  readonly type?: "date" | "text" | "formula";
  readonly cell?: string;
}

export interface Cause {
  readonly name: string;
  readonly row?: string | number | null;
  readonly cell?: string;
}

export interface QuoteCase {
  readonly id: string;
  readonly book: string;
  readonly what: string;
  readonly edits: readonly Edit[];
  readonly baseEdits?: readonly Edit[];
}

export interface MistakeCase extends QuoteCase {
  readonly kind: string;
  readonly mustBeNamedBy: "checks" | "review" | "either" | "both";
  readonly severity: "wrong" | "doubtful" | "note";
  readonly cause: Cause | readonly Cause[];
  readonly symptomsNotToBlame: readonly string[];
  readonly money: {
    readonly movesMoney: boolean;
    readonly direction: string;
    readonly estimate: number;
    readonly share: number;
    readonly totalBefore: number;
    readonly totalAfter: number;
  };
  readonly fair: boolean;
}

export interface CleanCase extends QuoteCase {
  readonly mayBeANote?: string;
}

export interface CustomerCase extends QuoteCase {
  readonly look: string;
  readonly mustNotShow: readonly string[];
  readonly mustShow: string;
  readonly checkMustSay: string;
}

export interface CompareCase extends QuoteCase {
  readonly first: readonly Edit[];
  readonly mustSay: readonly string[];
  readonly mustNotSay: readonly string[];
  readonly inputChanges: number;
  readonly ownTotalBefore?: number;
  readonly ownTotalAfter?: number;
}

const read = <T>(file: string): T =>
  JSON.parse(readFileSync(join(__dirname, "../fixtures/quotes", `${file}.json`), "utf8")) as T;

export const mistakeCases = read<MistakeCase[]>("mistakes");
export const cleanCases = read<CleanCase[]>("clean");
export const customerCases = read<CustomerCase[]>("customer");
export const compareCases = read<CompareCase[]>("compare");

const house = read<JobInputs>("house");
const block = read<JobInputs>("block");
/** Its head units of the higher voltage, each with a supply of its own. */
const houseSuppliedBelow: JobInputs = {
  ...house,
  blocks: {
    ...house.blocks,
    heads: house.blocks!.heads!.map((row) => ({ ...row, type: BELOW_KIND, supply: BELOW })),
  },
};

const BOOKS: Readonly<Record<string, { definition: WorkbookDefinition; inputs: JobInputs }>> = {
  "multi-room": { definition: multiRoom, inputs: startingPoint },
  "multi-room-demonstration": { definition: multiRoom, inputs: house },
  "multi-room-apartment-block": { definition: multiRoom, inputs: block },
  "single-drop-demonstration": { definition: singleDrop, inputs: singleDropExample },
};

/** The columns that name a block's rows, where it is not the first. */
const ROW_NAMES: Readonly<Record<string, string>> = { rooms: "outlet" };

/** Whether every cell that the case writes to exists, and its mistake is still one. */
export const hasItsCells = ({ id, edits }: QuoteCase): boolean =>
  !(id in GONE) && edits.every(({ field }) => !field?.startsWith("<") || field in PLACEHOLDERS);

const fullDate = /^(\d{4})-(\d{2})-(\d{2})$/;

function valueOf({ value: given, type }: Edit): number | string | undefined {
  const value = renamed(given);
  if (value === null || value === undefined) return undefined;
  const date = type === "date" ? fullDate.exec(String(value)) : null;
  return date ? sheetDate(Number(date[1]), Number(date[2]), Number(date[3])) : value;
}

/** Block and key of a name such as `rooms_built_low`. */
function columnOf(definition: WorkbookDefinition, name: string): { block: string; key: string } {
  for (const { parts } of definition.sheets)
    for (const part of parts)
      if (part.kind === "block")
        for (const { key, input } of part.columns)
          if (input && `${part.name}_${key}` === name) return { block: part.name, key };
  throw new Error(`no input column ${name}`);
}

function apply(definition: WorkbookDefinition, copy: Copy, edits: readonly Edit[]): void {
  const before = JSON.parse(JSON.stringify(copy)) as Copy;
  /** By the name that the row had before the case; by its place where no row has that name. */
  const rowAt = (block: string, called: string | undefined, index: number | undefined): number => {
    const row = renamed(called);
    const rows = before.blocks[block] ?? [];
    const name = ROW_NAMES[block] ?? columnsOf(definition, block)[0]!;
    const at = (index ?? 0) - 1;
    if (row === undefined || String(rows[at]?.[name]) === row) return at;
    const found = rows.findIndex((one) => String(one[name]) === row);
    if (found < 0 && index === undefined) throw new Error(`no ${block} ${row}`);
    return found < 0 ? at : found;
  };
  for (const edit of edits) {
    const value = valueOf(edit);
    if (edit.field !== undefined) {
      const placeholder = PLACEHOLDERS[edit.field];
      if (placeholder) placeholder(copy, value!);
      else if (value === undefined) delete copy.fields[edit.field];
      else copy.fields[edit.field] = value;
    } else if (edit.column !== undefined) {
      const { block, key } = columnOf(definition, edit.column);
      const rows = (copy.blocks[block] ??= []);
      const at = rowAt(block, edit.row, edit.index);
      while (rows.length <= at) rows.push({});
      if (value === undefined) delete rows[at]![key];
      else rows[at]![key] = value;
    } else if (edit["delete row"]) {
      const { column, row, index } = edit["delete row"];
      const { block } = columnOf(definition, column);
      copy.blocks[block]!.splice(rowAt(block, row, index), 1);
    }
  }
  // On which dish it stands is a column that the outsider's workbook did not have.
  for (const head of copy.blocks.heads ?? [])
    if (["id", "type", "cable", "length"].every((key) => head[key] === undefined)) delete head.dish;
  const used = new Set(copy.blocks.heads?.map(({ dish }) => dish));
  if (copy.blocks.dishes) copy.blocks.dishes = copy.blocks.dishes.filter(({ name }) => used.has(name));
}

const columnsOf = (definition: WorkbookDefinition, block: string): string[] =>
  definition.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) =>
      part.kind === "block" && part.name === block ? part.columns.map(({ key }) => key) : [],
    ),
  );

/** Where a formula cell of a case lies in this book. */
export function formulaPlace(book: Book, formulaCell: string): { sheet: string; cell: string } {
  const known = FORMULA_CELLS[formulaCell];
  if (known) {
    const [wanted, row, column] = known;
    const { sheet, range } = book.names.find(({ name }) => name === wanted)!;
    const zone = parseRange(range)!;
    return { sheet, cell: address(zone.top + row - 1, zone.left + column - 1) };
  }
  const words = CHECK_CELLS[formulaCell];
  const checks = book.sheets.find(({ name }) => name === "Checks")!;
  const found = Object.entries(checks.cells).find(
    ([at, { value }]) => /^[AB]\d+$/.test(at) && words?.test(String(value)),
  );
  if (!found) throw new Error(`no cell ${formulaCell}`);
  return { sheet: "Checks", cell: `D${found[0].slice(1)}` };
}

function typeOver(book: Book, edits: readonly Edit[]): void {
  for (const edit of edits.filter(({ formulaCell }) => formulaCell)) {
    const { sheet, cell } = formulaPlace(book, edit.formulaCell!);
    const { cells } = book.sheets.find(({ name }) => name === sheet)!;
    const { look } = cells[cell] ?? {};
    const value = valueOf(edit);
    const content: BookCell =
      edit.type === "formula"
        ? { formula: String(value).replace(/^=/, "") }
        : value === undefined
          ? {}
          : { value };
    cells[cell] = { ...(look === undefined ? {} : { look }), ...content };
  }
}

const copyOf = (inputs: JobInputs): Copy =>
  JSON.parse(JSON.stringify({ fields: inputs.fields ?? {}, blocks: inputs.blocks ?? {} })) as Copy;

/** The edit that gave H3 enough volts: now its trunk is changed for the copper one. */
const mendsVolts = ({ column, row, value }: Edit): boolean =>
  column === "heads_supply" && row === "H3" && value === "inserter 24 V";

/** The inputs and the book, not yet computed, after some edits. */
function edited({ id, book }: QuoteCase, ...given: (readonly Edit[])[]): { inputs: JobInputs; book: Book } {
  const below = SUPPLIED_BELOW.has(id);
  const { definition, inputs } = below ? { definition: multiRoom, inputs: houseSuppliedBelow } : BOOKS[book]!;
  const edits = given.map((list) =>
    list.map((edit): Edit =>
      mendsVolts(edit) && !below ? { ...edit, column: "heads_cable", value: "trunk" } : edit,
    ),
  );
  const copy = copyOf(inputs);
  for (const list of edits) apply(definition, copy, list);
  const laidOut = layOut(definition, copy);
  for (const list of edits) typeOver(laidOut, list);
  return { inputs: copy, book: laidOut };
}

/** Before a case's mistake, not yet computed. */
export const before = (one: QuoteCase): { inputs: JobInputs; book: Book } => edited(one, one.baseEdits ?? []);
/** With it, not yet computed. */
export const after = (one: QuoteCase): { inputs: JobInputs; book: Book } =>
  edited(one, one.baseEdits ?? [], one.edits);

const computedBefore = new Map<string, Book>();
/** Computed once for all cases that begin alike. */
export function computedBase(one: QuoteCase): Book {
  const key = JSON.stringify([one.book, one.baseEdits ?? [], SUPPLIED_BELOW.has(one.id)]);
  let book = computedBefore.get(key);
  if (!book) computedBefore.set(key, (book = recalculate(before(one).book)));
  return book;
}

export type CheckLine = ReturnType<typeof summarise>["checks"][number];

/** The lines of Checks that a case brings about: they stood better before, or found something else. */
export function broughtAbout(base: Book, book: Book): readonly CheckLine[] {
  const earlier = new Map(summarise(base).checks.map((line) => [line.what, line]));
  return summarise(book).checks.filter(({ what, result, found, where }) => {
    const was = earlier.get(what);
    return result !== "ok" && (was?.result !== result || was.found !== found || was.where !== where);
  });
}

/** The words for a cause: the label of a field; the row's name in a block, or the column's head; the sheet of a formula typed over. */
export function wordsOf(book: string, cause: Cause): readonly string[] {
  const name = cause.name.replace(/^<(\w+)>$/, "$1");
  const row = renamed(cause.row);
  const typedOver = /^([^!]+)!/.exec(name);
  if (typedOver) return [typedOver[1]!];
  for (const { name: sheet, parts } of BOOKS[book]!.definition.sheets)
    for (const part of parts) {
      if (part.kind === "fields")
        for (const field of part.fields) if (field.name === name) return [field.label];
      if (part.kind === "block")
        for (const { key, head } of part.columns)
          if (`${part.name}_${key}` === name)
            // A row is told by its name, or by its number where it has lost that; of one that is gone its list is named.
            return typeof row === "string"
              ? [row, `${head} of row`]
              : [head, ...(row === null ? [part.heading, sheet] : [])];
    }
  return [];
}

/** Whether one of the lines says one of the words. */
export const names = (lines: readonly CheckLine[], words: readonly string[]): boolean =>
  lines.some(({ what, where }) =>
    words.some((word) => `${what} ${where}`.toLowerCase().includes(word.trim().toLowerCase())),
  );
