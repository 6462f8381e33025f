/** The marks of a group as a workbook. */
import type { Book } from "../workbooks/book";
import type { SheetDefinition, Table } from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";
import { MARKS_TEMPLATE } from "./answerName";
import { TRAINING_VERSION } from "./drawNumbers";
import { toleranceOf } from "./exercise";
import type { MarkedAnswer } from "./markAnswers";
import { POINTS } from "./markAnswers";
import type { GroupMarks } from "./markGroup";

const sheet = (name: string, intro: string, table: Omit<Table, "kind">): SheetDefinition => ({
  name,
  kind: "print",
  intro,
  print: { orientation: "landscape" },
  parts: [{ kind: "table", ...table }],
});

export function marksBook(marks: GroupMarks): Book {
  return layOut({
    id: MARKS_TEMPLATE,
    title: `Marks: ${marks.exercises.set.title}`,
    version: TRAINING_VERSION,
    sheets: [
      marksSheet(marks),
      answersSheet(marks),
      questionsSheet(marks),
      sharedSheet(marks),
      notMarkedSheet(marks),
    ],
  });
}

/** The outcomes that have a column of their own on both sheets. */
const OUTCOMES = [
  { outcome: "right", column: { head: "Right", width: 8, format: "integer" } },
  { outcome: "carried over", column: { head: "Carried over", width: 9, format: "integer" } },
  { outcome: "slip", column: { head: "Known mistakes", width: 10, format: "integer" } },
] as const;

const count = (answers: readonly MarkedAnswer[], outcome: MarkedAnswer["outcome"]): number =>
  answers.filter((one) => one.outcome === outcome).length;

/** Numbers on the sheet carry at most so many digits. */
const plain = (value: number | string): number | string =>
  typeof value === "number" ? Number(value.toPrecision(10)) : value;

function marksSheet({ exercises, marked, shared }: GroupMarks): SheetDefinition {
  const flagged = new Set(shared.flatMap(({ one, other }) => [one, other]));
  return sheet(
    "Marks",
    `${exercises.set.title}. ${POINTS.right} marks a right answer, ${POINTS.half} for the right way from a wrong earlier answer or for rounding too coarsely.`,
    {
      heading: "Marks",
      columns: [
        { head: "No.", width: 6, format: "integer" },
        { head: "Trainee", width: 30 },
        { head: "Marks", width: 8, format: "integer" },
        { head: "Out of", width: 8, format: "integer" },
        { head: "Share", width: 9, format: "percent" },
        ...OUTCOMES.map(({ column }) => column),
        { head: "Other wrong", width: 9, format: "integer" },
        { head: "Blank or unclear", width: 9, format: "integer" },
        { head: "To look at", width: 44, wrap: true },
        { head: "File", width: 36, wrap: true },
      ],
      rows: marked.map(({ number, trainee, points, outOf, answers, notes, label, file }) => [
        number,
        trainee.name,
        points,
        outOf,
        points / outOf,
        ...OUTCOMES.map(({ outcome }) => count(answers, outcome)),
        count(answers, "wrong"),
        count(answers, "blank") + count(answers, "unclear"),
        [...notes, ...(flagged.has(label) ? ["shares answers: see Shared"] : [])].join("; "),
        file,
      ]),
    },
  );
}

function answersSheet({ exercises, marked }: GroupMarks): SheetDefinition {
  return sheet(
    "Answers",
    'Every answer beside its key. Numbers count as right within the tolerance. A mistake is known by the answer that it leads to; before those met only now and then stands "perhaps".',
    {
      heading: "Answers",
      columns: [
        { head: "No.", width: 6, format: "integer" },
        { head: "Trainee", width: 26 },
        { head: "Question", width: 9, format: "integer" },
        { head: "What", width: 30 },
        { head: "Given", width: 18, format: "general" },
        { head: "Key", width: 18, format: "general" },
        { head: "Tolerance", width: 10, format: "general" },
        { head: "Unit", width: 11 },
        { head: "Marks", width: 7, format: "integer" },
        { head: "Outcome", width: 13 },
        { head: "Mistake", width: 52, wrap: true },
        { head: "Carried from", width: 10 },
      ],
      rows: marked.flatMap(({ number, trainee, answers }) =>
        answers.map((one) => {
          const question = exercises.set.questions[one.number - 1]!;
          return [
            number,
            trainee.name,
            one.number,
            question.heading,
            plain(one.given),
            plain(one.right),
            question.answer.kind === "number" ? toleranceOf(question.answer) : "",
            question.answer.kind === "number" ? question.answer.unit : "",
            one.points,
            one.outcome,
            namedIn(one),
            one.carriedFrom.join(", "),
          ];
        }),
      ),
    },
  );
}

/** How the group did on each question, with the mistake that was made most. */
function questionsSheet({ exercises, marked }: GroupMarks): SheetDefinition {
  return sheet("Questions", "What to go through again: how the group did on each question.", {
    heading: "Questions",
    columns: [
      { head: "No.", width: 6, format: "integer" },
      { head: "Question", width: 34 },
      { head: "Share of the marks", width: 10, format: "percent" },
      ...OUTCOMES.map(({ column }) => column),
      { head: "Blank", width: 8, format: "integer" },
      { head: "Mistakes, the commonest first", width: 80, wrap: true },
    ],
    rows: exercises.set.questions.map(({ heading }, index) => {
      const answers = marked.map((one) => one.answers[index]!);
      const points = answers.reduce((sum, one) => sum + one.points, 0);
      return [
        index + 1,
        heading,
        answers.length === 0 ? "" : points / (answers.length * POINTS.right),
        ...OUTCOMES.map(({ outcome }) => count(answers, outcome)),
        count(answers, "blank"),
        commonest(answers),
      ];
    }),
  });
}

/** The mistake; with a doubt where something else may have led to the same answer. */
const namedIn = ({ named = "", perhaps }: MarkedAnswer): string => (perhaps ? `perhaps ${named}` : named);

function commonest(answers: readonly MarkedAnswer[]): string {
  const times = new Map<string, number>();
  for (const answer of answers) {
    const named = namedIn(answer);
    if (named !== "") times.set(named, (times.get(named) ?? 0) + 1);
  }
  return [...times]
    .sort((a, b) => b[1] - a[1])
    .map(([name, number]) => `${name}: ${number}`)
    .join("; ");
}

function sharedSheet({ shared }: GroupMarks): SheetDefinition {
  return sheet(
    "Shared",
    shared.length === 0
      ? "No sheets were found that share wrong answers although their numbers differ."
      : "Sheets that share wrong answers although their numbers differ. A reason to ask, not a proof.",
    {
      heading: "Shared answers",
      columns: [
        { head: "Sheet", width: 30 },
        { head: "Shares with", width: 30 },
        { head: "Questions", width: 18 },
        { head: "Values", width: 44, wrap: true },
        { head: "Right with the other's numbers", width: 14, format: "integer" },
        { head: "So often by chance in this group", width: 14 },
      ],
      rows: shared.map(({ one, other, questions, values, rightThere, byChance }) => [
        one,
        other,
        questions.join(", "),
        values.map((value) => String(plain(value))).join("; "),
        rightThere,
        byChance < 1e-6 ? "under 1 in a million" : `1 in ${Math.round(1 / byChance)}`,
      ]),
    },
  );
}

function notMarkedSheet({ notMarked }: GroupMarks): SheetDefinition {
  const intro =
    notMarked.length === 0
      ? "Every file was marked, and every trainee has a sheet."
      : "Files that could not be marked, and trainees without a sheet.";
  return sheet("Not marked", intro, {
    heading: "Not marked",
    columns: [
      { head: "File or trainee", width: 60, wrap: true },
      { head: "Why", width: 100, wrap: true },
    ],
    rows: notMarked.map(({ file, reason }) => [file, reason]),
  });
}
