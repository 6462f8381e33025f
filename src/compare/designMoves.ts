/**
 * What two revisions come to as they are built: levels, verdicts and user bands of outlets, volts and bands of head
 * units, checks. Only what is otherwise, what needs attention first.
 */
import type { Named } from "../formula/build";
import type { Book, BookResult } from "../workbooks/book";
import { checkLines, type CheckLine } from "../workbooks/checkLines";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn } from "../workbooks/named";
import { figureOf, wordsOf, type Figure } from "../workbooks/shownFigure";

/** Null where it is in one of the two only. */
interface Pair<Value> {
  readonly before: Value | null;
  readonly after: Value | null;
}

export interface OutletMoved {
  readonly outlet: string;
  /** At its worst corner, in dBµV: the weakest, or the strongest where that is too high. */
  readonly level: Pair<Figure>;
  readonly verdict: Pair<string>;
}

export interface BandsMoved extends Pair<string> {
  readonly outlet: string;
}

export interface HeadMoved {
  readonly head: string;
  /** The least in use. */
  readonly volts: Pair<Figure>;
  readonly verdict: Pair<string>;
  readonly tuners: Pair<Figure>;
  readonly bands: Pair<Figure>;
}

export interface CheckMoved {
  readonly what: string;
  readonly where: string;
  readonly found: Pair<Figure>;
  /** ok, look, note or error. */
  readonly result: Pair<string>;
}

export interface DesignMoves {
  readonly levels: readonly OutletMoved[];
  readonly bands: readonly BandsMoved[];
  readonly volts: readonly HeadMoved[];
  readonly checks: readonly CheckMoved[];
}

/** What a sheet shows in its decimals is the same. */
const LEVEL_STEP = 0.05;
const VOLTS_STEP = 0.005;

/** Verdicts of a row that passes, or that nothing is said of. */
const GOOD: ReadonlySet<string> = new Set(["ok", "not judged", ""]);
const isAlert = (word: string | null): boolean => !GOOD.has(word ?? "");
export const fails = ({ result }: Pick<CheckLine, "result">): boolean =>
  result !== "ok" && result !== "note" && result !== "";

/**
 * @param older computed, as the newer one
 * @param named what an outlet or a head unit of the older one is called in the newer
 */
export function designMoves(older: Book, newer: Book, named: (name: string) => string): DesignMoves {
  const outlets = paired(outletsOf(older), outletsOf(newer), named);
  const heads = paired(headsOf(older), headsOf(newer), named);
  return {
    levels: byWeight(
      outlets.flatMap(([outlet, before, after]) => {
        const high = [before, after].some((one) => one?.verdict === "high");
        const levelOf = (one: typeof before): Figure => one?.[high ? "strongest" : "weakest"] ?? null;
        const level = { before: levelOf(before), after: levelOf(after) };
        const verdict = { before: before?.verdict ?? null, after: after?.verdict ?? null };
        // What is gone has no level to look at.
        const same = verdict.before === verdict.after && !differs(level, LEVEL_STEP);
        return after === undefined || same ? [] : [{ outlet, level, verdict }];
      }),
      ({ verdict }) => isAlert(verdict.after),
      ({ level }) => by(level),
    ),
    bands: outlets.flatMap(([outlet, before, after]) =>
      before && after && before.bands !== after.bands
        ? [{ outlet, before: before.bands, after: after.bands }]
        : [],
    ),
    volts: byWeight(
      heads.flatMap(([head, before, after]) => {
        const pair = <Key extends keyof HeadUnit>(key: Key): Pair<HeadUnit[Key]> => ({
          before: before?.[key] ?? null,
          after: after?.[key] ?? null,
        });
        const moved = {
          head,
          volts: pair("volts"),
          verdict: pair("verdict"),
          tuners: pair("tuners"),
          bands: pair("bands"),
        };
        const same =
          moved.verdict.before === moved.verdict.after &&
          !differs(moved.volts, VOLTS_STEP) &&
          moved.tuners.before === moved.tuners.after &&
          moved.bands.before === moved.bands.after;
        return same ? [] : [moved];
      }),
      ({ verdict }) => isAlert(verdict.after),
      ({ volts }) => by(volts),
    ),
    checks: checksMoved(checkLines(older), checkLines(newer)),
  };
}

/** A check that fails now, or no longer, or finds another number of things while it does. */
export function checksMoved(older: readonly CheckLine[], newer: readonly CheckLine[]): CheckMoved[] {
  const before = new Map(older.map((line) => [line.what, line]));
  return byWeight(
    newer.flatMap((line) => {
      const was = before.get(line.what);
      const failed = was !== undefined && fails(was);
      if (failed === fails(line) && !(failed && was.found !== line.found)) return [];
      return [
        {
          what: line.what,
          where: line.where,
          found: { before: was?.found ?? null, after: line.found },
          result: { before: was?.result ?? null, after: line.result },
        },
      ];
    }),
    ({ result }) => fails({ result: result.after ?? "" }),
    ({ found }) => by(found),
  );
}

interface Outlet {
  readonly weakest: Figure;
  readonly strongest: Figure;
  readonly verdict: string;
  readonly bands: string;
}

interface HeadUnit {
  readonly volts: Figure;
  readonly verdict: string;
  readonly tuners: Figure;
  readonly bands: Figure;
}

function outletsOf(book: Book): ReadonlyMap<string, Outlet> {
  const { rooms } = estimate;
  const at = columnsOf(book);
  return rowsNamed(book, rooms.outlet, (row) => ({
    weakest: figureOf(at(rooms.weakest, row)),
    strongest: figureOf(at(rooms.strongest, row)),
    verdict: wordsOf(at(rooms.verdict, row)),
    bands: wordsOf(at(rooms.place.bands, row)),
  }));
}

function headsOf(book: Book): ReadonlyMap<string, HeadUnit> {
  const { heads } = estimate;
  const at = columnsOf(book);
  return rowsNamed(book, heads.id, (row) => ({
    volts: figureOf(at(heads.fed.least, row)),
    verdict: wordsOf(at(heads.verdict, row)),
    tuners: figureOf(at(heads.fed.tuners, row)),
    bands: figureOf(at(heads.fed.bands, row)),
  }));
}

function columnsOf(book: Book): (of: Named, row: number) => BookResult | undefined {
  const columns = new Map<string, readonly (BookResult | undefined)[]>();
  return ({ name }, row) => {
    const column = columns.get(name) ?? namedColumn(book, name);
    columns.set(name, column);
    return column[row];
  };
}

/** The first of rows that have one name; a check of the workbook finds the others. */
function rowsNamed<Row>(book: Book, { name }: Named, rowAt: (row: number) => Row): ReadonlyMap<string, Row> {
  const rows = new Map<string, Row>();
  for (const [row, value] of namedColumn(book, name).entries()) {
    const called = wordsOf(value);
    if (called !== "" && !rows.has(called)) rows.set(called, rowAt(row));
  }
  return rows;
}

function paired<Row>(
  older: ReadonlyMap<string, Row>,
  newer: ReadonlyMap<string, Row>,
  named: (name: string) => string,
): [name: string, before: Row | undefined, after: Row | undefined][] {
  const before = new Map([...older].map(([name, row]) => [named(name), row]));
  return [...new Set([...newer.keys(), ...before.keys()])].map((name) => [
    name,
    before.get(name),
    newer.get(name),
  ]);
}

const differs = ({ before, after }: Pair<Figure>, step: number): boolean =>
  typeof before === "number" && typeof after === "number"
    ? Math.abs(after - before) >= step
    : before !== after;

const by = ({ before, after }: Pair<Figure>): number =>
  typeof before === "number" && typeof after === "number" ? Math.abs(after - before) : Infinity;

/** What needs attention first, then what moved most. */
const byWeight = <One>(all: One[], isBad: (one: One) => boolean, weight: (one: One) => number): One[] =>
  all.sort(
    (one, other) => Number(isBad(other)) - Number(isBad(one)) || Math.sign(weight(other) - weight(one)) || 0,
  );
