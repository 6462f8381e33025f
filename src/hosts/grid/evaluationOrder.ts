/**
 * Makes the spreadsheet library compute formulas over names right, and each of them once.
 *
 * The library (19.3.7) keeps the cells of a range, once read, until its round
 * of computing ends. A formula that reads a column before the column's own
 * formula has spilled into it leaves blanks there for every later reader of
 * that round, and only the first reader is computed again. And whatever depends
 * on a spill is put off to a further round even if it was not computed yet, so
 * that a chain of columns is computed as many times as it is long.
 *
 * So its evaluator is given: a reading of ranges that first computes the
 * formula that spills over them and forgets what a spill has changed; and a
 * rule that puts off only what was computed too early. Everything else is its own.
 * Its script stays unmodified: this is a plugin of it, extended and registered
 * in its place.
 */
import { requireMembersInside } from "./gridContract";
import { limitReached } from "./iterationLimit";
import { keepSpills, type SpreadingEvaluator } from "./keptSpills";
import type { GridLibrary } from "./library";

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
interface Zone {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}
interface Range {
  readonly sheetId: string;
  readonly zone: Zone;
}
type Read<Where, What> = (where: Where) => What;
interface Cell {
  readonly format?: string;
  readonly id: unknown;
  readonly isFormula: boolean;
  readonly content?: string;
}

interface ReadCells {
  readonly zone: Zone;
  readonly cells: unknown[][];
}

interface RangeSet extends Iterable<Range> {
  add(range: Range): void;
  delete(range: Range): void;
  has(range: Range): boolean;
}

/** The parts of the library's evaluator that are used here. */
interface Evaluator extends SpreadingEvaluator {
  readonly getters: Omit<SpreadingEvaluator["getters"], "getCell"> & {
    getCell(position: Position): Cell | undefined;
    getSheetZone(sheetId: string): Zone;
    getNamedRanges(): readonly { readonly range: Range }[];
  };
  readonly compilationParams: {
    ensureRange: Read<Range, unknown[][]>;
    referenceDenormalizer: Read<Range, unknown>;
    readonly evalContext: { readonly getFormulaResult: Read<Position, unknown> };
  };
  readonly evaluatedCells: SpreadingEvaluator["evaluatedCells"] & { has(position: Position): boolean };
  readonly cellsBeingComputed: ReadonlySet<unknown>;
  readonly nextRangesToUpdate: { addMany(ranges: Iterable<Range>): void; isEmpty(): boolean };
  evaluate(ranges: Iterable<Range>): void;
  updateCompilationParameters(): void;
  computeAndSave(position: Position): unknown;
  readonly spreadingRelations: { getArrayResultZone(formula: Position): Zone | undefined };
  getCellsDependingOn(ranges: Iterable<Range>): RangeSet;
  invalidatePositionsDependingOnSpread(sheetId: string, zone: Zone): void;
}

/**
 * Teaches the library to compute in order; prepareLibrary sees to it that this is done once.
 * @param keeps whether cells of a spill that stay as they were are kept too
 */
export function registerEvaluationOrder(library: GridLibrary, keeps = true): void {
  const plugins = library.registries.coreViewsPluginRegistry;
  const Evaluation = plugins.get("evaluation") as unknown as new (...args: unknown[]) => {
    evaluator: Evaluator;
  };
  class EvaluationInOrder extends Evaluation {
    constructor(...args: unknown[]) {
      super(...args);
      requireMembersInside(library, "evaluationOrder", this);
      putInOrder(this.evaluator);
      hearLimit(this.evaluator);
      if (keeps && requireMembersInside(library, "keptSpills", this)) keepSpills(this.evaluator);
    }
  }
  plugins.replace("evaluation", EvaluationInOrder as never);
}

/** The library gives up on a chain of spills that is too long: what is left to compute is then stale. */
function hearLimit(evaluator: Evaluator): void {
  const { evaluate } = evaluator;
  evaluator.evaluate = (ranges) => {
    evaluate.call(evaluator, ranges);
    if (!evaluator.nextRangesToUpdate.isEmpty()) limitReached();
  };
}

function putInOrder(evaluator: Evaluator): void {
  /** What was read in this round of computing, by sheet: a spill asks only for what was read of its own. */
  const read = new Map<string, Map<string, ReadCells>>();
  const readOn = (sheetId: string): Map<string, ReadCells> => {
    const known = read.get(sheetId);
    if (known) return known;
    const fresh = new Map<string, ReadCells>();
    read.set(sheetId, fresh);
    return fresh;
  };
  /** Formulas by the cells of their first row that names show them to spill over. */
  let spilling: ReadonlyMap<string, Position> | undefined;

  const { updateCompilationParameters } = evaluator;
  evaluator.updateCompilationParameters = () => {
    updateCompilationParameters.call(evaluator);
    read.clear();
    spilling = undefined;
    const { compilationParams } = evaluator;
    const { ensureRange, referenceDenormalizer } = compilationParams;
    compilationParams.ensureRange = (range) => (isPlain(range) ? readRange(range) : ensureRange(range));
    compilationParams.referenceDenormalizer = (range) => {
      if (isPlain(range)) computeSpillOver(range);
      const result = referenceDenormalizer(range);
      readOn(range.sheetId).set(keyOf(range), { zone: range.zone, cells: [] });
      return result;
    };
  };

  function readRange(range: Range): unknown[][] {
    const { sheetId } = range;
    const key = `${keyOf(range)} range`;
    const before = readOn(sheetId).get(key);
    if (before) return before.cells;
    computeSpillOver(range);
    const zone = within(range.zone, evaluator.getters.getSheetZone(sheetId));
    const { getFormulaResult } = evaluator.compilationParams.evalContext;
    const cells: unknown[][] = [];
    for (let col = zone.left; col <= zone.right; col++) {
      const column: unknown[] = [];
      for (let row = zone.top; row <= zone.bottom; row++)
        column.push(getFormulaResult({ sheetId, col, row }));
      cells.push(column);
    }
    readOn(sheetId).set(key, { zone: range.zone, cells });
    return cells;
  }

  function computeSpillOver({ sheetId, zone }: Range): void {
    spilling ??= spillsShownByNames(evaluator.getters);
    for (let col = zone.left; col <= zone.right; col++) {
      const formula = spilling.get(placeKey({ sheetId, col, row: zone.top }));
      if (!formula || evaluator.evaluatedCells.has(formula)) continue;
      // One that is being computed reads, by way of others, what it would spill over itself.
      const { id } = evaluator.getters.getCell(formula)!;
      if (!evaluator.cellsBeingComputed.has(id)) evaluator.computeAndSave(formula);
    }
  }

  // What depends on a formula depends on all that it spills over, not on its own cell alone.
  const { getCellsDependingOn } = evaluator;
  evaluator.getCellsDependingOn = (ranges) => {
    const all = getCellsDependingOn.call(evaluator, ranges);
    let spills = spillsOf(all);
    while (spills.length > 0) {
      const further = [...getCellsDependingOn.call(evaluator, spills)].filter((range) => !all.has(range));
      for (const range of further) all.add(range);
      spills = spillsOf(further);
    }
    return all;
  };

  const spillsOf = (ranges: Iterable<Range>): Range[] =>
    [...ranges].flatMap(positionsOf).flatMap((position) => {
      const zone = evaluator.spreadingRelations.getArrayResultZone(position);
      return zone ? [{ sheetId: position.sheetId, zone }] : [];
    });

  evaluator.invalidatePositionsDependingOnSpread = (sheetId, zone) => {
    let early = false;
    const ofSheet = readOn(sheetId);
    for (const [key, { zone: before }] of ofSheet) {
      if (!meet(before, zone)) continue;
      ofSheet.delete(key);
      early = true;
    }
    const dependents = evaluator.getCellsDependingOn(
      withoutFirstCell(zone).map((part) => ({ sheetId, zone: part })),
    );
    dependents.delete({ sheetId, zone });
    const late = [...dependents];
    const isComputed = (range: Range): boolean =>
      positionsOf(range).some((position) => evaluator.evaluatedCells.has(position));
    if (early || late.some(isComputed)) evaluator.nextRangesToUpdate.addMany(late);
  };
}

/**
 * A name over several columns whose first cell alone of its first row holds
 * something, a formula, is the name of that formula's spill.
 */
function spillsShownByNames({ getCell, getNamedRanges }: Evaluator["getters"]): Map<string, Position> {
  const spilling = new Map<string, Position>();
  for (const { range } of getNamedRanges()) {
    const { sheetId, zone } = range;
    const formula = { sheetId, col: zone.left, row: zone.top };
    if (zone.right === zone.left || !getCell(formula)?.isFormula) continue;
    for (let col = zone.left + 1; col <= zone.right; col++) {
      const position = { ...formula, col };
      const cell = getCell(position);
      if (cell?.isFormula || cell?.content) break;
      spilling.set(placeKey(position), formula);
    }
  }
  return spilling;
}

/** A range that the library has no error for. */
const isPlain = (range: Range & { readonly invalidSheetName?: string }): boolean => {
  const { top, bottom, left, right } = range.zone;
  return range.invalidSheetName === undefined && top <= bottom && left <= right && top >= 0 && left >= 0;
};

function positionsOf({ sheetId, zone }: Range): Position[] {
  const positions: Position[] = [];
  for (let col = zone.left; col <= zone.right; col++) {
    for (let row = zone.top; row <= zone.bottom; row++) positions.push({ sheetId, col, row });
  }
  return positions;
}

const placeKey = ({ sheetId, col, row }: Position): string => `${sheetId} ${col} ${row}`;
const keyOf = ({ zone }: Range): string => `${zone.left} ${zone.top} ${zone.right} ${zone.bottom}`;
const within = (zone: Zone, sheet: Zone): Zone => ({
  top: Math.max(zone.top, sheet.top),
  bottom: Math.min(zone.bottom, sheet.bottom),
  left: Math.max(zone.left, sheet.left),
  right: Math.min(zone.right, sheet.right),
});
const meet = (a: Zone, b: Zone): boolean =>
  a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
const withoutFirstCell = ({ top, bottom, left, right }: Zone): Zone[] =>
  [
    { top, bottom: top, left: left + 1, right },
    { top: top + 1, bottom, left, right },
  ].filter((zone) => zone.top <= zone.bottom && zone.left <= zone.right);
