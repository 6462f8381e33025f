/** What a reviewer reads beside a template is what the workbook's file holds, as another library reads it. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { sameFormula } from "../../src/formula/sameFormula";
import { readBySomebodyElse } from "../support/readBySomebodyElse";

const folder = path.join(__dirname, "../../templates");
const listed = readdirSync(folder).filter((file) => file.endsWith(".txt"));

/** The library makes a date of what is shown as one; a sheet counts days from the end of 1899. */
const inDays = (value: unknown): unknown =>
  value instanceof Date ? (value.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000 : value;

test("a listing lies beside each template and demonstration", () => {
  const workbooks = readdirSync(folder)
    .filter((file) => file.endsWith(".xlsx") && !file.startsWith("training-"))
    .map((file) => file.replace(/xlsx$/, "txt"));
  expect(workbooks.length).toBeGreaterThan(8);
  expect(listed).toEqual(workbooks);
});

test.each(listed)("%s", async (file) => {
  const sheets = await readBySomebodyElse(readFileSync(path.join(folder, file.replace(/txt$/, "xlsx"))));
  const parts = readFileSync(path.join(folder, file), "utf8")
    .split(/^Sheet /m)
    .slice(1);
  expect(parts.map((part) => part.split("\n", 1)[0])).toEqual(sheets.map(({ name }) => name));
  let formulas = 0;
  let values = 0;
  for (const [index, part] of parts.entries()) {
    const { cells } = sheets[index]!;
    const seen = new Set<string>();
    for (const line of part.split("\n")) {
      const [at, held] = line.split("\t") as [string, string | undefined];
      // Rules and marks stand over ranges, or are told by their first word.
      if (!/^[A-Z]+\d+$/.test(at) || held === undefined) continue;
      const cell = cells.get(at);
      if (held.startsWith("=")) {
        seen.add(at);
        formulas++;
        expect([at, sameFormula(cell?.formula ?? "", held.slice(1))]).toEqual([at, true]);
      } else if (/^["\d-]|^(?:true|false)$/.test(held)) {
        seen.add(at);
        values++;
        expect([at, inDays(cell?.value)]).toEqual([at, JSON.parse(held)]);
      }
    }
    // And the other way: what the file holds stands in the listing.
    for (const [at, { formula }] of cells)
      if (formula !== undefined) expect([at, seen.has(at)]).toEqual([at, true]);
  }
  expect(formulas).toBeGreaterThan(10);
  expect(values).toBeGreaterThan(30);
});
