/** What a command's words say of how a survey is to be read. */
import { readSurveyFile } from "../hosts/file/readSurveyFile";
import { choiceFrom, type ColumnChoice } from "../workbooks/imported/columns";
import { MEANINGS } from "../workbooks/survey/meanings";
import { settingOf, type RoomsNow } from "../workbooks/survey/roomsBlock";
import type { Survey, SurveyChoices } from "../workbooks/survey/survey";
import { UsageTrouble } from "./console";

/** Options of every command that reads a survey. */
export const SURVEY_OPTIONS = {
  map: { type: "string", multiple: true },
  sheet: { type: "string" },
  head: { type: "string" },
  "as-guessed": { type: "boolean", default: false },
} as const;

export const SURVEY_WORDS = `  --map "HEAD=MEANING" what a column is, by its head or its letter; may be given
                       several times. Meanings: ${MEANINGS.map(({ name }) => name.toLowerCase())
                         .join(", ")
                         .replace(/(.{1,52})(?:, |$)/g, "$1,\n                       ")
                         .replace(/,\n\s*$/, "")},
                       not used; a length with its unit: "D=run (ft)"
  --sheet NAME         the sheet of a workbook
  --head LINE          the line of the heads, where it is not found
  --as-guessed         take the columns as the preview shows them, where it asks`;

export interface SurveyValues {
  readonly map?: readonly string[];
  readonly sheet?: string;
  readonly head?: string;
  readonly "as-guessed"?: boolean;
}

/** @param bytes of the survey's file @param rooms of the workbook that it goes into */
export async function readSurveyAs(
  bytes: Uint8Array,
  rooms: RoomsNow,
  values: SurveyValues,
): Promise<Survey> {
  const setting = settingOf(rooms);
  const { map = [], sheet } = values;
  const head = values.head === undefined ? undefined : Number(values.head);
  if (head !== undefined && !(Number.isInteger(head) && head > 0))
    throw new UsageTrouble(`--head is "${values.head}"; give the number of a line, such as --head 3.`);
  const base: SurveyChoices = {
    ...(sheet !== undefined && { sheet }),
    ...(head !== undefined && { head }),
    ...(values["as-guessed"] && { confirmed: true }),
  };
  const guessed = await readSurveyFile(bytes, setting, base);
  if (sheet !== undefined && guessed.sheet?.toLowerCase() !== sheet.toLowerCase())
    throw new UsageTrouble(
      `There is no sheet "${sheet}" in the file${guessed.sheets.length > 0 ? `; it has ${guessed.sheets.map((name) => `"${name}"`).join(", ")}` : ""}.`,
    );
  if (map.length === 0) return guessed;
  const columns: Record<number, ColumnChoice> = {};
  for (const text of map) {
    const found = choiceFrom(text, guessed.columns, MEANINGS);
    if (typeof found === "string") throw new UsageTrouble(found);
    columns[found.column] = found.choice;
  }
  return await readSurveyFile(bytes, setting, { ...base, columns });
}
