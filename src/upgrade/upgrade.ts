/**
 * An older workbook as a workbook of today's template: its inputs carried over,
 * what could not be listed, its figures before and after. The old one is only read.
 */
import { address, parseRange } from "../formula/address";
import { inputsIn } from "../review/inputsIn";
import { recognised } from "../review/recognised";
import { originOf } from "../review/rules/origin";
import { isBookError, type Book, type BookResult } from "../workbooks/book";
import { layOut } from "../workbooks/layOut";
import { versionFormulas } from "../workbooks/versionFormulas";
import { changesSince } from "../workbooks/versions";
import { carriedInputs, type CarriedNote } from "./carriedInputs";
import { figures, type Figures } from "./figures";
import { labelOf } from "./labelOf";
import type { NotCarried, StandsElsewhere } from "./notCarried";
import { ownThings } from "./ownThings";

export interface Upgrade {
  /** The new workbook; computed where that could be done. */
  readonly book: Book;
  readonly template: string;
  /** The template's name for people. */
  readonly title: string;
  /** The version that the old one was made from; empty where it says none. */
  readonly from: string;
  readonly to: string;
  /** What has changed since, in sentences. */
  readonly changes: string;
  /** Filled cells that were carried over. */
  readonly carried: number;
  readonly notCarried: readonly NotCarried[];
  readonly elsewhere: readonly StandsElsewhere[];
  /** Inputs that the old version did not have and that begin with a usual figure, by their labels. */
  readonly begun: readonly string[];
  readonly figures: Figures;
}

/** Why there is nothing to upgrade. */
export interface NoUpgrade {
  /** Already today's, or not possible. */
  readonly kind: "current" | "refused";
  readonly sentence: string;
}

/**
 * @param stored the workbook as it is stored
 * @param compute computes a book; without it the figures after are not known
 */
export function upgrade(stored: Book, compute?: (book: Book) => Book): Upgrade | NoUpgrade {
  const read = recognised(stored);
  const origin = originOf(read);
  if (!origin)
    return refused(
      read.template === ""
        ? "This workbook was not made from one of our templates, so there is nothing to upgrade. Start a workbook from a template and copy the inputs over."
        : `This workbook says that it was made from the template “${read.template}”, which is not known here. Nothing was changed; upgrade it with the Rigsheet that made it.`,
    );
  const { template, made } = origin;
  const { title, definition } = template;
  const from = read.templateVersion;
  if (made === "now")
    return {
      kind: "current",
      sentence: `This workbook is of version ${from} of “${title}” already, which is today's. There is nothing to upgrade.`,
    };
  if (made === "later")
    return refused(
      `This workbook was made from version ${from} of “${title}”; this Rigsheet is older and knows version ${definition.version}. Nothing was changed. Take a Rigsheet as new as the workbook; in Excel, the older add-in can stay for up to 24 hours after it was renewed.`,
    );
  const own = compute?.(read);
  const older = own ? withStored(own, read) : read;
  if (inputsIn(read, definition).length === 0)
    return refused(
      "The names by which its inputs are found are gone from this workbook, so nothing can be carried over. Start a new workbook from the template and copy the inputs over, block by block.",
    );
  const { inputs, count, notes, begun, notCarried, elsewhere } = carriedInputs(older, template);
  const laidOut = withNotes(layOut(definition, inputs), notes);
  const book = compute ? compute(laidOut) : laidOut;
  return {
    book,
    template: template.id,
    title,
    from,
    to: definition.version,
    changes: changesSince(template.id, from),
    carried: count,
    notCarried: [
      ...notCarried,
      ...ownThings(older, definition, [...notCarried, ...elsewhere]),
      ...(versionFormulas(template.id, from) ? [] : [NOT_KEPT]),
    ],
    elsewhere,
    begun: begun.map((name) => labelOf(definition, name)),
    figures: figures(definition, read, own, compute && book),
  };
}

const refused = (sentence: string): NoUpgrade => ({ kind: "refused", sentence });

const NOT_KEPT: NotCarried = {
  sheet: "",
  value: "formulas of your own",
  why: "What formulas this version had is not kept, so yours can't be told from the template's. Look through the old workbook for them.",
};

/** The values as the file shows them; worked out anew where it shows none. */
const withStored = (own: Book, read: Book): Book => ({
  ...own,
  sheets: own.sheets.map((sheet, index) => ({
    ...sheet,
    results: { ...sheet.results, ...sound(read.sheets[index]!.results) },
  })),
});

const sound = (results: Readonly<Record<string, BookResult>>): Record<string, BookResult> =>
  Object.fromEntries(Object.entries(results).filter(([, result]) => !isBookError(result)));

/** People's notes on inputs, in the cells where these lie now. */
function withNotes(book: Book, notes: readonly CarriedNote[]): Book {
  for (const { name, index, note } of notes) {
    const found = book.names.find((one) => one.name === name);
    const zone = found && parseRange(found.range);
    const cells = book.sheets.find((sheet) => sheet.name === found?.sheet)?.cells;
    if (!zone || !cells) continue;
    const at = address(zone.top + index, zone.left);
    cells[at] = { ...cells[at], note };
  }
  return book;
}
