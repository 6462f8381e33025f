/** A job in Excel brought up to date with the firm's standards: where it is written, and how it is refused. */
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { takenByItself } from "../../../src/standards/inWords";
import { bringing } from "../../../src/standards/bringing";
import { upToDate } from "../../../src/standards/upToDate";
import { jobInputsOf } from "../../../src/workbooks/jobInputsOf";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { namedColumn } from "../../../src/workbooks/named";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import type { ExcelStandIn } from "../../support/excelStandIn";
import { drawnJob, nextEdition, nextStandards } from "../../support/firmsJob";
import { sentenceOf } from "../scenario";
import { inExcel } from "./inExcel";

const TODAY = sheetDate(2027, 1, 11);

const withJob = (work: (excel: ExcelStandIn, host: ExcelHost) => Promise<void>) =>
  inExcel({}, async (excel) => {
    excel.state.open(drawnJob());
    await work(excel, new ExcelHost());
  });

async function entriesFor(host: ExcelHost) {
  const found = upToDate(await host.readBook(), nextStandards());
  if (typeof found === "string") throw new Error(found);
  return bringing(found, takenByItself(found.differences), { today: TODAY });
}

test("rows are added to each list and to those that stand for them, and all of it is one step back", () =>
  withJob(async (excel, host) => {
    const entries = await entriesFor(host);
    const steps = excel.undoSteps;
    expect(await host.bringUpToDate(entries)).toMatch(/^The job is up to date with the standards/);
    expect(excel.undoSteps).toBe(steps + 1);
    const after = await host.readBook();
    for (const list of ["cables", "plates"]) {
      const wanted = nextEdition.blocks![list]!.map(({ name }) => name);
      for (const name of [`${list}_name`, `${list}_bought_name`])
        expect(namedColumn(after, name).filter((value) => value)).toEqual(wanted);
    }
    expect(jobInputsOf(multiRoom, after).fields).toMatchObject({
      site_usual_cable: "new cable 3",
      site_standards_edition: 4,
    });
    expect(upToDate(after, nextStandards())).toMatchObject({ differences: [] });
  }));

test("a sheet protected against new rows, or a name that is gone: a sentence, and nothing is written", async () => {
  await withJob(async (excel, host) => {
    const entries = await entriesFor(host);
    const before = jobInputsOf(multiRoom, await host.readBook());
    expect(await sentenceOf(host.bringUpToDate([...entries, { name: "no_such_name", value: 1 }]))).toMatch(
      /^The workbook has no cells named no_such_name any more/,
    );
    excel.state.protectedSheets.set("Parts", { insertRows: false });
    expect(await sentenceOf(host.bringUpToDate(entries))).toMatch(/Nothing was written\.$/);
    expect(jobInputsOf(multiRoom, await host.readBook())).toEqual(before);
  });
});
