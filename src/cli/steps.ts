import { readXlsx } from "../hosts/file/readXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import { fillingSteps, nextStep, stateInWords, type OpenPoint } from "../review/fillingSteps";
import { recognised } from "../review/recognised";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";

const STEPS_HELP = `rigsheet steps JOB.xlsx [--json]

Recalculates the workbook and tells, sheet by sheet in the order of work, what
is filled, what is missing and where, and what a check finds wrong with it. The
file is read, never written.

  --json   the same as data

Exit: 0 all sheets have what they need; 1 something is missing; 2 the file could
not be used, or is none of Rigsheet's.`;

export async function stepsOfJob(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    { json: { type: "boolean", default: false }, help: { type: "boolean", default: false } },
    "steps",
  );
  if (values.help) {
    console.out(STEPS_HELP);
    return EXIT.ok;
  }
  const [file, more] = positionals;
  if (file === undefined || more !== undefined)
    throw new UsageTrouble("Name one workbook: rigsheet steps job.xlsx");
  const steps = fillingSteps(recalculate(recognised(await readXlsx(await fileBytes(file)))));
  if (steps.length === 0)
    throw new UsageTrouble(
      `${file} has no steps of filling: it is no estimate, card, standards or review of Rigsheet's.`,
    );
  if (values.json) console.out(JSON.stringify(steps, null, 2));
  else for (const step of steps) for (const line of linesOf(step)) console.out(plain(line));
  return nextStep(steps) ? EXIT.look : EXIT.ok;
}

const linesOf = (step: ReturnType<typeof fillingSteps>[number]): string[] => [
  `${step.sheet}: ${stateInWords(step)}`,
  ...step.open.map((point) => `  missing  ${pointInWords(point)}`),
  ...step.look.map((point) => `  look     ${pointInWords(point)}`),
];

const pointInWords = ({ what, place: { sheet, cell } }: OpenPoint): string => `${sheet}!${cell}  ${what}`;
