/**
 * Sixty things that go wrong around the add-in, told by somebody who had not
 * seen its code (tests/fixtures/excelFaults): what has to be said, what must
 * not, what stands afterwards and that the way on works. Each happens in the
 * stand-in for Excel.
 *
 * The first run, over the code as it was then: 14 right, 41 wrong, 5 not to be
 * simulated here.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { ExcelStandIn } from "../../support/excelStandIn";
import { refusing } from "../../support/excel/happens";
import { demonstration, inExcel, said, says } from "../../support/excelFaults/ground";
import { fileCases } from "../../support/excelFaults/files";
import { readingCases } from "../../support/excelFaults/reading";
import { functionCases, repairCases } from "../../support/excelFaults/repair";
import { rowCases, surveyCases } from "../../support/excelFaults/rows";
import { startCases } from "../../support/excelFaults/start";

const told = JSON.parse(
  readFileSync(path.join(__dirname, "../../fixtures/excelFaults/faults.json"), "utf8"),
) as { readonly cases: readonly { readonly id: string; readonly situation: string }[] };

const cases = {
  ...startCases,
  ...functionCases,
  ...rowCases,
  ...surveyCases,
  ...readingCases,
  ...repairCases,
  ...fileCases,
};

/** Not to be simulated here. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  "add-rows-bad-input":
    "what people type into the field of a number; the counts themselves are in host.test.ts",
  "pictures-protected-or-old": "pictures stand in the pane, and none is put onto a sheet",
  "cautions-help-link-blocked": "of a page: help.test.ts presses Help where no window opens",
  "hosting-certificate-refused-office-js-blocked": "of a page: page.test.ts opens it without office.js",
  "try-excel-structure-protected-and-stops-midway": "held with the trial's own tests",
};

const LONG_MS = 240_000;

test("every case is simulated, or said why not", () => {
  expect([...Object.keys(cases), ...Object.keys(ELSEWHERE)].sort()).toEqual(
    told.cases.map(({ id }) => id).sort(),
  );
});

test.each(Object.entries(cases))("%s", (_, run) => run(), LONG_MS);

/** Issue threads of OfficeDev/office-js, 2026: `unprotect` refused on a sheet without a password. */
describe("builds that refuse to lift or to set protection", () => {
  const repaired = async (
    member: string,
    look: (excel: ExcelStandIn, sentence: string) => void,
  ): Promise<void> =>
    inExcel(
      demonstration(),
      { happens: { call: refusing(member, ["AccessDenied", "Denied."]) } },
      async (excel, host) => {
        excel.state.forgetOurs();
        look(excel, await said(host.enterOursAgain()));
      },
    );

  test("not lifted: each sheet is named, nothing is lost", () =>
    repaired("WorksheetProtection.unprotect", (excel, sentence) => {
      says(sentence, [/0 of \d+ formulas/, /“Rooms” is protected/, /Unprotect Sheet/]);
      expect(excel.state.protectedSheets.size).toBe(
        demonstration().sheets.filter((one) => one.protected).length,
      );
    }));

  test("not set again: the formulas are there, and each sheet without protection is named", () =>
    repaired("WorksheetProtection.protect", (excel, sentence) => {
      expect(excel.state.forgotten.size).toBe(0);
      for (const { name } of demonstration().sheets.filter((one) => one.protected))
        if (!excel.state.protectedSheets.has(name))
          says(sentence, [new RegExp(`“${name}”`), /Protect Sheet/]);
    }));
});
