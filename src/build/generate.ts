/**
 * Writes what is generated from the declarations and the definitions. Kept in
 * the repository: the manifests for localhost, Excel's function metadata, the
 * demonstration's survey and the template workbooks; a test fails when one of
 * them is out of date. Built each time: the add-in's folder and
 * the type of printed pages.
 *
 *     node dist/generate.js PROJECT [--release]
 *     node dist/generate.js --addin PROJECT
 *     node dist/generate.js --fonts PROJECT
 *     node dist/generate.js --static PROJECT
 *     node dist/generate.js --changes PROJECT       (to standard output)
 */
import { copyFile, mkdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { PDF_SCRIPTS } from "../pane/loadPdf";
import { RIGSHEET_VERSION } from "../version";
import { addInFiles } from "./addin/addInFiles";
import { changes } from "./changes";
import { generatedFiles, type Records } from "./generatedFiles";
import { printFonts, printFontScript } from "./printFonts";
import { hasNow, lastBefore, RELEASE_RECORD, type ReleaseRecord } from "./releaseRecord";
import { oneFile } from "./static/oneFile";
import { MOST_FIRST_KILOBYTES, packedSize } from "./static/packedSize";
import { fetchedAtFirst, staticFolder } from "./static/staticFolder";
import { INPUT_RECORD, type InputRecord } from "./closedInputs";
import { VERSION_RECORD, type VersionRecord } from "./versionRecord";

const [WRITER_SCRIPT, TYPE_SCRIPT] = PDF_SCRIPTS;
const ONE_FILE = "rigsheet.html";

async function write(folder: string, files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  for (const [name, content] of files) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content);
  }
}

async function recordsIn(project: string): Promise<Records> {
  const read = async (file: string): Promise<unknown> =>
    JSON.parse(await readFile(path.join(project, file), "utf8"));
  return {
    versions: (await read(VERSION_RECORD)) as VersionRecord,
    releases: (await read(RELEASE_RECORD)) as ReleaseRecord,
    inputs: (await read(INPUT_RECORD)) as InputRecord,
  };
}

async function main(words: readonly string[]): Promise<void> {
  if (words[0] === "--addin") {
    const project = words[1]!;
    await write(path.join(project, "dist", "addin"), await addInFiles(project));
    return;
  }
  if (words[0] === "--fonts") {
    const dist = path.join(words[1]!, "dist");
    const fonts = await printFonts();
    await write(path.join(dist, "library"), fonts);
    await write(path.join(dist, "desk"), new Map([[TYPE_SCRIPT, printFontScript(fonts)]]));
    // What the pane in Excel loads when somebody prints.
    for (const name of [WRITER_SCRIPT, `${WRITER_SCRIPT}.LICENSE.txt`, TYPE_SCRIPT])
      await copyFile(path.join(dist, "desk", name), path.join(dist, "addin", name));
    return;
  }
  if (words[0] === "--static") {
    const dist = path.join(words[1]!, "dist");
    const files = await staticFolder(dist);
    const folder = path.join(dist, "static");
    await rm(folder, { recursive: true, force: true });
    await write(folder, files);
    await writeFile(path.join(dist, ONE_FILE), await oneFile(dist));
    const first = packedSize(fetchedAtFirst(files));
    process.stdout.write(
      `dist/static: ${files.size} files; a first visit fetches ${first} kB packed, of at most ${MOST_FIRST_KILOBYTES}\n`,
    );
    if (first > MOST_FIRST_KILOBYTES) process.exitCode = 1;
    return;
  }
  if (words[0] === "--changes") {
    const { releases } = await recordsIn(words[1]!);
    process.stdout.write(changes(RIGSHEET_VERSION, hasNow(), lastBefore(releases)));
    return;
  }
  const [project = "."] = words;
  const kept = await recordsIn(project);
  let files;
  try {
    files = await generatedFiles(kept, words.includes("--release"));
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = 1;
    return;
  }
  await write(project, files);
  for (const name of files.keys()) process.stdout.write(`${name}\n`);
}

void main(process.argv.slice(2));
