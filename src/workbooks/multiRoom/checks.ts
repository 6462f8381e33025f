/** The checks of the estimate, in the order of the sheet. */
import { f } from "../../formula/build";
import { lookAt, NONE_FOUND as none, SOME_FOUND as some } from "../checkPlaces";
import { checksOf, checksSheet } from "../checksSheet";
import type { CheckWords } from "../definition";
import { partEntryChecks, sheetEntryChecks, zeroNote } from "../entryChecks";
import { crewChecks } from "./crewChecks";
import { designChecks, ofCalculated, outletsWithWord } from "./designChecks";
import { LONG_SHEETS, OTHER_SHEETS } from "./filledSheets";
import { moneyChecks } from "./moneyChecks";
import { bonded, bonds } from "./names/bonding";
import { commission } from "./names/commissioning";
import { priceChecks } from "./priceChecks";

const afterwards = {
  "measured off prediction": {
    what: "Measured outlets off their prediction",
    limit: "advisory: see Diagnosis",
    ...outletsWithWord("look", commission.verdict),
    passes: none,
    where: lookAt("Commissioning", commission.verdict),
    advice: true,
  },
  "conductors to look at": {
    what: "Conductors that need attention, or could not be looked up",
    limit: "advisory: the local code decides",
    found: { of: bonds.where, bad: f`IFERROR(${bonds.flag.word}="look closer",TRUE)` },
    passes: none,
    where: "Bonding",
    advice: true,
  },
  "conductors listed": {
    what: "Conductors listed on Bonding",
    limit: "1 or more",
    found: f`SUMPRODUCT(--(${bonds.where}<>""))`,
    passes: some,
    where: "Bonding",
    advice: true,
  },
  "dishes without a conductor": {
    what: "Dishes without a conductor on Bonding",
    limit: "advisory: the local code decides",
    ...ofCalculated(bonded.dish, f`IFERROR(${bonded.verdict}="look",TRUE)`),
    passes: none,
    where: lookAt("Bonding", bonded.verdict),
    advice: true,
  },
} satisfies Readonly<Record<string, CheckWords>>;

const ofTheJob = { ...designChecks, ...priceChecks, ...crewChecks, ...moneyChecks };

/** What a check of the estimate is known by, whatever it says. */
export type EstimateCheck = keyof typeof ofTheJob | keyof typeof afterwards;

export const estimateChecksSheet = checksSheet([
  ...partEntryChecks(LONG_SHEETS),
  ...sheetEntryChecks(OTHER_SHEETS),
  ...checksOf(ofTheJob),
  zeroNote([...LONG_SHEETS, ...OTHER_SHEETS], "Site, Parts, Rooms"),
  ...checksOf(afterwards),
]);
