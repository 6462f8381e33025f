import { orderLines, type OrderLine, type PartBought } from "../../engine/estimate/orderLines";
import { faults, isFault, type Fault } from "../../engine/faults";
import { isBlank, type Cell, type Matrix } from "../core/cells";
import { declare } from "../core/declare";
import { list, number, optional, table, text, type ListEntry } from "../core/parameters";
import { decimals } from "./parameters";

const MOST_LINES = 100_000;
const BOUGHT = ["part", "needed", "spares", "quantity", "sold by", "price", "sum"] as const;
const TERMS = ["price", "supplier", "priced on", "valid until"] as const;
const COLUMNS = [
  "supplier",
  "article",
  "part",
  "quantity",
  "sold by",
  "price as quoted",
  "priced on",
  "valid until",
  "note: expired, no last day, no price, free",
  "sum, rounded",
  "sum of the supplier, in its last line",
];
const BLANK: readonly ""[] = COLUMNS.map(() => "" as const);

const bought = (name: string) =>
  table({
    name,
    help: `What is bought of one list, seven columns: ${BOUGHT.join(", ")}.`,
    wanted: "a table of what is bought",
  });
const terms = (name: string) =>
  table({
    name,
    help: `In the same rows, four columns: ${TERMS.join(", ")}.`,
    wanted: "a table as long as what is bought",
  });
const articles = (name: string) =>
  optional(
    list(text({ name, help: "In the same rows, the numbers in the suppliers' lists.", wanted: "a number" })),
  );
/** One more list of parts. */
const further = (of: string) =>
  [optional(bought(`${of}_bought`)), optional(terms(`${of}_terms`)), articles(`${of}_articles`)] as const;

const FIRST = "first";
const FURTHER = ["second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"] as const;

export const orderlist = declare({
  name: "ORDERLIST",
  group: "Estimate",
  summary: "What is bought as orders: by supplier, with article, quantity, price as quoted and sums.",
  parameters: [
    number({
      name: "rows",
      help: "How many rows the answer has; lines beyond them are left out.",
      integer: true,
      min: 1,
      max: MOST_LINES,
      advice: "Give as many rows as there is room for",
    }),
    bought(`${FIRST}_bought`),
    terms(`${FIRST}_terms`),
    articles(`${FIRST}_articles`),
    optional(
      number({
        name: "day",
        help: "The day of the order, as a date cell; prices that end before it are noted.",
        min: 1,
        max: 2_958_465,
      }),
    ),
    optional(decimals, 2),
    ...further(FURTHER[0]),
    ...further(FURTHER[1]),
    ...further(FURTHER[2]),
    ...further(FURTHER[3]),
    ...further(FURTHER[4]),
    ...further(FURTHER[5]),
    ...further(FURTHER[6]),
  ],
  result: {
    shape: "table",
    help: "A row for each part that is bought: suppliers by their names, parts that name none at the end. What is bought 0 times has no line.",
    columns: COLUMNS,
  },
  equation: "Sum of a supplier = Σ of its lines, each rounded to the decimals.",
  source: "Definition of a sum",
  accuracy: "Exact; a line whose quantity or price is not known keeps the sum of its supplier open.",
  tasks: ["What do I order from whom?", "How much does each supplier get?"],
  examples: [
    {
      formula:
        'RIG.ORDERLIST(3,{"plate",12,0,12,"piece",5.9,70.8;"splitter",3,0,3,"piece",14.2,42.6},{5.9,"South","","";14.2,"North","",""},{"S-9";"N-4"})',
      result: [
        ["North", "N-4", "splitter", 3, "piece", 14.2, "", "", "no last day", 42.6, 42.6],
        ["South", "S-9", "plate", 12, "piece", 5.9, "", "", "no last day", 70.8, 70.8],
        ["", "", "", "", "", "", "", "", "", "", ""],
      ],
      source: "by hand: North before South; 3 · 14.20 and 12 · 5.90",
    },
  ],
  seeAlso: ["REELS", "ADDMONEY"],
  faultsWhen: ["A table has other columns than named, or is not as long as that of what is bought."],
  compute: (rows, firstBought, firstTerms, firstArticles, day, decimals, ...given) => {
    const lists = [
      { of: FIRST, bought: firstBought, terms: firstTerms, articles: firstArticles },
      ...FURTHER.map((of, index) => ({
        of,
        bought: given[3 * index] as Matrix | undefined,
        terms: given[3 * index + 1] as Matrix | undefined,
        articles: given[3 * index + 2] as readonly ListEntry<string>[] | undefined,
      })),
    ];
    const parts: PartBought[] = [];
    for (const { of, bought, terms, articles } of lists) {
      if (!bought) continue;
      const misfit = misfitOf(of, bought, terms, articles);
      if (misfit) return misfit;
      bought.forEach((row, index) => {
        const part = partOf(row, terms![index]!, articles?.[index] ?? null);
        if (part) parts.push(part);
      });
    }
    const order = orderLines(parts, day ?? null, decimals);
    return Array.from({ length: rows }, (_, row) => (order[row] ? shownLine(order[row]) : BLANK));
  },
});

function misfitOf(
  of: string,
  bought: Matrix,
  terms: Matrix | undefined,
  articles: readonly unknown[] | undefined,
): Fault | undefined {
  const width = bought[0]!.length;
  if (width !== BOUGHT.length)
    return faults.badShape(`${of}_bought`, bought.length, width, `seven columns: ${BOUGHT.join(", ")}`);
  if (!terms) return faults.missing(`${of}_terms`, "the prices and suppliers of what is bought");
  if (terms[0]!.length !== TERMS.length)
    return faults.badShape(
      `${of}_terms`,
      terms.length,
      terms[0]!.length,
      `four columns: ${TERMS.join(", ")}`,
    );
  if (terms.length !== bought.length) return faults.shortColumn(`${of}_terms`, terms.length, bought.length);
  return articles && articles.length !== bought.length
    ? faults.shortColumn(`${of}_articles`, articles.length, bought.length)
    : undefined;
}

/** @returns what is bought of a row; undefined of a blank one, or of nothing */
function partOf(
  [part, , , quantity, sold, , sum]: readonly Cell[],
  // A blank price is 0 where it is repeated: here it is none.
  [price, supplier, priced, until]: readonly Cell[],
  article: ListEntry<string>,
): PartBought | undefined {
  if (isBlank(part) || isBlank(quantity) || quantity === 0) return undefined;
  return {
    part: wordsOf(part!),
    quantity: figureOf("quantity", quantity!),
    sold: isBlank(sold) ? "" : wordsOf(sold!),
    price: isBlank(price) ? null : figureOf("price", price!),
    sum: isBlank(sum) ? 0 : figureOf("sum", sum!),
    supplier: isBlank(supplier) ? "" : wordsOf(supplier!),
    article: article ?? "",
    priced: typeof priced === "number" ? priced : null,
    until: typeof until === "number" ? until : null,
  };
}

/** Of a cell that should hold a name. */
const wordsOf = (cell: NonNullable<Cell>): string => (isFault(cell) ? cell.message : String(cell).trim());

const figureOf = (name: string, cell: NonNullable<Cell>): number | Fault =>
  typeof cell === "number" && Number.isFinite(cell)
    ? cell
    : isFault(cell)
      ? cell
      : faults.notANumber(name, cell, {});

const shownLine = (line: OrderLine): (string | number | Fault)[] => [
  line.supplier,
  line.article,
  line.part,
  line.quantity,
  line.sold,
  line.price ?? "",
  line.priced ?? "",
  line.until ?? "",
  line.note,
  line.sum,
  line.together,
];
