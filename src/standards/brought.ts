/** A job's inputs brought up to date with the firm's standards, by the differences that were chosen. */
import type { Block, JobInputs } from "../workbooks/definition";
import { log } from "../workbooks/multiRoom/names/log";
import { taken } from "../workbooks/multiRoom/names/taken";
import { OF } from "../workbooks/names";
import { SHARED_BLOCKS } from "../workbooks/standards/shared";
import type { Difference } from "./differences";
import { edition } from "./drawOn";
import type { FirmsStandards } from "./firmsStandards";
import { isOfSentences, keyed, type Row } from "../workbooks/standards/rows";
import { takeable, takenBy, takenRows, type Taken } from "./taken";

/** A line of the job's log. */
export type LogLine = Row;

/**
 * Rows keep their places; new ones follow the last.
 * @param chosen what is taken of {@link differences}
 */
export function brought(
  job: JobInputs,
  standards: FirmsStandards,
  chosen: readonly Difference[],
  line?: LogLine,
): JobInputs {
  const fields = chosen.flatMap(({ field, to }) => (field === undefined ? [] : [[field, to!] as const]));
  const changed = SHARED_BLOCKS.flatMap((block): [string, readonly Row[]][] => {
    const here = chosen.filter(({ list }) => list === block.name);
    return here.length === 0 ? [] : [[block.name, rowsOf(block, job.blocks?.[block.name], here)]];
  });
  const kept = job.blocks?.[log[OF].name] ?? [];
  return {
    fields: { ...job.fields, ...Object.fromEntries(fields), ...edition(standards) },
    blocks: {
      ...job.blocks,
      ...Object.fromEntries(changed),
      ...(line && { [log[OF].name]: [...kept, line] }),
      [taken[OF].name]: takenRows(recordOf(job, standards, chosen)),
    },
  };
}

function rowsOf(block: Block, rows: readonly Row[] = [], chosen: readonly Difference[]): Row[] {
  const places = new Map(keyed(block, rows).map(([key, , index]) => [key, index]));
  const all: Row[] = [...rows];
  for (const { line, column, to } of chosen) {
    const at = places.get(line);
    if (!column || at === undefined) continue;
    const others = Object.entries(all[at]!).filter(([key]) => key !== column.key);
    all[at] = Object.fromEntries([...others, ...(to === undefined ? [] : [[column.key, to] as const])]);
  }
  return [...all, ...chosen.flatMap(({ row }) => (row ? [row] : []))];
}

/**
 * What the job has taken now: of what was taken, as the standards have it; of
 * what was left out, as the job took it, so that it is offered again.
 */
function recordOf(job: JobInputs, standards: FirmsStandards, chosen: readonly Difference[]): Taken {
  const before = takenBy(job);
  const record = new Map(
    [...takeable(standards.inputs)].map(([list, rows]) => {
      const block = SHARED_BLOCKS.find(({ name }) => name === list);
      const here = chosen.filter((one) => one.list === list);
      const mine = block
        ? new Map(keyed(block, job.blocks?.[list]).map(([key, row]) => [key, row]))
        : fieldsOf(job);
      const base = before?.get(list);
      return [
        list,
        block && isOfSentences(block) ? sentences(rows, mine, base, here) : values(rows, mine, base, here),
      ];
    }),
  );
  return record;
}

const fieldsOf = ({ fields = {} }: JobInputs): ReadonlyMap<string, Row> =>
  new Map(Object.entries(fields).map(([name, value]) => [name, { value }]));

type Rows = ReadonlyMap<string, Row>;

function values(rows: Rows, mine: Rows, base: Rows | undefined, chosen: readonly Difference[]): Rows {
  return new Map(
    [...rows].flatMap(([line, row]): [string, Row][] => {
      const here = chosen.filter((one) => (one.field ?? one.line) === line);
      const own = mine.get(line);
      const old = base?.get(line);
      if (here.some((one) => one.row)) return [[line, row]];
      if (!own) return old ? [[line, old]] : [];
      const keys = [...new Set([...Object.keys(row), ...Object.keys(old ?? {})])];
      const taken = keys.flatMap((key) => {
        // What the two have alike counts as taken, however it came to be so.
        const isTaken = own[key] === row[key] || here.some(({ column }) => (column?.key ?? "value") === key);
        const value = isTaken ? row[key] : old?.[key];
        return value === undefined ? [] : [[key, value] as const];
      });
      return [[line, Object.fromEntries(taken)]];
    }),
  );
}

function sentences(rows: Rows, mine: Rows, base: Rows | undefined, chosen: readonly Difference[]): Rows {
  const came = new Set(chosen.map(({ line, to }) => to ?? line));
  const went = new Set(chosen.flatMap(({ line, to }) => (to === undefined ? [] : [line])));
  return new Map([
    ...[...(base ?? [])].filter(([line]) => !went.has(line)),
    ...[...rows].filter(([line]) => mine.has(line) || came.has(line)),
  ]);
}
