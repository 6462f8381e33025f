import { LOCAL_ADDRESS } from "../hosts/excel/addIn/facts";
import { functionsJson } from "../hosts/excel/addIn/functionsJson";
import { jsonManifest } from "../hosts/excel/addIn/jsonManifest";
import { xmlManifest } from "../hosts/excel/addIn/xmlManifest";
import { writeCsv } from "../hosts/file/writeCsv";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { withPictures } from "../pictures/withPictures";
import { trainingSetOf } from "../training/sets/all";
import { traineeSheet } from "../training/traineeSheet";
import { trainerKey } from "../training/trainerKey";
import { guestHouse } from "../workbooks/multiRoom/guestHouse";
import { SURVEY_HEADS, SURVEY_KEYS } from "../workbooks/survey/exampleSurvey";
import { templates } from "../workbooks/templates";
import { formulaRecord } from "../workbooks/versionFormulas";
import { closedFormulas, FORMULA_RECORD } from "./closedFormulas";
import { closedInputs, INPUT_RECORD, type InputRecord } from "./closedInputs";
import { listingOf } from "./listing";
import { RELEASE_RECORD, releaseRecord, type ReleaseRecord } from "./releaseRecord";
import { VERSION_RECORD, versionRecord, type VersionRecord } from "./versionRecord";

/** What the repository keeps of the past, which can't be made from the sources. */
export interface Records {
  readonly versions: VersionRecord;
  readonly releases: ReleaseRecord;
  readonly inputs: InputRecord;
}

/**
 * Every generated file by its path in the project.
 *
 * @param kept the records as the repository has them
 * @param release closes today's versions, and notes what this release has
 */
export async function generatedFiles(
  kept: Records,
  release = false,
): Promise<Map<string, string | Uint8Array>> {
  const files = new Map<string, string | Uint8Array>();
  files.set(VERSION_RECORD, `${JSON.stringify(versionRecord(kept.versions, release), null, 2)}\n`);
  files.set(FORMULA_RECORD, `${JSON.stringify(closedFormulas(formulaRecord, release), null, 2)}\n`);
  files.set(INPUT_RECORD, `${JSON.stringify(closedInputs(kept.inputs, release), null, 2)}\n`);
  files.set(RELEASE_RECORD, `${JSON.stringify(releaseRecord(kept.releases, release), null, 2)}\n`);
  files.set("manifest/functions.json", functionsJson(LOCAL_ADDRESS));
  files.set("manifest/manifest.xml", xmlManifest(LOCAL_ADDRESS));
  files.set("manifest/manifest.json", jsonManifest(LOCAL_ADDRESS));
  files.set("templates/guest-house-survey.csv", guestHouseSurvey());
  for (const [name, content] of await trainingDemonstration()) files.set(name, content);
  for (const template of templates) {
    const books = [
      { name: template.id, book: template.empty },
      { name: `${template.id}-demonstration`, book: template.demonstration },
      ...template.more.map(({ id, book }) => ({ name: `${template.id}-${id}`, book })),
    ];
    for (const { name, book } of books) {
      const computed = recalculate(book());
      files.set(`templates/${name}.xlsx`, await writeJob(computed));
      files.set(`templates/${name}.txt`, listingOf(withPictures(computed)));
    }
  }
  return files;
}

/** Invented names, and the sheet and the key that the command makes of them. */
async function trainingDemonstration(): Promise<[string, string | Uint8Array][]> {
  const set = trainingSetOf("cable")!;
  const trainees = ["Ada Demonstration", "Ben Demonstration", "Cem Demonstration"].map((name) => ({
    name,
    occurrence: 1,
  }));
  const seed = 2026;
  return [
    ["templates/trainees-demonstration.csv", writeCsv([["name"], ...trainees.map(({ name }) => [name])])],
    ["templates/training-sheet-demonstration.xlsx", await writeJob(traineeSheet(set, seed, trainees[0]!))],
    ["templates/training-key-demonstration.xlsx", await writeJob(trainerKey({ set, seed, trainees }))],
  ];
}

const guestHouseSurvey = (): string =>
  writeCsv([
    SURVEY_HEADS,
    ...guestHouse.blocks!.rooms!.map((row) => SURVEY_KEYS.map((key) => row[key] ?? "")),
  ]);
