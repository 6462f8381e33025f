/** A new job that draws on the firm's standards: a frozen copy of all that they have for it, and which edition that was. */
import type { Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { startingPoint } from "../workbooks/multiRoom/startingPoint";
import { sheetDateOf } from "../workbooks/sheetDate";
import { site } from "../workbooks/multiRoom/names/site";
import { taken } from "../workbooks/multiRoom/names/taken";
import { OF } from "../workbooks/names";
import { firmsStandards, type FirmsStandards } from "./firmsStandards";
import { takeable, takenRows, FIELDS } from "./taken";

/**
 * @param start what an empty job starts from
 * @param today as a sheet has dates: the date of the quote
 */
export function drawOn(standards: FirmsStandards, start: JobInputs, today: number): JobInputs {
  const lists = takeable(standards.inputs);
  const fields = [...lists.get(FIELDS)!].map(([name, { value }]) => [name, value!] as const);
  const blocks = [...lists].filter(([list, rows]) => list !== FIELDS && rows.size > 0);
  return {
    fields: {
      ...start.fields,
      ...Object.fromEntries(fields),
      ...edition(standards),
      [site.date.name]: today,
      ...(standards.days !== undefined && { [site.until.name]: today + standards.days }),
    },
    blocks: {
      ...start.blocks,
      ...Object.fromEntries(blocks.map(([list, rows]) => [list, [...rows.values()]])),
      [taken[OF].name]: takenRows(lists),
    },
  };
}

/** Which standards a job drew on, as its sheet Site tells it. */
export const edition = ({ firm, edition, date }: FirmsStandards): Record<string, number | string> => ({
  [site.standards.name]: firm,
  [site.standards_edition.name]: edition,
  [site.standards_date.name]: date,
});

/**
 * A new job from a workbook of standards.
 * @param called what a sentence calls that workbook
 * @returns a sentence where no job can draw on it
 */
export function drawnBook(firm: Book, called: string, now: Date): Book | string {
  const standards = firmsStandards(firm, called);
  if (typeof standards === "string") return standards;
  return layOut(multiRoom, drawOn(standards, startingPoint, sheetDateOf(now)));
}
