/** What a computed multi-room workbook says of its measured outlets, for the pane, the command and the review. */
import { address, parseRange } from "../../formula/address";
import type { Named } from "../../formula/build";
import { isBookError, type Book, type BookResult } from "../book";
import { namedColumn, namedRows } from "../named";
import { estimate } from "./names";

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
  const built = book.names.find(({ name }) => name === estimate.rooms.built.name);
  const zone = built && parseRange(built.range);
  if (rows.length === 0 || !built || !zone) return undefined;
  const column = ({ name }: Named): (BookResult | undefined)[] => namedColumn(book, name);
  const { rooms, commission } = estimate;
  const [outletsNamed, room, verdict] = [rooms.outlet, rooms.room, commission.verdict].map(column);
  const [low, lowFrom, lowTo] = [rooms.built_low, commission.low_from, commission.low_to].map(column);
  const [high, highFrom, highTo] = [rooms.built_high, commission.high_from, commission.high_to].map(column);
  const [volts, voltsDue] = [rooms.built_volts, commission.volts_due].map(column);
  const outlets = outletsNamed!.flatMap((outlet, row) => (text(outlet) === "" ? [] : [row]));
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
        outlet: text(outletsNamed![row]),
        room: text(room![row]),
        sheet: built.sheet,
        cell: address(zone.top + row, zone.left),
        low: compared(low![row], lowFrom![row], lowTo![row]),
        high: compared(high![row], highFrom![row], highTo![row]),
        volts: compared(volts![row], voltsDue![row], voltsDue![row]),
        verdict: text(verdict![row]),
      }))
      .filter(({ low, high, volts }) =>
        [low, high, volts].some(({ measured, typed }) => measured !== null || typed !== undefined),
      ),
  };
}

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
