/** Copies, Upgrade, Training and Settings. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { trainingSets } from "../../../src/training/sets/all";
import { upgrade } from "../../../src/upgrade/upgrade";
import { inWords as upgradeInWords } from "../../../src/upgrade/words";
import { namedColumn, namedValue } from "../../../src/workbooks/named";
import type { CopyKind } from "../../../src/hosts/file/copy/copyOf";
import { POLICY, refusing } from "../excel/happens";
import { emptySheet } from "../books";
import { checked, demonstration, inExcel, inWords, PRICE, said, says, seen, type Cases } from "./ground";

const KINDS: readonly CopyKind[] = ["office", "sealed", "cards"];
const OLDER = path.join(__dirname, "../../fixtures/earlier/multi-room-demonstration-da9a13a.xlsx");

export const fileCases: Cases = {
  "copies-getfile-zero-bytes": () =>
    inExcel(demonstration(), { platform: "OfficeOnline", file: new Uint8Array(0) }, async (excel, host) => {
      const before = seen(excel);
      for (const kind of KINDS)
        says(
          await said(host.handOverCopy(kind)),
          [/handed over an empty file/, /Save/, /desk|desktop/],
          [/copy opened/],
        );
      expect([excel.openFiles, excel.created.length]).toEqual([0, 0]);
      expect(seen(excel)).toEqual(before);
    }),

  "copies-third-party-host-slice-fails": () => {
    let slices = 0;
    return inExcel(
      demonstration(),
      {
        platform: "OfficeOnline",
        happens: {
          call: (call) => {
            if (call !== "File.getSliceAsync") return;
            slices += 1;
            throw Object.assign(new Error("Internal Error"), { code: 5001 });
          },
        },
      },
      async (excel, host) => {
        const before = seen(excel);
        const told: string[] = [];
        for (let press = 0; press < 3; press++) {
          told.push(await said(host.handOverCopy("sealed")));
          expect(excel.openFiles).toBe(0);
        }
        expect(new Set(told).size).toBe(1);
        says(told[0]!, [/did not hand over|could not be read/, /desk|desktop|Save a copy/]);
        expect(excel.created).toEqual([]);
        expect(slices).toBe(3);
        expect(seen(excel)).toEqual(before);
      },
    );
  },

  "copies-values-while-name-errors": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.forgetOurs();
      const before = seen(excel);
      for (const kind of ["sealed", "cards"] as const)
        says(await said(host.handOverCopy(kind)), [
          /#NAME\?/,
          /Repair formulas/,
          /no copy|not made|incomplete/i,
        ]);
      expect(excel.created).toEqual([]);
      expect(seen(excel)).toEqual(before);
      await host.enterOursAgain();
      await host.handOverCopy("sealed");
      expect(namedValue(await readXlsx(excel.created[0]!), "quote_total")).toBeCloseTo(PRICE, 2);
    }),

  "upgrade-newer-than-addin": async () => {
    const book = demonstration();
    const later = String(Number(book.templateVersion) + 1);
    book.templateVersion = later;
    await inExcel(book, {}, async (excel, host) => {
      const at = Object.entries(excel.state.sheet("Rooms")!.cells).find(([, { formula }]) =>
        formula?.startsWith("RIG."),
      )![0];
      excel.state.sheet("Rooms")!.cells[at]!.formula = "RIG.NOTYETKNOWN(rooms_run)";
      excel.state.forgotten.add(`Rooms!${at}`);
      excel.state.dirty();
      const before = seen(excel);
      const done = upgrade(await host.readFile());
      says(
        "sentence" in done ? done.sentence : "upgraded",
        [new RegExp(`version ${later}`), new RegExp(`version ${Number(later) - 1}`), /24 hours|a day/],
        [/^upgraded/, /nothing to (do|upgrade)/],
      );
      says(inWords(await checked(host)), [new RegExp(`version ${later}`)]);
      await said(host.enterOursAgain());
      expect(excel.state.formula("Rooms", at)).toBe("RIG.NOTYETKNOWN(rooms_run)");
      excel.state.forgotten.add(`Rooms!${at}`);
      expect(seen(excel)).toEqual(before);
    });
  },

  "upgrade-refused-or-own-sheet": async () => {
    const older = await readXlsx(new Uint8Array(readFileSync(OLDER)));
    older.sheets.push({
      ...emptySheet("Notes"),
      cells: { A1: { value: "call Tue" }, A2: { formula: "SUM(rooms_run)" } },
    });
    const file = await writeXlsx(recalculate(older));
    await inExcel(
      older,
      { file, happens: { call: refusing("Excel.createWorkbook", POLICY, 1) } },
      async (excel, host) => {
        const done = upgrade(await host.readFile());
        if ("sentence" in done) throw new Error(done.sentence);
        const { notCarried, figures } = upgradeInWords(done);
        says(notCarried.join("\n"), [/Notes/]);
        expect(figures.length).toBeGreaterThan(0);
        const before = seen(excel);
        const take = (): Promise<string> => host.takeUpgrade(done.book, done.from, done.to);
        says(await said(take()), [/polic/i, /as it was|nothing was changed|untouched/i, /save|desk/]);
        expect(seen(excel)).toEqual(before);
        says(await said(take()), [/as it was/]);
        const outlets = namedColumn(older, "rooms_outlet").filter(Boolean);
        expect(namedColumn(await readXlsx(excel.created[0]!), "rooms_outlet").filter(Boolean)).toEqual(
          outlets,
        );
      },
    );
  },

  "training-fifth-of-twelve-fails": () => {
    const sheet = (index: number) =>
      traineeSheet(trainingSets[0]!, 2026, { name: `Trainee ${index + 1}`, occurrence: 1 });
    let met = 0;
    let isBusy = true;
    return inExcel(
      undefined,
      {
        platform: "OfficeOnline",
        happens: {
          call: (call) => {
            if (call !== "Excel.createWorkbook" || !isBusy || (met += 1) <= 4) return;
            throw Object.assign(new Error("The activity limit has been reached."), {
              code: "ActivityLimitReached",
            });
          },
        },
      },
      async (excel, host) => {
        const before = seen(excel);
        // Each trainee has a button.
        for (let index = 0; index < 4; index++) await host.handOverBook(sheet(index));
        says(
          await said(host.handOverBook(sheet(4))),
          [/limit|many/i, /later|wait|desk|rigsheet/i],
          [/polic/i],
        );
        expect(excel.created).toHaveLength(4);
        isBusy = false;
        for (let index = 4; index < 12; index++) await host.handOverBook(sheet(index));
        expect(excel.created).toHaveLength(12);
        for (const [index, bytes] of excel.created.entries())
          expect((await readXlsx(bytes)).sheets.map(({ cells }) => cells)).toEqual(
            (await readXlsx(await writeXlsx(sheet(index)))).sheets.map(({ cells }) => cells),
          );
        expect(seen(excel)).toEqual(before);
      },
    );
  },

  "settings-storage-refused": () =>
    inExcel(demonstration(), { platform: "OfficeOnline", readOnly: true }, async (excel, host) => {
      const refused = (): never => {
        throw new DOMException("The operation is insecure.", "SecurityError");
      };
      const before = seen(excel);
      const storage = { getItem: refused, setItem: refused };
      Object.assign(globalThis, { window: { localStorage: storage }, localStorage: storage });
      try {
        expect(await host.preferences()).toEqual({ lengthUnit: "m", currency: "" });
        says(
          await said(host.keepPreferences({ lengthUnit: "ft", currency: "EUR" })),
          [/until/, /closed/, /browser/],
          [/^Done/],
        );
        expect(await host.preferences()).toEqual({ lengthUnit: "ft", currency: "EUR" });
      } finally {
        delete (globalThis as { window?: unknown }).window;
        delete (globalThis as { localStorage?: unknown }).localStorage;
      }
      says(await said(host.openingOfPane.keep(true)), [/read-only/, /copy|right to change/]);
      await host.handOverCopy("sealed");
      expect(excel.created).toHaveLength(1);
      expect(seen(excel)).toEqual(before);
    }),

  "settings-no-shared-runtime": async () => {
    await inExcel(demonstration(), { api: "1.12", sharedRuntime: false }, async (excel, host) => {
      says(String(await said(host.openingOfPane.keep(true))), [/by hand|each time|open it/]);
      await excel.choose("Site", "Z90");
      expect(inWords(await checked(host))).toBeDefined();
    });
    await inExcel(
      demonstration(),
      {
        api: "1.12",
        happens: { call: refusing("addin.setStartupBehavior", ["ApiNotFound", "Not supported."]) },
      },
      async (_, host) =>
        says(String(await said(host.openingOfPane.keep(true))), [/by hand|each time|open it/]),
    );
  },
};
