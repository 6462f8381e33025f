/**
 * Keeps the cells of a spill that an edit leaves as they were.
 *
 * The library (19.3.7) makes every cell of a column anew, its displayed text
 * included, when one row of the column's inputs changes: with ten thousand rows
 * that is half of what an edit takes. Here a cell whose result, format and place
 * are the same is put back as it is.
 */
interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
/** What a formula gave for one cell. */
interface Result {
  readonly value: unknown;
  readonly format?: string;
  readonly message?: string;
  readonly origin?: Position;
}
/** A cell as the library shows it. */
interface EvaluatedCell extends Result {
  readonly type: string;
  readonly position?: Position;
  readonly link?: unknown;
}

interface SpreadingGetters {
  getCell(position: Position): { readonly format?: string } | undefined;
  getLocale(): unknown;
}

/** The parts of the library's evaluator that are used here. */
export interface SpreadingEvaluator {
  readonly getters: SpreadingGetters;
  readonly evaluatedCells: {
    get(position: Position): EvaluatedCell | undefined;
    set(position: Position, cell: EvaluatedCell): void;
  };
  /** Gives the function that is called for each column and row of a result but the first. */
  spreadValues(formula: Position, result: readonly Result[][]): (column: number, row: number) => void;
}

/** @param evaluator taught for its lifetime */
export function keepSpills(evaluator: SpreadingEvaluator): void {
  const { spreadValues, getters } = evaluator;
  /** By the formula's own cell, so that nothing is kept for one that is gone. */
  let spills = new WeakMap<object, (EvaluatedCell | undefined)[][]>();
  let locale: unknown;
  evaluator.spreadValues = (formula, result) => {
    const { sheetId, col, row } = formula;
    const spread = spreadValues.call(evaluator, formula, result);
    // Displayed texts depend on it.
    if (getters.getLocale() !== locale) spills = new WeakMap();
    locale = getters.getLocale();
    const cell = getters.getCell(formula);
    if (!cell) return spread;
    const before = spills.get(cell);
    const kept: (EvaluatedCell | undefined)[][] = result.map((column) => new Array(column.length));
    spills.set(cell, kept);
    return (i, j) => {
      const position = { sheetId, col: col + i, row: row + j };
      const old = before?.[i]?.[j];
      if (old && isSame(old, result[i]![j]!, getters.getCell(position)?.format, position)) {
        evaluator.evaluatedCells.set(position, old);
        kept[i]![j] = old;
      } else {
        spread(i, j);
        kept[i]![j] = evaluator.evaluatedCells.get(position);
      }
    };
  };
}

function isSame(
  old: EvaluatedCell,
  now: Result,
  cellFormat: string | undefined,
  position: Position,
): boolean {
  return (
    old.value === now.value &&
    old.format === (cellFormat || now.format) &&
    old.type !== "error" &&
    old.link === undefined &&
    isAt(old.position, position) &&
    isAt(old.origin, now.origin ?? position)
  );
}

const isAt = (one: Position | undefined, other: Position): boolean =>
  one === other ||
  (one !== undefined && one.row === other.row && one.col === other.col && one.sheetId === other.sheetId);
