/** The sheets of a workbook by what a person does with them, each group in the order of work. */
import type { SheetDefinition, WorkbookDefinition } from "./definition";

export const SHEET_GROUPS = ["Fill", "Results", "Hand over", "On site", "About"] as const;
export type SheetGroup = (typeof SHEET_GROUPS)[number];

const USUAL: Readonly<Record<SheetDefinition["kind"], SheetGroup>> = {
  about: "About",
  input: "Fill",
  parts: "Fill",
  workings: "Results",
  checks: "Results",
  print: "Hand over",
};

/** Sheets whose kind says how they are laid out, and not when they are wanted. */
const OTHERWISE: Readonly<Record<string, SheetGroup>> = {
  Alignment: "On site",
  Commissioning: "On site",
  Diagnosis: "On site",
  Causes: "On site",
  Log: "About",
  Review: "Fill",
  Taken: "About",
};

export const groupOf = ({ name, kind }: Pick<SheetDefinition, "name" | "kind">): SheetGroup =>
  OTHERWISE[name] ?? USUAL[kind];

/**
 * @param definition undefined for a workbook that is none of ours
 * @param sheets names of the sheets that are there, in their order
 * @returns groups that have a sheet; sheets of a person's own stand in the last
 */
export function groupedSheets(
  definition: WorkbookDefinition | undefined,
  sheets: readonly string[],
): { readonly group: SheetGroup | "Your own"; readonly sheets: readonly string[] }[] {
  const known = new Map(definition?.sheets.map((sheet) => [sheet.name, groupOf(sheet)]));
  const groups = [...SHEET_GROUPS, "Your own"] as const;
  return groups
    .map((group) => ({
      group,
      sheets: sheets.filter((name) => (known.get(name) ?? "Your own") === group),
    }))
    .filter((one) => one.sheets.length > 0);
}
