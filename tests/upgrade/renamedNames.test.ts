/**
 * Calculated cells have other names and labels since versions 4 (the estimate) and 3 (the others): an older workbook is
 * still read, reviewed, compared and upgraded by what it has.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { compareJobs } from "../../src/compare/compareJobs";
import { parseRange } from "../../src/formula/address";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { blankBook } from "../../src/review/blankBook";
import { namedCells } from "../../src/review/namedCells";
import { review } from "../../src/review/review";
import { upgrade, type Upgrade } from "../../src/upgrade/upgrade";
import type { Book } from "../../src/workbooks/book";
import { isGivenUp } from "../../src/workbooks/multiRoom/givenUp";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { todaysName, withTodaysNames } from "../../src/workbooks/renamedNames";
import { templates } from "../../src/workbooks/templates";
import { formulaRecord } from "../../src/workbooks/versionFormulas";
import { inputsOf } from "../../src/workbooks/typed/inputsOf";

const read = async (name: string, commit = "c8eb73d"): Promise<Book> =>
  readXlsx(readFileSync(path.join(__dirname, "../fixtures/earlier", `${name}-demonstration-${commit}.xlsx`)));
const upgraded = (book: Book): Upgrade => upgrade(book, recalculate) as Upgrade;

/** Puts something into a name's cell, counted from its top. */
function set(book: Book, name: string, index: number, value: number | string): void {
  const { sheet, cell } = namedCells(book, name)[index]!.place;
  const { cells, results } = book.sheets.find((one) => one.name === sheet)!;
  const { look } = cells[cell] ?? {};
  cells[cell] = { ...(look !== undefined && { look }), value };
  delete results[cell];
}

/** Workings that no cell of today stands for: since version 5 the functions of the distribution do them. */
const GONE = new RegExp(
  [
    "^branches_(?:power|trunk|own|ohms|stops|ones|place|stretch|forks|loss|sum)(?:_|$)",
    "^heads_(?:capacity|stopped|longest|source|bought|feed|shared|greatest|offered|supplied|draw|kind|via|lead|run|level|ohms|along|path|stops|place|together|amps|legs|cables|lengths)(?:_|$)",
    "^rooms_(?:loss|check_high|extremes)(?:_|$)",
    "^passives_(?:pass|port|through)(?:$|_low$|_high$)",
    "^plates_loss$",
    // One aim of the job is a row for each dish.
    "^(?:align_(?:aim_|tilt$)|pair_(?:aim|separation|tilt)$)",
  ].join("|"),
);

/** The first version of a template has none before it. */
const withEarlier = templates.filter(({ definition }) => Number(definition.version) > 1);

test.each(withEarlier.map(({ id, definition }) => [id, definition] as const))(
  "%s: every name of the version before is today's, renamed, given up, or known to be gone; inputs keep theirs",
  (id, definition) => {
    const today = new Set(blankBook(definition).names.map(({ name }) => name));
    const inputs = inputsOf(definition);
    const before = String(Number(definition.version) - 1);
    const names = Object.keys(formulaRecord[id]![before]!);
    expect(names.length).toBeGreaterThan(30);
    const lost = names.filter((name) => !today.has(todaysName(name) ?? name) && !isGivenUp(name));
    expect(lost.filter((name) => !GONE.test(name))).toEqual([]);
    for (const name of names.filter((one) => todaysName(one) !== undefined)) {
      expect([name, today.has(name)]).toEqual([name, false]);
      expect([name, inputs.has(todaysName(name)!)]).toEqual([name, false]);
    }
  },
);

test("no earlier version had a name of today's beside the one that became it", () => {
  for (const [id, versions] of Object.entries(formulaRecord)) {
    const had = Object.values(versions).map((names) => Object.keys(names));
    if (id === "multi-room")
      expect(new Set(had.flat().flatMap((name) => todaysName(name) ?? [])).size).toBeGreaterThan(50);
    for (const names of had) {
      const own = new Set(names);
      expect(names.filter((name) => own.has(todaysName(name) ?? ""))).toEqual([]);
    }
  }
});

test("today's names stand beside the old ones, which the workbook's own formulas go by", async () => {
  const book = await read("multi-room");
  const both = withTodaysNames(book);
  expect(namedColumn(both, "cables_bought_sum")).toEqual(namedColumn(book, "buycables_sum"));
  expect(namedColumn(both, "rooms_check_level")).toEqual(namedColumn(book, "rooms_fits_enough"));
  expect(namedValue(both, "price_line_fittings")).toBe(namedValue(book, "price_line_outlets"));
  expect(both.names.filter(({ name }) => name === "buycables_sum")).toHaveLength(1);
  expect(withTodaysNames(both)).toBe(both);
  const today = blankBook(multiRoom);
  expect(withTodaysNames(today)).toBe(today);
});

test.each([
  ["3", "c8eb73d"],
  ["4", "455bc4c"],
  ["5", "52c12b3"],
])("version %s is upgraded whole, at the same price", async (from, commit) => {
  const made = upgraded(await read("multi-room", commit));
  expect(made).toMatchObject({ from, to: multiRoom.version, notCarried: [], begun: [] });
  const [total] = made.figures.knownBy;
  expect(total).toMatchObject({ name: "quote_total", difference: 0 });
  expect(made.figures.moved).toEqual([]);
});

test("a reason for a 0 goes along with its figure, which has another label now", async () => {
  const book = await read("multi-room");
  set(book, "site_run_tolerance", 0, 0);
  const free = namedColumn(book, "onpurpose_what").findIndex((value, at) => at > 0 && value === undefined);
  set(book, "onpurpose_what", free, "Lengths may be off by");
  set(book, "onpurpose_why", free, "measured on site");
  const made = upgraded(book);
  expect(made.notCarried).toEqual([]);
  expect(namedColumn(made.book, "onpurpose_what")).toContain("Length tolerance ±");
  const noted = (of: Book): string => {
    const { sheet, range } = of.names.find(({ name }) => name === "checks_result")!;
    const { cells, results } = of.sheets.find(({ name }) => name === sheet)!;
    const row = Object.entries(cells).find(([, { value }]) => value === "Figures of 0 without a reason")![0];
    return String(results[`${"ABCDE"[parseRange(range)!.left + 1]}${row.slice(1)}`]);
  };
  expect(noted(made.book)).not.toContain("Length tolerance");
  // The same without the reason is noted.
  set(book, "onpurpose_what", free, "something else");
  expect(noted(upgraded(book).book)).toContain("Length tolerance ±");
});

test("an answer that has another word now is carried over, and no review calls it wrong", async () => {
  const book = await read("quote-review");
  expect(namedColumn(book, "asked_answer")).toContain("not here");
  const made = upgraded(book);
  expect(made.notCarried).toEqual([]);
  expect(namedColumn(made.book, "asked_answer")).toContain("not applicable");
  expect(review(book, recalculate).filter(({ message }) => /not here/.test(message))).toEqual([]);
});

test("a sum typed over under its old name is told as that, and compared as that", async () => {
  const [book, sound] = [await read("multi-room"), await read("multi-room")];
  set(book, "buycables_sum", 2, 1);
  const told = upgraded(book).notCarried.map(({ why }) => why);
  expect(told).toEqual([
    "A value typed over a calculated cell: the template's own formula stands there again.",
  ]);
  expect(review(book, recalculate)).toContainEqual(expect.objectContaining({ rule: "formula typed over" }));
  const changes = (older: Book, newer: Book) =>
    compareJobs(multiRoom, older, newer, recalculate).changes.filter(({ kind }) => kind === "formula");
  // Of two versions, formulas that were only renamed are no change.
  expect(changes(sound, upgraded(sound).book)).toEqual([]);
});
