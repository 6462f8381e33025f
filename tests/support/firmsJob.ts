/** A job drawn on the demonstration's standards, and an edition of them after which rows are wanting on several lists. */
import type { Book } from "../../src/workbooks/book";
import { drawnBook } from "../../src/standards/drawOn";
import { firmsStandards, type FirmsStandards } from "../../src/standards/firmsStandards";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { standardsWorkbook } from "../../src/workbooks/standards/definition";
import { standardsExample } from "../../src/workbooks/standards/demonstration";

type Rows = readonly Readonly<Record<string, number | string>>[];

export const firm = (inputs: JobInputs = standardsExample): Book => layOut(standardsWorkbook, inputs);

export function drawnJob(): Book {
  const book = drawnBook(firm(), "firm.xlsx", new Date(2026, 10, 10));
  if (typeof book === "string") throw new Error(book);
  return book;
}

const more = (rows: Rows, what: string): Rows =>
  Array.from({ length: 12 }, (_, index) => ({ ...rows[0], name: `${what} ${index + 1}` }));

const { fields = {}, blocks = {} } = standardsExample;
/** A price of the first cable, twelve more cables and plates, and a usual cable of the new ones. */
export const nextEdition: JobInputs = {
  fields: {
    ...fields,
    standards_edition: 4,
    standards_date: sheetDate(2027, 1, 4),
    site_usual_cable: "new cable 3",
  },
  blocks: {
    ...blocks,
    cables: [
      { ...blocks.cables![0]!, price: 41.5 },
      ...blocks.cables!.slice(1),
      ...more(blocks.cables!, "new cable"),
    ],
    plates: [...blocks.plates!, ...more(blocks.plates!, "new plate")],
  },
};

export function nextStandards(): FirmsStandards {
  const found = firmsStandards(firm(nextEdition), "firm.xlsx");
  if (typeof found === "string") throw new Error(found);
  return found;
}
