/** What was understood of a survey, shown before anything is written: in the pane and in the desk's dialog. */
import { previewOf } from "../workbooks/survey/preview";
import { inWords, type Survey } from "../workbooks/survey/readSurvey";
import { make } from "./dom";

/**
 * @param file its name
 * @param heading the level of the headings
 */
export function surveyPreview(
  survey: Survey,
  unit: "m" | "ft",
  file: string,
  heading: "h2" | "h3",
): HTMLElement[] {
  const { columns, table, more, notes, troubles } = previewOf(survey, unit);
  const [head = [], ...rows] = table;
  const { length } = survey.rows;
  const list = (title: string, lines: readonly string[]): HTMLElement[] =>
    lines.length === 0
      ? []
      : [
          make(heading, {}, title),
          make("ul", { className: "survey-list" }, ...lines.map((text) => make("li", {}, text))),
        ];
  return [
    make("p", {}, `${file}, read as ${survey.source}. Nothing is written yet.`),
    ...(columns.length > 0
      ? [make(heading, {}, "Columns"), scrolled("Columns", tableOf(["In the file", "Taken for"], columns))]
      : []),
    ...list("Notes", notes),
    ...list(`${inWords(survey.troubles.length, "bad line")}, left out`, troubles),
    make(heading, {}, length > 0 ? inWords(length, "outlet") : "No outlets that can be added"),
    ...(length > 0 ? [scrolled("Outlets", tableOf(head, rows))] : []),
    ...(more ? [make("p", {}, more)] : []),
  ];
}

/** On the button that adds them; undefined where there is nothing to add. */
export function addWords({ rows: { length }, troubles }: Survey): string | undefined {
  if (length === 0) return undefined;
  const good = troubles.length > 0 ? "good " : "";
  return `Add ${length} ${good}${length === 1 ? "outlet" : "outlets"} to Rooms`;
}

/** A wide table scrolls by itself, and by the keyboard too. */
const scrolled = (label: string, content: Node): HTMLElement =>
  make("div", { className: "survey-scrolled", tabIndex: 0, role: "region", ariaLabel: label }, content);

const tableOf = (heads: readonly string[], rows: readonly (readonly string[])[]): HTMLTableElement =>
  make(
    "table",
    { className: "survey-table" },
    make("thead", {}, make("tr", {}, ...heads.map((text) => make("th", { scope: "col" }, text)))),
    make("tbody", {}, ...rows.map((cells) => make("tr", {}, ...cells.map((text) => make("td", {}, text))))),
  );
