/** Check, Diagnose, Why? and Show calculation. */
import { address } from "../../../src/formula/address";
import { BLANKS_AS_ZERO } from "../../../src/functions/core/blanksAsZero";
import { workOf } from "../../../src/pane/workOf";
import { summaryOf } from "../../../src/pane/views/diagnose";
import { why } from "../../../src/review/why";
import { diagnosisOf } from "../../../src/workbooks/multiRoom/diagnosisOf";
import { bookOf, emptySheet } from "../books";
import {
  checked,
  demonstration,
  inExcel,
  inWords,
  PRICE,
  priceOf,
  said,
  says,
  seen,
  zoneOf,
  type Cases,
} from "./ground";

const first = (excel: Parameters<typeof zoneOf>[0], name: string) => {
  const { sheet, top, left } = zoneOf(excel, name);
  return { sheet, at: address(top, left) };
};

export const readingCases: Cases = {
  "check-place-on-hidden-sheet": async () => {
    for (const how of ["Hidden", "VeryHidden"])
      await inExcel(demonstration(), {}, async (excel, host) => {
        if (how === "Hidden") excel.state.sheet("Rooms")!.hidden = true;
        else excel.state.veryHidden.add("Rooms");
        const before = { ...excel.state.active };
        says(await said(host.goTo("Rooms", "H8")), [/Rooms/, /hidden/, /show|unhide/i]);
        expect(excel.state.active).toEqual(before);
        expect(excel.state.visibility("Rooms")).toBe(how);
      });
  },

  "check-blanks-as-zero": () =>
    inExcel(demonstration(), { api: "1.14" }, async (excel, host) => {
      const { sheet, at } = first(excel, "about_functions");
      excel.state.instead.set(`${sheet}!${at}`, `"Rigsheet ${BLANKS_AS_ZERO}"`);
      excel.state.dirty();
      const before = seen(excel);
      const findings = await checked(host);
      says(inWords(findings.slice(0, 1)), [/blank/, /\b0\b|zero/, /levels/]);
      expect(findings[0]!.weight).not.toBe("worth knowing");
      const checks = zoneOf(excel, "checks_result");
      for (let row = checks.top + 1; row < checks.bottom; row++)
        expect(excel.state.shown(checks.sheet, address(row, checks.left))).not.toBe("ok");
      expect(seen(excel)).toEqual(before);
    }),

  "check-addin-lost-recalculated": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.forgetOurs();
      const before = seen(excel);
      const findings = await checked(host);
      says(inWords(findings.slice(0, 1)), [/functions/, /inputs are (safe|whole)/i, /Repair formulas|load/]);
      expect(findings.length).toBeLessThan(12);
      const checks = zoneOf(excel, "checks_result");
      for (let row = checks.top + 1; row < checks.bottom; row++)
        expect(excel.state.shown(checks.sheet, address(row, checks.left))).not.toBe("ok");
      expect(typeof (await priceOf(host))).not.toBe("number");
      expect(seen(excel)).toEqual(before);
      await host.enterOursAgain();
      expect(await priceOf(host)).toBeCloseTo(PRICE, 2);
    }),

  "check-namespace-clash": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      const inputs = JSON.stringify(
        demonstration().sheets.map(({ cells }) => Object.values(cells).map(({ value }) => value)),
      );
      for (const { cells } of excel.state.book.sheets)
        for (const cell of Object.values(cells))
          if (cell.formula)
            cell.formula = cell.formula.replace(/\bRIG\.([A-Z0-9_.]+)\(/g, "[1]!_xldudf_RIG_$1(");
      const count = excel.state.forgetOurs();
      expect(count).toBeGreaterThan(10);
      const findings = await checked(host);
      says(inWords(findings.slice(0, 1)), [/another add-in/, /Repair formulas/]);
      expect(findings.length).toBeLessThan(12);
      // Entered anew they read #REF! as long as the other add-in is there.
      excel.state.forgottenCode = "#REF!";
      const enter = excel.state.enter.bind(excel.state);
      excel.state.enter = (sheet, at, content) => {
        enter(sheet, at, content);
        if (String(content).includes("RIG.")) excel.state.forgotten.add(`${sheet}!${at}`);
      };
      excel.state.forgottenCode = "#NAME?";
      const work = host.enterOursAgain();
      const sentence = await said(work);
      says(sentence, [/another add-in|still/]);
      for (const { cells } of excel.state.book.sheets)
        for (const { formula } of Object.values(cells)) expect(formula ?? "").not.toMatch(/\[1\]!/);
      expect(
        JSON.stringify(
          excel.state.book.sheets.map(({ cells }) => Object.values(cells).map(({ value }) => value)),
        ),
      ).toBe(inputs);
    }),

  "diagnose-still-computing": () =>
    inExcel(demonstration(), { platform: "Mac" }, async (excel, host) => {
      excel.state.forgetOurs("#BUSY!");
      const built = zoneOf(excel, "rooms_built_low");
      excel.type(built.sheet, address(built.top + 3, built.left), 40);
      const found = diagnosisOf(await host.readBook());
      const sentence = found ? `${summaryOf(found)} ${found.trouble ?? ""}` : "";
      says(sentence, [/still computing|#BUSY!/, /again|wait/i], [/Likeliest/]);
      excel.state.forgotten.clear();
      excel.state.dirty();
      expect(summaryOf(diagnosisOf(await host.readBook())!)).toMatch(/Likeliest/);
    }),

  "diagnose-response-too-large": async () => {
    // As many cells as 10,000 outlets have, and as long; without formulas, so that the stand-in is quick.
    const sheet = emptySheet("Rooms");
    const columns = "ABCDEFGHIJKLMNOPQRSTUVWXYZ".split("");
    for (let row = 1; row <= 10_000; row++)
      for (const column of columns) sheet.cells[`${column}${row}`] = { value: row + 0.123_456_789 };
    sheet.rowCount = 10_000;
    sheet.columnCount = columns.length;
    await inExcel(
      bookOf(sheet),
      { platform: "OfficeOnline", mostAnswered: 5 * 1024 * 1024 },
      async (_, host) => {
        const book = await host.readBook();
        expect(Object.keys(book.sheets[0]!.cells)).toHaveLength(10_000 * columns.length);
      },
    );
  },

  "why-in-spill-and-foreign-cells": async () => {
    await inExcel(demonstration(), { api: "1.11" }, async (_, host) => {
      says(await said(host.readBook()), [/too old/]);
    });
    await inExcel(demonstration(), {}, async (excel, host) => {
      const loss = zoneOf(excel, "rooms_level");
      const rows = [loss.top + 2, loss.top + 3].map((row) => address(row, loss.left));
      const book = await host.readBook();
      // Each row's own outlet.
      const words = rows.map((cell) => why(book, { sheet: "Rooms", cell })!.words);
      expect(words[0]).not.toBe(words[1]);
      expect(words[1]).toContain(`Rooms ${rows[1]}`);
      expect(typeof workOf(book, "Rooms", rows[1]!)).toBe("object");
      says(String(workOf(book, "Site", "Z90")), [/holds no formula/]);
      expect(why(book, { sheet: "Site", cell: "Z90" })!.formula).toBeUndefined();
      // A figure over a formula of the price.
      const total = zoneOf(excel, "quote_total");
      excel.state.protectedSheets.delete(total.sheet);
      excel.state.enter(total.sheet, address(total.top, total.left), 5);
      const over = await host.readBook();
      says(String(workOf(over, total.sheet, address(total.top, total.left))), [
        /typed|stands where a formula/,
      ]);
    });
  },

  "show-calculation-names-shadowed": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.sheetNames.push({ name: "rooms_run", sheet: "Rooms", range: "A1" });
      const before = seen(excel);
      says(inWords(await checked(host)), [
        /rooms_run/,
        /two names|twice|second name|another name/i,
        /Name Manager/,
      ]);
      expect(seen(excel)).toEqual(before);
      excel.state.sheetNames.length = 0;
      expect(inWords(await checked(host))).not.toMatch(/Name Manager/);
    }),
};
