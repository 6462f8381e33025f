import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { sentenceFor, sentenceForReading } from "../hosts/file/saveAtomically";
import { addressedFiles } from "../hosts/excel/addIn/addressedFiles";
import { addressTrouble } from "../hosts/excel/addIn/addressTrouble";
import { EXAMPLE_ADDRESS } from "../hosts/excel/addIn/facts";
import { PDF_SCRIPTS } from "../pane/loadPdf";
import { EXIT, UsageTrouble, type Console } from "./console";
import { readOptions } from "./options";

/** The built add-in, for one's own computer; bundled to dist/rigsheet.js, it lies beside the command. */
const BUILT = path.join(__dirname, "addin");
const DESK = path.join(__dirname, "desk");
const HELP = path.join(__dirname, "help");

const ADD_IN_HELP = `rigsheet addin --address https://… --out FOLDER

Writes the add-in for Excel as a folder for your office's web server: manifests
with your address, functions, pane, icons, help; and deploy.html, the steps from
there to Excel. Nothing of it runs on the server.

  --address ADDRESS    where the folder will be served; https, without a slash
                       at its end, a folder below a server's top as well
  --out FOLDER         a new folder in one that is there, or an empty one

  rigsheet addin --address ${EXAMPLE_ADDRESS} --out addin

On the folder's index.html an office makes manifests for another address, without
this command.

Exit: 0 written; 2 nothing was written.`;

export async function addIn(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      address: { type: "string" },
      out: { type: "string" },
      help: { type: "boolean", default: false },
    },
    "addin",
  );
  if (values.help) {
    console.out(ADD_IN_HELP);
    return EXIT.ok;
  }
  if (positionals.length > 0)
    throw new UsageTrouble(`"${positionals[0]}" is one word too many. See: rigsheet addin --help`);
  const { address, out } = values;
  if (!address) {
    throw new UsageTrouble(
      `There is no --address. Give the one that the folder will be served from: --address ${EXAMPLE_ADDRESS}`,
    );
  }
  const trouble = addressTrouble(address);
  if (trouble !== undefined) throw new UsageTrouble(trouble);
  if (!out) throw new UsageTrouble("There is no --out. Name the folder to write: --out addin");

  const files = new Map<string, string | Uint8Array>([...(await builtFiles()), ...addressedFiles(address)]);
  await writeFolder(out, files);
  console.out(`${out}: ${files.size} files, for ${address}`);
  console.out(`${path.join(out, "deploy.html")}: what to do with them; open it in a browser`);
  return EXIT.ok;
}

async function builtFiles(): Promise<[string, Uint8Array][]> {
  try {
    // An installed package has what writes PDF, and the help, once: beside the desk.
    const files = [
      ...(await filesIn(HELP)).map(([name, file]) => [`help/${name}`, file] as const),
      ...PDF_SCRIPTS.map((name) => [name, path.join(DESK, name)] as const),
      ...(await filesIn(BUILT)),
    ];
    return await Promise.all(
      files.map(async ([name, file]): Promise<[string, Uint8Array]> => [name, await readFile(file)]),
    );
  } catch (error) {
    throw new FileTrouble(`${sentenceForReading(error, BUILT)} It belongs to Rigsheet: install it again.`, {
      cause: error,
    });
  }
}

/** @returns each with its name in the folder */
async function filesIn(folder: string): Promise<(readonly [name: string, file: string])[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .map((file) => [path.relative(folder, file).split(path.sep).join("/"), file] as const);
}

/** All of it, or nothing. */
async function writeFolder(folder: string, files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  const isNew = await emptyFolder(folder);
  try {
    for (const [name, content] of files) {
      const file = path.join(folder, name);
      await mkdir(path.dirname(file), { recursive: true });
      await writeFile(file, content, { flag: "wx" });
    }
  } catch (error) {
    const tops = [...files.keys()].map((name) => path.join(folder, name.split("/")[0]!));
    for (const begun of isNew ? [folder] : tops) {
      // What can't be taken back hides nothing of why it stopped.
      await rm(begun, { recursive: true, force: true }).catch(() => undefined);
    }
    throw new FileTrouble(sentenceFor(error, path.join(folder, "manifest.xml")), { cause: error });
  }
}

/** @returns whether it had to be made */
async function emptyFolder(folder: string): Promise<boolean> {
  try {
    await mkdir(folder);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST")
      throw new FileTrouble(sentenceFor(error, folder), { cause: error });
  }
  let inside;
  try {
    inside = await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOTDIR")
      throw new UsageTrouble(`${folder} is a file. Name a new folder or an empty one.`);
    throw new FileTrouble(sentenceForReading(error, folder), { cause: error });
  }
  if (inside.length > 0) {
    throw new UsageTrouble(
      `${folder} is not empty: ${inside.sort()[0]} is in it; nothing was written. Name a new folder or an empty one.`,
    );
  }
  return false;
}
