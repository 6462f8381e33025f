/** What a job took from the standards, as it keeps it: a row for each row, its values as they were. */
import { taken } from "../workbooks/multiRoom/names/taken";
import { OF } from "../workbooks/names";
import type { JobInputs } from "../workbooks/definition";
import { SHARED_BLOCKS, SHARED_FIELDS } from "../workbooks/standards/shared";
import { keyed, type Row } from "../workbooks/standards/rows";

/** The rows of a list by what they are known by; fields stand under {@link FIELDS}, each by its name. */
export type Taken = ReadonlyMap<string, ReadonlyMap<string, Row>>;

/** Under which the fields stand. */
export const FIELDS = "fields";

/** Of the standards, all that a job can take; what is blank there says nothing. */
export function takeable({ fields = {}, blocks = {} }: JobInputs): Taken {
  return new Map([
    [
      FIELDS,
      new Map(
        SHARED_FIELDS.flatMap(({ name }) => {
          const value = fields[name];
          return value === undefined ? [] : [[name, { value }]];
        }),
      ),
    ],
    ...SHARED_BLOCKS.map((block): [string, ReadonlyMap<string, Row>] => [
      block.name,
      new Map(keyed(block, blocks[block.name]).map(([key, row]) => [key, row])),
    ]),
  ]);
}

/** @returns undefined for a job that has not drawn on any standards */
export function takenBy({ blocks = {} }: JobInputs): Taken | undefined {
  const rows = blocks[taken[OF].name];
  if (!rows || rows.length === 0) return undefined;
  const lists = new Map<string, Map<string, Row>>();
  for (const { list, line, values } of rows) {
    const row = rowOf(values);
    if (list === undefined || line === undefined || !row) continue;
    const name = String(list);
    lists.set(name, (lists.get(name) ?? new Map<string, Row>()).set(String(line), row));
  }
  return lists;
}

/** What can't be read any more is as if it had not been taken: the job's own then stays. */
function rowOf(values: number | string | undefined): Row | undefined {
  try {
    const row: unknown = JSON.parse(String(values));
    if (typeof row !== "object" || row === null) return undefined;
    return Object.fromEntries(
      Object.entries(row).filter(([, value]) => typeof value === "number" || typeof value === "string"),
    ) as Row;
  } catch {
    return undefined;
  }
}

export const takenRows = (lists: Taken): Row[] =>
  [...lists].flatMap(([list, rows]) =>
    [...rows].map(([line, values]) => ({ list, line, values: JSON.stringify(values) })),
  );
