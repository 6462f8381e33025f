/** What the review of a quote begins with: its figures and lines, and the ranges that they are held to. */
import type { Book } from "../../workbooks/book";
import type { JobInputs } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { fromEstimate } from "../../workbooks/quoteReview/fromEstimate";
import { fromTyped } from "../../workbooks/quoteReview/fromTyped";
import type { TypedQuote } from "../../workbooks/quoteReview/typed/typedQuote";
import type { Learned } from "./learned";
import { quoteRanges } from "./quoteRanges";

/** @param learned of the firm's standards; none where there are none */
export function startFromTyped(quote: TypedQuote, learned: readonly Learned[] = []): JobInputs {
  const { figures, inFeet, currency } = quote;
  return withRanges(fromTyped(quote), quoteRanges(learned, figures.outlets, inFeet, currency));
}

/** @param computed a multi-room estimate */
export function startFromEstimate(computed: Book, learned: readonly Learned[] = []): JobInputs {
  const outlets = namedValue(computed, estimate.count.outlets.name);
  const inFeet = namedValue(computed, estimate.site.unit.name) === "ft";
  const currency = namedValue(computed, estimate.site.currency.name);
  return withRanges(
    fromEstimate(computed),
    quoteRanges(
      learned,
      typeof outlets === "number" ? outlets : undefined,
      inFeet,
      typeof currency === "string" && currency !== "" ? currency : undefined,
    ),
  );
}

const withRanges = (inputs: JobInputs, ranges: ReturnType<typeof quoteRanges>): JobInputs => ({
  ...inputs,
  blocks: { ...inputs.blocks, ranges },
});
