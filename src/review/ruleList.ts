/** Every rule, in the order in which its findings are told. */
import type { Rule } from "./rule";
import { discounts } from "./rules/discounts";
import { duplicates } from "./rules/duplicates";
import { errorCells } from "./rules/errorCells";
import { failingChecks } from "./rules/failingChecks";
import { farFromNeighbours } from "./rules/farFromNeighbours";
import { feeding } from "./rules/feeding";
import { hidden } from "./rules/hidden";
import { inputRules } from "./rules/inputRules";
import { limits } from "./rules/limits";
import { margin } from "./rules/margin";
import { measured } from "./rules/measured";
import { origin } from "./rules/origin";
import { otherFormula } from "./rules/otherFormula";
import { outsideBlocks } from "./rules/outsideBlocks";
import { partsNeeded } from "./rules/partsNeeded";
import { prices } from "./rules/prices";
import { removedChecks } from "./rules/removedChecks";
import { removedTexts } from "./rules/removedTexts";
import { staleValues } from "./rules/staleValues";
import { taxBase } from "./rules/taxBase";
import { textNumbers } from "./rules/textNumbers";
import { totals } from "./rules/totals";
import { typedOver } from "./rules/typedOver";
import { unitSlips } from "./rules/unitSlips";

export const rules: readonly Rule[] = [
  {
    id: "not our template",
    reason: "Only a workbook of a known template can be held to it, cell by cell.",
    example: "A workbook made from an older version of the template.",
    find: ({ read }) => origin(read),
  },
  typedOver,
  otherFormula,
  staleValues,
  totals,
  taxBase,
  textNumbers,
  inputRules,
  feeding,
  limits,
  unitSlips,
  farFromNeighbours,
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
  {
    id: "error",
    reason: "A cell that shows an error hands it on to all that reads it.",
    example: "A run of -3: the loss of its cable cannot be found.",
    find: ({ computed, labelAt }) => errorCells(computed, labelAt),
  },
  {
    id: "failing check",
    reason: "The workbook's own checks count what cannot go out.",
    example: "A splitter feeds five outlets from four ports.",
    find: ({ computed }) => failingChecks(computed),
  },
];
