/** Whether the functions answer in this Excel, and as their sources say. */
import { address } from "../../../formula/address";
import { allFunctions } from "../../../functions/all";
import type { Example } from "../../../functions/core/declare";
import { BLANKS_AS_ZERO } from "../../../functions/core/blanksAsZero";
import { RIGSHEET_VERSION } from "../../../version";
import { bad, good, look, settled, shown, type Step } from "./steps";

/** On the sheet: inputs in column A, formulas from column C on. */
const CALL = "C2";

export const answers: Step = {
  what: "Functions answer",
  run: async (context, ground) => {
    const cell = context.workbook.worksheets.getItem(ground.sheet).getRange(CALL);
    cell.formulas = [["=RIG.VERSION()"]];
    const { values, milliseconds, done } = await settled(context, cell);
    const said = String(values[0]![0]);
    if (said === RIGSHEET_VERSION) return good(`version ${said} after ${milliseconds} ms`);
    if (/^\d+\.\d+\.\d+/.test(said))
      return bad(
        `version ${said}, and the pane is ${RIGSHEET_VERSION}: figures may differ. Close Excel and open it again; if it stays, clear the add-in's cache`,
      );
    ground.silence = done ? `the functions answer ${said}` : `still ${said} after ${milliseconds} ms`;
    return bad(`${ground.silence}. Close the pane, open it again, and try once more`);
  },
};

export const blanks: Step = {
  what: "Blank cells reach the functions as blanks",
  needsFunctions: true,
  run: async (context, { sheet }) => {
    const target = context.workbook.worksheets.getItem(sheet);
    const range = target.getRange("C3:C4");
    range.formulas = [["=RIG.VERSION(A50)"], ["=RIG.VERSION(A50:A53)"]];
    const { values } = await settled(context, range);
    const readings = values.map(
      ([value], index) => `${index === 0 ? "one cell" : "a range"} ${shown(value)}`,
    );
    const found = readings.join("; ");
    if (values.some(([value]) => String(value).includes(BLANKS_AS_ZERO)))
      return bad(
        `${found}: levels and volts of our workbooks are wrong here. Update this Excel, or use the desk`,
      );
    return values.every(([value]) => value === RIGSHEET_VERSION) ? good(found) : bad(found);
  },
};

export const errorsInCells: Step = {
  what: "An error in a cell stays in its own row",
  needsFunctions: true,
  run: async (context, { sheet }) => {
    const target = context.workbook.worksheets.getItem(sheet);
    target.getRange("A5:A7").formulas = [[35], ["=NA()"], [35]];
    target.getRange("C5").formulas = [["=RIG.AZIMUTH(A5:A7,-100,-90)"]];
    const range = target.getRange("C5:C7");
    const { values } = await settled(context, range);
    const found = values.map(([value]) => shown(value)).join(", ");
    const [first, second, third] = values.map(([value]) => value);
    // Roddy, Satellite Communications, 4th ed., example 3.1: 162.9 degrees.
    const isAzimuth = (value: unknown): boolean =>
      typeof value === "number" && Math.abs(value - 162.9) < 0.05;
    const isError = typeof second === "string" && second.startsWith("#");
    if (isAzimuth(first) && isError && isAzimuth(third)) return good(found);
    return bad(`${found}; wanted are 162.9, an error, 162.9`);
  },
};

/** Where the examples begin; each has as many rows as it fills, and one to part it from the next. */
const FIRST_EXAMPLE_ROW = 100;
const EXAMPLE_COLUMN = 4;

interface Placed {
  readonly example: Example;
  readonly row: number;
}

const rowsOf = ({ result }: Example): readonly (readonly (number | string)[])[] =>
  typeof result === "object" ? result : [[result]];

function placedExamples(): { placed: Placed[]; rows: number; columns: number } {
  let row = 0;
  let columns = 1;
  const placed = allFunctions.flatMap(({ examples }) =>
    examples.map((example) => {
      const one = { example, row };
      row += rowsOf(example).length + 1;
      columns = Math.max(columns, ...rowsOf(example).map((line) => line.length));
      return one;
    }),
  );
  return { placed, rows: row, columns };
}

/** The published figures that the functions are declared with. */
export const publishedExamples: Step = {
  what: "Functions give what their sources say",
  needsFunctions: true,
  run: async (context, { sheet }) => {
    const { placed, rows, columns } = placedExamples();
    const target = context.workbook.worksheets.getItem(sheet);
    for (const { example, row } of placed)
      target.getCell(FIRST_EXAMPLE_ROW + row, EXAMPLE_COLUMN).formulas = [[`=${example.formula}`]];
    const first = address(FIRST_EXAMPLE_ROW, EXAMPLE_COLUMN);
    const last = address(FIRST_EXAMPLE_ROW + rows - 1, EXAMPLE_COLUMN + columns - 1);
    const { values, milliseconds } = await settled(context, target.getRange(`${first}:${last}`));
    const wrong = placed.filter(
      ({ example, row }) =>
        !rowsOf(example).every((line, down) =>
          line.every((wanted, across) => agrees(values[row + down]![across], wanted, example.tolerance ?? 0)),
        ),
    );
    const counted = `${placed.length - wrong.length} of ${placed.length} examples in ${milliseconds} ms`;
    if (wrong.length === 0) return good(counted);
    const told = wrong.slice(0, 5).map(({ example, row }) => {
      const got = rowsOf(example).map((line, down) =>
        line.map((_, across) => shown(values[row + down]![across])).join(" "),
      );
      return `${example.formula} gives ${got.join(" / ")}`;
    });
    return bad(`${counted}; ${told.join("; ")}`);
  },
};

function agrees(value: unknown, wanted: number | string, tolerance: number): boolean {
  if (typeof wanted === "string") return value === wanted;
  return typeof value === "number" && Math.abs(value - wanted) <= tolerance + 1e-9 * Math.abs(wanted);
}

export const speed: Step = {
  what: "Time for 300 rows in one call, and for 100 calls",
  needsFunctions: true,
  run: async (context, { sheet }) => {
    const target = context.workbook.worksheets.getItem(sheet);
    target.getRange("A1000:A1299").values = Array.from({ length: 300 }, (_, index) => [index / 10]);
    await context.sync();
    target.getRange("C1000").formulas = [["=RIG.AZIMUTH(A1000:A1299,-100,-90)"]];
    const all = await settled(context, target.getRange("C1000:C1299"));
    target.getRange("D1000:D1099").formulas = Array.from({ length: 100 }, (_, index) => [
      `=RIG.AZIMUTH(A${1000 + index},-100,-90)`,
    ]);
    const each = await settled(context, target.getRange("D1000:D1099"));
    const filled = (values: unknown[][]): number =>
      values.filter(([value]) => typeof value === "number").length;
    const found = `300 rows ${all.milliseconds} ms, 100 calls ${each.milliseconds} ms`;
    if (filled(all.values) < 300 || filled(each.values) < 100)
      return bad(
        `${found}; numbers in ${filled(all.values)} of 300 rows and ${filled(each.values)} of 100 cells`,
      );
    return all.milliseconds + each.milliseconds > 10_000 ? look(`${found}: slow`) : good(found);
  },
};
