/**
 * Text that Excel would take for a formula, a number or a date when somebody
 * edits its cell carries the mark that keeps it text: `quotePrefix` of the
 * cell's format (ECMA-376 part 1, 18.8.45), which is what an apostrophe typed
 * before it leaves in a file.
 */
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { GroupMarking } from "../../../src/training/markGroup";
import { marksBook } from "../../../src/training/marksBook";
import { trainingSets } from "../../../src/training/sets/all";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { trainerKey } from "../../../src/training/trainerKey";
import { address } from "../../../src/formula/address";
import type { Book, BookCell } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { bookOf, emptySheet } from "../../support/books";
import { partsOf } from "../../support/parts";
import { readBySomebodyElse } from "../../support/readBySomebodyElse";
import { recalculated, withLibreOffice } from "../../support/tools";

/** Each would become something else, or lose its first letter, when its cell is edited. */
const TAKEN = [
  ...["=1+1", "=HYPERLINK(A1)", "+4", "-2", "-", "--x", "@SUM(A1)", "@home", "'quoted"],
  ...["3-16", "1/2", "12/4", "1-1", "007", "1E5", "12:30", "5 %", "1,5", ".5", "(3)", "€ 5", "2026-11-27"],
  ...["MAR-1", "Sept 2026", "mai.5", "TRUE", "false", "#N/A", "\t=1", " 5"],
];
/** These stay what they are. */
const PLAIN = ["G-01", "A12", "lounge", "H2", "Ärger", "x=1", "a+b", "Room", "two\nlines", "_x0041_"];

interface WrittenText {
  readonly sheet: string;
  readonly at: string;
  readonly text: string;
  readonly kept: boolean;
}

const plainText = (xml: string): string =>
  [...xml.matchAll(/<t[^>]*>([^<]*)<\/t>/g)]
    .map(([, text]) => text!)
    .join("")
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)))
    .replace(/&amp;/g, "&");

/** Every text that a file holds as a constant, read from its XML. */
function textsIn(bytes: Uint8Array): WrittenText[] {
  const parts = partsOf(bytes);
  const formats = [
    .../<cellXfs[^>]*>(.*)<\/cellXfs>/s.exec(parts.get("xl/styles.xml")!)![1]!.matchAll(/<xf ([^>]*)>/g),
  ].map(([, attributes]) => / quotePrefix="1"/.test(` ${attributes}`));
  const shared = [...(parts.get("xl/sharedStrings.xml") ?? "").matchAll(/<si>(.*?)<\/si>/gs)].map(([, si]) =>
    plainText(si!),
  );
  const names = [...parts.get("xl/workbook.xml")!.matchAll(/<sheet [^>]*?name="([^"]*)"/g)];
  return names.flatMap(([, sheet], index) =>
    [
      ...parts
        .get(`xl/worksheets/sheet${index + 1}.xml`)!
        .matchAll(/<c r="([A-Z]+\d+)"([^>]*)>(?!<f)(.*?)<\/c>/gs),
    ].flatMap(([, at, attributes, content]): WrittenText[] => {
      if (/\/$/.test(attributes!)) return [];
      const inline = /<is>/.test(content!) ? plainText(content!) : undefined;
      const number = / t="s"/.test(attributes!) ? Number(/<v>(\d+)</.exec(content!)![1]) : undefined;
      const text = inline ?? (number === undefined ? undefined : shared[number]!);
      if (text === undefined) return [];
      const format = Number(/ s="(\d+)"/.exec(attributes!)?.[1] ?? 0);
      return [{ sheet: sheet!, at: at!, text, kept: formats[format]! }];
    }),
  );
}

/** A text a row: alone, with a look, with a note (which makes the row one of the library's own), as a result. */
function bookWith(texts: readonly string[]): Book {
  const sheet = emptySheet("S");
  texts.forEach((value, row) => {
    const cells: BookCell[] = [{ value }, { value, look: 0 }, { value, look: 1 }];
    cells.forEach((cell, column) => (sheet.cells[address(row, column)] = cell));
    sheet.cells[address(texts.length + row, 0)] = { value, look: 1, note: "noted" };
  });
  sheet.rowCount = 2 * texts.length;
  sheet.columnCount = 3;
  const looks = [
    { bold: true, align: "right" as const },
    { locked: false, format: "0.0" },
  ];
  return { ...bookOf(sheet), looks };
}

test.each(TAKEN)("kept as text: %j", async (text) => {
  const bytes = await writeXlsx(bookWith([text]));
  const written = textsIn(bytes);
  expect(written.map(({ at, kept }) => [at, kept])).toEqual([
    ["A1", true],
    ["B1", true],
    ["C1", true],
    ["A2", true],
  ]);
  // The mark is no part of the text, nor of the look.
  expect(await readXlsx(bytes)).toEqual(await readXlsx(await writeXlsx(await readXlsx(bytes))));
  expect((await readXlsx(bytes)).looks).toEqual(bookWith([text]).looks);
  expect((await readBySomebodyElse(bytes))[0]!.cells.get("A1")!.value).toBe(text);
});

test("what nobody takes for anything else carries no mark", async () => {
  const written = textsIn(await writeXlsx(bookWith(PLAIN)));
  expect(written).toHaveLength(4 * PLAIN.length);
  expect(written.filter(({ kept }) => kept)).toEqual([]);
});

test("numbers, truth values, formulas and what they fill carry none", async () => {
  const sheet = emptySheet("S");
  sheet.cells = {
    A1: { value: -5 },
    B1: { value: true },
    C1: { formula: "RIG.X(A1:A2)", spill: { rows: 2, columns: 1 } },
  };
  sheet.results = { C1: "=1", C2: "3-16" };
  const xml = partsOf(await writeXlsx(bookOf(sheet))).get("xl/styles.xml")!;
  expect(xml).not.toContain("quotePrefix");
});

test("a mark in a file is read as nothing, and what needs it gets it again", async () => {
  const file = await writeXlsx(bookWith([...TAKEN, ...PLAIN]));
  expect(textsIn(await writeXlsx(await readXlsx(file)))).toEqual(textsIn(file));
});

describe("in every kind of workbook", () => {
  const taken = new Set(TAKEN);
  /** The demonstration with outlets of such names. */
  const rooms = guestHouse.blocks!.rooms!.map((row, index) => ({
    ...row,
    outlet: TAKEN[index] ?? row.outlet!,
  }));
  const inputs: JobInputs = { ...guestHouse, blocks: { ...guestHouse.blocks, rooms } };
  const job = recalculate(layOut(multiRoom, inputs));
  const facts = { now: new Date("2026-03-05T14:07:59Z"), version: "9.8.7" };
  const set = trainingSets[1]!;
  const trainees = ["=Anna", "-Bo", "3-16"].map((name) => ({ name, occurrence: 1 }));
  const drill = { set, seed: 5, trainees };
  const marks = (): Book => {
    const marking = new GroupMarking(drill);
    marking.add("=evil.xlsx", "@not read");
    marking.add("2-Bo.xlsx", traineeSheet(set, 5, trainees[1]!));
    return marksBook(marking.done());
  };
  const KINDS: readonly (readonly [string, readonly string[], () => Promise<Uint8Array>])[] = [
    ["working workbook", TAKEN.slice(0, 20), () => writeXlsx(job)],
    [
      "read and written again",
      TAKEN.slice(0, 20),
      async () => writeXlsx(await readXlsx(await writeXlsx(job))),
    ],
    ["office copy", TAKEN.slice(0, 20), () => writeXlsx(copyOf(job, "office", facts), { frozen: true })],
    ["sealed copy", TAKEN.slice(0, 20), () => writeXlsx(copyOf(job, "sealed", facts), { sealed: true })],
    ["trainee's sheet", ["=Anna"], () => writeXlsx(traineeSheet(set, 5, trainees[0]!))],
    ["trainer's key", ["=Anna", "-Bo", "3-16"], () => writeXlsx(trainerKey(drill))],
    ["marks", ["-Bo", "=evil.xlsx", "@not read"], () => writeXlsx(marks())],
  ];
  test.each(KINDS)("%s", async (kind, wanted, write) => {
    const written = textsIn(await write());
    for (const text of wanted) expect(written.map((one) => one.text)).toContain(text);
    const lost = written.filter(({ text, kept }) => !kept && (taken.has(text) || /^[=+\-@]/.test(text)));
    // What a formula fills follows the formula, and can't be edited.
    const filled = new Set(
      job.sheets.flatMap(({ name, cells, results }) =>
        Object.keys(results).flatMap((at) => (cells[at]?.value === undefined ? [`${name}!${at}`] : [])),
      ),
    );
    expect(lost.filter(({ sheet, at }) => !filled.has(`${sheet}!${at}`))).toEqual([]);
    if (kind === "sealed copy") expect(lost).toEqual([]);
  });
});

withLibreOffice("LibreOffice opens each as text, and saves it as text", async () => {
  const texts = [...TAKEN, ...PLAIN].filter((text) => !/\n|_x0041_|\t/.test(text));
  const sheet = emptySheet("S");
  texts.forEach((value, row) => {
    sheet.cells[address(row, 0)] = { value };
    sheet.cells[address(row, 1)] = { formula: `ISTEXT(A${row + 1})` };
  });
  const file = await recalculated(await writeXlsx(bookOf(sheet)), { to: "xlsx" });
  const read = await readXlsx(file);
  expect(texts.map((_, row) => read.sheets[0]!.cells[address(row, 0)]?.value)).toEqual(texts);
  expect(texts.map((_, row) => read.sheets[0]!.results[address(row, 1)])).toEqual(texts.map(() => true));
});
