/** Finding the mistakes in a bad quote; see badQuote for the quote itself. */
import { faults } from "../../engine/faults";
import type { Step } from "../../engine/working/steps";
import { trainingSet, type Question } from "../exercise";
import { kindSlips, rowSlips, sumSlips } from "../slips/badQuotes";
import {
  drawQuote,
  KINDS,
  PARTS,
  quoteRows,
  rightRows,
  SERVES,
  type Part,
  type QuoteNumbers,
  type QuoteRow,
} from "./badQuote";

const NAMES: Readonly<Record<Part, string>> = {
  reception: "reception",
  cable: "cable",
  labour: "labour",
  totals: "the totals",
};

const HINTS: Readonly<Record<Part, readonly string[]>> = {
  reception: ["Count the tuners from the survey, then the head units; then try quantity x price."],
  cable: ["A foot is 0.3048 m. Compare the quantities with the survey, then try quantity x price."],
  labour: ["60 minutes are an hour. Compare the quantities with the survey, then try quantity x price."],
  totals: [
    "Add the rows as they stand. Price = cost/(1 - margin). A row that goes on from a wrong one is right.",
  ],
};

const span = (part: Part): string => `${PARTS[part][0]} to ${PARTS[part].at(-1)!}`;

/** Each row of the part, looked at: what stands there and what should. */
function checked(n: QuoteNumbers, part: Part): Step[] {
  const stands = quoteRows(n);
  const expected = shouldBe(n, stands);
  return PARTS[part].map((row) => {
    const now = stands[row - 1]!;
    const right = expected[row - 1]!;
    const same = now.sum === right.sum && now.quantity === right.quantity;
    return {
      symbol: String(row),
      meaning: `${now.what}: ${same ? "right" : "wrong"}`,
      value: right.sum,
      unit: "money",
      line: same ? lineOf(right) : `stands ${lineOf(now)}; should be ${lineOf(right)}`,
      source: "",
    };
  });
}

/** Totals are held to the rows that stand above them. */
function shouldBe(n: QuoteNumbers, stands: readonly QuoteRow[]): QuoteRow[] {
  const right = rightRows(n);
  const { kind } = n.mistakes.totals;
  const lines = stands.slice(0, 9).reduce((sum, row) => sum + row.sum, 0);
  const round = (amount: number): number => Number(amount.toFixed(2));
  const [cost, price, tax, total] = stands.slice(9) as [QuoteRow, QuoteRow, QuoteRow, QuoteRow];
  return [
    ...right.slice(0, 9),
    kind === KINDS.left ? { ...cost, sum: round(lines) } : cost,
    kind === KINDS.markup ? { ...price, sum: round(cost.sum / (1 - n.margin / 100)) } : price,
    kind === KINDS.tax ? { ...tax, sum: round((price.sum * n.tax) / 100) } : tax,
    kind === KINDS.added ? { ...total, sum: round(price.sum + tax.sum) } : total,
  ];
}

const lineOf = ({ quantity, price, sum }: QuoteRow): string =>
  quantity === undefined ? sum.toFixed(2) : `${quantity} x ${price} = ${sum.toFixed(2)}`;

const rowQuestion = (part: Part): Question<QuoteNumbers> => ({
  key: `${part}Row`,
  heading: `The wrong row of ${NAMES[part]}`,
  task: `Exactly one of the rows ${span(part)} is wrong in itself. Which?`,
  given: () => [],
  answer: { kind: "number", unit: "row", decimals: 0, exact: true },
  needs: [],
  solve: ({ mistakes }) => mistakes[part].row,
  slips: rowSlips(part),
  hints: HINTS[part],
  example: (n) => checked(n, part),
});

const kindQuestion = (part: Part): Question<QuoteNumbers> => ({
  key: `${part}Kind`,
  heading: `What is wrong in ${NAMES[part]}`,
  task: `What is wrong with the row that you found among ${span(part)}?`,
  given: () => [],
  answer: { kind: "choice", choices: Object.values(KINDS) },
  needs: [],
  solve: ({ mistakes }) => mistakes[part].kind,
  slips: kindSlips(part),
  hints: ["Choose from the list of the cell."],
  example: ({ mistakes }) => [
    {
      symbol: "",
      meaning: `row ${mistakes[part].row}`,
      value: mistakes[part].kind,
      unit: "",
      line: "",
      source: "",
    },
  ],
});

export const badQuoteSet = trainingSet<QuoteNumbers>({
  id: "bad-quote",
  title: "Finding the faults in a bad quote",
  about:
    "A small quote, invented (demonstration), with one mistake in each of its four parts: find and name them.",
  cautions: [],
  draw: drawQuote,
  plausible: (n) => {
    const right = rightRows(n);
    const stands = quoteRows(n);
    return (
      right[0]!.quantity! >= 2 &&
      // The mistake shows: the row is not what it should be.
      (Object.keys(PARTS) as Part[]).every((part) => {
        const at = n.mistakes[part].row - 1;
        const expected = shouldBe(n, stands)[at]!;
        return Math.abs(stands[at]!.sum - expected.sum) >= 2 && stands[at]!.sum > 0;
      })
    );
  },
  paper: (n) => ({
    heading: "The survey and the quote (demonstration)",
    lines: [
      `Survey: ${n.receivers} receivers and ${n.recorders} recorders of two tuners; a head unit serves ${SERVES} tuners and is fed by one power supply and followed by one splitter.`,
      `Drop cable ${n.dropFeet} ft and trunk cable ${n.trunkFeet} ft, quoted in metres, to 0.1 m. ${n.outlets} outlets at ${n.outletMinutes} minutes each; each head unit ${n.unitMinutes} minutes; two trips.`,
      `The prices and the rate are right. Margin ${n.margin} % of the price, tax ${n.tax} % of the price. Sums are rounded to two decimals.`,
    ],
    // The fourth column of a sheet is its narrow gap.
    columns: [
      { head: "Row and what", format: "text" },
      { head: "Quantity", format: "general" },
      { head: "Price of one", format: "money" },
      { head: "", format: "text" },
      { head: "Sum", format: "money" },
    ],
    rows: quoteRows(n).map(({ what, quantity, unit, price, sum }, index) => [
      `${index + 1}  ${what}${unit === "" ? "" : `, ${unit}`}`,
      quantity ?? "",
      price ?? "",
      "",
      sum,
    ]),
  }),
  questions: [
    rowQuestion("reception"),
    kindQuestion("reception"),
    rowQuestion("cable"),
    kindQuestion("cable"),
    {
      key: "cableSum",
      heading: "Put right",
      task: "What should the sum of the row be that you named in 3?",
      given: () => [],
      answer: { kind: "number", unit: "money", decimals: 2 },
      needs: ["cableRow"],
      solve: (n, { cableRow }) =>
        rightRows(n)[cableRow! - 1]?.sum ?? faults.outOfRange("row", cableRow!, { min: 1, max: 13 }),
      slips: sumSlips(({ cableRow }) => cableRow),
      hints: ["Right quantity x price, rounded to two decimals."],
      example: (n) => checked(n, "cable").filter(({ symbol }) => symbol === String(n.mistakes.cable.row)),
    },
    rowQuestion("labour"),
    kindQuestion("labour"),
    rowQuestion("totals"),
    kindQuestion("totals"),
  ],
});
