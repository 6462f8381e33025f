/** The command `rigsheet`. */
import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { GridTrouble } from "../hosts/grid/gridContract";
import { gridTroubles } from "../hosts/headless/loadLibrary";
import { RIGSHEET_VERSION } from "../version";
import { addIn } from "./addIn";
import { calc } from "./calc";
import { compare } from "./compare";
import { EXIT, UsageTrouble, type Console } from "./console";
import { desk } from "./desk";
import { diagnoseJob } from "./diagnoseJob";
import { exercises } from "./exercises";
import { copyJob } from "./copyJob";
import { helpFor } from "./helpFor";
import { jobsCommand } from "./jobs";
import { mark } from "./mark";
import { newJob } from "./newJob";
import { pictureOf } from "./picture";
import { priceJob } from "./priceJob";
import { reviewCommand } from "./review";
import { printJob } from "./printJob";
import { pdfOfDocument } from "./pdfOfDocument";
import { proposalJob } from "./proposalJob";
import { shelf } from "./shelf";
import { floor } from "./floor";
import { standardsCommand } from "./standards";
import { stepsOfJob } from "./steps";
import { surveyJob } from "./survey";
import { upgradeJob } from "./upgrade";
import { whyCell } from "./why";

const HELP = `rigsheet: plans and prices multi-room single-cable satellite reception jobs

  rigsheet desk [JOB.xlsx]      open the workbook page in the browser; no Excel needed
  rigsheet calc "FORMULA" …     compute trade functions; one JSON object a line
  rigsheet new TEMPLATE …       make a workbook, from a site survey or empty
  rigsheet survey JOB.xlsx FILE a site survey into a job that is there
  rigsheet steps JOB.xlsx       what is filled, sheet by sheet, and what is missing
  rigsheet price JOB.xlsx       recalculate a job and print what it comes to
  rigsheet review FILE …        find what is wrong in filled workbooks, or whole folders
  rigsheet shelf [FOLDER]       list a folder's jobs: number, name, customer, total
  rigsheet jobs --export FILE   all jobs of a desk in one file; --bring-in FILE brings them in
  rigsheet print JOB.xlsx …     print the quote, or other sheets, into a PDF
  rigsheet proposal JOB.xlsx …  write the proposal for the customer, with a place to sign, as a PDF
  rigsheet copy JOB.xlsx …      a copy for people without Rigsheet, or of values only
  rigsheet picture JOB.xlsx …   draw the distribution, the levels, or slots and obstacles
  rigsheet compare OLD NEW      what changed between two revisions, and its part of the price;
                                --change-order FILE writes the order for the customer
  rigsheet why JOB.xlsx CELL     what a cell is worked out from, in the sheet's words, with values
  rigsheet floor JOB.xlsx       a floor copied to others, its names counted on
  rigsheet standards …          the firm's standards: made, checked, jobs brought up to date
  rigsheet upgrade JOB.xlsx     a workbook of an older version as one of today's
  rigsheet diagnose JOB.xlsx    likely causes of measured levels that miss the prediction
  rigsheet exercises --set …    exercise sheets for trainees, each with numbers of its own, and the key
  rigsheet mark FOLDER …        mark the sheets that came back
  rigsheet addin --address …    the add-in for Excel, as a folder for your office's web server
  rigsheet help FUNCTION        what a trade function takes and gives; or words to find one by
  rigsheet COMMAND --help       more on each
  rigsheet --version

A first job, the invented guest house of the demonstration:
  rigsheet new multi-room --demonstration --out job.xlsx
  rigsheet price job.xlsx
  rigsheet desk job.xlsx

${CAPS_IN_WORDS}

Rigsheet predicts and flags; it certifies nothing. Roofs, ladders, overhead
lines, lightning, mains and bonding: local rules and licensed practice decide.`;

type Command = (words: readonly string[], console: Console) => Promise<number>;
const COMMANDS: Readonly<Record<string, Command>> = {
  addin: addIn,
  calc,
  compare,
  desk,
  diagnose: diagnoseJob,
  exercises,
  help: helpFor,
  jobs: jobsCommand,
  mark,
  new: newJob,
  picture: pictureOf,
  price: priceJob,
  review: reviewCommand,
  print: printJob,
  proposal: (words, console) => proposalJob(words, console, pdfOfDocument),
  shelf,
  floor,
  standards: standardsCommand,
  steps: stepsOfJob,
  survey: surveyJob,
  upgrade: upgradeJob,
  why: whyCell,
  copy: copyJob,
};

/** Errors whose message is a sentence for whoever uses the command. */
const SAID = [UsageTrouble, FileTrouble, GridTrouble];

/** @returns the exit code; every trouble that a user can cause becomes a sentence */
export async function run(words: readonly string[], console: Console): Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined || name === "--help" || name === "-h" || (name === "help" && rest.length === 0)) {
    console.out(HELP);
    return name === undefined ? EXIT.unusable : EXIT.ok;
  }
  if (name === "--version") {
    console.out(RIGSHEET_VERSION);
    return EXIT.ok;
  }
  try {
    const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (!command) throw new UsageTrouble(`There is no command "${name}". See: rigsheet --help`);
    const code = await command(rest, console);
    for (const sentence of gridTroubles()) console.err(sentence);
    return code;
  } catch (error) {
    if (!SAID.some((kind) => error instanceof kind)) throw error;
    console.err((error as Error).message);
    return EXIT.unusable;
  }
}
