/**
 * The inputs that differ between two jobs' inputs to one template. Rows are matched
 * by their own name (outlet, id, name), rows without one by what they hold, and
 * never by where they stand: sorting a table changes nothing.
 */
import type {
  Block,
  Column,
  Field,
  JobInputs,
  SheetDefinition,
  WorkbookDefinition,
} from "../workbooks/definition";
import { rowKey } from "../workbooks/rowKey";
import type { CellChange, InputChange, Row, Value } from "./change";
import { renamed, renamesIn, type Rename } from "./renames";
import { shownInput as shown } from "./shownInput";

/**
 * @returns the changes in the order in which they are applied: names first, each in all places at once; then fields, of a
 * part those that were emptied first, because a field filled instead of another
 * would count for nothing beside it; then rows added and changed in the order of the sheets, then rows removed
 * from the last sheet to the first, so that nothing goes while something hangs on it
 */
export function inputChanges(
  definition: WorkbookDefinition,
  olderAsNamed: JobInputs,
  newer: JobInputs,
): InputChange[] {
  const names = renamesIn(definition, olderAsNamed, newer);
  const older = names.reduce(renamed, olderAsNamed);
  const fields: InputChange[] = [];
  const rows: InputChange[] = [];
  const removals: InputChange[] = [];
  for (const sheet of definition.sheets) {
    for (const part of sheet.parts) {
      if (part.kind === "fields") {
        const isEmptied = ({ name }: Field): boolean => newer.fields?.[name] === undefined;
        const filledLast = [
          ...part.fields.filter(isEmptied),
          ...part.fields.filter((field) => !isEmptied(field)),
        ];
        for (const field of filledLast) {
          const change = field.input && fieldChange(sheet.name, part.heading, field, older, newer);
          if (change) fields.push(change);
        }
      } else if (part.kind === "block" && !part.record) {
        for (const change of blockChanges(sheet, part, older, newer)) {
          (change.kind === "removed" ? removals : rows).push(change);
        }
      }
    }
  }
  return [...renameChanges(olderAsNamed, names), ...fields, ...rows, ...removals.reverse()];
}

/** With more new names than these in a column they are told in one line. */
const MOST_NAMES = 4;
const NAMES_SHOWN = 3;

function renameChanges(older: JobInputs, names: readonly Rename[]): InputChange[] {
  const columns = new Map<string, Rename[]>();
  for (const one of names) {
    const column = JSON.stringify([one.block, one.column.key]);
    columns.set(column, [...(columns.get(column) ?? []), one]);
  }
  // One by one they keep the order in which they were found: a name may stand in the row of another.
  const together = [...columns.values()].filter(({ length }) => length > MOST_NAMES);
  const alone = names.filter((one) => !together.some((all) => all.includes(one)));
  const change = (all: readonly Rename[]): InputChange => {
    const [{ sheet, part, block, column }] = all as [Rename];
    const inWords = (of: "before" | "after"): string =>
      listed(
        all.map((one) => String(one[of])),
        NAMES_SHOWN,
      );
    const cells = all.reduce((sum, one) => sum + cellsCalled(older, one), 0);
    return {
      kind: "renamed",
      of: block,
      column: column.key,
      sheet,
      part,
      row: all.length === 1 ? String(all[0]!.before) : `${all.length} names`,
      cells: [
        {
          label: cells > all.length ? `${column.head}, in ${cells} cells` : column.head,
          before: inWords("before"),
          after: inWords("after"),
        },
      ],
      applied: (job) => all.reduce(renamed, job),
    };
  };
  return [...alone.map((one) => change([one])), ...together.map(change)];
}

/** How many cells are called otherwise. */
const cellsCalled = ({ blocks, fields }: JobInputs, { before, columns, fields: named }: Rename): number =>
  columns.reduce(
    (sum, { block, key }) =>
      sum + (blocks?.[block] ?? []).filter((row) => String(row[key] ?? "") === String(before)).length,
    named.filter((name) => String(fields?.[name] ?? "") === String(before)).length,
  );

/** The first of a list, and how many more there are. */
export const listed = (words: readonly string[], most: number): string =>
  words.length <= most
    ? words.join(", ")
    : `${words.slice(0, most).join(", ")} and ${words.length - most} more`;

function fieldChange(
  sheet: string,
  part: string,
  field: Field,
  older: JobInputs,
  newer: JobInputs,
): InputChange | undefined {
  const before = older.fields?.[field.name];
  const after = newer.fields?.[field.name];
  if (before === after) return undefined;
  const cell = { label: field.label, ...pairShown(before, after, field) };
  return {
    kind: "field",
    of: field.name,
    sheet,
    part,
    row: field.label,
    cells: [cell],
    applied: (job) => ({
      ...job,
      fields: Object.fromEntries([
        ...Object.entries(job.fields ?? {}).filter(([name]) => name !== field.name),
        ...(after === undefined ? [] : [[field.name, after] as const]),
      ]),
    }),
  };
}

function blockChanges(
  sheet: SheetDefinition,
  block: Block,
  older: JobInputs,
  newer: JobInputs,
): InputChange[] {
  const columns = block.columns.filter(({ input }) => input);
  const key = rowKey(columns);
  const { same, gone, come } = matched(filled(older, block), filled(newer, block), key);
  const change = (
    kind: InputChange["kind"],
    before: Row | undefined,
    after: Row | undefined,
  ): InputChange => ({
    kind,
    of: block.name,
    ...(before && { before }),
    ...(after && { after }),
    sheet: sheet.name,
    part: block.heading,
    row: rowName(before ?? after!, key, columns),
    cells: differences(columns, before ?? {}, after ?? {}),
    applied: (job) => ({
      ...job,
      blocks: { ...job.blocks, [block.name]: replaced(job, block, before, after) },
    }),
  });
  return [
    ...come.map((row) => change("added", undefined, row)),
    ...same
      .filter(([before, after]) => textOf(before) !== textOf(after))
      .map(([before, after]) => change("changed", before, after)),
    ...gone.map((row) => change("removed", row, undefined)),
  ];
}

const filled = ({ blocks }: JobInputs, { name }: Block): Row[] =>
  (blocks?.[name] ?? []).filter((row) => Object.keys(row).length > 0);

interface Matched {
  readonly same: readonly [Row, Row][];
  readonly gone: readonly Row[];
  readonly come: readonly Row[];
}

/** Rows of one name pair in their order; first those that are alike in all, so that a doubled name stays with its row. */
function matched(older: readonly Row[], newer: readonly Row[], key: string | undefined): Matched {
  const same: [Row, Row][] = [];
  const pair = (gone: readonly Row[], come: readonly Row[], nameOf: (row: Row) => string | undefined) => {
    const waiting = new Map<string, Row[]>();
    for (const row of come) {
      const name = nameOf(row);
      if (name !== undefined) waiting.set(name, [...(waiting.get(name) ?? []), row]);
    }
    const taken = new Set<Row>();
    const left = gone.filter((row) => {
      const found = waiting.get(nameOf(row) ?? "")?.shift();
      if (!found) return true;
      same.push([row, found]);
      taken.add(found);
      return false;
    });
    return { gone: left, come: come.filter((row) => !taken.has(row)) };
  };
  const alike = pair(older, newer, textOf);
  if (key === undefined) return { same, ...alike };
  const byName = pair(alike.gone, alike.come, (row) =>
    row[key] === undefined ? undefined : String(row[key]),
  );
  return { same, ...byName };
}

const textOf = (row: Row): string =>
  JSON.stringify(Object.entries(row).sort(([one], [other]) => (one < other ? -1 : 1)));

function replaced(job: JobInputs, block: Block, before: Row | undefined, after: Row | undefined): Row[] {
  const rows = [...(job.blocks?.[block.name] ?? [])];
  const at = before === undefined ? -1 : indexOf(rows, before);
  if (at < 0) return after ? [...rows, after] : rows;
  rows.splice(at, 1, ...(after ? [after] : []));
  return rows;
}

/** A row that was given another name is no longer the very same. */
function indexOf(rows: readonly Row[], row: Row): number {
  const at = rows.indexOf(row);
  if (at >= 0) return at;
  const text = textOf(row);
  return rows.findIndex((one) => textOf(one) === text);
}

function rowName(row: Row, key: string | undefined, columns: readonly Column[]): string {
  const named = key === undefined ? undefined : row[key];
  if (named !== undefined) return String(named);
  const first = columns.find((column) => row[column.key] !== undefined);
  return first ? (shown(row[first.key], first) ?? "") : "";
}

const differences = (columns: readonly Column[], before: Row, after: Row): CellChange[] =>
  columns.flatMap((column) => {
    const [old, now] = [before[column.key], after[column.key]];
    return old === now ? [] : [{ label: column.head, ...pairShown(old, now, column) }];
  });

/** Two texts that look alike but for their blanks or a text beside a number are shown with their ends. */
function pairShown(
  before: Value | undefined,
  after: Value | undefined,
  of: Pick<Column, "format" | "unit">,
): Pick<CellChange, "before" | "after"> {
  const looks = [shown(before, of), shown(after, of)] as const;
  const alike = plainly(looks[0]) === plainly(looks[1]);
  const [old, now] = alike ? [withEnds(before, looks[0]), withEnds(after, looks[1])] : looks;
  return { before: old, after: now };
}

const plainly = (text: string | null): string => (text ?? "").replace(/\s+/g, " ").trim();

const withEnds = (value: Value | undefined, text: string | null): string | null =>
  typeof value === "string" ? `“${value}”` : text;
