/** The outsider's pairs of revisions (tests/fixtures/quotes): what changed is said, once, and nothing else. */
import { compareJobs, type Comparison } from "../../src/compare/compareJobs";
import { report } from "../../src/compare/report";
import { inWords } from "../../src/compare/words";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { recognised } from "../../src/review/recognised";
import type { Book } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import {
  after,
  before,
  compareCases,
  computedBase,
  type CompareCase,
  type Edit,
} from "../support/quoteCases";
import { referencePrice, type Job } from "../support/referencePrice";
import { recalculated, withLibreOffice } from "../support/tools";
import { sampled } from "../support/tries";

const LONG_MS = 240_000;
const throughFile = async (book: Book): Promise<Uint8Array> => writeXlsx(recalculate(book));
const olderFiles = new Map<Book, Promise<Uint8Array>>();
/** Written once for all cases that begin alike. */
function olderFile({ book, first }: CompareCase): Promise<Uint8Array> {
  const base = computedBase({ id: "", what: "", book, edits: [], baseEdits: first });
  const written = olderFiles.get(base) ?? writeXlsx(base);
  olderFiles.set(base, written);
  return written;
}
const older = ({ book, first }: CompareCase): Book =>
  before({ id: "", what: "", book, edits: [], baseEdits: first }).book;
const newer = ({ book, first, edits }: CompareCase): Book =>
  after({ id: "", what: "", book, baseEdits: first, edits }).book;

async function compared(
  one: CompareCase,
  savedAgain = async (file: Uint8Array) => file,
): Promise<Comparison> {
  const [first, second] = [await olderFile(one), await savedAgain(await throughFile(newer(one)))];
  return compareJobs(multiRoom, await readXlsx(first), recognised(await readXlsx(second)), recalculate);
}

/** As the outsider counts: each cell of a row or field, a row that came or went as one. */
const cellsChanged = ({ changes }: Comparison): number =>
  changes.reduce(
    (sum, { kind, cells }) => sum + (kind === "added" || kind === "removed" ? 1 : cells.length),
    0,
  );

/** The label of what an edit changes, and what the workbook held before, in the template's own words. */
function wanted(one: CompareCase, edit: Edit): { label: string; row?: string; held: unknown } | undefined {
  const { fields = {}, blocks = {} } = jobInputsOf(multiRoom, older(one));
  for (const { parts } of multiRoom.sheets)
    for (const part of parts) {
      if (part.kind === "fields")
        for (const { name, label } of part.fields)
          if (name === edit.field) return { label, held: fields[name] };
      if (part.kind === "block" && edit.row !== undefined)
        for (const { key, head } of part.columns)
          if (`${part.name}_${key}` === edit.column) {
            const row = blocks[part.name]!.find((each) => Object.values(each).includes(edit.row!));
            return { label: head, row: edit.row, held: row?.[key] };
          }
    }
  return undefined;
}

const isSaved = ({ id }: CompareCase): boolean => id.endsWith("saved");

test("there are the outsider's 21 pairs", () => expect(compareCases).toHaveLength(21));

test.each(
  sampled(compareCases, 2)
    .filter((one) => !isSaved(one))
    .map((one) => [one.id, one] as const),
)(
  "%s",
  async (_, one) => {
    const comparison = await compared(one);
    expect(cellsChanged(comparison)).toBe(one.inputChanges);
    for (const edit of one.edits) {
      const want = wanted(one, edit);
      // The same number in another spelling, or a row that is new, has no cell before it.
      if (!want || want.held === edit.value) continue;
      const cells = comparison.changes.flatMap(({ row, cells: own }) =>
        want.row === undefined || row === want.row ? own : [],
      );
      expect(cells).toContainEqual(
        expect.objectContaining({
          label: want.label,
          before: want.held === undefined ? null : expect.any(String),
          after: edit.value === null ? null : expect.any(String),
        }),
      );
    }
    const { length } = comparison.changes;
    const head =
      length === 0
        ? "No input and no formula has changed."
        : `${length} ${length === 1 ? "change" : "changes"}:`;
    expect(inWords(comparison).split("\n")[0]).toBe(head);
    if (length > 0) expect(report(comparison, ["a", "b"])).toContain(`${head.slice(0, -1)}, rows matched`);
    // The same to the eye is told apart.
    for (const { cells } of comparison.changes)
      for (const { before: old, after: now } of cells) expect(old?.trim()).not.toBe(now?.trim());
    // The demonstration has changed since the outsider priced it, so the tests' own reference prices it anew.
    if (one.ownTotalAfter !== undefined && one.ownTotalBefore !== undefined)
      expect([comparison.olderCents, comparison.newerCents]).toEqual(
        [older(one), newer(one)].map((book) =>
          Math.round(Number(referencePrice(jobInputsOf(multiRoom, book) as unknown as Job).total) * 100),
        ),
      );
  },
  LONG_MS,
);

describe("saved again by another program", () => {
  for (const one of compareCases.filter(isSaved)) {
    withLibreOffice(`LibreOffice, ${one.id}: no formula is called changed`, async () => {
      const comparison = await compared(one, (file) => recalculated(file, { to: "xlsx" }));
      expect(comparison.changes.filter(({ kind }) => kind === "formula")).toEqual([]);
      expect(cellsChanged(comparison)).toBe(one.inputChanges);
    });

    test(
      `@cj-tech-master/excelts, ${one.id}: the template is recognised and no formula called changed`,
      async () => {
        const { Workbook } = await import("@cj-tech-master/excelts");
        const comparison = await compared(one, async (file) => {
          const workbook = new Workbook();
          await workbook.xlsx.load(Buffer.from(file));
          return new Uint8Array(await workbook.xlsx.writeBuffer());
        });
        expect(cellsChanged(comparison)).toBe(one.inputChanges);
      },
      LONG_MS,
    );
  }
});
