/** How somebody who checks the bad quote goes wrong himself, and where that leads. */
import type { Earlier, Slip } from "../exercise";
import {
  KINDS,
  PARTS,
  quoteRows,
  rightRows,
  TOTAL_KINDS,
  type Kind,
  type Part,
  type QuoteNumbers,
  type Reading,
} from "../sets/badQuote";

const FEET = "feet taken for metres";
const TIMES = "feet multiplied by 3.28 instead of divided";
const RECORDER = "two-tuner recorder counted as one";

interface Checker {
  readonly name: string;
  readonly parts: readonly Part[];
  /** How he reads the survey. */
  readonly reading?: Reading;
  /** What he leaves out. */
  readonly skips?: "sums" | "quantities";
  readonly seldom?: boolean;
}

const CHECKERS: readonly Checker[] = [
  { name: RECORDER, parts: ["reception", "cable", "labour"], reading: { recorder: 1 } },
  { name: "head units rounded down", parts: ["reception", "cable", "labour"], reading: { down: true } },
  { name: FEET, parts: ["cable"], reading: { metresPerFoot: 1 } },
  { name: TIMES, parts: ["cable"], reading: { metresPerFoot: 3.28 } },
  { name: "0.3 taken for 0.3048", parts: ["cable"], reading: { metresPerFoot: 0.3 }, seldom: true },
  { name: "minutes taken for hours", parts: ["labour"], reading: { minutesAnHour: 1 } },
  { name: "one trip counted", parts: ["labour"], reading: { trips: 1 }, seldom: true },
  { name: "there and back counted twice", parts: ["labour"], reading: { trips: 4 } },
  { name: "sums not tried", parts: ["reception", "cable", "labour"], skips: "sums", seldom: true },
  {
    name: "quantities not compared with the survey",
    parts: ["reception", "cable", "labour"],
    skips: "quantities",
    seldom: true,
  },
];

/** What a quantity may differ by before it looks wrong: half of the quote's last digit. */
const NEAR = 0.05;
const CENT = 0.011;

/** @returns the first row of a part that looks wrong to a checker; 0 where none does */
function found(n: QuoteNumbers, part: Part, { reading, skips }: Checker): number {
  const expected = rightRows(n, reading);
  const stands = quoteRows(n);
  const row = PARTS[part].find((one) => {
    const [is, right] = [stands[one - 1]!, expected[one - 1]!];
    if (skips !== "quantities" && Math.abs(is.quantity! - right.quantity!) >= NEAR) return true;
    return skips !== "sums" && Math.abs(is.quantity! * is.price! - is.sum) >= CENT;
  });
  return row ?? 0;
}

/** Of the spreadsheet above the quote's first one. */
const ROWS_ABOVE = 17;
const LAST_ROW = PARTS.totals.at(-1)!;

/** Of a question which row of a part is wrong; nothing where it leads to the right row. */
export const rowSlips = (part: Part): Slip<QuoteNumbers>[] => {
  const rows = PARTS[part];
  const slip = (
    name: string,
    wrong: (n: QuoteNumbers, right: number) => number,
    seldom = true,
  ): Slip<QuoteNumbers> => ({
    name,
    wrong: (n) => {
      const right = n.mistakes[part].row;
      const row = wrong(n, right);
      return row === right ? undefined : row;
    },
    seldom,
  });
  const elsewhere = PARTS.totals.map((row) => slip("total that follows from the wrong row", () => row));
  return [
    ...CHECKERS.filter(({ parts }) => parts.includes(part)).map((checker) =>
      slip(checker.name, (n) => found(n, part, checker), checker.seldom ?? false),
    ),
    ...(part === "totals"
      ? [
          slip("margin reckoned as markup", (_, right) => (right === 11 ? 0 : 11)),
          slip("cost taken for wrong because it holds wrong rows", () => 10),
          slip("tax taken for wrong because it goes on from another row", () => 12),
          slip("total that follows from the wrong row", () => LAST_ROW),
        ]
      : elsewhere),
    slip("row of the spreadsheet given", (_, right) => right + ROWS_ABOVE),
    slip("place within the part given", (_, right) => right - rows[0] + 1),
    slip("first row of the part taken", () => rows[0]),
    slip("last row of the part taken", () => rows.at(-1)!),
    slip("row with the greatest sum taken", (n) =>
      rows.reduce<number>((most, row) => (sumOf(n, row) > sumOf(n, most) ? row : most), rows[0]),
    ),
  ];
};

const sumOf = (n: QuoteNumbers, row: number): number => quoteRows(n)[row - 1]!.sum;

const MARGIN_AND_TAX: readonly Kind[] = [KINDS.markup, KINDS.tax];

/** Of a question what is wrong with the row. */
export const kindSlips = (part: Part): Slip<QuoteNumbers>[] => {
  const totals: readonly Kind[] = TOTAL_KINDS;
  const slip = (name: string, kinds: (right: Kind) => readonly Kind[]): Slip<QuoteNumbers>[] =>
    Object.values(KINDS).map((kind) => ({
      name,
      wrong: (n: QuoteNumbers) => {
        const right = n.mistakes[part].kind;
        return kind !== right && kinds(right).includes(kind) ? kind : undefined;
      },
      seldom: true,
    }));
  if (part === "totals") {
    return [
      ...slip("margin and tax taken for each other", (right) =>
        right === KINDS.markup ? [KINDS.tax] : right === KINDS.tax ? [KINDS.markup] : [],
      ),
      ...slip("another mistake of the totals named", (right) =>
        totals.filter((kind) => !MARGIN_AND_TAX.includes(kind) || !MARGIN_AND_TAX.includes(right)),
      ),
      ...slip("mistake of the rows above named", () =>
        Object.values(KINDS).filter((kind) => !totals.includes(kind)),
      ),
    ];
  }
  return [
    ...slip("sum named where the quantity is wrong", (right) => (right === KINDS.sum ? [] : [KINDS.sum])),
    ...slip("quantity named where the sum is wrong", (right) =>
      right === KINDS.sum ? [KINDS.tuners, KINDS.feet, KINDS.minutes] : [],
    ),
    ...slip("mistake of the totals named", () => totals),
    ...slip("mistake of another quantity named", () => [KINDS.tuners, KINDS.feet, KINDS.minutes]),
  ];
};

/** Of the sum that is put right; the row is that of the trainee's own answer. */
export const sumSlips = (row: (earlier: Earlier) => number | undefined): Slip<QuoteNumbers>[] => {
  type Line = { readonly quantity: number; readonly price: number; readonly sum: number };
  const lineOf = (n: QuoteNumbers, at: number, reading?: Reading): Line | undefined => {
    const line = rightRows(n, reading)[at - 1];
    return line?.quantity === undefined
      ? undefined
      : { quantity: line.quantity, price: line.price!, sum: line.sum };
  };
  const slip = (
    name: string,
    wrong: (line: Line, n: QuoteNumbers, row: number) => number | undefined,
    seldom = true,
  ): Slip<QuoteNumbers> => ({
    name,
    wrong: (n, e) => {
      const at = row(e);
      const line = at === undefined ? undefined : lineOf(n, at);
      const value = line && wrong(line, n, at!);
      return value === line?.sum ? undefined : value;
    },
    seldom,
  });
  const read = (name: string, reading: Reading, seldom = false): Slip<QuoteNumbers> =>
    slip(name, (_, n, at) => lineOf(n, at, reading)?.sum, seldom);
  return [
    slip("sum of the quote left as it is", (_, n, at) => sumOf(n, at), false),
    read(FEET, { metresPerFoot: 1 }),
    read(TIMES, { metresPerFoot: 3.28 }),
    read("three feet taken for a metre", { metresPerFoot: 1 / 3 }, true),
    read(RECORDER, { recorder: 1 }),
    slip("quantity of the quote left as it is", (line, n, at) => {
      const { quantity } = quoteRows(n)[at - 1]!;
      return quantity! * line.price;
    }),
    slip("difference between right and quoted sum given", (line, n, at) => Math.abs(line.sum - sumOf(n, at))),
    slip("quantity given", ({ quantity }) => quantity),
    slip("price of one given", ({ price }) => price),
    slip("divided by the price instead of multiplied", ({ quantity, price }) => quantity / price),
    slip("added instead of multiplied", ({ quantity, price }) => quantity + price),
    slip("price of another row taken", ({ quantity }, n, at) => {
      const above = lineOf(n, at - 1);
      return above && quantity * above.price;
    }),
    ...PARTS.cable.map((other) =>
      slip("sum of another row put right", (_, n, at) => (other === at ? undefined : lineOf(n, other)?.sum)),
    ),
    slip("margin reckoned in", ({ sum }, n) => sum / (1 - n.margin / 100)),
    slip("tax reckoned in", ({ sum }, n) => sum * (1 + n.tax / 100)),
  ];
};
