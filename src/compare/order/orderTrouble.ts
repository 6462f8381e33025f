/** Why no change order should be made of two revisions, each in a sentence. */
import type { Book } from "../../workbooks/book";
import type { JobInputs } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { isoDate } from "../../workbooks/sheetDate";
import { wordsOf } from "../../workbooks/shownFigure";
import { fails, type CheckMoved } from "../designMoves";
import type { QuoteFigures } from "./quoteFigures";

const { site, quote } = estimate;

/** By these a job is known; of a job that goes on at most one is put right. */
const KNOWN_BY = [site.quote, site.customer, site.place] as const;

const said = ({ fields }: JobInputs, { name }: { readonly name: string }): string =>
  String(fields?.[name] ?? "")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
const numberIn = ({ fields }: JobInputs, { name }: { readonly name: string }): number | undefined =>
  typeof fields?.[name] === "number" ? fields[name] : undefined;
const shown = ({ fields }: JobInputs, { name }: { readonly name: string }): string =>
  String(fields?.[name] ?? "blank");

const differing = (older: JobInputs, newer: JobInputs): (typeof KNOWN_BY)[number][] =>
  KNOWN_BY.filter((of) => said(older, of) !== said(newer, of));

/** At least half of the outlets that it had are there still, whatever they are called now. */
function sameOutlets({ blocks: had }: JobInputs, { blocks: has }: JobInputs): boolean {
  const now = new Set((has?.rooms ?? []).map(({ outlet }) => outlet));
  const before = (had?.rooms ?? []).map(({ outlet }) => outlet);
  return 2 * before.filter((outlet) => now.has(outlet)).length >= before.length;
}

/**
 * @param older under today's names
 * @returns why none can be made, whatever a person says of it
 */
export function refusals(older: JobInputs, newer: JobInputs): string[] {
  const other = [
    ...differing(older, newer).map(
      (of) => `${of.words.label} is "${shown(older, of)}" and "${shown(newer, of)}"`,
    ),
    ...(sameOutlets(older, newer) ? [] : ["most outlets of the one are not in the other"]),
  ];
  if (other.length > 1) return [`These are two jobs, not two revisions of one: ${other.join("; ")}.`];
  if (said(older, site.currency) !== said(newer, site.currency))
    return [
      `The quotations are in different currencies, ${shown(older, site.currency)} and ${shown(newer, site.currency)}, so there is no difference to order.`,
    ];
  const [was, is] = [numberIn(older, site.revision), numberIn(newer, site.revision)];
  const [then, now] = [numberIn(older, site.date), numberIn(newer, site.date)];
  if (was !== undefined && is !== undefined && is < was)
    return [
      `The second workbook is the older one: revision ${is}, the first is revision ${was}. Name the quotation that was accepted first.`,
    ];
  if (was === is && then !== undefined && now !== undefined && now < then)
    return [
      `The second workbook is the older one: dated ${isoDate(now)}, the first ${isoDate(then)}. Name the quotation that was accepted first.`,
    ];
  return [];
}

/** @returns why a quotation has no figures that an order could stand on */
export function noFigures(
  which: "earlier" | "later",
  computed: Book,
  figures: QuoteFigures | undefined,
): string[] {
  const draft = wordsOf(namedValue(computed, quote.draft.name));
  if (figures && draft === "") return [];
  const why = draft !== "" ? `its Quote says "${draft}"` : noSum(computed);
  return [
    `The ${which} quotation can't be relied on: ${why}. Put it right first: rigsheet review tells the cell.`,
  ];
}

/** Why a quote has no figures, to go on a sentence. */
export const noSum = (computed: Book): string =>
  typeof namedValue(computed, quote.total.name) === "number"
    ? "the lines that its Quote prints do not add up to its total: something was typed over a formula there"
    : "its Quote prints no total";

export interface Doubtful {
  readonly older: JobInputs;
  readonly newer: JobInputs;
  readonly checks: readonly CheckMoved[];
  /** What is only called otherwise, and yet has another price. */
  readonly costly: readonly string[];
  /** A sentence of what the earlier workbook was saved with. */
  readonly saved: string | undefined;
  /** Cells in which something was typed over a formula since. */
  readonly typedOver: readonly string[];
}

/** @returns what a person should settle, or take upon himself, before a customer gets the order */
export function doubts({ older, newer, checks, costly, saved, typedOver }: Doubtful): string[] {
  const [then, now] = [numberIn(older, site.date), numberIn(newer, site.date)];
  const until = numberIn(newer, site.until);
  return [
    ...differing(older, newer).flatMap((of) =>
      // An address that is put right says nothing of whose job it is.
      of === site.place
        ? []
        : [
            `${of.words.label} is "${shown(newer, of)}" now and was "${shown(older, of)}": is it the same job?`,
          ],
    ),
    ...(then !== undefined && now !== undefined && now < then
      ? [`The later quotation is dated ${isoDate(now)}, before the earlier one, ${isoDate(then)}.`]
      : []),
    ...(until !== undefined && now !== undefined && until < now
      ? [`The later quotation is valid until ${isoDate(until)}, before its own date, ${isoDate(now)}.`]
      : []),
    ...checks
      .filter(({ result, found }) => {
        const isLess =
          typeof found.before === "number" && typeof found.after === "number" && found.after < found.before;
        return fails({ result: result.after ?? "" }) && !isLess;
      })
      .map(({ what, where }) => `A check fails in the later workbook: ${what} (${where}).`),
    ...(saved === undefined ? [] : [saved]),
    ...costly.map(
      (what) =>
        `A name or place alone changes the price, so something that goes by it was left behind: ${what}.`,
    ),
    ...(typedOver.length > 0
      ? [`Formulas are otherwise in the later workbook: ${typedOver.join(", ")}. rigsheet review tells more.`]
      : []),
  ];
}
