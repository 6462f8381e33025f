import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding, Weight } from "../finding";
import { figure, filledCells, namedCells, type NamedCell } from "../namedCells";
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
    const said = why && saidOtherwise(String(why.value), given, given === share);
    if (said)
      return told("doubtful", given, ...said.words).map((one) => ({
        ...one,
        meant: said.meant,
        isGuess: true,
      }));
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

/** “500 off”, “5 % off”: the only figure of a reason that speaks of money off. */
const OFF = /(\d+(?:[.,]\d+)?)\s*(%|percent|per cent)?\s*(?:off|less|discount)\b/gi;

/** @returns what the reason says, where it is not what is given */
function saidOtherwise(
  reason: string,
  { value }: NamedCell,
  isShare: boolean,
): { readonly meant: number; readonly words: readonly [message: string, remedy: string] } | undefined {
  const [only, ...more] = [...reason.matchAll(OFF)];
  if (!only || more.length > 0 || typeof value !== "number") return undefined;
  const [, digits, percent] = only;
  if (isShare !== (percent !== undefined)) return undefined;
  const meant = Number(digits!.replace(",", ".")) / (isShare ? 100 : 1);
  if (!(meant > 0) || Math.abs(meant - value) < CENT / (isShare ? 100 : 1)) return undefined;
  const shown = isShare ? `${figure(value * 100)} %` : figure(value);
  return {
    meant,
    words: [
      `The discount is ${shown}; its reason says “${reason}”.`,
      "Enter what was agreed, or correct the reason.",
    ],
  };
}
