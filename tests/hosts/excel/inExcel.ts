import { ExcelStandIn, type StandInOptions } from "../../support/excelStandIn";

/** Runs the work with a stand-in for Excel in place, and takes it away afterwards. */
export async function inExcel(
  options: StandInOptions,
  work: (excel: ExcelStandIn) => Promise<void> | void,
): Promise<void> {
  const excel = new ExcelStandIn(options);
  const remove = excel.install();
  try {
    await work(excel);
  } finally {
    remove();
  }
}
