/** What a computed multi-room workbook says of its measured outlets, for the pane, the command and the review. */
import { address, parseRange } from "../../formula/address";
import { isBookError, type Book, type BookResult } from "../book";
import { namedColumn, namedRows } from "../named";

export interface LikelyCause {
  readonly cause: string;
  readonly where: string;
  /** 0 to 1, by the model on the sheet Causes. */
  readonly probability: number;
  readonly evidence: string;
  readonly next: string;
}

/** A figure beside what was predicted for it; each null where there is none. */
export interface Compared {
  readonly measured: number | null;
  /** What stands in the cell where it is no plain number: no signal, a number with its unit, anything else. */
  readonly typed?: string;
  readonly from: number | null;
  readonly to: number | null;
}

export interface MeasuredOutlet {
  readonly outlet: string;
  readonly room: string;
  /** Where its first measured value is typed. */
  readonly sheet: string;
  readonly cell: string;
  readonly low: Compared;
  readonly high: Compared;
  readonly volts: Compared;
  /** ok, look or to measure. */
  readonly verdict: string;
}

export interface JobDiagnosis {
  readonly causes: readonly LikelyCause[];
  /** Why there are no causes, when the diagnosis itself failed. */
  readonly trouble?: string;
  /** Outlets with a measured value, in the order of Rooms. */
  readonly measured: readonly MeasuredOutlet[];
  /** Outlets of the job. */
  readonly outlets: number;
}

/** @returns undefined for a workbook without our Diagnosis sheet */
export function diagnosisOf(book: Book): JobDiagnosis | undefined {
  const rows = namedRows(book, "diagnosis");
  const built = book.names.find(({ name }) => name === "rooms_built");
  const zone = built && parseRange(built.range);
  if (rows.length === 0 || !built || !zone) return undefined;
  const column = (name: string): (BookResult | undefined)[] => namedColumn(book, name);
  const of = Object.fromEntries(COLUMNS.map((name) => [name, column(name)])) as Record<
    (typeof COLUMNS)[number],
    (BookResult | undefined)[]
  >;
  const outlets = of.rooms_outlet.flatMap((outlet, row) => (text(outlet) === "" ? [] : [row]));
  const first = rows[0]![0];
  return {
    causes: rows.flatMap(([cause, where, probability, evidence, next]) =>
      text(cause) === ""
        ? []
        : [
            {
              cause: text(cause),
              where: text(where),
              probability: figure(probability) ?? 0,
              evidence: text(evidence),
              next: text(next),
            },
          ],
    ),
    ...(isBookError(first) && { trouble: first.message ?? first.error }),
    outlets: outlets.length,
    measured: outlets
      .map((row): MeasuredOutlet => ({
        outlet: text(of.rooms_outlet[row]),
        room: text(of.rooms_room[row]),
        sheet: built.sheet,
        cell: address(zone.top + row, zone.left),
        low: compared(of.rooms_built_low[row], of.commission_low_from[row], of.commission_low_to[row]),
        high: compared(of.rooms_built_high[row], of.commission_high_from[row], of.commission_high_to[row]),
        volts: compared(
          of.rooms_built_volts[row],
          of.commission_volts_due[row],
          of.commission_volts_due[row],
        ),
        verdict: text(of.commission_verdict[row]),
      }))
      .filter(({ low, high, volts }) =>
        [low, high, volts].some(({ measured, typed }) => measured !== null || typed !== undefined),
      ),
  };
}

const COLUMNS = [
  "rooms_outlet",
  "rooms_room",
  "rooms_built_low",
  "rooms_built_high",
  "rooms_built_volts",
  "commission_low_from",
  "commission_low_to",
  "commission_high_from",
  "commission_high_to",
  "commission_volts_due",
  "commission_verdict",
] as const;

const compared = (
  measured: BookResult | undefined,
  from: BookResult | undefined,
  to: BookResult | undefined,
): Compared => {
  const written = text(measured);
  return {
    measured: figure(measured),
    ...(typeof measured === "string" && written.trim() !== "" && { typed: written }),
    from: figure(from),
    to: figure(to),
  };
};

const figure = (value: BookResult | undefined): number | null => (typeof value === "number" ? value : null);
const text = (value: BookResult | undefined): string =>
  value === undefined || isBookError(value) ? "" : String(value);
