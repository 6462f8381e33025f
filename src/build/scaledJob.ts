import type { JobInputs } from "../workbooks/definition";

type Row = Readonly<Record<string, number | string>>;

/** Lists of the distribution from dish to outlet, and their columns that name a row of it. */
const COPIED = {
  dishes: ["name"],
  feeders: ["from", "to"],
  heads: ["id", "dish"],
  branches: ["id", "from"],
  rooms: ["outlet", "from"],
} as const;

/**
 * A job of many outlets for the bench: the given one over and over, each copy
 * with dishes, head units, devices and outlets of its own.
 * @param outlets outlets wanted; a multiple of the given job's, or cut there
 */
export function scaledJob(job: JobInputs, outlets: number): JobInputs {
  const blocks = job.blocks!;
  const copies = Math.ceil(outlets / blocks.rooms!.length);
  const copied = (rows: readonly Row[], named: readonly string[]): Row[] =>
    Array.from({ length: copies }, (_, copy) =>
      rows.map((row) => ({
        ...row,
        ...Object.fromEntries(
          named.filter((key) => key in row).map((key) => [key, `${row[key]}-${copy + 1}`]),
        ),
      })),
    ).flat();
  const scaled = Object.fromEntries(
    Object.entries(COPIED).map(([list, named]) => [list, copied(blocks[list] ?? [], named)]),
  );
  return { ...job, blocks: { ...blocks, ...scaled, rooms: scaled.rooms!.slice(0, outlets) } };
}
