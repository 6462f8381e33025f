/** The firm's standards: made, checked, and jobs brought up to date with them. */
import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { withEntries } from "../hosts/headless/withEntries";
import { canBeTaken, type Difference } from "../standards/differences";
import { inWords, takenByItself, totalInWords } from "../standards/inWords";
import { bringing } from "../standards/bringing";
import { totalWith, upToDate, type UpToDate } from "../standards/upToDate";
import { checkLines } from "../workbooks/checkLines";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { sheetDateOf } from "../workbooks/sheetDate";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { fileBytes, newJob, standardsIn } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";
import { learnCommand } from "./standardsLearn";
import { pricesCommand } from "./standardsPrices";

const STANDARDS_HELP = `rigsheet standards new --out FIRM.xlsx [--demonstration] [--force]
rigsheet standards check FIRM.xlsx
rigsheet standards update JOB.xlsx --standards FIRM.xlsx [--out NEW.xlsx] …
rigsheet standards prices FIRM.xlsx LIST --supplier NAME [--out NEW.xlsx] …
rigsheet standards learn FOLDER [FIRM.xlsx] [--out NEW.xlsx] …

The firm's standards: one workbook with the firm's parts, prices, labour units,
rates, limits and terms, on which jobs draw.

new     makes that workbook, with the figures of standards and common practice,
        or filled with invented ones (--demonstration)
check   prints what its checks say
update  shows by what the standards differ from a job and what that does to its
        total, and writes the job with them:
  --standards FIRM.xlsx  the standards
  --leave 3,5            leave these differences out, by their numbers
  --also 7               take these too, though the job has its own there
  -o, --out NEW.xlsx     where to write; without it nothing is written
  --force                replace NEW.xlsx if it exists
  --json                 print everything as JSON
prices  reads a supplier's price list into the standards; see
        rigsheet standards prices --help
learn   reads the accepted quotes of a folder, and writes what is usual into the
        standards, for the review to hold new quotes to; see
        rigsheet standards learn --help

What was changed in the job since it drew on standards is kept, and so is a
part that the standards have no more; both are named. JOB.xlsx is read, never
written. A new job draws on standards by: rigsheet new multi-room --standards
FIRM.xlsx --out job.xlsx
${CAPS_IN_WORDS}

Exit: 0 done, or nothing differs, or all checks pass; 1 there is something to
look at: checks that need attention, or differences that were only shown; 2 a
file could not be used, and nothing was written.`;

const SUBCOMMANDS: Readonly<Record<string, (words: readonly string[], console: Console) => Promise<number>>> =
  {
    new: (words, console) => newJob(["standards", ...words], console),
    check,
    update,
    prices: pricesCommand,
    learn: learnCommand,
  };

export async function standardsCommand(words: readonly string[], console: Console): Promise<number> {
  const [name, ...rest] = words;
  if (name === "--help") {
    console.out(STANDARDS_HELP);
    return EXIT.ok;
  }
  const known = Object.keys(SUBCOMMANDS);
  if (name === undefined || !known.includes(name))
    throw new UsageTrouble(
      `${name === undefined ? "Say what is to be done" : `There is no "standards ${name}"`}: ${known.join(", ")}. See: rigsheet standards --help`,
    );
  return await SUBCOMMANDS[name]!(rest, console);
}

async function check(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    { help: { type: "boolean", default: false } },
    "standards",
  );
  if (values.help) {
    console.out(STANDARDS_HELP);
    return EXIT.ok;
  }
  const path = oneFile(positionals, "rigsheet standards check firm.xlsx");
  const { firm, edition } = await standardsIn(path);
  const lines = checkLines(recalculate(await readXlsx(await fileBytes(path))));
  const open = lines.filter(({ result }) => result !== "ok");
  const failing = open.filter(({ result }) => result !== "note");
  console.out(
    plain(
      `${firm}, edition ${edition}: ${failing.length === 0 ? "all checks pass" : failing.length === 1 ? "1 check needs attention" : `${failing.length} checks need attention`}`,
    ),
  );
  for (const { result, what, found, where } of open)
    console.out(plain(`  ${result}: ${what}: ${found ?? ""} (${where})`));
  return failing.length > 0 ? EXIT.look : EXIT.ok;
}

const oneFile = ([path, more]: readonly string[], example: string): string => {
  if (path === undefined || more !== undefined)
    throw new UsageTrouble(`Name one workbook: ${example}. See: rigsheet standards --help`);
  return path;
};

async function update(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      standards: { type: "string" },
      leave: { type: "string" },
      also: { type: "string" },
      out: { type: "string", short: "o" },
      force: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "standards",
  );
  if (values.help) {
    console.out(STANDARDS_HELP);
    return EXIT.ok;
  }
  const path = oneFile(
    positionals,
    "rigsheet standards update job.xlsx --standards firm.xlsx --out new.xlsx",
  );
  if (values.standards === undefined)
    throw new UsageTrouble("There is no --standards. Name the firm's workbook: --standards firm.xlsx");
  const out = values.out === undefined ? undefined : outFile(values.out, path, "xlsx", values.force);
  const standards = await standardsIn(values.standards);
  const job = recalculate(await readXlsx(await fileBytes(path)));
  const found = upToDate(job, standards, path);
  if (typeof found === "string") throw new FileTrouble(found);
  const chosen = chosenOf(found, values.leave, values.also);
  const total = totalWith(found, chosen, recalculate);
  if (out !== undefined) {
    const written = withEntries(
      job,
      multiRoom,
      bringing(found, chosen, { today: sheetDateOf(new Date()), after: total }),
    );
    if (typeof written === "string") throw new FileTrouble(`${path}: ${written}`);
    await saveAtomically(out, await writeJob(written));
  }
  const said = inWords(found);
  if (values.json) {
    const { differences, currency, notes } = found;
    const taken = new Set(chosen);
    console.out(
      JSON.stringify(
        {
          head: said.head,
          summary: said.summary,
          notes,
          total: found.total,
          totalAfter: total,
          currency,
          differences: differences.map(
            ({ number, kind, heading, line, column, from, to, byHand, ...rest }) => ({
              number,
              kind,
              list: heading,
              line,
              column: column?.head,
              from,
              to,
              byHand,
              taken: taken.has(differences.find((one) => one.number === number)!),
              row: rest.row,
            }),
          ),
          out,
        },
        null,
        2,
      ),
    );
  } else {
    const taken = new Set(chosen.map(({ number }) => number));
    const lines = [
      said.head,
      said.summary,
      ...said.notes,
      totalInWords(found.total, total, found.currency),
      ...said.lists.flatMap(({ heading, lines: all }) => [
        "",
        heading,
        ...all.map((line) => `  ${taken.has(line.number) ? "take " : "leave"} ${line.number}. ${line.words}`),
      ]),
      "",
      out === undefined
        ? "Nothing was written. Name a file to write: --out new.xlsx"
        : `${out}: written. ${path} is as it was.`,
    ];
    console.out(lines.map(plain).join("\n"));
  }
  return out === undefined && chosen.length > 0 ? EXIT.look : EXIT.ok;
}

function chosenOf(
  { differences }: UpToDate,
  leave: string | undefined,
  also: string | undefined,
): Difference[] {
  const left = numbersOf(leave, "--leave", differences);
  const added = numbersOf(also, "--also", differences);
  const byItself = new Set(takenByItself(differences));
  return differences.filter(
    (one) => canBeTaken(one) && !left.has(one.number) && (byItself.has(one) || added.has(one.number)),
  );
}

function numbersOf(
  text: string | undefined,
  option: string,
  differences: readonly Difference[],
): Set<number> {
  const words = (text ?? "").split(/[\s,;]+/).filter((word) => word !== "");
  const known = new Set(differences.filter(canBeTaken).map(({ number }) => number));
  const bad = words.find((word) => !known.has(Number(word)));
  if (bad !== undefined)
    throw new UsageTrouble(
      `${option} names ${bad}; no difference that can be taken has that number. Without --out all are shown with their numbers.`,
    );
  return new Set(words.map(Number));
}
