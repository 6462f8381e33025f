/**
 * What trainees hand in, as fifty situations thought up by someone who had not
 * seen the code (tests/fixtures/training/handed-in.json): each is made, marked,
 * and what the command and the marks say is held against what it must say.
 */
import { cp, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { zipSync } from "fflate";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { answerName, SHEET_CODE, SHEET_TRAINEE } from "../../src/training/answerName";
import { drawFor, type Trainee } from "../../src/training/drawNumbers";
import type { Answer } from "../../src/training/exercise";
import { asAsked } from "../../src/training/precision";
import { trainingSetOf } from "../../src/training/sets/all";
import { parseAddress, address } from "../../src/formula/address";
import type { Book, BookSheet } from "../../src/workbooks/book";
import handedIn from "../fixtures/training/handed-in.json";
import { runCommand, type Ran } from "../support/fakeConsole";

const situations = handedIn as readonly { readonly id: string; readonly situation: string }[];

const COMMAND = "exercises";
const SEED = 7;
const NAMES = ["Ada Demonstration", "Ben Demonstration", "Cem Demonstration"];

let folder: string;
const at = (...names: string[]): string => path.join(folder, ...names);
const sheetAt = (...names: string[]): string => at("class", "sheets", ...names);
const named = (name: string, occurrence = 1): Trainee => ({ name, occurrence });
const ADA = named("Ada Demonstration");
const ADA_FILE = "1-Ada-Demonstration.xlsx";

const make = async (set = "cable", seed = SEED, names = NAMES, out = "class"): Promise<void> => {
  await writeFile(at("list.csv"), ["name", ...names.map((name) => `"${name}"`)].join("\n"));
  const made = await runCommand([
    ...[COMMAND, "--set", set, "--trainees", at("list.csv")],
    ...["--seed", String(seed), "--out", at(out)],
  ]);
  expect(made.code).toBeLessThan(2);
};

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-handed-"));
  await make();
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** What is said and what is written, in one text for each. */
interface Said extends Ran {
  /** Everything on the console. */
  readonly text: string;
  /** Rows of the sheet of marks by trainee: marks, what to look at, file. */
  readonly marks: Readonly<Record<string, string>>;
  readonly points: Readonly<Record<string, number | undefined>>;
}

async function marked(...more: string[]): Promise<Said> {
  const out = at(`marks-${Math.random()}.xlsx`);
  const ran = await runCommand(["mark", at("class"), "--out", out, ...more]);
  const marks: Record<string, string> = {};
  const points: Record<string, number | undefined> = {};
  const book = await readFile(out).then(readXlsx, () => undefined);
  const cells = book?.sheets.find(({ name }) => name === "Marks")?.cells ?? {};
  const rows: (string | number | undefined)[][] = [];
  for (const [where, { value }] of Object.entries(cells)) {
    const place = parseAddress(where)!;
    (rows[place.row] ??= [])[place.column] = value as string | number | undefined;
  }
  for (const row of rows) {
    if (typeof row?.[0] !== "number") continue;
    marks[`${row[0]}`] = row.join(" | ");
    points[`${row[0]}`] = typeof row[2] === "number" ? row[2] : undefined;
  }
  return { ...ran, text: `${ran.out}\n${ran.err}`, marks, points };
}

const keyOf = (trainee: Trainee, set = "cable", seed = SEED): Record<string, Answer> => {
  const found = trainingSetOf(set)!;
  const { key } = drawFor(found, seed, trainee);
  return Object.fromEntries(found.questions.map((one) => [one.key, asAsked(one.answer, key[one.key]!)]));
};

const cellOf = (book: Book, name: string): { sheet: BookSheet; range: string } => {
  const found = book.names.find((one) => one.name === name)!;
  return { sheet: book.sheets.find((one) => one.name === found.sheet)!, range: found.range };
};

function type(book: Book, answers: Readonly<Record<string, Answer>>): void {
  for (const [key, value] of Object.entries(answers)) {
    const { sheet, range } = cellOf(book, answerName(key));
    sheet.cells[range] = { ...sheet.cells[range], value };
  }
}

async function change(file: string, how: (book: Book) => void, to = file): Promise<void> {
  const book = await readXlsx(await readFile(file));
  how(book);
  await writeFile(to, await writeXlsx(book));
}

const fill = (file: string, answers: Readonly<Record<string, Answer>>, to = file): Promise<void> =>
  change(file, (book) => type(book, answers), to);

/** All three filled in, all right. */
async function fillAll(): Promise<void> {
  for (const [index, name] of NAMES.entries())
    await fill(sheetAt(`${index + 1}-${name.replace(" ", "-")}.xlsx`), keyOf(named(name)));
}

const FULL = 14;
const withOut = (answers: Record<string, Answer>, ...keys: string[]): Record<string, Answer> =>
  Object.fromEntries(Object.entries(answers).filter(([key]) => !keys.includes(key)));
const pick = (answers: Record<string, Answer>, ...keys: string[]): Record<string, Answer> =>
  Object.fromEntries(Object.entries(answers).filter(([key]) => keys.includes(key)));

/** Moves everything from a row on down, or from a column on to the right, names and rules with it. */
function insert(book: Book, what: "row" | "column", before: number): void {
  const moved = (where: string): string =>
    where.replace(/[A-Z]+\d+/g, (one) => {
      const place = parseAddress(one)!;
      return what === "row"
        ? address(place.row >= before ? place.row + 1 : place.row, place.column)
        : address(place.row, place.column >= before ? place.column + 1 : place.column);
    });
  for (const sheet of book.sheets) {
    const shift = <T>(of: Record<string, T>): Record<string, T> =>
      Object.fromEntries(Object.entries(of).map(([where, value]) => [moved(where), value]));
    sheet.cells = shift(sheet.cells);
    for (const cell of Object.values(sheet.cells))
      if (cell.formula !== undefined) cell.formula = moved(cell.formula);
    sheet.results = shift(sheet.results);
    sheet.validations = sheet.validations.map((rule) => ({ ...rule, range: moved(rule.range) }));
    sheet.rowCount++;
    sheet.columnCount++;
  }
  (book as { names: Book["names"] }).names = book.names.map((one) => ({ ...one, range: moved(one.range) }));
}

const metresCell = async (): Promise<string> => {
  const book = await readXlsx(await readFile(sheetAt(ADA_FILE)));
  return cellOf(book, answerName("metres")).range;
};

/** A sheet of somebody's own, beside the one that was handed out. */
const otherSheet = (like: BookSheet): BookSheet => ({
  ...structuredClone(like),
  name: "Sheet1",
  cells: { A1: { value: 3 } },
  results: {},
  validations: [],
  marks: [],
});

const CHECKS: Readonly<Record<string, () => Promise<void>>> = {
  h01: async () => {
    await fillAll();
    await fill(sheetAt(ADA_FILE), { ...keyOf(ADA), metres: 1.5 }, sheetAt("1-Ada-Demonstration (1).xlsx"));
    const said = await marked();
    expect(said.text).toMatch(
      /1-Ada-Demonstration\.xlsx.*1-Ada-Demonstration \(1\)\.xlsx|\(1\)\.xlsx.*Demonstration\.xlsx/,
    );
    expect(said.text).toMatch(/differ.*question 1\b|question 1\b.*differ/i);
    expect(said.text).toMatch(/marked/);
    expect(said.code).toBe(1);
  },
  h02: async () => {
    await fillAll();
    await cp(sheetAt(ADA_FILE), sheetAt("Copy of 1-Ada-Demonstration.xlsx"));
    const said = await marked();
    expect(said.text).toMatch(/same answers/);
    expect(said.text).toContain("Copy of 1-Ada-Demonstration.xlsx");
    expect(said.points["1"]).toBe(FULL);
    expect(said.out).toMatch(/3 of 3 sheets marked/);
  },
  h03: async () => {
    await mkdir(sheetAt("sub"));
    await cp(sheetAt(ADA_FILE), sheetAt("sub", ADA_FILE));
    await fillAll();
    const said = await marked();
    expect(said.text).toMatch(/sub.*1-Ada-Demonstration\.xlsx.*(no answer|unanswered|empty)/i);
    expect(said.points["1"]).toBe(FULL);
    // The same where the empty one comes first.
    await rename(sheetAt(ADA_FILE), sheetAt("z.xlsx"));
    await rename(sheetAt("sub", ADA_FILE), sheetAt(ADA_FILE));
    expect((await marked()).points["1"]).toBe(FULL);
  },
  h04: async () => {
    const key = keyOf(ADA);
    await fill(sheetAt(ADA_FILE), withOut(key, "metres", "lossLow"), sheetAt("a.xlsx"));
    await fill(sheetAt(ADA_FILE), pick(key, "metres", "lossLow"), sheetAt("b.xlsx"));
    await rm(sheetAt(ADA_FILE));
    const said = await marked();
    expect(said.text).toMatch(/a\.xlsx/);
    expect(said.text).toMatch(/b\.xlsx/);
    expect(said.text).toMatch(/differ/);
    expect(said.points["1"]).not.toBe(FULL);
  },
  h05: async () => {
    await fillAll();
    await rename(sheetAt(ADA_FILE), sheetAt("1-Ada-Demonstration.ods"));
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.ods: .*\.xlsx/);
    expect(said.text).toMatch(/1 Ada Demonstration.*1-Ada-Demonstration\.ods/);
    expect(said.points["1"]).toBeUndefined();
    expect(said.code).toBe(1);
  },
  h06: async () => {
    await fillAll();
    await rm(sheetAt(ADA_FILE));
    await writeFile(sheetAt("1-Ada-Demonstration.csv"), "1,2,3\n");
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.csv: .*\.xlsx/);
    expect(said.text).toMatch(/1 Ada Demonstration.*1-Ada-Demonstration\.csv/);
    expect(said.points["1"]).toBeUndefined();
  },
  h07: async () => {
    await fillAll();
    await rm(sheetAt(ADA_FILE));
    await writeFile(sheetAt("1-Ada-Demonstration.xls"), Buffer.from("d0cf11e0a1b11ae1", "hex"));
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xls: .*\.xlsx/);
    expect(said.points["1"]).toBeUndefined();
  },
  h08: async () => {
    await fillAll();
    await rename(sheetAt(ADA_FILE), sheetAt("1-Ada-Demonstration.xlsm"));
    await rename(sheetAt("2-Ben-Demonstration.xlsx"), sheetAt("2-Ben-Demonstration.xltx"));
    const said = await marked();
    expect(said.points["1"] === FULL || /Demonstration\.xlsm: .*\.xlsx/.test(said.text)).toBe(true);
    expect(said.points["2"] === FULL || /Demonstration\.xltx: .*\.xlsx/.test(said.text)).toBe(true);
  },
  h09: async () => {
    for (const name of ["Ada.numbers", "Ada.pdf", "Ada.docx"]) await writeFile(sheetAt(name), "x");
    const said = await marked();
    for (const name of ["Ada.numbers", "Ada.pdf", "Ada.docx"])
      expect(said.text).toMatch(new RegExp(`${name}: `));
  },
  h10: async () => {
    await writeFile(sheetAt("IMG_2041.jpg"), "x");
    const said = await marked();
    expect(said.text).toMatch(/IMG_2041\.jpg: .*by hand/);
  },
  h11: async () => {
    await writeFile(sheetAt("answers.zip"), zipSync({ "a.xlsx": new Uint8Array(3) }));
    expect((await marked()).text).toMatch(/answers\.zip: .*[Uu]npack/);
  },
  h12: async () => {
    await fillAll();
    const inside = await readFile(sheetAt(ADA_FILE));
    await writeFile(sheetAt(ADA_FILE), zipSync({ [ADA_FILE]: inside }));
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xlsx: /);
    expect(said.points["1"]).toBeUndefined();
    expect(said.points["2"]).toBe(FULL);
  },
  h13: async () => {
    await fillAll();
    await rename(sheetAt(ADA_FILE), sheetAt("homework final FINAL.xlsx"));
    const said = await marked();
    expect(said.points["1"]).toBe(FULL);
    expect(said.marks["1"]).toMatch(/homework final FINAL\.xlsx/);
  },
  h14: async () => {
    await fillAll();
    await rm(sheetAt("2-Ben-Demonstration.xlsx"));
    await rename(sheetAt(ADA_FILE), sheetAt("2-Ben-Demonstration.xlsx"));
    const said = await marked();
    expect(said.points["1"]).toBe(FULL);
    expect(said.marks["1"]).toMatch(/file is named as (that of|the sheet of) 2 Ben Demonstration/);
  },
  h15: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      const { sheet, range } = cellOf(book, SHEET_TRAINEE);
      sheet.cells[range] = { ...sheet.cells[range], value: "Ada D." };
    });
    const said = await marked();
    expect(said.points["1"]).toBe(FULL);
    expect(said.marks["1"]).toMatch(/Ada D\./);
  },
  h16: async () => {
    await fillAll();
    await change(
      sheetAt(ADA_FILE),
      (book) => {
        const { sheet, range } = cellOf(book, SHEET_TRAINEE);
        sheet.cells[range] = { ...sheet.cells[range], value: "Ben Demonstration" };
      },
      sheetAt("2-Ben-Demonstration.xlsx"),
    );
    const said = await marked();
    expect(said.text).toMatch(/2-Ben-Demonstration\.xlsx/);
    expect(said.text).toMatch(/sheet of 1 Ada Demonstration/);
    expect(said.text).toMatch(/name in it is "Ben Demonstration/);
    expect(said.text).not.toMatch(/cheat/i);
  },
  h17: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      const { sheet, range } = cellOf(book, SHEET_CODE);
      delete sheet.cells[range]!.value;
    });
    expect((await marked()).text).toMatch(/1-Ada-Demonstration\.xlsx: .*code is gone.*Ada Demonstration/);
  },
  h18: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      const { sheet, range } = cellOf(book, "given_metres_1");
      sheet.cells[range] = { ...sheet.cells[range], value: 100 };
    });
    const said = await marked();
    const feet = (drawFor(trainingSetOf("cable")!, SEED, ADA).numbers as { feet: number }).feet;
    // The maker would have it marked by the figures drawn. It is refused instead, with both figures,
    // because a sheet's figures are locked: whoever changed them is to be asked first.
    expect(said.text).toMatch(new RegExp(`100.*${feet}|${feet}.*100`));
    expect(said.points["1"]).toBeUndefined();
  },
  h19: async () => {
    const cell = await metresCell();
    const beside = cell.replace("B", "C");
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, withOut(keyOf(ADA), "metres"));
      book.sheets[0]!.cells[beside] = { ...book.sheets[0]!.cells[beside], value: 66.2 };
    });
    expect((await marked()).marks["1"]).toMatch(new RegExp(`${beside}\\b.*66\\.2|66\\.2.*${beside}\\b`));
  },
  h20: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      insert(book, "row", 19);
    });
    expect((await marked()).points["1"]).toBe(FULL);
  },
  h21: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      insert(book, "column", 1);
    });
    expect((await marked()).points["1"]).toBe(FULL);
  },
  h22: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      book.sheets.push(otherSheet(book.sheets[0]!));
    });
    expect((await marked()).points["1"]).toBe(FULL);
  },
  h23: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      const [first] = book.sheets;
      first!.name = "Übung";
      (book as { names: Book["names"] }).names = book.names.map((one) => ({ ...one, sheet: "Übung" }));
      book.sheets.unshift(otherSheet(first!));
    });
    expect((await marked()).points["1"]).toBe(FULL);
  },
  h24: async () => {
    await fillAll();
    await make("cable", SEED, NAMES, "again");
    await cp(at("again", "sheets", "3-Cem-Demonstration.xlsx"), sheetAt("3-Cem-Demonstration.xlsx"));
    const said = await marked();
    expect(said.points["3"]).toBe(0);
    expect(said.marks["3"]).toMatch(/nothing answered/i);
  },
  h25: async () => {
    await fillAll();
    await rm(sheetAt("3-Cem-Demonstration.xlsx"));
    const said = await marked();
    expect(said.text).toMatch(/3 Cem Demonstration.*(no sheet|not handed in)/i);
    // The list of marks has those with marks; the others stand under Not marked, with what is printed here.
    expect(said.points["3"]).toBeUndefined();
  },
  h26: async () => {
    await fillAll();
    await writeFile(sheetAt(ADA_FILE), "");
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xlsx: .*empty/);
    expect(said.points["2"]).toBe(FULL);
  },
  h27: async () => {
    await fillAll();
    const bytes = await readFile(sheetAt(ADA_FILE));
    await writeFile(sheetAt(ADA_FILE), bytes.subarray(0, bytes.length / 2));
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xlsx: .*(damaged|cut short)/);
    expect(said.points["2"]).toBe(FULL);
  },
  h28: async () => {
    // As programs encrypt: an OLE file with the stream EncryptedPackage.
    const bytes = Buffer.alloc(2048);
    Buffer.from("d0cf11e0a1b11ae1", "hex").copy(bytes);
    Buffer.from("EncryptedPackage", "utf16le").copy(bytes, 1024);
    await writeFile(sheetAt(ADA_FILE), bytes);
    expect((await marked()).text).toMatch(/1-Ada-Demonstration\.xlsx: .*password/);
  },
  h29: async () => {
    await fillAll();
    for (const name of ["~$1-Ada-Demonstration.xlsx", ".~lock.1-Ada-Demonstration.xlsx#"])
      await writeFile(sheetAt(name), "x");
    const said = await marked();
    expect(said.out).toMatch(/3 of 3 sheets marked/);
    expect(said.text).not.toMatch(/not marked/);
  },
  h30: async () => {
    await fillAll();
    await mkdir(sheetAt("__MACOSX"));
    for (const name of [".DS_Store", "Thumbs.db", "desktop.ini", "__MACOSX/._1-Ada-Demonstration.xlsx"])
      await writeFile(sheetAt(name), "x");
    const said = await marked();
    expect(said.code).toBe(0);
    expect(said.err).toBe("");
  },
  h31: async () => {
    await fillAll();
    await rename(at("class", "trainer-key.xlsx"), sheetAt("trainer-key.xlsx"));
    const said = await marked();
    expect(said.out).toMatch(/3 of 3 sheets marked/);
    expect(said.text).toMatch(/trainer-key\.xlsx.*(seen|open)/);
  },
  h32: async () => {
    await make("supply", SEED, NAMES, "other");
    await cp(at("other", "sheets", ADA_FILE), sheetAt(ADA_FILE));
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xlsx: .*"?Supply volts.*Cable loss and slope/);
    expect(said.points["1"]).toBeUndefined();
  },
  h33: async () => {
    await make("cable", 8, NAMES, "other");
    await cp(at("other", "sheets", ADA_FILE), sheetAt(ADA_FILE));
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xlsx: .*code.*seed/);
    expect(said.points["1"]).toBeUndefined();
  },
  h34: async () => {
    await change(
      sheetAt(ADA_FILE),
      (book) => void ((book as { templateVersion: string }).templateVersion = "0"),
    );
    const said = await marked();
    expect(said.text).toMatch(/1-Ada-Demonstration\.xlsx: .*version 0.*version \d/);
  },
  h35: async () => {
    await make("cable", SEED, [...NAMES, "Dan Demonstration"], "other");
    await cp(at("other", "sheets", "4-Dan-Demonstration.xlsx"), sheetAt("4-Dan-Demonstration.xlsx"));
    expect((await marked()).text).toMatch(/4-Dan-Demonstration\.xlsx: .*Dan Demonstration.*not on its list/);
  },
  h36: async () => {
    const names = [...NAMES, NAMES[0]!];
    await rm(at("class"), { recursive: true });
    await make("cable", SEED, names);
    await fill(sheetAt(ADA_FILE), keyOf(ADA));
    await fill(sheetAt("4-Ada-Demonstration.xlsx"), keyOf(named(NAMES[0]!, 2)));
    const said = await marked();
    expect([said.points["1"], said.points["4"]]).toEqual([FULL, FULL]);
  },
  h37: async () => {
    await rm(at("class"), { recursive: true });
    await make("cable", SEED, ["Łukasz Żółć".normalize("NFD")]);
    const [file] = await readdir(sheetAt());
    await fill(sheetAt(file!), keyOf(named("Łukasz Żółć".normalize("NFC"))));
    await rename(sheetAt(file!), sheetAt(file!.normalize("NFD")));
    const said = await marked();
    expect(said.points["1"]).toBe(FULL);
    expect(said.code).toBe(0);
  },
  h38: async () => {
    await fillAll();
    for (const [one, file] of [
      ["Ada", ADA_FILE],
      ["Ben", "2-Ben-Demonstration.xlsx"],
    ] as const) {
      await mkdir(sheetAt(one));
      await rename(sheetAt(file), sheetAt(one, file));
    }
    expect((await marked()).out).toMatch(/3 of 3 sheets marked/);
  },
  h39: async () => {
    await mkdir(at("empty"));
    const said = await runCommand([
      "mark",
      at("empty"),
      "--key",
      at("class", "trainer-key.xlsx"),
      "--out",
      at("m.xlsx"),
    ]);
    expect(`${said.out}\n${said.err}`).toMatch(/[Nn]o sheet.*empty/);
    expect(said.out).not.toMatch(/NaN/);
  },
  h40: async () => {
    const said = await marked();
    expect(said.text).toMatch(/[Nn]one .*answer.*handed out/);
    expect(said.points).toEqual({ "1": 0, "2": 0, "3": 0 });
  },
  h41: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      const [sheet] = book.sheets;
      const row = parseAddress(cellOf(book, answerName("metres")).range)!.row - 1;
      sheet!.cells[address(row, 6)] = { ...sheet!.cells[address(row, 6)], value: 66.2 };
    });
    const said = await marked();
    expect(said.points["1"]).toBe(0);
    expect(said.marks["1"]).toMatch(/nothing answered/i);
    expect(said.marks["1"]).toMatch(/G\d+.*66\.2/);
  },
  h42: async () => {
    const key = keyOf(ADA);
    const keys = Object.keys(key);
    await fill(
      sheetAt(ADA_FILE),
      Object.fromEntries(keys.slice(1).map((one, index) => [one, key[keys[index]!]!])),
    );
    expect((await marked()).marks["1"]).toMatch(/one question off/);
  },
  h43: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      const { sheet, range } = cellOf(book, answerName("metres"));
      sheet.cells[range] = { ...sheet.cells[range], note: "66.2" };
    });
    expect((await marked()).marks["1"]).toMatch(/note|comment/);
  },
  h44: async () => {
    // A merge keeps the value of its first cell, and a book leaves merges out.
    await fillAll();
    expect((await marked()).points["1"]).toBe(FULL);
  },
  h45: async () => {
    await fillAll();
    const said = await runCommand(["mark", at("class"), "--out", at("nowhere", "marks.xlsx")]);
    expect(said.code).toBe(2);
    expect(said.err).toMatch(/no folder .*nowhere/);
  },
  h46: async () => {
    await fillAll();
    await runCommand(["mark", at("class"), "--out", at("class", "marks.xlsx")]);
    const said = await marked();
    expect(said).toMatchObject({ code: 0, err: "" });
    expect(said.out).toMatch(/3 of 3 sheets marked/);
  },
  h47: async () => {
    await fillAll();
    await rename(sheetAt("2-Ben-Demonstration.xlsx"), at("late.xlsx"));
    const before = await marked();
    await rename(at("late.xlsx"), sheetAt("2-Ben-Demonstration.xlsx"));
    const after = await marked();
    expect([after.marks["1"], after.marks["3"]]).toEqual([before.marks["1"], before.marks["3"]]);
  },
  h48: async () => {
    await change(sheetAt(ADA_FILE), (book) => {
      type(book, keyOf(ADA));
      const { sheet, range } = cellOf(book, answerName("metres"));
      const look = sheet.cells[range]!.look;
      sheet.cells[range] = { formula: "B15*B16", ...(look !== undefined && { look }) };
    });
    const said = await marked();
    expect(said.marks["1"]).toMatch(/1: .*formula.*(open|save)/i);
    expect(said.points["1"]).toBe(FULL - 2);
    expect(said.code).toBe(1);
  },
  h49: async () => {
    await rm(at("class"), { recursive: true });
    const names = ["=HYPERLINK(1)", "..\\..\\x.xlsx"];
    await make("cable", SEED, names);
    const said = await marked();
    expect(said.marks["1"]).toMatch(/=HYPERLINK\(1\)/);
    expect(said.marks["2"]).toMatch(/\.\.\\\.\.\\x\.xlsx/);
  },
  h50: async () => {
    await fillAll();
    await change(sheetAt(ADA_FILE), (book) => {
      const [sheet] = book.sheets;
      for (let row = 100; row < 30_000; row++) sheet!.cells[`A${row}`] = { look: 1 };
    });
    const began = Date.now();
    const said = await marked();
    expect(Date.now() - began).toBeLessThan(30_000);
    expect(said.points["1"] === FULL || /1-Ada-Demonstration\.xlsx: .*(most|rows)/.test(said.text)).toBe(
      true,
    );
  },
};

test.each(situations.map(({ id, situation }) => [id, situation] as const))("%s %s", async (id) => {
  await CHECKS[id]!();
});
