/** What was understood of a survey, in words, for a person to look at before anything is written. */
import type { MappedColumn } from "../imported/columns";
import { changeInWords, shownCell, type OutletMerge } from "./merge";
import { LENGTHS, MEANINGS, nameOf } from "./meanings";
import { inWords, type Survey } from "./survey";

export interface Preview {
  /** Head and first rows, as texts. */
  readonly table: readonly (readonly string[])[];
  /** Said below the table where it does not show all rows. */
  readonly more: string;
  /** What becomes of each outlet that Rooms has already. */
  readonly changed: readonly string[];
  readonly gone: readonly string[];
  readonly notes: readonly string[];
  readonly troubles: readonly string[];
}

const ROWS_SHOWN = 10;
const TROUBLES_SHOWN = 50;
const CHANGES_SHOWN = 30;

/**
 * @param unit of the workbook's lengths
 * @param decimal the sign in which figures are shown
 */
export function previewOf(
  survey: Survey,
  unit: "m" | "ft",
  { added, changed, gone }: OutletMerge,
  decimal = ".",
): Preview {
  const { troubles } = survey;
  const filled = new Set(added.flatMap((row) => Object.keys(row)));
  const used = MEANINGS.map(({ key }) => key).filter((key) => filled.has(key));
  return {
    table:
      added.length === 0
        ? []
        : [
            used.map((key) => `${nameOf(key)}${LENGTHS.has(key) ? ` (${unit})` : ""}`),
            ...added.slice(0, ROWS_SHOWN).map((row) => used.map((key) => shownCell(row[key], decimal) ?? "")),
          ],
    more: added.length > ROWS_SHOWN ? `and ${inWords(added.length - ROWS_SHOWN, "outlet")} more` : "",
    changed: shortened(
      changed.map(
        ({ outlet, cells }) => `${outlet}: ${cells.map((cell) => changeInWords(cell, decimal)).join("; ")}`,
      ),
      CHANGES_SHOWN,
    ),
    gone: gone.map(({ outlet }) => outlet),
    notes: survey.notes,
    troubles: shortened(
      troubles.map(({ line, who, reason }) => `line ${line}${who ? ` (${who})` : ""}: ${reason}`),
      TROUBLES_SHOWN,
    ),
  };
}

const shortened = (lines: readonly string[], most: number): string[] => [
  ...lines.slice(0, most),
  ...(lines.length > most ? [`and ${lines.length - most} more`] : []),
];

/** "run, in ft, converted to m". */
export function takenFor({ key, unit: own }: MappedColumn, unit: "m" | "ft"): string {
  if (key === undefined) return "not used";
  const name = nameOf(key).toLowerCase();
  return own === undefined ? name : `${name}, in ${own}${own === unit ? "" : `, converted to ${unit}`}`;
}

/** The preview as the command prints it. */
export function previewText(survey: Survey, unit: "m" | "ft", merge: OutletMerge): string {
  const { table, more, changed, gone, notes, troubles } = previewOf(survey, unit, merge);
  const section = (head: string, lines: readonly string[]): string[] =>
    lines.length > 0 ? ["", head, ...lines.map((line) => `  ${line}`)] : [];
  return [
    `Read as ${survey.source}.`,
    ...section("Columns:", aligned(survey.columns.map((one) => [one.head, takenFor(one, unit)]))),
    ...section(
      `${inWords(merge.added.length, "outlet")}${merge.same + changed.length + gone.length > 0 ? " to add" : ""}:`,
      [...aligned(table), ...(more ? [more] : [])],
    ),
    ...section(
      `${inWords(merge.changed.length, "outlet")} that ${merge.changed.length === 1 ? "changes" : "change"}:`,
      changed,
    ),
    ...section("On Rooms, and not in the survey:", gone.length > 0 ? [gone.join(", ")] : []),
    ...section("Notes:", notes),
    ...section("Bad lines:", troubles),
    "",
    "This is a preview; nothing was written.",
  ].join("\n");
}

const WIDEST = 24;

function aligned(table: readonly (readonly string[])[]): string[] {
  const cut = (text: string): string => (text.length > WIDEST ? `${text.slice(0, WIDEST - 1)}…` : text);
  const widths = (table[0] ?? []).map((_, column) =>
    Math.max(...table.map((line) => cut(line[column] ?? "").length)),
  );
  return table.map((line) =>
    line
      .map((text, column) => (column === line.length - 1 ? text : cut(text).padEnd(widths[column]!)))
      .join("  ")
      .trimEnd(),
  );
}
