/** Protection of sheets, and rows that are inserted under it. */
import { cellsOf } from "../cellsOf";
import { azimuthFormula, azimuthOf, drawn } from "./drawn";
import {
  bad,
  calculated,
  refusalOf,
  good,
  look,
  sameNumber,
  settled,
  sheetOf,
  shown,
  type Ground,
  type Step,
} from "./steps";

/** As in our workbooks. */
const GUARD = { allowInsertRows: true, allowFormatColumns: true, allowFormatRows: true };

const FREE = "A400";
const FREE_FORMULA = "C400";
const LOCKED = "A401";
const NAME = "rigsheet_trial_cells";

async function outcome(context: Excel.RequestContext, work: () => void): Promise<string> {
  try {
    work();
    await context.sync();
    return "taken";
  } catch (error) {
    return refusalOf(error);
  }
}

const isProtected = async (context: Excel.RequestContext, ground: Ground): Promise<boolean> => {
  const { protection } = sheetOf(context, ground);
  protection.load("protected");
  await context.sync();
  return protection.protected;
};

/** Leaves the sheet unprotected, whatever happened. */
async function underGuard<T>(
  context: Excel.RequestContext,
  ground: Ground,
  free: readonly string[],
  work: (sheet: Excel.Worksheet) => Promise<T>,
): Promise<T> {
  const sheet = sheetOf(context, ground);
  for (const at of free) sheet.getRange(at).format.protection.locked = false;
  sheet.protection.protect(GUARD);
  await context.sync();
  try {
    return await work(sheet);
  } finally {
    if (await isProtected(context, ground)) {
      sheet.protection.unprotect();
      await context.sync();
    }
  }
}

export const protection: Step = {
  what: "Protection",
  run: async (context, ground) =>
    underGuard(context, ground, [FREE, FREE_FORMULA], async (sheet) => {
      const free = await outcome(context, () => (sheet.getRange(FREE).values = [[1]]));
      const formula = await outcome(context, () => (sheet.getRange(FREE_FORMULA).formulas = [["=1+1"]]));
      const locked = await outcome(context, () => (sheet.getRange(LOCKED).values = [[1]]));
      const { protection } = sheet;
      protection.load("protected,options");
      await context.sync();
      const read = `an input: ${free}; a formula in an unlocked cell: ${formula}; a locked cell: ${locked}; protected: ${protection.protected}, rows may be inserted: ${protection.options.allowInsertRows}`;
      if (!protection.protected) return look("the protection is lost: formulas could be typed over", read);
      if (locked === "taken")
        return bad("a locked cell can be written although the sheet says that it is protected", read);
      if (free !== "taken" || formula !== "taken")
        return bad(
          `what is unlocked can't be written (${free === "taken" ? formula : free}): rows can't be added nor formulas repaired`,
          read,
        );
      return protection.options.allowInsertRows
        ? good("unlocked cells can be written, locked ones refuse", read)
        : look("the protection's options are lost: rows can't be inserted by hand", read);
    }),
};

/** As Add rows does it: within the name, near its end. */
export const insertedRow: Step = {
  what: "Inserted row",
  needs: "spill",
  run: async (context, ground) => {
    const latitudes = [drawn(), drawn(), drawn()];
    const sheet = sheetOf(context, ground);
    const cells = sheet.getRange("A410:A412");
    cells.values = latitudes.map((one) => [one]);
    const named = sheet.names.add(NAME, cells);
    sheet.getRange("C410").formulas = [[azimuthFormula(NAME)]];
    await context.sync();
    try {
      return await underGuard(context, ground, ["A410:A413"], async () => {
        const insert = (): unknown => sheet.getRange("412:412").insert("Down");
        const first = await outcome(context, insert);
        let lifted = "";
        if (first !== "taken") {
          const again = await outcome(context, () => {
            sheet.protection.unprotect();
            insert();
            sheet.protection.protect(GUARD);
          });
          lifted = `; with the protection taken off: ${again}`;
          if (again !== "taken") return bad(`no row can be inserted (${first})`, `${first}${lifted}`);
        }
        const wrote = await outcome(context, () => (sheet.getRange("A412").values = [[drawn()]]));
        const range = named.getRange();
        range.load("address,values");
        await context.sync();
        calculated(context, ground);
        const inputs = range.values.map(([value]: unknown[]) => Number(value));
        const { values } = await settled(context, sheet.getRange("C410:C413"), (all) =>
          all.every(([value], row) => sameNumber(value, azimuthOf(inputs[row]!))),
        );
        const right = values.filter(([value], row) => sameNumber(value, azimuthOf(inputs[row]!))).length;
        const after = await isProtected(context, ground);
        const read = `row: ${first}${lifted}; an input in it: ${wrote}; the name covers ${cellsOf(range)}; ${right} of 4 rows right (${values.map(([value]) => shown(value)).join(", ")}); protected afterwards: ${after}`;
        if (inputs.length !== 4 || wrote !== "taken" || right < 4)
          return bad("the name, its new row or the array over it did not follow", read);
        if (!after) return look("the protection is gone afterwards: formulas could be typed over", read);
        return first === "taken"
          ? good("name and array follow, and the sheet stays protected", read)
          : look("it takes the protection off for a moment, by which what can be undone is lost", read);
      });
    } finally {
      named.delete();
      await context.sync().catch(() => undefined);
    }
  },
};
