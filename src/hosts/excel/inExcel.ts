/**
 * Work inside Excel: batches whose errors are sentences, one undo step for each
 * button, and nothing left half done.
 */
import { HostTrouble } from "../../pane/host";
import { asTrouble, codeOf, troubles, type OwnWords } from "./excelTrouble";

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
  /** What may stand there where even that fails, in words. */
  readonly left?: (plan: Plan) => string;
  readonly words?: (plan: Plan) => OwnWords;
}

/** Excel's answer where a call in a group can't be taken back with it (Office add-ins documentation, "Undo support"). */
export const UNGROUPABLE = "UndoNotSupported";
/** Some builds of Excel on the web refuse the very option of a group (OfficeDev/office-js #6711). */
const OPTION_REFUSED = "InvalidArgument";
/** Undo groups came with this set. */
const GROUPS = "1.20";

/** What could not be taken back when it should have been: a lost connection comes back. */
interface Owed {
  readonly takeBack: Batch<void>;
  readonly left: string;
}
let owed: Owed[] = [];

/** Takes back what is left of an earlier try; throws where that fails again. */
export async function settleOwed(): Promise<void> {
  for (const one of owed) {
    try {
      await Excel.run(one.takeBack);
    } catch (error) {
      throw stopped(one, error, error);
    }
    owed = owed.filter((other) => other !== one);
  }
}

/** All of it is one step to take back where this Excel can group steps, and several where it answers that it can't. */
export async function changeExcel<Plan, T>(change: Change<Plan, T>): Promise<T> {
  const { plan, carryOut, takeBack, left, words } = change;
  await settleOwed();
  const made = await readExcel(plan);
  let wasTakenBack = false;
  const tried = async (run: (batch: Batch<T>) => Promise<T>): Promise<T> => {
    try {
      return await run((context) => carryOut(context, made));
    } catch (error) {
      if (takeBack) {
        await takenBack({ takeBack: (context) => takeBack(context, made), left: left?.(made) ?? "" }, error);
        wasTakenBack = left !== undefined;
      }
      throw error;
    }
  };
  const plainly = (): Promise<T> => tried((batch) => Excel.run(batch));
  try {
    if (!hasApi(GROUPS)) return await plainly();
    try {
      return await tried((batch) => Excel.run({ mergeUndoGroup: true }, batch));
    } catch (error) {
      if (!isUngroupable(error)) throw error;
      return await plainly();
    }
  } catch (error) {
    const trouble = asTrouble(error, words?.(made));
    if (!wasTakenBack || trouble === error || !(trouble instanceof HostTrouble)) throw trouble;
    if (/nothing was/i.test(trouble.message)) throw trouble;
    throw new HostTrouble(`${trouble.message} ${troubles.takenBack()}`, { cause: error });
  }
}

/** A sentence may stand around it by then. */
const isUngroupable = (error: unknown): boolean => {
  const codes = [codeOf(error), error instanceof HostTrouble ? codeOf(error.cause) : undefined];
  return codes.some((code) => code === UNGROUPABLE || code === OPTION_REFUSED);
};

async function takenBack(one: Owed, cause: unknown): Promise<void> {
  try {
    await Excel.run(one.takeBack);
  } catch (error) {
    owed.push(one);
    throw stopped(one, cause, error);
  }
}

const stopped = ({ left }: Owed, cause: unknown, error: unknown): HostTrouble =>
  new HostTrouble(troubles.halfDone(left, codeOf(cause) ?? String(cause)), { cause: [cause, error] });
