/**
 * Which user bands of its output each receiver gets: those that it keeps
 * first, then receivers that can use the fewest, then in the order of the rows,
 * each the lowest free numbers that it can use.
 *
 * Source: one tuner takes one user band (EN 50494). That a receiver of EN 50607
 *   can use bands of EN 50494 and not the reverse: common practice, no source;
 *   that a band is as wide as 1.35 symbol rates: from memory (roll-off 0.35).
 * Accuracy: exact counting.
 */
import type { Megahertz } from "../quantity";
import type { ControlStandard, ReceiverKind, UserBand } from "./parts";
import type { Tree } from "./tree";

export const WIDTH_PER_SYMBOL_RATE = 1.35;

export type BandTrouble =
  /** The output has no band of a number that is kept. */
  | "no such band"
  /** The receiver's standard does not reach it. */
  | "standard"
  /** Somebody else keeps it. */
  | "taken"
  /** More are kept than it has tuners. */
  | "too many kept"
  /** Fewer are left than it has tuners. */
  | "none left"
  /** Narrower than the widest carrier. */
  | "too narrow";

export interface BandFinding {
  readonly outlet: number;
  readonly trouble: BandTrouble;
  /** Its number; null where it is about none. */
  readonly band: number | null;
}

export interface BandPlan {
  /** By row of the outlets, numbers rising. */
  readonly bands: readonly (readonly UserBand[])[];
  readonly findings: readonly BandFinding[];
}

/** Whether a receiver of one standard can use a band of another. */
export const canUse = (receiver: ControlStandard, band: ControlStandard | null): boolean =>
  band === null || receiver === band || (receiver === "EN 50607" && band === "EN 50494");

/** @param widest symbol rate in Msym/s; 0 where none is known */
export function bandPlan(tree: Tree, widest: Megahertz): BandPlan {
  const { job, row, output, pointOfOutlet } = tree;
  const bands: UserBand[][] = job.outlets.map(() => []);
  const findings: BandFinding[] = [];
  const byOutput = new Map<number, number[]>();
  job.outlets.forEach(({ receiver }, outlet) => {
    const point = pointOfOutlet[outlet]!;
    if (point < 0 || !receiver) return;
    const top = output[point]!;
    const there = byOutput.get(top);
    if (there) there.push(outlet);
    else byOutput.set(top, [outlet]);
  });

  for (const [top, outlets] of byOutput) {
    const plan = [...job.headUnits[row[top]!]!.kind.bands].sort((a, b) => a.number - b.number);
    const byNumber = new Map(plan.map((band) => [band.number, band]));
    const keeper = new Map<number, number>();
    const of = (outlet: number): ReceiverKind => job.outlets[outlet]!.receiver!;
    const found = (outlet: number, trouble: BandTrouble, band: number | null): number =>
      findings.push({ outlet, trouble, band });
    const wanted = (outlet: number): number => of(outlet).tuners * job.outlets[outlet]!.quantity;

    for (const outlet of outlets) {
      const { kept } = job.outlets[outlet]!;
      if (kept.length > wanted(outlet)) found(outlet, "too many kept", null);
      for (const number of kept) {
        const band = byNumber.get(number);
        if (!band) found(outlet, "no such band", number);
        else if (keeper.has(number)) found(outlet, "taken", number);
        else {
          keeper.set(number, outlet);
          bands[outlet]!.push(band);
          if (!canUse(of(outlet).standard, band.standard)) found(outlet, "standard", number);
        }
      }
    }
    const usable = new Map<ControlStandard, readonly UserBand[]>();
    const usableBy = (outlet: number): readonly UserBand[] => {
      const { standard } = of(outlet);
      let some = usable.get(standard);
      if (!some) usable.set(standard, (some = plan.filter((band) => canUse(standard, band.standard))));
      return some;
    };
    const inTurn = [...outlets].sort((a, b) => usableBy(a).length - usableBy(b).length || a - b);
    for (const outlet of inTurn) {
      let missing = wanted(outlet) - job.outlets[outlet]!.kept.length;
      for (const band of usableBy(outlet)) {
        if (missing <= 0) break;
        if (keeper.has(band.number)) continue;
        keeper.set(band.number, outlet);
        bands[outlet]!.push(band);
        missing -= 1;
      }
      if (missing > 0) found(outlet, usableBy(outlet).length === 0 ? "standard" : "none left", null);
      bands[outlet]!.sort((a, b) => a.number - b.number);
      for (const { number, width } of bands[outlet]!)
        if (width !== null && width < WIDTH_PER_SYMBOL_RATE * widest) found(outlet, "too narrow", number);
    }
  }
  return { bands, findings };
}
