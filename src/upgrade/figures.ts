/** What a job comes to before and after its upgrade. */
import { sameResult } from "../review/sameResult";
import { isBookError, type Book, type BookResult } from "../workbooks/book";
import { checkLines, type CheckLine } from "../workbooks/checkLines";
import { calculatedNames } from "../workbooks/calculatedNames";
import { checks as checkNames } from "../workbooks/checkNames";
import type { WorkbookDefinition } from "../workbooks/definition";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue } from "../workbooks/named";

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
/** Columns whose figures people go by, with what names their rows. */
const OF_ROWS = [
  { of: estimate.rooms.weakest.name, named: estimate.rooms.outlet.name },
  { of: estimate.rooms.strongest.name, named: estimate.rooms.outlet.name },
  { of: estimate.rooms.place.tuners.name, named: estimate.rooms.outlet.name },
  { of: estimate.heads.fed.least.name, named: estimate.heads.id.name },
  ...(
    [
      "cablesBought",
      "passivesBought",
      "unitsBought",
      "suppliesBought",
      "platesBought",
      "feedsBought",
      "resistorsBought",
      "fittingsBought",
    ] as const
  ).map((list) => ({ of: estimate[list].quantity.name, named: estimate[list].name.name })),
  { of: estimate.work.hours.name, named: estimate.work.name.name },
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
  /** Levels, volts and pieces that are others now, row by row. */
  readonly ofRows: readonly Figure[];
  /** Checks of the new workbook that fail or note something and that did not before, or were not asked. */
  readonly checks: readonly CheckLine[];
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
    ofRows: after ? OF_ROWS.flatMap((one) => rowsMoved(one, definition, [stored, own], after)) : [],
    checks: after ? checksSince(own ?? stored, after) : [],
    price:
      typeof total !== "number" && anew !== undefined
        ? "not stored"
        : own && !sameResult(total, anew)
          ? "out of date"
          : "as stored",
    currency: String(namedValue(after ?? stored, estimate.site.currency.name) ?? ""),
  };
}

/** Levels and volts are shown with at most two decimals. */
const AS_SHOWN = 0.005;

/** The rows of a column that come to something else, found by their names. */
function rowsMoved(
  { of, named }: (typeof OF_ROWS)[number],
  definition: WorkbookDefinition,
  older: readonly (Book | undefined)[],
  after: Book,
): Figure[] {
  const words = headOf(definition, of);
  if (!words) return [];
  const before = older.flatMap((book) => (book ? [byRow(book, of, named)] : []));
  return [...byRow(after, of, named)].flatMap(([row, now]) => {
    const was = before.map((rows) => rows.get(row)).find((one) => one !== undefined && !isBookError(one));
    if (typeof was !== "number" || (typeof now === "number" && Math.abs(now - was) < AS_SHOWN)) return [];
    return [
      {
        name: of,
        label: `${row}: ${words.head}`,
        sheet: words.sheet,
        before: was,
        after: now,
        ...(typeof now === "number" && { difference: now - was }),
      },
    ];
  });
}

function byRow(book: Book, of: string, named: string): Map<string, BookResult | undefined> {
  const values = namedColumn(book, of);
  return new Map(
    namedColumn(book, named).flatMap((row, index) =>
      row === undefined || row === "" || isBookError(row) ? [] : [[String(row), values[index]]],
    ),
  );
}

/** The head of a column, or of one of those that a formula spills into. */
function headOf({ sheets }: WorkbookDefinition, name: string): { head: string; sheet: string } | undefined {
  for (const { name: sheet, parts } of sheets)
    for (const part of parts)
      for (const { key, head, across = [] } of part.kind === "block" ? part.columns : []) {
        const own = `${(part as { name: string }).name}_${key}`;
        if (own === name) return { head, sheet };
        const one = across.find((column) => `${own}_${column.key}` === name);
        if (one) return { head: `${head}, ${one.head}`, sheet };
      }
  return undefined;
}

const SPEAKS: ReadonlySet<string> = new Set(["look", "error", "note"]);

function checksSince(before: Book, after: Book): CheckLine[] {
  const had = new Set(
    checkLines(before).flatMap(({ what, result }) => (SPEAKS.has(result) ? [`${result} ${what}`] : [])),
  );
  return checkLines(after).filter(({ what, result }) => SPEAKS.has(result) && !had.has(`${result} ${what}`));
}

/** A figure that is new, or gone, has not moved. */
export const hasMoved = ({ before, after }: Pick<Figure, "before" | "after">): boolean =>
  typeof before === "number" && typeof after === "number" && !sameResult(before, after);
