import { existsSync } from "node:fs";
import path from "node:path";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { recalculate } from "../hosts/headless/recalculate";
import { renderPng } from "../hosts/headless/renderPng";
import { levelsPicture } from "../pictures/levelsPicture";
import { oneLineDiagram } from "../pictures/oneLineDiagram";
import type { Picture } from "../pictures/picture";
import { slotsPicture } from "../pictures/slotsPicture";
import type { Book } from "../workbooks/book";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const KINDS: Readonly<Record<string, (book: Book) => Picture>> = {
  diagram: oneLineDiagram,
  levels: levelsPicture,
  slots: slotsPicture,
};
const KIND_WORDS = Object.keys(KINDS).join(", ");

const PICTURE_HELP = `rigsheet picture JOB.xlsx --kind KIND --out FILE [--force]

Recalculates a multi-room estimate, draws one picture of it and prints what the
picture shows. The workbook is read, never written.

  --kind diagram   the distribution as a one-line diagram, levels and volts on it
  --kind levels    level against frequency for the worst, median and best outlet
  --kind slots     slots and obstacles as the site sees them, next sun checks
  --out FILE       where to write; its ending says how: .svg or .png
  --force          replace FILE if it exists

Exit: 0 written; 1 there is nothing to draw yet; 2 the files could not be used.`;

/** Higher, a PNG would be drawn too small to be read. */
const HIGHEST_PNG = 20_000;

export async function pictureOf(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      kind: { type: "string" },
      out: { type: "string" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "picture",
  );
  if (values.help) {
    console.out(PICTURE_HELP);
    return EXIT.ok;
  }
  const [file, more] = positionals;
  if (file === undefined || more !== undefined) {
    throw new UsageTrouble(
      "Name one workbook: rigsheet picture job.xlsx --kind diagram --out diagram.svg. See: rigsheet picture --help",
    );
  }
  const draw = kindOf(values.kind);
  const out = outOf(values.out, values.force);
  const book = await readXlsx(await fileBytes(file));
  if (book.template !== "multi-room") {
    throw new FileTrouble(
      `${file} was not made from the multi-room template, so there is nothing here to draw.`,
    );
  }
  const picture = draw(recalculate(book));
  if (picture.empty) {
    console.err(`Nothing was written. ${picture.description}`);
    return EXIT.look;
  }
  await saveAtomically(out, await contentOf(picture, out));
  console.out(`${out}: ${picture.title}\n${picture.description}`);
  return EXIT.ok;
}

function kindOf(kind: string | undefined): (book: Book) => Picture {
  if (kind === undefined) throw new UsageTrouble(`There is no --kind. Give one of: ${KIND_WORDS}.`);
  if (!Object.hasOwn(KINDS, kind)) {
    throw new UsageTrouble(`--kind is "${kind}"; the pictures are: ${KIND_WORDS}.`);
  }
  return KINDS[kind]!;
}

function outOf(out: string | undefined, force: boolean): string {
  if (!out) throw new UsageTrouble("There is no --out. Name the file to write: --out diagram.svg");
  if (!/\.(svg|png)$/i.test(out)) {
    throw new UsageTrouble(`--out is "${out}"; its name must end in .svg or .png`);
  }
  if (existsSync(out) && !force) {
    throw new UsageTrouble(
      `${out} exists and was left as it is. Choose another name, or add --force to replace it.`,
    );
  }
  return out;
}

async function contentOf(picture: Picture, out: string): Promise<Uint8Array> {
  if (path.extname(out).toLowerCase() === ".svg") return new TextEncoder().encode(`${picture.svg}\n`);
  if (picture.height > HIGHEST_PNG) {
    throw new UsageTrouble(
      `The picture is ${picture.height} pixels high; a PNG of more than ${HIGHEST_PNG} could not be read. Write an .svg instead.`,
    );
  }
  return renderPng(picture);
}
