/** The built script for pages in Chromium against the same calls in Node: one sheet, one PDF. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { chromium } from "playwright-core";
import type { PaperSheet } from "../../../src/workbooks/paperSheet";
import type * as pdf from "../../../src/hosts/pdf/pdf";
import { sheetsPdf } from "../../../src/hosts/pdf/sheetsPdf";
import type { PrintFont } from "../../../src/hosts/pdf/printFonts";
import { PRINT_FONTS, PRINT_FONT_HOME } from "../../../src/hosts/pdf/printFonts";
import { BUILD_MS, buildDesk } from "../desk/desk";
import { FLAGS, onPath } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import { FACTS, printedType } from "./printedType";

const dist = path.join(__dirname, "../../../dist");
const SCRIPT = path.join(dist, "desk", "pdf.js");

const cell = (at: string, text: string) =>
  ({ at, text, look: { bold: true }, align: "left", size: 10, columns: 1, rows: 1 }) as const;
const SHEET: PaperSheet = {
  name: "Invented",
  print: { orientation: "portrait", paper: "a4", footLeft: "Invented", footRight: "D-1" },
  columns: [100, 200],
  scale: 1,
  before: [],
  head: [{ height: 14, cells: [cell("A1", "Head"), cell("B1", "dBµV ≥ 47")] }],
  parts: [
    Array.from({ length: 80 }, (_, row) => ({
      height: 14,
      cells: [cell(`A${row + 2}`, `Row ${row}`), cell(`B${row + 2}`, "Überspannung, λ, Ж → ✓")],
    })),
  ],
};

const fonts = (): Record<string, string> =>
  Object.fromEntries(
    Object.entries(PRINT_FONTS).map(([face, file]) => [
      face,
      readFileSync(path.join(dist, "library", PRINT_FONT_HOME, file)).toString("base64"),
    ]),
  );

/** What is handed to the page. */
interface Called {
  readonly fonts: Record<string, string>;
  readonly sheet: PaperSheet;
  readonly facts: Omit<typeof FACTS, "at">;
  readonly at: string;
}
const called = (): Called => ({ fonts: fonts(), sheet: SHEET, facts: FACTS, at: FACTS.at.toISOString() });

withChromium(
  "the same bytes",
  async (program) => {
    buildDesk();
    const { bytes: inNode } = await sheetsPdf([SHEET], FACTS, await printedType());
    const browser = await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    try {
      const page = await browser.newPage();
      await page.addScriptTag({ path: SCRIPT });
      const inPage = await page.evaluate(async ({ fonts, sheet, facts, at }) => {
        const { PrintType, sheetsPdf } = (window as unknown as { rigsheetPdf: typeof pdf }).rigsheetPdf;
        const bytesOf = (text: string): Uint8Array => Uint8Array.from(atob(text), (one) => one.charCodeAt(0));
        const faces = Object.fromEntries(
          Object.entries(fonts).map(([face, text]) => [face, bytesOf(text)]),
        ) as Record<PrintFont, Uint8Array>;
        const { bytes } = await sheetsPdf([sheet], { ...facts, at: new Date(at) }, new PrintType(faces));
        return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
      }, called());
      expect(Buffer.from(inPage, "base64").subarray(0, 5).toString("latin1")).toBe("%PDF-");
      expect(inPage).toBe(Buffer.from(inNode).toString("base64"));
    } finally {
      await browser.close();
    }
  },
  BUILD_MS,
);
