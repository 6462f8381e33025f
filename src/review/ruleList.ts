/** Every rule, in the order in which its findings are told. */
import type { Rule } from "./rule";
import { changedFormulas } from "./rules/changedFormulas";
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
import { outsideBlocks } from "./rules/outsideBlocks";
import { partsNeeded } from "./rules/partsNeeded";
import { prices } from "./rules/prices";
import { removedTexts } from "./rules/removedTexts";
import { staleValues } from "./rules/staleValues";
import { textNumbers } from "./rules/textNumbers";
import { totals } from "./rules/totals";
import { unitSlips } from "./rules/unitSlips";
import { namedValue } from "../workbooks/named";

export const rules: readonly Rule[] = [
  {
    id: "not our template",
    reason: "Only a workbook of a known template can be held to it, cell by cell.",
    example: "A workbook made from an older version of the template.",
    find: ({ read }) => origin(read),
  },
  {
    id: "changed formula",
    reason:
      "A number typed over a formula no longer follows its inputs; another formula counts something else.",
    example: "The tax is a typed 900; the sum of a cable reads the wrong column.",
    find: ({ read, computed, expected, definition, labelAt }) => {
      if (!definition) return [];
      const now = namedValue(computed, "quote_total");
      const should = namedValue(expected, "quote_total");
      const effect =
        typeof now !== "number" || typeof should !== "number"
          ? undefined
          : Math.abs(now - should) < 0.005
            ? "The total is the same with the template's formulas."
            : `The total is ${now.toFixed(2)}; with all of the template's formulas it is ${should.toFixed(2)}.`;
      return changedFormulas(read, definition, labelAt).map((finding) => ({ effect, ...finding }));
    },
  },
  {
    id: "error",
    reason: "A cell that shows an error hands it on to all that reads it.",
    example: "A run of -3: the loss of its cable cannot be found.",
    find: ({ computed, labelAt }) => errorCells(computed, labelAt),
  },
  staleValues,
  totals,
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
  outsideBlocks,
  removedTexts,
  hidden,
  {
    id: "failing check",
    reason: "The workbook's own checks count what cannot go out.",
    example: "A splitter feeds five outlets from four ports.",
    find: ({ computed }) => failingChecks(computed),
  },
];
