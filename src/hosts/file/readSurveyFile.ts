import { readSurvey } from "../../workbooks/survey/readSurvey";
import type { Survey, SurveyChoices, SurveySetting } from "../../workbooks/survey/survey";
import { readTables } from "./readTables";

/** A site survey out of a file; one that is no table at all rejects with a FileTrouble. */
export const readSurveyFile = async (
  bytes: Uint8Array,
  setting: SurveySetting,
  choices?: SurveyChoices,
): Promise<Survey> => readSurvey(await readTables(bytes), setting, choices);
