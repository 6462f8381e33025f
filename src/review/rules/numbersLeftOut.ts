/** An outlet whose number is left out of its row of numbers, where the job's title counts it. */
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { filledCells, namedCells, plainWord, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";

const { rooms, site } = estimate;

/** A title that counts many more than there are is of another job, or of a later stage. */
const MOST_LEFT_OUT = 3;
/** A title that counts so many others is another job's. */
const FAR = 0.3;
/** So many numbers in a row make it one. */
const FEWEST_IN_A_ROW = 4;

export const numbersLeftOut: Rule = {
  id: "number left out",
  reason:
    "A row that was cleared, or not copied, is priced by nobody; its number is missing between its neighbours.",
  example:
    "The job is called “Guest house, 24 outlets”, 23 are listed, and A-03 is not between A-02 and A-04.",
  find: ({ read }) => {
    const listed = filledCells(read, rooms.outlet.name);
    const left = countedInTitle(read) - listed.length;
    if (Math.abs(left) > FAR * listed.length) return [ofAnotherJob(read, listed.length)];
    if (!(left >= 1 && left <= MOST_LEFT_OUT)) return [];
    const gaps = gapsIn(listed);
    // Any other number of gaps is not what the title counts.
    if (gaps.length !== left) return [];
    return gaps.map(({ before, after, name }) => ({
      weight: "doubtful",
      place: after.place,
      message: `${name} is not listed, between ${String(before.value)} and ${String(after.value)}; the job's title counts ${listed.length + left} outlets, and ${listed.length} are listed.`,
      expected: `A row for ${name}, unless there is no such outlet.`,
      effect: "It is neither priced nor planned.",
      remedy: "Compare with the plan: was its row cleared? Else correct the title on Site.",
    }));
  },
};

/** A title is its writer's, and many a job grew or shrank under it. */
const ofAnotherJob = (read: Book, listed: number): Finding => ({
  weight: "worth knowing",
  place: namedCells(read, site.job.name)[0]?.place,
  message: `The job is called “${String(namedValue(read, site.job.name))}”, and ${listed} outlets are listed.`,
  expected: "The title of this job.",
  effect: "It is printed on the quote.",
  remedy: "Correct the title, or look whether outlets are missing.",
});

/** @returns not a number where the title counts none */
function countedInTitle(read: Book): number {
  const [, count] = /(\d+)\s+outlets\b/i.exec(String(namedValue(read, site.job.name) ?? "")) ?? [];
  return Number(count);
}

interface Gap {
  readonly before: NamedCell;
  readonly after: NamedCell;
  readonly name: string;
}

const COUNTED = /^(.*?)(\d+)$/u;

/** A number that is in no name, between two that are, in a row of them that is long enough. */
function gapsIn(listed: readonly NamedCell[]): Gap[] {
  const rows = new Map<string, { readonly cell: NamedCell; readonly digits: string }[]>();
  for (const cell of listed) {
    const [, before, digits] = COUNTED.exec(plainWord(cell.value)) ?? [];
    if (digits === undefined) continue;
    const row = rows.get(before!) ?? [];
    row.push({ cell, digits });
    rows.set(before!, row);
  }
  return [...rows.values()].flatMap((row) => {
    const inOrder = [...row].sort((a, b) => Number(a.digits) - Number(b.digits));
    if (inOrder.length < FEWEST_IN_A_ROW) return [];
    return inOrder.slice(1).flatMap(({ cell: after, digits }, index): Gap[] => {
      const { cell: before, digits: last } = inOrder[index]!;
      const [from, to] = [Number(last), Number(digits)];
      return Array.from({ length: Math.min(Math.max(0, to - from - 1), MOST_LEFT_OUT + 1) }, (_, more) => ({
        before,
        after,
        name: `${String(after.value).trim().slice(0, -digits.length)}${String(from + 1 + more).padStart(digits.length, "0")}`,
      }));
    });
  });
}
