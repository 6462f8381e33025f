/** Whatever is stored, a file of ours is safe to open: no text becomes a formula, none becomes markup. */
import fc from "fast-check";
import { report } from "../../../src/compare/report";
import { WEIGHTS } from "../../../src/review/finding";
import { reviewPage } from "../../../src/review/reviewPage";
import { picture, textAt } from "../../../src/pictures/svg";
import { readCsv } from "../../../src/hosts/file/readCsv";
import { writeCsv } from "../../../src/hosts/file/writeCsv";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { bookOf, emptySheet } from "../../support/books";
import { cellXml, partOf } from "../../support/parts";
import { tries } from "../../support/tries";

const dangerous = fc
  .tuple(
    fc.constantFrom("=", "+", "-", "@", "\t", "\r", "\n", "", "'"),
    fc.constantFrom("1+1", "cmd|'/C calc'!A0", "SUM(A1)", "<script>", '"', ",", "5", "x"),
    fc.string({ maxLength: 8 }),
  )
  .map((parts) => parts.join(""));

/** The cells of CSV, read by the rule of RFC 4180 alone. */
function rawCells(text: string): string[] {
  const cells: string[] = [];
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(?:,|\r\n|\n|$)/gy;
  for (let found = cell.exec(text); found && cell.lastIndex <= text.length; found = cell.exec(text)) {
    cells.push(found[1]?.replace(/""/g, '"') ?? found[2]!);
    if (cell.lastIndex === text.length) break;
  }
  return cells;
}

describe("CSV", () => {
  test("text never begins as a formula does, and comes back as it was", () => {
    fc.assert(
      fc.property(dangerous, (text) => {
        const written = writeCsv([["head", text, "end"]]);
        const [, cell] = rawCells(written);
        expect(cell).not.toMatch(/^\s*[=+\-@\t\r\n]/);
        // In so short a file a bar or semicolon could be taken for the separator.
        if (!/^'|[|;\t]/.test(text)) expect(readCsv(written)[0]!.cells[1]).toBe(text);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("numbers stay numbers", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), (value) => {
        expect(Number(rawCells(writeCsv([["x", value]]))[1])).toBe(value === 0 ? 0 : value);
      }),
    );
    expect(writeCsv([[-5, "-5"]])).toBe("-5,'-5\n");
  });
});

test(".xlsx: text is stored as text and a negative number as a number, never as a formula", async () => {
  await fc.assert(
    fc.asyncProperty(dangerous, async (text) => {
      const cells = { A1: { value: text, note: text }, B1: { value: -5 } };
      const sheet = partOf(
        await writeXlsx(bookOf({ ...emptySheet("S"), cells })),
        "xl/worksheets/sheet1.xml",
      );
      expect(sheet).not.toContain("<f");
      expect(cellXml(sheet, "A1")).toMatch(/^<c r="A1"[^>]* t="(?:s|inlineStr|str)"/);
      expect(cellXml(sheet, "B1")).toMatch(/<v>-5<\/v>/);
    }),
    { numRuns: 60 },
  );
});

test("the page of a comparison: the tags of one filled with anything are those of one filled with x", () => {
  const pageOf = (text: string): string[] =>
    report(
      {
        title: text,
        currency: text,
        changes: [
          {
            kind: "changed",
            sheet: text,
            part: text,
            row: text,
            cells: [{ label: text, before: text, after: null }],
          },
        ],
        olderCents: 1,
        newerCents: 2,
        differenceCents: 1,
        steps: [{ changes: [0], what: text, cents: 1, totalCents: 2 }],
        moves: {
          levels: [
            { outlet: text, level: { before: text, after: 1 }, verdict: { before: text, after: text } },
          ],
          bands: [{ outlet: text, before: text, after: text }],
          volts: [
            {
              head: text,
              volts: { before: 1, after: text },
              verdict: { before: text, after: text },
              tuners: { before: 1, after: 2 },
              bands: { before: 1, after: 2 },
            },
          ],
          checks: [
            {
              what: text,
              where: text,
              found: { before: text, after: 1 },
              result: { before: text, after: text },
            },
          ],
        },
        notes: [text],
      },
      [text, text],
    ).match(/<[^>]*>/g)!;
  const plain = pageOf("x");
  fc.assert(
    fc.property(
      fc.oneof(
        dangerous,
        fc.constantFrom("</title><script>alert(1)</script>", '" onload="x', "<!--", "&lt;b>"),
      ),
      (text) => expect(pageOf(text)).toEqual(plain),
    ),
    { numRuns: tries(30, 300) },
  );
});

const markup = fc.oneof(
  dangerous,
  fc.constantFrom("</title><script>alert(1)</script>", '" onload="x', "<!--", "&lt;b>", "]]>", "</svg>"),
);
const tagsOf = (page: string): string[] => page.match(/<[^>]*>/g)!;

test("the page of a review: the tags of one filled with anything are those of one filled with x", () => {
  const pageOf = (text: string): string[] =>
    tagsOf(
      reviewPage([
        {
          path: `folder/${text.replace(/[\\/]/g, "")}x`,
          facts: {
            job: `${text}x`,
            template: `${text}x`,
            currency: text,
            version: text,
            printed: 1,
            passed: [text],
          },
          headline: { quoted: 1, unknown: 0, sentence: text },
          fingerprint: `${text}x`,
          findings: WEIGHTS.map((weight) => ({
            weight,
            place: { sheet: text, cell: text },
            message: text,
            expected: text,
            effect: text,
            remedy: text,
            rule: text,
            leadsTo: [{ weight, place: { sheet: text, cell: text }, message: text, remedy: text }],
          })),
        },
        { path: "x", findings: [], unreadable: text },
      ]),
    );
  const plain = pageOf("x");
  fc.assert(
    fc.property(markup, (text) => expect(pageOf(text)).toEqual(plain)),
    { numRuns: tries(30, 300) },
  );
});

test("a picture: what is written into it becomes no element and ends no attribute", () => {
  const elementsOf = (text: string): string[] =>
    tagsOf(
      picture({ title: text, description: text, width: 100, height: 50 }, textAt(1, 2, `${text}x`)).svg,
    ).map((tag) => tag.replace(/"[^"]*"/g, '""'));
  const plain = elementsOf("x");
  fc.assert(
    fc.property(markup, (text) => expect(elementsOf(text)).toEqual(plain)),
    { numRuns: tries(30, 300) },
  );
});
