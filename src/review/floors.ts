/** Houses whose floors are copies of each other: rows by their floor and by their place on it, as their names say them. */
import type { Named } from "../formula/build";
import type { Book, BookResult } from "../workbooks/book";
import type { FindingPlace } from "./finding";
import { filledCells, isBlank, namedCells, plainWord } from "./namedCells";

/** So many floors must say the same of a row before another is held to them. */
export const FEWEST_FLOORS = 2;
/** And so large a part of the rows must have its like on other floors: a house whose floors differ says nothing. */
const MOSTLY = 0.8;
const FEWEST_ROWS = 12;

export interface Line {
  readonly place: FindingPlace;
  readonly called: string;
  /** The first part of the name that counts floors, and the rest. */
  readonly floor: string;
  readonly rest: string;
  readonly index: number;
}

/** A name such as 2-07, B2-4 or 10-06-1: what comes before its first stroke or dot counts the floor. */
const NAME = /^(\p{L}*)(\d+)([-./].+)$/u;

export function linesOf(read: Book, named: Named): Line[] {
  return filledCells(read, named.name).flatMap(({ place, value, index }) => {
    const [, letters, floor, rest] = NAME.exec(String(value).trim()) ?? [];
    return rest === undefined
      ? []
      : [{ place, called: String(value), floor: floor!, rest: `${letters!}*${rest}`.toLowerCase(), index }];
  });
}

export const groupsOf = (lines: readonly Line[]): Map<string, Line[]> => {
  const groups = new Map<string, Line[]>();
  for (const line of lines) {
    const group = groups.get(line.rest);
    if (group) group.push(line);
    else groups.set(line.rest, [line]);
  }
  return groups;
};

/** Whether nearly every row has its like on two other floors. */
export function areCopies(lines: readonly Line[]): boolean {
  if (lines.length < FEWEST_ROWS) return false;
  const groups = groupsOf(lines);
  const alike = lines.filter(({ rest }) => groups.get(rest)!.length > FEWEST_FLOORS).length;
  return alike >= MOSTLY * lines.length;
}

/** A name without its floor, to hold B1-2 to B2-2. */
export const apartFromFloor = (value: BookResult | undefined): string => {
  const [, letters, , rest] = NAME.exec(String(value ?? "").trim()) ?? [];
  return rest === undefined ? plainWord(value) : `${letters!}*${rest}`.toLowerCase();
};

const COUNTING = /^(\P{N}*)(\d+)(.*)$/u;

/** @returns the same name on another floor; undefined where it does not count the floor that it is on */
export function onFloor(name: string, from: string, to: string): string | undefined {
  const [, before, digits, after] = COUNTING.exec(name.trim()) ?? [];
  if (digits === undefined || Number(digits) !== Number(from)) return undefined;
  // Written as the row's own floor is, else with as many noughts before it.
  const other =
    digits === from ? to : String(Number(to)).padStart(digits.startsWith("0") ? digits.length : 1, "0");
  return `${before!}${other}${after!}`;
}

/** @returns what feeds a row by what feeds its like on other floors; undefined unless at least two of them say the same */
export function fedAsOnOtherFloors(read: Book, named: Named, from: Named, index: number): string | undefined {
  const lines = linesOf(read, named);
  const line = lines.find((one) => one.index === index);
  return line && fedLike(read, from, lines, line);
}

/** @param line a row, or one that is not there */
export function fedLike(
  read: Book,
  from: Named,
  lines: readonly Line[],
  { floor, rest, index }: Pick<Line, "floor" | "rest" | "index">,
): string | undefined {
  const cells = namedCells(read, from.name);
  const said = lines
    .filter((one) => one.rest === rest && one.index !== index && one.floor !== floor)
    .flatMap((one) => {
      const value = cells[one.index]?.value;
      return isBlank(value) ? [] : [onFloor(String(value), one.floor, floor)];
    });
  const [first] = said;
  return said.length >= FEWEST_FLOORS && said.every((one) => one === first) ? first : undefined;
}
