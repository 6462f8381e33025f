/** What was understood of a survey, shown before anything is written. */
import { addWords, surveyPreview } from "../../../pane/surveyPreview";
import type { Survey } from "../../../workbooks/survey/readSurvey";
import { ask } from "./dialogs";

/** @returns whether the outlets are to be added */
export async function askForSurvey(survey: Survey, unit: "m" | "ft", file: string): Promise<boolean> {
  const add = addWords(survey);
  const answer = await ask(
    "Import survey",
    surveyPreview(survey, unit, file, "h3"),
    [
      ...(add === undefined ? [] : [{ label: add, value: "add" }]),
      { label: add === undefined ? "Close" : "Cancel", value: "" },
    ],
    "desk-wide",
  );
  return answer === "add";
}
