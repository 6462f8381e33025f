/** The trainer's key as a workbook: whose sheet has which answers, and what each question asks. */
import type { Book } from "../workbooks/book";
import type { Format, SheetDefinition, Table, WorkbookDefinition } from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";
import { KEY_TEMPLATE } from "./answerName";
import { drawFor, exampleOf, TRAINING_VERSION, type Drawn, type Trainee } from "./drawNumbers";
import { toleranceOf, type AnswerKind, type AnySet } from "./exercise";
import { POINTS } from "./markAnswers";
import { asAsked, precisionInWords } from "./precision";
import { sheetCode } from "./sheetCode";
import { slipValues } from "./slips/slipValues";
import { numbersAmong } from "./solve";

export interface Exercises {
  readonly set: AnySet;
  readonly seed: number;
  readonly trainees: readonly Trainee[];
}

export const KEY_NAMES = {
  set: "key_set",
  seed: "key_seed",
  name: "key_trainee",
  occurrence: "key_occurrence",
  code: "key_code",
} as const;

const formatOf = (answer: AnswerKind): Format => {
  if (answer.kind === "choice") return "text";
  return (["integer", "one", "two"] as const)[answer.decimals] ?? "general";
};

export function trainerKey({ set, seed, trainees }: Exercises): Book {
  const drawn = trainees.map((trainee) => drawFor(set, seed, trainee));
  const definition: WorkbookDefinition = {
    id: KEY_TEMPLATE,
    title: `Trainer's key: ${set.title}`,
    version: TRAINING_VERSION,
    sheets: [
      answersSheet({ set, seed, trainees }, drawn),
      questionsSheet(set),
      numbersSheet({ set, seed, trainees }, drawn),
    ],
  };
  return layOut(definition);
}

function answersSheet({ set, seed, trainees }: Exercises, drawn: readonly Drawn[]): SheetDefinition {
  const table: Table = {
    kind: "table",
    heading: "Answers",
    columns: [
      // In the order of the widths that the fields above have.
      { head: "Trainee", width: 34, name: KEY_NAMES.name },
      { head: "Code of the sheet", width: 20, name: KEY_NAMES.code },
      { head: "Of that name", width: 10, format: "integer", name: KEY_NAMES.occurrence },
      ...set.questions.map(({ answer, heading }, index) => ({
        head: `${index + 1} ${heading}, ${answer.kind === "number" ? answer.unit : "word"}`,
        width: answer.kind === "number" ? 13 : 17,
        format: formatOf(answer),
        wrap: answer.kind === "choice",
      })),
    ],
    rows: trainees.map((trainee, index) => [
      trainee.name,
      sheetCode(set, seed, trainee),
      trainee.occurrence,
      ...set.questions.map(({ answer, key }) => asAsked(answer, drawn[index]!.key[key]!)),
    ]),
  };
  return {
    name: "Key",
    kind: "print",
    intro:
      "For the trainer alone. Marking draws the questions again from the set, the seed and the names below.",
    print: { orientation: "landscape" },
    parts: [
      {
        kind: "fields",
        heading: "Set",
        fields: [
          { name: "key_title", label: "Set", value: set.title },
          { name: KEY_NAMES.set, label: "Its name for the command", value: set.id },
          { name: KEY_NAMES.seed, label: "Seed", value: String(seed) },
          { name: "key_version", label: "Version of the exercises", value: TRAINING_VERSION },
          { name: "key_count", label: "Trainees", value: String(trainees.length) },
        ],
      },
      table,
    ],
  };
}

/** What each question asks, what counts as right, and the slips that marking names. */
function questionsSheet(set: AnySet): SheetDefinition {
  const tolerance = (answer: AnswerKind): string =>
    toleranceOf(answer) === 0
      ? "none"
      : `${toleranceOf(answer)} ${answer.kind === "number" ? answer.unit : ""}`;
  // Of the worked example: which can be made differs little from sheet to sheet.
  const { numbers, key: answers } = exampleOf(set);
  const namesOf = (question: AnySet["questions"][number]): string => {
    const slips = slipValues(set, question, numbers, numbersAmong(answers));
    const common = new Set(slips.flatMap(({ name, rank }) => (rank === "often" ? [name] : [])));
    const others = new Set(slips.map(({ name }) => name)).size - common.size;
    return [...common, ...(others > 0 ? [`and ${others} that are met now and then`] : [])].join("; ");
  };
  return {
    name: "Questions",
    kind: "print",
    intro: `Right: ${POINTS.right} marks. Right way from a wrong earlier answer, or rounded too coarsely: ${POINTS.half}.`,
    print: { orientation: "landscape" },
    parts: [
      {
        kind: "table",
        heading: "Questions",
        columns: [
          { head: "No.", width: 6, format: "integer" },
          { head: "Question", width: 46, wrap: true },
          { head: "Asked", width: 18, wrap: true },
          { head: "Tolerance", width: 12, wrap: true },
          { head: "Uses", width: 9 },
          { head: "Mistakes that marking names, the common ones first", width: 70, wrap: true },
        ],
        rows: set.questions.map((question, index) => [
          index + 1,
          question.task,
          precisionInWords(question.answer),
          tolerance(question.answer),
          question.needs.map((need) => set.questions.findIndex(({ key }) => key === need) + 1).join(", "),
          namesOf(question),
        ]),
      },
    ],
  };
}

/** Every figure of every sheet, with the key to full precision and where each mistake leads. */
function numbersSheet({ set, trainees }: Exercises, drawn: readonly Drawn[]): SheetDefinition {
  const round = (value: number): number => Number(value.toPrecision(8));
  return {
    name: "In full",
    kind: "print",
    intro:
      "The figures of each sheet, the key unrounded, and what each known mistake gives with these figures.",
    print: { orientation: "landscape" },
    parts: [
      {
        kind: "table",
        heading: "In full",
        columns: [
          { head: "No.", width: 6, format: "integer" },
          { head: "Trainee", width: 24 },
          { head: "Question", width: 9, format: "integer" },
          { head: "Key", width: 16, format: "general" },
          { head: "Unit", width: 11 },
          { head: "Figures", width: 60, wrap: true },
          { head: "What mistakes give", width: 70, wrap: true },
        ],
        rows: trainees.flatMap(({ name }, at) =>
          set.questions.map((question, index) => {
            const { numbers, key } = drawn[at]!;
            const value = key[question.key]!;
            const figures = question.given(numbers as never);
            const slips = slipValues(set, question, numbers, numbersAmong(key), "often");
            return [
              at + 1,
              name,
              index + 1,
              typeof value === "number" ? round(value) : value,
              question.answer.kind === "number" ? question.answer.unit : "",
              figures
                .map(({ label, value: of, unit }) => `${label} ${of}${unit ? ` ${unit}` : ""}`)
                .join("; "),
              slips
                .map(
                  (slip) =>
                    `${slip.name}: ${typeof slip.value === "number" ? round(slip.value) : slip.value}`,
                )
                .join("; "),
            ];
          }),
        ),
      },
    ],
  };
}
