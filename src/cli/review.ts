import path from "node:path";
import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { WEIGHTS, type Finding } from "../review/finding";
import { priceListOf } from "../review/priceListOf";
import { leadsToInWords } from "../review/leadsToInWords";
import { firmSays, type FirmSays } from "../review/ranges/firm";
import { reviewPage, type PageFile } from "../review/reviewPage";
import { DEFAULT_MARGIN_FLOOR, type ReviewOptions } from "../review/rule";
import { rules } from "../review/ruleList";
import { EXIT, UsageTrouble, type Console } from "./console";
import { filesIn } from "./filesIn";
import { fileBytes, standardsIn } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";
import { reviewFiles } from "./reviewFiles";

const REVIEW_HELP = `rigsheet review FILE-OR-FOLDER … [options]

Reads filled workbooks, computes them anew and tells what is wrong, doubtful or
worth knowing: cell, what it says, what it should, what it does, how to fix it.
Each finding is undone in a copy where it is known what was meant: its own effect
on the total is told, the dearest first, and what the total should be.
Of a folder every .xlsx in it and below is read. No workbook is ever written.

  --json               one JSON object a line, a line for each file
  --html REPORT.html   write one page to print or to send; replaced if it exists
  --prices BASE.xlsx   hold the prices to those of this workbook's Parts sheet
  --standards FIRM.xlsx hold the jobs to the firm's standards, and to what they
                       learned of accepted quotes (rigsheet standards learn);
                       a job that drew on standards is held to these otherwise
  --margin-floor SHARE least margin, 0 to 1; ${DEFAULT_MARGIN_FLOOR} unless given (common practice)
  --rules              what is looked for, with the reason and an example

Many files are shared out among the machine's cores, each worker with memory of
its own, and the count goes on at the terminal.
${CAPS_IN_WORDS}

Exit: 0 nothing found, or only what is worth knowing; 1 something doubtful or
wrong; 2 a file could not be read (the others are reviewed all the same).`;

export async function reviewCommand(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      json: { type: "boolean", default: false },
      html: { type: "string" },
      prices: { type: "string" },
      standards: { type: "string" },
      "margin-floor": { type: "string" },
      rules: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "review",
  );
  if (values.help || values.rules) {
    console.out(
      values.help
        ? REVIEW_HELP
        : rules.map(({ id, reason, example }) => `${id}\n  ${reason}\n  Example: ${example}`).join("\n\n"),
    );
    return EXIT.ok;
  }
  if (positionals.length === 0)
    throw new UsageTrouble(
      "Name a workbook or a folder: rigsheet review job.xlsx. See: rigsheet review --help",
    );
  if (values.html !== undefined && !/\.html?$/i.test(values.html))
    throw new UsageTrouble(`--html is "${values.html}"; its name must end in .html`);
  const options: ReviewOptions = {
    marginFloor: floorOf(values["margin-floor"]),
    ...(values.prices !== undefined && {
      prices: priceListOf(await readXlsx(await fileBytes(values.prices))),
    }),
    ...(values.standards !== undefined && { standards: await firmFrom(values.standards) }),
  };
  const paths = await filesIn(positionals);
  if (paths.length === 0) throw new UsageTrouble("There is no .xlsx in what was named.");

  const reviewed: PageFile[] = new Array<PageFile>(paths.length);
  let count = 0;
  await reviewFiles(paths, options, (one, index) => {
    reviewed[index] = one;
    count += 1;
    if (paths.length > 1) console.progress?.(`${count} of ${paths.length} reviewed`);
  });
  if (paths.length > 1) console.progress?.("");
  for (const one of reviewed)
    console.out(values.json ? JSON.stringify(one) : inWords(one).map(plain).join("\n"));
  if (values.html !== undefined) {
    const page = reviewPage(reviewed.map((one) => ({ ...one, link: linkTo(one.path, values.html!) })));
    await saveAtomically(values.html, new TextEncoder().encode(page));
    console.err(`The report is in ${values.html}`);
  }
  if (reviewed.some(({ unreadable }) => unreadable !== undefined)) return EXIT.unusable;
  return reviewed.some(({ findings }) => findings.some(asksForALook)) ? EXIT.look : EXIT.ok;
}

async function firmFrom(path: string): Promise<FirmSays> {
  const { inputs, firm, edition } = await standardsIn(path);
  return firmSays(inputs, `${firm}, edition ${edition}`);
}

function floorOf(text: string | undefined): number {
  if (text === undefined) return DEFAULT_MARGIN_FLOOR;
  const share = Number(text);
  if (text.trim() === "" || !(share >= 0 && share < 1))
    throw new UsageTrouble(`--margin-floor is "${text}"; give a share from 0 to less than 1, such as 0.15`);
  return share;
}

/** From the report to the workbook, as long as both stay where they are. */
const linkTo = (file: string, report: string): string =>
  path
    .relative(path.dirname(path.resolve(report)), path.resolve(file))
    .split(path.sep)
    .map(encodeURIComponent)
    .join("/");

function inWords({ path: file, unreadable, findings, headline }: PageFile): string[] {
  if (unreadable !== undefined) return [`${file}: cannot be read. ${unreadable}`];
  if (findings.length === 0) return [`${file}: nothing found`];
  const counts = WEIGHTS.flatMap((weight) => {
    const count = findings.filter((one) => one.weight === weight).length;
    return count > 0 ? [`${count} ${weight}`] : [];
  });
  const noted = findings.some(asksForALook) ? "" : " (nothing to put right)";
  return [
    `${file}: ${counts.join(", ")}${noted}`,
    ...(headline ? [`  ${headline.sentence}`] : []),
    ...findings.flatMap(findingInWords),
  ];
}

const asksForALook = ({ weight }: Finding): boolean => weight !== "worth knowing";

function findingInWords({
  weight,
  place,
  cause,
  message,
  expected,
  effect,
  remedy,
  rule,
  leadsTo = [],
}: Finding): string[] {
  const at = place ? `${place.sheet}!${place.cell}` : "whole workbook";
  return [
    `  ${weight}: ${at} (${rule})`,
    `    ${message}`,
    ...(cause === undefined ? [] : [`    First at: ${cause.sheet}!${cause.cell}`]),
    ...(expected === undefined ? [] : [`    Should be: ${expected}`]),
    ...(effect === undefined ? [] : [`    Effect: ${effect}`]),
    ...leadsToInWords(leadsTo).map((line) => `    Because of it: ${line}`),
    `    ${remedy}`,
  ];
}
