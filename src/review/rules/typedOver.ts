import type { Book } from "../../workbooks/book";
import type { Finding } from "../finding";
import { figure } from "../namedCells";
import { priceEffect } from "../priceEffect";
import type { Rule } from "../rule";

export const typedOver: Rule = {
  id: "formula typed over",
  reason: "A number typed over a formula no longer follows its inputs.",
  example: "The total is a typed 11,000; outlets added later change nothing.",
  find: (reviewed) => {
    const { expected, differences } = reviewed;
    const effect = priceEffect(reviewed);
    return differences.flatMap(({ typedOver, ...finding }): Finding[] =>
      typedOver ? [{ effect, ...finding, expected: withValue(finding, expected) }] : [],
    );
  },
};

/** What the formula comes to says more to a person than the formula. */
function withValue({ place, expected }: Finding, computed: Book | undefined): string | undefined {
  const sheet = computed?.sheets.find(({ name }) => name === place?.sheet);
  const value = place && sheet?.results[place.cell];
  return typeof value === "number" && expected?.startsWith("=")
    ? `${figure(value)}, by ${expected}`
    : expected;
}
