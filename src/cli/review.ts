import path from "node:path";
import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { priceListOf } from "../review/priceListOf";
import { firmSays, type FirmSays } from "../review/ranges/firm";
import { openIn } from "../review/again/told";
import { reviewPage } from "../review/reviewPage";
import { DEFAULT_MARGIN_FLOOR, type ReviewOptions } from "../review/rule";
import { rules } from "../review/ruleList";
import { EXIT, UsageTrouble, type Console } from "./console";
import { filesIn } from "./filesIn";
import { fileBytes, standardsIn } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";
import { keptReviews, settlingIn } from "./keptReviews";
import type { ReviewedFile } from "./reviewFile";
import { reviewFiles } from "./reviewFiles";
import { asksForALook, reviewInWords } from "./reviewInWords";

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
  --keep               keep what is found with the desk's jobs, never in the
                       workbook, and tell it from what the review before found:
                       new, back again, settled, gone; a job is known again by
                       its quote number, or as the very same file
  --settle "SHEET!CELL=WHY"   the finding at that cell may stay, and why; once for
                       each; it is kept, and counts no more while what stands in
                       the cell does; of one workbook
  --data DIR           the desk's folder (usually the user's own; in a clone .rigsheet)
  --rules              what is looked for, with the reason and an example

Many files are shared out among the machine's cores, each worker with memory of
its own, and the count goes on at the terminal.
${CAPS_IN_WORDS}

Exit: 0 nothing found, or only what is settled or worth knowing; 1 something
doubtful or wrong; 2 a file could not be read (the others are reviewed all the same).`;

export async function reviewCommand(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      json: { type: "boolean", default: false },
      html: { type: "string" },
      prices: { type: "string" },
      standards: { type: "string" },
      "margin-floor": { type: "string" },
      keep: { type: "boolean", default: false },
      settle: { type: "string", multiple: true },
      data: { type: "string" },
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
  const settlings = (values.settle ?? []).map(settlingIn);
  const paths = await filesIn(positionals);
  if (paths.length === 0) throw new UsageTrouble("There is no .xlsx in what was named.");

  if (settlings.length > 0 && paths.length > 1)
    throw new UsageTrouble("--settle is of one workbook; name that one.");
  let reviewed: ReviewedFile[] = new Array<ReviewedFile>(paths.length);
  let count = 0;
  await reviewFiles(paths, options, (one, index) => {
    reviewed[index] = one;
    count += 1;
    if (paths.length > 1) console.progress?.(`${count} of ${paths.length} reviewed`);
  });
  if (paths.length > 1) console.progress?.("");
  if (values.keep || settlings.length > 0)
    reviewed = await keptReviews(reviewed, settlings, values.data, console);
  for (const one of reviewed)
    console.out(
      values.json ? JSON.stringify({ ...one, asked: undefined }) : reviewInWords(one).map(plain).join("\n"),
    );
  if (values.html !== undefined) {
    const page = reviewPage(reviewed.map((one) => ({ ...one, link: linkTo(one.path, values.html!) })));
    await saveAtomically(values.html, new TextEncoder().encode(page));
    console.err(`The report is in ${values.html}`);
  }
  if (reviewed.some(({ unreadable }) => unreadable !== undefined)) return EXIT.unusable;
  return reviewed.some((one) => openIn(one).some(({ finding }) => asksForALook(finding)))
    ? EXIT.look
    : EXIT.ok;
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
