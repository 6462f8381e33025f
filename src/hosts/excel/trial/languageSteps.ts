/** What this Excel's language and its count of days do to numbers. */
import { hasApi } from "../inExcel";
import { bad, good, look, sheetOf, shown, type Step } from "./steps";

const NUMBERS = [1234.5, 0.1 + 0.2, 1e-9, 123456789.125];

export const numbersAndLanguage: Step = {
  what: "Numbers and language",
  run: async (context, ground) => {
    const { application } = context;
    const sheet = sheetOf(context, ground);
    const range = sheet.getRange("A90:D90");
    range.values = [NUMBERS];
    // As Survey keeps texts: an apostrophe before what might be taken for something else.
    const texts = sheet.getRange("A91:C91");
    texts.values = [["'12.5", "'12,5", "'1-2"]];
    const sum = sheet.getRange("A92");
    sum.formulas = [["=SUM(1.5,2.25)"]];
    const hasCulture = hasApi("1.11");
    const { numberFormat } = application.cultureInfo;
    if (hasCulture) numberFormat.load("numberDecimalSeparator");
    range.load("values,text");
    texts.load("values");
    sum.load("values");
    await context.sync();
    const sign = hasCulture ? numberFormat.numberDecimalSeparator : "not told (ExcelApi 1.11)";
    const read = `decimal sign “${sign}”; ${range.values[0]!.map(shown).join(" ")}; shown ${range.text[0]!.map(shown).join(" ")}; texts ${texts.values[0]!.map(shown).join(" ")}; 1.5 + 2.25 = ${shown(sum.values[0]![0])}`;
    if (!NUMBERS.every((one, at) => range.values[0]![at] === one) || sum.values[0]![0] !== 3.75)
      return bad("a number comes back as another one", read);
    const areTexts = ["12.5", "12,5", "1-2"].every((one, at) => texts.values[0]![at] === one);
    return areTexts
      ? good(`numbers pass to the last digit; the decimal sign here is “${sign}”`, read)
      : look("a text is taken for a number or a date", read);
  },
};

export const dateSystem: Step = {
  what: "Date system",
  run: async (context, ground) => {
    const cell = sheetOf(context, ground).getRange("A93");
    cell.formulas = [["=DATE(2000,1,1)"]];
    cell.numberFormat = [["0"]];
    if (ground.manual) cell.calculate();
    cell.load("values");
    await context.sync();
    const day: unknown = cell.values[0]![0];
    const read = `1 January 2000 is day ${shown(day)}`;
    // ECMA-376 part 1, 18.17.4.1.
    if (day === 36526) return good("this workbook counts days from 1900", read);
    return day === 35064
      ? look(
          "this workbook counts days from 1904: dates of sheets inserted here move by 1462 days; new workbooks are not concerned",
          read,
        )
      : bad("days are counted otherwise", read);
  },
};
