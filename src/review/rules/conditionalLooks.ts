/** Conditional formats under which a figure is not seen, or seen as another. */
import { parseRange, isInside } from "../../formula/address";
import type { SavedCondition } from "../../workbooks/savedFile";
import type { Finding } from "../finding";
import { isBlank } from "../namedCells";
import { shownNumber } from "../numberFormat";
import type { Rule } from "../rule";
import { templateSheets, type TemplateCell, type TemplateSheet } from "../templateCells";

export const conditionalLooks: Rule = {
  id: "hidden by condition",
  reason: "A conditional format lays another look over a cell, and may take the figure away.",
  example: "A tax above 1,000 turns white on white.",
  find: ({ read, definition, labelAt }) => {
    const file = read.saved?.file;
    if (!definition || !file) return [];
    return templateSheets(read, definition).flatMap((sheet) =>
      (file.sheets.find(({ name }) => name === sheet.sheet.name)?.conditions ?? []).flatMap((one) =>
        ofCondition(one, sheet, (cell) => labelAt(sheet.sheet.name, cell.place)),
      ),
    );
  },
};

function ofCondition(
  condition: SavedCondition,
  sheet: TemplateSheet,
  called: (cell: TemplateCell) => string,
): Finding[] {
  const zones = condition.ranges.flatMap((range) => parseRange(range) ?? []);
  const cells = sheet.cells.filter(
    ({ place, value }) => !isBlank(value) && zones.some((zone) => isInside(zone, place.row, place.column)),
  );
  const held = cells.filter(({ value }) => holds(condition, value) !== false);
  const hidden = held.find(({ look }) => {
    const ground = condition.fill ?? look.fill ?? "FFFFFF";
    return (
      (condition.color !== undefined || condition.fill !== undefined) &&
      near(condition.color ?? look.color ?? "000000", ground)
    );
  });
  const remedy = "Delete the rule: Home, Conditional Formatting, Manage Rules.";
  if (hidden)
    return [
      {
        weight: holds(condition, hidden.value) ? "wrong" : "doubtful",
        place: { sheet: sheet.sheet.name, cell: hidden.at },
        message: `A conditional format gives ${called(hidden)} (${hidden.at}) the colour of its ground${condition.color === "FFFFFF" ? ", white on white" : ""}: the figure is hidden.`,
        effect: "It counts and cannot be read.",
        remedy,
      },
    ];
  if (condition.format === undefined) return [];
  const { format } = condition;
  const other = held.find(
    ({ value, look }) =>
      typeof value === "number" &&
      shownNumber(format, value).text !== shownNumber(look.format ?? "General", value).text,
  );
  if (!other) return [];
  const shown = shownNumber(format, other.value as number);
  const scaled = shown.thousandsAway > 0 ? ", thousands scaled away" : "";
  return [
    {
      weight: shown.thousandsAway > 0 || shown.kind !== "number" ? "wrong" : "doubtful",
      place: { sheet: sheet.sheet.name, cell: other.at },
      message: `A conditional format shows ${called(other)} (${other.at}) as “${shown.text}” by the number format ${format}${scaled}.`,
      effect: "The page shows another figure than the cell holds.",
      remedy,
    },
  ];
}

/** @returns undefined where that cannot be told from the file */
function holds({ kind, operator, formulas }: SavedCondition, value: unknown): boolean | undefined {
  if (kind !== "cellIs" || typeof value !== "number") return kind === "cellIs" ? false : undefined;
  const [low, high] = formulas.map((formula) => (formula.trim() === "" ? NaN : Number(formula)));
  if (low === undefined || !Number.isFinite(low)) return undefined;
  switch (operator) {
    case "greaterThan":
      return value > low;
    case "greaterThanOrEqual":
      return value >= low;
    case "lessThan":
      return value < low;
    case "lessThanOrEqual":
      return value <= low;
    case "equal":
      return value === low;
    case "notEqual":
      return value !== low;
    case "between":
      return high === undefined || !Number.isFinite(high) ? undefined : value >= low && value <= high;
    case "notBetween":
      return high === undefined || !Number.isFinite(high) ? undefined : value < low || value > high;
    default:
      return undefined;
  }
}

/** Of so little difference in each part of the colour nothing is seen. */
const NEAR = 24;
function near(one: string, other: string): boolean {
  const parts = (color: string): number[] =>
    [0, 2, 4].map((from) => parseInt(color.slice(-6).slice(from, from + 2), 16));
  const others = parts(other);
  return parts(one).every((part, index) => Math.abs(part - others[index]!) <= NEAR);
}
