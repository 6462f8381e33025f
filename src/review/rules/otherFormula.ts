import type { Finding } from "../finding";
import { priceEffect } from "../priceEffect";
import type { Rule } from "../rule";

export const otherFormula: Rule = {
  id: "formula changed",
  reason: "A formula that is not the template's counts something else than its heading says.",
  example: "The sum of a cable reads the column beside the price.",
  find: (reviewed) => {
    const effect = priceEffect(reviewed);
    return reviewed.differences.flatMap(({ typedOver, ...finding }): Finding[] =>
      typedOver ? [] : [{ effect, ...finding }],
    );
  },
};
