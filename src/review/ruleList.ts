/** Every rule, in the order in which its findings are told. */
import { withStoredWhereBeyondUs } from "./beyondUs";
import type { Rule } from "./rule";
import { alternates } from "./rules/alternates";
import { bandPlans } from "./rules/bandPlans";
import { checksToday } from "./rules/checksToday";
import { crewAndSite } from "./rules/crewAndSite";
import { crossedFigures } from "./rules/crossedFigures";
import { discountEntry } from "./rules/discountEntry";
import { discounts } from "./rules/discounts";
import { duplicates } from "./rules/duplicates";
import { earlierVersion } from "./rules/earlierVersion";
import { errorCells } from "./rules/errorCells";
import { failingChecks } from "./rules/failingChecks";
import { farFromNeighbours } from "./rules/farFromNeighbours";
import { feedCounts } from "./rules/feedCounts";
import { feeding } from "./rules/feeding";
import { floorsAlike } from "./rules/floorsAlike";
import { hidden } from "./rules/hidden";
import { inputRules } from "./rules/inputRules";
import { limits } from "./rules/limits";
import { margin } from "./rules/margin";
import { measured } from "./rules/measured";
import { mirroredRows } from "./rules/mirroredRows";
import { missingEntries } from "./rules/missingEntries";
import { nameSaysOtherwise } from "./rules/nameSaysOtherwise";
import { numbersLeftOut } from "./rules/numbersLeftOut";
import { officeRemarks } from "./rules/officeRemarks";
import { origin } from "./rules/origin";
import { otherFormula } from "./rules/otherFormula";
import { outsideBlocks } from "./rules/outsideBlocks";
import { partsAgree } from "./rules/partsAgree";
import { partsNeeded } from "./rules/partsNeeded";
import { placeAndSlots } from "./rules/placeAndSlots";
import { prices } from "./rules/prices";
import { quoteDates } from "./rules/quoteDates";
import { reelLengths } from "./rules/reelLengths";
import { removedChecks } from "./rules/removedChecks";
import { removedTexts } from "./rules/removedTexts";
import { rowsWrong } from "./rules/rowsWrong";
import { staleValues } from "./rules/staleValues";
import { supply } from "./rules/supply";
import { taxBase } from "./rules/taxBase";
import { textNumbers } from "./rules/textNumbers";
import { totals } from "./rules/totals";
import { typedOver } from "./rules/typedOver";
import { typeEntries } from "./rules/typeEntries";
import { unitSlips } from "./rules/unitSlips";
import { unlikeAccepted } from "./rules/unlikeAccepted";
import { unlikelyAmounts } from "./rules/unlikelyAmounts";
import { unlikeStandards } from "./rules/unlikeStandards";
import { changedWords } from "./rules/changedWords";
import { conditionalLooks } from "./rules/conditionalLooks";
import { covered } from "./rules/covered";
import { guardsGone } from "./rules/guardsGone";
import { leadsOutside } from "./rules/leadsOutside";
import { looksAlike } from "./rules/looksAlike";
import { otherFigure } from "./rules/otherFigure";
import { printedPage } from "./rules/printedPage";
import { NAMED_ONE_BY_ONE, quoteSlips } from "./rules/quoteSlips";
import { tellsMore } from "./rules/tellsMore";
import { countedTwice } from "./rules/countedTwice";
import { loggedTotal } from "./rules/loggedTotal";
import { printedTwice } from "./rules/printedTwice";
import { brokenInputs } from "./rules/brokenInputs";
import { unreadable } from "./rules/unreadable";
import { workNeeded } from "./rules/workNeeded";
import { zeroAmounts } from "./rules/zeroAmounts";

export const rules: readonly Rule[] = [
  {
    id: "not our template",
    reason: "Only a workbook of a known template can be held to it, cell by cell.",
    example: "A workbook that somebody made by hand.",
    find: ({ read, earlier }) => (earlier?.fresh ? [] : origin(read)),
  },
  earlierVersion,
  typedOver,
  otherFormula,
  brokenInputs,
  staleValues,
  missingEntries,
  numbersLeftOut,
  zeroAmounts,
  totals,
  quoteSlips,
  taxBase,
  textNumbers,
  looksAlike,
  mirroredRows,
  inputRules,
  discountEntry,
  crossedFigures,
  feeding,
  feedCounts,
  supply,
  reelLengths,
  quoteDates,
  placeAndSlots,
  nameSaysOtherwise,
  bandPlans,
  partsAgree,
  typeEntries,
  crewAndSite,
  alternates,
  rowsWrong,
  limits,
  unitSlips,
  unlikelyAmounts,
  workNeeded,
  farFromNeighbours,
  unlikeStandards,
  unlikeAccepted,
  floorsAlike,
  duplicates,
  partsNeeded,
  prices,
  margin,
  measured,
  discounts,
  outsideBlocks,
  removedChecks,
  removedTexts,
  hidden,
  otherFigure,
  unreadable,
  conditionalLooks,
  covered,
  printedPage,
  changedWords,
  countedTwice,
  printedTwice,
  loggedTotal,
  officeRemarks,
  tellsMore,
  leadsOutside,
  guardsGone,
  {
    id: "error",
    reason: "A cell that shows an error hands it on to all that reads it.",
    example: "A run of -3: the loss of its cable cannot be found.",
    find: ({ read, computed, labelAt }) => errorCells(withStoredWhereBeyondUs(read, computed), labelAt),
  },
  {
    id: "failing check",
    reason: "The workbook's own checks count what cannot go out.",
    example: "A splitter feeds five outlets from four ports.",
    find: ({ own, computed, earlier }) =>
      (earlier?.fresh ? checksToday(earlier.fresh, own) : failingChecks(computed)).filter(
        ({ check }) => !check || !NAMED_ONE_BY_ONE.has(check.id),
      ),
  },
];
