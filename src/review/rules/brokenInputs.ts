import { readReference } from "../../formula/reference";
import { tokensOf } from "../../formula/tokens";
import type { Book } from "../../workbooks/book";
import type { Finding, FindingPlace } from "../finding";
import { inputsIn } from "../inputsIn";
import type { Rule } from "../rule";

export const brokenInputs: Rule = {
  id: "input leads nowhere",
  reason:
    "A formula in a boxed cell is no entry: where what it reads is gone, the next calculation takes the price along.",
  example: "The crew rate is =#REF!*1.04, and still shows yesterday's value.",
  find: ({ read, definition }) => {
    const broken = new Map(brokenCells(read).map((one) => [`${one.sheet}!${one.cell}`, one.formula]));
    if (broken.size === 0) return [];
    return inputsIn(read, definition).flatMap(({ label, cells }) =>
      cells.flatMap(({ place }): Finding[] => {
        const formula = broken.get(`${place.sheet}!${place.cell}`);
        // What reads another file is told with the link.
        if (formula === undefined || !formula.includes("#REF!")) return [];
        return [
          {
            weight: "wrong",
            place,
            message: `${label} is a formula that leads nowhere: =${formula}.`,
            expected: "A value, typed.",
            effect: "It shows the value of an earlier day, and is an error once it is computed.",
            remedy: "Type the value itself.",
          },
        ];
      }),
    );
  },
};

/** Formulas that read what is gone, or another file. */
export const brokenCells = ({ sheets }: Book): (FindingPlace & { readonly formula: string })[] =>
  sheets.flatMap(({ name: sheet, cells }) =>
    Object.entries(cells).flatMap(([cell, { formula }]) =>
      formula !== undefined && leadsAway(formula) ? [{ sheet, cell, formula }] : [],
    ),
  );

const leadsAway = (formula: string): boolean =>
  tokensOf(formula).some(
    ({ kind, text }) =>
      text.includes("#REF!") ||
      // A name of another file stands behind its brackets too.
      (kind === "reference"
        ? readReference(text)?.file !== undefined
        : kind === "name" && text.includes("]")),
  );
