/** A change order to a customer as a workbook of one printed sheet: what changes against a quotation, and what that costs. */
import type { Book } from "../book";
import type { Field, SheetDefinition, Table, WorkbookDefinition } from "../definition";
import { layOut } from "../layOut";
import { wrapped } from "../linesOf";
import { DECIMALS_FIELD } from "../moneyShown";
import type { NamedField } from "../names";
import { withPageBreaks, withPrint } from "../printFoot";
import { isoDate } from "../sheetDate";
import { order } from "./names";

export const ORDER_TEMPLATE = "change-order";
const ORDER_VERSION = "1";
export const ORDER_SHEET = "Change order";

/** What somebody says of the order; what is left out stays a blank to fill. */
export interface OrderWords {
  readonly number?: string;
  readonly reason?: string;
  /** As a sheet's day. */
  readonly date?: number;
  readonly until?: number;
}

/** @returns a sentence where an order would have ended before it began */
export const datesInOrder = ({ date, until }: OrderWords): string | undefined =>
  date !== undefined && until !== undefined && until < date
    ? `The change order is dated ${isoDate(date)} and valid until ${isoDate(until)}, which is before that.`
    : undefined;

export interface ScopeLine {
  readonly what: string;
  readonly details: string;
  /** Its part of the change of the price without tax. */
  readonly net: number;
}

export interface QuoteLine {
  readonly label: string;
  readonly before: number;
  readonly after: number;
}

/** What the order says; every figure as it is printed on the two quotations, or the difference of two such. */
export interface OrderPaper {
  readonly words: OrderWords;
  readonly job: string;
  readonly customer: string;
  readonly place: string;
  readonly by: string;
  readonly quotation: string;
  readonly revised: string;
  readonly currency: string;
  readonly decimals: number;
  readonly scope: readonly ScopeLine[];
  readonly lines: readonly QuoteLine[];
  readonly net: QuoteLine;
  readonly taxes: readonly QuoteLine[];
  readonly total: QuoteLine;
  readonly letterhead: readonly string[];
}

/** In characters: together as wide as the Quote. */
const WIDTHS = { label: 36, wide: 40, sum: 14 } as const;
/** So many lines of scope fit a page with all else. */
const MOST_ON_A_PAGE = 14;
/** Text runs on over the columns beside the first. */
const TEXT_WIDTH = 96;

const by = ({ before, after }: QuoteLine, decimals: number): number =>
  Number((after - before).toFixed(decimals));

const stated = (
  { name, words: { label, format } }: NamedField,
  value: number | string,
  more: Partial<Field> = {},
): Field => ({ name, label, ...(format && { format }), value, ...more });

/** What was said; else a cell to fill. */
const saidOrAsked = (field: NamedField, value: number | string | undefined): Field =>
  value === undefined ? { name: field.name, ...field.words } : stated(field, value);

const scopeTable = ({ scope, net, decimals }: OrderPaper): Table => ({
  kind: "table",
  heading: "What changes",
  columns: [
    { head: "What", width: WIDTHS.label, wrap: true },
    { head: "In detail", width: WIDTHS.wide, wrap: true },
    { head: "", width: WIDTHS.sum },
    { head: "Price without tax", width: WIDTHS.sum, format: "money", name: "order_scope_net" },
  ],
  rows: [
    ...scope.map(({ what, details, net: own }) => [what, details, "", own]),
    ["Together", "", "", by(net, decimals)],
  ],
  strongRows: [scope.length],
});

const linesTable = ({ lines, net, taxes, total, decimals }: OrderPaper): Table => ({
  kind: "table",
  heading: "By the lines of the quotation",
  columns: [
    { head: "Line", width: WIDTHS.label, wrap: true },
    { head: "As quoted", width: WIDTHS.wide, format: "money" },
    { head: "Now", width: WIDTHS.sum, format: "money" },
    { head: "Change", width: WIDTHS.sum, format: "money" },
  ],
  rows: [...lines, net, ...taxes, total].map((line) => [
    line.label,
    line.before,
    line.after,
    by(line, decimals),
  ]),
  strongRows: [lines.length, lines.length + taxes.length + 1],
});

/** Two places, whoever signs. */
const signatures: Table = {
  kind: "table",
  heading: "Agreed",
  lines: [
    "This order changes the quotation named above. All else of that stays as it was quoted.",
    "It holds when both have signed, on or before the day named above.",
  ],
  columns: [
    { head: "For", width: WIDTHS.label },
    { head: "Signature", width: WIDTHS.wide },
    { head: "Name", width: WIDTHS.sum },
    { head: "Date", width: WIDTHS.sum },
  ],
  rows: [["The customer"], ["The contractor"]],
  byHand: true,
};

function orderSheet(paper: OrderPaper): SheetDefinition {
  const { words, net, taxes, total, decimals } = paper;
  const sumOf = (lines: readonly QuoteLine[]): number =>
    Number(lines.reduce((sum, line) => sum + by(line, decimals), 0).toFixed(decimals));
  const reason = words.reason === undefined ? [] : wrapped(words.reason, TEXT_WIDTH);
  return {
    name: ORDER_SHEET,
    kind: "print",
    intro: "What changes against the quotation, and what that does to its price.",
    // Who signs has the sums before his eyes.
    print: { orientation: "portrait", ...(paper.scope.length <= MOST_ON_A_PAGE && { onePage: true }) },
    parts: [
      {
        kind: "fields",
        heading: "Order",
        fields: [
          saidOrAsked(order.number, words.number),
          saidOrAsked(order.date, words.date),
          saidOrAsked(order.until, words.until),
          stated(order.quotation, paper.quotation),
          stated(order.revised, paper.revised),
          stated(order.job, paper.job),
          stated(order.customer, paper.customer),
          stated(order.place, paper.place),
          stated(order.by, paper.by),
          ...(words.reason === undefined ? [saidOrAsked(order.reason, undefined)] : []),
        ],
      },
      ...(reason.length > 0
        ? [{ kind: "text", heading: order.reason.words.label, lines: reason } as const]
        : []),
      scopeTable(paper),
      linesTable(paper),
      {
        kind: "fields",
        heading: "Sum of the order",
        fields: [
          stated(order.net, by(net, decimals)),
          stated(order.tax, sumOf(taxes)),
          stated(order.change, by(total, decimals), { strong: true }),
          stated(order.earlier, total.before),
          stated(order.total, total.after, { strong: true }),
          stated(order.currency, paper.currency),
        ],
      },
      signatures,
      {
        kind: "text",
        heading: "Safety",
        lines: [
          "Roof and ladder work, overhead lines, lightning, mains and bonding are planned on site before work",
          "starts. Bonding and earthing follow the local code and are decided by licensed practice.",
          "This order is not a safety certificate.",
        ],
      },
      ...(paper.letterhead.length > 0
        ? [{ kind: "text", heading: "From", lines: paper.letterhead } as const]
        : []),
    ],
  };
}

/** @returns a workbook of values; the cells of what was not said can be filled */
export function changeOrderBook(paper: OrderPaper): Book {
  const definition: WorkbookDefinition = {
    id: ORDER_TEMPLATE,
    title: ORDER_SHEET,
    version: ORDER_VERSION,
    sheets: [orderSheet(paper)],
  };
  const book = layOut(definition, { fields: { [DECIMALS_FIELD]: paper.decimals } });
  const footRight = [paper.words.number, paper.quotation].filter(Boolean).join(", ");
  return withPageBreaks(withPrint(book, { footRight }));
}
