import { writeCsv } from "../hosts/file/writeCsv";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { guestHouseRooms } from "../workbooks/multiRoom/guestHouse";
import { SURVEY_HEADS, SURVEY_KEYS } from "../workbooks/survey/heads";
import { templates } from "../workbooks/templates";
import { functionsJson } from "./addin/addInFiles";
import { LOCAL_ADDRESS } from "./addin/facts";
import { jsonManifest } from "./addin/jsonManifest";
import { xmlManifest } from "./addin/xmlManifest";

/** Every generated file by its path in the project. */
export async function generatedFiles(): Promise<Map<string, string | Uint8Array>> {
  const files = new Map<string, string | Uint8Array>();
  files.set("manifest/functions.json", functionsJson(LOCAL_ADDRESS));
  files.set("manifest/manifest.xml", xmlManifest(LOCAL_ADDRESS));
  files.set("manifest/manifest.json", jsonManifest(LOCAL_ADDRESS));
  files.set("templates/guest-house-survey.csv", guestHouseSurvey());
  for (const template of templates) {
    files.set(`templates/${template.id}.xlsx`, await writeJob(recalculate(template.empty())));
    files.set(
      `templates/${template.id}-demonstration.xlsx`,
      await writeJob(recalculate(template.demonstration())),
    );
    for (const { id, book } of template.more) {
      files.set(`templates/${template.id}-${id}.xlsx`, await writeJob(recalculate(book())));
    }
  }
  return files;
}

const guestHouseSurvey = (): string =>
  writeCsv([SURVEY_HEADS, ...guestHouseRooms.map((row) => SURVEY_KEYS.map((key) => row[key] ?? ""))]);
