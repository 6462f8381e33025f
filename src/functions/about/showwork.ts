import { ourName } from "../../formula/storedNames";
import { faults, isFault, type Fault } from "../../engine/faults";
import type { Step } from "../../engine/working/steps";
import { isMatrix, type Argument } from "../core/cells";
import { declare, type SheetFunction } from "../core/declare";
import { dispatch } from "../core/dispatch";
import { repeated, text } from "../core/parameters";
import { workedFunctions } from "./worked";

const NAMES = workedFunctions.map(({ name }) => name);

export const showwork = declare({
  name: "SHOWWORK",
  group: "About",
  summary: "A function's calculation line by line, ending with its own value.",
  parameters: [
    text({
      name: "function",
      help: `Name of the function as text: ${NAMES.join(", ")}.`,
      wanted: 'the name of a function, such as "CABLELOSS"',
    }),
    repeated({
      name: "arguments",
      help: "The arguments of that function, in its own order; one row at a time.",
      wanted: "the arguments of that function",
    }),
  ],
  result: {
    shape: "table",
    help: "A row for each step, the value of the last row being the function's own; for LOOKANGLES the last row is the slant range.",
    columns: ["symbol", "meaning", "value", "unit", "line of arithmetic", "source"],
  },
  equation: "The function's own equation, with the numbers filled in.",
  source: "The function's own; the last column names the source of each step.",
  accuracy:
    "The value column has every digit; the lines show numbers to eight. The angles in a line are in degrees.",
  tasks: [
    "How does this figure come about?",
    "Can I check this number with a pocket calculator?",
    "How do I show a trainee the way to the answer?",
  ],
  examples: [
    {
      formula: 'RIG.SHOWWORK("SELLPRICE",80,0.2)',
      result: [
        ["C", "cost", 80, "money", "", "your figure, or its default"],
        ["g", "margin, a share of the price", 0.2, "", "", "your figure, or its default"],
        [
          "k",
          "share of the price that covers the cost, 1 − g",
          0.8,
          "",
          "1 − 0.2",
          "A margin is a share of the price",
        ],
        ["S", "price, C/k", 100, "money", "80/0.8", "A margin is a share of the price"],
      ],
      tolerance: 1e-9,
      source: "by hand: 20 of a price of 100 is the margin on a cost of 80",
    },
  ],
  seeAlso: ["AZIMUTH", "CABLELOSS", "CASCADELOSS", "TUNERCOUNT", "VOLTDROP"],
  faultsWhen: [
    "The function is unknown, or one whose working cannot be shown; the sentence lists those that can.",
    "An argument that takes one value a row is given as a column.",
    "The function itself has a fault for these arguments: then that fault.",
  ],
  compute: (asked, given) => {
    const name = ourName(asked) ?? asked.toUpperCase();
    const found = (workedFunctions as readonly SheetFunction[]).find((one) => one.name === name);
    return found ? workingOf(found, given) : faults.noWorking(asked, NAMES);
  },
});

type Row = readonly (string | number)[];

/** Lets the dispatcher read the arguments as the function itself would, then asks for steps instead of a value. */
function workingOf(shown: SheetFunction, given: readonly Argument[]): readonly Row[] | Fault {
  const columns = shown.parameters.some(({ shape }, index) => shape === "each" && isColumn(given[index]));
  if (columns) return faults.oneRowOfWork(shown.name);
  let rows: readonly Row[] = [];
  const outcome = dispatch(
    {
      ...shown,
      result: { shape: "cell", help: "" },
      compute: (...values) => {
        const steps = shown.working!(...values);
        if (isFault(steps)) return steps;
        if (steps.some(({ value }) => typeof value === "number" && !Number.isFinite(value))) {
          return faults.noResult(shown.name);
        }
        rows = steps.map(rowOf);
        return rows.length;
      },
    },
    given,
  );
  if (isFault(outcome)) return outcome;
  return rows.length > 0 ? rows : faults.missing("arguments", `the arguments of ${shown.name}`);
}

const isColumn = (argument: Argument | undefined): boolean =>
  isMatrix(argument) && (argument.length > 1 || (argument[0]?.length ?? 0) > 1);

const rowOf = ({ symbol, meaning, value, unit, line, source }: Step): Row => [
  symbol,
  meaning,
  value,
  unit,
  line,
  source,
];
