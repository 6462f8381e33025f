/** Adding rows, from the pane and from the ribbon. */
import { address } from "../../../src/formula/address";
import { registerCommands } from "../../../src/hosts/excel/ribbon";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";
import { namedColumn } from "../../../src/workbooks/named";
import { ABORTED, disconnected, refusing } from "../excel/happens";
import { officeError } from "../excel/strict";
import type { ExcelStandIn } from "../excelStandIn";
import {
  atFirstOutlet,
  checked,
  demonstration,
  failing,
  freed,
  heights,
  inExcel,
  inWords,
  priceOf,
  rowsAgree,
  said,
  says,
  seen,
  withPassword,
  zoneOf,
  type Cases,
} from "./ground";

const MIRROR = "Commissioning";
const rows = (count: number): SurveyRow[] =>
  Array.from({ length: count }, (_, index) => ({
    outlet: `S-${index}`,
    room: `room ${index}`,
    run: 10 + index,
  }));

/** A page's notice, as far as the ribbon's commands write into it. */
const notice = (): HTMLElement => {
  const element = {
    textContent: "",
    replaceChildren: (text: string) => void (element.textContent = text),
  };
  return element as unknown as HTMLElement;
};

export async function ribbon(excel: ExcelStandIn, name: string): Promise<void> {
  await new Promise<void>((completed) => excel.commands.get(name)!({ completed }));
}

async function passwordOn(sheet: string, count: number, ...also: RegExp[]): Promise<void> {
  await inExcel(demonstration(), {}, async (excel, host) => {
    withPassword(excel, sheet);
    await atFirstOutlet(excel);
    const before = seen(excel);
    says(await said(host.addRows(count)), [
      new RegExp(sheet),
      /password/,
      /Unprotect Sheet/,
      /nothing was (changed|added)/i,
      ...also,
    ]);
    expect(seen(excel)).toEqual(before);
    const [rooms, mirror] = heights(excel);
    freed(excel, sheet);
    says(await said(host.addRows(count)), [new RegExp(`${count} rows added`)]);
    expect(heights(excel)).toEqual([rooms! + count, mirror! + count]);
    rowsAgree(excel);
  });
}

export const rowCases: Cases = {
  "add-rows-password-on-target": () => passwordOn("Rooms", 10),
  "add-rows-password-on-last-mirror": () => passwordOn(MIRROR, 3),

  "add-rows-unprotect-denied-no-password": () =>
    inExcel(
      demonstration(),
      { happens: { call: refusing("WorksheetProtection.unprotect", ["AccessDenied", "Denied."]) } },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const [rooms, mirror] = heights(excel);
        const guards = JSON.stringify([...excel.state.protectedSheets]);
        says(await said(host.addRows(5)), [/5 rows added/], [/password/]);
        expect(heights(excel)).toEqual([rooms! + 5, mirror! + 5]);
        expect(JSON.stringify([...excel.state.protectedSheets])).toBe(guards);
      },
    ),

  "add-rows-reprotect-fails": () =>
    inExcel(
      demonstration(),
      { happens: { call: refusing("WorksheetProtection.protect", ["AccessDenied", "Denied."]) } },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const [rooms, mirror] = heights(excel);
        const sentence = await said(host.addRows(2));
        says(sentence, [/2 rows added/]);
        expect(heights(excel)).toEqual([rooms! + 2, mirror! + 2]);
        for (const { name } of demonstration().sheets.filter((one) => one.protected))
          if (!excel.state.protectedSheets.has(name)) says(sentence, [new RegExp(name), /Protect Sheet/]);
      },
    ),

  "add-rows-connection-lost-between-sheets": async () => {
    // As told: what follows the round trip with the insertions fails. Then harder: it breaks between two of them.
    let inserted = 0;
    const later = disconnected(1, 2, () => inserted > 0);
    await inExcel(
      demonstration(),
      {
        platform: "OfficeOnline",
        happens: { before: later, call: (call) => void (inserted += call === "Range.insert" ? 1 : 0) },
      },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const [rooms, mirror] = heights(excel);
        says(await said(host.addRows(4)), [/4 rows added/]);
        expect(heights(excel)).toEqual([rooms! + 4, mirror! + 4]);
      },
    );
    let met = 0;
    let trips = 0;
    await inExcel(
      demonstration(),
      {
        platform: "OfficeOnline",
        happens: {
          call: (call) => {
            if (call === "Range.insert" && (met += 1) === 2) throw officeError(...ABORTED);
          },
          before: () => {
            if (met >= 2 && (trips += 1) <= 2) throw officeError(...ABORTED);
          },
        },
      },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const [rooms, mirror] = heights(excel);
        const sentence = await said(host.addRows(4));
        says(sentence, [/connection/i], [/^4 rows added/]);
        const now = heights(excel);
        if (now[0] !== rooms || now[1] !== mirror) {
          const grown = now[0] !== rooms ? "Rooms" : MIRROR;
          says(sentence, [new RegExp(grown), /4 rows/, /row/]);
        }
        trips = 9;
        says(await said(host.addRows(4)), [/4 rows added/]);
        expect(heights(excel)).toEqual([rooms! + 4, mirror! + 4]);
        rowsAgree(excel);
      },
    );
  },

  "add-rows-response-lost-though-done": async () => {
    for (const code of ["RequestAborted", "GeneralException"]) {
      let times = 1;
      await inExcel(
        demonstration(),
        {
          platform: "OfficeOnline",
          happens: {
            after: (calls) => {
              if (times > 0 && calls.includes("Range.insert") && (times -= 1) === 0) failing(code);
            },
          },
        },
        async (excel, host) => {
          await atFirstOutlet(excel);
          const [rooms, mirror] = heights(excel);
          const sentence = await said(host.addRows(4));
          const [now, below] = heights(excel);
          expect(now! - rooms!).toBe(below! - mirror!);
          expect([0, 4]).toContain(now! - rooms!);
          if (now === rooms) says(sentence, [/taken back/], [/added/]);
          else says(sentence, [/4 rows added/]);
          rowsAgree(excel);
        },
      );
    }
  },

  "add-rows-colleague-inserts-meanwhile": () => {
    let done = false;
    const ground: { excel?: ExcelStandIn } = {};
    return inExcel(
      demonstration(),
      {
        platform: "OfficeOnline",
        happens: {
          before: (calls) => {
            if (done || !calls.includes("Range.insert")) return;
            done = true;
            ground.excel!.state.insertRows("Rooms", 1, 1);
          },
        },
      },
      async (excel, host) => {
        ground.excel = excel;
        await atFirstOutlet(excel);
        const [rooms, mirror] = heights(excel);
        // Full down to the closing row, so that a row too high lands between outlets.
        const { sheet, top, bottom: end, left } = zoneOf(excel, "rooms_outlet");
        for (let row = top + 1; row < end; row++)
          if (excel.state.shown(sheet, address(row, left)) === "")
            excel.type(sheet, address(row, left), `K-${row}`);
        const outlets = namedColumn(excel.book(), "rooms_outlet").filter(Boolean);
        const sentence = await said(host.addRows(3));
        if (/^Not done/.test(sentence)) expect(heights(excel)).toEqual([rooms, mirror]);
        else {
          expect(heights(excel)).toEqual([rooms! + 3, mirror! + 3]);
          expect(zoneOf(excel, "rooms_outlet").bottom).toBe(end + 4);
        }
        // Above the closing row there is room now, and every outlet is where it was.
        const column = namedColumn(excel.book(), "rooms_outlet");
        expect(column.filter(Boolean)).toEqual(outlets);
        expect(column.slice(-4).filter(Boolean)).toEqual([]);
        rowsAgree(excel);
        says(await said(host.addRows(1)), [/1 row added/]);
      },
    );
  },

  "add-rows-sheet-renamed": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      const name = "Zimmer 1. OG";
      excel.state.renameSheet("Rooms", name);
      await atFirstOutlet(excel);
      const [rooms, mirror] = heights(excel);
      says(await said(host.addRows(2)), [/2 rows added/]);
      expect(heights(excel)).toEqual([rooms! + 2, mirror! + 2]);
      says(await said(host.addOutlets(rows(2))), [/Zimmer 1\. OG/], [/not found|ItemNotFound/]);
      expect(sheetTexts(excel)).not.toMatch(/#REF!/);
      expect(await said(checked(host))).toMatch(/^Done/);
      expect(await host.enterOursAgain()).toBeDefined();
    }),

  "add-rows-mirror-sheet-deleted": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.deleteSheet(MIRROR);
      await atFirstOutlet(excel);
      const before = seen(excel);
      says(await said(host.addRows(3)), [
        new RegExp(MIRROR),
        /deleted/,
        /earlier version|Undo|copy/,
        /safe|as (it|they) (was|were)|nothing was/i,
      ]);
      expect(seen(excel)).toEqual(before);
      const [first] = await checked(host);
      says(inWords([first!]), [new RegExp(MIRROR), /missing|deleted|lost|gone/]);
    }),

  "add-rows-end-row-deleted": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      const { sheet, bottom } = zoneOf(excel, "rooms_outlet");
      const kept = excel.state.protectedSheets.get(sheet)!;
      excel.state.protectedSheets.delete(sheet);
      // Down to the last outlet, and the thin row with it.
      const filled = namedColumn(excel.book(), "rooms_outlet");
      const last = filled.length - [...filled].reverse().findIndex(Boolean) - 1;
      excel.state.deleteRows(sheet, bottom - (filled.length - 1 - last) + 1, filled.length - 1 - last);
      excel.state.protectedSheets.set(sheet, kept);
      await atFirstOutlet(excel);
      const before = heights(excel);
      const sentence = await said(host.addRows(2));
      says(sentence, [/closing row|end row|thin/]);
      if (/^Not done/.test(sentence)) expect(heights(excel)).toEqual(before);
      else {
        expect(heights(excel)).toEqual(before.map((height) => height + 2));
        rowsAgree(excel);
        // An outlet in the last new row counts.
        const price = await priceOf(host);
        const { top } = zoneOf(excel, "rooms_outlet");
        const newRow = zoneOf(excel, "rooms_outlet").bottom - 1;
        for (const key of ["receiver", "quantity", "from", "cable", "run", "plate"]) {
          const { left } = zoneOf(excel, `rooms_${key}`);
          excel.type(
            sheet,
            address(newRow, left),
            excel.state.shown(sheet, address(top + 1, left)) as string,
          );
        }
        expect(await priceOf(host)).not.toBe(price);
      }
    }),

  "add-rows-filtered": async () => {
    await inExcel(
      demonstration(),
      { happens: { call: refusing("Range.insert", ["FilteredRangeConflict", "Filtered."], 1) } },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const before = seen(excel);
        says(await said(host.addRows(3)), [/filter/, /Data, Clear|Data > Clear/]);
        expect(seen(excel)).toEqual(before);
        says(await said(host.addRows(3)), [/3 rows added/]);
      },
    );
    await inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.filtered.add("Rooms");
      await atFirstOutlet(excel);
      const [rooms, mirror] = heights(excel);
      says(await said(host.addRows(3)), [/3 rows added/, /filter/]);
      expect(heights(excel)).toEqual([rooms! + 3, mirror! + 3]);
      expect([...excel.state.filtered]).toEqual(["Rooms"]);
    });
  },

  "add-rows-merged-or-array-in-the-way": () =>
    inExcel(
      demonstration(),
      {
        happens: {
          call: refusing("Range.insert", ["InvalidOperation", "You cannot change part of an array."], 2),
        },
      },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const before = seen(excel);
        says(await said(host.addRows(2)), [
          /merged|array/,
          /row \d+/,
          /nothing was changed|taken back|as it was/i,
        ]);
        expect(seen(excel)).toEqual(before);
      },
    ),

  "add-rows-manual-calculation": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.manual = true;
      await atFirstOutlet(excel);
      says(await said(host.addRows(2)), [/2 rows added/, /manual/, /F9/]);
      expect(excel.state.manual).toBe(true);
      says(inWords(await checked(host)), [/calculation is set to manual/i, /F9/]);
    }),

  "add-rows-10000-on-web": () =>
    inExcel(demonstration(), { platform: "OfficeOnline" }, async (excel, host) => {
      await atFirstOutlet(excel);
      const before = seen(excel);
      const sentence = await said(host.addRows(10_000));
      if (/^Not done/.test(sentence)) {
        says(sentence, [/from 1 to \d+/]);
        expect(seen(excel)).toEqual(before);
      }
      expect(excel.syncs).toBeLessThanOrEqual(30);
      says(await said(host.addRows(10)), [/10 rows added/]);
    }),

  "add-rows-hidden-mirrors": async () => {
    for (const how of ["Hidden", "VeryHidden"])
      await inExcel(demonstration(), {}, async (excel, host) => {
        if (how === "Hidden") excel.state.sheet(MIRROR)!.hidden = true;
        else excel.state.veryHidden.add(MIRROR);
        await atFirstOutlet(excel);
        const [rooms, mirror] = heights(excel);
        says(await said(host.addRows(2)), [/2 rows added/, new RegExp(MIRROR)]);
        expect(heights(excel)).toEqual([rooms! + 2, mirror! + 2]);
        expect(excel.state.visibility(MIRROR)).toBe(how);
      });
  },

  "add-rows-ribbon-two-windows": () => {
    let inFront = true;
    return inExcel(
      demonstration(),
      {
        happens: {
          call: (call) => {
            if (inFront && /getActiveCell|activate/.test(call)) failing("InactiveWorkbook", "Not active.");
          },
        },
      },
      async (excel, host) => {
        await atFirstOutlet(excel);
        const before = seen(excel);
        const place = notice();
        registerCommands(host, place);
        await ribbon(excel, "addRow");
        says(place.textContent, [/another workbook is in front/i, /click/i]);
        expect(excel.panesShown).toBe(1);
        says(await said(host.goTo("Rooms", "H8")), [/another workbook is in front/i]);
        expect(seen(excel)).toEqual(before);
        inFront = false;
        const [rooms] = heights(excel);
        await ribbon(excel, "addRow");
        expect(heights(excel)[0]).toBe(rooms! + 1);
      },
    );
  },

  "ribbon-add-row-pane-closed-error": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      withPassword(excel, "Rooms");
      await atFirstOutlet(excel);
      const before = seen(excel);
      const place = notice();
      registerCommands(host, place);
      for (let press = 1; press <= 2; press++) {
        await ribbon(excel, "addRow");
        says(place.textContent, [/Rooms/, /password/]);
        expect(excel.panesShown).toBe(press);
      }
      expect(seen(excel)).toEqual(before);
    }),
};

export const surveyCases: Cases = {
  "survey-more-than-rows-protected": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      withPassword(excel, "Rooms");
      const { top, bottom } = zoneOf(excel, "rooms_outlet");
      const filled = namedColumn(excel.book(), "rooms_outlet");
      const free = [...filled].reverse().findIndex(Boolean) - 1;
      expect(bottom - top).toBeGreaterThan(free);
      const many = rows(free + 7);
      const before = seen(excel);
      says(await said(host.addOutlets(many)), [
        new RegExp(`${many.length} outlets`),
        new RegExp(`room for ${free}`),
        /Rooms/,
        /password/,
        /nothing was (written|changed)/i,
      ]);
      expect(seen(excel)).toEqual(before);
      freed(excel, "Rooms");
      says(await said(host.addOutlets(many)), [new RegExp(`^${many.length} outlets added`)]);
    }),

  "survey-colleague-fills-free-row": () =>
    inExcel(demonstration(), { platform: "OfficeOnline" }, async (excel, host) => {
      const { sheet, top, left } = zoneOf(excel, "rooms_outlet");
      const filled = namedColumn(excel.book(), "rooms_outlet");
      const free = top + filled.length - [...filled].reverse().findIndex(Boolean);
      excel.type(sheet, address(free, left), "K-99");
      says(await said(host.addOutlets(rows(3))), [new RegExp(`from row ${free + 2} on`)]);
      expect(excel.state.shown(sheet, address(free, left))).toBe("K-99");
      expect(namedColumn(excel.book(), "rooms_outlet").filter((one) => /^S-/.test(String(one)))).toHaveLength(
        3,
      );
    }),

  "survey-connection-lost-between-blocks": () => {
    // All of a survey goes in one round trip, so it breaks within that: after the first column was written.
    let met = 0;
    let trips = 0;
    return inExcel(
      demonstration(),
      {
        platform: "OfficeOnline",
        happens: {
          call: (call) => {
            if (call === "Range.formulas" && (met += 1) === 2) throw officeError(...ABORTED);
          },
          before: () => {
            if (met >= 2 && (trips += 1) <= 2) throw officeError(...ABORTED);
          },
        },
      },
      async (excel, host) => {
        const many = rows(300);
        const before = seen(excel);
        const sentence = await said(host.addOutlets(many));
        says(sentence, [/connection/i], [/300 outlets added/]);
        if (JSON.stringify(seen(excel)) !== JSON.stringify(before)) says(sentence, [/row \d+/, /Rooms/]);
        trips = 9;
        // As the pane does: it reads the sheet, leaves out what stands there, and adds the rest.
        const known = new Set(namedColumn(await host.readBook(), "rooms_outlet").map(String));
        says(await said(host.addOutlets(many.filter(({ outlet }) => !known.has(String(outlet))))), [/added/]);
        const there = namedColumn(excel.book(), "rooms_outlet")
          .map(String)
          .filter((one) => /^S-/.test(one));
        expect(there).toEqual(many.map(({ outlet }) => outlet));
      },
    );
  },

  "survey-filtered-hidden-rows-look-free": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      excel.state.filtered.add("Rooms");
      const { top } = zoneOf(excel, "rooms_outlet");
      const filled = namedColumn(excel.book(), "rooms_outlet");
      const next = top + filled.length - [...filled].reverse().findIndex(Boolean);
      says(await said(host.addOutlets(rows(2))), [
        /2 outlets added/,
        new RegExp(`row ${next + 1}\\b`),
        /filter/,
      ]);
      expect(namedColumn(excel.book(), "rooms_outlet").slice(0, next - top)).toEqual(
        filled.slice(0, next - top),
      );
    }),

  "survey-csv-formula-and-wrong-file": () =>
    inExcel(demonstration(), {}, async (excel, host) => {
      const texts = ['=HYPERLINK("http://x","y")', "+1", "@x", "-R2"];
      const quoted = (text: string): string => `"${text.replace(/"/g, '""')}"`;
      const csv = [
        "outlet,room,run (m),cable,plate",
        ...texts.map((text, row) => `S-${row},${quoted(text)},${10 + row},indoor drop,single outlet`),
      ];
      const before = seen(excel);
      const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
      const container = new Uint8Array(4096);
      container.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
      container.set(new Uint8Array(Buffer.from("EncryptedPackage", "utf16le")), 1024);
      const png = new Uint8Array([
        0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52,
      ]);
      says(await said(host.readTables(container)), [/password|encrypt/i]);
      says(await said(host.readTables(png)), [/neither|not |no /], [/Invalid zip/]);
      for (const none of ["", "outlet,room,run (m)\n"]) {
        const told = readSurvey(await host.readTables(bytes(none)), { unit: "m" });
        expect(told.rows).toEqual([]);
        expect(told.troubles.map(({ reason }) => reason).join(" ")).toMatch(/empty|no |nothing|none/i);
      }
      expect(seen(excel)).toEqual(before);
      const survey = readSurvey(await host.readTables(bytes(csv.join("\n"))), { unit: "m" });
      await host.addOutlets(survey.rows);
      const { sheet, left } = zoneOf(excel, "rooms_room");
      const { top } = zoneOf(excel, "rooms_outlet");
      const column = namedColumn(excel.book(), "rooms_outlet");
      const first = top + column.indexOf("S-0");
      texts.forEach((text, index) => {
        const at = address(first + index, left);
        expect(excel.state.shown(sheet, at)).toBe(text);
        expect(excel.state.formula(sheet, at)).toBeUndefined();
      });
    }),
};

const sheetTexts = (excel: ExcelStandIn): string =>
  JSON.stringify(excel.book().sheets.map(({ cells, results }) => [cells, results]));
