/** A chain of reasons as lines of text, each step further in. */
import { isBookError, type BookResult } from "../workbooks/book";
import { isoDate } from "../workbooks/sheetDate";
import { inSigns } from "../workbooks/typed/jotted";
import { dateAsWritten, type ShownWriting } from "../workbooks/typed/writing";
import { figure } from "./namedCells";
import { isListed, type Listed, type Reason } from "./why";

const STEP = "  ";
const PERCENT = 100;

/** @returns lines without line ends */
export function whyInWords(reason: Reason, depth = 0): string[] {
  const lead = STEP.repeat(depth);
  const { words, value, format, formula, isCut, from } = reason;
  const end = formula !== undefined && isCut ? " …" : "";
  return [
    `${lead}${words}: ${valueInWords(value, format)}${end}`,
    ...(formula === undefined || isCut ? [] : [`${lead}${STEP}= ${formula}`]),
    ...from.flatMap((one) => (isListed(one) ? listed(one, depth + 1) : whyInWords(one, depth + 1))),
  ];
}

const listed = (list: Listed, depth: number): string[] => [
  `${STEP.repeat(depth)}${listInWords(list)}`,
  ...list.told.flatMap((one) => whyInWords(one, depth + 1)),
];

/**
 * @param writing of whoever reads it; undefined for points
 * @returns how many entries a list has, what they come to and which are told
 */
export function listInWords({ words, filled, sum, told, toldBy }: Listed, writing?: ShownWriting): string {
  const entries = `${filled} ${filled === 1 ? "entry" : "entries"}`;
  const adding = sum === undefined ? "" : `, together ${figureAs(sum, writing)}`;
  return `${words}: ${entries}${adding}${told.length > 0 ? `; the ${toldBy}:` : ""}`;
}

const figureAs = (value: number, writing: ShownWriting | undefined): string =>
  inSigns(figure(value), writing?.decimal ?? ".");

/** @returns a cell's value as text; a date and a percentage as their format says */
export function valueInWords(value: BookResult | undefined, format = "", writing?: ShownWriting): string {
  if (value === undefined || value === "") return "(blank)";
  if (isBookError(value)) return value.message ? `${value.error} ${value.message}` : value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return `“${value}”`;
  if (/y/i.test(format)) return dateAsWritten(isoDate(value), writing);
  return format.includes("%") ? `${figureAs(value * PERCENT, writing)} %` : figureAs(value, writing);
}
