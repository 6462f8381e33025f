/** Office copies and sealed copies: alive where they can be, frozen and locked where they can't. */
import { roundmoney } from "../../../src/functions/estimate/roundmoney";
import { sellprice } from "../../../src/functions/estimate/sellprice";
import { totalswith } from "../../../src/functions/estimate/totalswith";
import { window } from "../../../src/functions/signal/window";
import { copyOf, type CopyFacts } from "../../../src/hosts/file/copy/copyOf";
import { nativeEquivalent } from "../../../src/hosts/file/copy/nativeEquivalent";
import { officeBook } from "../../../src/hosts/file/copy/officeBook";
import { readAreas } from "../../../src/formula/readAreas";
import { ERROR_WORD } from "../../../src/hosts/file/copy/sealedBook";
import { writeCopy } from "../../../src/hosts/file/copy/writeCopy";
import { FileTrouble } from "../../../src/hosts/file/fileTrouble";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { address, parseRange, type Zone } from "../../../src/formula/address";
import { inputZone, isBookError, type Book } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedRows, namedValue } from "../../../src/workbooks/named";
import { templates } from "../../../src/workbooks/templates";
import { bookOf, emptySheet } from "../../support/books";
import { partOf, partsOf } from "../../support/parts";
import { referencePrice, type Job } from "../../support/referencePrice";
import { RULES, shareOf, taxByDecimal, tiesAt, USUAL_RATES } from "../../support/usualRates";
import { recalculated, withLibreOffice } from "../../support/tools";

const FACTS: CopyFacts = { now: new Date("2026-03-05T14:07:59Z"), version: "9.8.7" };
const computed = recalculate(layOut(multiRoom, guestHouse));

type Rows = Record<string, Record<string, number | string>[]>;
const changed = (
  change: (fields: Record<string, number | string>, blocks: Rows) => void,
): Required<JobInputs> => {
  const copy = JSON.parse(JSON.stringify(guestHouse)) as {
    fields: Record<string, number | string>;
    blocks: Rows;
  };
  change(copy.fields, copy.blocks);
  return copy;
};

const zoneOf = (range: string): Zone => parseRange(range)!;
/** Types a value into a named cell, or into a row of a block's column. */
function type(book: Book, name: string, value: number | string, row?: number): void {
  const { sheet, range } = book.names.find((one) => one.name === name)!;
  const { top, left } = zoneOf(range);
  const at = address(row === undefined ? top : top + 1 + row, left);
  const { cells } = book.sheets.find((one) => one.name === sheet)!;
  cells[at] = { ...cells[at], value };
}
const cellAt = (book: Book, sheet: string, at: string) =>
  book.sheets.find(({ name }) => name === sheet)!.cells[at];
const aboutLines = (book: Book): string[] =>
  Object.entries(book.sheets.find(({ name }) => name.startsWith("About"))!.cells).flatMap(
    ([at, { value }]) => (at.startsWith("A") && typeof value === "string" ? [value.trim()] : []),
  );

describe("an office copy", () => {
  const office = copyOf(computed, "office", FACTS);
  const { frozen, locked } = officeBook(computed);

  test("says on About what it is, when and by what it was made, and what is frozen and locked", () => {
    const text = aboutLines(office).join(" ");
    expect(text).toContain("Copy without add-in, made 2026-03-05 14:07 UTC by Rigsheet 9.8.7.");
    expect(text).toMatch(/Frozen on Rooms: [^.]*Head unit; [^.]*Level/);
    expect(text).toMatch(/Frozen on Materials: [^.]*To buy/);
    expect(text).toMatch(/Locked on Rooms: [^.]*Run/);
    expect(text).toMatch(/Italic is frozen/);
    expect(text).not.toMatch(/Frozen on Price/);
    // Said at the top too, where a reader begins.
    expect(String(cellAt(office, "About", "A3")!.value)).toMatch(/^Copy without add-in, made .* See the end/);
    expect(zoneOf(office.sheets[0]!.print!.area!).bottom).toBeGreaterThan(
      zoneOf(computed.sheets[0]!.print!.area!).bottom,
    );
  });

  test("every frozen cell is italic and locked; every locked input too, without its box and its rule", () => {
    expect(frozen.length).toBeGreaterThan(10);
    for (const { sheet, zone } of [...frozen, ...locked]) {
      for (let row = zone.top; row <= zone.bottom; row++) {
        const look = office.looks[cellAt(office, sheet, address(row, zone.left))!.look!]!;
        expect(look).toMatchObject({ italic: true });
        expect(look.locked).toBeUndefined();
      }
    }
    for (const { sheet, zone } of locked) {
      const { validations } = office.sheets.find(({ name }) => name === sheet)!;
      expect(validations.map((rule) => JSON.stringify(inputZone(rule)))).not.toContain(JSON.stringify(zone));
      expect(office.looks[cellAt(office, sheet, address(zone.top, zone.left))!.look!]!.fill).toBeUndefined();
    }
  });

  test("what can still be typed changes no frozen cell: all of it at once, in the working workbook", () => {
    const book = JSON.parse(JSON.stringify(computed)) as Book;
    let typed = 0;
    for (const sheet of office.sheets) {
      const { cells } = book.sheets.find(({ name }) => name === sheet.name)!;
      for (const rule of sheet.validations) {
        const { top, left, bottom, right } = inputZone(rule)!;
        for (let row = top; row <= bottom; row++)
          for (let column = left; column <= right; column++) {
            const cell = cells[address(row, column)];
            if (cell?.value === undefined) continue;
            cell.value = typeof cell.value === "number" ? cell.value * 1.5 + 1 : `${cell.value as string} x`;
            typed++;
          }
      }
    }
    expect(typed).toBeGreaterThan(100);
    const again = recalculate(book);
    let compared = 0;
    for (const { sheet, zone } of frozen) {
      // A record of what was ordered: prices may be changed for the quote.
      if (sheet === "Order list") continue;
      const [before, after] = [computed, again].map(
        (one) => one.sheets.find(({ name }) => name === sheet)!.results,
      );
      for (let row = zone.top; row <= zone.bottom; row++)
        for (let column = zone.left; column <= zone.right; column++) {
          const at = address(row, column);
          expect({ sheet, at, result: after![at] }).toEqual({ sheet, at, result: before![at] });
          compared++;
        }
    }
    expect(compared).toBeGreaterThan(300);
    expect(namedValue(again, "price_total")).not.toBe(namedValue(computed, "price_total"));
  });

  test("prices, margin, options and labour stay open; runs, cables and receivers do not", () => {
    const open = (name: string): boolean => {
      const { sheet, range } = computed.names.find((one) => one.name === name)!;
      return office.sheets
        .find((one) => one.name === sheet)!
        .validations.some(
          (rule) =>
            zoneOf(rule.range).left === zoneOf(range).left && zoneOf(rule.range).top === zoneOf(range).top,
        );
    };
    for (const name of [
      "cables_price",
      "plates_price",
      "options_quantity",
      "labour_minutes",
      "site_margin",
      "site_rounding",
      "fittings_per_outlet",
    ])
      expect([name, open(name)]).toEqual([name, true]);
    for (const name of [
      "rooms_run",
      "rooms_cable",
      "rooms_receiver",
      // What levels, volts and verdicts were worked out from.
      "rooms_plate",
      "passives_port_low",
      "site_level_low",
      "cables_reel",
      "site_unit",
      "heads_length",
      // Read by the frozen diagnosis.
      "rooms_built_low",
      "rooms_built_volts",
      "causes_chance",
    ])
      expect([name, open(name)]).toEqual([name, false]);
  });

  withLibreOffice(
    "recalculates after prices, quantities, margin and rounding are changed there",
    async () => {
      const copy = await readXlsx(await writeCopy(computed, "office", FACTS));
      expect(
        copy.sheets.flatMap(({ cells }) =>
          Object.values(cells).filter(({ formula }) => formula?.includes("RIG.")),
        ),
      ).toEqual([]);
      const edits: ((fields: Record<string, number | string>, blocks: Rows) => void)[] = [
        (_, blocks) => (blocks.cables![0]!.price = 41.37),
        (_, blocks) => (blocks.options![0]!.quantity = 7),
        (_, blocks) => (blocks.options![0]!.chosen = "yes"),
        (_, blocks) => (blocks.fittings![0]!.per_outlet = 5),
        (_, blocks) => (blocks.labour![1]!.minutes = 33),
        (_, blocks) => (blocks.provisional![0]!.sum = 312.5),
        (_, blocks) => (blocks.rooms![3]!.plate = String(blocks.plates![1]!.name)),
        (fields) => (fields.site_margin = 0.275),
        (fields) => (fields.site_rounding = "half even"),
        (fields) => (fields.site_tax_on = "labour only"),
      ];
      type(copy, "cables_price", 41.37, 0);
      type(copy, "options_quantity", 7, 0);
      type(copy, "options_chosen", "yes", 0);
      type(copy, "fittings_per_outlet", 5, 0);
      type(copy, "labour_minutes", 33, 1);
      type(copy, "provisional_sum", 312.5, 0);
      type(copy, "rooms_plate", String(namedColumn(computed, "plates_name")[2]), 3);
      type(copy, "site_margin", 0.275);
      type(copy, "site_rounding", "half even");
      type(copy, "site_tax_on", "labour only");
      const again = await readXlsx(await recalculated(await writeXlsx(copy), { to: "xlsx" }));
      const reference = referencePrice(
        changed((fields, blocks) => edits.forEach((edit) => edit(fields, blocks))) as unknown as Job,
      );
      expect(reference.total).not.toBe(referencePrice(guestHouse as unknown as Job).total);
      for (const [name, wanted] of [
        ["price_net", reference.net],
        ["price_tax", reference.tax],
        ["quote_total", reference.total],
      ] as const)
        expect([name, Number(namedValue(again, name)).toFixed(2)]).toEqual([name, wanted]);
      expect(namedValue(again, "checks_failed")).toBe(namedValue(computed, "checks_failed"));
    },
  );

  test("of a copy: nothing more to freeze, and the first section stays", () => {
    const twice = copyOf(
      recalculate({ ...office, sheets: office.sheets.map((sheet) => ({ ...sheet })) }),
      "office",
      FACTS,
    );
    expect(aboutLines(twice).filter((line) => line === "About this copy")).toHaveLength(2);
  });

  test("a cell that was never calculated is refused, not written as nothing", async () => {
    await expect(writeCopy(layOut(multiRoom, guestHouse), "office", FACTS)).rejects.toThrow(
      /has not been calculated/,
    );
  });
});

describe("native equivalents", () => {
  const VALUES = [
    0, 1.005, 2.345, 2.355, -1.005, -2.345, 0.125, 0.375, 1234.565, 98765.435, 100000.005, 0.004999, 19.999,
    1e-9, 7.5, -7.5,
  ];

  withLibreOffice("give in LibreOffice what the functions give", async () => {
    const cells: Book["sheets"][number]["cells"] = {};
    const wanted: Record<string, unknown> = {};
    VALUES.forEach((value, index) => {
      const row = index + 1;
      cells[`A${row}`] = { value };
      const lines: [string, string, unknown][] = [
        ["B", `RIG.ROUNDMONEY(A${row},2,"half away")`, roundmoney.call([value, 2, "half away"])],
        ["C", `RIG.ROUNDMONEY(A${row},2,"half even")`, roundmoney.call([value, 2, "half even"])],
        ["D", `RIG.ROUNDMONEY(A${row}*10,0,"half even")`, roundmoney.call([value * 10, 0, "half even"])],
        ["E", `RIG.ROUNDMONEY(A${row})`, roundmoney.call([value])],
        ["F", `RIG.SELLPRICE(ABS(A${row}),0.275)`, sellprice.call([Math.abs(value), 0.275])],
        ["G", `RIG.WINDOW(A${row},0,7.5)`, window.call([value, 0, 7.5])],
      ];
      for (const [column, formula, result] of lines) {
        cells[`${column}${row}`] = { formula: nativeEquivalent(formula)! };
        wanted[`${column}${row}`] = result;
      }
    });
    // A blank row is blank; a text that is no number has no verdict.
    cells.A40 = { value: "" };
    cells.A41 = { value: "much" };
    cells.G40 = { formula: nativeEquivalent("RIG.WINDOW(A40,0,7.5)")! };
    cells.G41 = { formula: nativeEquivalent("RIG.WINDOW(A41,0,7.5)")! };
    const book = bookOf({ ...emptySheet("S"), cells, rowCount: 41, columnCount: 7 });
    const { results } = (await readXlsx(await recalculated(await writeXlsx(book), { to: "xlsx" })))
      .sheets[0]!;
    let worst = 0;
    for (const [at, want] of Object.entries(wanted)) {
      const got = results[at];
      if (typeof want !== "number") expect([at, got]).toEqual([at, want]);
      else {
        expect([at, typeof got]).toEqual([at, "number"]);
        worst = Math.max(worst, Math.abs(Number(got) - want));
      }
    }
    expect(worst).toBeLessThan(1e-9);
    expect(results.G40).toBe("");
    expect(isBookError(results.G41)).toBe(true);
  });

  withLibreOffice("a quote's total with an option: to a cent, and one more for each class", async () => {
    const quotes = [
      // Sum, amount and rate of the class, usual, untaxed and its rate, discount as a sum and as a share.
      ["", 100, 200, 0.07, 1000, 0, 0.19, 0, 0],
      ["reduced", -50, 250, 0.07, 1000, 0, 0.2, 0, 0.1],
      ["reduced", 150, 600, 0.1, 900, 0, 0.2, 100, 0],
      ["", 33.35, 66.65, 0.1, 0, 12.5, 0.2, 0, 0.125],
    ] as const;
    const cells: Book["sheets"][number]["cells"] = {};
    const wanted = new Map<string, number>();
    quotes.forEach(([taxed, sum, amount, rate, usual, untaxed, usualRate, off, share], index) => {
      const row = index + 1;
      const [discount, part] = [off === 0 ? "" : off, share === 0 ? "" : share];
      const values = [sum, "reduced", rate, amount, usual, untaxed, usualRate, taxed, "materials only"];
      [...values, discount, part].forEach((value, at) => {
        if (value !== "") cells[`${"ABCDEFGHIJK"[at]}${row}`] = { value };
      });
      const args = "ABCDEFGHIJK".split("").map((column) => `${column}${row}`);
      cells[`L${row}`] = {
        formula: nativeEquivalent(`RIG.TOTALSWITH(${args.join(",")},"half away",2)`)!,
      };
      wanted.set(`L${row}`, Number(totalswith.call([...values, discount, part, "half away", 2])));
    });
    const book = bookOf({ ...emptySheet("S"), cells, rowCount: 4, columnCount: 12 });
    const { results } = (await readXlsx(await recalculated(await writeXlsx(book), { to: "xlsx" })))
      .sheets[0]!;
    for (const [at, want] of wanted) {
      expect(want).toBeGreaterThan(0);
      expect(Math.abs(Number(results[at]) - want)).toBeLessThan(0.0201);
    }
  });

  withLibreOffice("ties of money: every usual tax rate, margins, sums of several columns", async () => {
    const cells: Book["sheets"][number]["cells"] = {};
    const wanted = new Map<string, number>();
    const ask = (at: string, formula: string, want: number, rows?: number): void => {
      cells[at] = { formula: nativeEquivalent(formula)!, ...(rows && { spill: { rows, columns: 1 } }) };
      wanted.set(at, want);
    };
    let row = 0;
    for (const percent of USUAL_RATES)
      // From small amounts to a hundred thousand.
      for (const from of [1, 58_000, 9_990_000])
        for (const amount of tiesAt(percent, from, from + 9_000).slice(0, 12)) {
          row++;
          cells[`A${row}`] = { value: amount };
          cells[`B${row}`] = { value: shareOf(percent) };
          RULES.forEach(([rule, mode], index) =>
            ask(
              `${"CD"[index]}${row}`,
              `RIG.ROUNDMONEY(A${row},2,"${rule}",B${row})`,
              taxByDecimal(amount, percent, mode),
            ),
          );
        }
    expect(row).toBeGreaterThan(400);
    // By hand: 100·1.03·1.1 is 80 % of 141.625; three times 3.335 is 10.005; a blank count is one.
    ask("E1", 'RIG.ROUNDMONEY(100,2,"half away",1.03*1.1/(1-0.2))', 141.63);
    ask("E2", 'RIG.ROUNDMONEY(100,2,"half even",1.133,0.8)', 141.62);
    ask("E3", "RIG.ROUNDMONEY(A1,2,,Z1)", Number(cells.A1!.value));
    ["F1", "F2", "F3"].forEach((at) => (cells[at] = { value: 3.335 }));
    ask("E4", "RIG.ADDMONEY(F1:F3,A1:A2)", 10.005, 2);
    wanted.set("E5", Number(cells.A1!.value) + Number(cells.A2!.value));
    const book = bookOf({ ...emptySheet("S"), cells, rowCount: row, columnCount: 26 });
    const { results } = (await readXlsx(await recalculated(await writeXlsx(book), { to: "xlsx" })))
      .sheets[0]!;
    const off = [...wanted].filter(([at, want]) => !(Math.abs(Number(results[at]) - want) < 1e-9));
    expect(off.map(([at, want]) => [at, want, results[at]])).toEqual([]);
  });

  test.each([
    ["a part of a formula", 'IF(A1="","",RIG.WINDOW(A1,1,2))'],
    ["a function without an equivalent", "RIG.CABLELOSS(A1,B1,C1)"],
    ["a native formula", "SUM(A1:A9)"],
    ["decimals that are worked out", "RIG.ROUNDMONEY(A1,B1+1)"],
    ["no argument", "RIG.ROUNDMONEY()"],
    ["a name of JavaScript's own", "RIG.CONSTRUCTOR(1)"],
    ["an unfinished call", "RIG.WINDOW(A1,2"],
  ])("none for %s", (_, formula) => {
    expect(nativeEquivalent(formula)).toBeUndefined();
  });
});

test("the areas that a formula reads: names, cells, other sheets; not text and not functions", () => {
  const names = [{ name: "runs", sheet: "Rooms", range: "B2:B9" }];
  expect(
    readAreas(
      { ...bookOf(), names },
      "S",
      `SUM(runs,$C$3,Rooms!A1:B2,'Head units'!D4)&"E5 runs"&LOG10(7)`,
    ).map(
      ({ sheet, zone }) => `${sheet} ${address(zone.top, zone.left)}:${address(zone.bottom, zone.right)}`,
    ),
  ).toEqual(["Rooms B2:B9", "S C3:C3", "Rooms A1:B2", "Head units D4:D4"]);
});

describe("a sealed copy", () => {
  const xmlOf = (file: Uint8Array): string =>
    [...partsOf(file)]
      .filter(([name]) => /worksheets\/sheet|workbook\.xml$|sharedStrings/.test(name))
      .map(([, xml]) => xml)
      .join("\n");

  test("has no formula, no input rule, no conditional format and no unlocked cell", async () => {
    const file = await writeCopy(computed, "sealed", FACTS);
    const xml = xmlOf(file);
    expect(xml).not.toMatch(/<f[ >]|<dataValidation|<conditionalFormatting|RIG|xldudf/);
    expect(partOf(file, "xl/styles.xml")).not.toContain('locked="0"');
    expect(xml.match(/<sheetProtection /g)).toHaveLength(computed.sheets.length);
  });

  test("shows the same values, without the empty prepared rows", async () => {
    const again = await readXlsx(await writeCopy(computed, "sealed", FACTS));
    const filled = (book: Book, name: string) =>
      namedRows(book, name).filter((row) => row.some((value) => value !== undefined && value !== ""));
    let compared = 0;
    for (const { name } of computed.names) {
      const blank = (rows: ReturnType<typeof filled>) => rows.map((row) => row.map((value) => value ?? ""));
      expect([name, blank(filled(again, name))]).toEqual([name, blank(filled(computed, name))]);
      compared++;
    }
    expect(compared).toBeGreaterThan(200);
    expect(namedRows(again, "rooms_outlet")).toHaveLength(24 + 2);
    // The crew writes its readings into these.
    expect(namedRows(again, "peaks_what")).toHaveLength(16 + 2);
    expect(aboutLines(again).join(" ")).toContain(
      "Values-only copy, made 2026-03-05 14:07 UTC by Rigsheet 9.8.7.",
    );
  });

  test("a failing word keeps its look, and an error is a word", async () => {
    const broken = recalculate(
      layOut(
        multiRoom,
        changed((_, blocks) => (blocks.rooms![0]!.run = -3)),
      ),
    );
    expect(broken.sheets.some(({ results }) => Object.values(results).some(isBookError))).toBe(true);
    const file = await writeCopy(broken, "sealed", FACTS);
    expect(xmlOf(file)).not.toMatch(/#(?:VALUE|N\/A|NAME|REF|DIV)|t="e"/);
    const again = await readXlsx(file);
    for (const [name, word] of [
      ["rooms_verdict", "bad"],
      // The reels cannot be counted with a run below 0.
      ["cables_bought_quantity", ERROR_WORD],
    ] as const) {
      const { sheet, range } = again.names.find((one) => one.name === name)!;
      const at = address(zoneOf(range).top + 1, zoneOf(range).left);
      const found = again.sheets.find((one) => one.name === sheet)!;
      expect([name, found.cells[at]!.value]).toEqual([name, word]);
      expect(again.looks[found.cells[at]!.look!]).toMatchObject({ bold: true, fill: "FBE3E6" });
    }
  });

  test("of one sheet holds nothing of the others", async () => {
    const file = await writeCopy(computed, "sealed", { ...FACTS, sheets: ["about", "QUOTE"] });
    const again = await readXlsx(file);
    expect(again.sheets.map(({ name }) => name)).toEqual(["About", "Quote"]);
    expect(namedValue(again, "quote_total")).toBe(namedValue(computed, "quote_total"));
    expect(again.names.filter(({ name }) => name.startsWith("price_"))).toEqual([]);
    expect(xmlOf(file)).not.toMatch(/Contingency|Markup|Reel/);
  });

  test("of a sheet whose name ends with a blank", () => {
    const twins = bookOf({ ...emptySheet("Prices"), cells: { A1: { value: 1 } } }, emptySheet("Prices "));
    const { sheets } = copyOf(twins, "sealed", { ...FACTS, sheets: ["Prices "] });
    expect(sheets.map(({ name }) => name)).toEqual(["Prices "]);
  });

  test("of a sheet that is not there: a sentence with those that are", () => {
    expect(() => copyOf(computed, "sealed", { ...FACTS, sheets: ["Quotes"] })).toThrow(FileTrouble);
    expect(() => copyOf(computed, "sealed", { ...FACTS, sheets: ["Quotes"] })).toThrow(
      /no sheet "Quotes".*Quote,/,
    );
  });
});

test.each(templates.map(({ id }) => id))(
  "%s: each kind of copy can be written and read, empty too",
  async (id) => {
    const template = templates.find((one) => one.id === id)!;
    for (const make of [template.empty, template.demonstration])
      for (const kind of ["office", "sealed"] as const) {
        const again = await readXlsx(await writeCopy(recalculate(make()), kind, FACTS));
        expect(aboutLines(again)).toContain("About this copy");
      }
  },
);

test("a workbook that is not ours gets a sheet in front, under a name that is free", async () => {
  const book = bookOf({
    ...emptySheet("About this copy"),
    cells: { A1: { value: 1 }, B1: { formula: "A1*2" } },
    results: { B1: 2 },
  });
  const again = await readXlsx(await writeCopy(book, "sealed", FACTS));
  expect(again.sheets.map(({ name }) => name)).toEqual(["About this copy 2", "About this copy"]);
  expect(again.sheets[1]!.cells.B1!.value).toBe(2);
});
