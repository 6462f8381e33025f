/** The outsider's surveys: every outlet with its own run, or its line named; nothing lost without a word. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readSurveyFile } from "../../../src/hosts/file/readSurveyFile";
import type { Survey, SurveyRow } from "../../../src/workbooks/survey/survey";
import { TYPED_FIXTURES } from "./outsiders";

interface Answer {
  readonly outlets: readonly {
    readonly line: number;
    readonly name: string | null;
    readonly room?: string;
    readonly floor?: string;
    readonly fedFrom?: string;
    readonly run_m: number | null;
    readonly range_m?: readonly [number, number];
  }[];
  readonly questioned: readonly {
    readonly line: number;
    readonly why: string;
    readonly optional?: boolean;
  }[];
}

const FOLDER = path.join(TYPED_FIXTURES, "surveys");
const answers = JSON.parse(readFileSync(path.join(FOLDER, "answers.json"), "utf8")) as Record<string, Answer>;

/** No heads: a person has to say what the columns are, and the file is asked about as a whole. */
const UNSURE: Readonly<Record<string, RegExp>> = {
  "14-no-heads.txt": /^The head row lacks "outlet"\. It has "EG"/,
};
/** Lines of outlets that are refused with a reason where the maker would take the outlet and ask. */
const ASKED: Readonly<Record<string, readonly number[]>> = {
  // Bounds, and a range the wrong way round.
  "07-ranges-and-ca.csv": [9, 10, 12],
  // The mark that is never closed is asked about, on its own line.
  "10-unclosed-quote.csv": [4],
  // A name that stands twice is given to neither the second nor the third.
  "09-duplicates.csv": [4, 5, 8],
  "13-workbook-feet.xlsx": [8],
  // A run of 0 m is asked for again, as the maker would: an outlet's run is 0.1 m or more.
  "20-wrong-units-and-junk.csv": [15],
};
/** Read without a question where the maker would read or ask. */
const READ: Readonly<Record<string, readonly number[]>> = {
  "19-odd-spaces.csv": [4],
  "26-w1252-smart-quotes.txt": [4],
};

const surveyOf = (file: string): Promise<Survey> =>
  readSurveyFile(readFileSync(path.join(FOLDER, file)), { unit: "m" });

const isRight = (
  row: SurveyRow,
  { name, room, floor, fedFrom, run_m: run, range_m: range }: Answer["outlets"][number],
): boolean =>
  row.outlet === name &&
  (room === undefined || row.room === room) &&
  (floor === undefined || row.floor === floor) &&
  (fedFrom === undefined || row.from === fedFrom) &&
  (run !== null
    ? Math.abs(Number(row.run) - run) < 1e-6
    : range !== undefined &&
      row.shortest === range[0] &&
      row.longest === range[1] &&
      row.run === (range[0] + range[1]) / 2);

const files = Object.keys(answers).filter((file) => file !== "_about");

test("there are 26 surveys with 249 outlets", () => {
  expect([files.length, files.flatMap((file) => answers[file]!.outlets).length]).toEqual([26, 249]);
});

test.each(files.filter((file) => !(file in UNSURE)))("%s", async (file) => {
  const { outlets, questioned } = answers[file]!;
  const survey = await surveyOf(file);
  const troubled = new Set(survey.troubles.map(({ line }) => line));
  const asked = outlets.filter(({ line }) => !survey.lines.includes(line));
  // What the maker would not fill without asking is refused, and a few more; each with its line.
  expect(asked.map(({ line }) => line)).toEqual(
    outlets
      .filter(
        ({ name, run_m: run, range_m: range, line }) =>
          name === null || (run === null && range === undefined) || ASKED[file]?.includes(line),
      )
      .map(({ line }) => line),
  );
  expect(asked.filter(({ line }) => !troubled.has(line))).toEqual([]);
  const read = outlets.filter(({ line }) => survey.lines.includes(line));
  expect(read.filter((one) => !isRight(survey.rows[survey.lines.indexOf(one.line)]!, one))).toEqual([]);
  // No heading, sum or foot has become an outlet.
  expect(survey.lines).toEqual(read.map(({ line }) => line));

  const said = survey.notes.join(" ");
  const silent = questioned.filter(
    ({ line, optional }) =>
      !optional &&
      !troubled.has(line) &&
      !READ[file]?.includes(line) &&
      !new RegExp(`lines? (?:\\d+, )*${line}\\b`, "i").test(said) &&
      !(line === 1 && /names no unit/.test(said)),
  );
  expect(silent).toEqual([]);
});

test.each(Object.entries(UNSURE))("%s is asked about as a whole", async (file, sentence) => {
  const { rows, unsure } = await surveyOf(file);
  expect([rows.length, unsure]).toEqual([0, expect.stringMatching(sentence)]);
});
