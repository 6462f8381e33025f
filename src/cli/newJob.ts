import { existsSync } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { FileTrouble, stop, troubles } from "../hosts/file/fileTrouble";
import { MAX_FILE_BYTES } from "../hosts/file/limits";
import { readXlsx } from "../hosts/file/readXlsx";
import { drawOn } from "../standards/drawOn";
import { firmsStandards, type FirmsStandards } from "../standards/firmsStandards";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import type { JobInputs } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { layOut } from "../workbooks/layOut";
import { quoteReview } from "../workbooks/quoteReview/definition";
import { quoteInWords } from "../workbooks/quoteReview/typed/quoteInWords";
import type { Book } from "../workbooks/book";
import { firmSays } from "../review/ranges/firm";
import { startFromEstimate, startFromTyped } from "../review/ranges/quoteStart";
import { correctedInWords, slipsIn } from "../review/rules/quoteSlips";
import { readQuoteFile } from "../hosts/file/readQuoteFile";
import { startingPoint } from "../workbooks/multiRoom/startingPoint";
import { sheetDateOf } from "../workbooks/sheetDate";
import { previewText } from "../workbooks/survey/preview";
import { mergeOutlets } from "../workbooks/survey/merge";
import { roomsIn, type RoomsNow } from "../workbooks/survey/roomsBlock";
import type { Survey } from "../workbooks/survey/survey";
import { templates, type Template } from "../workbooks/templates";
import { EXIT, UsageTrouble, type Console } from "./console";
import { readOptions } from "./options";
import { readSurveyAs, SURVEY_OPTIONS, SURVEY_WORDS, type SurveyValues } from "./surveyWords";

const NEW_HELP = `rigsheet new TEMPLATE --out FILE.xlsx [options]

Makes a workbook. Templates: ${templates.map(({ id }) => id).join(", ")}.
Training sheets, different for each trainee, and their key: rigsheet exercises.

  --rooms SURVEY       fill the Rooms sheet from a site survey: text (.csv) or a
                       workbook (.xlsx)
  --preview            show what was understood of the survey, and write nothing
${SURVEY_WORDS}
  --base JOB.xlsx      take all else (Site, Parts, Dishes, Head units …) from
                       this workbook, for example your own price list
  --demonstration      take all else from the demonstration job
  --standards FIRM.xlsx
                       draw on the firm's standards: parts, prices, rates, limits
                       and terms; the quote is dated today
  --from QUOTE         of quote-review: fill it from an estimate of ours (.xlsx) or
                       from somebody else's quote as a list (.csv, .txt, .tsv or
                       any .xlsx): lines of part, quantity, price and sum in any
                       order, or “12 x splitter @ 3.50 = 42.00”, and its totals;
                       what cannot be read is told. With --standards FIRM.xlsx its
                       ranges are those of the firm's accepted quotes
  --keep-going         write the good lines although some are bad
  --force              replace FILE.xlsx if it exists
  --out FILE.xlsx      where to write

Without --base, --demonstration and --standards all else is empty but for the figures
of standards. The survey has a line for each outlet, and mostly a head row within its
first 20 lines, in any order and in the usual words of several languages; outlet
and run are needed. A survey for a job that is there: rigsheet survey.
A blank receiver is a spare outlet; a blank cable, wall plate or route is the
usual one of Site.
Text may be parted by commas, semicolons, tabs or aligned blanks. "run (ft)" is
converted to the workbook's unit. A decimal comma is understood where it can mean
nothing else; "18 - 22" fills the shortest and the longest run.
Every bad line is reported by its number and reason; nothing is written if any
line is bad.

Exit: 0 written, or all understood; 1 bad lines (with --keep-going, and with
--from: written without them);
2 the files could not be used.`;

export async function newJob(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      rooms: { type: "string" },
      preview: { type: "boolean", default: false },
      ...SURVEY_OPTIONS,
      base: { type: "string" },
      demonstration: { type: "boolean", default: false },
      standards: { type: "string" },
      from: { type: "string" },
      "keep-going": { type: "boolean", default: false },
      force: { type: "boolean", default: false },
      out: { type: "string" },
      help: { type: "boolean", default: false },
    },
    "new",
  );
  if (values.help) {
    console.out(NEW_HELP);
    return EXIT.ok;
  }
  const template = templateOf(positionals);
  if (values.base && values.demonstration)
    throw new UsageTrouble("Give --base or --demonstration, not both.");
  if (values.standards !== undefined && (values.base ?? values.demonstration))
    throw new UsageTrouble("Give --standards by itself: what --base and --demonstration fill, they would.");
  if (
    values.standards !== undefined &&
    template.id !== "multi-room" &&
    !(template.id === "quote-review" && values.from !== undefined)
  )
    throw new UsageTrouble(`Only the template multi-room draws on standards; ${template.id} does not.`);

  if (values.from !== undefined && template.id !== "quote-review")
    throw new UsageTrouble(`Only the template quote-review is filled from a quote; ${template.id} is not.`);
  if (values.from !== undefined && (values.base ?? values.demonstration))
    throw new UsageTrouble("Give --from by itself: what --base and --demonstration fill, it would.");

  if (values.rooms !== undefined && template.id !== "multi-room") {
    throw new UsageTrouble(`Only the template multi-room takes a survey; ${template.id} has no Rooms sheet.`);
  }
  if (values.preview)
    return preview(values.rooms, console, roomsOf(template, await baseFilling(template, values)), values);
  const out = fileToWrite(values.out, values.force);
  if (values.from !== undefined) return await reviewOfQuote(values.from, values.standards, out, console);

  const base = await baseFilling(template, values);
  const survey =
    values.rooms === undefined ? undefined : await surveyOf(values.rooms, roomsOf(template, base), values);
  for (const { line, who, reason } of survey?.troubles ?? [])
    console.err(`${values.rooms}, line ${line}${who ? ` (${who})` : ""}: ${reason}`);
  const bad = survey?.troubles.length ?? 0;
  if (survey?.unsure !== undefined) {
    console.err("Nothing was written: say what the columns are with --map, or take them with --as-guessed.");
    return EXIT.look;
  }
  if (bad > 0 && (!values["keep-going"] || survey!.rows.length === 0)) {
    const hint = survey!.rows.length > 0 ? " Put them right, or add --keep-going to leave them out." : "";
    console.err(`Nothing was written: ${bad} ${bad === 1 ? "line is" : "lines are"} bad.${hint}`);
    return EXIT.look;
  }
  const inputs: JobInputs = survey ? { ...base, blocks: { ...base.blocks, rooms: survey.rows } } : base;
  const book = recalculate(layOut(template.definition, inputs));
  await saveAtomically(out, await writeJob(book));
  const left = bad > 0 ? `, ${bad} bad ${bad === 1 ? "line" : "lines"} left out` : "";
  console.out(survey ? `${out}: ${survey.rows.length} outlets${left}` : `${out}: ${template.title}`);
  return bad > 0 ? EXIT.look : EXIT.ok;
}

function templateOf(positionals: readonly string[]): Template {
  const known = templates.map(({ id }) => id).join(", ");
  if (positionals.length === 0) throw new UsageTrouble(`Name a template: ${known}. See: rigsheet new --help`);
  if (positionals.length > 1)
    throw new UsageTrouble(`"${positionals[1]}" is one word too many. See: rigsheet new --help`);
  const found = templates.find(({ id }) => id === positionals[0]);
  if (!found)
    throw new UsageTrouble(
      `There is no template "${positionals[0]}". Templates: ${known}. Training sheets: rigsheet exercises.`,
    );
  return found;
}

async function baseFilling(
  template: Template,
  {
    base,
    demonstration,
    standards,
  }: {
    readonly base?: string;
    readonly demonstration: boolean;
    readonly standards?: string;
  },
): Promise<JobInputs> {
  if (standards !== undefined)
    return drawOn(await standardsIn(standards), startingPoint, sheetDateOf(new Date()));
  if (base !== undefined) {
    const book = await readXlsx(await fileBytes(base));
    if (book.template !== template.id) {
      throw new FileTrouble(
        `${base} was not made from the template ${template.id}. Give a workbook that was.`,
      );
    }
    return jobInputsOf(template.definition, book);
  }
  return jobInputsOf(template.definition, demonstration ? template.demonstration() : template.empty());
}

/** A list that cannot be read whole is written with what could be read of it, and what could not is told. */
async function reviewOfQuote(
  from: string,
  standards: string | undefined,
  out: string,
  console: Console,
): Promise<number> {
  const learned =
    standards === undefined ? [] : firmSays((await standardsIn(standards)).inputs, standards).learned;
  const bytes = await fileBytes(from);
  const ours = await estimateIn(bytes, from);
  const quote = ours === undefined ? await readQuoteFile(bytes) : undefined;
  if (typeof quote === "string") throw new FileTrouble(`${from}: ${quote}`);
  const inputs = quote ? startFromTyped(quote, learned) : startFromEstimate(recalculate(ours!), learned);
  const book = recalculate(layOut(quoteReview, inputs));
  await saveAtomically(out, await writeJob(book));
  const told = quote && quoteInWords(quote);
  for (const line of told?.look ?? []) console.err(`${from}, ${line}`);
  if (told && told.words.length > 0)
    console.out(`Words without a figure of the quote: ${told.words.join("; ")}`);
  console.out(`${out}: ${told ? `Quote review of ${told.read}` : "Quote review"}`);
  for (const { place, message } of slipsIn(book))
    console.out(`  ${place ? `${place.sheet} ${place.cell}: ` : ""}${message}`);
  console.out(correctedInWords(book));
  return told && told.look.length > 0 ? EXIT.look : EXIT.ok;
}

/** @returns undefined for a text, and for a workbook that is none of ours */
async function estimateIn(bytes: Uint8Array, path: string): Promise<Book | undefined> {
  if (bytes[0] !== ZIP[0] || bytes[1] !== ZIP[1]) return undefined;
  const book = await readXlsx(bytes);
  if (book.template === "multi-room") return book;
  if (book.template !== "")
    throw new FileTrouble(
      `${path} was made from the template ${book.template}, which is no quote. Give a multi-room estimate, or the quote as a list.`,
    );
  return undefined;
}

/** With which a workbook begins. */
const ZIP = [0x50, 0x4b] as const;

/** @throws FileTrouble where no job can draw on it */
export async function standardsIn(path: string): Promise<FirmsStandards> {
  const found = firmsStandards(await readXlsx(await fileBytes(path)), path);
  if (typeof found === "string") throw new FileTrouble(found);
  return found;
}

/** The survey takes the place of the outlets that the base has. */
const roomsOf = ({ definition }: Template, base: JobInputs): RoomsNow => ({
  ...roomsIn(layOut(definition, base))!,
  rows: [],
});

const surveyOf = async (path: string, rooms: RoomsNow, values: SurveyValues): Promise<Survey> =>
  readSurveyAs(await fileBytes(path), rooms, values);

async function preview(
  file: string | undefined,
  console: Console,
  rooms: RoomsNow,
  values: SurveyValues,
): Promise<number> {
  if (file === undefined) {
    throw new UsageTrouble("--preview shows a survey. Name it: --rooms survey.csv --preview");
  }
  const survey = await surveyOf(file, rooms, values);
  console.out(previewText(survey, rooms.unit, mergeOutlets(survey.rows, [])));
  return survey.troubles.length > 0 ? EXIT.look : EXIT.ok;
}

function fileToWrite(out: string | undefined, force: boolean): string {
  if (!out) throw new UsageTrouble("There is no --out. Name the file to write: --out job.xlsx");
  if (!/\.xlsx$/i.test(out)) throw new UsageTrouble(`--out is "${out}"; its name must end in .xlsx`);
  if (existsSync(out) && !force) {
    throw new UsageTrouble(
      `${out} exists and was left as it is. Choose another name, or add --force to replace it.`,
    );
  }
  return out;
}

/** Reads a file; a missing or unreadable one, or what is no file and may never end, becomes a sentence. */
export async function fileBytes(
  path: string,
  most = MAX_FILE_BYTES,
  tooLarge: (bytes: number, most: number) => string = troubles.tooLarge,
): Promise<Uint8Array> {
  let why: string;
  try {
    const found = await stat(path);
    if (found.isFile()) {
      if (found.size > most) stop(`${path}: ${tooLarge(found.size, most)}`);
      return await readFile(path);
    }
    why = found.isDirectory()
      ? "it is a folder"
      : found.isFIFO()
        ? "it is a pipe, not a file"
        : found.isSocket()
          ? "it is a socket, not a file"
          : "it is a device, not a file";
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    const { code } = error as NodeJS.ErrnoException;
    why =
      code === "ENOENT"
        ? "it does not exist"
        : code === "EACCES"
          ? "you may not read it"
          : code === "ELOOP"
            ? "its links lead round in a circle"
            : code === "ENOTDIR"
              ? "a part of its path is no folder"
              : String(code);
  }
  throw new FileTrouble(`${path} cannot be read: ${why}. Check the name.`);
}
