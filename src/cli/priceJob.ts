import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { readXlsx } from "../hosts/file/readXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { summarise, type JobSummary } from "../workbooks/multiRoom/summarise";
import type { Figure } from "../workbooks/shownFigure";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const PRICE_HELP = `rigsheet price JOB.xlsx [--json]

Recalculates a multi-room estimate and prints its outlets, the worst levels,
tuners and volts of each head unit, the checks that need a look, and the total.
The file is read, never written.
${CAPS_IN_WORDS}

Exit: 0 all checks pass; 1 some need attention; 2 the file could not be used.`;

export async function priceJob(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    { json: { type: "boolean", default: false }, help: { type: "boolean", default: false } },
    "price",
  );
  if (values.help) {
    console.out(PRICE_HELP);
    return EXIT.ok;
  }
  const [path, more] = positionals;
  if (path === undefined || more !== undefined) {
    throw new UsageTrouble("Name one workbook: rigsheet price job.xlsx. See: rigsheet price --help");
  }
  const book = await readXlsx(await fileBytes(path));
  if (book.template !== "multi-room") {
    throw new FileTrouble(
      `${path} was not made from the multi-room template, so there is nothing here to price.`,
    );
  }
  const summary = summarise(recalculate(book));
  console.out(values.json ? JSON.stringify(summary, null, 2) : inWords(summary));
  return summary.checks.every(({ result }) => result === "ok" || result === "note") ? EXIT.ok : EXIT.look;
}

function inWords(job: JobSummary): string {
  const shown = (value: number | string | null, digits = 1): string =>
    typeof value === "number" ? value.toFixed(digits) : (value ?? "-");
  const lines = [
    job.job || "(no job name)",
    [counted(job.outlets, "outlet"), tunersOf(job), counted(job.headUnits.length, "head unit")].join(", "),
    "",
    "Weakest outlets, level and margin above minimum:",
    ...job.worst.map(
      ({ outlet, room, margin, weakest, verdict, trouble }) =>
        `  ${outlet.padEnd(8)} ${room.padEnd(20)} ${
          // An outlet that cannot be worked out has no level, and its row says why.
          typeof weakest === "number"
            ? `${shown(weakest).padStart(6)} dBµV ${shown(margin).padStart(6)} dB  ${verdict}`
            : trouble || verdict
        }`,
    ),
    "",
    "Head units:",
    ...job.headUnits.map(({ id, tuners, bands, volts, least, verdict, trouble }) =>
      typeof volts === "number"
        ? `  ${id.padEnd(8)} ${shown(tuners, 0)} of ${shown(bands, 0)} user bands, ${shown(volts, 2)} V where ${shown(least)} V is the least  ${verdict}`
        : `  ${id.padEnd(8)} ${trouble || verdict}`,
    ),
    "",
    "Checks that need attention:",
    ...job.checks
      .filter(({ result }) => result !== "ok")
      .map(
        ({ what, found, result, where }) =>
          `  ${result}: ${what}: ${shown(found, 2).replace(/\.00$/, "")} (${where})`,
      ),
    "",
    `Price without tax ${shown(job.net, 2)}, tax ${shown(job.tax, 2)}, total ${shown(job.total, 2)} ${job.currency}`,
    `${job.verdict}`,
  ];
  return lines.join("\n");
}

const counted = (count: Figure, what: string): string => `${count ?? "?"} ${what}${count === 1 ? "" : "s"}`;

/** In place of the count, the sentence of what keeps it from being counted. */
const tunersOf = ({ tuners }: JobSummary): string =>
  typeof tuners === "string" ? `tuners not counted (${tuners.replace(/\.$/, "")})` : counted(tuners, "tuner");
