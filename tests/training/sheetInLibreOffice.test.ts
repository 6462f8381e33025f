/** The one formula of a trainee's sheet, counted by LibreOffice as well. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { trainingSets } from "../../src/training/sets/all";
import { traineeSheet } from "../../src/training/traineeSheet";
import { namedValue } from "../../src/workbooks/named";
import { recalculated, withLibreOffice } from "../support/tools";

withLibreOffice("LibreOffice counts the open answers of a sheet like the grid's engine", async () => {
  const set = trainingSets[1]!;
  const book = traineeSheet(set, 3, { name: "Ann", occurrence: 1 }, { metres: 12 });
  const again = await recalculated(await writeXlsx(book), { to: "xlsx" });
  expect(namedValue(await readXlsx(again), "checks_verdict")).toBe(
    `${set.questions.length - 1} still to answer`,
  );
});
