/** The clean workbook saved again by other programs: nothing is found but what they really changed. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { review } from "../../src/review/review";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { recalculated, withLibreOffice } from "../support/tools";
import { mendedGuestHouse } from "./cleanJobs";

const LONG_MS = 240_000;
const original = recalculate(layOut(multiRoom, mendedGuestHouse()));
const reviewed = async (file: Uint8Array): Promise<Finding[]> => review(await readXlsx(file), recalculate);

describe("LibreOffice, which does not know our functions and shows #NAME? for them", () => {
  for (const recalculate of [false, true]) {
    withLibreOffice(`${recalculate ? "computed anew" : "as it opens"}: that is the one finding`, async () => {
      const file = await recalculated(await writeXlsx(original), { to: "xlsx", recalculate });
      const { sheets } = await readXlsx(file);
      expect(sheets.flatMap(({ results }) => Object.values(results))).toContainEqual(
        expect.objectContaining({ error: "#NAME?" }),
      );
      expect(await reviewed(file)).toEqual([
        expect.objectContaining({ rule: "stale value", weight: "doubtful" }),
      ]);
    });
  }

  withLibreOffice("a mistake made there is found all the same, in its cell", async () => {
    const job = mendedGuestHouse();
    job.blocks.rooms![3]!.from = "Z9";
    const file = await writeXlsx(recalculate(layOut(multiRoom, job)));
    const findings = await reviewed(await recalculated(file, { to: "xlsx" }));
    expect(findings).toContainEqual(expect.objectContaining({ rule: "feeding" }));
  });
});

const LIBRARY = "@cj-tech-master/excelts";

test(
  `${LIBRARY}, which drops the mark of the template: that is the one finding`,
  async () => {
    const { Workbook } = await import("@cj-tech-master/excelts");
    const workbook = new Workbook();
    await workbook.xlsx.load(Buffer.from(await writeXlsx(original)));
    const again = new Uint8Array(await workbook.xlsx.writeBuffer());
    expect((await readXlsx(again)).template).toBe("");
    expect(await reviewed(again)).toEqual([
      expect.objectContaining({ rule: "not our template", weight: "worth knowing" }),
    ]);
  },
  LONG_MS,
);
