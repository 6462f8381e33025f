import type { Book } from "../../workbooks/book";
import type { SheetDefinition } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { standardExclusions } from "../../workbooks/multiRoom/startingPoint";
import type { Finding } from "../finding";
import { missingLines } from "../missingLines";
import { filledCells, hasJob, namedCells } from "../namedCells";
import type { Rule } from "../rule";

export const removedTexts: Rule = {
  id: "caution or exclusion removed",
  reason: "Cautions and exclusions are there to be read by who signs.",
  example: "The line on overhead lines is gone from the About sheet.",
  find: ({ read, definition, earlier }) => {
    if (!definition || earlier) return [];
    const sheets = definition.sheets.filter(({ name }) => !read.sheets.some((one) => one.name === name));
    const findings: Finding[] = [
      ...sheets.map((sheet): Finding => {
        const now = sheetOf(sheet, read);
        return now === undefined
          ? {
              weight: "wrong",
              message: `The sheet ${sheet.name} is gone.`,
              remedy: "Start a workbook from the template and copy the inputs over.",
            }
          : {
              weight: "worth knowing",
              message: `The sheet ${sheet.name} was renamed to ${now}.`,
              effect: "Nothing is lost by that: formulas follow. Words that send a person there do not.",
              remedy: `Name it ${sheet.name} again.`,
            };
      }),
      ...missingLines(read, definition, (part) => (part.kind === "text" ? part.lines : [])).map(
        ({ place, line }): Finding => ({
          weight: "wrong",
          place,
          message: "A line of the template is gone or changed.",
          expected: line,
          effect: "Who reads this sheet is not warned.",
          remedy: "Write it there again, or copy the sheet from the template.",
        }),
      ),
    ];
    return [...findings, ...exclusions()];

    function exclusions(): Finding[] {
      if (!hasJob(read)) return [];
      const place = namedCells(read, estimate.exclusions.text.name)[1]?.place;
      const there = new Set(filledCells(read, estimate.exclusions.text.name).map(({ value }) => value));
      const gone = standardExclusions.filter(({ text }) => !there.has(text));
      // A firm's own list need not hold ours.
      if (!place || gone.length === 0 || (there.size > 0 && gone.length === standardExclusions.length))
        return [];
      return gone.map(({ text }) => ({
        weight: "doubtful",
        place,
        message: "An exclusion that every job starts with is gone.",
        expected: text,
        effect: "The price then seems to hold it.",
        remedy: "Write it under Terms again, or price what it left out.",
      }));
    }
  },
};

/** @returns where the names of a sheet that is not there under its own name lie now */
function sheetOf({ parts }: SheetDefinition, { names }: Book): string | undefined {
  const own = parts.flatMap((part) =>
    part.kind === "block"
      ? part.columns.map(({ key }) => `${part.name}_${key}`)
      : part.kind === "fields"
        ? part.fields.map(({ name }) => name)
        : [],
  );
  return names.find(({ name }) => own.includes(name))?.sheet;
}
