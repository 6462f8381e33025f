/** What the crew measured against what the estimate predicted: the as-built record. */
import type { Book, BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, figure, namedCells, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";

interface Measured {
  /** Where the measured values are typed. */
  readonly built: string;
  readonly named: string;
  readonly what: string;
  readonly unit: string;
  /** The predicted range: the least of some cells, and the greatest of some. */
  readonly from: readonly string[];
  readonly to: readonly string[];
  readonly tolerance: string;
  readonly remedy: string;
}

const SEE_DIAGNOSIS = "Read Diagnosis for likely causes and the next measurement; measure again first.";

const MEASURED: readonly Measured[] = [
  ...(["low", "high"] as const).map((end) => ({
    built: `rooms_built_${end}`,
    named: estimate.rooms.outlet.name,
    what: `at the ${end}est frequency`,
    unit: "dBµV",
    from: [estimate.commission[`${end}_from`].name],
    to: [estimate.commission[`${end}_to`].name],
    tolerance: estimate.commissioningLimits.tolerance.name,
    remedy: SEE_DIAGNOSIS,
  })),
  {
    built: estimate.rooms.built_volts.name,
    named: estimate.rooms.outlet.name,
    what: "at the outlet",
    unit: "V",
    from: [estimate.commission.volts_due.name],
    to: [estimate.commission.volts_due.name],
    tolerance: estimate.commissioningLimits.volts_tolerance.name,
    remedy: SEE_DIAGNOSIS,
  },
  ...(["low", "high"] as const).map((end) => ({
    built: estimate.heads[`built_${end}`].name,
    named: estimate.heads.id.name,
    what: `at the end of its cable, at the ${end}est frequency`,
    unit: "dBµV",
    from: [estimate.heads.fed[`${end}_hot`].name],
    to: [estimate.heads.fed[`${end}_cold`].name],
    tolerance: estimate.commissioningLimits.tolerance.name,
    remedy: "Look at its cable and at the dish's aim; measure again at its own connector.",
  })),
  {
    built: estimate.heads.built_volts.name,
    named: estimate.heads.id.name,
    what: "at the head unit",
    unit: "V",
    from: [estimate.heads.fed.least.name],
    to: [estimate.heads.fed.off.name, estimate.heads.fed.alone.name, estimate.heads.fed.on.name],
    tolerance: estimate.commissioningLimits.volts_tolerance.name,
    remedy: "Measure at the supply's output and along its cable, under load; look for a bad contact.",
  },
];

/** As WINDOW has it: less is the noise of a subtraction, and what just reaches the tolerance is within it. */
const NOISE = 1e-9;

const number = (value: BookResult | undefined): number | undefined =>
  typeof value === "number" ? value : undefined;

export const measured: Rule = {
  id: "measured off prediction",
  reason: "An installation that reads otherwise than predicted holds a fault, or the estimate does.",
  example: "Outlet G-07 reads 44.8 dBµV at the highest frequency where 57.1 to 59.3 dBµV was predicted.",
  find: ({ computed }) => MEASURED.flatMap((one) => findingsOf(computed, one)),
};

function findingsOf(
  book: Book,
  { built, named, what, unit, from, to, tolerance, remedy }: Measured,
): Finding[] {
  const names = namedCells(book, named);
  const [least, most] = [from, to].map((ends) => ends.map((name) => namedCells(book, name))) as [
    NamedCell[][],
    NamedCell[][],
  ];
  const numbers = (ends: readonly NamedCell[][], index: number): number[] =>
    ends.flatMap((cells) => number(cells[index]?.value) ?? []);
  const room = number(namedCells(book, tolerance)[0]?.value) ?? 0;
  return filledCells(book, built).flatMap(({ place, index, value }): Finding[] => {
    const read = number(value);
    const [lows, highs] = [numbers(least, index), numbers(most, index)];
    if (read === undefined || lows.length === 0 || highs.length === 0) return [];
    const [low, high] = [Math.min(...lows), Math.max(...highs)];
    const off = read > high ? read - high : Math.min(0, read - low);
    if (Math.abs(off) <= room + NOISE) return [];
    return [
      {
        weight: "doubtful",
        place,
        message: `${String(names[index]?.value ?? "")} reads ${figure(read)} ${unit} ${what}, ${Math.abs(off).toFixed(1)} ${unit === "V" ? "V" : "dB"} ${off > 0 ? "over" : "under"} the prediction.`,
        expected: `${low === high ? low.toFixed(1) : `${low.toFixed(1)} to ${high.toFixed(1)}`} ${unit}, ± ${figure(room)}.`,
        remedy,
      },
    ];
  });
}
