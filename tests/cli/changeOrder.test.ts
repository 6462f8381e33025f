/** `rigsheet compare OLD NEW --change-order`: what is written, what is refused, and in which words. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { unzipSync } from "fflate";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { order } from "../../src/workbooks/changeOrder/names";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { namedValue } from "../../src/workbooks/named";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { templateOf } from "../../src/workbooks/templates";
import { runCommand } from "../support/fakeConsole";
import { mendedGuestHouse } from "../review/cleanJobs";

let folder: string;
const at = (name: string): string => path.join(folder, name);
const written = async (name: string, book: Book): Promise<string> => {
  await writeFile(at(name), await writeXlsx(recalculate(book)));
  return at(name);
};

/** The lounge's outlet taken, as the next revision. */
function taken(more: Readonly<Record<string, number | string>> = {}): JobInputs {
  const job = mendedGuestHouse();
  job.blocks.options!.find(({ name }) => name === "second outlet in the lounge")!.chosen = "yes";
  return { ...job, fields: { ...job.fields, site_revision: 2, ...more } };
}

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-order-"));
  await written("old.xlsx", layOut(multiRoom, mendedGuestHouse()));
  await written("new.xlsx", layOut(multiRoom, taken()));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const asked = (older: string, newer: string, ...more: string[]) =>
  runCommand(["compare", at(older), at(newer), "--change-order", at("order.xlsx"), "--force", ...more]);
const read = async (): Promise<Book> => readXlsx(await readFile(at("order.xlsx")));

test("what is said of the order stands on it as it was typed; what is not is a blank to fill", async () => {
  const reason = '=HYPERLINK("http://x.invalid") <b>&';
  const { code, out } = await asked(
    "old.xlsx",
    "new.xlsx",
    ...["--number", "CO-1", "--reason", reason, "--date", "2026-11-20", "--valid-until", "2026-12-15"],
  );
  // The option is quoted at 74.00, and 20 % tax is 14.80.
  expect(out).toContain("without tax +74.00, with tax +88.80, revised total 10773.74");
  expect(code).toBe(0);
  const book = await read();
  const shown = (field: { readonly name: string }) => namedValue(book, field.name);
  expect(shown(order.number)).toBe("CO-1");
  expect(shown(order.date)).toBe(sheetDate(2026, 11, 20));
  expect(shown(order.until)).toBe(sheetDate(2026, 12, 15));
  expect(shown(order.total)).toBe(10773.74);
  const [sheet] = book.sheets;
  const cells = Object.values(sheet!.cells);
  expect(cells.some(({ value }) => value === reason)).toBe(true);
  expect(cells.filter(({ formula }) => formula !== undefined)).toEqual([]);
  expect(book.sheets).toHaveLength(1);

  expect((await asked("old.xlsx", "new.xlsx")).code).toBe(0);
  const blank = await read();
  for (const field of [order.number, order.date, order.until, order.reason])
    expect(namedValue(blank, field.name)).toBeUndefined();
  expect(blank.sheets[0]!.validations).toHaveLength(4);
});

test("nothing of the job's file goes along: no other sheet, no comment, no name of a person", async () => {
  await asked("old.xlsx", "new.xlsx");
  const parts = unzipSync(await readFile(at("order.xlsx")));
  const all = Object.values(parts)
    .map((part) => new TextDecoder().decode(part))
    .join("\n");
  expect(Object.keys(parts).filter((name) => /comments|externalLink|drawing/.test(name))).toEqual([]);
  expect(all).not.toMatch(/margin<|supplier|price_|rooms_|site_/i);
});

test.each([
  ["--date", "2026-13-01", /--date is "2026-13-01"/],
  ["--date", "20.11.2026", /--date is "20.11.2026"/],
  ["--paper", "a3", /--paper is "a3"/],
])("%s %s is refused", async (option, value, sentence) => {
  const { code, err } = await asked("old.xlsx", "new.xlsx", option, value);
  expect(err).toMatch(sentence);
  expect(code).toBe(2);
});

test("it can't end before it begins, nor go over one of the two workbooks", async () => {
  const early = await asked("old.xlsx", "new.xlsx", "--date", "2026-11-20", "--valid-until", "2026-11-19");
  expect(early.err).toContain("which is before that");
  const over = await runCommand([
    "compare",
    at("old.xlsx"),
    at("new.xlsx"),
    "--change-order",
    at("old.xlsx"),
    "--force",
  ]);
  expect(over.err).toContain("is the workbook itself");
  expect([early.code, over.code]).toEqual([2, 2]);
});

test("two files that make no order are told apart", async () => {
  await written("hostel.xlsx", layOut(multiRoom, hostel));
  await written("standards.xlsx", templateOf("standards")!.demonstration());
  await writeFile(at("cut.xlsx"), (await readFile(at("new.xlsx"))).subarray(0, 100_000));
  await writeFile(at("copy.xlsx"), await readFile(at("old.xlsx")));
  const said = async (newer: string) => {
    await rm(at("order.xlsx"), { force: true });
    const { code, err } = await asked("old.xlsx", newer);
    expect(code).toBeGreaterThan(0);
    await expect(readFile(at("order.xlsx"))).rejects.toThrow("ENOENT");
    return err;
  };
  expect(await said("hostel.xlsx")).toContain("These are two jobs, not two revisions of one: Quote number");
  expect(await said("standards.xlsx")).toContain("was not made from the template multi-room");
  expect(await said("cut.xlsx")).toContain("cut.xlsx");
  expect(await said("copy.xlsx")).toContain("are the same file");
});

test("what should be settled first keeps the order back until somebody takes it upon himself", async () => {
  await written(
    "other.xlsx",
    layOut(multiRoom, taken({ site_customer: "Second Invented Customer (demonstration)" })),
  );
  const first = await asked("old.xlsx", "other.xlsx");
  expect(first.err).toContain("is it the same job?");
  expect(first.err).toContain("No change order was written");
  expect(first.code).toBe(1);
  const again = await asked("old.xlsx", "other.xlsx", "--anyway");
  expect(again.code).toBe(0);
});

test("a total that was typed over in the later workbook is no figure to order by", async () => {
  const book = layOut(multiRoom, taken());
  const { sheet, range } = book.names.find(({ name }) => name === "quote_total")!;
  const { cells } = book.sheets.find(({ name }) => name === sheet)!;
  cells[range] = { value: 10_000 };
  await written("typed.xlsx", book);
  const { code, err } = await asked("old.xlsx", "typed.xlsx");
  expect(err).toContain("do not add up to its total");
  expect(code).toBe(1);
});
