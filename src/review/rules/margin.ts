import { filledCells, hasJob } from "../namedCells";
import { onPurpose } from "../onPurpose";
import type { Rule } from "../rule";

/** As its field on Site is labelled, and so as Terms lists it. */
const LABEL = "Margin";

const percent = (share: number): string => `${Number((share * 100).toFixed(2))} %`;

export const margin: Rule = {
  id: "margin under the floor",
  reason: "A margin typed low by mistake or by pressure is seen by no sum.",
  example: "A margin of 2.2 % where 22 % was meant.",
  find: ({ read, options: { marginFloor } }) =>
    hasJob(read) && !onPurpose(read)(LABEL)
      ? filledCells(read, "site_margin").flatMap(({ place, value }) =>
          typeof value === "number" && value < marginFloor
            ? [
                {
                  weight: "doubtful" as const,
                  place,
                  says: `The margin is ${percent(value)}.`,
                  should: `${percent(marginFloor)} or more.`,
                  effect: "The job earns less than the floor.",
                  wayOut:
                    "Raise the margin, or have the low one agreed and list it, with the reason, on Terms among what is on purpose.",
                },
              ]
            : [],
        )
      : [],
};
