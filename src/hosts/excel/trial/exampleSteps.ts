/** Every function by the published figures that it is declared with: whether it is there, and gives them. */
import { address } from "../../../formula/address";
import { NAMESPACE } from "../../../formula/namespace";
import { allFunctions } from "../../../functions/all";
import type { Example } from "../../../functions/core/declare";
import {
  bad,
  calculated,
  entered,
  good,
  look,
  settled,
  sheetOf,
  shown,
  type Ground,
  type Step,
} from "./steps";

/** Where the examples begin; each has as many rows as it fills, and one to part it from the next. */
const FIRST_ROW = 100;
const COLUMN = 26;

interface Placed {
  readonly name: string;
  readonly example: Example;
  readonly row: number;
}

const rowsOf = ({ result }: Example): readonly (readonly (number | string)[])[] =>
  typeof result === "object" ? result : [[result]];

function placedExamples(): { placed: Placed[]; all: string } {
  let row = 0;
  let columns = 1;
  const placed = allFunctions.flatMap(({ name, examples }) =>
    examples.map((example) => {
      const one = { name, example, row };
      row += rowsOf(example).length + 1;
      columns = Math.max(columns, ...rowsOf(example).map((line) => line.length));
      return one;
    }),
  );
  const last = address(FIRST_ROW + row - 1, COLUMN + columns - 1);
  return { placed, all: `${address(FIRST_ROW, COLUMN)}:${last}` };
}

/** In every language the word for a name that Excel does not know. */
const unknownName = async (context: Excel.RequestContext, ground: Ground): Promise<string> => {
  const call = { at: "C90", formula: `=${NAMESPACE}.NO_FUNCTION_OF_OURS()` };
  return String((await entered(context, ground, call)).values[0]![0]);
};

/** Leaves them where they are for {@link publishedFigures}. */
export const everyFunction: Step = {
  what: "Every function is there",
  needs: "spill",
  run: async (context, ground) => {
    const unknown = await unknownName(context, ground);
    const { placed, all } = placedExamples();
    const sheet = sheetOf(context, ground);
    for (const { example, row } of placed)
      sheet.getCell(FIRST_ROW + row, COLUMN).formulas = [[`=${example.formula}`]];
    calculated(context, ground);
    const { values, errors } = await settled(context, sheet.getRange(all));
    const missing = placed.filter(({ row }) => errors[row]![0] && values[row]![0] === unknown);
    const names = [...new Set(missing.map(({ name }) => name))];
    const read = `${allFunctions.length - names.length} of ${allFunctions.length} known`;
    return names.length === 0
      ? good(read)
      : bad(
          `${read}; not known here: ${names.join(", ")}. Excel holds an older list of functions: load the add-in again`,
          read,
        );
  },
};

export const publishedFigures: Step = {
  what: "Published figures",
  needs: "spill",
  run: async (context, ground) => {
    const { placed, all } = placedExamples();
    const range = sheetOf(context, ground).getRange(all);
    const isRight = (values: unknown[][], { example, row }: Placed): boolean =>
      rowsOf(example).every((line, down) =>
        line.every((wanted, across) => agrees(values[row + down]![across], wanted, example.tolerance ?? 0)),
      );
    const { values } = await settled(
      context,
      range,
      (all) => placed.every((one) => isRight(all, one)),
      5_000,
    );
    range.clear("Contents");
    await context.sync();
    const wrong = placed.filter((one) => !isRight(values, one));
    const counted = `${placed.length - wrong.length} of ${placed.length} examples as their sources say`;
    if (wrong.length === 0) return good(counted);
    const told = wrong.slice(0, 5).map(({ example, row }) => {
      const got = rowsOf(example).map((line, down) =>
        line.map((_, across) => shown(values[row + down]![across])).join(" "),
      );
      return `${example.formula} gives ${got.join(" / ")}`;
    });
    return bad(counted, told.join("; "));
  },
};

function agrees(value: unknown, wanted: number | string, tolerance: number): boolean {
  if (typeof wanted === "string") return value === wanted;
  return typeof value === "number" && Math.abs(value - wanted) <= tolerance + 1e-9 * Math.abs(wanted);
}

export const functionTime: Step = {
  what: "Function time",
  needs: "spill",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    const inputs = sheet.getRange("A100:A399");
    sheet.getRange("C100").formulas = [["=RIG.AZIMUTH(A100:A399,-100,-90)"]];
    const times: number[] = [];
    let before: unknown;
    for (let run = 0; run < 3; run++) {
      const offset = Math.random();
      inputs.values = Array.from({ length: 300 }, (_, index) => [20 + offset + index / 10]);
      calculated(context, ground);
      const last = sheet.getRange("C399");
      const { milliseconds, values } = await settled(
        context,
        last,
        ([row]) => typeof row![0] === "number" && row![0] !== before,
        5_000,
      );
      before = values[0]![0];
      times.push(milliseconds);
    }
    sheet.getRange("C100").clear("Contents");
    inputs.clear("Contents");
    await context.sync();
    const [, middle = 0] = [...times].sort((a, b) => a - b);
    const read = `300 rows in one call, three times: ${times.join(", ")} ms`;
    return middle > 2_000 ? look(`${read}: slow`) : good(read);
  },
};
