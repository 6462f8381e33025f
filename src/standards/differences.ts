/**
 * How the firm's standards differ from what a job has of them, line by line. A
 * job knows what it took: by that, what was changed in the standards since is
 * told from what was changed in the job by hand, which is kept unless somebody
 * asks for it.
 */
import { shownInput } from "../compare/shownInput";
import type { Block, Column, JobInputs } from "../workbooks/definition";
import { PRICED } from "../workbooks/multiRoom/priceChecks";
import { OF } from "../workbooks/names";
import { SHARED_BLOCKS, SHARED_FIELDS } from "../workbooks/standards/shared";
import type { FirmsStandards } from "./firmsStandards";
import { filledColumns, isOfSentences, keyColumns, keyed, type Row } from "../workbooks/standards/rows";
import { FIELDS, takeable, takenBy, type Taken } from "./taken";

/** Lists whose rows are parts: they have prices. */
export const PART_LISTS: ReadonlySet<string> = new Set(PRICED.map((of) => of[OF].name));

export interface Difference {
  /** Counts from 1, in the order of the standards: what it is called by. */
  readonly number: number;
  /**
   * - changed: the standards have another value
   * - new: the standards have a row that the job has not
   * - removed: so too, but the job had it and somebody took it out
   * - gone: the standards have the row no more, and the job keeps it
   */
  readonly kind: "changed" | "new" | "removed" | "gone";
  /** The block's name, or {@link FIELDS}. */
  readonly list: string;
  /** What the list is called on its sheet. */
  readonly heading: string;
  /** What the row is known by in the job; the label of a field. */
  readonly line: string;
  /** Of a value: its column, and what stands there and is to stand there. */
  readonly column?: Column;
  readonly from?: number | string;
  readonly to?: number | string;
  /** Both as people read them; null for a blank. */
  readonly shown?: readonly [from: string | null, to: string | null];
  /** The job has it otherwise than it took it, or never took it: it is kept unless asked for. */
  readonly byHand: boolean;
  /** Name of the field. */
  readonly field?: string;
  /** The whole row, of one that is to be added. */
  readonly row?: Row;
}

/** One that can be taken, or left out. */
export const canBeTaken = ({ kind }: Difference): boolean => kind !== "gone";

/** @param job its inputs, as today's template has them */
export function differences(job: JobInputs, standards: FirmsStandards): Difference[] {
  const now = takeable(standards.inputs);
  const before = takenBy(job);
  return [
    ...ofFields(job, now, before),
    ...SHARED_BLOCKS.flatMap((block) =>
      isOfSentences(block) ? ofSentences(block, job, now, before) : ofRows(block, job, now, before),
    ),
  ].map((one, index) => ({ number: index + 1, ...one }));
}

type Unnumbered = Omit<Difference, "number">;

function ofFields(job: JobInputs, now: Taken, before: Taken | undefined): Unnumbered[] {
  return SHARED_FIELDS.flatMap(({ name, label, ...field }): Unnumbered[] => {
    const to = now.get(FIELDS)!.get(name)?.value;
    const from = job.fields?.[name];
    if (to === undefined || to === from) return [];
    const base = before?.get(FIELDS)?.get(name)?.value;
    return [
      {
        kind: "changed",
        list: FIELDS,
        heading: "Site",
        line: label,
        from,
        to,
        shown: [shownInput(from, field), shownInput(to, field)],
        byHand: from !== undefined && from !== base,
        field: name,
      },
    ];
  });
}

function ofRows(block: Block, job: JobInputs, now: Taken, before: Taken | undefined): Unnumbered[] {
  const list = block.name;
  const mine = new Map(keyed(block, job.blocks?.[list]).map(([key, row]) => [key, row]));
  const theirs = now.get(list)!;
  const taken = before?.get(list);
  const { heading } = block;
  const keys = keyColumns(block);
  const columns = filledColumns(block).filter(({ key }) => !keys.includes(key));
  const found = [...theirs].flatMap(([line, row]): Unnumbered[] => {
    const own = mine.get(line);
    const base = taken?.get(line);
    if (!own) {
      const kind = base ? "removed" : "new";
      return [{ kind, list, heading, line, byHand: kind === "removed", row }];
    }
    return columns.flatMap((column): Unnumbered[] => {
      const [from, to] = [own[column.key], row[column.key]];
      // A blank where a value must be is none that a job could go by.
      if (from === to || (to === undefined && column.input!.required === true)) return [];
      const byHand = base === undefined || from !== base[column.key];
      // What the standards have as the job took it was changed in the job alone.
      const shown = [shownInput(from, column), shownInput(to, column)] as const;
      return [{ kind: "changed", list, heading, line, column, from, to, shown, byHand }];
    });
  });
  return [...found, ...goneOf(block, mine, theirs, taken)];
}

/** Rows that the job took and the standards have no more. */
const goneOf = (
  { name, heading }: Block,
  mine: ReadonlyMap<string, Row>,
  theirs: ReadonlyMap<string, Row>,
  taken: ReadonlyMap<string, Row> | undefined,
): Unnumbered[] =>
  [...mine.keys()]
    .filter((line) => taken?.has(line) && !theirs.has(line))
    .map((line) => ({ kind: "gone", list: name, heading, line, byHand: false }));

/** A sentence that was put in other words stands in the place of the old one, in their order. */
function ofSentences(block: Block, job: JobInputs, now: Taken, before: Taken | undefined): Unnumbered[] {
  const mine = new Map(keyed(block, job.blocks?.[block.name]).map(([key, row]) => [key, row]));
  const theirs = now.get(block.name)!;
  const taken = before?.get(block.name);
  const { name: list, heading } = block;
  const [column] = block.columns as [Column];
  const gone = goneOf(block, mine, theirs, taken);
  const come = [...theirs].filter(([line]) => !mine.has(line) && !taken?.has(line));
  const reworded = gone.slice(0, come.length).map(({ line }, index): Unnumbered => {
    const to = come[index]![0];
    return { kind: "changed", list, heading, line, column, from: line, to, shown: [line, to], byHand: false };
  });
  const removed = [...theirs].filter(([line]) => !mine.has(line) && taken?.has(line));
  return [
    ...reworded,
    ...come
      .slice(gone.length)
      .map(([line, row]): Unnumbered => ({ kind: "new", list, heading, line, byHand: false, row })),
    ...removed.map(([line, row]): Unnumbered => ({
      kind: "removed",
      list,
      heading,
      line,
      byHand: true,
      row,
    })),
    ...gone.slice(come.length),
  ];
}
