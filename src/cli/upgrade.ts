import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { upgrade } from "../upgrade/upgrade";
import { asksForALook, inWords } from "../upgrade/words";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";

const UPGRADE_HELP = `rigsheet upgrade JOB.xlsx [--out NEW.xlsx] [--force] [--json]

Makes a workbook of today's version of its template from an older one. Inputs
are carried over by their names, wherever their rows lie now, with your own
parts and rows. What has no place any more is listed, each with its cell, its
value and the reason; so is what the job comes to before, as the file shows it,
and after, worked out anew.

  -o, --out NEW.xlsx   where to write; without it nothing is written, and only
                       what would come of it is shown
  --force              replace NEW.xlsx if it exists
  --json               print everything as JSON

JOB.xlsx is read, never written.
${CAPS_IN_WORDS}

Exit: 0 all was carried over and no figure is another, or it is of today's
version already; 1 there is something to look at; 2 it can't be upgraded, and
nothing was written.`;

export async function upgradeJob(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      out: { type: "string", short: "o" },
      force: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "upgrade",
  );
  if (values.help) {
    console.out(UPGRADE_HELP);
    return EXIT.ok;
  }
  const [job, more] = positionals;
  if (job === undefined || more !== undefined)
    throw new UsageTrouble(
      "Name one workbook: rigsheet upgrade job.xlsx --out new.xlsx. See: rigsheet upgrade --help",
    );
  const out = values.out === undefined ? undefined : outFile(values.out, job, "xlsx", values.force);
  const done = upgrade(await readXlsx(await fileBytes(job)), recalculate);
  if ("sentence" in done) {
    if (done.kind === "refused") throw new FileTrouble(`${job}: ${done.sentence}`);
    console.out(`${job}: ${done.sentence}${out === undefined ? "" : " Nothing was written."}`);
    return EXIT.ok;
  }
  if (out !== undefined) await saveAtomically(out, await writeJob(done.book));
  if (values.json) console.out(JSON.stringify({ ...done, book: undefined, out }, null, 2));
  else {
    const { head, figures, checks, notes, elsewhere, notCarried } = inWords(done);
    const lines = [
      head,
      "",
      ...figures.map((line) => `  ${line}`),
      ...notes,
      ...listed("Checks that did not say so before:", checks),
      ...listed("Stands elsewhere now:", elsewhere),
      ...listed("Not carried over:", notCarried),
      "",
      out === undefined
        ? "Nothing was written. Name a file to write: --out new.xlsx"
        : `${out}: written. ${job} is as it was.`,
    ];
    console.out(lines.map(plain).join("\n"));
  }
  return asksForALook(done) ? EXIT.look : EXIT.ok;
}

const listed = (heading: string, lines: readonly string[]): string[] =>
  lines.length > 0 ? ["", heading, ...lines.map((line) => `  ${line}`)] : [];
