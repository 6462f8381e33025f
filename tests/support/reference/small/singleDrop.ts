/**
 * The single-drop check a second time. Cable and loop: ../../referencePrice.ts; splitter: 10·log10 of its ways, and
 * what it loses beyond the ideal; volts: supply less load times loop, none below 0 (Ohm). A corner is one end of the
 * band at one temperature. A blank in a sum counts as 0, as everywhere in a sheet; in a function it is missing.
 */
import type { Book } from "../../../../src/workbooks/book";
import { singleDrop } from "../../../../src/workbooks/singleDrop/definition";
import { drop } from "../../../../src/workbooks/singleDrop/names";
import { cableLoss, loopOhms } from "../../cablePhysics";
import { corners, field, isFilled, orNought, word, type Cells, type Job, type Value } from "../job";
import { checkCells, none } from "./checks";
import { entriesOn } from "./entries";

const KNOWN_TYPE = /^series (59|6|7|11)(, copper|, copper-clad steel)?$/;
const M_PER_FT = 0.3048;
const isWithin = (value: number, least: number, most: number): boolean => value >= least && value <= most;

function metresOf(job: Job): number {
  const unit = word(job, "drop_unit");
  const length = field(job, "drop_length");
  // Without a unit lengths are metres (help pages of CABLELOSS and LOOPOHMS).
  if (length < 0 || !["", "m", "ft"].includes(unit)) return NaN;
  return unit === "ft" ? length * M_PER_FT : length;
}

/** Low cold, low hot, high cold, high hot: as entered, 0 for a blank. */
const inCorner = (job: Job, of: (corner: number) => string): Value[] =>
  [0, 1, 2, 3].map((corner) => {
    const value = job.fields[of(corner)] ?? "";
    return value === "" ? 0 : value;
  });
const byEnd =
  (low: string, high: string) =>
  (corner: number): string =>
    corner < 2 ? low : high;
const numbers = (values: readonly Value[]): number[] =>
  values.map((value) => (typeof value === "number" ? value : NaN));

/** In the window, its ends with it; no word where one of the three is missing or the window is none. */
function windowWord(value: number, least: number, most: number): Value {
  if ([value, least, most].some(Number.isNaN) || least > most) return NaN;
  if (value < least - 1e-9) return "low";
  return value > most + 1e-9 ? "high" : "ok";
}

/**
 * @param isByWords "Supply over the same cable; leave the load at 0 for none": then nothing is short of volts. The
 * template's check asks for a look all the same where no supply is filled in, which is its mistake.
 */
export function singleDropReference(job: Job, book: Book, isByWords: boolean): Cells {
  const cable = word(job, "drop_cable");
  const isKnown = KNOWN_TYPE.test(cable);
  const shown = {
    frequency: inCorner(job, byEnd("drop_low", "drop_high")),
    temperature: inCorner(job, (corner) => (corner % 2 === 0 ? "drop_cold" : "drop_hot")),
    entering: inCorner(job, byEnd("drop_in_low", "drop_in_high")),
  };
  const [frequency, celsius, entering] = [shown.frequency, shown.temperature, shown.entering].map(
    numbers,
  ) as [number[], number[], number[]];
  const metres = metresOf(job);
  const loss = corners((corner) =>
    isKnown && isWithin(frequency[corner]!, 5, 3000) && isWithin(celsius[corner]!, -60, 90)
      ? cableLoss(cable, metres, frequency[corner]!, celsius[corner]!)
      : NaN,
  );
  const ways = field(job, "drop_ways");
  const excess = orNought(job.fields, "drop_excess");
  const split =
    Number.isInteger(ways) && isWithin(ways, 1, 256) && isWithin(excess, 0, 30)
      ? 10 * Math.log10(ways) + excess
      : NaN;
  // Nothing is worked out without the ways, and this desk takes the empty text for 0; Excel refuses it in a sum.
  const isSplit = isFilled(job.fields, "drop_ways");
  const plate = orNought(job.fields, "drop_plate");
  const level = corners((corner) => entering[corner]! - loss[corner]! - (isSplit ? split : 0) - plate);
  const [least, most] = [field(job, "drop_least"), field(job, "drop_most")];
  const verdict = level.map((one) => windowWord(one, least, most));
  const hot = isFilled(job.fields, "drop_hot") ? field(job, "drop_hot") : 20;
  const ohms = isKnown && isWithin(hot, -60, 90) ? loopOhms(cable, metres, hot) : NaN;
  const [supply, load] = [field(job, "drop_supply"), field(job, "drop_load")];
  const left = supply - load * ohms;
  const volts = left >= 0 && load >= 0 && supply > 0 ? left : NaN;
  const power = windowWord(volts, field(job, "drop_volts_least"), supply);
  // With a corner that is not found nothing is said of slopes; the check of the corners counts it.
  const isFound = !level.some(Number.isNaN);
  const steep = (a: number, b: number): boolean => Math.abs(level[a]! - level[b]!) > 15;
  const isLow = isFilled(job.fields, "drop_least") && least < 47;
  const isHigh = isFilled(job.fields, "drop_most") && most > 77;
  const entries = entriesOn(singleDrop, "Drop", job, book, {
    drop_supply: (of) => field(of, "drop_load") > 0,
    drop_volts_least: (of) => field(of, "drop_load") > 0,
  });
  return {
    drop_frequency: [shown.frequency],
    drop_temperature: [shown.temperature],
    drop_in: [shown.entering],
    drop_split: isSplit ? split : "",
    drop_loss: [loss],
    drop_level: [level],
    drop_verdict: [verdict],
    drop_slope: level[1]! - level[3]!,
    drop_ohms: ohms,
    drop_volts: volts,
    drop_power: power,
    ...checkCells(singleDrop, book, {
      "entries of Drop": none(entries.found, entries.places),
      "limits of level": none(Number(isLow) + Number(isHigh), [
        ...(isLow ? [drop.least.words.label] : []),
        ...(isHigh ? [drop.most.words.label] : []),
      ]),
      "slope too steep": none(isFound ? Number(steep(0, 2)) + Number(steep(1, 3)) : 0),
      "corners outside": none(verdict.filter((one) => one !== "ok").length),
      "short of volts": none(power === "ok" || (load === 0 && isByWords) ? 0 : 1),
    }),
  };
}
