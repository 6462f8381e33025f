/** A document on its pages, read by poppler; its words and figures are invented. */
import type { DocumentPart, DocumentRow, PaperDocument } from "../../../src/proposal/document";
import { documentPdf } from "../../../src/hosts/pdf/documentPdf";
import type { MadePdf } from "../../../src/hosts/pdf/unset";
import { element, picture } from "../../../src/pictures/svg";
import { overlapping, outside, readPdf, type PaperPage } from "../../support/pdfPages";
import { withPoppler } from "../../support/tools";
import { onePixel } from "./onePixel";
import { printedType } from "./printedType";

const AT = new Date("2026-11-30T12:00:00Z");
const MARGINS = { left: 62, right: 62, top: 54, bottom: 14 };

const rows: DocumentRow[] = Array.from({ length: 60 }, (_, index) => ({
  cells: [
    `Room ${index + 1}`,
    index % 7 === 0
      ? "an outlet with a second tuner behind the cupboard, and a spare one beside the desk"
      : "an outlet",
    `${(100 + index).toFixed(2)}`,
  ],
  ...(index === 20 && { is: "group" as const }),
}));
const drawn = picture(
  { title: "Levels", description: "A line.", width: 900, height: 500 },
  element("rect", { x: 10, y: 10, width: 800, height: 400, fill: "none", stroke: "#1F2933" }),
  element("text", { x: 20, y: 40 }, "dBµV at outlets"),
);

const parts: readonly DocumentPart[] = [
  {
    kind: "letterhead",
    name: "Invented Reception Ltd",
    lines: ["1 Invented Street, Invented Town", "Registered 000000; tax number 00 000 000"],
    logo: { bytes: onePixel, format: "png", width: 1, height: 1, alt: "Invented Reception" },
  },
  { kind: "title", text: "Offer for satellite reception in 60 rooms" },
  {
    kind: "facts",
    rows: [
      { label: "Customer", value: "Invented Hotels" },
      { label: "Number", value: "D-1, revision 2" },
      { label: "Site", value: "2 Invented Road" },
      { label: "Valid until", value: "2026-12-31" },
    ],
  },
  { kind: "heading", text: "What is offered" },
  { kind: "paragraph", text: "One cable from the head unit serves many tuners. ".repeat(12).trim() },
  { kind: "paragraph", text: "Roof work needs a second person.", is: "caution" },
  { kind: "list", items: ["Sixty outlets", "Two head units", "All cables, named at both ends"] },
  { kind: "heading", text: "Rooms" },
  {
    kind: "table",
    columns: [
      { label: "Room", align: "left", share: 2 },
      { label: "What", align: "left", share: 5 },
      { label: "Price", align: "right", share: 1 },
    ],
    rows: [
      ...rows,
      { cells: ["Net", "", "8,000.00"], is: "sum" },
      { cells: ["Total", "", "9,600.00"], is: "total" },
    ],
  },
  { kind: "heading", text: "Options" },
  {
    kind: "table",
    columns: [
      { label: "Option", align: "left", share: 4 },
      { label: "Adds", align: "right", share: 1 },
    ],
    rows: [{ cells: ["A second outlet in the lounge", "120.00"], box: true }],
  },
  { kind: "heading", text: "Levels" },
  { kind: "picture", svg: drawn.svg, alt: "Levels. A line.", caption: "Levels at all outlets" },
  { kind: "heading", text: "Acceptance" },
  {
    kind: "signature",
    text: "We accept this offer with the options that are ticked.",
    lines: ["Name", "Place and date", "Signature"],
  },
];

const documentOf = (more: readonly DocumentPart[] = parts): PaperDocument => ({
  title: "Offer D-1",
  author: "Invented Reception Ltd",
  subject: "Invented Hotels",
  language: "en",
  foot: "D-1, revision 2",
  parts: more,
});
const made = async (more?: readonly DocumentPart[], paper: "a4" | "letter" = "a4"): Promise<MadePdf> =>
  documentPdf(documentOf(more), { paper, at: AT }, await printedType());

const linesOn = (pages: readonly PaperPage[]): string[] => pages.flatMap(({ lines }) => lines);
const bodyOf = ({ lines }: PaperPage): string[] => lines.slice(0, -1);

describe.each([
  ["a4", 595],
  ["letter", 612],
] as const)("on %s", (paper, across) => {
  withPoppler("nothing outside, nothing over its neighbour, page x of y on each", async () => {
    const { bytes, unset } = await made(undefined, paper);
    expect(unset).toEqual([]);
    const { pages } = readPdf(bytes);
    expect(pages.length).toBeGreaterThanOrEqual(3);
    pages.forEach((page, index) => {
      expect(Math.round(page.width)).toBe(across);
      expect({ outside: outside(page, MARGINS), over: overlapping(page) }).toEqual({ outside: [], over: [] });
      expect(page.lines.at(-1)).toBe(`D-1, revision 2 Page ${index + 1} of ${pages.length}`);
    });
  });
});

withPoppler("every word of it is there, and each row of the table on one line of its page", async () => {
  const { bytes } = await made();
  const { pages } = readPdf(bytes);
  const all = linesOn(pages).join(" ");
  for (const row of rows) expect(all).toContain(`${row.cells[0]} an outlet`);
  for (const word of ["Invented Reception Ltd", "Registered 000000", "Sixty outlets", "Place and date", "☐"])
    expect(all).toContain(word);
  expect(all.match(/serves many tuners\./g)).toHaveLength(12);
});

withPoppler("what goes on over the page has its group's name above it, under the heads", async () => {
  const { pages } = readPdf((await made()).bytes);
  const after = pages.filter(({ lines }) => lines.some((line) => /^Room (2[2-9]|[3-6]\d) /.test(line)));
  expect(after.length).toBeGreaterThan(1);
  for (const { lines } of after.slice(1)) {
    const head = lines.findIndex((line) => /^Room What Price/.test(line));
    expect(lines[head + 1]).toMatch(/^Room 21 /);
    expect(lines[head + 2]).not.toMatch(/^Room 21 /);
  }
});

withPoppler("the head of the table stands again on its next page; a sum goes with what it sums", async () => {
  const { pages } = readPdf((await made()).bytes);
  const withRows = pages.filter(({ lines }) => lines.some((line) => /^Room \d+ /.test(line)));
  expect(withRows.length).toBeGreaterThan(1);
  for (const { lines } of withRows) expect(lines).toContain("Room What Price");
  const last = withRows.at(-1)!.lines;
  expect(last).toEqual(
    expect.arrayContaining([expect.stringMatching(/^Net /), expect.stringMatching(/^Total /)]),
  );
});

/** However much stands above, what belongs together is on one page. */
withPoppler(
  "a heading goes with what follows, a sum is not alone, a signature is whole, wherever they fall",
  async () => {
    for (let count = 28; count <= 40; count++) {
      const filler: DocumentPart[] = Array.from({ length: count }, (_, index) => ({
        kind: "paragraph",
        text: `Line ${index}.`,
      }));
      const { pages } = readPdf(
        (
          await made([
            ...filler,
            { kind: "heading", text: "Heading" },
            {
              kind: "table",
              columns: [{ label: "Head", align: "left", share: 1 }],
              rows: [{ cells: ["first"] }, { cells: ["second"] }, { cells: ["sum"], is: "total" }],
            },
            { kind: "heading", text: "Acceptance" },
            { kind: "signature", text: "We accept.", lines: ["Name", "Signature"] },
          ])
        ).bytes,
      );
      const bodies = pages.map(bodyOf);
      const pageOf = (line: string): number => bodies.findIndex((lines) => lines.includes(line));
      expect([count, pageOf("Heading")]).toEqual([count, pageOf("first")]);
      expect([count, pageOf("sum")]).toEqual([count, pageOf("second")]);
      expect([count, pageOf("Acceptance")]).toEqual([count, pageOf("We accept.")]);
      expect([count, pageOf("We accept.")]).toEqual([count, pageOf("Name Signature")]);
    }
  },
);

withPoppler(
  "who can't see it has headings, tables with heads, a list and the pictures in words",
  async () => {
    const { info, structure, fonts } = readPdf((await made()).bytes);
    expect(info).toMatch(/Title: +Offer D-1\n/);
    expect(info).toMatch(/Author: +Invented Reception Ltd\n/);
    expect(info).toMatch(/Tagged: +yes/);
    for (const element of ["H1", "H2", "Table", "TR", "TH", "TD", "LI", "LBody", "Figure"])
      expect(structure).toMatch(new RegExp(`^ *${element}\\b`, "m"));
    // What is repeated is not read again.
    expect(structure.match(/"Price"/g)).toHaveLength(1);
    expect(structure).not.toContain("Page 1 of");
    expect(fonts.length).toBeGreaterThan(1);
    expect(fonts.every(({ isEmbedded }) => isEmbedded)).toBe(true);
  },
);

withPoppler("the same bytes twice", async () => {
  const [one, two] = [await made(), await made()];
  expect(Buffer.from(one.bytes).equals(Buffer.from(two.bytes))).toBe(true);
});

withPoppler("a name of 300 letters and one long word are broken, and nothing is lost", async () => {
  const name = "Invented Hotels of the Long Name ".repeat(10).trim();
  const word = "x".repeat(300);
  const { bytes } = await made([
    { kind: "title", text: name },
    {
      kind: "facts",
      rows: [
        { label: "Customer", value: name },
        { label: "Word", value: word },
      ],
    },
    { kind: "paragraph", text: word },
  ]);
  const { pages } = readPdf(bytes);
  for (const page of pages) expect(outside(page, MARGINS)).toEqual([]);
  const all = pages.flatMap(({ words }) => words.map(({ text }) => text)).join("");
  expect(all.match(/x/g)).toHaveLength(600);
  expect(all.match(/LongName/g)).toHaveLength(20);
});

withPoppler("text that the type lacks is told by its place; text from right to left as such", async () => {
  const { unset } = await made([
    { kind: "title", text: "Offer for 山田" },
    { kind: "heading", text: "Scope" },
    { kind: "paragraph", text: "مرحبا" },
    { kind: "list", items: ["plain", "📡 dish"] },
  ]);
  expect(unset.map(({ place, signs }) => [place, signs])).toEqual([
    ["The title", "山田"],
    ["A paragraph under “Scope”", "مرحبا"],
    ["A line of the list under “Scope”", "📡"],
  ]);
});
