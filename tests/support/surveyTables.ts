/** Surveys as tables, without a file around them. */
import type { ImportedCell, ImportedLine, ImportedTable } from "../../src/workbooks/imported/table";
import { readSurvey } from "../../src/workbooks/survey/readSurvey";
import type { Survey, SurveyChoices, SurveySetting } from "../../src/workbooks/survey/survey";

/** A line of text with its cells between semicolons, or its cells. */
export type GivenLine = string | readonly ImportedCell[];

export const linesOf = (lines: readonly GivenLine[]): ImportedLine[] =>
  lines.map((cells, index) => ({
    line: index + 1,
    cells: typeof cells === "string" ? cells.split(";") : cells,
  }));

export const tableOf = (lines: readonly GivenLine[], more: Partial<ImportedTable> = {}): ImportedTable => ({
  source: "text, semicolons, UTF-8",
  lines: linesOf(lines),
  ...more,
});

export const surveyOf = (
  lines: readonly GivenLine[],
  choices?: SurveyChoices,
  setting: Partial<SurveySetting> = {},
): Survey => readSurvey([tableOf(lines)], { unit: "m", ...setting }, choices);

/** Line and reason of each. */
export const troublesOf = ({ troubles }: Survey): [number, string][] =>
  troubles.map(({ line, reason }) => [line, reason]);

/** Outlet and run of each. */
export const runsOf = ({ rows }: Survey): unknown[] => rows.map(({ outlet, run }) => [outlet, run]);
