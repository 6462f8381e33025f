/** What was understood of a survey, shown before anything is written. */
import { previewOf } from "../../../workbooks/survey/preview";
import { inWords, type Survey } from "../../../workbooks/survey/readSurvey";
import { ask } from "./dialogs";
import { make } from "./dom";

/** @returns whether the outlets are to be added */
export async function askForSurvey(survey: Survey, unit: "m" | "ft", file: string): Promise<boolean> {
  const { columns, table, more, notes, troubles } = previewOf(survey, unit);
  const [head = [], ...rows] = table;
  const { length } = survey.rows;
  const good = survey.troubles.length > 0 ? "good " : "";
  const answer = await ask(
    "Import survey",
    [
      make("p", {}, `${file}, read as ${survey.source}. Nothing is written yet.`),
      ...(columns.length > 0
        ? [make("h3", {}, "Columns"), scrolled("Columns", tableOf(["In the file", "Taken for"], columns))]
        : []),
      ...section("Notes", notes),
      ...section(`${inWords(survey.troubles.length, "bad line")}, left out`, troubles),
      make("h3", {}, length > 0 ? inWords(length, "outlet") : "No outlets that can be added"),
      ...(length > 0 ? [scrolled("Outlets", tableOf(head, rows))] : []),
      ...(more ? [make("p", {}, more)] : []),
    ],
    [
      ...(length > 0
        ? [{ label: `Add ${length} ${good}${length === 1 ? "outlet" : "outlets"} to Rooms`, value: "add" }]
        : []),
      { label: length > 0 ? "Cancel" : "Close", value: "" },
    ],
    "desk-wide",
  );
  return answer === "add";
}

const section = (title: string, lines: readonly string[]): Node[] =>
  lines.length === 0
    ? []
    : [
        make("h3", {}, title),
        make("ul", { className: "desk-list" }, ...lines.map((text) => make("li", {}, text))),
      ];

/** A wide table scrolls by itself, and by the keyboard too. */
const scrolled = (label: string, content: Node): HTMLElement =>
  make("div", { className: "desk-scrolled", tabIndex: 0, role: "region", ariaLabel: label }, content);

const tableOf = (heads: readonly string[], rows: readonly (readonly string[])[]): HTMLTableElement =>
  make(
    "table",
    { className: "desk-table" },
    make("thead", {}, make("tr", {}, ...heads.map((text) => make("th", { scope: "col" }, text)))),
    make("tbody", {}, ...rows.map((cells) => make("tr", {}, ...cells.map((text) => make("td", {}, text))))),
  );
