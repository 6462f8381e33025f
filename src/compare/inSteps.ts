/** One value of a job, from an older revision to a newer one, change by change. */
import type { JobInputs } from "../workbooks/definition";
import type { InputChange } from "./change";

/** With more changes than this those of one table are applied together. */
export const MOST_STEPS = 60;

export interface ValueStep<Value> {
  /** Which changes, by their place in the list; none for all that is no input. */
  readonly changes: readonly number[];
  readonly what: string;
  readonly before: Value;
  readonly after: Value;
}

export interface InSteps<Value> {
  readonly steps: readonly ValueStep<Value>[];
  /** What the reader should know of the steps. */
  readonly notes: readonly string[];
}

/**
 * @param inputs the changes, in the order in which they are applied
 * @param older the job before them
 * @param first the value in the older workbook as it is
 * @param last the value in the newer one
 * @param valueOf lays a job out and computes it; null where it has no such value
 */
export function inSteps<Value extends number | string>(
  inputs: readonly InputChange[],
  older: JobInputs,
  first: Value,
  last: Value,
  valueOf: (job: JobInputs) => Value | null,
): InSteps<Value> {
  const notes: string[] = [];
  const steps: ValueStep<Value>[] = [];
  let now = first;
  let job = older;
  const push = (what: string, changes: readonly number[], after: Value): void => {
    steps.push({ changes, what, before: now, after });
    now = after;
  };
  const start = inputs.length > 0 ? valueOf(older) : null;
  if (start !== null && start !== first)
    push("Formulas of the older workbook that are not the template's", [], start);

  let waiting: number[] = [];
  for (const group of groupsOf(inputs, notes)) {
    for (const index of group) job = inputs[index]!.applied(job);
    waiting.push(...group);
    const after = valueOf(job);
    // Half of a change that belongs together, such as a part under a new name, has no price.
    if (after === null) continue;
    push(whatOf(waiting, inputs), waiting, after);
    waiting = [];
  }
  if (waiting.length > 0) push(whatOf(waiting, inputs), waiting, last);
  if (now !== last)
    push("All that is no input: formulas, the order of rows, what stands outside the tables", [], last);
  return { steps, notes };
}

function groupsOf(inputs: readonly InputChange[], notes: string[]): number[][] {
  const indices = inputs.map((_, index) => index);
  if (inputs.length <= MOST_STEPS) return indices.map((index) => [index]);
  notes.push(
    `There are ${inputs.length} changes; with more than ${MOST_STEPS} those of one table are applied and priced together.`,
  );
  const groups = new Map<string, number[]>();
  for (const index of indices) {
    const { sheet, part, kind } = inputs[index]!;
    const key = JSON.stringify([kind === "removed", sheet, part]);
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  return [...groups.values()];
}

function whatOf(indices: readonly number[], inputs: readonly InputChange[]): string {
  const one = inputs[indices[0]!]!;
  if (indices.length === 1)
    return `${one.sheet}, ${one.part}: ${one.row} ${one.kind === "field" ? "changed" : one.kind}`;
  const places = [...new Set(indices.map((index) => `${inputs[index]!.sheet}, ${inputs[index]!.part}`))];
  return `${places.join("; ")}: ${indices.length} changes together`;
}
