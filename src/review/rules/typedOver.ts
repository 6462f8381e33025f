import type { Finding } from "../finding";
import { formulaDifferences } from "../formulaDifferences";
import { priceEffect } from "../priceEffect";
import type { Rule } from "../rule";

export const typedOver: Rule = {
  id: "formula typed over",
  reason: "A number typed over a formula no longer follows its inputs.",
  example: "The total is a typed 11,000; outlets added later change nothing.",
  find: (reviewed) => {
    const { read, definition, labelAt } = reviewed;
    if (!definition) return [];
    const effect = priceEffect(reviewed);
    return formulaDifferences(read, definition, labelAt).flatMap(({ typedOver, ...finding }): Finding[] =>
      typedOver ? [{ effect, ...finding }] : [],
    );
  },
};
