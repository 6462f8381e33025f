import { stat } from "node:fs/promises";
import path from "node:path";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { MARKS_TEMPLATE } from "../training/answerName";
import { marksBook } from "../training/marksBook";
import { GroupMarking, type GroupMarks } from "../training/markGroup";
import { isKey, readKey } from "../training/readKey";
import { KEY_FILE } from "../training/sheetFileName";
import type { Exercises } from "../training/trainerKey";
import type { Book } from "../workbooks/book";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { filesIn } from "./filesIn";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { isLeftBehind, otherFiles } from "./otherFiles";

const MARK_HELP = `rigsheet mark FOLDER --out MARKS.xlsx [--key KEY.xlsx] [--force]

Marks the sheets of rigsheet exercises that came back: all .xlsx in FOLDER and below.

  --key KEY.xlsx   the trainer's key; without it, the one that lies in FOLDER
  --out MARKS.xlsx where to write
  --force          replace MARKS.xlsx if it exists

The questions are drawn again from the set, the seed and the names of the key,
so that a sheet's own cells are never trusted, the answers are the engine's of
today, and a missing sheet is noticed. Two marks a right answer; one for the
right way from a wrong earlier answer, and for rounding too coarsely. Known
mistakes are named; "perhaps" stands before those met only now and then. What
can't be read without guessing is not scored in silence but left to you, under
"To look at". Of a sheet that came back twice with different answers none is
marked. Files of another kind (.ods, .csv, a photo) are named. MARKS.xlsx has the
sheets Marks, Answers, Questions (how the group did), Shared (sheets with the
same unlikely answers) and Not marked.

Exit: 0 all marked; 1 marked, but a sheet is missing, can't be read, shares
answers or has one to look at; 2 nothing was written.`;

/** What is marked by, and the file that says so. */
interface Keyed {
  readonly file: string;
  readonly exercises: Exercises;
}

export async function mark(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      key: { type: "string" },
      out: { type: "string" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "mark",
  );
  if (values.help) {
    console.out(MARK_HELP);
    return EXIT.ok;
  }
  const [folder, more] = positionals;
  if (folder === undefined || more !== undefined)
    throw new UsageTrouble("Name one folder: rigsheet mark FOLDER --out marks.xlsx");
  const isFolder = await stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (!isFolder) throw new FileTrouble(`${folder} is no folder. Name the folder with the sheets.`);
  if (!values.out) throw new UsageTrouble("There is no --out. Name the file to write: --out marks.xlsx");
  const out = outFile(values.out, values.key ?? folder, "xlsx", values.force);
  const files = (await filesIn([folder])).filter((file) => !isLeftBehind(path.relative(folder, file)));
  const exercises = await exercisesOf(values.key, folder, files);

  const marking = new GroupMarking(exercises.exercises);
  const sheets: string[] = [];
  for (const [index, file] of files.entries()) {
    const read = await readSheet(file);
    const isMarks = typeof read !== "string" && read.template === MARKS_TEMPLATE;
    if (!isMarks && path.resolve(file) === path.resolve(out)) {
      throw new UsageTrouble(
        `--out is ${out}, which holds no marks and was left as it is. Choose another name.`,
      );
    }
    if (typeof read === "string" || !(isMarks || isKey(read))) {
      marking.add(path.relative(folder, file), read);
      sheets.push(file);
    }
    console.progress?.(`${index + 1} of ${files.length} marked`);
  }
  console.progress?.("");
  for (const { file, reason } of await otherFiles(folder)) marking.add(file, reason);
  const marks = marking.done();
  await saveAtomically(out, await writeJob(marksBook(marks)));
  for (const { file, reason } of marks.notMarked) console.err(`${file}: ${reason}`);
  for (const doubt of doubts(marks, folder, sheets, exercises.file)) console.err(doubt);
  const toLookAt = marks.marked.filter(({ answers }) => answers.some(({ look }) => look !== undefined));
  console.out(`${out}: ${inWords(marks, toLookAt.length)}`);
  const isClean = marks.notMarked.length === 0 && marks.shared.length === 0 && toLookAt.length === 0;
  return isClean ? EXIT.ok : EXIT.look;
}

/** What is odd about the folder as a whole. */
function doubts({ marked }: GroupMarks, folder: string, sheets: readonly string[], key: string): string[] {
  const blank = marked.every(({ answers }) => answers.every(({ outcome }) => outcome === "blank"));
  const beside = sheets.some((file) => path.dirname(file) === path.dirname(key));
  return [
    ...(sheets.length === 0
      ? [`There is no sheet in ${folder}. Name the folder with the sheets that came back.`]
      : []),
    ...(marked.length > 1 && blank
      ? [`None of the ${marked.length} sheets has an answer. Is ${folder} the folder that was handed out?`]
      : []),
    ...(beside ? [`${key} lies among the sheets: whoever can open that folder may have seen it.`] : []),
  ];
}

/** One broken file never stops the others, whatever is wrong with it. */
async function readSheet(file: string): Promise<Book | string> {
  try {
    return await readXlsx(await fileBytes(file));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return error instanceof FileTrouble ? why : `It could not be read (${why}).`;
  }
}

async function exercisesOf(
  named: string | undefined,
  folder: string,
  files: readonly string[],
): Promise<Keyed> {
  if (named !== undefined) return exercisesIn(named, await readXlsx(await fileBytes(named)));
  // The usual name first: reading the whole folder for its template takes as long as marking it.
  const likely = files.filter((file) => file.endsWith(KEY_FILE));
  for (const candidates of [likely, files]) {
    const keys: { file: string; book: Book }[] = [];
    for (const file of candidates) {
      const book = await readSheet(file);
      if (typeof book !== "string" && isKey(book)) keys.push({ file, book });
    }
    if (keys.length > 1) {
      throw new UsageTrouble(
        `${folder} holds ${keys.length} keys (${keys.map(({ file }) => file).join(", ")}). Name the one to mark by: --key`,
      );
    }
    if (keys.length === 1) return exercisesIn(keys[0]!.file, keys[0]!.book);
  }
  throw new UsageTrouble(`There is no trainer's key in ${folder}. Name it: --key ${KEY_FILE}`);
}

function exercisesIn(file: string, book: Book): Keyed {
  const exercises = readKey(book);
  if (typeof exercises === "string") throw new FileTrouble(`${file}: ${exercises}`);
  return { file, exercises };
}

function inWords({ marked, notMarked, shared, exercises }: GroupMarks, toLookAt: number): string {
  const share = marked.reduce((sum, { points, outOf }) => sum + points / outOf, 0) / marked.length;
  return [
    `${marked.length} of ${exercises.trainees.length} sheets marked${marked.length > 0 ? `, ${(100 * share).toFixed(0)} % on average` : ""}`,
    ...(notMarked.length > 0 ? [`${notMarked.length} not marked`] : []),
    ...(toLookAt > 0 ? [`${toLookAt} with answers to look at`] : []),
    ...(shared.length > 0
      ? [`${shared.length} ${shared.length === 1 ? "pair shares" : "pairs share"} answers`]
      : []),
  ].join("; ");
}
