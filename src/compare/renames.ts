/**
 * What is only called otherwise in the newer revision, everywhere: an outlet, a device, a part, a floor. Its row is
 * the same but for its name, or every cell that named it names it otherwise; a name that is left behind somewhere is
 * no rename of that place.
 */
import type { Block, Column, Field, JobInputs, WorkbookDefinition } from "../workbooks/definition";
import { rowKey } from "../workbooks/rowKey";
import type { Row, Value } from "./change";

export interface Rename {
  readonly sheet: string;
  readonly part: string;
  readonly block: string;
  /** The column that is called so: the rows' own name, or where they are. */
  readonly column: Pick<Column, "key" | "head">;
  readonly before: Value;
  readonly after: Value;
  /** Every cell of these that held the one holds the other. */
  readonly columns: readonly { readonly block: string; readonly key: string }[];
  readonly fields: readonly string[];
}

/** Columns that say where something is, in words of the building: nothing is built otherwise when they are. */
const PLACES: ReadonlySet<string> = new Set(["floor", "room"]);

interface BlockHere {
  readonly sheet: string;
  readonly block: Block;
  readonly key: string | undefined;
}

/** @returns in an order in which each can be made of the job that those before it left */
export function renamesIn(definition: WorkbookDefinition, older: JobInputs, newer: JobInputs): Rename[] {
  const blocks = definition.sheets.flatMap(({ name, parts }) =>
    parts.flatMap((part): BlockHere[] =>
      part.kind === "block" && !part.record
        ? [{ sheet: name, block: part, key: rowKey(part.columns.filter(({ input }) => input)) }]
        : [],
    ),
  );
  const fields = definition.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => (part.kind === "fields" ? part.fields : [])),
  );
  const found: Rename[] = [];
  let job = older;
  // A row whose device has another name is the same again once that is known.
  for (let before = -1; before !== found.length;) {
    before = found.length;
    for (const here of blocks)
      for (const rename of ofBlock(here, blocks, fields, job, newer)) {
        found.push(rename);
        job = renamed(job, rename);
      }
  }
  return found;
}

export function renamed(job: JobInputs, { before, after, columns, fields }: Rename): JobInputs {
  const blocks = { ...job.blocks };
  for (const { block, key } of columns)
    blocks[block] = (blocks[block] ?? []).map((row) =>
      isCalled(row[key], before) ? { ...row, [key]: after } : row,
    );
  const changed = fields.filter((name) => isCalled(job.fields?.[name], before));
  return {
    ...job,
    blocks,
    ...(changed.length > 0 && {
      fields: { ...job.fields, ...Object.fromEntries(changed.map((name) => [name, after])) },
    }),
  };
}

const isCalled = (value: Value | undefined, name: Value): boolean =>
  value !== undefined && String(value) === String(name);

const plainly = (text: string): string => text.replace(/\s+/g, " ").trim();

const rowsOf = ({ blocks }: JobInputs, block: string): readonly Row[] => blocks?.[block] ?? [];

/** What the columns of some rows hold: it is asked of every pair of rows that could be the same. */
const values = new WeakMap<readonly Row[], Map<string, ReadonlySet<string>>>();
const NONE: ReadonlySet<string> = new Set();

function valuesOf({ blocks }: JobInputs, block: string, key: string): ReadonlySet<string> {
  const rows = blocks?.[block];
  if (!rows) return NONE;
  const known = values.get(rows) ?? new Map<string, ReadonlySet<string>>();
  values.set(rows, known);
  const found =
    known.get(key) ?? new Set(rows.flatMap((row) => (row[key] === undefined ? [] : [String(row[key])])));
  known.set(key, found);
  return found;
}

function* ofBlock(
  here: BlockHere,
  blocks: readonly BlockHere[],
  fields: readonly Field[],
  older: JobInputs,
  newer: JobInputs,
): Generator<Rename> {
  const { sheet, block, key } = here;
  if (key === undefined) return;
  const [had, has] = [valuesOf(older, block.name, key), valuesOf(newer, block.name, key)];
  const isNamed = (row: Row, other: ReadonlySet<string>): boolean =>
    row[key] !== undefined && !other.has(String(row[key]));
  const left = rowsOf(newer, block.name).filter((row) => isNamed(row, had));
  const renameOf = (column: string, before: Value, after: Value): Rename => ({
    sheet,
    part: block.heading,
    block: block.name,
    column: block.columns.find((one) => one.key === column)!,
    before,
    after,
    ...placesOf(here, column, { before, after }, blocks, fields, older, newer),
  });
  for (const row of rowsOf(older, block.name).filter((one) => isNamed(one, has))) {
    const at = left.findIndex((one) => {
      if (sameBut(key, row, one)) return true;
      if (!nearlySame(key, row, one)) return false;
      const { columns, fields: named } = renameOf(key, row[key]!, one[key]!);
      // Its own column is one of them.
      return columns.length + named.length > 1;
    });
    if (at < 0) continue;
    const [now] = left.splice(at, 1);
    yield renameOf(key, row[key]!, now![key]!);
  }
  const byKey = new Map(rowsOf(newer, block.name).map((row) => [String(row[key]), row]));
  for (const { key: column, input } of block.columns) {
    if (!input || !PLACES.has(column)) continue;
    const [before, after] = [valuesOf(older, block.name, column), valuesOf(newer, block.name, column)];
    for (const gone of [...before].filter((value) => !after.has(value))) {
      const rows = rowsOf(older, block.name).filter((row) => isCalled(row[column], gone));
      // A floor may be a number, and stays one.
      const now = new Map(
        rows.flatMap((row) => {
          const same = byKey.get(String(row[key]));
          return same ? [[String(same[column] ?? ""), same[column]] as const] : [];
        }),
      );
      const [[name, value] = []] = [...now];
      // What differs in its blanks only is a slip of somebody's, told at its row.
      if (now.size === 1 && name !== "" && !before.has(name!) && plainly(name!) !== plainly(gone))
        yield renameOf(column, gone, value!);
    }
  }
}

/** Every column and field in which the one name gave way to the other. */
function placesOf(
  { block, key }: BlockHere,
  column: string,
  { before, after }: { readonly before: Value; readonly after: Value },
  blocks: readonly BlockHere[],
  fields: readonly Field[],
  older: JobInputs,
  newer: JobInputs,
): Pick<Rename, "columns" | "fields"> {
  const own = `${block.name}_${column}`;
  const names = (one: Pick<Column, "input"> | Field): boolean =>
    one.input?.rule.kind === "named"
      ? one.input.rule.name === own
      : one.input?.rule.kind === "text" && column === key;
  const gaveWay = (had: ReadonlySet<string>, has: ReadonlySet<string>): boolean =>
    had.has(String(before)) && !has.has(String(before)) && has.has(String(after));
  return {
    columns: blocks.flatMap(({ block: other, key: ownName }) =>
      other.columns.flatMap((one) => {
        const isOwn = other.name === block.name && one.key === column;
        const mayName = PLACES.has(column)
          ? one.key === column && one.input
          : one.key !== ownName && names(one);
        return (isOwn || mayName) &&
          gaveWay(valuesOf(older, other.name, one.key), valuesOf(newer, other.name, one.key))
          ? [{ block: other.name, key: one.key }]
          : [];
      }),
    ),
    fields: fields
      .filter(
        (field) =>
          field.input?.rule.kind === "named" &&
          names(field) &&
          isCalled(older.fields?.[field.name], before) &&
          isCalled(newer.fields?.[field.name], after),
      )
      .map(({ name }) => name),
  };
}

const otherCells = (key: string, row: Row): [string, Value][] =>
  Object.entries(row).filter(([name]) => name !== key);

/** The same row under another name; a row that holds little else may be any. */
function sameBut(key: string, before: Row, after: Row): boolean {
  const cells = otherCells(key, before);
  return (
    cells.length > 1 &&
    cells.length === otherCells(key, after).length &&
    cells.every(([name, value]) => after[name] === value)
  );
}

/** More of it is as it was than is not. */
function nearlySame(key: string, before: Row, after: Row): boolean {
  const names = new Set([...otherCells(key, before), ...otherCells(key, after)].map(([name]) => name));
  const same = [...names].filter((name) => before[name] === after[name]).length;
  return same > names.size - same;
}
