/** Finds what lies where without asking each: a hostile file has tens of thousands of formulas, each reading the last. */
import { meet, type Area } from "./readAreas";

/** Of a square of cells in which things are kept together. */
const ROWS = 64;
const COLUMNS = 8;
/** What covers more squares is kept apart, and what is wanted in more is asked of everything on the sheet. */
const MOST_SQUARES = 64;

interface Lying<T> {
  readonly area: Area;
  readonly what: T;
}

type Lists<T> = Map<string, Lying<T>[]>;

export class AreasFound<T> {
  private readonly squares: Lists<T> = new Map();
  private readonly wide: Lists<T> = new Map();
  private readonly all: Lists<T> = new Map();

  constructor(things: Iterable<readonly [area: Area, what: T]>) {
    for (const [area, what] of things) {
      const lying = { area, what };
      const squares = squaresOf(area);
      put(this.all, area.sheet, lying);
      if (squares === undefined) put(this.wide, area.sheet, lying);
      else for (const square of squares) put(this.squares, square, lying);
    }
  }

  /** Whether anything has a cell in this area. */
  any(area: Area): boolean {
    return this.near(area).some(([lists, key]) => lists.get(key)?.some((one) => meet(one.area, area)));
  }

  /** @returns takes what has a cell in an area, each time what was not taken before; a thing of several areas may come again */
  taker(): (area: Area) => T[] {
    const left = new Map<Lists<T>, Lists<T>>();
    return (area) =>
      this.near(area).flatMap(([lists, key]) => {
        const own: Lists<T> = left.get(lists) ?? new Map();
        left.set(lists, own);
        const [taken, others]: [T[], Lying<T>[]] = [[], []];
        for (const one of own.get(key) ?? lists.get(key) ?? [])
          if (meet(one.area, area)) taken.push(one.what);
          else others.push(one);
        if (taken.length > 0) own.set(key, others);
        return taken;
      });
  }

  private near(area: Area): (readonly [lists: Lists<T>, key: string])[] {
    const squares = squaresOf(area);
    return squares === undefined
      ? [[this.all, area.sheet]]
      : [...squares.map((square) => [this.squares, square] as const), [this.wide, area.sheet]];
  }
}

function put<T>(lists: Lists<T>, key: string, one: Lying<T>): void {
  const list = lists.get(key);
  if (list) list.push(one);
  else lists.set(key, [one]);
}

/** @returns undefined for too many */
function squaresOf({ sheet, zone: { top, left, bottom, right } }: Area): string[] | undefined {
  const [firstRow, lastRow] = [Math.floor(top / ROWS), Math.floor(bottom / ROWS)];
  const [firstColumn, lastColumn] = [Math.floor(left / COLUMNS), Math.floor(right / COLUMNS)];
  if ((lastRow - firstRow + 1) * (lastColumn - firstColumn + 1) > MOST_SQUARES) return undefined;
  const squares: string[] = [];
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = firstColumn; column <= lastColumn; column++) squares.push(`${row} ${column} ${sheet}`);
  return squares;
}
