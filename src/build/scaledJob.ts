import type { Filling } from "../workbooks/definition";

type Row = Readonly<Record<string, number | string>>;

/** Columns that name a row of the distribution, or what feeds it. */
const NAMED = ["id", "from", "outlet"];

/**
 * A job of many outlets for the bench: the given one over and over, each copy
 * with head units, branches and outlets of its own.
 * @param outlets outlets wanted; a multiple of the given job's, or cut there
 */
export function scaledJob(job: Filling, outlets: number): Filling {
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
  return {
    ...job,
    blocks: {
      ...blocks,
      heads: copied(blocks.heads!),
      branches: copied(blocks.branches!),
      rooms: copied(blocks.rooms!).slice(0, outlets),
    },
  };
}
