/** Arrays: whether they fill cells, and what Excel makes of their formulas. */
import { cellsOf } from "../cellsOf";
import { hasApi } from "../inExcel";
import { azimuthFormula, azimuthOf, drawn } from "./drawn";
import { bad, calculated, good, look, sameNumber, settled, sheetOf, shown, type Step } from "./steps";

const FORMULA = azimuthFormula("A70:A72");

export const spill: Step = {
  what: "Spill",
  needs: "functions",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    const latitudes = [drawn(), drawn(), drawn()];
    const wanted = latitudes.map(azimuthOf);
    sheet.getRange("A70:A72").values = latitudes.map((one) => [one]);
    sheet.getRange("C70").formulas = [[FORMULA]];
    calculated(context, ground);
    const range = sheet.getRange("C70:C72");
    const { values } = await settled(context, range, ([first]) => sameNumber(first![0], wanted[0]));
    let where = "not asked";
    if (hasApi("1.12")) {
      const area = sheet.getRange("C70").getSpillingToRangeOrNullObject();
      area.load("address");
      await context.sync();
      where = area.isNullObject ? "no range" : cellsOf(area);
    }
    const right = values.filter(([value], row) => sameNumber(value, wanted[row])).length;
    const read = `${values.map(([value]) => shown(value)).join(", ")}; expected ${wanted.join(", ")}; fills ${where}`;
    if (right === 3) return good("three rows out of one formula", read);
    ground.noSpill = `arrays fill one cell only (${right} of 3 rows)`;
    return bad(
      `only the first of three rows is filled: one cell for a whole column. Our workbooks do not work here`,
      read,
    );
  },
};

export const atSign: Step = {
  what: "At sign",
  needs: "functions",
  run: async (context, ground) => {
    const range = sheetOf(context, ground).getRange("C70");
    range.load("formulas");
    await context.sync();
    const read = String(range.formulas[0]![0]);
    if (/@|SINGLE\(/i.test(read))
      return bad(`an @ was put before our call, so that it gives one value: ${read}`, read);
    return read.replace(/\s/g, "").toUpperCase() === FORMULA.toUpperCase()
      ? good("the formula comes back as it was entered", read)
      : look(`the formula comes back in other words: ${read}`, read);
  },
};

export const longSpill: Step = {
  what: "Long spill",
  needs: "spill",
  run: async (context, ground) => {
    const rows = 2_000;
    const sheet = sheetOf(context, ground);
    const latitudes = Array.from({ length: rows }, drawn);
    const inputs = sheet.getRange(`N100:N${99 + rows}`);
    inputs.values = latitudes.map((one) => [one]);
    sheet.getRange("O100").formulas = [[azimuthFormula(`N100:N${99 + rows}`)]];
    calculated(context, ground);
    const wanted = latitudes.map(azimuthOf);
    const { values, milliseconds } = await settled(context, sheet.getRange(`O100:O${99 + rows}`), (all) =>
      sameNumber(all[rows - 1]![0], wanted[rows - 1]),
    );
    const right = values.filter(([value], row) => sameNumber(value, wanted[row])).length;
    sheet.getRange("O100").clear("Contents");
    inputs.clear("Contents");
    await context.sync();
    const read = `${right} of ${rows} rows right after ${milliseconds} ms`;
    if (right < rows) return bad(read);
    return milliseconds > 5_000 ? look(`${read}: slow`) : good(read);
  },
};

export const blocked: Step = {
  what: "Blocked spill",
  needs: "spill",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    sheet.getRange("E71").values = [["in the way"]];
    await context.sync();
    sheet.getRange("E70").formulas = [[FORMULA]];
    calculated(context, ground);
    const range = sheet.getRange("E70:E72");
    const before = await settled(context, range, (_, [first]) => first![0]!, 5_000);
    sheet.getRange("E71").clear("Contents");
    calculated(context, ground);
    const after = await settled(context, range, (all) => all.every(([value]) => typeof value === "number"));
    const read = `${before.values.map(([value]) => shown(value)).join(", ")}; then ${after.values.map(([value]) => shown(value)).join(", ")}`;
    if (before.values[1]![0] !== "in the way") return bad("the text that stood in the way is gone", read);
    if (!before.errors[0]![0]) return bad("no error says that something stands in the way", read);
    return after.done
      ? good("an error says so, and the array comes when the way is free", read)
      : bad("the array does not come when the way is free", read);
  },
};

export const nativeOverOurs: Step = {
  what: "Excel's own formulas over ours",
  needs: "spill",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    const latitudes = [drawn(), drawn(), drawn()];
    sheet.getRange("A80:A82").values = latitudes.map((one) => [one]);
    sheet.getRange("C80").formulas = [[azimuthFormula("A80:A82")]];
    const inputs = sheet.getRange("A80");
    const sums = sheet.getRange("E80:H80");
    sums.formulas = [
      ["=SUM(C80:C82)", '=COUNTIF(C80:C82,">0")', "=INDEX(C80:C82,2)", "=SUMPRODUCT(C80:C82*1)"],
    ];
    calculated(context, ground);
    const [one, two, three] = latitudes.map(azimuthOf) as [number, number, number];
    const wanted = [one + two + three, 3, two, one + two + three];
    const all = await settled(context, sums, ([row]) =>
      wanted.every((each, at) => sameNumber(row![at], each)),
    );
    // A row of ours that refuses must not leave a total that looks right.
    inputs.values = [[95]];
    calculated(context, ground);
    const failed = await settled(context, sums, (_, [row]) => row![0]!, 5_000);
    const read = `${all.values[0]!.map(shown).join(", ")}, expected ${wanted.join(", ")}; with a row that refuses ${failed.values[0]!.map(shown).join(", ")}`;
    if (!all.done) return bad("they are not right", read);
    return failed.errors[0]![0]
      ? good("right, and a sum over a row that refuses is an error itself", read)
      : bad("a sum looks right although one of its rows refuses", read);
  },
};
