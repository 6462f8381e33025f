import { stat } from "node:fs/promises";
import path from "node:path";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { nameInWords } from "../jobs/entryInWords";
import { finder, searched } from "../jobs/search";
import { shelfLineOf, type ShelfLine } from "../workbooks/shelfLine";
import { EXIT, UsageTrouble, type Console } from "./console";
import { filesIn } from "./filesIn";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";

const SHELF_HELP = `rigsheet shelf [FOLDER] [--find WORDS] [--json]

Lists the workbooks of a folder and of all below it, one line each: number,
revision and name, customer, date, total as it was last computed, and what its
checks say. Reads them only. A file that cannot be read is a line too.

  --find WORDS   only those in whose line, or file's name, all the words stand;
                 accents, capitals and hyphens do not count
  --json         one JSON object a line

  rigsheet shelf jobs
  rigsheet shelf jobs --find "guest house"

Exit: 0 listed; 1 some could not be read; 2 no such folder, or none in it.`;

interface Listed {
  readonly file: string;
  readonly line?: ShelfLine;
  readonly unreadable?: string;
}

export async function shelf(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      find: { type: "string" },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "shelf",
  );
  if (values.help) {
    console.out(SHELF_HELP);
    return EXIT.ok;
  }
  const [folder = ".", more] = positionals;
  if (more !== undefined) throw new UsageTrouble("Name one folder: rigsheet shelf jobs");
  const listed = await listedIn(folder, console);
  const isFound = finder(values.find ?? "");
  const found = listed
    .map((one) => ({ one, text: lineOf(one) }))
    .filter(({ one, text }) => isFound(searched({ line: one.line }, text)))
    .sort((a, b) => (a.text < b.text ? -1 : a.text > b.text ? 1 : 0));
  for (const { one, text } of found) console.out(values.json ? JSON.stringify(one) : plain(text));
  if (!values.json) console.err(`${found.length} of ${listed.length} workbooks`);
  return found.some(({ one }) => one.unreadable !== undefined) ? EXIT.look : EXIT.ok;
}

/** @throws UsageTrouble where there is no such folder, or nothing in it */
async function listedIn(folder: string, console: Console): Promise<Listed[]> {
  const isFolder = await stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (!isFolder) throw new UsageTrouble(`There is no folder ${folder}. Name one: rigsheet shelf jobs`);
  const files = await filesIn([folder]);
  if (files.length === 0) throw new UsageTrouble(`There is no .xlsx in ${folder}, nor below it.`);
  const listed: Listed[] = [];
  for (const [index, file] of files.entries()) {
    console.progress?.(`${index + 1} of ${files.length} read`);
    listed.push(await looked(file));
  }
  console.progress?.("");
  return listed;
}

/**
 * @param but the full path of a workbook that is not looked at
 * @returns what can be read of a folder's workbooks
 */
export const linesOnShelf = async (
  folder: string,
  console: Console,
  but: string,
): Promise<{ called: string; line: ShelfLine }[]> =>
  (await listedIn(folder, console)).flatMap(({ file, line }) =>
    line && path.resolve(file) !== but ? [{ called: file, line }] : [],
  );

async function looked(file: string): Promise<Listed> {
  try {
    return { file, line: shelfLineOf(await readXlsx(await fileBytes(file))) };
  } catch (error) {
    if (!(error instanceof FileTrouble) && !(error instanceof UsageTrouble)) throw error;
    return { file, unreadable: error.message };
  }
}

function lineOf({ file, line, unreadable }: Listed): string {
  if (!line) return `${file}: cannot be read. ${unreadable ?? ""}`;
  const total = line.total === undefined ? "" : `${line.total.toFixed(2)} ${line.currency}`.trim();
  return [nameInWords(line), line.customer, line.date, total, line.verdict, file]
    .filter((part) => part !== "")
    .join(" | ");
}
