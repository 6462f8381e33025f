/** Starting a workbook. */
import { address } from "../../../src/formula/address";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import type { StartedBook } from "../../../src/pane/host";
import { layOut } from "../../../src/workbooks/layOut";
import { singleDrop } from "../../../src/workbooks/singleDrop/definition";
import { singleDropStart } from "../../../src/workbooks/singleDrop/definition";
import { templates } from "../../../src/workbooks/templates";
import type { Book } from "../../../src/workbooks/book";
import { disconnected, POLICY, refusing } from "../excel/happens";
import { setOfMember } from "../excel/requirementSets";
import { bookOf, emptySheet } from "../books";
import {
  atFirstOutlet,
  demonstration,
  failing,
  inExcel,
  PRICE,
  priceOf,
  said,
  says,
  seen,
  sheetNames,
  zoneOf,
  type Cases,
} from "./ground";

const demo = (): StartedBook => ({ book: demonstration() });
const empty = (): StartedBook => ({ book: templates[0]!.empty() });
const small = (): StartedBook => ({ book: layOut(singleDrop, singleDropStart) });
const bothRoads = { call: refusing(/createWorkbook|insertWorksheetsFromBase64/, POLICY) };
/** Members that came later than a set. */
const older =
  (api: string) =>
  (call: string): void => {
    const set = setOfMember(call);
    if (set && set !== "unknown" && Number(set.split(".")[1]) > Number(api.split(".")[1]))
      failing("ApiNotFound", "The API you are trying to use could not be found.");
  };
const withNotes = (): Book => {
  const book = bookOf({ ...emptySheet("Notes"), cells: { A1: { value: "mine" } } });
  book.names.push({ name: "mine", sheet: "Notes", range: "A1" });
  return book;
};

export const startCases: Cases = {
  "start-policy-refuses-new-workbook": () =>
    inExcel(undefined, { happens: bothRoads }, async (excel, host) => {
      const before = seen(excel);
      says(
        await said(host.startWorkbook(demo())),
        [/polic/i, /nothing was changed|as it was/i, /As sheets of this workbook|save/],
        [/\bopened\b/, /switch (it|the policy) off/],
      );
      expect(seen(excel)).toEqual(before);
      await host.startHere(demo());
      expect(await priceOf(host)).toBeCloseTo(PRICE, 2);
    }),

  "start-policy-refuses-both-roads": () =>
    inExcel(withNotes(), { happens: bothRoads }, async (excel, host) => {
      says(await said(host.startHere(empty())), [/polic/i, /cell by cell/, /pictures/, /protect/]);
      expect(sheetNames(excel)).toEqual(["Notes", ...empty().book.sheets.map(({ name }) => name)]);
      expect(excel.state.book.names).toContainEqual({ name: "mine", sheet: "Notes", range: "A1" });
      expect(excel.state.shown("Notes", "A1")).toBe("mine");
      await atFirstOutlet(excel);
      says(await said(host.addRows(2)), [/^2 rows added/]);
    }),

  "start-insert-unsupported-on-ipad": () =>
    inExcel(
      undefined,
      {
        platform: "iOS",
        sharedRuntime: false,
        happens: { call: refusing(/insertWorksheets|createWorkbook/, ["UnsupportedOperation", "Not here."]) },
      },
      async (excel, host) => {
        const before = seen(excel);
        says(await said(host.startHere(demo())), [/iPad/, /Windows/, /Mac/, /web/, /copy/], [/reload/]);
        expect(seen(excel)).toEqual(before);
        expect(await said(host.readBook())).toMatch(/^Done/);
      },
    ),

  "start-insert-unsupported-feature-web": () =>
    inExcel(
      undefined,
      {
        platform: "OfficeOnline",
        happens: { call: refusing(/insertWorksheets/, ["UnsupportedFeature", "No."]) },
      },
      async (excel, host) => {
        says(
          await said(host.startHere(small())),
          [/did not take|could not take/, /built cell by cell/],
          [/UnsupportedFeature/],
        );
        expect(sheetNames(excel)).toEqual(["Sheet1", ...small().book.sheets.map(({ name }) => name)]);
        await host.startWorkbook(small());
        expect(excel.created).toHaveLength(1);
      },
    ),

  "start-insert-loses-protection-names": async () => {
    for (const inserting of ["names", "locks"] as const)
      await inExcel(undefined, { platform: "OfficeOnline", inserting }, async (excel, host) => {
        says(await said(host.startHere(demo())), [/incomplete|without|did not take|left/, /protect/i]);
        expect(sheetNames(excel)).toEqual(["Sheet1", ...demo().book.sheets.map(({ name }) => name)]);
        expect(await priceOf(host)).toBeCloseTo(PRICE, 2);
        // Protected by hand, its inputs still take what is typed, and their rules stand.
        const { sheet, top, left } = zoneOf(excel, "rooms_run");
        if (!excel.state.protectedSheets.has(sheet)) excel.state.protect(sheet, {});
        excel.type(sheet, address(top + 1, left), 20);
        const rules =
          excel.state.book.sheets.find(({ name }) => name === sheet)!.validations.length +
          excel.state.log.filter((one) => one.sheet === sheet && one.what === "rule").length;
        expect(rules).toBeGreaterThan(0);
      });
  },

  "start-in-place-sheet-name-taken": async () => {
    const rooms = emptySheet("Rooms");
    rooms.cells.A1 = { value: "Hotel list" };
    const book = bookOf(rooms, emptySheet("Sheet1"));
    book.names.push({ name: "rooms_run", sheet: "Rooms", range: "A2:A40" });
    await inExcel(book, {}, async (excel, host) => {
      const before = seen(excel);
      says(await said(host.startHere(empty())), [
        /Rooms/,
        /rooms_run/,
        /yours|nothing of yours|as (it|they) (was|were)|untouched/i,
        /new workbook|new one/,
        /rename|other name/i,
      ]);
      expect(seen(excel)).toEqual(before);
      await host.startWorkbook(empty());
      expect(excel.created).toHaveLength(1);
    });
  },

  "start-in-place-structure-protected": async () => {
    for (const code of ["InvalidOperation", "AccessDenied"])
      await inExcel(undefined, {}, async (excel, host) => {
        excel.state.structure = code;
        const before = seen(excel);
        says(
          await said(host.startHere(small())),
          [/structure/, /Protect Workbook/, /new workbook|new one/],
          [/password\?|Unprotect Sheet/],
        );
        expect(seen(excel)).toEqual(before);
        excel.state.structure = undefined;
        await host.startHere(small());
        expect(sheetNames(excel)).toContain(small().book.sheets[0]!.name);
      });
  },

  "start-in-place-connection-lost-midway": () => {
    const book = bookOf({ ...emptySheet("Sheet1"), cells: { A1: { value: "keep" } } });
    const refused = refusing(/insertWorksheets/, ["UnsupportedFeature", "No."]);
    // Building carries all that it writes in two round trips, so the fault lies in the first of them.
    const lost = disconnected(1, 3, (calls) => calls.includes("worksheets.add"));
    let during = 0;
    return inExcel(
      book,
      {
        platform: "OfficeOnline",
        happens: {
          call: (call) => {
            refused(call);
            if (call === "worksheets.add" && (during += 1) === 3) failing("RequestAborted", "Aborted.");
          },
          before: (calls) => (during >= 3 ? lost([...calls, "worksheets.add"]) : undefined),
        },
      },
      async (excel, host) => {
        says(await said(host.startHere(small())), [/connection/i, /taken back|Rigsheet|“/, /again/]);
        // The connection is there again after three more round trips.
        for (let index = 0; index < 4; index++) await host.selection().catch(() => undefined);
        says(await said(host.startHere(small())), [/cell by cell/], [/already has/]);
        expect(sheetNames(excel)).toEqual(["Sheet1", ...small().book.sheets.map(({ name }) => name)]);
        expect(excel.state.shown("Sheet1", "A1")).toBe("keep");
      },
    );
  },

  "start-new-window-name-errors": async () => {
    let bytes: Uint8Array | undefined;
    await inExcel(undefined, {}, async (excel, host) => {
      says(
        await said(host.startWorkbook(demo())),
        [/window/, /Rigsheet pane|open the add-in/, /#NAME\?/, /Repair formulas/],
        [/results are right/],
      );
      bytes = excel.created[0];
    });
    const opened = await readXlsx(bytes!);
    await inExcel(opened, {}, async (excel, host) => {
      const ours = excel.state.forgetOurs();
      const book = excel.book();
      // The head of each sheet says that inputs are safe.
      const heads = Object.values(book.sheets.find(({ name }) => name === "Rooms")!.results).map(String);
      expect(heads.join("\n")).toMatch(/inputs are safe/i);
      const { sheet, top, bottom, left } = zoneOf(excel, "checks_result");
      for (let row = top + 1; row < bottom; row++)
        expect(excel.state.shown(sheet, address(row, left))).not.toBe("ok");
      const total = zoneOf(excel, "quote_total");
      expect(typeof excel.state.shown(total.sheet, address(total.top, total.left))).not.toBe("number");
      expect(await host.enterOursAgain()).toBeTruthy();
      expect(ours).toBeGreaterThan(10);
      expect(await priceOf(host)).toBeCloseTo(PRICE, 2);
      expect(excel.state.forgotten.size).toBe(0);
    });
  },

  "every-button-in-excel-2016-and-2019": async () => {
    for (const api of ["1.1", "1.7"])
      await inExcel(
        undefined,
        { api, sharedRuntime: false, happens: { call: older(api) } },
        async (excel, host) => {
          const before = seen(excel);
          const pressed: readonly (() => Promise<unknown>)[] = [
            () => host.startWorkbook(demo()),
            () => host.startHere(demo()),
            () => host.selection(),
            () => host.enterFormula("RIG.VERSION()"),
            () => host.addRows(1),
            () => host.addOutlets([{ outlet: "S-1" }]),
            () => host.enterOursAgain(),
            () => host.readBook(),
            () => host.goTo("Sheet1", "A1"),
            () => host.handOverCopy("sealed"),
            () => host.handOverBook(demonstration()),
          ];
          for (const press of pressed) {
            const sentence = await said(press());
            // Reading, and going to a cell, an Excel of that age can.
            if (api === "1.7" && !/^Not done/.test(sentence)) continue;
            says(sentence, [/too old|can't open a new workbook/, /Microsoft 365/, /web/], [/try again/i]);
          }
          expect(seen(excel)).toEqual(before);
        },
      );
  },
};
