/** Quote review: the office looks over somebody else's quote in two minutes. */
import { f } from "../../formula/build";
import { countedInAll, lookAt, NONE_FOUND } from "../checkPlaces";
import { checksOf, checksSheet } from "../checksSheet";
import type { WorkbookDefinition } from "../definition";
import { belowOf } from "../layOutBlock";
import { OF } from "../names";
import { versionNow } from "../versions";
import { about } from "./about";
import { lines, questions, ranges, review } from "./names";
import { ratiosSheet } from "./ratios";
import { FIGURES_MISSING, reviewSheet, SUMS_THAT_DIFFER } from "./review";

const checks = checksSheet(
  checksOf({
    "figures missing": {
      what: "Figures that can be worked again and are not typed",
      limit: "none",
      found: FIGURES_MISSING,
      passes: NONE_FOUND,
      where: "Review, figures",
    },
    "sums that differ": {
      what: "Sums that differ from what was worked again",
      limit: "none",
      found: SUMS_THAT_DIFFER,
      passes: NONE_FOUND,
      where: "Review, figures",
    },
    "lines that differ": {
      what: "Lines whose sum is not quantity times cost, or not whole",
      limit: "none",
      found: f`COUNTIF(${lines.word},"look")+COUNTIF(${lines.word},"missing")+SUMPRODUCT(--ISERROR(${lines.word}))`,
      passes: NONE_FOUND,
      where: "Review, lines",
    },
    "lines twice": {
      what: "Lines that stand twice",
      limit: "none",
      found: f`COUNTIF(${lines.word},"twice")`,
      passes: NONE_FOUND,
      where: "Review, lines",
    },
    "ratios out of range": {
      what: "Ratios outside your own ranges, or not found",
      limit: "none",
      found: f`COUNTIF(${ranges.word},"look")+SUMPRODUCT(--ISERROR(${ranges.value}))`,
      passes: NONE_FOUND,
      where: "Review, ratios",
    },
    "ratios without a range": {
      what: "Ratios without a range of yours",
      limit: "advisory",
      found: f`COUNTIF(${ranges.word},"no range")`,
      passes: NONE_FOUND,
      where: "Review, ratios",
      advice: true,
    },
    "questions open": {
      what: "Questions not settled",
      limit: "none",
      found: f`COUNTIF(${questions.word},"look")`,
      passes: NONE_FOUND,
      where: "Review, questions",
    },
    "days of validity": {
      what: "Validity from the day of the review, days",
      limit: "1 or more",
      found: f`${review.until}-${review.date}`,
      passes: (found) => f`${found}>=1`,
      where: lookAt("Review", review.until),
    },
    "reviewer named": {
      what: "A reviewer is named",
      limit: "1",
      found: f`(${review.reviewer}<>"")*1`,
      passes: (found) => f`${found}=1`,
      where: lookAt("Review", review.reviewer),
    },
    "rows below a block": {
      what: "Cells filled at or below the closing row of a block",
      limit: "none: rows there are not looked at",
      found: countedInAll([lines, ranges, questions].map((of) => f`${belowOf(of[OF])}<>""`)),
      passes: NONE_FOUND,
      where: "Review, the ends of the blocks",
    },
  }),
);

export const quoteReview: WorkbookDefinition = {
  id: "quote-review",
  title: "Quote review",
  version: versionNow("quote-review"),
  sheets: [about, reviewSheet, ratiosSheet, checks],
};
