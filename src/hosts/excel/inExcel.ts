/**
 * Work inside Excel: batches whose errors are sentences, one undo step for each
 * button, and nothing left half done.
 */
import { HostTrouble } from "../../pane/host";
import { asTrouble, troubles } from "./excelTrouble";

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

/** A change of the workbook: first all is looked at, then all is written. */
export interface Change<Plan, T> {
  /** Only reads, and throws where something is in the way. */
  readonly plan: Batch<Plan>;
  /** Only writes. */
  readonly carryOut: (context: Excel.RequestContext, plan: Plan) => Promise<T>;
  /** Takes back what a try that failed may have begun; left out where writing again does no harm. */
  readonly takeBack?: (context: Excel.RequestContext, plan: Plan) => Promise<void>;
}

/** Excel's answer where a call in a group can't be taken back with it (Office add-ins documentation, "Undo support"). */
export const UNGROUPABLE = "UndoNotSupported";
/** Some builds of Excel on the web refuse the very option of a group (OfficeDev/office-js #6711). */
const OPTION_REFUSED = "InvalidArgument";
/** Undo groups came with this set. */
const GROUPS = "1.20";

/** All of it is one step to take back where this Excel can group steps, and several where it answers that it can't. */
export async function changeExcel<Plan, T>({ plan, carryOut, takeBack }: Change<Plan, T>): Promise<T> {
  const made = await readExcel(plan);
  const tried = async (run: (batch: Batch<T>) => Promise<T>): Promise<T> => {
    try {
      return await run((context) => carryOut(context, made));
    } catch (error) {
      if (takeBack) await takenBack((context) => takeBack(context, made), error);
      throw error;
    }
  };
  const plainly = (): Promise<T> => tried((batch) => Excel.run(batch));
  try {
    if (!hasApi(GROUPS)) return await plainly();
    try {
      return await tried((batch) => Excel.run({ mergeUndoGroup: true }, batch));
    } catch (error) {
      const { code } = (error ?? {}) as { code?: unknown };
      if (code !== UNGROUPABLE && code !== OPTION_REFUSED) throw error;
      return await plainly();
    }
  } catch (error) {
    throw asTrouble(error);
  }
}

async function takenBack(batch: Batch<void>, cause: unknown): Promise<void> {
  try {
    await Excel.run(batch);
  } catch (error) {
    throw new HostTrouble(troubles.halfDone(), { cause: [cause, error] });
  }
}
