/** What is to be put right in a survey: names that no list has, and bad lines, whose cells can be typed anew or left out. */
import { nameOf } from "../workbooks/survey/meanings";
import type { SurveyLists } from "../workbooks/survey/partNames";
import type { RoomsNow } from "../workbooks/survey/roomsBlock";
import {
  cellId,
  inWords,
  linesInWords,
  nameId,
  type Survey,
  type SurveyChoices,
  type SurveyTrouble,
  type UnknownName,
} from "../workbooks/survey/survey";
import { button, make } from "./dom";

const SHOWN = 50;
const BUTTON = "pane-button desk-button";

type Choose = (choices: SurveyChoices) => void;

export function repairs(
  survey: Survey,
  choices: SurveyChoices,
  heading: "h2" | "h3",
  { lists }: RoomsNow,
  choose: Choose,
): HTMLElement[] {
  if (survey.unsure !== undefined && survey.rows.length === 0) return [];
  const troubles = survey.troubles.filter(({ reason }) => reason !== survey.unsure);
  return [
    ...(survey.unknown.length === 0
      ? []
      : [
          make(heading, {}, `${inWords(survey.unknown.length, "name")} that the workbook does not have`),
          make(
            "div",
            { className: "survey-names" },
            ...survey.unknown.map((one) => nameChoice(one, lists, choices, choose)),
          ),
        ]),
    ...(troubles.length === 0
      ? []
      : [
          make(heading, {}, `${inWords(troubles.length, "line")} to look at, left out until put right`),
          make(
            "div",
            { className: "survey-repairs" },
            ...troubles.slice(0, SHOWN).map((one) => repair(one, survey, choices, choose)),
            ...(troubles.length > SHOWN
              ? [make("p", {}, `and ${inWords(troubles.length - SHOWN, "line")} more`)]
              : []),
          ),
        ]),
    ...done(choices, choose),
  ];
}

const KEEP = "\u0000keep";

/** One choice for a name wherever it stands: the nearest first, then all others of its list, or as it is. */
function nameChoice(
  { key, text, lines, nearest }: UnknownName,
  lists: SurveyLists,
  choices: SurveyChoices,
  choose: Choose,
): HTMLElement {
  const id = `survey-name-${nameId(key, text)}`;
  const others = (lists[key as keyof SurveyLists] ?? []).filter((name) => !nearest.includes(name));
  const select = make(
    "select",
    { id, className: "mapping-choice" },
    make("option", { value: "" }, nearest.length > 0 ? `Choose: ${nearest[0]!}?` : "Choose…"),
    ...[...nearest, ...others].map((name) => make("option", { value: name }, name)),
    make("option", { value: KEEP }, `keep “${text}”`),
  );
  select.addEventListener("change", () => {
    if (select.value === "") return;
    const name = select.value === KEEP ? text : select.value;
    choose({ names: { ...choices.names, [nameId(key, text)]: name } });
  });
  const label = `${nameOf(key)} “${text}” (${linesInWords(lines).toLowerCase()})`;
  return make("div", { className: "survey-repair" }, make("label", { htmlFor: id }, label), select);
}

function repair(trouble: SurveyTrouble, survey: Survey, choices: SurveyChoices, choose: Choose): HTMLElement {
  const { line, id, who, reason, keys = [], isLeftOut, isTotal } = trouble;
  const row = make(
    "div",
    { className: "survey-repair" },
    make("p", {}, `Line ${line}${who ? ` (${who})` : ""}: ${reason}`),
  );
  if (id === undefined) return row;
  const texts = survey.texts[id] ?? {};
  for (const key of isLeftOut || isTotal ? [] : keys) {
    if (texts[key] === undefined) continue;
    const input = make("input", {
      id: `survey-cell-${cellId(id, key)}`,
      className: "survey-cell",
      type: "text",
      value: texts[key],
      ariaLabel: `${nameOf(key)} of line ${line}`,
      spellcheck: false,
      autocomplete: "off",
    });
    const apply = (): void => {
      if (input.value !== texts[key]) choose({ cells: { ...choices.cells, [cellId(id, key)]: input.value } });
    };
    input.addEventListener("change", apply);
    // In a dialog Enter would press its first button.
    input.addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      event.preventDefault();
      apply();
    });
    row.append(make("label", { htmlFor: input.id }, nameOf(key)), input);
  }
  if (isLeftOut)
    row.append(button("Take it in", () => choose({ takenIn: [...(choices.takenIn ?? []), id] }), BUTTON));
  row.append(
    button(
      isTotal || isLeftOut ? "Seen" : "Leave it out",
      () => choose({ leftOut: [...(choices.leftOut ?? []), id] }),
      BUTTON,
    ),
  );
  return row;
}

/** What was put right, to be taken back. */
function done(
  { cells = {}, leftOut = [], names = {}, takenIn = [] }: SurveyChoices,
  choose: Choose,
): HTMLElement[] {
  const count = Object.keys(cells).length + leftOut.length + Object.keys(names).length + takenIn.length;
  if (count === 0) return [];
  return [
    make(
      "p",
      { className: "survey-done" },
      `${inWords(count, "choice")} made on single lines and names. `,
      button("Take them all back", () => choose({ cells: {}, leftOut: [], names: {}, takenIn: [] }), BUTTON),
    ),
  ];
}
