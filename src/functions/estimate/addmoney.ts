import { addMoney } from "../../engine/estimate/addMoney";
import { faults, isFault, type Fault } from "../../engine/faults";
import { isBlank, isMatrix, type Argument } from "../core/cells";
import { declare } from "../core/declare";
import { number, repeated } from "../core/parameters";

const amounts = repeated({
  name: "amounts",
  help: "Amounts to add up: a column, or several, each with a sum of its own.",
  wanted: "the amounts to add up",
});

const amount = number({ name: amounts.name, help: amounts.help, unit: "money", min: -1e15, max: 1e15 });

export const addmoney = declare({
  name: "ADDMONEY",
  group: "Estimate",
  summary: "Adds up amounts exactly, a sum for each column.",
  parameters: [amounts],
  result: {
    shape: "column",
    unit: "money",
    help: "The sum, not rounded; of several columns their sums, one below the other.",
  },
  equation:
    "Each amount is read as a fraction of whole numbers, the fractions are added, and the nearest number to the sum is given.",
  source: "Definition of a sum",
  accuracy:
    "Exact. An amount of up to 15 digits is taken as typed, a longer one was worked out and is read without the noise of its last bits. Adding in binary can tip a tie: three times 3.335 comes to 10.004999999999999, which rounds to 10.00.",
  tasks: ["How do I add up lines before I round them?", "Why is my total a cent off?"],
  examples: [
    {
      formula: "RIG.ADDMONEY({0.1;0.2})",
      result: 0.3,
      tolerance: 0,
      source: "by hand",
    },
    {
      formula: "RIG.ADDMONEY({3.335;3.335;3.335},{1;2})",
      result: [[10.005], [3]],
      tolerance: 0,
      source: "by hand",
    },
  ],
  seeAlso: ["ROUNDMONEY", "SELLPRICE"],
  faultsWhen: ["An entry is no number: the sum of its column is that fault. Blank entries are passed over."],
  compute: (columns) =>
    columns.length === 0 ? faults.missing(amounts.name, amounts.wanted) : columns.map(sumOf),
});

function sumOf(column: Argument): number | Fault {
  const cells = isMatrix(column) ? column.flat() : [column];
  const numbers: number[] = [];
  for (const [index, cell] of cells.entries()) {
    if (isBlank(cell)) continue;
    if (isFault(cell)) return cell;
    const read = amount.read(cell);
    if (isFault(read)) return isMatrix(column) ? faults.atRow(amounts.name, index + 1, read) : read;
    numbers.push(read);
  }
  return addMoney(numbers);
}
