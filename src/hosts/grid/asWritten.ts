/** Figures as the people of a workbook write them, by the grid library's formats. */
import { DATE_FORMAT } from "../../workbooks/looks";
import type { ShownWriting } from "../../workbooks/typed/writing";
import type { GridLibrary, GridModel } from "./library";

export type GridLocale = ReturnType<GridModel["getters"]["getLocale"]>;

/** Of the library's caches one belongs to each locale, so each is made once. */
const known = new Map<string, GridLocale>();

/** What the library asks of a locale: how numbers, dates and the arguments of a formula are typed and shown. */
export function localeOf({ tag, label, decimal, groupShown, date }: ShownWriting): GridLocale {
  let locale = known.get(tag);
  if (!locale) {
    locale = {
      name: label,
      code: tag.replace("-", "_"),
      decimalSeparator: decimal,
      thousandsSeparator: groupShown,
      dateFormat: date,
      timeFormat: "hh:mm:ss",
      // As spreadsheet programs part arguments where the comma is taken.
      formulaArgSeparator: decimal === "," ? ";" : ",",
      weekStart: 1,
    };
    known.set(tag, locale);
  }
  return locale;
}

/**
 * @param format as it is stored: it says how many digits are shown, and not by which signs
 * @param writing undefined where nobody has chosen: as the format has it
 */
export function formattedAs(
  { helpers, constants }: GridLibrary,
  value: number | string | boolean | null,
  format: string | undefined,
  writing: ShownWriting | undefined,
): string {
  if (!writing) return helpers.formatValue(value, { format, locale: constants.DEFAULT_LOCALE });
  const locale = localeOf(writing);
  if (typeof value === "number" && format === DATE_FORMAT)
    return helpers.formatValue(value, { format: writing.date, locale });
  // What is rounded to nought has no sign.
  const text = helpers.formatValue(value, { format, locale }).replace(/^-(?=[0\D]*$)/, "");
  return writing.groupsFive && typeof value === "number" && format?.includes(",")
    ? withoutLoneGroup(text, locale)
    : text;
}

/** The library has no word for the least digits that are grouped. */
function withoutLoneGroup(text: string, { thousandsSeparator, decimalSeparator }: GridLocale): string {
  const [whole, ...rest] = text.split(decimalSeparator);
  const groups = whole!.split(thousandsSeparator!);
  return groups.length === 2 && /(?:^|\D)\d$/.test(groups[0]!)
    ? [groups.join(""), ...rest].join(decimalSeparator)
    : text;
}
