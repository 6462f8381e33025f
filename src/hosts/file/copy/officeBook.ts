/**
 * A working workbook made ready to be an office copy. Calls of ours become
 * native formulas where they can; the rest will be frozen, is set in italics,
 * and the inputs that it was worked out from are locked: a change there could
 * not be followed, and a total must never be wrong without saying so.
 */
import { address, parseAddress, parseRange, type Zone } from "../../../formula/address";
import { allFunctions } from "../../../functions/all";
import { arrayFormulas } from "../../../workbooks/arrayFormulas";
import {
  inputZone,
  lookIndex,
  type Book,
  type BookCell,
  type BookSheet,
  type Look,
} from "../../../workbooks/book";
import { callsUs } from "../../../formula/callsUs";
import { functionsIn } from "../../../formula/functionsIn";
import { NAMESPACE } from "../../../formula/namespace";
import { nativeEquivalent } from "./nativeEquivalent";
import { meet, readAreas, type Area } from "../../../formula/readAreas";

export interface OfficeBook {
  readonly book: Book;
  /** The areas that will be frozen. */
  readonly frozen: readonly Area[];
  /** The inputs that were locked. */
  readonly locked: readonly Area[];
}

interface FormulaCell extends Area {
  readonly at: string;
  readonly formula: string;
}

export function officeBook(book: Book): OfficeBook {
  const formulas = book.sheets.flatMap(formulaCells);
  const equivalents = new Map(
    formulas.flatMap((cell) => {
      const equivalent = nativeEquivalent(cell.formula);
      return equivalent === undefined ? [] : [[cell, equivalent] as const];
    }),
  );
  const frozen = formulas.filter((cell) => callsUs(cell.formula) && !equivalents.has(cell));
  const read = areasBehind(book, formulas, frozen);
  const locked = book.sheets.flatMap((sheet) =>
    inputsOf(sheet).filter((input) => read.some((area) => meet(area, input))),
  );

  const looks = [...book.looks];
  const arrayOf = arrayFormulas(book);
  const sheets = book.sheets.map((sheet): BookSheet => {
    const here = <T extends Area>(areas: Iterable<T>): T[] =>
      [...areas].filter((area) => area.sheet === sheet.name);
    const [cold, shut, alive] = [here(frozen), here(locked), here(equivalents.keys())];
    if (cold.length + shut.length + alive.length === 0) return sheet;
    const cells = { ...sheet.cells };
    for (const cell of alive) {
      const formula = equivalents.get(cell)!;
      const spill = cells[cell.at]?.spill ?? arrayOf(formula);
      cells[cell.at] = { ...cells[cell.at], formula, ...(spill && { spill }) };
    }
    for (const { zone } of cold) restyle(cells, zone, looks, frozenLook);
    for (const { zone } of shut) restyle(cells, zone, looks, shutLook);
    const gone = new Set(shut.map(({ zone }) => JSON.stringify(zone)));
    return {
      ...sheet,
      cells,
      validations: sheet.validations.filter((rule) => !gone.has(JSON.stringify(inputZone(rule)))),
    };
  });
  return { book: { ...book, looks, sheets }, frozen, locked };
}

function formulaCells(sheet: BookSheet): FormulaCell[] {
  return Object.entries(sheet.cells).flatMap(([at, { formula, spill }]): FormulaCell[] => {
    const place = formula === undefined ? undefined : parseAddress(at);
    if (!place) return [];
    const { rows, columns } = spill ?? { rows: 1, columns: 1 };
    const { row: top, column: left } = place;
    return [
      {
        sheet: sheet.name,
        at,
        formula: formula!,
        zone: { top, left, bottom: top + rows - 1, right: left + columns - 1 },
      },
    ];
  });
}

const inputsOf = (sheet: BookSheet): Area[] =>
  sheet.validations.flatMap((rule) => {
    const zone = inputZone(rule);
    return zone ? [{ sheet: sheet.name, zone }] : [];
  });

/**
 * Records of their day, from which nothing is priced. Of a diagnosis the readings
 * are locked, but what the prediction rests on stays open, or no wall plate could
 * be priced anew; an order list stays what was ordered, and the quote may be
 * priced anew.
 */
const RECORDS = [`${NAMESPACE}.DIAGNOSE`, `${NAMESPACE}.ORDERLIST`];
const isRecord = (formula: string): boolean => RECORDS.some((name) => functionsIn(formula).has(name));

/** Where a price and its dates stand among the figures of a part. */
const OF_PRICES = /_(?:price|supplier|priced|until|article)$/;
/** What reads lists of parts whole, without locking their prices. */
const PAST_PRICES: ReadonlySet<string> = new Set([
  `${NAMESPACE}.ORDERLIST`,
  ...allFunctions.filter(({ group }) => group === "Distribution").map(({ name }) => `${NAMESPACE}.${name}`),
]);

/**
 * What a cell reads. The distribution's functions take the lists of parts whole
 * and pass over their prices, which stay open: a part may be priced anew. So do
 * those that an order list tells.
 */
function readBy(book: Book, { sheet, formula }: FormulaCell): Area[] {
  const areas = readAreas(book, sheet, formula);
  if (![...functionsIn(formula)].some((name) => PAST_PRICES.has(name))) return areas;
  const prices = book.names.flatMap(({ name, sheet: of, range }): Area[] => {
    const zone = OF_PRICES.test(name) ? parseRange(range) : undefined;
    return zone ? [{ sheet: of, zone }] : [];
  });
  return areas.flatMap((area) =>
    withoutColumns(
      area,
      prices.filter((price) => meet(price, area)),
    ),
  );
}

/** An area in the pieces that are left of it without some of its columns. */
function withoutColumns({ sheet, zone }: Area, columns: readonly Area[]): Area[] {
  const pieces: Area[] = [];
  let left = zone.left;
  const upTo = (right: number): void => {
    if (left <= right) pieces.push({ sheet, zone: { ...zone, left, right } });
  };
  for (const { zone: gone } of [...columns].sort((a, b) => a.zone.left - b.zone.left)) {
    upTo(gone.left - 1);
    left = Math.max(left, gone.right + 1);
  }
  upTo(zone.right);
  return pieces;
}

/** All that the frozen cells read, and what lies behind it through other formulas. */
function areasBehind(book: Book, formulas: readonly FormulaCell[], frozen: readonly FormulaCell[]): Area[] {
  const areas: Area[] = [];
  const seen = new Set<FormulaCell>(frozen);
  for (const cell of seen) {
    for (const area of readBy(book, cell)) {
      areas.push(area);
      if (isRecord(cell.formula)) continue;
      // A set visits what is added while it is walked.
      for (const behind of formulas) if (meet(behind, area)) seen.add(behind);
    }
  }
  return areas;
}

function restyle(
  cells: Record<string, BookCell>,
  { top, left, bottom, right }: Zone,
  looks: Look[],
  change: (look: Look) => Look,
): void {
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const at = address(row, column);
      const cell = cells[at] ?? {};
      const look = change(cell.look === undefined ? {} : (looks[cell.look] ?? {}));
      cells[at] = { ...cell, look: lookIndex({ looks }, look) };
    }
  }
}

const frozenLook = ({ locked: _, ...look }: Look): Look => ({ ...look, italic: true });
/** No longer the look of an input. */
const shutLook = ({ locked: _, fill: __, edges: ___, ...look }: Look): Look => ({ ...look, italic: true });
