/** A survey into a job that is there: new outlets added, those that it has brought up to date. */
import type { Book } from "../workbooks/book";
import { registerRowsPlugin } from "../hosts/desk/page/rowsPlugin";
import { outletsToAdd } from "../hosts/desk/page/outletsToAdd";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { fromModel } from "../hosts/grid/fromModel";
import { loadLibrary, quietly } from "../hosts/headless/loadLibrary";
import { openModel } from "../hosts/headless/recalculate";
import { doneInWords, mergeOutlets, type RowChanges } from "../workbooks/survey/merge";
import { previewText } from "../workbooks/survey/preview";
import { roomsIn } from "../workbooks/survey/roomsBlock";
import { inWords, type SurveyRow } from "../workbooks/survey/survey";
import { templateOf } from "../workbooks/templates";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { outFile } from "./copyJob";
import { readSurveyAs, SURVEY_OPTIONS, SURVEY_WORDS } from "./surveyWords";

const SURVEY_HELP = `rigsheet survey JOB.xlsx SURVEY [options]

Brings a site survey into the Rooms sheet of a job: text (.csv, .txt) or a
workbook (.xlsx). Outlets are told by their names: new ones go below the last
filled row, those that Rooms has are brought up to date, and the others stay.
Without --out it shows what was understood and what would change.

${SURVEY_WORDS}
  --take-out           take out the outlets of Rooms that the survey does not have
  --keep-going         write the good lines although some are bad
  -o, --out NEW.xlsx   where to write
  --force              replace NEW.xlsx if it exists

Lengths may have units in their cells; "18 - 22" fills the shortest and the
longest run; "ca. 12" is taken and told. Names of cables, plates and receivers
are those of the job's lists; one that is not there is a bad line, with the
nearest name. Each bad line is told with its number and what to do: put it right
in the file, or say what its column is. JOB.xlsx is read, never written.

Exit: 0 written, or all understood; 1 bad lines, or something to say first;
2 the files could not be used.`;

export async function surveyJob(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      ...SURVEY_OPTIONS,
      "take-out": { type: "boolean", default: false },
      "keep-going": { type: "boolean", default: false },
      force: { type: "boolean", default: false },
      out: { type: "string", short: "o" },
      help: { type: "boolean", default: false },
    },
    "survey",
  );
  if (values.help) {
    console.out(SURVEY_HELP);
    return EXIT.ok;
  }
  const [job, file, more] = positionals;
  if (job === undefined || file === undefined || more !== undefined)
    throw new UsageTrouble(
      "Name a workbook and a survey: rigsheet survey job.xlsx rooms.csv --out new.xlsx. See: rigsheet survey --help",
    );
  const out = values.out === undefined ? undefined : outFile(values.out, job, "xlsx", values.force);
  const book = await readXlsx(await fileBytes(job));
  const rooms = roomsIn(book);
  if (!rooms) throw new FileTrouble(`${job} has no Rooms sheet of ours, so it takes no survey.`);
  const survey = await readSurveyAs(await fileBytes(file), rooms, values);
  const merge = mergeOutlets(survey.rows, rooms.rows);
  const bad = survey.troubles.length;
  if (out === undefined) {
    console.out(previewText(survey, rooms.unit, merge));
    return bad > 0 ? EXIT.look : EXIT.ok;
  }
  for (const { line, who, reason } of survey.troubles)
    console.err(`${file}, line ${line}${who ? ` (${who})` : ""}: ${reason}`);
  if (survey.unsure !== undefined) {
    console.err("Nothing was written: say what the columns are with --map, or take them with --as-guessed.");
    return EXIT.look;
  }
  if (bad > 0 && (!values["keep-going"] || survey.rows.length === 0)) {
    console.err(
      `Nothing was written: ${bad} ${bad === 1 ? "line is" : "lines are"} bad.${survey.rows.length > 0 ? " Put them right, or add --keep-going to leave them out." : ""}`,
    );
    return EXIT.look;
  }
  const changes: RowChanges = { changed: merge.changed, cleared: values["take-out"] ? merge.gone : [] };
  const done = doneInWords(merge.added.length, changes);
  if (done === "") {
    console.out(`${job} is as the survey has it already. Nothing was written.`);
    return bad > 0 ? EXIT.look : EXIT.ok;
  }
  await saveAtomically(out, await writeJob(withOutlets(book, merge.added, changes)));
  const kept =
    merge.gone.length > changes.cleared.length
      ? `; ${inWords(merge.gone.length, "outlet")} of Rooms not in the survey stay`
      : "";
  console.out(`${out}: ${done}${kept}${bad > 0 ? `; ${inWords(bad, "bad line")} left out` : ""}.`);
  return bad > 0 ? EXIT.look : EXIT.ok;
}

/** As the desk does it, so that all else of the workbook stays as it is. */
function withOutlets(book: Book, rows: readonly SurveyRow[], changes: RowChanges): Book {
  const library = loadLibrary();
  if (!library.registries.featurePluginRegistry.contains("rigsheet_rows"))
    registerRowsPlugin(library, { refused: () => undefined });
  const model = openModel(book);
  const plan = outletsToAdd(model, templateOf(book.template)?.definition, rows, changes);
  if (typeof plan === "string") throw new FileTrouble(plan);
  const { additions, quantity, cells: contents } = plan;
  quietly(() => model.dispatch("RIGSHEET_ENTER_ROWS" as never, { additions, quantity, contents } as never));
  return quietly(() => fromModel(library, model));
}
