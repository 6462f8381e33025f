/** Functions into cells, and Repair formulas. */
import { address } from "../../../src/formula/address";
import { ABORTED, isWriting } from "../excel/happens";
import { officeError } from "../excel/strict";
import type { ExcelStandIn } from "../excelStandIn";
import { bookOf, emptySheet } from "../books";
import {
  checked,
  demonstration,
  failing,
  freed,
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

const formulasOf = ({ state }: ExcelStandIn): unknown =>
  state.book.sheets.map(({ name, cells }) => [
    name,
    Object.entries(cells).flatMap(([at, { formula }]) => (formula === undefined ? [] : [`${at} ${formula}`])),
  ]);
const THREE_ROWS = 'RIG.CABLELOSS({1000;1500;2000},20,"RG-6")';

export const functionCases: Cases = {
  "functions-into-locked-cell": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      await excel.choose("Rooms", "A1");
      const before = seen(excel);
      says(
        await said(host.enterFormula("RIG.VERSION()")),
        [/locked/, /unlocked cell|another (cell|sheet)|sheet of your own|other cell/],
        [/AccessDenied/],
      );
      expect(seen(excel)).toEqual(before);
    }),

  "functions-cell-being-edited": () =>
    inExcel(undefined, {}, async (excel, host) => {
      await excel.choose("Sheet1", "B2");
      excel.editing = true;
      says(await said(host.enterFormula("RIG.VERSION()")), [/being edited/, /Enter/, /Esc/]);
      excel.editing = false;
      excel.type("Sheet1", "B2", 12);
      expect(excel.state.shown("Sheet1", "B2")).toBe(12);
      await excel.choose("Sheet1", "B3");
      await host.enterFormula("RIG.VERSION()");
      expect(excel.state.formula("Sheet1", "B3")).toBe("RIG.VERSION()");
    }),

  "functions-chart-selected": () =>
    inExcel(undefined, {}, async (excel, host) => {
      excel.state.active = { sheet: "Sheet1", at: "" };
      const before = seen(excel);
      for (const press of [() => host.enterFormula("RIG.VERSION()"), () => host.selection()])
        says(await said(press()), [/No cell is chosen/, /Click a cell/], [/InvalidSelection/]);
      expect(seen(excel)).toEqual(before);
      await excel.choose("Sheet1", "C1");
      await host.enterFormula("RIG.VERSION()");
      expect(excel.state.formula("Sheet1", "C1")).toBe("RIG.VERSION()");
      expect(Object.keys(excel.state.sheet("Sheet1")!.cells)).toEqual(["C1"]);
    }),

  "functions-spill-blocked": () => {
    const sheet = emptySheet("Sheet1");
    sheet.cells.B3 = { value: "x" };
    return inExcel(bookOf(sheet), {}, async (excel, host) => {
      await excel.choose("Sheet1", "B2");
      const sentence = await said(host.enterFormula(THREE_ROWS));
      says(sentence, [/spill/, /B3/, /merged/, /table/, /free cells|another place|other place|elsewhere/]);
      expect(excel.state.shown("Sheet1", "B3")).toBe("x");
    });
  },
};

export const repairCases: Cases = {
  "repair-locked-password-third-sheet": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      const count = excel.state.forgetOurs();
      const ours = [...excel.state.forgotten];
      const sheets = [...new Set(ours.map((one) => one.split("!")[0]!))];
      const third = sheets[2]!;
      const there = ours.filter((one) => one.startsWith(`${third}!`)).length;
      excel.state.protectedSheets.set(third, { insertRows: false, password: true });
      const guards = JSON.stringify([...excel.state.protectedSheets].sort());
      const formulas = formulasOf(excel);
      const sentence = await said(host.enterOursAgain());
      says(sentence, [new RegExp(`${count - there}`), new RegExp(third), /password/, /Unprotect/]);
      expect(excel.state.forgotten.size).toBe(there);
      expect(JSON.stringify([...excel.state.protectedSheets].sort())).toBe(guards);
      freed(excel, third);
      await host.enterOursAgain();
      expect(excel.state.forgotten.size).toBe(0);
      excel.state.protectedSheets.set(third, { insertRows: true });
      expect(formulasOf(excel)).toEqual(formulas);
    }),

  "repair-persons-own-formula": async () => {
    const book = demonstration();
    book.sheets.push({ ...emptySheet("Mine"), cells: { A1: { formula: "RIG.RAYHEIGHT(10,45)" } } });
    await inExcel(book, {}, async (excel, host) => {
      const total = zoneOf(excel, "quote_total");
      const at = address(total.top, total.left);
      excel.state.sheet(total.sheet)!.cells[at] = {
        ...excel.state.sheet(total.sheet)!.cells[at],
        formula: "100",
      };
      const count = excel.state.forgetOurs();
      says(await said(host.enterOursAgain()), [new RegExp(`${count}`)]);
      expect(excel.state.formula(total.sheet, at)).toBe("100");
      expect(excel.state.formula("Mine", "A1")).toBe("RIG.RAYHEIGHT(10,45)");
      expect(typeof excel.state.shown("Mine", "A1")).toBe("number");
      expect(excel.state.forgotten.size).toBe(0);
      const findings = (await checked(host)).filter(
        ({ place }) => place?.sheet === total.sheet && place.cell === at,
      );
      says(inWords(findings), [/typed|formula/]);
    });
  },

  "repair-undo-and-timeout": () => {
    let writes = 0;
    return inExcel(
      demonstration(),
      {
        happens: {
          before: (calls) => {
            if (!isWriting(calls)) return;
            writes += 1;
            if (writes === 1) failing("UndoNotSupported");
            if (writes === 2) throw officeError(...ABORTED);
          },
        },
      },
      async (excel, host) => {
        const count = excel.state.forgetOurs();
        const formulas = formulasOf(excel);
        const sentence = await said(host.enterOursAgain());
        expect(formulasOf(excel)).toEqual(formulas);
        says(sentence, [/again/, new RegExp(`${excel.state.forgotten.size}`)], [/^Done/]);
        expect(excel.syncs).toBeLessThan(30);
        await host.enterOursAgain();
        expect(excel.state.forgotten.size).toBe(0);
        expect(count).toBeGreaterThan(0);
        expect(await priceOf(host)).toBeCloseTo(PRICE, 2);
        expect(excel.syncs).toBeLessThan(40);
      },
    );
  },
};
