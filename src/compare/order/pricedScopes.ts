/** What each scope of a change order adds to the price without tax, one after another. */
import type { ScopeLine } from "../../workbooks/changeOrder/changeOrderBook";
import type { JobInputs } from "../../workbooks/definition";
import { LINES } from "../../workbooks/multiRoom/names/lines";
import { quote } from "../../workbooks/multiRoom/names/quote";
import type { InputChange } from "../change";
import { money, QUOTE_LINES, type QuoteFigures, type QuoteLineKey } from "./quoteFigures";
import type { Scope } from "./scopeWords";

type Lines = Readonly<Record<QuoteLineKey, number>>;

const lessOf = (one: Lines, other: Lines): Lines =>
  Object.fromEntries(QUOTE_LINES.map((key) => [key, one[key] - other[key]])) as unknown as Lines;
/** A discount has a line of its own: what is bought costs what the quotation says of it. */
const beforeDiscount = (lines: Lines): number =>
  QUOTE_LINES.reduce((sum, key) => sum + (key === "discount" ? 0 : lines[key]), 0);
const linesMoved = (lines: Lines): string =>
  QUOTE_LINES.flatMap((key) => (key === "discount" || lines[key] === 0 ? [] : [LINES[key]])).join("; ");

interface Priced {
  readonly scope: Scope;
  readonly by: Lines;
}

export interface PricedScopes {
  /** Their sums come to the difference between the two quotations. */
  readonly lines: readonly ScopeLine[];
  /** What is only called otherwise, and yet has another price. */
  readonly costly: readonly string[];
}

/**
 * @param told in the order in which they are told
 * @param first goes before all of them, and is told with what is left
 * @param older the earlier job
 * @param was what its quotation prints
 * @param target what the later one comes to
 */
export function pricedScopes(
  told: readonly Scope[],
  first: readonly InputChange[],
  older: JobInputs,
  was: QuoteFigures,
  target: QuoteFigures,
  figuresOf: (job: JobInputs) => QuoteFigures | undefined,
): PricedScopes {
  const all = lessOf(target.lines, was.lines);
  const priced = oneByOne(told, first, older, was, all, figuresOf);
  const left = priced.reduce((rest, { by }) => lessOf(rest, by), all);
  const isDiscount = ({ scope: { what } }: Priced): boolean => what.startsWith(quote.discount.words.label);
  const order = new Map(told.map((scope, index) => [scope, index]));
  const lines = priced
    .sort((one, other) => order.get(one.scope)! - order.get(other.scope)!)
    .map((one): ScopeLine => {
      const { what, details, isName } = one.scope;
      const net = beforeDiscount(one.by);
      return {
        what,
        details: isName && net !== 0 ? `${details}; with it the price of ${linesMoved(one.by)}` : details,
        net: money(isDiscount(one) ? net + all.discount : net),
      };
    });
  return {
    lines: [
      ...lines,
      ...(linesMoved(left) === ""
        ? []
        : [{ what: "Change of prices", details: linesMoved(left), net: money(beforeDiscount(left)) }]),
      ...(all.discount === 0 || priced.some(isDiscount)
        ? []
        : [
            {
              what: quote.discount.words.label,
              details: "as quoted, of the changed price",
              net: money(all.discount),
            },
          ]),
    ],
    costly: priced.flatMap(({ scope, by }) =>
      scope.isName && beforeDiscount(by) !== 0 ? [scope.details] : [],
    ),
  };
}

function oneByOne(
  told: readonly Scope[],
  first: readonly InputChange[],
  older: JobInputs,
  was: QuoteFigures,
  all: Lines,
  figuresOf: (job: JobInputs) => QuoteFigures | undefined,
): Priced[] {
  const withAll = (job: JobInputs, changes: readonly InputChange[]): JobInputs =>
    changes.reduce((now, { applied }) => applied(now), job);
  const nothing = lessOf(all, all);
  const priced: Priced[] = told.filter(({ isFree }) => isFree).map((scope) => ({ scope, by: nothing }));
  let waiting = told.filter(({ isFree }) => !isFree);
  let job = withAll(older, first);
  let now = (waiting.length > 0 ? figuresOf(job) : undefined) ?? was;
  while (waiting.length > 0) {
    const still: Scope[] = [];
    for (const scope of waiting) {
      const next = withAll(job, scope.changes);
      const figures = figuresOf(next);
      // A device that something still hangs on can't go yet.
      if (!figures) still.push(scope);
      else {
        priced.push({ scope, by: lessOf(figures.lines, now.lines) });
        [job, now] = [next, figures];
      }
    }
    if (still.length === waiting.length) {
      // None of them has a price without the others: what is left is theirs together.
      const left = priced.reduce((rest, { by }) => lessOf(rest, by), all);
      return [...priced, ...still.map((scope, index) => ({ scope, by: index === 0 ? left : nothing }))];
    }
    waiting = still;
  }
  return priced;
}
