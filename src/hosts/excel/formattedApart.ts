/** Figures as the people of a workbook write them, where neither the grid library nor Excel is asked. */
import { shownNumber } from "../../review/numberFormat";
import type { Book } from "../../workbooks/book";
import { DATE_FORMAT } from "../../workbooks/looks";
import { namedValue } from "../../workbooks/named";
import type { Typesetting } from "../../workbooks/paperSheet";
import { WRITING_FIELD, writingOf } from "../../workbooks/typed/writing";

export function formattedApart(book: Book): Typesetting["formatted"] {
  const writing = writingOf(namedValue(book, WRITING_FIELD));
  return (value, format = "General") => {
    if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
    const { kind, text } = shownNumber(writing && format === DATE_FORMAT ? writing.date : format, value);
    if (!writing || kind !== "number") return text;
    // What is rounded to nought has no sign.
    const plain = text.replace(/^-(?=[0\D]*$)/, "");
    const grouped = writing.groupsFive ? plain.replace(/^(-?\d),(?=\d{3}(?!,|\d))/, "$1") : plain;
    const signs: Readonly<Record<string, string>> = { ".": writing.decimal, ",": writing.groupShown };
    return grouped.replace(/[.,]/g, (sign) => signs[sign]!);
  };
}
