/** Words of the template that were typed over, and what was added to the customer's sheet. */
import { isInside, parseRange } from "../../formula/address";
import { readAreas } from "../../formula/readAreas";
import type { Finding } from "../finding";
import { isBlank } from "../namedCells";
import type { Reviewed, Rule } from "../rule";
import { isForCustomer, templateSheets, type TemplateSheet } from "../templateCells";

/** Sheets on which costs stand that no customer sees. */
const OF_COSTS: ReadonlySet<string> = new Set([
  "Price",
  "Parts",
  "Materials",
  "Labour",
  "Crew",
  "Order list",
  "Cutting plan",
]);

export const changedWords: Rule = {
  id: "words of the quote changed",
  reason: "A label says what the figure beside it is; the figure does not follow the label.",
  example: "“Tax 19 %” stands beside a tax of 20 %.",
  find: (reviewed) => {
    const { read, definition, earlier } = reviewed;
    if (!definition || earlier || !read.saved?.file) return [];
    return templateSheets(read, definition)
      .filter(isForCustomer)
      .flatMap((sheet) => [...labels(sheet), ...added(sheet, reviewed)]);
  },
};

function labels(sheet: TemplateSheet): Finding[] {
  const words = new Set(
    Object.values(sheet.fresh.cells).flatMap(({ value }) => (typeof value === "string" ? [value] : [])),
  );
  return sheet.cells.flatMap(({ at, cell, own }): Finding[] => {
    const before = own?.value;
    const now = cell?.value;
    if (typeof before !== "string" || typeof now !== "string" || now.trim() === before.trim()) return [];
    // A line that stands elsewhere now is a line that moved.
    if (words.has(now)) return [];
    return [
      {
        weight: "doubtful",
        place: { sheet: sheet.sheet.name, cell: at },
        message: `The label “${before}” of the template reads “${now}” here.`,
        expected: before,
        effect: "The figure beside it is still what the template's label says.",
        remedy: "Write the template's label again; change tax, price or customer where they are entered.",
      },
    ];
  });
}

function added(sheet: TemplateSheet, { read }: Reviewed): Finding[] {
  const name = sheet.sheet.name;
  const area = sheet.sheet.print?.area ? parseRange(sheet.sheet.print.area) : undefined;
  const hidden = new Set(sheet.sheet.hiddenColumns ?? []);
  const found = sheet.cells.filter(
    ({ own, cell, value }) =>
      cell?.formula !== undefined && own?.formula === undefined && own?.look === undefined && !isBlank(value),
  );
  const costs = found.filter(({ cell }) =>
    readAreas(read, name, cell!.formula!).some(({ sheet: of }) => OF_COSTS.has(of)),
  );
  const told = costs.length > 0 ? costs : found;
  const [first] = told;
  if (!first) return [];
  const prints =
    !hidden.has(first.place.column) && (!area || isInside(area, first.place.row, first.place.column));
  const isOne = told.length === 1;
  const more = isOne ? "" : ` and ${told.length - 1} more`;
  return [
    {
      weight: costs.length > 0 && prints ? "wrong" : "doubtful",
      place: { sheet: name, cell: first.at },
      message:
        costs.length > 0
          ? `${first.at}${more} of ${name} ${isOne ? "was added and shows" : "were added and show"} figures of the office, cost among them: =${first.cell!.formula!}${hidden.has(first.place.column) ? " (in a hidden column)" : ""}.`
          : `${first.at}${more} of ${name} ${isOne ? "holds" : "hold"} a formula that the template does not have: =${first.cell!.formula!}.`,
      effect: prints ? "It is printed on the customer's page." : "Whoever gets the file can see it.",
      remedy: "Delete it here; keep such figures on a sheet of the office's own.",
    },
  ];
}
