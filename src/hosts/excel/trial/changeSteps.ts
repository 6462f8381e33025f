/** Changes as the add-in makes them: grouped, taken back where they fail, repaired. */
import { NAMESPACE } from "../../../formula/namespace";
import { RIGSHEET_VERSION } from "../../../version";
import { changeExcel, hasApi } from "../inExcel";
import {
  bad,
  refusalOf,
  entered,
  good,
  look,
  notRun,
  settled,
  sheetOf,
  shown,
  type Ground,
  type Step,
} from "./steps";

const NEWEST = 21;
export const newestApi = (): string =>
  Array.from({ length: NEWEST }, (_, index) => `1.${NEWEST - index}`).find(hasApi) ?? "none";

/** Three small edits in two round trips. */
export async function threeEdits(context: Excel.RequestContext, ground: Ground, row: number): Promise<void> {
  const sheet = sheetOf(context, ground);
  sheet.getRange(`A${row}`).values = [[1]];
  sheet.getRange(`B${row}`).values = [[2]];
  await context.sync();
  sheet.getRange(`C${row}`).values = [[3]];
  await context.sync();
}

export const GROUP_ROW = 430;

export const undoGrouping: Step = {
  what: "Undo grouping",
  run: async (context, ground) => {
    if (!hasApi("1.20"))
      return notRun(`this Excel has ExcelApi ${newestApi()}, and groups came with ExcelApi 1.20`);
    let refusal: string | undefined;
    try {
      await Excel.run({ mergeUndoGroup: true }, (inner) => threeEdits(inner, ground, GROUP_ROW));
    } catch (error) {
      refusal = refusalOf(error);
      await Excel.run((inner) => threeEdits(inner, ground, GROUP_ROW));
    }
    const range = sheetOf(context, ground).getRange(`A${GROUP_ROW}:C${GROUP_ROW}`);
    range.load("values");
    await context.sync();
    const read = `${refusal ?? "no error"}; cells ${range.values[0]!.map(shown).join(", ")}`;
    if (range.values[0]!.join() !== "1,2,3") return bad("the edits are not there exactly once", read);
    return refusal === undefined
      ? good("accepted; whether one Ctrl+Z takes all back only a person can see", read)
      : look(
          `${refusal}; the same edits went through without a group, so each is a step of its own to take back`,
          read,
        );
  },
};

export const takesBack: Step = {
  what: "Takes back what it began",
  run: async (context, ground) => {
    const cell = sheetOf(context, ground).getRange("A440");
    cell.values = [["before"]];
    await context.sync();
    let refused = "not refused";
    try {
      await changeExcel<void, void>({
        plan: async () => undefined,
        carryOut: async (inner) => {
          sheetOf(inner, ground).getRange("A440").values = [["begun"]];
          await inner.sync();
          inner.workbook.worksheets.getItem(`no sheet ${ground.sheet}`).calculate(false);
          await inner.sync();
        },
        takeBack: async (inner) => {
          sheetOf(inner, ground).getRange("A440").values = [["before"]];
          await inner.sync();
        },
      });
    } catch (error) {
      refused = error instanceof Error ? error.message : String(error);
    }
    cell.load("values");
    await context.sync();
    const value: unknown = cell.values[0]![0];
    const read = `the cell holds “${shown(value)}”; ${refused}`;
    return value === "before" && refused !== "not refused"
      ? good("after a refusal in the middle the cell is as before", read)
      : bad("something half done is left", read);
  },
};

export const enteredAgain: Step = {
  what: "Formulas entered again",
  needs: "functions",
  run: async (context, ground) => {
    const at = "C441";
    // As a workbook stands that was opened before the add-in: a name that Excel does not know yet.
    const before = await entered(context, ground, { at, formula: `=${NAMESPACE}_.VERSION()` });
    const after = await entered(context, ground, { at, formula: `=${NAMESPACE}.VERSION()` });
    const read = `${shown(before.values[0]![0])}, then ${shown(after.values[0]![0])}`;
    if (!before.errors[0]![0]) return look("no error stood there to repair", read);
    return after.values[0]![0] === RIGSHEET_VERSION
      ? good("entered again, a formula answers", read)
      : look("entered again, a formula still does not answer: load the add-in again", read);
  },
};

export const notes: Step = {
  what: "Notes on cells",
  needsApi: "1.18",
  run: async (context, ground) => {
    sheetOf(context, ground).notes.add("A442", "a note");
    await context.sync();
    return good("taken");
  },
};

/** Only where the person has said that they will press the keys. */
export async function undoByHand(ground: Ground, asked: () => Promise<boolean>) {
  const row = GROUP_ROW + 2;
  await Excel.run(hasApi("1.20") ? { mergeUndoGroup: true } : {}, (context) =>
    threeEdits(context, ground, row),
  );
  if (!(await asked())) return notRun("asked of you, no answer");
  return await Excel.run(async (context) => {
    const { values } = await settled(context, sheetOf(context, ground).getRange(`A${row}:C${row}`));
    const left = values[0]!.filter((value) => value !== "").length;
    const read = `${values[0]!.map(shown).join(", ")}, read after you pressed`;
    if (left === 0) return good("one Ctrl+Z took all three edits back", read);
    return look(
      left === 3
        ? "one Ctrl+Z took none of the three edits back"
        : `one Ctrl+Z took only ${3 - left} of three edits back: groups are accepted here, and do not hold`,
      read,
    );
  });
}
