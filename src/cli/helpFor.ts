import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { allFunctions } from "../functions/all";
import type { SheetFunction } from "../functions/core/declare";
import { NAMESPACE } from "../formula/namespace";
import { fullName } from "../help/facts";
import { helpFiles } from "../help/helpFiles";
import { helpText } from "../help/helpText";
import { EXIT, UsageTrouble, type Console } from "./console";
import { readOptions } from "./options";

const HELP_HELP = `rigsheet help FUNCTION          one function: arguments, limits, source, examples
rigsheet help WORDS …           the functions that answer to those words
rigsheet help --pages FOLDER    write all help pages as HTML files

  rigsheet help AZIMUTH
  rigsheet help bedroom signal`;

export async function helpFor(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    { pages: { type: "string" }, help: { type: "boolean" } },
    "help",
  );
  if (values.help) console.out(HELP_HELP);
  else if (values.pages !== undefined) console.out(await writePages(values.pages));
  else console.out(answerTo(positionals));
  return EXIT.ok;
}

function answerTo(words: readonly string[]): string {
  const name = words.join(" ").toUpperCase().replace(`${NAMESPACE}.`, "");
  const one = allFunctions.find((candidate) => candidate.name === name);
  if (one) return helpText(one);
  const wanted = words.flatMap((word) => word.toLowerCase().split(/\s+/)).filter(Boolean);
  const found = allFunctions.filter((candidate) => wanted.every((word) => wordsOf(candidate).includes(word)));
  if (found.length > 0) return found.map(line).join("\n");
  throw new UsageTrouble(
    `No function answers to "${words.join(" ")}". Try fewer words, or see all of them: rigsheet help RIG`,
  );
}

const wordsOf = ({ name, group, summary, tasks }: SheetFunction): string =>
  [fullName(name), group, summary, ...tasks].join(" ").toLowerCase();

const line = ({ name, summary }: SheetFunction): string => `${fullName(name).padEnd(18)} ${summary}`;

async function writePages(folder: string): Promise<string> {
  const files = helpFiles(allFunctions);
  try {
    await mkdir(folder, { recursive: true });
    for (const [name, content] of files) await writeFile(path.join(folder, name), content);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new UsageTrouble(
      `The help can't be written into ${folder} (${code}). Give a folder that you may write to.`,
    );
  }
  return `${files.size} files in ${folder}`;
}
