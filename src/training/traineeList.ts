/** The names on a list of trainees, as people keep one: with or without heads, in one column or in two. */
import type { Trainee } from "./drawNumbers";

export const MOST_TRAINEES = 2000;
const MOST_LETTERS = 120;

const WHOLE = ["name", "trainee", "trainees", "full name", "student", "participant"];
const FIRST = ["first name", "given name", "forename"];
const LAST = ["last name", "surname", "family name"];

export interface TraineeList {
  readonly trainees: readonly Trainee[];
  /** What is odd, a sentence each. */
  readonly notes: readonly string[];
}

/**
 * @param lines cells of each line, with its number in the file
 * @returns the trainees in the list's order, or a sentence on why there are none
 */
export function traineeList(
  lines: readonly { readonly line: number; readonly cells: readonly string[] }[],
): TraineeList | string {
  const filled = lines
    .map(({ line, cells }) => ({ line, cells: cells.map(tidy) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
  const [head] = filled;
  if (!head) return "The list is empty. Give a line for each trainee.";
  const columns = columnsOf(head.cells);
  const rows = columns ? filled.slice(1) : filled;
  const names = rows
    .map(({ line, cells }) => ({
      line,
      name: (columns ?? cells.map((_, at) => at))
        .map((at) => cells[at] ?? "")
        .filter((cell) => cell !== "")
        .join(" "),
    }))
    .filter(({ name }) => name !== "");
  if (names.length === 0) return "The list has no trainee below its heads. Give a line for each.";
  if (names.length > MOST_TRAINEES) {
    return `The list has ${names.length} trainees; the most at once is ${MOST_TRAINEES}. Part it into groups.`;
  }
  const long = names.find(({ name }) => name.length > MOST_LETTERS);
  if (long) {
    return `Line ${long.line} has a name of ${long.name.length} characters; the most is ${MOST_LETTERS}. Check that the list is the right file.`;
  }
  const times = new Map<string, number>();
  const trainees = names.map(({ name }) => {
    const occurrence = (times.get(name) ?? 0) + 1;
    times.set(name, occurrence);
    return { name, occurrence };
  });
  const notes = [...times].flatMap(([name, count]) =>
    count > 1 ? [`"${name}" stands ${count} times on the list: each gets a sheet of its own.`] : [],
  );
  return { trainees, notes };
}

/** Line ends and control characters within a cell are no part of a name. */
const tidy = (cell: string): string =>
  cell
    .normalize("NFC")
    .replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]/gu, " ")
    .replace(/\s+/g, " ")
    .trim();

/** @returns where the name stands, by the heads; undefined for a list without heads */
function columnsOf(cells: readonly string[]): number[] | undefined {
  const heads = cells.map((cell) => cell.toLowerCase().replace(/:$/, ""));
  const at = (words: readonly string[]): number => heads.findIndex((head) => words.includes(head));
  const whole = at(WHOLE);
  const [first, last] = [at(FIRST), at(LAST)];
  if (first >= 0 || last >= 0) return [first, last >= 0 ? last : whole].filter((column) => column >= 0);
  return whole >= 0 ? [whole] : undefined;
}
