import type { JobInputs } from "../workbooks/definition";

type Row = Readonly<Record<string, number | string>>;

/** Columns that name a row of the distribution, or what feeds it. */
const NAMED = ["id", "from", "outlet", "at"];

/**
 * A job of many outlets for the bench: the given one over and over, each copy
 * with head units, branches and outlets of its own.
 * @param outlets outlets wanted; a multiple of the given job's, or cut there
 */
export function scaledJob(job: JobInputs, outlets: number): JobInputs {
  const blocks = job.blocks!;
  const copies = Math.ceil(outlets / blocks.rooms!.length);
  const copied = (rows: readonly Row[]): Row[] =>
    Array.from({ length: copies }, (_, copy) =>
      rows.map((row) => ({
        ...row,
        ...Object.fromEntries(
          NAMED.filter((key) => key in row).map((key) => [key, `${row[key]}-${copy + 1}`]),
        ),
      })),
    ).flat();
  const rooms = copied(blocks.rooms!);
  const cut = new Map(rooms.slice(outlets).map(({ outlet, from }) => [outlet, from]));
  return {
    ...job,
    blocks: {
      ...blocks,
      // Where the outlet that feeds a head unit is cut away, its branch takes its place.
      heads: copied(blocks.heads!).map((row) => (cut.has(row.at) ? { ...row, at: cut.get(row.at)! } : row)),
      branches: copied(blocks.branches!),
      rooms: rooms.slice(0, outlets),
    },
  };
}
