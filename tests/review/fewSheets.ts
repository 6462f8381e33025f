/** A template of a few sheets, and a copy of it as a file, for rules that read what a file says beside its cells. */
import type { Finding } from "../../src/review/finding";
import type { Reviewed, Rule } from "../../src/review/rule";
import type { Book, BookSheet } from "../../src/workbooks/book";
import type { WorkbookDefinition } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import type { SavedFile, SavedSheet } from "../../src/workbooks/savedFile";
import { found } from "./smallBook";

const print = { orientation: "portrait" };
const sheet = (name: string, kind: string, ...fields: object[]) => ({
  name,
  kind,
  print: name === "Two" ? { ...print, onePage: true } : print,
  parts: [{ kind: "fields", heading: `On ${name}`, fields }],
});
/** Fields stand from row 5 on: their labels in A, their values in B. */
export const fewSheets = {
  id: "few",
  version: "1",
  title: "Few",
  sheets: [
    sheet(
      "Office",
      "input",
      { name: "a", label: "Width", input: { what: "Its width", rule: { kind: "number", min: 0, max: 9 } } },
      { name: "b", label: "Job", input: { what: "Its job", rule: { kind: "text" } } },
      { name: "double", label: "Double", formula: "a*2", verdict: true },
    ),
    sheet(
      "Quote",
      "print",
      { name: "net", label: "Net", formula: "double+1", verdict: true },
      { name: "total", label: "Total", formula: "net*2" },
    ),
    sheet("Price", "input", { name: "cost", label: "Cost", formula: "double" }),
    ...["One", "Two", "Three"].map((name) =>
      sheet(name, "print", { name: name.toLowerCase(), label: name, formula: "a" }),
    ),
  ],
} as unknown as WorkbookDefinition;

export type Change = (
  sheets: Record<string, BookSheet>,
  book: Book,
  file: Record<string, Partial<SavedSheet>>,
) => void;
const NOTHING_ON_IT: Partial<SavedSheet> = {
  ...{ drawings: [], conditions: [], rules: [], margins: [], notes: [], hyperlinks: [], scenarios: [] },
  page: { rowBreaks: [] },
  marked: true,
};

/** What a rule says of a copy of the template as a file. */
export function ofFile(
  rule: Rule,
  change: Change = () => undefined,
  more: Partial<Reviewed> = {},
  saved: Partial<SavedFile> = {},
): Finding[] {
  const fresh = layOut(fewSheets);
  const book: Book = structuredClone(fresh);
  const file = Object.fromEntries(
    book.sheets.map(({ name }): [string, Partial<SavedSheet>] => [name, { name, ...NOTHING_ON_IT }]),
  );
  change(Object.fromEntries(book.sheets.map((one) => [one.name, one])), book, file);
  const read: Book = {
    ...book,
    saved: {
      file: { sheets: Object.values(file), names: [], links: [], properties: [], ...saved },
    } as unknown as Book["saved"],
  };
  return found(rule, read, {
    definition: fewSheets,
    labelAt: (name, { row, column }) => `${name} ${row}/${column}`,
    ...more,
  });
}
export const messagesOfFile = (...asked: Parameters<typeof ofFile>): string[] =>
  ofFile(...asked).map(({ message }) => message);
