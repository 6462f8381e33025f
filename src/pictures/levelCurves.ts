/**
 * Level against frequency for the weakest, the middle and the strongest outlet.
 *
 * At both ends of the band the levels are the workbook's own. Between them the
 * cables on the path follow their loss equation, and the rest of the path (head
 * unit, devices and plates, of which the workbook knows only the two ends) is taken as a straight line.
 */
import { isFault } from "../engine/faults";
import type { Celsius, Decibels, DecibelMicrovolts, Megahertz } from "../engine/quantity";
import type { CableBook } from "../engine/signal/cable";
import { cableLoss } from "../engine/signal/cableLoss";
import { findCable } from "../engine/signal/findCable";
import { toMetres } from "../engine/signal/lengthUnits";
import type { Cell } from "../functions/core/cells";
import { cables } from "../functions/signal/cableTable";
import { isBookError, type Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedRows, namedValue } from "../workbooks/named";
import { numberOf } from "./columns";
import { readDistribution, type Distribution } from "./distribution";
import type { Item, Outlet } from "./items";

export interface LevelPoint {
  readonly frequency: Megahertz;
  readonly level: DecibelMicrovolts;
}

export interface OutletCurves {
  /** Place among all outlets by their weakest level; an outlet may take more than one. */
  readonly which: readonly ("worst" | "median" | "best")[];
  readonly outlet: Outlet;
  readonly hot: readonly LevelPoint[];
  readonly cold: readonly LevelPoint[];
  /** Some cable of the path could not be computed, so both curves are straight lines. */
  readonly straight: boolean;
}

export interface LevelCurves {
  readonly low: Megahertz;
  readonly high: Megahertz;
  readonly coldest: Celsius;
  readonly hottest: Celsius;
  readonly curves: readonly OutletCurves[];
}

const STEPS = 48;

/** @returns nothing while the band, the temperatures or every level is missing */
export function levelCurves(book: Book): LevelCurves | undefined {
  const [low, high, coldest, hottest] = (["low", "high", "cold", "hot"] as const).map((key) =>
    numberOf(namedValue(book, estimate.site[key].name)),
  );
  if (low === undefined || high === undefined || coldest === undefined || hottest === undefined)
    return undefined;
  const distribution = readDistribution(book);
  const ranked = pathsOf(distribution).sort((a, b) => a.outlet.levels!.least - b.outlet.levels!.least);
  if (ranked.length === 0 || low >= high) return undefined;
  const chosen = new Map<PathToOutlet, OutletCurves["which"][number][]>();
  const choose = (which: OutletCurves["which"][number], index: number): void => {
    const path = ranked[index]!;
    chosen.set(path, [...(chosen.get(path) ?? []), which]);
  };
  choose("worst", 0);
  choose("median", Math.floor((ranked.length - 1) / 2));
  choose("best", ranked.length - 1);

  const lossOf = pathLoss(cableBookOf(book), distribution);
  const frequencies = Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS);
  const curves = [...chosen].map(([path, which]): OutletCurves => {
    const [lowCold, lowHot, highCold, highHot] = path.outlet.corners as [number, number, number, number];
    const curve = (temperature: Celsius, atLow: number, atHigh: number): LevelPoint[] | undefined => {
      const [lossLow, lossHigh] = [lossOf(path, low, temperature), lossOf(path, high, temperature)];
      const points = frequencies.map((frequency) => {
        const loss = lossOf(path, frequency, temperature);
        const share = (frequency - low) / (high - low);
        const rest = (atLow + lossLow) * (1 - share) + (atHigh + lossHigh) * share;
        return { frequency, level: rest - loss };
      });
      return points.every(({ level }) => Number.isFinite(level)) ? points : undefined;
    };
    const [cold, hot] = [curve(coldest, lowCold, highCold), curve(hottest, lowHot, highHot)];
    const ends = (atLow: number, atHigh: number): LevelPoint[] => [
      { frequency: low, level: atLow },
      { frequency: high, level: atHigh },
    ];
    return cold && hot
      ? { which, outlet: path.outlet, cold, hot, straight: false }
      : {
          which,
          outlet: path.outlet,
          cold: ends(lowCold, highCold),
          hot: ends(lowHot, highHot),
          straight: true,
        };
  });
  return { low, high, coldest, hottest, curves };
}

interface PathToOutlet {
  readonly outlet: Outlet;
  /** From the head unit to the outlet, both included. */
  readonly items: readonly Item[];
}

/** Every outlet whose level is known at all four corners. */
function pathsOf({ heads }: Distribution): PathToOutlet[] {
  const paths: PathToOutlet[] = [];
  const waiting = heads.map((hanging) => ({ hanging, above: [] as readonly Item[] })).reverse();
  for (let one = waiting.pop(); one; one = waiting.pop()) {
    const { item, children } = one.hanging;
    const items = [...one.above, item];
    if (item.kind === "outlet" && item.corners && item.levels) paths.push({ outlet: item, items });
    waiting.push(...children.map((hanging) => ({ hanging, above: items })).reverse());
  }
  return paths;
}

function cableBookOf(book: Book): CableBook | undefined {
  const matrix = namedRows(book, estimate.cables.table.name).map((row) =>
    row.map((value): Cell => (value === undefined || isBookError(value) ? null : value)),
  );
  if (matrix.length === 0) return undefined;
  const read = cables.readWhole(matrix);
  return isFault(read) ? undefined : read;
}

/** Loss of all cables of a path together; not a number when one of them has none. */
function pathLoss(own: CableBook | undefined, { unit }: Distribution) {
  return ({ items }: PathToOutlet, frequency: Megahertz, temperature: Celsius): Decibels => {
    let sum = 0;
    for (const { cable, length } of items) {
      // A part without a length sits right at the one before it.
      if (length === undefined) continue;
      const found = findCable(cable, own);
      if (isFault(found)) return NaN;
      const loss = cableLoss(found, toMetres(length, unit), frequency, temperature);
      if (isFault(loss)) return NaN;
      sum += loss;
    }
    return sum;
  };
}
