/** Quote review: the office looks over somebody else's quote in two minutes. */
import type { WorkbookDefinition } from "../definition";
import { checksSheet } from "../checksSheet";
import { versionNow } from "../versions";
import { about } from "./about";
import { ratios } from "./ratios";
import { FIGURES_MISSING, review, SUMS_THAT_DIFFER } from "./review";

const checks = checksSheet([
  {
    what: "Figures that can be worked again and are not typed",
    limit: "none",
    found: FIGURES_MISSING,
    passes: "@=0",
    where: "Review, figures",
  },
  {
    what: "Sums that differ from what was worked again",
    limit: "none",
    found: SUMS_THAT_DIFFER,
    passes: "@=0",
    where: "Review, figures",
  },
  {
    what: "Lines whose sum is not quantity times cost, or not whole",
    limit: "none",
    found: 'COUNTIF(lines_word,"look")+COUNTIF(lines_word,"missing")+SUMPRODUCT(--ISERROR(lines_word))',
    passes: "@=0",
    where: "Review, lines",
  },
  {
    what: "Ratios outside your own ranges, or not found",
    limit: "none",
    found: 'COUNTIF(ranges_word,"look")+SUMPRODUCT(--ISERROR(ranges_value))',
    passes: "@=0",
    where: "Review, ratios",
  },
  {
    what: "Ratios without a range of yours",
    limit: "a wish, not a rule",
    found: 'COUNTIF(ranges_word,"no range")',
    passes: "@=0",
    where: "Review, ratios",
    advice: true,
  },
  {
    what: "Questions not settled",
    limit: "none",
    found: 'COUNTIF(asked_word,"look")',
    passes: "@=0",
    where: "Review, questions",
  },
  {
    what: "Days that the quote still holds on the day of the review",
    limit: "1 or more",
    found: "review_until-review_date",
    passes: "@>=1",
    where: "Review, valid until",
  },
  {
    what: "A reviewer is named",
    limit: "1",
    found: '(review_reviewer<>"")*1',
    passes: "@=1",
    where: "Review",
  },
  {
    what: "Cells filled at or below the closing row of a block",
    limit: "none: rows there are not looked at",
    found: 'SUMPRODUCT(--(lines_below<>""))+SUMPRODUCT(--(ranges_below<>""))+SUMPRODUCT(--(asked_below<>""))',
    passes: "@=0",
    where: "Review, the ends of the blocks",
  },
]);

export const quoteReview: WorkbookDefinition = {
  id: "quote-review",
  title: "Quote review",
  version: versionNow("quote-review"),
  sheets: [about, review, ratios, checks],
};
