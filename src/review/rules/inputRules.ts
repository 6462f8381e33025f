import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import type { Block, Field, InputRule, Part } from "../../workbooks/definition";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";
import { numberInText } from "./textNumbers";

export const inputRules: Rule = {
  id: "input outside its rule",
  reason: "A pasted value passes by the rule that refuses a typed one.",
  example: "A tax of 20 where a share from 0 to 1 belongs.",
  find: ({ read, definition }) => {
    const parts: readonly Part[] = definition?.sheets.flatMap((sheet) => sheet.parts) ?? [];
    return parts.flatMap((part) => {
      if (part.kind === "fields") return part.fields.flatMap((field) => held(read, field.name, field));
      if (part.kind !== "block") return [];
      return part.columns.flatMap((column) =>
        held(read, `${part.name}_${column.key}`, { ...column, label: column.head }),
      );
    });
  },
};

type Input =
  | Pick<Field, "label" | "input" | "unit">
  | (Pick<Block["columns"][number], "input" | "unit"> & { label: string });

function held(book: Book, name: string, { label, input }: Input): Finding[] {
  if (!input) return [];
  return filledCells(book, name)
    .filter(({ typed }) => typed)
    .flatMap((cell): Finding[] => {
      const should = broken(book, input.rule, cell);
      if (should === undefined) return [];
      return [
        {
          weight: "wrong",
          place: cell.place,
          says: `${label} is ${shown(cell.value)}.`,
          should,
          wayOut: `Enter it again. ${input.what}.`,
        },
      ];
    });
}

/** @returns what belongs there; undefined when the value may stand */
function broken(book: Book, rule: InputRule["rule"], { value }: NamedCell): string | undefined {
  switch (rule.kind) {
    case "number": {
      // Text that holds a number has a rule of its own.
      if (typeof value !== "number") return numberInText(value) === undefined ? "A number." : undefined;
      const { min = -Infinity, max = Infinity } = rule;
      if (value < min || value > max) return `From ${min} to ${max}.`;
      return rule.integer && !Number.isInteger(value) ? "A whole number." : undefined;
    }
    case "date":
      return typeof value === "number" ? undefined : "A date.";
    case "choice":
      return rule.choices.some((one) => plainWord(one) === plainWord(value))
        ? undefined
        : `One of: ${rule.choices.join(", ")}.`;
    case "named": {
      const offered = namedCells(book, rule.name);
      const known = offered.some((one) => !isBlank(one.value) && plainWord(one.value) === plainWord(value));
      return known ? undefined : "A name of the list that the cell offers.";
    }
    default:
      return undefined;
  }
}

const shown = (value: BookResult | undefined): string => {
  if (typeof value === "number") return figure(value);
  return isBookError(value) ? value.error : `“${String(value)}”`;
};
