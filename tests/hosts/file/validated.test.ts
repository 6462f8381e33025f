/**
 * Every kind of workbook that we write, held to Microsoft's Open XML SDK: its
 * validator has nothing to say of any. That it has of a file with parts in the
 * wrong order shows that its silence means something.
 */
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { strToU8, unzipSync, zipSync } from "fflate";
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeJob } from "../../../src/hosts/file/writeJob";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../../src/hosts/headless/recalculate";
import { renderPng } from "../../../src/hosts/headless/renderPng";
import { GroupMarking } from "../../../src/training/markGroup";
import { marksBook } from "../../../src/training/marksBook";
import { trainingSets } from "../../../src/training/sets/all";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { trainerKey } from "../../../src/training/trainerKey";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { templates } from "../../../src/workbooks/templates";
import { emptySheet, sampleBook } from "../../support/books";
import { generatedJob } from "../../support/generatedJobs";
import { withValidator } from "../../support/tools";
import { isMost, tries } from "../../support/tries";

const run = promisify(execFile);
const FACTS = { now: new Date("2026-03-05T14:07:59Z"), version: "9.8.7" };

interface Said {
  readonly errors: readonly { readonly description: string; readonly path: string; readonly xPath: string }[];
}

/** @returns what the validator says of the file, a line each */
async function complaints(program: string, bytes: Uint8Array): Promise<string[]> {
  const folder = await mkdtemp(path.join(tmpdir(), "rigsheet-validated-"));
  try {
    const file = path.join(folder, "book.xlsx");
    await writeFile(file, bytes);
    const { stdout } = await run(program, [file, "Microsoft365"], { maxBuffer: 1 << 26 });
    return (JSON.parse(stdout) as Said).errors.map(
      ({ description, path: part, xPath }) => `${part} ${xPath}: ${description}`,
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const throughModel = (book: Book): Book => quietly(() => fromModel(loadLibrary(), openModel(book)));

/** Text that XML or the format has a way of its own for, long text, notes, and numbers at the ends of their range. */
function oddBook(): Book {
  const book = sampleBook();
  const odd = emptySheet("Odd ‘values’ & <marks>");
  const values = [
    ...["=1+1", " lead", "trail ", "a\nb", "a\tb", "_x000D_", "\u0007bell", "<&>\"'", "x".repeat(32_767)],
    ...["Ünïcode 𝛑 ✓", "#N/A", "TRUE", "3-16", "00", "-0"],
    ...[0, -0, 1e308, -1e-307, 0.1 + 0.2, true, false],
  ];
  values.forEach((value, index) => (odd.cells[`A${index + 1}`] = { value, note: `note ${index}\n <&>` }));
  odd.cells.B1 = { formula: "A1:A3", spill: { rows: 3, columns: 1 } };
  odd.results = { B1: "=1+1", B2: " spilled & <kept> ", B3: "" };
  odd.rowCount = values.length;
  odd.columnCount = 3;
  book.sheets.push(odd);
  return book;
}

const TRAINEES = [{ name: "Anna", occurrence: 1 }];
const marks = async (): Promise<Book> => {
  const set = trainingSets[0]!;
  const marking = new GroupMarking({ set, seed: 5, trainees: TRAINEES });
  marking.add("anna.xlsx", await readXlsx(await writeXlsx(traineeSheet(set, 5, TRAINEES[0]!))));
  return marksBook(marking.done());
};

const WRITTEN: readonly (readonly [string, () => Promise<Uint8Array>])[] = [
  ...templates.flatMap(({ id, empty, demonstration }): [string, () => Promise<Uint8Array>][] => {
    const computed = (): Book => recalculate(demonstration());
    const all: [string, () => Promise<Uint8Array>][] = [
      [`${id}, empty`, () => writeJob(recalculate(empty()))],
      [`${id}, not computed`, () => writeXlsx(empty())],
      [`${id}, demonstration with its pictures`, () => writeJob(computed())],
      [`${id}, saved from the desk's model`, () => writeXlsx(throughModel(demonstration()))],
      [`${id}, read and written again`, async () => writeJob(await readXlsx(await writeJob(computed())))],
      [
        `${id}, office copy`,
        () => writeXlsx(copyOf(computed(), "office", FACTS), { frozen: true, renderPng }),
      ],
      [
        `${id}, sealed copy`,
        () => writeXlsx(copyOf(computed(), "sealed", FACTS), { sealed: true, renderPng }),
      ],
    ];
    // The small ones are written by the same code: two of each, and all in the long runs of `npm run prove`.
    return id === multiRoom.id || isMost
      ? all
      : all.filter(([what]) => /with its pictures|office/.test(what));
  }),
  [
    "outlet cards",
    () =>
      writeXlsx(copyOf(recalculate(templates[0]!.demonstration()), "cards", FACTS), {
        sealed: true,
        renderPng,
      }),
  ],
  ...trainingSets.map(
    (set) => [`training sheet, ${set.id}`, () => writeJob(traineeSheet(set, 5, TRAINEES[0]!))] as const,
  ),
  ["training key", () => writeJob(trainerKey({ set: trainingSets[0]!, seed: 5, trainees: TRAINEES }))],
  ["marks of a group", async () => writeJob(await marks())],
  ["odd values", () => writeXlsx(oddBook())],
  ...Array.from(
    { length: tries(1, 2, 10) },
    (_, index) =>
      [
        `generated job ${index + 1}`,
        () => writeJob(recalculate(layOut(multiRoom, generatedJob(index + 1)))),
      ] as const,
  ),
];

for (const [what, write] of WRITTEN)
  withValidator(what, async (program) => {
    expect(await complaints(program, await write())).toEqual([]);
  });

withValidator("what is out of order in a file is found", async (program) => {
  const parts = unzipSync(await writeXlsx(sampleBook()));
  const styles = new TextDecoder().decode(parts["xl/styles.xml"]);
  const spoiled = styles.replace(/(<sz [^>]*\/>)(<color [^>]*\/>)/, "$2$1");
  expect(spoiled).not.toBe(styles);
  const found = await complaints(program, zipSync({ ...parts, "xl/styles.xml": strToU8(spoiled) }));
  expect(found.join()).toMatch(/xl\/styles\.xml.*unexpected child element/);
});
