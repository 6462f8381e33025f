import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { filledCells, hasJob } from "../namedCells";
import { onPurpose } from "../onPurpose";
import type { Rule } from "../rule";

/** As its field on Site is labelled, and so as Terms lists it. */
const LABEL = estimate.site.margin.words.label;

const percent = (share: number): string => `${Number((share * 100).toFixed(2))} %`;

export const margin: Rule = {
  id: "margin under the floor",
  reason: "A margin typed low by mistake or by pressure, or given away as a discount, is seen by no sum.",
  example: "A margin of 2.2 % where 22 % was meant; a discount of 30 % off a price with a margin of 22 %.",
  find: ({ read, computed, options: { marginFloor } }) => {
    if (!hasJob(read) || onPurpose(read)(LABEL)) return [];
    const expected = `${percent(marginFloor)} or more.`;
    const low = filledCells(read, estimate.site.margin.name).flatMap(({ place, value }): Finding[] =>
      typeof value === "number" && value < marginFloor
        ? [
            {
              weight: "doubtful",
              place,
              message: `The margin is ${percent(value)}.`,
              expected,
              effect: "The job earns less than the floor.",
              remedy:
                "Raise the margin, or have the low one agreed and list it, with the reason, on Terms among what is on purpose.",
            },
          ]
        : [],
    );
    if (low.length > 0) return low;
    const discount =
      filledCells(read, estimate.discount.sum.name)[0] ?? filledCells(read, estimate.discount.share.name)[0];
    const left = discount && leftAfterDiscount(computed);
    if (left === undefined || left >= marginFloor) return [];
    return [
      {
        weight: "doubtful",
        place: discount!.place,
        message:
          left < 0
            ? `With the discount the job is sold under its cost: the margin is ${percent(left)}.`
            : `The discount leaves a margin of ${percent(left)}.`,
        expected,
        effect: "The job earns less than the floor.",
        remedy:
          "Lower the discount, or have the low margin agreed and list it, with the reason, on Terms among what is on purpose.",
      },
    ];
  },
};

/** The margin of what is worked out from cost, as a share of its price less the discount; undefined without a price, or with none left. */
function leftAfterDiscount(computed: Book): number | undefined {
  const [cost, sell, off] = [
    estimate.price.cost.name,
    estimate.price.sell.name,
    estimate.price.discount.name,
  ].map((name) => namedValue(computed, name));
  if (typeof cost !== "number" || typeof sell !== "number" || typeof off !== "number") return undefined;
  return sell - off > 0 ? (sell - off - cost) / (sell - off) : undefined;
}
