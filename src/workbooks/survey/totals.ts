/** Holds the sums that a survey gives of itself against its lines: a sum that fits neither tells of a lost line. */
import { textOf, type ImportedLine } from "../imported/table";

/** A run as it was read, or one that was not. */
export type ReadRun = number | undefined;

/** Sums are rounded by hand. */
const TOLERANCE = 0.051;

export class Totals {
  /** Since the beginning, and since the last sum. */
  private all: ReadRun[] = [];
  private group: ReadRun[] = [];

  add(run: ReadRun): void {
    this.all.push(run);
    this.group.push(run);
  }

  /**
   * @param figure of the line's run column; undefined where it has none that can be read
   * @param column of the runs
   * @param unit of the figures
   * @returns a sentence where neither sum fits
   */
  check(
    line: ImportedLine,
    name: string,
    figure: number | undefined,
    column: number,
    unit: string,
  ): string | undefined {
    const { all, group } = this;
    this.group = [];
    const said = countSaid(line, column);
    const counts = [all.length, group.length];
    const sums = [all, group].map(sumOf);
    const countWrong = said !== undefined && !counts.includes(said);
    // A run that was not read leaves nothing to hold the sum against.
    const known = sums.filter((sum) => sum !== undefined);
    const sumWrong =
      figure !== undefined &&
      known.length === sums.length &&
      !counts.includes(figure) &&
      known.every((sum) => Math.abs(sum - figure) > TOLERANCE);
    if (!countWrong && !sumWrong) return undefined;
    const message = [
      said === undefined ? "" : `${said} outlets`,
      figure === undefined ? "" : `${round(figure)} ${unit}`,
    ];
    const total = known[0] === undefined ? "" : ` with ${round(known[0])} ${unit}`;
    return `“${name}” says ${message.filter(Boolean).join(" and ")}; the lines above it are ${all.length} outlets${total}. Look whether a line is missing.`;
  }
}

const sumOf = (runs: readonly ReadRun[]): number | undefined =>
  runs.some((run) => run === undefined) ? undefined : runs.reduce<number>((sum, run) => sum + run!, 0);

/** "4 outlets", or a bare number in another column than the runs'. */
function countSaid({ cells }: ImportedLine, column: number): number | undefined {
  for (const [index, cell] of cells.entries()) {
    const found = index === column ? null : /^(\d+)(?: \p{L}+)?$/u.exec(textOf(cell));
    if (found) return Number(found[1]);
  }
  return undefined;
}

const round = (value: number): string => String(Math.round(value * 1000) / 1000);
