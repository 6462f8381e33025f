/** Work inside Excel: batches whose errors are sentences, one undo step for each button. */
import { asTrouble } from "./excelTrouble";

type Batch<T> = (context: Excel.RequestContext) => Promise<T>;

/** Whether this Excel has a set of the programming interface. */
export const hasApi = (version: string): boolean =>
  Office.context.requirements.isSetSupported("ExcelApi", version);

/** Dynamic arrays came with the calls that ask where a formula spills. */
export const spillsHere = (): boolean => hasApi("1.12");

/** Reads; while a cell is being edited it fails at once rather than wait unseen. */
export async function readExcel<T>(batch: Batch<T>): Promise<T> {
  try {
    return await Excel.run(batch);
  } catch (error) {
    throw asTrouble(error);
  }
}

/** Changes the workbook: all of it is one step to take back, where this Excel can group steps. */
export async function changeExcel<T>(batch: Batch<T>): Promise<T> {
  try {
    return hasApi("1.20") ? await Excel.run({ mergeUndoGroup: true }, batch) : await Excel.run(batch);
  } catch (error) {
    throw asTrouble(error);
  }
}
