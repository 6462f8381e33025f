/** The pane on a page of its own in a real browser, 320 pixels wide. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type Axe from "axe-core";
import { chromium, type Browser, type Page } from "playwright-core";
import webpack from "webpack";
import { withChromium } from "../support/tools";
import type { FakeOptions } from "./fakeHost";
import type { PanePage } from "./page";

export const BUNDLE_MS = 180_000;

/** What the browser's driver turns off; the last such switch counts, so that it is said again. */
const OFF_FOR_THE_DRIVER = [
  ...["AimEnabled", "AutoDeElevate", "AvoidCorsURLLoaderRestartOnRedirect"],
  ...["AvoidUnnecessaryBeforeUnloadCheckSync", "BlockOriginHeaderModificationOnRedirect"],
  ...["DestroyProfileOnBrowserClose", "DialMediaRouteProvider", "GlobalMediaControls", "HttpsUpgrades"],
  ...["LensOverlay", "MediaRouter", "NetworkTimeServiceQuerying", "OptimizationHints", "PaintHolding"],
  ...["ThirdPartyStoragePartitioning", "Translate"],
];

/** Pages of the browser's own for its address bar, which nobody sees: a processor's second for each window. */
const ADDRESS_BAR = ["WebUIOmniboxPopup", "WebUIOmniboxAimPopup"];

export const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  `--disable-features=${[...OFF_FOR_THE_DRIVER, ...ADDRESS_BAR].join(",")}`,
];

const AXE = path.join(path.dirname(require.resolve("axe-core/package.json")), "axe.min.js");
const ZLIB = path.join(__dirname, "..", "..", "src", "hosts", "file", "zlibInBrowser.ts");
const CSS = path.join(__dirname, "..", "..", "src", "pane", "pane.css");

/** The browser's driver wants the whole path of a program that is known by its name. */
export const onPath = (program: string): string =>
  (process.env.PATH ?? "")
    .split(path.delimiter)
    .map((folder) => path.join(folder, program))
    .find((file) => existsSync(file)) ?? program;

/** @returns the bundled script of a test's page; the spreadsheet library is a script of its own */
export async function bundled(entry: string = path.join(__dirname, "page.ts")): Promise<string> {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-pane-"));
  const compiler = webpack({
    mode: "development",
    devtool: false,
    target: "web",
    entry,
    output: { path: folder, filename: "page.js" },
    resolve: { extensions: [".ts", ".mjs", ".js", ".json"] },
    externals: { "@odoo/o-spreadsheet": "o_spreadsheet" },
    plugins: [new webpack.NormalModuleReplacementPlugin(/^node:zlib$/, ZLIB)],
    module: {
      rules: [
        {
          test: /\.ts$/,
          loader: "ts-loader",
          options: { transpileOnly: true, compilerOptions: { noEmit: false } },
        },
      ],
    },
  });
  const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) =>
    compiler!.run((error, result) => (error ? reject(error) : resolve(result))),
  );
  await new Promise((resolve) => compiler!.close(resolve));
  if (!stats || stats.hasErrors()) throw new Error(stats?.toString("errors-only"));
  const script = readFileSync(path.join(folder, "page.js"), "utf8");
  rmSync(folder, { recursive: true });
  return script;
}

const HTML = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Pane</title>
<style>html, body { height: 100%; margin: 0; }</style><link rel="stylesheet" href="pane.css">
</head><body><main id="pane"></main><script src="page.js"></script></body></html>`;

export type Theme = "light" | "dark" | "high contrast";

let browser: Browser | undefined;
export const closeBrowser = (): Promise<void> | undefined => browser?.close();

export interface Looks {
  readonly theme?: Theme;
  readonly width?: number;
  readonly height?: number;
}

interface Shown {
  readonly page: Page;
  /** What went wrong on the page, or left it, since it was last loaded. */
  complaints: string[];
}

/** A page for each of the looks: another test loads it anew, which costs a tenth of a new process. */
const shown = new Map<string, Shown>();

async function pageWith(
  program: string,
  script: string,
  { theme = "light", width = 320, height = 640 }: Looks,
): Promise<Shown> {
  const key = [theme, width, height].join();
  const known = shown.get(key);
  if (known) return known;
  browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme === "dark" ? "dark" : "light",
    forcedColors: theme === "high contrast" ? "active" : "none",
  });
  const page = await context.newPage();
  const made: Shown = { page, complaints: [] };
  page.on("pageerror", (error) => made.complaints.push(`error: ${error.message}`));
  page.on("console", (message) => made.complaints.push(`console: ${message.text()}`));
  const bodies: Record<string, [string, string]> = {
    "/": ["text/html", HTML],
    "/page.js": ["text/javascript", script],
    "/pane.css": ["text/css", readFileSync(CSS, "utf8")],
  };
  await page.route("**/*", (route) => {
    const found = bodies[new URL(route.request().url()).pathname];
    if (!found) made.complaints.push(`request to ${route.request().url()}`);
    return found
      ? route.fulfill({ contentType: found[0], body: found[1] })
      : route.fulfill({ status: 404, body: "" });
  });
  shown.set(key, made);
  return made;
}

/** A test with the pane open; at its end nothing may have been complained of, and nothing asked of a network. */
export function withPane(
  name: string,
  script: () => string,
  options: () => FakeOptions | undefined,
  looks: Looks,
  work: (page: Page) => Promise<void>,
): void {
  withChromium(name, async (program) => {
    const on = await pageWith(program, script(), looks);
    const { page } = on;
    try {
      on.complaints = [];
      // The page before it is gone with all it held.
      await page.goto("http://pane.test/");
      const { book, ...rest } = options() ?? {};
      // A workbook goes over as text: the driver takes ten times as long to pass it cell by cell.
      await page.evaluate(
        ([others, text]) => {
          const opened = text === undefined ? undefined : { ...others, book: JSON.parse(text) };
          (globalThis as unknown as { panePage: PanePage }).panePage.open(opened);
        },
        [rest, JSON.stringify(book)] as const,
      );
      await work(page);
      expect(on.complaints).toEqual([]);
    } catch (trouble) {
      // Whatever it was, the next test starts without it.
      for (const [key, one] of shown) if (one === on) shown.delete(key);
      await page.context().close();
      throw trouble;
    }
  });
}

/** @returns what axe finds against WCAG 2.2 AA and its own best practice, one line each */
export async function barriers(page: Page, ...within: string[]): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(readFileSync(AXE, "utf8"));
  return page.evaluate(async (include) => {
    const { axe } = globalThis as unknown as { axe: typeof Axe };
    const { violations } = await axe.run(
      include.length > 0 ? { include: include.map((one) => [one]) } : document,
      {
        runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
        rules: { "target-size": { enabled: true } },
      },
    );
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  }, within);
}

export const callsOf = (page: Page): Promise<readonly (readonly unknown[])[]> =>
  page.evaluate(() => (globalThis as unknown as { panePage: PanePage }).panePage.host!.calls);

export const status = (page: Page): Promise<string> => page.locator(".pane-status").innerText();

export async function statusIs(page: Page, wanted: RegExp): Promise<string> {
  await page.locator(".pane-status", { hasText: wanted }).waitFor({ timeout: 8000 });
  return status(page);
}

const exactly = (label: string): RegExp => new RegExp(`^${label.replace("?", "\\?")}$`);

/**
 * Opens a view of the pane by its name, as a person does: what the person is doing first, where it is not open.
 * @param pane a page or a part of one
 */
export async function openView(pane: Pick<Page, "locator">, label: string): Promise<void> {
  const view = pane.locator(".pane-tabs button").filter({ hasText: exactly(label) });
  if (!(await view.isVisible())) {
    const row = await view.evaluate((button) => button.parentElement!.id);
    await pane.locator(`.pane-groups [aria-controls="${row}"]`).click();
  }
  await view.click();
}
