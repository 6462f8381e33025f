/**
 * Tuners, head units and tuning words, line by line: the steps of
 * tunersOfKind, headUnits and tuningWord, with their sources and range.
 */
import { isFault, type Fault } from "../faults";
import type { Megahertz } from "../quantity";
import { headUnits } from "../tuners/headUnits";
import { kindKey, tunersOfKind, type TunerCatalogue } from "../tuners/tunersOfKind";
import { tuningWord, type TuningStandard } from "../tuners/tuningWord";
import { arithmetic, Working, type Step } from "./steps";

const BAND = "One tuner takes one user band (EN 50494)";

/**
 * @param kind the kind of receiver in words
 * @param quantity receivers of that kind
 * @param catalogue the user's own kinds
 * @returns the steps to the number of tuners
 */
export function tunerCountSteps(
  kind: string,
  quantity: number,
  catalogue?: TunerCatalogue,
): readonly Step[] | Fault {
  const tuners = tunersOfKind(kind, catalogue);
  if (isFault(tuners)) return tuners;
  const work = new Working();
  work.given("kind", "kind of receiver", kind);
  work.given("q", "receivers of that kind", quantity, "receivers");
  const own = catalogue?.has(kindKey(kind));
  work.taken(
    "t",
    "tuners in one of them",
    tuners,
    "tuners",
    own ? "The catalogue" : `${BAND}; a recorder counts with all its tuners: common practice, no source`,
  );
  work.worked(
    "n",
    "tuners, and so user bands, q·t",
    tuners * quantity,
    "tuners",
    arithmetic`${quantity}·${tuners}`,
    BAND,
  );
  return work.steps;
}

/** Parameters as for headUnits. */
export function headUnitsSteps(tuners: number, capacity: number): readonly Step[] {
  const work = new Working();
  work.given("n", "tuners to serve", tuners, "tuners");
  work.given("c", "tuners that one head unit serves", capacity, "tuners");
  const filled = work.worked(
    "n/c",
    "head units, were they divisible",
    tuners / capacity,
    "",
    arithmetic`${tuners}/${capacity}`,
    BAND,
  );
  work.worked(
    "h",
    "whole head units, rounded up",
    headUnits(tuners, capacity),
    "head units",
    // With every digit: the last ones may decide.
    `ceil(${filled})`,
    "A head unit is not divided",
  );
  return work.steps;
}

/** Parameters as for tuningWord. */
export function tuningWordSteps(
  ifFrequency: Megahertz,
  bandFrequency: Megahertz | undefined,
  standard: TuningStandard,
): readonly Step[] | Fault {
  const word = tuningWord(ifFrequency, bandFrequency, standard);
  if (isFault(word)) return word;
  const work = new Working();
  work.given("standard", "standard of the head unit", standard);
  work.given("F", "wanted frequency of the intermediate band", ifFrequency, "MHz");
  const source = `${standard}, as seen in open driver code`;
  const exact =
    standard === "EN 50494"
      ? work.worked(
          "t",
          "steps of 4 MHz, (F + B)/4 − 350",
          (ifFrequency + work.given("B", "centre of the user band", bandFrequency!, "MHz")) / 4 - 350,
          "",
          arithmetic`(${ifFrequency} + ${bandFrequency!})/4 − 350`,
          source,
        )
      : work.worked(
          "t",
          "steps of 1 MHz, F − 100",
          ifFrequency - 100,
          "",
          arithmetic`${ifFrequency} − 100`,
          source,
        );
  work.worked("T", "tuning word, rounded to a whole number", word, "", `round(${exact})`, source);
  return work.steps;
}
