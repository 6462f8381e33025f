/**
 * The change order to a customer: what is otherwise in a later revision of an accepted quotation, by what was bought,
 * with the price of each. The later job is reached from the earlier one step by step, what was bought first and at the
 * prices of the quotation, the firm's own figures last, so that a price that was raised stands in a line of its own.
 */
import type { Book } from "../../workbooks/book";
import type { OrderPaper, OrderWords, QuoteLine } from "../../workbooks/changeOrder/changeOrderBook";
import type { JobInputs } from "../../workbooks/definition";
import { layOut } from "../../workbooks/layOut";
import { multiRoom } from "../../workbooks/multiRoom/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { LINES } from "../../workbooks/multiRoom/names/lines";
import { namedColumn, namedValue } from "../../workbooks/named";
import { withTodaysNames } from "../../workbooks/renamedNames";
import { isoDate } from "../../workbooks/sheetDate";
import { wordsOf } from "../../workbooks/shownFigure";
import { todaysInputs } from "../../workbooks/todaysInputs";
import { checksMoved } from "../designMoves";
import { checkLines } from "../../workbooks/checkLines";
import { formulaChanges } from "../formulaChanges";
import { inputChanges } from "../inputChanges";
import { renamed, renamesIn } from "../renames";
import { doubts, noFigures, refusals } from "./orderTrouble";
import { pricedScopes } from "./pricedScopes";
import { money, QUOTE_LINES, quoteFigures, type QuoteFigures } from "./quoteFigures";
import { atQuotedPrices, bookAtQuotedPrices, keptPrices } from "./quotedOptions";
import { scopesOf } from "./scope";
import { percent } from "./scopeWords";
import { usedValues } from "./usedValues";

export type ChangeOrder =
  | { readonly refused: readonly string[] }
  | {
      readonly refused?: undefined;
      readonly paper: OrderPaper;
      /** What somebody should settle before a customer gets it. */
      readonly doubts: readonly string[];
      /** What the office should know; the customer's paper has none of it. */
      readonly notes: readonly string[];
    };

const { site, quote } = estimate;

/**
 * @param olderAsRead the accepted quotation, of the multi-room template as the later one
 * @param computed computes a book
 */
export function changeOrder(
  olderAsRead: Book,
  newerAsRead: Book,
  words: OrderWords,
  computed: (book: Book) => Book,
): ChangeOrder {
  const [olderBook, newerBook] = [olderAsRead, newerAsRead].map(withTodaysNames) as [Book, Book];
  const [older, newer] = [olderBook, newerBook].map((book) => todaysInputs(multiRoom, book).inputs) as [
    JobInputs,
    JobInputs,
  ];
  const names = renamesIn(multiRoom, older, newer);
  const refused = refusals(names.reduce(renamed, older), newer);
  if (refused.length > 0) return { refused };
  const [olderNow, newerNow] = [computed(olderBook), computed(newerBook)];
  const [was, is] = [quoteFigures(olderNow), quoteFigures(newerNow)];
  if (!was || wordsOf(namedValue(olderNow, quote.draft.name)) !== "")
    return { refused: noFigures("earlier", olderNow, was) };
  if (!is || wordsOf(namedValue(newerNow, quote.draft.name)) !== "")
    return { refused: noFigures("later", newerNow, is) };

  const nameIn = (block: string): ((name: string) => string) => {
    const known = new Map(
      names.flatMap((one) => (one.block === block ? [[String(one.before), String(one.after)]] : [])),
    );
    return (name) => known.get(name) ?? name;
  };
  const kept = keptPrices(names.reduce(renamed, older), olderNow, newer, newerNow, nameIn("options"));
  const target = kept.length === 0 ? is : quoteFigures(computed(bookAtQuotedPrices(newerBook, kept)));
  if (!target) return { refused: noFigures("later", newerNow, undefined) };

  const decimals = Math.max(was.decimals, target.decimals);
  const shown = (value: number): string => value.toFixed(decimals);
  const outlets = nameIn("rooms");
  // What is quoted was the price of the earlier one too, whatever made it up.
  const start = atQuotedPrices(older, kept, "called");
  const { told, first, last } = scopesOf(
    inputChanges(multiRoom, start, atQuotedPrices(newer, kept, "option")),
    {
      older,
      newer,
      before: usedValues(olderNow, outlets),
      after: usedValues(newerNow, (name) => name),
      money: shown,
    },
  );
  const { lines: scope, costly } = pricedScopes(told, first, start, was, target, (job) =>
    quoteFigures(computed(layOut(multiRoom, job))),
  );
  if (scope.length === 0 && was.total === target.total)
    return {
      refused: [
        last.length + first.length === 0
          ? "Nothing has changed between the two workbooks, so there is nothing to order."
          : "Nothing that the customer reads or pays has changed between the two workbooks, so there is nothing to order.",
      ],
    };
  const paper: OrderPaper = {
    words,
    job: field(newer, site.job),
    customer: field(newer, site.customer),
    place: field(newer, site.place),
    by: field(newer, site.prepared_by),
    quotation: quotationOf(older),
    revised: quotationOf(newer),
    currency: field(newer, site.currency),
    decimals,
    scope,
    ...figuresOf(was, target),
    letterhead: namedColumn(newerNow, estimate.letterheadQuoted.line.name)
      .map(wordsOf)
      .filter((line) => line !== ""),
  };
  const over = formulaChanges(
    multiRoom,
    olderBook,
    newerBook,
    olderBook.templateVersion !== newerBook.templateVersion,
  );
  return {
    paper,
    doubts: doubts({
      older,
      newer,
      checks: checksMoved(checkLines(olderNow), checkLines(newerNow)),
      costly,
      saved: savedOtherwise(olderAsRead, was),
      typedOver: over.map(({ sheet, row }) => `${row} (${sheet})`),
    }),
    notes: [
      ...kept.map(
        ({ option, later, quoted }) =>
          `${option}: the later workbook has ${shown(later)}; the order keeps to what was quoted, ${shown(quoted)}.`,
      ),
      ...(target.total === is.total
        ? []
        : [
            `The later workbook's total is ${shown(money(is.total))}, the order's ${shown(money(target.total))}.`,
          ]),
      ...lateOrder(older, words),
    ],
  };
}

const field = ({ fields }: JobInputs, { name }: { readonly name: string }): string =>
  String(fields?.[name] ?? "");

function quotationOf(job: JobInputs): string {
  const date = job.fields?.[site.date.name];
  const revision = field(job, site.revision);
  return [
    field(job, site.quote),
    revision && `revision ${revision}`,
    typeof date === "number" ? `of ${isoDate(date)}` : "",
  ]
    .filter(Boolean)
    .join(", ");
}

/** The total that the customer may hold on paper, where it is not what the workbook comes to. */
function savedOtherwise(asRead: Book, { total }: QuoteFigures): string | undefined {
  const saved = namedValue(withTodaysNames(asRead), quote.total.name);
  return typeof saved === "number" && Math.abs(saved - money(total)) > LEAST_DIFFERENCE
    ? `The earlier workbook was saved with a total of ${saved} and comes to ${money(total)} computed anew: the order stands on the second. Which does the customer hold?`
    : undefined;
}

/** Half of a thousandth, the smallest money there is. */
const LEAST_DIFFERENCE = 0.0005;

function lateOrder(older: JobInputs, { date }: OrderWords): string[] {
  const until = older.fields?.[site.until.name];
  return typeof until === "number" && date !== undefined && date > until
    ? [`The earlier quotation held until ${isoDate(until)}, and the order is dated ${isoDate(date)}.`]
    : [];
}

/** The lines that either of the quotations prints, and their sums. */
function figuresOf(
  was: QuoteFigures,
  is: QuoteFigures,
): Pick<OrderPaper, "lines" | "net" | "taxes" | "total"> {
  const pair = (label: string, before: number, after: number): QuoteLine => ({
    label,
    before: money(before),
    after: money(after),
  });
  const classes = [...new Set([...was.classes, ...is.classes].map(({ name }) => name))];
  const taxOf = ({ classes: all }: QuoteFigures, name: string) => all.find((one) => one.name === name);
  const usual = ({ tax, classes: all }: QuoteFigures): number =>
    all.reduce((left, one) => left - one.tax, tax);
  const rates = (before: number | undefined, after: number | undefined): string =>
    before === undefined || after === undefined || before === after
      ? percent((after ?? before)!)
      : `${percent(after)}, was ${percent(before)}`;
  return {
    lines: QUOTE_LINES.filter((key) => was.lines[key] !== 0 || is.lines[key] !== 0).map((key) =>
      pair(key === "discount" ? quote.discount.words.label : LINES[key], was.lines[key], is.lines[key]),
    ),
    net: pair(quote.net.words.label, was.net, is.net),
    taxes: [
      pair(
        `${quote.tax.words.label}${classes.length > 0 ? " at the usual rate" : ""}, ${rates(was.rate, is.rate)}`,
        usual(was),
        usual(is),
      ),
      ...classes.map((name) => {
        const [before, after] = [taxOf(was, name), taxOf(is, name)];
        return pair(
          `${quote.tax.words.label}: ${name}, ${rates(before?.rate, after?.rate)}`,
          before?.tax ?? 0,
          after?.tax ?? 0,
        );
      }),
    ],
    total: pair(quote.total.words.label, was.total, is.total),
  };
}
