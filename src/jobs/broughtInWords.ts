import type { BroughtIn, Outcome } from "./bringIn";

/** What became of each job of a file that was brought in. */
export interface BringInReport {
  readonly jobs: readonly BroughtIn[];
  /** Of the file as a whole, in sentences. */
  readonly remarks: readonly string[];
}

/** In this order; a job that is not read is named below with its reason. */
const SAID: readonly (readonly [Outcome, (count: string, isOne: boolean) => string])[] = [
  ["brought in", (count) => `${count} brought in`],
  ["theirs is newer", (count) => `${count} newer than here and taken, what was here is a revision`],
  ["there already", (count) => `${count} there already`],
  ["ours is newer", (count) => `${count} newer here and kept`],
  [
    "beside",
    (count, isOne) => `${count} changed on both sides: ${isOne ? "it stands" : "they stand"} beside`,
  ],
  ["as it is", (count, isOne) => `${count} that can't be read brought in as ${isOne ? "it is" : "they are"}`],
  ["not read", (count) => `${count} not brought in`],
];
/** So many jobs are told of by name. */
const MOST_NAMED = 6;

/** @returns sentences for a person: how many of each, then what is to be known of single ones */
export function broughtInWords({ jobs, remarks }: BringInReport): string {
  let isFirst = true;
  const counts = SAID.flatMap(([outcome, say]) => {
    const count = jobs.filter((one) => one.outcome === outcome).length;
    if (count === 0) return [];
    const noun = isFirst ? (count === 1 ? " job" : " jobs") : "";
    isFirst = false;
    return [say(`${count}${noun}`, count === 1)];
  });
  const told = jobs.filter((one) => one.remarks.length > 0);
  const more = told.length - MOST_NAMED;
  return [
    ...(counts.length > 0 ? [`${counts.join(", ")}.`] : []),
    ...told.slice(0, MOST_NAMED).map((one) => `“${one.name}”: ${one.remarks.join(" ")}`),
    ...(more > 0 ? [`There is something to tell of ${more} more.`] : []),
    ...remarks,
  ].join(" ");
}
