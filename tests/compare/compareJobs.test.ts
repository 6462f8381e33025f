/** Two revisions of the demonstration: what changed, and that the parts of the price add up to the difference. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Comparison } from "../../src/compare/compareJobs";
import { money } from "../../src/compare/words";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { bookOf, emptySheet } from "../support/books";
import { runCommand } from "../support/fakeConsole";
import { referencePrice, type Job } from "../support/referencePrice";

type Row = Readonly<Record<string, number | string>>;

let folder: string;
const at = (name: string): string => path.join(folder, name);
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-compare-"));
  await writeFile(at("old.xlsx"), await writeXlsx(layOut(multiRoom, guestHouse)));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const rows = (job: JobInputs, block: string): readonly Row[] => job.blocks![block]!;
const withRows = (
  job: JobInputs,
  block: string,
  change: (rows: readonly Row[]) => readonly Row[],
): JobInputs => ({
  ...job,
  blocks: { ...job.blocks, [block]: change(rows(job, block)) },
});
const withField = (job: JobInputs, name: string, value: number | string): JobInputs => ({
  ...job,
  fields: { ...job.fields, [name]: value },
});
async function compared(job: JobInputs, more: string[] = []) {
  await writeFile(at("new.xlsx"), await writeXlsx(layOut(multiRoom, job)));
  const { code, out } = await runCommand(["compare", at("old.xlsx"), at("new.xlsx"), "--json", ...more]);
  return { code, comparison: JSON.parse(out) as Comparison };
}
/** The total of an independent pricing, in cents. */
const referenceCents = (job: JobInputs): number =>
  Math.round(Number(referencePrice(job as unknown as Job).total) * 100);

test("the parts add up to the difference, which is that of the reference prices", async () => {
  const [cable] = rows(guestHouse, "cables");
  const [first, second] = rows(guestHouse, "rooms");
  let job = withField(guestHouse, "site_margin", 0.3);
  job = withRows(job, "cables", (all) => all.map((row) => (row === cable ? { ...row, price: 45 } : row)));
  job = withRows(job, "rooms", (all) => [
    ...all
      .filter((row) => row !== second)
      .map((row) => (row === first ? { ...row, run: Number(row.run) + 7 } : row)),
    { ...first!, outlet: "new-1", room: "attic" },
  ]);
  const { code, comparison } = await compared(job);
  expect(code).toBe(1);
  expect(comparison.changes.map(({ kind, row }) => [kind, row])).toEqual([
    ["field", expect.any(String)],
    ["changed", cable!.name],
    ["added", "new-1"],
    ["changed", first!.outlet],
    ["removed", second!.outlet],
  ]);
  expect(comparison.olderCents).toBe(referenceCents(guestHouse));
  expect(comparison.newerCents).toBe(referenceCents(job));
  expect(comparison.steps.map(({ changes }) => changes)).toEqual([[0], [1], [2], [3], [4]]);
  expect(comparison.steps.reduce((sum, { cents }) => sum + cents, 0)).toBe(comparison.differenceCents);
  expect(comparison.differenceCents).toBe(referenceCents(job) - referenceCents(guestHouse));
  // The first step alone, priced by the reference.
  expect(comparison.steps[0]!.totalCents).toBe(referenceCents(withField(guestHouse, "site_margin", 0.3)));
  console.info(
    comparison.steps.map(({ what, cents }) => `${money(cents, true).padStart(10)}  ${what}`).join("\n") +
      `\n${money(comparison.differenceCents!, true).padStart(10)}  together`,
  );
});

test("rows in another order are no change", async () => {
  const turned = withRows(
    withRows(guestHouse, "rooms", (all) => [...all].reverse()),
    "cables",
    (all) => [...all.slice(1), all[0]!],
  );
  const { code, comparison } = await compared(turned);
  expect(comparison).toMatchObject({ changes: [], differenceCents: 0, steps: [] });
  expect(code).toBe(0);
});

test("an outlet under another name is renamed, not removed and added", async () => {
  const [first] = rows(guestHouse, "rooms");
  const job = withRows(guestHouse, "rooms", (all) =>
    all.map((row) => (row === first ? { ...row, outlet: "renamed" } : row)),
  );
  const { comparison } = await compared(job);
  expect(comparison.changes).toMatchObject([
    {
      kind: "renamed",
      row: first!.outlet,
      cells: [{ label: "Outlet", before: first!.outlet, after: "renamed" }],
    },
  ]);
  expect(comparison.differenceCents).toBe(0);
});

test("a part under a new name is priced together with the rows that name it", async () => {
  const named = (row: Row): Row => ({ ...row, ...(row.cable === "indoor drop" && { cable: "house drop" }) });
  let job = withRows(guestHouse, "cables", (all) =>
    all.map((row) => (row.name === "indoor drop" ? { ...row, name: "house drop", price: 50 } : row)),
  );
  for (const block of ["rooms", "branches", "heads"]) job = withRows(job, block, (all) => all.map(named));
  const { comparison } = await compared(job);
  expect(comparison.steps.reduce((sum, { cents }) => sum + cents, 0)).toBe(comparison.differenceCents);
  expect(comparison.differenceCents).toBe(referenceCents(job) - referenceCents(guestHouse));
});

test("a new price list: more changes than are priced one by one are priced by table", async () => {
  const dearer = (all: readonly Row[]): readonly Row[] =>
    all.map((row) => ({ ...row, price: Number(row.price) + 1 }));
  let job = guestHouse;
  for (const block of ["cables", "passives", "units", "plates"]) job = withRows(job, block, dearer);
  job = withRows(job, "rooms", (all) =>
    Array.from({ length: 3 }, (_, copy) =>
      all.map((row) => (copy === 0 ? row : { ...row, outlet: `${row.outlet}+${copy}` })),
    ).flat(),
  );
  const { comparison } = await compared(job);
  expect(comparison.changes.length).toBeGreaterThan(60);
  expect(comparison.notes).toEqual([expect.stringContaining("more than 60")]);
  expect(comparison.steps.length).toBeLessThan(10);
  expect(comparison.steps.reduce((sum, { cents }) => sum + cents, 0)).toBe(comparison.differenceCents);
  expect(comparison.differenceCents).not.toBe(0);
});

test("a formula typed over is named, and what it does to the price too", async () => {
  const book = layOut(multiRoom, guestHouse);
  const { sheet, range } = book.names.find(({ name }) => name === "price_contingency")!;
  const { cells } = book.sheets.find(({ name }) => name === sheet)!;
  cells[range] = { ...cells[range], value: 0 };
  delete cells[range].formula;
  await writeFile(at("typed.xlsx"), await writeXlsx(book));
  const { code, out } = await runCommand(["compare", at("old.xlsx"), at("typed.xlsx"), "--json"]);
  const comparison = JSON.parse(out) as Comparison;
  expect(code).toBe(1);
  expect(comparison.changes).toMatchObject([
    { kind: "formula", row: "Contingency", cells: [{ after: "0" }] },
  ]);
  const job = withField(guestHouse, "site_contingency", 0);
  expect(comparison.steps.map(({ cents }) => cents)).toEqual([
    referenceCents(job) - referenceCents(guestHouse),
  ]);
});

test("the page holds no script and no markup of the files", async () => {
  const markup = '<script>alert(1)</script><img src=x onerror="alert(2)">';
  const job = withRows(withField(guestHouse, "site_job", markup), "rooms", (all) => [
    { ...all[0]!, note: `'${markup}`, room: "\u001b[31mred" },
    ...all.slice(1),
  ]);
  await compared(job, ["--html", at("report.html")]);
  const page = await readFile(at("report.html"), "utf8");
  expect(page).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
  expect(page).not.toMatch(/<(?:script|img|link|iframe)|<[^>]*\s(?:href|src|on\w+)=/i);
  expect(page).toMatch(/<html lang="en">[\s\S]*<title>[^<]+<\/title>[\s\S]*<main>[\s\S]*<h1>/);
  const { out } = await runCommand(["compare", at("old.xlsx"), at("new.xlsx")]);
  expect(out).not.toContain("\u001b");
  expect(out).toContain("difference 0.00");
});

describe("what can't be compared", () => {
  test.each<[string, string[], RegExp]>([
    ["one file", ["old.xlsx"], /Name two workbooks/],
    ["a missing file", ["old.xlsx", "none.xlsx"], /none\.xlsx cannot be read: it does not exist/],
    ["no workbook", ["old.xlsx", "text.xlsx"], /text\.xlsx: The file is plain text/],
    ["a workbook of no template", ["foreign.xlsx", "old.xlsx"], /foreign\.xlsx was not made from a template/],
    [
      "a workbook of another template",
      ["old.xlsx", "foreign.xlsx"],
      /was not made from the template multi-room/,
    ],
    ["a report over a workbook", ["old.xlsx", "old.xlsx", "--html", "old.xlsx"], /must end in \.html/],
  ])("%s", async (_, words, sentence) => {
    await writeFile(at("text.xlsx"), "hello");
    await writeFile(
      at("foreign.xlsx"),
      await writeXlsx({ ...bookOf(emptySheet("S")), template: "constructor" }),
    );
    const { code, err } = await runCommand([
      "compare",
      ...words.map((word) => (word.startsWith("--") ? word : at(word))),
    ]);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
  });
});

test("cents are written by whole numbers", () => {
  expect([0, 5, -5, 100, 123_456_789].map((cents) => money(cents, true))).toEqual([
    "0.00",
    "+0.05",
    "-0.05",
    "+1.00",
    "+1234567.89",
  ]);
});
