/** What accepted quotes had, learned into the firm's standards: shown, and written where --out says so. */
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { withEntries } from "../hosts/headless/withEntries";
import type { Accepted, Learned } from "../review/ranges/learned";
import { ENOUGH_QUOTES, FEWEST_QUOTES } from "../review/ranges/learned";
import { entriesOf } from "../standards/entries";
import { acceptedQuote, learnedOf } from "../standards/learning";
import type { Book } from "../workbooks/book";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { sheetDateOf } from "../workbooks/sheetDate";
import { standardsWorkbook } from "../workbooks/standards/definition";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { filesIn } from "./filesIn";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";

export const LEARN_HELP = `rigsheet standards learn FOLDER [FIRM.xlsx] [--out NEW.xlsx] …

Reads the accepted quotes of a folder, and below it, and says what they had:
price of a metre, of each part and of an outlet, minutes of each work and of an
outlet, labour's share, reels and packs, margin, contingency, levels and losses
of devices, number of outlets. Of each figure it gives the lowest and the highest
that is usual, the middle, and from how many quotes it comes. A quote that stands
far out of the others is named, and widens nothing; of a quote number only the
last revision counts; money of another currency is kept apart. A file that is no
multi-room job, or can't be read, is named and left out.

With FIRM.xlsx and --out the sheet Ranges of the standards is written, to read
and to change: a row with yes under Kept is left as it is. Then
rigsheet review JOB.xlsx --standards NEW.xlsx says what is unusual. Under
${FEWEST_QUOTES} quotes nothing is held to a range; under ${ENOUGH_QUOTES} it is only worth knowing.

  -o, --out NEW.xlsx   where to write; without it nothing is written
  --force              replace NEW.xlsx if it exists
  --json               print everything as JSON

FIRM.xlsx and the quotes are read, never written.

Exit: 0 shown or written; 1 a file was left out, or a quote stands out; 2 there
was nothing to learn from, or a file could not be used.`;

export async function learnCommand(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      out: { type: "string", short: "o" },
      force: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "standards",
  );
  if (values.help) {
    console.out(LEARN_HELP);
    return EXIT.ok;
  }
  const [folder, firm, more] = positionals;
  if (folder === undefined || more !== undefined)
    throw new UsageTrouble(
      "Name the folder of accepted quotes, and the standards: rigsheet standards learn accepted firm.xlsx --out new.xlsx. See: rigsheet standards learn --help",
    );
  if (values.out !== undefined && firm === undefined)
    throw new UsageTrouble(
      "--out writes the firm's standards. Name them too: rigsheet standards learn accepted firm.xlsx --out new.xlsx",
    );
  const out = values.out === undefined ? undefined : outFile(values.out, firm!, "xlsx", values.force);
  const stored = firm === undefined ? undefined : await firmsBook(firm);
  const { accepted, leftOut } = await quotesIn(await filesIn([folder]), console);
  if (accepted.length === 0)
    throw new FileTrouble([`There is no accepted quote in ${folder}.`, ...leftOut].join(" "));
  const inputs = stored ? jobInputsOf(standardsWorkbook, stored) : {};
  const found = learnedOf(inputs, accepted, sheetDateOf(new Date()));
  const look = leftOut.length > 0 || found.outside.length > 0;
  if (values.json) {
    const { quotes, ranges, kept } = found;
    const outside = found.outside.map(({ called, measure: { name, of, value }, range }) => ({
      file: called,
      name,
      of,
      value,
      low: range.low,
      high: range.high,
    }));
    console.out(
      JSON.stringify(
        {
          quotes: quotes.map(({ called, number, revision }) => ({ file: called, number, revision })),
          ranges,
          outside,
          leftOut,
          kept,
          out,
        },
        null,
        2,
      ),
    );
  } else {
    const { quotes, ranges, outside, kept } = found;
    console.out(
      [
        `${quotes.length} accepted ${quotes.length === 1 ? "quote" : "quotes"}${accepted.length > quotes.length ? ` in ${accepted.length} files: of each the last revision counts` : ""}; ${ranges.length} figures learned${kept > 0 ? `, ${kept} kept as they are` : ""}.`,
        ...(quotes.length < FEWEST_QUOTES
          ? [`Under ${FEWEST_QUOTES} quotes nothing is held to a range yet.`]
          : quotes.length < ENOUGH_QUOTES
            ? [`Under ${ENOUGH_QUOTES} quotes what lies outside is only worth knowing.`]
            : []),
        ...leftOut,
        ...outside.map(
          ({ called, measure, range }) =>
            `${called} stands out: ${range.what}${measure.of === "" ? "" : ` of ${measure.of}`} is ${short(measure.value)} ${measure.unit}, the others have ${short(range.low)} to ${short(range.high)}. It widens nothing.`,
        ),
        "",
        ...ranges.map(inWords),
      ]
        .map(plain)
        .join("\n"),
    );
  }
  if (out !== undefined && stored) {
    const written = withEntries(
      stored,
      standardsWorkbook,
      entriesOf(standardsWorkbook, inputs, found.inputs),
    );
    if (typeof written === "string") throw new FileTrouble(`${firm}: ${written}`);
    await saveAtomically(out, await writeJob(written));
    console.err(plain(`${out}: written. ${firm} is as it was.`));
  } else if (!values.json)
    console.out("\nNothing was written. Name the standards and a file to write: firm.xlsx --out new.xlsx");
  return look ? EXIT.look : EXIT.ok;
}

async function firmsBook(path: string): Promise<Book> {
  const stored = recalculate(await readXlsx(await fileBytes(path)));
  if (stored.template !== standardsWorkbook.id)
    throw new FileTrouble(
      `${path} is no workbook of a firm's standards. Give one that was made from the template “${standardsWorkbook.title}”.`,
    );
  if (stored.templateVersion !== standardsWorkbook.version)
    throw new FileTrouble(
      `${path} was made from version ${stored.templateVersion} of its template, which has no sheet Ranges. Upgrade it first: rigsheet upgrade ${path} --out new.xlsx`,
    );
  return stored;
}

/** One broken file never stops the others. */
async function quotesIn(
  paths: readonly string[],
  console: Console,
): Promise<{ accepted: Accepted[]; leftOut: string[] }> {
  const accepted: Accepted[] = [];
  const leftOut: string[] = [];
  for (const [index, path] of paths.entries()) {
    try {
      const found = acceptedQuote(recalculate(await readXlsx(await fileBytes(path))), path);
      if (typeof found === "string") leftOut.push(found);
      else accepted.push(found);
    } catch (error) {
      leftOut.push(
        `${path} can't be read, and was left out. ${error instanceof Error ? error.message : String(error)}`,
      );
    }
    console.progress?.(`${index + 1} of ${paths.length} read`);
  }
  console.progress?.("");
  return { accepted, leftOut };
}

const DIGITS = 4;
const short = (value: number): number => Number(value.toPrecision(DIGITS));

const inWords = ({ what, of, unit, low, middle, high, quotes }: Learned): string =>
  `  ${what}${of === "" ? "" : ` of ${of}`}: ${short(low)} to ${short(high)}, middle ${short(middle)}${unit === "" ? "" : ` ${unit}`} (from ${quotes} quotes)`;
