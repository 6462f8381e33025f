/** What a job comes to before and after its upgrade. */
import { sameResult } from "../review/sameResult";
import { isBookError, type Book, type BookResult } from "../workbooks/book";
import { calculatedNames } from "../workbooks/calculatedNames";
import { checks as checkNames } from "../workbooks/checkNames";
import type { WorkbookDefinition } from "../workbooks/definition";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";

/** By which a job is known, of each template that has one of them; the first is its price. */
const KNOWN_BY = [
  estimate.quote.total.name,
  estimate.quote.net.name,
  estimate.quote.tax.name,
  estimate.price.direct.name,
  estimate.count.outlets.name,
  estimate.headsNeeded.wanted.name,
  checkNames.verdict.name,
] as const;
/** What the checks of a version count is its own, and told by their verdict. */
const NOT_LISTED = /^(?:checks|about)_/;

export interface Figure {
  readonly name: string;
  readonly label: string;
  readonly sheet: string;
  /** As the file itself shows it; as it is worked out from its own formulas where the file shows none. */
  readonly before: BookResult | undefined;
  /** Absent where nothing could work it out. */
  readonly after?: BookResult;
  /** After less before, of two numbers. */
  readonly difference?: number;
}

export interface Figures {
  readonly knownBy: readonly Figure[];
  /** Calculated figures beyond those that are another now, in the order of the sheets; empty where nothing was worked out. */
  readonly moved: readonly Figure[];
  /** The file shows no total of its own, or one that its inputs no longer come to. */
  readonly price: "as stored" | "not stored" | "out of date";
  readonly currency: string;
}

/**
 * @param stored the older workbook as its file shows it
 * @param own the same worked out by its own formulas; absent where nothing can
 * @param after today's template with the same inputs, worked out
 */
export function figures(
  definition: WorkbookDefinition,
  stored: Book,
  own: Book | undefined,
  after: Book | undefined,
): Figures {
  const shown = (name: string): BookResult | undefined => {
    const here = namedValue(stored, name);
    return own && (here === undefined || isBookError(here)) ? namedValue(own, name) : here;
  };
  const all = calculatedNames(definition)
    .filter(({ column }) => !column)
    .map(({ name, label, sheet }): Figure => {
      const before = shown(name);
      const now = after && namedValue(after, name);
      const both = typeof before === "number" && typeof now === "number";
      return {
        name,
        label,
        sheet,
        before,
        ...(after && { after: now }),
        ...(both && { difference: now - before }),
      };
    });
  const isKnownBy = ({ name }: Figure): boolean => (KNOWN_BY as readonly string[]).includes(name);
  const [price] = KNOWN_BY;
  const total = namedValue(stored, price);
  const anew = own && namedValue(own, price);
  return {
    knownBy: KNOWN_BY.flatMap((name) => all.filter((one) => one.name === name)),
    moved: after ? all.filter((one) => !isKnownBy(one) && !NOT_LISTED.test(one.name) && hasMoved(one)) : [],
    price:
      typeof total !== "number" && anew !== undefined
        ? "not stored"
        : own && !sameResult(total, anew)
          ? "out of date"
          : "as stored",
    currency: String(namedValue(after ?? stored, estimate.site.currency.name) ?? ""),
  };
}

/** A figure that is new, or gone, has not moved. */
export const hasMoved = ({ before, after }: Figure): boolean =>
  typeof before === "number" && typeof after === "number" && !sameResult(before, after);
