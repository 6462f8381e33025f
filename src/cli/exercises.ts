import { existsSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import path from "node:path";
import { decodedText } from "../hosts/file/decodedText";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readCsv } from "../hosts/file/readCsv";
import { saveAtomically, sentenceFor } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import type { AnySet } from "../training/exercise";
import { trainingSetOf, trainingSets } from "../training/sets/all";
import { KEY_FILE, sheetFileName, SHEETS_FOLDER } from "../training/sheetFileName";
import { traineeList, type TraineeList } from "../training/traineeList";
import { traineeSheet } from "../training/traineeSheet";
import { trainerKey } from "../training/trainerKey";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const EXERCISES_HELP = `rigsheet exercises --set NAME --trainees LIST.csv --seed N --out FOLDER [--force]

Makes exercises: for each trainee a workbook with the same questions and other
numbers, worked examples beside them; and the trainer's key.

  --set NAME           one of the sets below
  --trainees LIST.csv  a name on each line; or a head row with "name", or with
                       "first name" and "last name"
  --seed N             a whole number of 0 or more. The same set, seed and name
                       give the same sheet on every machine
  --out FOLDER         gets ${SHEETS_FOLDER}/ to hand out, and ${KEY_FILE} to keep
  --force              replace sheets and key that are there already

  rigsheet exercises --set cable --trainees templates/trainees-demonstration.csv --seed 2026 --out exercises

Sets:
${trainingSets.map(({ id, title }) => `  ${id.padEnd(14)}${title}`).join("\n")}

A sheet holds neither answers nor the seed. Keep the seed private: it recreates
the key. Adding a name to the list leaves the other sheets as they were. Then: rigsheet mark FOLDER --out marks.xlsx

Exit: 0 written; 1 written, with something odd in the list; 2 nothing was written.`;

export async function exercises(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      set: { type: "string" },
      trainees: { type: "string" },
      seed: { type: "string" },
      out: { type: "string" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "exercises",
  );
  if (values.help) {
    console.out(EXERCISES_HELP);
    return EXIT.ok;
  }
  if (positionals.length > 0)
    throw new UsageTrouble(`"${positionals[0]}" is one word too many. See: rigsheet exercises --help`);
  const set = setOf(values.set);
  const seed = seedOf(values.seed);
  if (!values.trainees)
    throw new UsageTrouble("There is no --trainees. Name a list of trainees: --trainees list.csv");
  if (!values.out) throw new UsageTrouble("There is no --out. Name the folder to write: --out exercises");
  const list = await listOf(values.trainees);
  const { trainees } = list;
  const files = trainees.map((trainee, index) =>
    path.join(values.out!, SHEETS_FOLDER, sheetFileName(trainee, index + 1, trainees.length)),
  );
  const keyFile = path.join(values.out, KEY_FILE);
  const there = [keyFile, ...files].find((file) => existsSync(file));
  if (there !== undefined && !values.force) {
    throw new UsageTrouble(
      `${there} exists, perhaps with answers in it; nothing was written. Choose another folder, or add --force to replace what is there.`,
    );
  }
  await makeFolder(path.join(values.out, SHEETS_FOLDER));
  for (const [index, trainee] of trainees.entries()) {
    await saveAtomically(files[index]!, await writeJob(traineeSheet(set, seed, trainee)));
    console.progress?.(`${index + 1} of ${files.length} written`);
  }
  console.progress?.("");
  await saveAtomically(keyFile, await writeJob(trainerKey({ set, seed, trainees })));
  for (const note of list.notes) console.err(note);
  console.out(
    `${path.join(values.out, SHEETS_FOLDER)}: ${trainees.length} ${trainees.length === 1 ? "sheet" : "sheets"} of "${set.title}"`,
  );
  console.out(`${keyFile}: the key; keep it from the trainees`);
  return list.notes.length > 0 ? EXIT.look : EXIT.ok;
}

function setOf(id: string | undefined): AnySet {
  const known = trainingSets.map((set) => set.id).join(", ");
  if (id === undefined) throw new UsageTrouble(`There is no --set. Sets: ${known}.`);
  return (
    trainingSetOf(id) ??
    (() => {
      throw new UsageTrouble(`There is no set "${id}". Sets: ${known}.`);
    })()
  );
}

function seedOf(text: string | undefined): number {
  if (text === undefined) throw new UsageTrouble("There is no --seed. Give a whole number: --seed 2026");
  const seed = Number(text);
  if (!/^\d+$/.test(text) || !Number.isSafeInteger(seed)) {
    throw new UsageTrouble(
      `--seed is "${text}"; give a whole number from 0 to ${Number.MAX_SAFE_INTEGER}, such as 2026`,
    );
  }
  return seed;
}

async function listOf(file: string): Promise<TraineeList> {
  const decoded = decodedText(await fileBytes(file));
  if (!decoded) throw new FileTrouble(`${file} is not text. Save the list as CSV.`);
  const list = traineeList(readCsv(decoded.text));
  if (typeof list === "string") throw new FileTrouble(`${file}: ${list}`);
  return list;
}

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new FileTrouble(sentenceFor(error, path.join(folder, "sheet.xlsx")), { cause: error });
  }
}
