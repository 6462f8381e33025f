/** What this Excel does with sheets: arrays, names, rows, undo, protection, large requests. */
import { changeExcel, hasApi } from "../inExcel";
import { bad, codeOf, good, look, notRun, settled, shown, type Ground, type Step } from "./steps";

const sheetOf = ({ workbook }: Excel.RequestContext, { sheet }: Ground): Excel.Worksheet =>
  workbook.worksheets.getItem(sheet);

export const spills: Step = {
  what: "An array of ours spills",
  needsFunctions: true,
  needsApi: "1.12",
  run: async (context, ground) => {
    const target = sheetOf(context, ground);
    target.getRange("A10:A12").values = [[35], [36], [37]];
    target.getRange("C10").formulas = [["=RIG.AZIMUTH(A10:A12,-100,-90)"]];
    const { values } = await settled(context, target.getRange("C10:C12"));
    const area = target.getRange("C10").getSpillingToRangeOrNullObject();
    area.load("address");
    await context.sync();
    const where = area.isNullObject ? "nowhere" : area.address.slice(area.address.lastIndexOf("!") + 1);
    const found = `spills to ${where}: ${values.map(([value]) => shown(value)).join(", ")}`;
    const isWhole = where.replace(/\$/g, "") === "C10:C12";
    return isWhole && values.every(([value]) => typeof value === "number") ? good(found) : bad(found);
  },
};

export const readBack: Step = {
  what: "Formulas come back as they were entered",
  run: async (context, ground) => {
    const entered = ["=RIG.AZIMUTH(A10:A12,-100,-90)", "=SUM(A10:A12*2)", "=INDEX(A10:A12,2)"];
    const range = sheetOf(context, ground).getRange("F10:H10");
    range.formulas = [entered];
    range.load("formulas");
    await context.sync();
    const read = range.formulas[0]!.map(String);
    const plain = (formula: string): string => formula.replace(/\s/g, "").toUpperCase();
    const changed = entered.flatMap((formula, index) =>
      plain(read[index]!) === plain(formula) ? [] : [`${formula} as ${read[index]!}`],
    );
    if (changed.length === 0) return good(read.join("   "));
    return changed.some((one) => one.includes("@"))
      ? bad(`an @ was put in, by which a column becomes one value: ${changed.join("; ")}`)
      : look(changed.join("; "));
  },
};

export const blocked: Step = {
  what: "A spill in whose way something stands says so, and comes back",
  run: async (context, ground) => {
    const target = sheetOf(context, ground);
    target.getRange("F20").formulas = [["=A10:A12*2"]];
    target.getRange("F21").values = [["in the way"]];
    const before = await settled(context, target.getRange("F20"));
    target.getRange("F21").clear("Contents");
    const after = await settled(context, target.getRange("F20:F22"));
    const found = `${shown(before.values[0]![0])}, then ${after.values.map(([value]) => shown(value)).join(", ")}`;
    const back = after.values.every(([value]) => typeof value === "number");
    if (!back) return bad(found);
    return String(before.values[0]![0]) === "#SPILL!" ? good(found) : look(found);
  },
};

export const names: Step = {
  what: "Names of cells grow with rows that are inserted",
  run: async (context, ground) => {
    const { workbook } = context;
    const target = sheetOf(context, ground);
    const name = "rigsheet_trial_cells";
    target.getRange("A30:A32").values = [[1], [2], [3]];
    workbook.names.getItemOrNullObject(name).delete();
    await context.sync().catch(() => undefined);
    const item = workbook.names.add(name, target.getRange("A30:A32"));
    target.getRange("C30").formulas = [[`=SUM(${name})`]];
    target.getRange("32:32").insert("Down");
    target.getRange("A32").values = [[10]];
    try {
      const { values } = await settled(context, target.getRange("C30"));
      return values[0]![0] === 16 ? good("1 + 2 + 10 + 3 = 16") : bad(`${shown(values[0]![0])}, not 16`);
    } finally {
      item.delete();
      target.getRange("32:32").delete("Up");
      await context.sync();
    }
  },
};

export const undo: Step = {
  what: "Several steps are one to take back",
  needsApi: "1.20",
  run: async (_, { sheet }) => {
    try {
      await Excel.run({ mergeUndoGroup: true }, async (context) => {
        const target = context.workbook.worksheets.getItem(sheet);
        target.getRange("A60").values = [[1]];
        target.getRange("A61").values = [[2]];
        await context.sync();
      });
      return good("a group of two writes was taken");
    } catch (error) {
      return look(`${codeOf(error)}; changes are made in single steps here`);
    }
  },
};

/** As in our workbooks. */
const GUARD = { allowInsertRows: true, allowFormatColumns: true, allowFormatRows: true };

export const protection: Step = {
  what: "Protection lets inputs and rows through, and nothing else",
  run: async (context, ground) => {
    const target = sheetOf(context, ground);
    target.getRange("A70").format.protection.locked = false;
    target.protection.protect(GUARD);
    await context.sync();
    const tried = async (work: () => void): Promise<string> => {
      try {
        work();
        await context.sync();
        return "taken";
      } catch (error) {
        return codeOf(error);
      }
    };
    try {
      const locked = await tried(() => (target.getRange("A71").values = [[1]]));
      const free = await tried(() => (target.getRange("A70").values = [[1]]));
      const rows = await tried(() => target.getRange("72:72").insert("Down"));
      const found = `a locked cell: ${locked}; an input: ${free}; a row: ${rows}`;
      if (locked === "taken" || free !== "taken") return bad(found);
      return rows === "taken"
        ? good(found)
        : look(`${found}; adding rows takes the protection off for a moment`);
    } finally {
      target.protection.unprotect();
      await context.sync();
    }
  },
};

const TRIPS = 10;

export const roundTrip: Step = {
  what: "Time of a round trip",
  run: async (context, ground) => {
    const cell = sheetOf(context, ground).getRange("A1");
    const times: number[] = [];
    for (let trip = 0; trip < TRIPS; trip++) {
      const began = performance.now();
      cell.load("values");
      await context.sync();
      times.push(performance.now() - began);
    }
    const [middle = 0] = times.sort((a, b) => a - b).slice(TRIPS / 2);
    const found = `${Math.round(middle)} ms in the middle of ${TRIPS}, ${Math.round(times.at(-1)!)} ms at most`;
    return middle > 500 ? look(`${found}: slow`) : good(found);
  },
};

export const largeRequest: Step = {
  what: "20,000 cells in one request",
  run: async (context, ground) => {
    const range = sheetOf(context, ground).getRange("J1:AC1000");
    const values = Array.from({ length: 1000 }, (_, row) =>
      Array.from({ length: 20 }, (__, column) => row * 20 + column),
    );
    const began = performance.now();
    range.values = values;
    await context.sync();
    const written = performance.now();
    range.load("values");
    await context.sync();
    const ended = performance.now();
    const found = `written in ${Math.round(written - began)} ms, read in ${Math.round(ended - written)} ms`;
    const same = JSON.stringify(range.values) === JSON.stringify(values);
    range.clear("Contents");
    await context.sync();
    return same ? good(found) : bad(`${found}; what was read is not what was written`);
  },
};

export const ownRefusal: Step = {
  what: "A change that Excel refuses leaves the sheet as it was",
  run: async (context, ground) => {
    const target = sheetOf(context, ground);
    target.getRange("A80").values = [["before"]];
    await context.sync();
    let refused = "not refused";
    try {
      await changeExcel<void, void>({
        plan: async () => undefined,
        carryOut: async (inner) => {
          const sheet = inner.workbook.worksheets.getItem(ground.sheet);
          sheet.getRange("A80").values = [["begun"]];
          inner.workbook.worksheets.getItem(`no sheet ${ground.sheet}`).activate();
          await inner.sync();
        },
        takeBack: async (inner) => {
          inner.workbook.worksheets.getItem(ground.sheet).getRange("A80").values = [["before"]];
          await inner.sync();
        },
      });
    } catch (error) {
      refused = error instanceof Error ? error.message : String(error);
    }
    const cell = target.getRange("A80");
    cell.load("values");
    await context.sync();
    const found = `A80 is “${shown(cell.values[0]![0])}”; ${refused}`;
    return cell.values[0]![0] === "before" && refused !== "not refused" ? good(found) : bad(found);
  },
};

export const notes: Step = {
  what: "Notes on cells",
  run: async (context, ground) => {
    if (!hasApi("1.18"))
      return notRun("this Excel gives add-ins no notes (ExcelApi 1.18); files bring theirs");
    sheetOf(context, ground).notes.add("A90", "a note");
    await context.sync();
    return good("taken");
  },
};
