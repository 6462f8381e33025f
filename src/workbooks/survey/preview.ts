/** What was understood of a survey, in words, for a person to look at before anything is written. */
import { inWords, type Survey } from "./readSurvey";

export interface Preview {
  /** A line for each column: its head in the file, and what it is taken for. */
  readonly columns: readonly (readonly [string, string])[];
  /** Head and first rows, as texts. */
  readonly table: readonly (readonly string[])[];
  /** Said below the table where it does not show all rows. */
  readonly more: string;
  readonly notes: readonly string[];
  readonly troubles: readonly string[];
}

const ROWS_SHOWN = 10;
const TROUBLES_SHOWN = 50;

/** @param unit of the workbook's lengths */
export function previewOf(survey: Survey, unit: "m" | "ft"): Preview {
  const used = survey.columns.filter(({ key }) => key !== undefined);
  const { rows, troubles } = survey;
  return {
    columns: survey.columns.map(({ head, name, unit: own, converted }) => [
      head,
      name === undefined
        ? "not used"
        : own === undefined
          ? name
          : `${name}, in ${own}${converted ? `, converted to ${unit}` : ""}`,
    ]),
    table:
      rows.length === 0
        ? []
        : [
            used.map(({ name, unit: own }) => (own ? `${name} (${unit})` : name!)),
            ...rows.slice(0, ROWS_SHOWN).map((row) => used.map(({ key }) => String(row[key!] ?? ""))),
          ],
    more: rows.length > ROWS_SHOWN ? `and ${inWords(rows.length - ROWS_SHOWN, "outlet")} more` : "",
    notes: survey.notes,
    troubles: [
      ...troubles.slice(0, TROUBLES_SHOWN).map(({ line, reason }) => `line ${line}: ${reason}`),
      ...(troubles.length > TROUBLES_SHOWN
        ? [`and ${inWords(troubles.length - TROUBLES_SHOWN, "bad line")} more`]
        : []),
    ],
  };
}

/** The preview as the command prints it. */
export function previewText(survey: Survey, unit: "m" | "ft"): string {
  const { columns, table, more, notes, troubles } = previewOf(survey, unit);
  const section = (head: string, lines: readonly string[]): string[] =>
    lines.length > 0 ? ["", head, ...lines.map((line) => `  ${line}`)] : [];
  return [
    `Read as ${survey.source}.`,
    ...section("Columns:", aligned(columns)),
    ...section(`${inWords(survey.rows.length, "outlet")}:`, [...aligned(table), ...(more ? [more] : [])]),
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
