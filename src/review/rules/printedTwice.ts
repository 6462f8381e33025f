/** A sentence that the customer reads twice. */
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { inputsIn } from "../inputsIn";
import { filledCells, plainWord } from "../namedCells";
import { clearing } from "../rowCells";
import type { Rule } from "../rule";

const PRINTED = [
  { block: "assumptions", name: estimate.assumptions.text.name },
  { block: "exclusions", name: estimate.exclusions.text.name },
  { block: "letterhead", name: estimate.letterhead.line.name },
];

/** A full stop or a stroke more is no other sentence. */
const asRead = (value: unknown): string =>
  plainWord(value as string)
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

export const printedTwice: Rule = {
  id: "sentence printed twice",
  reason: "Assumptions and exclusions are printed: what stands there twice looks as if nobody had read it.",
  example: "“Repair and painting of finishes.” in two rows of what is not included.",
  find: ({ read, definition }) =>
    PRINTED.flatMap(({ block, name }) => {
      const seen = new Map<string, string>();
      return filledCells(read, name).flatMap(({ place, value, index }): Finding[] => {
        const said = asRead(value);
        const first = seen.get(said);
        seen.set(said, first ?? place.cell);
        if (first === undefined || said === "") return [];
        return [
          {
            weight: "doubtful",
            place,
            message: `“${String(value)}” stands in ${first} already.`,
            expected: "Each sentence once.",
            effect: "The customer reads it twice.",
            remedy: "Clear one of the two rows, or write what was meant.",
            undoing: clearing(read, inputsIn(read, definition), block, index),
          },
        ];
      });
    }),
};
