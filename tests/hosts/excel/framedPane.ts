/**
 * The add-in as it is built, in Chromium: its page in a frame, as Excel on the
 * web has it, under its own content policy, with a stand-in for Excel around
 * it that hands over real files.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { chromium, type Browser, type FrameLocator, type Page } from "playwright-core";
import { OFFICE_ADDRESS } from "../../../src/hosts/excel/taskpaneHtml";
import type { Book } from "../../../src/workbooks/book";
import { bundled, FLAGS, onPath } from "../../pane/inChromium";
import type { StandInOptions } from "../../support/excelStandIn";
import { withChromium } from "../../support/tools";
import type { Asked, StandInPage } from "./standInPage";

const project = path.join(__dirname, "..", "..", "..");
const ADDRESS = "https://addins.example.com";
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css",
  ".png": "image/png",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};
const LIBRARIES = ["@odoo/owl/dist/owl.iife.min.js", "@odoo/o-spreadsheet/dist/o_spreadsheet.min.iife.js"];
const OFFICE_JS = "Object.assign(globalThis, parent.standInPage.excel.globals());";
const AROUND = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Stand-in</title>
<style>html, body { height: 100%; margin: 0; } iframe { width: 320px; height: 720px; border: 0; }</style>
</head><body><script src="around.js"></script></body></html>`;

export const standInScript = async (): Promise<string> =>
  [
    ...LIBRARIES.map((file) => readFileSync(path.join(project, "node_modules", file), "utf8")),
    await bundled(path.join(__dirname, "standInPage.ts")),
  ].join("\n;\n");

export interface FramedPane {
  readonly page: Page;
  readonly pane: FrameLocator;
  /** The workbooks that were handed over, in order. */
  created(): Promise<Uint8Array[]>;
}

/** What the tests of a file have asked of Excel, each by its name. */
export const askedOfExcel = new Map<string, Asked>();

let browser: Browser | undefined;
export const closeFrames = (): Promise<void> | undefined => browser?.close();

/** A test with the built pane open over a workbook; at its end nothing may have been complained of. */
export function withFramedPane(
  name: string,
  script: () => string,
  opened: () => StandInOptions & { readonly book?: Book },
  work: (framed: FramedPane) => Promise<void>,
): void {
  withChromium(name, async (program) => {
    const { book, ...options } = opened();
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const context = await browser.newContext({ viewport: { width: 320, height: 720 } });
    try {
      const page = await context.newPage();
      // While the simulated Excel computes, a busy machine answers no click for a while.
      page.setDefaultTimeout(120_000);
      const complaints: string[] = [];
      page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
      page.on("console", (message) => {
        if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
      });
      await context.route("**/*", async (route) => {
        const url = new URL(route.request().url());
        const file = path.join(project, "dist", "addin", url.pathname);
        const type = TYPES[path.extname(file)];
        if (url.pathname === "/") await route.fulfill({ contentType: TYPES[".html"], body: AROUND });
        else if (url.pathname === "/around.js")
          await route.fulfill({ contentType: TYPES[".js"], body: script() });
        else if (url.origin === OFFICE_ADDRESS)
          await route.fulfill({ contentType: TYPES[".js"], body: OFFICE_JS });
        else if (url.origin === ADDRESS && type !== undefined)
          await route.fulfill({ contentType: type, body: readFileSync(file) });
        else {
          complaints.push(`request to ${url.href}`);
          await route.abort();
        }
      });
      await page.goto(`${ADDRESS}/`);
      // A stand-in that did not load must not be taken for a pane that fails.
      expect(complaints).toEqual([]);
      await page.evaluate(
        ([text, { file, ...others }]) => {
          const { standInPage } = globalThis as unknown as { standInPage: StandInPage };
          standInPage.open(text === undefined ? undefined : (JSON.parse(text) as Book), {
            ...others,
            ...(file !== undefined && {
              file: Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0)),
            }),
          });
        },
        [
          book && JSON.stringify(book),
          { ...options, file: options.file && Buffer.from(options.file).toString("base64") },
        ] as const,
      );
      const pane = page.frameLocator("iframe");
      await pane.locator(".pane").waitFor();
      await work({
        page,
        pane,
        created: async () => {
          const texts = await page.evaluate(() =>
            (globalThis as unknown as { standInPage: StandInPage }).standInPage.excel.created.map((bytes) =>
              bytes.reduce((text, byte) => text + String.fromCharCode(byte), ""),
            ),
          );
          return texts.map((text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0)));
        },
      });
      askedOfExcel.set(
        name,
        await page.evaluate(() =>
          (globalThis as unknown as { standInPage: StandInPage }).standInPage.asked(),
        ),
      );
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  });
}
