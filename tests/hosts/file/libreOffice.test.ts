/**
 * LibreOffice Calc as an independent program: it must find in our files what
 * we put there, calculate what is alive, and hand back what a person needs.
 */
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import type { Book } from "../../../src/workbooks/book";
import { bookOf, emptySheet, sampleBook } from "../../support/books";
import { partOf } from "../../support/parts";
import { recalculated, withLibreOffice } from "../../support/tools";

/** Saved again by LibreOffice. */
const resaved = async (file: Uint8Array, recalculate: boolean): Promise<Book> =>
  readXlsx(await recalculated(file, { to: "xlsx", recalculate }));

describe("a working workbook saved again by LibreOffice", () => {
  let book: Book;
  const sheet = (): Book["sheets"][number] => book.sheets[0]!;
  const original = sampleBook();
  const load = async (): Promise<void> => {
    book ??= await resaved(await writeXlsx(original), false);
  };

  withLibreOffice("keeps what a person typed", async () => {
    await load();
    for (const [at, { value }] of Object.entries(original.sheets[0]!.cells)) {
      expect([at, sheet().cells[at]?.value]).toEqual([at, value]);
    }
  });

  withLibreOffice("keeps our formulas, which it writes in lower case, with their ranges", async () => {
    await load();
    for (const [at, { formula, spill }] of Object.entries(original.sheets[0]!.cells)) {
      expect([at, sheet().cells[at]?.formula, sheet().cells[at]?.spill]).toEqual([at, formula, spill]);
    }
  });

  withLibreOffice("keeps names, validations, marks, protection, notes and print set-up", async () => {
    await load();
    const expected = original.sheets[0]!;
    expect(new Set(book.names)).toEqual(new Set(original.names));
    expect(new Set(sheet().validations)).toEqual(new Set(expected.validations));
    expect(sheet().marks.map(({ range, words }) => ({ range, words }))).toEqual(
      expected.marks.map(({ range, words }) => ({ range, words })),
    );
    expect(book.looks[sheet().marks[0]!.look]).toMatchObject({ bold: true, italic: true, fill: "FFC7CE" });
    expect(sheet().protected).toBe(true);
    expect(sheet().cells.A1!.note).toBe(expected.cells.A1!.note);
    expect(sheet().print).toEqual(expected.print);
    expect(book.sheets[1]!.hidden).toBe(true);
    // Of a protected sheet LibreOffice drops the tab's colour, and without a screen the frozen panes.
    expect(book.sheets[1]!.tabColor).toBe(original.sheets[1]!.tabColor);
  });

  withLibreOffice("keeps looks and which cells are unlocked", async () => {
    await load();
    const looked = (one: Book, at: string) => one.looks[one.sheets[0]!.cells[at]!.look!];
    for (const at of ["A1", "A2", "A4", "B3", "C5", "A8"]) {
      expect([at, looked(book, at)]).toEqual([at, looked(original, at)]);
    }
  });

  withLibreOffice("is still known as ours", async () => {
    await load();
    const { template, templateVersion, title } = original;
    expect(book).toMatchObject({ template, templateVersion, title });
  });
});

describe("an office copy in LibreOffice", () => {
  withLibreOffice("calculates native formulas anew after an edit, over the frozen values", async () => {
    const copy = await readXlsx(await writeXlsx(sampleBook(), { frozen: true }));
    const sheet = copy.sheets[0]!;
    // Somebody types over a frozen loss: 2.5 + 6 becomes 7 + 6, and the first verdict turns to "high".
    sheet.cells.C2 = { ...sheet.cells.C2, value: 7 };
    const again = (await resaved(await writeXlsx(copy), true)).sheets[0]!;
    expect(again.results.C5).toBe(13);
    expect(again.results.D2).toBe("high");
    expect(again.results.D5).toBe(0);
  });

  withLibreOffice("shows the stored values when nothing is calculated", async () => {
    const csv = (
      await recalculated(await writeXlsx(sampleBook(), { frozen: true }), { to: "csv", recalculate: false })
    ).toString();
    expect(csv.split("\n").slice(1, 3)).toEqual(["=Lobby,12.5,2.50,ok", "101,30.0,6.00,"]);
  });

  withLibreOffice("resolves a name in a formula", async () => {
    const book = bookOf({
      ...emptySheet("It's 2 rooms"),
      cells: { A1: { value: 2 }, A2: { value: 3 }, B1: { formula: "SUM(runs)" } },
    });
    book.names = [{ name: "runs", sheet: "It's 2 rooms", range: "A1:A2" }];
    expect((await resaved(await writeXlsx(book), true)).sheets[0]!.results.B1).toBe(5);
  });

  withLibreOffice("prints to PDF", async () => {
    const pdf = await recalculated(await writeXlsx(sampleBook(), { sealed: true }), { to: "pdf" });
    expect(pdf.subarray(0, 5).toString("latin1")).toBe("%PDF-");
  });
});

describe("text that must never become a formula", () => {
  const texts = [
    "=1+1",
    "+49",
    "-5",
    "@x",
    "\t=1",
    "=cmd|' /C calc'!A0",
    " lead",
    "trail ",
    "a\nb",
    "_x000D_",
    "📡",
    "#N/A",
    "007",
    "'q",
  ];
  withLibreOffice("is text in LibreOffice too, and comes back as it was", async () => {
    const cells = Object.fromEntries(texts.map((value, row) => [`A${row + 1}`, { value }]));
    const file = await writeXlsx(bookOf({ ...emptySheet("S"), cells }));
    const out = await recalculated(file, { to: "xlsx" });
    expect(partOf(out, "xl/worksheets/sheet1.xml")).not.toContain("<f");
    const { cells: read } = (await readXlsx(out)).sheets[0]!;
    expect(texts.map((_, row) => read[`A${row + 1}`]?.value)).toEqual(texts);
  });
});
