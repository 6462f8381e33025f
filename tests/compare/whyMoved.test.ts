/**
 * Which changed inputs moved a cell between two revisions: the cell's value after each step is held to the reference
 * program of the tests, which works out the job with only the changes so far, and shares no code with the product.
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { sameCell } from "../../src/compare/sameCell";
import { whyMoved, type Moved } from "../../src/compare/whyMoved";
import { address } from "../../src/formula/address";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { estimate } from "../../src/workbooks/multiRoom/names";
import { placeOfName } from "../../src/workbooks/named";
import { placeIn } from "../../src/workbooks/placedBlocks";
import { bookOf, emptySheet } from "../support/books";
import { runCommand } from "../support/fakeConsole";
import { changedJob, computed, type Changes, type Row } from "../support/pictureJobs";
import { reference } from "../support/reference";
import type { Job } from "../support/reference/job";

const job = changedJob();
const rooms = job.blocks!.rooms!;
const [first, second] = rooms as [Row, Row];
const [trunk] = job.blocks!.cables! as [Row];
const SITE_TEMPERATURE = "site_hot";

const longer = (rows: readonly Row[]): readonly Row[] =>
  rows.map((row) => (row === first ? { ...row, run: Number(row.run) + 7 } : row));
const dearer = (rows: readonly Row[]): readonly Row[] =>
  rows.map((row) => (row === trunk ? { ...row, price: 45 } : row));
const hotter = { [SITE_TEMPERATURE]: Number(job.fields![SITE_TEMPERATURE]) + 10 };

/** The changes in the order in which they are applied: fields, then the blocks in the order of the sheets. */
const CHANGES: readonly Changes[] = [
  { fields: hotter },
  { fields: hotter, blocks: { cables: dearer } },
  { fields: hotter, blocks: { cables: dearer, rooms: longer } },
];
const ALL = CHANGES.at(-1)!;
const older = layOut(multiRoom, job);

/** The cell of a named column in the row of an outlet; the column's own number of the row's list. */
function cellOf(book: Book, name: string, outlet: unknown, across = 0): { sheet: string; cell: string } {
  const { sheet, zone } = placeIn(book.names)(name)!;
  const outlets = placeIn(book.names)(estimate.rooms.outlet.name)!;
  const on = book.sheets.find((one) => one.name === outlets.sheet)!;
  for (let row = zone.top; row <= zone.bottom; row++)
    if (on.cells[address(row, outlets.zone.left)]?.value === outlet)
      return { sheet, cell: address(row, zone.left + across) };
  throw new Error(`no outlet ${String(outlet)}`);
}

/** What the reference has for the first outlet's level, cold and low, and for the total. */
function referenceOf(changes: Changes): { level: number; total: number } {
  const changed = changedJob(changes);
  const cells = reference(changed as unknown as Job, computed(changes));
  const levels = cells[estimate.rooms.level.name] as readonly (readonly number[])[];
  return { level: levels[0]![0]!, total: cells[estimate.quote.total.name] as number };
}
const known = [{}, ...CHANGES].map(referenceOf);
const TOLERANCE = 1e-9;

describe("each step is what the reference works out", () => {
  const newer = computed(ALL);
  const moved = whyMoved(
    multiRoom,
    older,
    newer,
    cellOf(newer, estimate.rooms.level.name, first.outlet),
    recalculate,
  )!;

  test("a level: the price of its cable does nothing to it, its length and the heat do", () => {
    const levels = known.map(({ level }) => level);
    expect(Math.abs(Number(moved.before) - levels[0]!)).toBeLessThan(TOLERANCE);
    expect(Math.abs(Number(moved.after) - levels[3]!)).toBeLessThan(TOLERANCE);
    const wanted = [1, 2, 3].filter((step) => Math.abs(levels[step]! - levels[step - 1]!) > TOLERANCE);
    expect(moved.steps.map(({ changes }) => changes)).toEqual(wanted.map((step) => [step - 1]));
    moved.steps.forEach(({ after }, index) =>
      expect(Math.abs(Number(after) - levels[wanted[index]!]!)).toBeLessThan(TOLERANCE),
    );
    expect(moved.idle).toBe(3 - wanted.length);
    // A longer run leaves less level.
    expect(Number(moved.steps.at(-1)!.after)).toBeLessThan(Number(moved.steps.at(-1)!.before));
  });

  test("the total: each step to the cent", () => {
    const { sheet, at } = placeOfName(newer, estimate.quote.total.name)!;
    const price = whyMoved(multiRoom, older, newer, { sheet, cell: at }, recalculate)!;
    expect([price.before, price.after]).toEqual([known[0]!.total, known[3]!.total]);
    const totals = price.steps.map(({ changes, after }) => [changes[0]! + 1, after] as const);
    for (const [step, after] of totals) expect(after).toBe(known[step]!.total);
    expect(
      price.steps.reduce((sum, { before, after }) => sum + Number(after) - Number(before), 0),
    ).toBeCloseTo(known[3]!.total - known[0]!.total, 8);
  });
});

describe("a cell is found again", () => {
  const of = (changes: Changes): Book => computed(changes);
  const level = (book: Book, outlet: unknown) => cellOf(book, estimate.rooms.level.name, outlet);

  test("by its row's own name, wherever the row stands", () => {
    const turned = of({ blocks: { rooms: (rows) => [...rows].reverse() } });
    const found = sameCell(multiRoom, turned, level(turned, second.outlet))(older);
    expect(found).toEqual(level(older, second.outlet));
    expect(found).not.toEqual(level(turned, second.outlet));
  });

  test("a row that is new has none in the older job", () => {
    const grown = of({ blocks: { rooms: (rows) => [...rows, { ...first, outlet: "new-1" }] } });
    expect(sameCell(multiRoom, grown, level(grown, "new-1"))(older)).toBeUndefined();
  });

  test("of two rows with one name the first is the first, the second the second", () => {
    const twice = of({ blocks: { rooms: (rows) => [rows[0]!, rows[0]!, ...rows.slice(1)] } });
    const { sheet, cell } = level(twice, first.outlet);
    const below = cell.replace(/\d+$/, (row) => String(Number(row) + 1));
    expect(sameCell(multiRoom, twice, { sheet, cell })(older)).toEqual(level(older, first.outlet));
    expect(sameCell(multiRoom, twice, { sheet, cell: below })(older)).toBeUndefined();
    expect(sameCell(multiRoom, twice, { sheet, cell: below })(twice)).toEqual({ sheet, cell: below });
  });

  test("a field by its name; a cell that no name covers by its place", () => {
    const margin = placeOfName(older, estimate.site.margin.name)!;
    const at = { sheet: margin.sheet, cell: margin.at };
    expect(sameCell(multiRoom, older, at)(of({}))).toEqual(at);
    expect(sameCell(multiRoom, older, { sheet: "Site", cell: "Z99" })(of({}))).toEqual({
      sheet: "Site",
      cell: "Z99",
    });
  });
});

describe("rigsheet why --since", () => {
  let folder: string;
  const at = (name: string): string => path.join(folder, name);
  const newer = computed(ALL);
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), "rigsheet-moved-"));
    await writeFile(at("old.xlsx"), await writeXlsx(older));
    await writeFile(at("new.xlsx"), await writeXlsx(newer));
    await writeFile(at("other.xlsx"), await writeXlsx(bookOf(emptySheet("S"))));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));
  const { sheet, at: cell } = placeOfName(newer, estimate.quote.total.name)!;
  const since = (file: string, where: string, ...more: string[]) =>
    runCommand(["why", at("new.xlsx"), where, "--since", at(file), ...more]);

  test("the total before and now, and what moved it", async () => {
    const { code, out, err } = await since("old.xlsx", `${sheet}!${cell}`);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const [told, ...steps] = out.split("\n");
    expect(told).toBe(
      `Total (Quote ${cell}): ${known[0]!.total} in the older workbook, ${known[3]!.total} now`,
    );
    // Seven metres more come off a reel that is bought whole, and take the minutes of their route.
    const by = known.slice(1).map(({ total }, index) => total - known[index]!.total);
    expect(by.map((one) => Math.round(one * 100) !== 0)).toEqual([false, true, true]);
    const step = (of: number | undefined, what: string): unknown =>
      expect.stringMatching(new RegExp(`^ +\\+${of!.toFixed(2).replace(".", "\\.")}  ${what} changed$`));
    expect(steps).toEqual([
      step(by[1], `Parts, .*: ${String(trunk.name)}`),
      step(by[2], `Rooms, .*: ${String(first.outlet)}`),
      "1 change left it as it was.",
    ]);
  });

  test("as data", async () => {
    const { out } = await since("old.xlsx", `${sheet}!${cell}`, "--json");
    expect((JSON.parse(out) as Moved).after).toBe(known[3]!.total);
  });

  test("a date, a share and a word", async () => {
    const dated = await since("old.xlsx", `${sheet}!A1`);
    expect(dated.out).toMatch(/: “Quote” in both workbooks/);
    const margin = placeOfName(newer, estimate.site.margin.name)!;
    expect((await since("old.xlsx", `${margin.sheet}!${margin.at}`)).out).toMatch(/ % in both workbooks/);
  });

  test.each([
    ["other.xlsx", "Quote!B3", /was not made from the template multi-room as the other was/],
    ["gone.xlsx", "Quote!B3", /gone\.xlsx/],
  ])("%s", async (file, where, sentence) => {
    const { code, err } = await since(file, where);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
  });
});
