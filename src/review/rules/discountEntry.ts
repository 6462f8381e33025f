import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding, Weight } from "../finding";
import { figure, filledCells, namedCells } from "../namedCells";
import type { Rule } from "../rule";

const CENT = 0.005;

export const discountEntry: Rule = {
  id: "discount that cannot be",
  reason: "A discount greater than the price, or told in two ways, is a slip that the total agrees with.",
  example: "A discount of 9000 off a price of 7095; a sum of 250 and a share of 5 % both filled.",
  find: ({ read, computed }) => {
    const [sum, share, why] = ["sum", "share", "reason"].map(
      (key) => filledCells(read, `discount_${key}`)[0],
    );
    const given = sum ?? share;
    const told = (weight: Weight, at: typeof sum, message: string, remedy: string): Finding[] => [
      { weight, place: at!.place, message, expected: "One discount, with its reason.", remedy },
    ];
    if (sum && share)
      return told(
        "wrong",
        share,
        `The discount is ${String(sum.value)} as a sum and ${String(share.value)} as a share; the share is taken.`,
        "Clear the one that is not meant.",
      );
    if (!given)
      return why
        ? told(
            "doubtful",
            namedCells(read, estimate.discount.sum.name)[0],
            "A discount has its reason and no sum.",
            "Enter the discount, as a sum or a share; or clear the reason.",
          )
        : [];
    const [price, off] = [estimate.price.before.name, estimate.price.discount.name].map((name) =>
      namedValue(computed, name),
    );
    if (typeof price !== "number" || typeof off !== "number" || off <= price + CENT) return [];
    return told(
      "wrong",
      given,
      `The discount of ${figure(off)} is more than the price of ${figure(price)}.`,
      "Correct the discount.",
    );
  },
};
