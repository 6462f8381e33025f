/**
 * Gnumeric as one more engine for the formulas that are stored plainly. Like
 * Excel, and unlike the desk's engine, it cuts a range in such a formula down
 * to the formula's own row where one value is wanted, so that a formula which
 * ought to be stored as an array shows here.
 *
 * Arrays are left to the other engines: Gnumeric hands whole columns to fewer
 * functions in them than Excel does. So they stand as values in these files,
 * as do our own calls.
 */
import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { callsUs } from "../../../src/formula/callsUs";
import { treeOf } from "../../../src/formula/parse";
import { nodesIn } from "../../../src/formula/tree";
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { isBookError, type Book, type BookResult } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { templates } from "../../../src/workbooks/templates";
import { bookOf, emptySheet } from "../../support/books";
import { generatedJob } from "../../support/generatedJobs";
import { withGnumeric } from "../../support/tools";
import { tries } from "../../support/tries";

const run = promisify(execFile);
const FACTS = { now: new Date("2026-03-05T14:07:59Z"), version: "9.8.7" };
const MOST_OFF = 1e-9;

/** @returns the file as Gnumeric computes it */
async function byGnumeric(program: string, bytes: Uint8Array): Promise<Book> {
  const folder = await mkdtemp(path.join(tmpdir(), "rigsheet-gnumeric-"));
  try {
    const [from, to] = [path.join(folder, "from.xlsx"), path.join(folder, "to.xlsx")];
    await writeFile(from, bytes);
    await run(program, ["--recalc", from, to]);
    return await readXlsx(await readFile(to));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/**
 * In a SUMPRODUCT Gnumeric hands columns to operators only, and Excel to
 * functions too (seen with LEFT, RIGHT, TRIM and ISERROR; Excel's classes of
 * parameters: tests/fixtures/excel/parameter-classes.json).
 */
function isBeyondGnumeric(formula: string): boolean {
  const nodes = [...nodesIn(treeOf(formula)!)];
  return nodes.some(
    (node) =>
      node.kind === "call" &&
      node.name.toUpperCase() === "SUMPRODUCT" &&
      node.args.some((arg) => [...nodesIn(arg)].some(({ kind }) => kind === "call")),
  );
}

/** The book with nothing left to compute but its plain formulas. */
function plainOnly(computed: Book): { book: Book; left: number } {
  const book = structuredClone(copyOf(computed, "office", FACTS));
  let left = 0;
  for (const sheet of book.sheets)
    for (const [at, cell] of Object.entries(sheet.cells)) {
      if (cell.formula === undefined) continue;
      if (cell.spill || callsUs(cell.formula) || isBeyondGnumeric(cell.formula)) {
        delete cell.formula;
        delete cell.spill;
        cell.value = sheet.results[at] as never;
      } else left++;
    }
  return { book, left };
}

const isSame = (one: BookResult | undefined, other: BookResult | undefined): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= MOST_OFF * Math.max(1, Math.abs(one))
    : shown(one) === shown(other);

/** Of an error the code: its sentence is ours. */
const shown = (result: BookResult | undefined): string =>
  isBookError(result) ? result.error : JSON.stringify(result ?? "");

/** Each plain formula of which Gnumeric says something else, and how many there are. */
async function compared(program: string, computed: Book): Promise<{ differ: string[]; count: number }> {
  const { book, left } = plainOnly(computed);
  const theirs = await byGnumeric(program, await writeXlsx(book, { frozen: true }));
  const differ = book.sheets.flatMap((sheet) => {
    const { results } = theirs.sheets.find(({ name }) => name === sheet.name)!;
    return Object.entries(sheet.cells).flatMap(([at, { formula }]) =>
      formula === undefined || isSame(sheet.results[at], results[at])
        ? []
        : [`${sheet.name}!${at} =${formula}: ${shown(sheet.results[at])}, Gnumeric ${shown(results[at])}`],
    );
  });
  return { differ, count: left };
}

/** At least so many plain formulas of each template are computed there. */
const LEAST: Readonly<Record<string, number>> = {
  "multi-room": 200,
  "single-drop": 25,
  "alignment-card": 5,
  "quote-review": 50,
  standards: 60,
};

describe.each(templates.map(({ id, demonstration, empty }) => [id, demonstration, empty] as const))(
  "%s: Gnumeric says the same of every plain formula",
  (id, demonstration, empty) => {
    for (const [what, make] of [
      ["the demonstration", demonstration],
      ["empty", empty],
    ] as const)
      withGnumeric(what, async (program) => {
        const { differ, count } = await compared(program, recalculate(make()));
        expect(differ).toEqual([]);
        expect(count).toBeGreaterThanOrEqual(LEAST[id]!);
      });
  },
);

for (let seed = 1; seed <= tries(2, 4, 40); seed++)
  withGnumeric(`generated job ${seed}`, async (program) => {
    const { differ } = await compared(program, recalculate(layOut(multiRoom, generatedJob(seed))));
    expect(differ).toEqual([]);
  });

withGnumeric(
  "a plain formula that hands a column to one value's place is cut, and found",
  async (program) => {
    const sheet = emptySheet("Own");
    sheet.rowCount = sheet.columnCount = 12;
    for (const [at, value] of Object.entries({ A1: 3, A2: -5, A3: 8 })) sheet.cells[at] = { value };
    sheet.cells.B2 = { formula: "A1:A3*2" };
    sheet.cells.D9 = { formula: "MAX(IF(A1:A3>0,A1:A3))" };
    // What an engine of arrays says.
    sheet.results = { B2: 6, D9: 8 };
    const { differ } = await compared(program, bookOf(sheet));
    expect(differ.map((line) => /!\w+/.exec(line)![0])).toEqual(["!B2", "!D9"]);
  },
);
