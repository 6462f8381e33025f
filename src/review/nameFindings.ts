/** Names that lead elsewhere, lead nowhere, stand twice or look like others. */
import { parseRange, type Zone } from "../formula/address";
import type { Book, BookName } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { namedValue } from "../workbooks/named";
import type { SavedName } from "../workbooks/savedFile";
import { estimate } from "../workbooks/multiRoom/names";
import { blankBook } from "./blankBook";
import type { Finding } from "./finding";
import { labelsIn } from "./labels";
import { deceives, seenAs } from "./lookAlike";
import { figure } from "./namedCells";
import type { NameTrouble, PutBack } from "./namesPutBack";

const RULE = "name changed";
const AS_PRINTED = 0.005;

interface Totals {
  readonly now?: unknown;
  readonly meant?: unknown;
}

/**
 * @param stored the workbook as it is stored
 * @param put its names put back
 * @param totals the total as the file has it and with the names in their places
 */
export function nameFindings(
  stored: Book,
  { troubles, book }: PutBack,
  definition: WorkbookDefinition,
  totals: Totals,
): Finding[] {
  const { file } = stored.saved ?? {};
  const raw = new Map(
    (file?.names ?? []).flatMap((one) => (one.sheet === undefined ? [[one.name, one.text]] : [])),
  );
  const labelAt = labelsIn(book, definition);
  const effect = effectOf(totals);
  const told = troubles.map((trouble): Finding => {
    const { name, meant } = trouble;
    const zone = parseRange(meant.range)!;
    const label = labelAt(meant.sheet, { row: zone.top, column: zone.left });
    return {
      weight: "wrong",
      message: `${sentence(trouble, raw.get(name), label, stored)} It belongs to ${absolute(meant)}.`,
      expected: `=${absolute(meant)}`,
      effect,
      ...amountOf(totals),
      rule: RULE,
      remedy: `Set ${name} to =${absolute(meant)} again: Formulas, Name Manager.`,
    };
  });
  return [
    ...told,
    ...twice(stored, file?.names ?? [], effect),
    ...others(file?.names ?? [], definition, stored),
  ];
}

function effectOf({ now, meant }: Totals): string {
  const all = "All formulas that use the name read something else.";
  if (typeof meant !== "number") return all;
  if (typeof now !== "number")
    return `No total can be computed; with the name in its place it is ${meant.toFixed(2)}.`;
  return Math.abs(now - meant) < AS_PRINTED
    ? `${all} The total is the same today.`
    : `The total is ${now.toFixed(2)}; with the names in their places it is ${meant.toFixed(2)}.`;
}

/** Of all names together: what each would move alone is asked by nobody. */
const amountOf = ({ now, meant }: Totals): Pick<Finding, "amount"> =>
  typeof meant === "number"
    ? {
        amount: {
          before: typeof now === "number" ? { total: now } : {},
          after: { total: meant },
          isAbout: false,
        },
      }
    : {};

const absolute = ({ sheet, range }: BookName): string =>
  `'${sheet.replace(/'/g, "''")}'!${range.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}`;

function sentence(
  { name, meant, now }: NameTrouble,
  text: string | undefined,
  label: string,
  stored: Book,
): string {
  const called = `The name ${name} (${label})`;
  if (!now) {
    if (text === undefined) return `${called} is missing: a name that the formulas use is gone.`;
    if (text.includes("#REF!")) return `${called} has lost its cells: it leads to #REF!.`;
    const link = linkIn(text, stored);
    if (link !== undefined) return `${called} points into another workbook, an external link: ${link}.`;
    return `${called} is a constant or a formula, ${text.slice(0, 80)}, instead of a cell: what is entered there counts for nothing.`;
  }
  const [is, was] = [parseRange(now.range), parseRange(meant.range)];
  const rows = is && was && now.sheet === meant.sheet && sameTop(is, was) ? height(was) - height(is) : 0;
  return rows > 0
    ? `${called} is ${rows} ${rows === 1 ? "row" : "rows"} short: it points to ${absolute(now)}.`
    : `${called} points to other cells, ${absolute(now)}.`;
}

const height = ({ top, bottom }: Zone): number => bottom - top + 1;
const sameTop = (one: Zone, other: Zone): boolean => one.top === other.top && one.left === other.left;

/** @returns the file that `[1]Sheet!A1` leads to */
export function linkIn(text: string, { saved }: Book): string | undefined {
  const number = /\[(\d+)\]/.exec(text)?.[1];
  const named = /\[([^\]]+\.xl\w+)\]/i.exec(text)?.[1];
  if (number === undefined) return named;
  return saved?.file?.links.find((one) => one.number === Number(number))?.target ?? text;
}

/** A formula on that sheet reads the sheet's own; every other the workbook's. */
function twice(stored: Book, names: readonly SavedName[], effect: string): Finding[] {
  const whole = new Map(
    names.flatMap((one) => (one.sheet === undefined ? [[one.name.toLowerCase(), one] as const] : [])),
  );
  const inFile = names.flatMap((one): Finding[] => {
    const other =
      one.sheet === undefined || one.name.startsWith("_xl") ? undefined : whole.get(one.name.toLowerCase());
    if (!other) return [];
    const same = plain(one.text) === plain(other.text);
    return [
      {
        weight: same ? "worth knowing" : "wrong",
        message: `There are two names ${one.name}: one of the workbook and one of the sheet ${one.sheet} (its scope is local), ${same ? "for the same cells" : `for ${one.text}`}. Formulas on ${one.sheet} read the sheet's, all others the workbook's.`,
        effect: same
          ? "Nothing moves today; they part when one of them is changed."
          : (totalShown(stored) ?? effect),
        rule: RULE,
        remedy: `Delete the one of ${one.sheet} (Formulas, Name Manager), if it was not meant.`,
      },
    ];
  });
  return [...inFile, ...namesTwice(stored)];
}

/** As an open workbook tells of them. */
export const namesTwice = ({ saved }: Book): Finding[] =>
  (saved?.twice ?? []).map(({ name, sheet }) => ({
    weight: "wrong",
    message: `There are two names ${name}: one of the workbook and one of the sheet ${sheet}. Formulas on ${sheet} read the sheet's, all others the workbook's.`,
    rule: RULE,
    remedy: `Delete the one of ${sheet} (Formulas, Name Manager), if it was not meant.`,
  }));

function totalShown(stored: Book): string | undefined {
  const [shown, total] = [
    namedValue(stored, estimate.quote.total.name),
    namedValue(stored, estimate.price.total.name),
  ];
  return typeof shown === "number" && typeof total === "number" && Math.abs(shown - total) >= AS_PRINTED
    ? `The quote shows a total of ${figure(shown)}, and the price comes to ${figure(total)}.`
    : undefined;
}

const plain = (text: string): string => text.replace(/[$'=\s]/g, "").toLowerCase();

/** Names that the template does not have. */
function others(names: readonly SavedName[], definition: WorkbookDefinition, stored: Book): Finding[] {
  const own = new Set(blankBook(definition).names.map(({ name }) => name.toLowerCase()));
  return names.flatMap((one): Finding[] => {
    const { name, text, hidden } = one;
    if (own.has(name.toLowerCase()) || /^_xl|^Z_[0-9A-F]{8}_|^_/i.test(name)) return [];
    const like = seenAs(name)
      .toLowerCase()
      .replace(/^_+|[_.]+$/g, "");
    if (own.has(like))
      return [
        {
          weight: isUsed(stored, name) ? "wrong" : "doubtful",
          message: `The name ${name} looks like ${like} and is another (${deceives(name) ?? "a mark more"}): it stands for ${text.slice(0, 80)}.`,
          effect: isUsed(stored, name)
            ? "A formula uses it: it reads right and reads something else."
            : "A formula that uses it reads right and reads something else.",
          rule: RULE,
          remedy: `Use ${like} in its place, and delete it: Formulas, Name Manager.`,
        },
      ];
    if (text.includes("#REF!"))
      return [
        {
          weight: "worth knowing",
          message: `The name ${name} leads to #REF!; the template does not use it.`,
          rule: RULE,
          remedy: "Delete it: Formulas, Name Manager.",
        },
      ];
    if (hidden)
      return [
        {
          weight: "doubtful",
          message: `The name ${name} is hidden, and holds ${text.slice(0, 80)}.`,
          effect: "It goes out with the file; no menu shows it, other programs do.",
          rule: RULE,
          remedy: "Find out who put it there, and delete it before the file goes out.",
        },
      ];
    const link = linkIn(text, stored);
    return link === undefined
      ? []
      : [
          {
            weight: "worth knowing",
            message: `The name ${name} points into another workbook, an external link: ${link}.`,
            rule: RULE,
            remedy: "Delete it, if nothing of the office needs it: Formulas, Name Manager.",
          },
        ];
  });
}

const isUsed = ({ sheets }: Book, name: string): boolean =>
  sheets.some(({ cells }) => Object.values(cells).some(({ formula }) => formula?.includes(name)));
