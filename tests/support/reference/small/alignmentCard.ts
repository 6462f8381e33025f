/**
 * The alignment card a second time: the same bearings, aim, tilt and peaks as the estimate's Alignment sheet asks for
 * (../sightline.ts), of one site. A missing height is sea level; without the dish's diameter or the frequency a beam's
 * width is compared with none.
 */
import { address, parseRange } from "../../../../src/formula/address";
import { isBookError, type Book, type BookResult } from "../../../../src/workbooks/book";
import { alignmentCard } from "../../../../src/workbooks/alignmentCard/definition";
import { alignmentSheet, sightlineSheet, slotEast } from "../sightline";
import {
  field,
  figure,
  isFilled,
  orNought,
  rowsOf,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "../job";
import { checkCells, none } from "./checks";
import { entriesOn } from "./entries";

const isWithin = (value: number, least: number, most: number): boolean => value >= least && value <= most;
const BOUNDS: Readonly<Record<string, readonly [number, number]>> = {
  card_latitude: [-90, 90],
  card_longitude: [-180, 180],
  card_height: [-500, 9000],
  card_offset: [0, 60],
  card_dish: [0.3, 15],
  card_frequency: [1000, 50_000],
};
const isFit = (job: Job, name: string): boolean => isWithin(field(job, name), ...BOUNDS[name]!);
const isBlankOrFit = (job: Job, name: string): boolean => !isFilled(job.fields, name) || isFit(job, name);
const isPlaced = (job: Job): boolean => isFit(job, "card_latitude") && isFit(job, "card_longitude");
const isHigh = (job: Job): boolean => isBlankOrFit(job, "card_height");

/** Only the compass goes by the day: without one there is no bearing. */
const isDated = (job: Job): boolean => !Number.isNaN(field(job, "card_date"));
const ANY_DAY = 46_000;

/** The card's site under the names of the estimate's; somewhere else and on another day where it has none. */
function asEstimate(job: Job): Job {
  return {
    fields: {
      site_latitude: isPlaced(job) ? field(job, "card_latitude") : 0,
      site_longitude: isPlaced(job) ? field(job, "card_longitude") : 0,
      site_height: isHigh(job) ? orNought(job.fields, "card_height") : 0,
      site_date: isDated(job) ? field(job, "card_date") : ANY_DAY,
      site_offset: isFit(job, "card_offset") ? field(job, "card_offset") : NaN,
      site_dish: field(job, "card_dish"),
      site_downlink: field(job, "card_frequency"),
    },
    blocks: { slots: rowsOf(job, "slots"), peaks: rowsOf(job, "peaks").map(asPeak) },
  };
}

/** A row of readings is one whatever it is called; one that a function refuses has none that is a number. */
function asPeak(row: Row): Row {
  const readings = ["here", "plus", "minus"];
  if (!["step", ...readings].some((key) => isFilled(row, key))) return {};
  const isRead =
    isWithin(figure(row, "step"), Number.MIN_VALUE, 30) &&
    readings.every((key) => isWithin(figure(row, key), -100, 200)) &&
    ["", "azimuth", "elevation", "tilt"].includes(String(row.axis ?? "").toLowerCase()) &&
    ["", "db", "percent"].includes(String(row.kind ?? "").toLowerCase());
  return { ...row, what: "a dish", ...(isRead ? {} : { here: "refused" }) };
}

const faulty = (cell: Expected | readonly Expected[]): Expected | readonly Expected[] => {
  if (Array.isArray(cell)) return cell.map((one) => faulty(one as Expected)) as Expected[];
  return cell === "" ? "" : NaN;
};

export function alignmentCardReference(job: Job, book: Book): Cells {
  const site = asEstimate(job);
  // The days of the sun are none of the card's.
  const sight = sightlineSheet({ ...site, fields: { ...site.fields, site_dish: 0.9 } });
  const align = alignmentSheet(site);
  const slots = rowsOf(job, "slots");
  const isSeen = isPlaced(job) && isHigh(job);
  /** What cannot be found shows an error in each row that is filled. */
  const found = <T extends Expected | readonly Expected[]>(is: boolean, cells: Cells[string]): T[] =>
    (cells as T[]).map((cell) => (is ? cell : (faulty(cell) as T)));
  // Without a list of dishes there is one, for the first two slots.
  const [a, b, tilt] = [sight.aims_a, sight.aims_b, sight.aims_tilt].map((aims) => (aims as Value[])[0]!) as [
    Value,
    Value,
    Value,
  ];
  const angles = found<Value[]>(isSeen, sight.sight_angles!);
  const elevations = angles.map(([, elevation]) => elevation!);
  // A rim is worked out from 5 degrees under the horizon up (help page of FACETILT).
  const faces = found<Value>(isSeen, align.align_face!).map((face, at) =>
    Number(elevations[at]) < -5 ? NaN : face,
  );
  const [peakElevation] = found<Value>(isSeen, [align.peaks_elevation as Value]) as [Value];
  const isAim = peakElevation === "" || isWithin(Number(peakElevation), 0, 89.9);
  const isDish = isBlankOrFit(job, "card_dish") && isBlankOrFit(job, "card_frequency");
  const peaks = (align.peaks_found as Expected[][]).map((row) =>
    row[0] === "" || (isAim && isDish) ? row : row.map(() => NaN),
  );
  // Whether small drops are unsure or refused is not worked out here: the cell that they show in says so.
  const impossible = peaks.filter(([turn], at) =>
    typeof turn === "object" ? isBookError(turnShown(book, at)) : Number.isNaN(turn),
  ).length;
  // One slot named twice is no pair to tilt for.
  const isTwo = slotEast(a) !== slotEast(b);
  const entries = entriesOn(alignmentCard, "Card", job, book);
  const unknown = elevations.filter((one) => one !== "" && (Number.isNaN(one) || Number(one) < 0)).length;
  return {
    slots_angles: angles,
    slots_compass: found<Value>(isSeen && isDated(job), align.align_compass!),
    slots_skew: found<Value>(isPlaced(job), sight.sight_skew!),
    slots_face: faces,
    pair_a: a,
    pair_b: b,
    pair_aim: found<Value[]>(isSeen, b === "" ? [["", ""]] : sight.aims_to!),
    pair_tilt: found<Value>(isSeen && isTwo, [tilt]),
    peaks_elevation: peakElevation,
    peaks_found: peaks,
    ...checkCells(alignmentCard, book, {
      "entries of Card": none(entries.found, entries.places),
      "slots to look at": {
        found: slots.filter((row) => isFilled(row, "slot")).length,
        passes: slots.some((row) => isFilled(row, "slot")),
      },
      "angles unknown": none(unknown),
      "peaking impossible": none(impossible),
    }),
  };
}

function turnShown(book: Book, at: number): BookResult | undefined {
  const { sheet, range } = book.names.find(({ name }) => name === "peaks_found")!;
  const { top, left } = parseRange(range)!;
  return book.sheets.find(({ name }) => name === sheet)!.results[address(top + 1 + at, left)];
}
