/** A trainee's sheet as a workbook: questions with answer cells, and the worked examples beside them. */
import type { Step } from "../engine/working/steps";
import { chain, f, text } from "../formula/build";
import type { Book } from "../workbooks/book";
import { checks } from "../workbooks/checkNames";
import type {
  Exercise,
  JobInputs,
  Format,
  InputRule,
  SheetDefinition,
  Table,
  WorkbookDefinition,
} from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";
import { wrapped } from "../workbooks/linesOf";
import { answerName, givenName, SHEET_CODE, SHEET_TEMPLATE, SHEET_TRAINEE } from "./answerName";
import { drawFor, exampleOf, TRAINING_VERSION, type Drawn, type Trainee } from "./drawNumbers";
import { toleranceOf, type AnswerKind, type AnySet, type Question } from "./exercise";
import { asAsked, precisionInWords } from "./precision";
import { sheetCode } from "./sheetCode";
import { numbersAmong } from "./solve";

/** Shown of a number in a worked example. */
const DIGITS = 7;
const TEXT_WIDTH = 150;
const ALL_GIVEN = "all answers given";
const STILL_OPEN = " still to answer";
const LEAST = -1e9;
const MOST = 1e9;

const formatOf = (answer: AnswerKind): Format => (answer.kind === "choice" ? "text" : "general");

function inputOf(answer: AnswerKind): InputRule {
  if (answer.kind === "choice") {
    return { what: "One of the list", rule: { kind: "choice", choices: answer.choices } };
  }
  const within = answer.exact
    ? "It must be exact"
    : `Within ${toleranceOf(answer)} of the key counts as right`;
  return {
    what: `Your answer, ${precisionInWords(answer)}. ${within}`,
    rule: { kind: "number", min: LEAST, max: MOST },
  };
}

const short = (value: number | string): number | string =>
  typeof value === "number" ? Number(value.toPrecision(DIGITS)) : value;

type ExampleRow = Exercise["example"]["rows"][number];

/** Words that are too long for the column of values stand behind what they mean. */
const LONGEST_WORD = 12;

const rowOf = ({ symbol, meaning, value, unit, line }: Omit<Step, "source">): ExampleRow =>
  typeof value === "string" && value.length > LONGEST_WORD
    ? [symbol, `${meaning}: ${value}`, "", unit, line]
    : [symbol, meaning, short(value), unit, line];

function exerciseOf(question: Question<never>, number: number, { numbers }: Drawn, example: Drawn): Exercise {
  const { key, heading, task, answer, hints } = question;
  const steps = question.example(example.numbers as never, numbersAmong(example.key));
  const shown = asAsked(answer, example.key[key]!);
  const unit = answer.kind === "number" ? answer.unit : "";
  return {
    kind: "exercise",
    heading: `${number}  ${heading}`,
    task,
    given: question.given(numbers as never).map((figure, index) => ({
      name: givenName(key, index),
      label: figure.label,
      value: figure.value,
      unit: figure.unit ?? "",
    })),
    answer: {
      name: answerName(key),
      label: `Answer ${number}, ${precisionInWords(answer)}`,
      unit,
      format: formatOf(answer),
      input: inputOf(answer),
    },
    hints,
    example: {
      heading: `Worked example to ${number}, other numbers`,
      rows: [
        ...steps.map(rowOf),
        rowOf({
          symbol: "",
          meaning: `answer, ${precisionInWords(answer)}`,
          value: answer.kind === "number" ? Number(shown).toFixed(answer.decimals) : shown,
          unit,
          line: "",
        }),
      ],
    },
  };
}

/** The table that all questions are about, drawn with these numbers. */
function paperOf(set: AnySet, { numbers }: Drawn, heading?: string): Table[] {
  const paper = set.paper?.(numbers as never);
  if (!paper) return [];
  return [
    {
      kind: "table",
      heading: heading ?? paper.heading,
      lines: paper.lines.flatMap((line) => wrapped(line, TEXT_WIDTH)),
      columns: paper.columns,
      rows: paper.rows,
    },
  ];
}

function traineeSheetDefinition(set: AnySet, seed: number, trainee: Trainee): WorkbookDefinition {
  const drawn = drawFor(set, seed, trainee);
  const example = exampleOf(set);
  const blanks = chain(
    "+",
    set.questions.map(({ key }) => f`(${{ name: answerName(key) }}="")`),
  );
  const sheet: SheetDefinition = {
    name: "Exercise",
    kind: "print",
    intro: `${set.title}. ${set.about}`,
    print: { orientation: "landscape" },
    parts: [
      {
        kind: "fields",
        heading: "Sheet",
        fields: [
          { name: SHEET_TRAINEE, label: "Trainee", value: trainee.name },
          { name: SHEET_CODE, label: "Code of this sheet", value: sheetCode(set, seed, trainee) },
          {
            name: checks.verdict.name,
            label: "Answers",
            formula: f`IF(${blanks}=0,${text(ALL_GIVEN)},${blanks}&${text(STILL_OPEN)})`,
          },
        ],
      },
      {
        kind: "text",
        heading: "How to fill it",
        lines: [
          "Type each answer into its boxed cell, a plain number in the unit beside it, rounded as asked. The worked examples have other numbers, the same on every sheet.",
          "Where a question uses an earlier answer, use yours: an earlier mistake, correctly carried forward, is penalised once. Two marks a right answer, one for the right way from a wrong earlier answer.",
          ...set.cautions.map((caution) => `Caution: ${caution}`),
        ],
      },
      ...paperOf(set, drawn),
      ...set.questions.map((question, index) => exerciseOf(question, index + 1, drawn, example)),
      ...paperOf(set, example, "The survey and the quote of the worked examples (demonstration)"),
    ],
  };
  return { id: SHEET_TEMPLATE, title: set.title, version: TRAINING_VERSION, sheets: [sheet] };
}

/**
 * @param answers to fill in by question, for the demonstration and for tests
 * @returns the sheet; its one formula is counted here as well, so that it needs no computing
 */
export function traineeSheet(
  set: AnySet,
  seed: number,
  trainee: Trainee,
  answers: Readonly<Record<string, number | string>> = {},
): Book {
  const fields = Object.fromEntries(
    Object.entries(answers).map(([key, value]) => [answerName(key), value]),
  ) satisfies JobInputs["fields"];
  const book = layOut(traineeSheetDefinition(set, seed, trainee), { fields });
  const open = set.questions.filter(({ key }) => (answers[key] ?? "") === "").length;
  for (const { cells, results } of book.sheets) {
    for (const [at, { formula }] of Object.entries(cells)) {
      if (formula !== undefined) results[at] = open === 0 ? ALL_GIVEN : `${open}${STILL_OPEN}`;
    }
  }
  return book;
}
