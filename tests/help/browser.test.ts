/** The help pages in a real browser: accessible in light and in dark, searchable, whole without a script. */
import { createServer, type Server } from "node:http";
import { readFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import path from "node:path";
import type Axe from "axe-core";
import { chromium, type Browser, type Page } from "playwright-core";
import { allFunctions } from "../../src/functions/all";
import { helpFiles } from "../../src/help/helpFiles";
import { FLAGS, onPath } from "../pane/inChromium";
import { withChromium } from "../support/tools";

const AXE = readFileSync(
  path.join(path.dirname(require.resolve("axe-core/package.json")), "axe.min.js"),
  "utf8",
);
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const TYPES: Readonly<Record<string, string>> = { html: "text/html", css: "text/css", js: "text/javascript" };
const files = helpFiles(allFunctions);

let server: Server;
let address: string;
let browser: Browser | undefined;

beforeAll(async () => {
  server = createServer((request, response) => {
    const name = (request.url ?? "/").slice(1);
    response.setHeader("Content-Type", `${TYPES[name.split(".").at(-1)!]}; charset=utf-8`);
    response.end(files.get(name));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await browser?.close();
  await new Promise((resolve) => server.close(resolve));
});

interface Look {
  readonly dark?: boolean;
  readonly width?: number;
  readonly script?: boolean;
}

async function opened(
  program: string,
  name: string,
  { dark, width = 1200, script = true }: Look = {},
): Promise<Page> {
  browser ??= await chromium.launch({
    executablePath: onPath(program),
    args: FLAGS,
  });
  const context = await browser.newContext({
    colorScheme: dark ? "dark" : "light",
    viewport: { width, height: 800 },
    javaScriptEnabled: script,
  });
  const page = await context.newPage();
  await page.goto(`${address}/${name}`);
  return page;
}

async function findings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(
    (tags) => (globalThis as unknown as { axe: typeof Axe }).axe.run({ runOnly: tags }),
    RULES,
  );
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 200)}`);
}

const SOME = [
  "index.html",
  "model-limits.html",
  "azimuth.html",
  "bondcheck.html",
  "treeloss.html",
  "version.html",
];

for (const dark of [false, true]) {
  withChromium(`nothing to find for axe, ${dark ? "dark" : "light"}`, async (program) => {
    for (const name of SOME) {
      const page = await opened(program, name, { dark });
      expect([name, await findings(page)]).toEqual([name, []]);
      await page.context().close();
    }
  });
}

withChromium("no page is wider than a narrow window; wide tables scroll by themselves", async (program) => {
  const page = await opened(program, "index.html", { width: 320 });
  for (const name of files.keys()) {
    if (!name.endsWith(".html")) continue;
    await page.goto(`${address}/${name}`);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect([name, over <= 0]).toEqual([name, true]);
  }
  await page.context().close();
});

withChromium("the search finds a task by its words and says how many there are", async (program) => {
  const page = await opened(program, "index.html");
  await page.getByLabel("Find a task or a function").fill("far bedroom");
  await page.getByText(/^\d+ of \d+ tasks and functions$/).waitFor();
  const shown = await page.locator(".tasks li:visible, .entry:visible").allTextContents();
  expect(shown.length).toBeGreaterThan(0);
  for (const entry of shown) expect(entry.toLowerCase()).toContain("far bedroom");
  expect(await page.getByRole("heading", { level: 3, name: "Estimate" }).count()).toBeLessThanOrEqual(1);
  await page.context().close();
});

withChromium("without a script the index is whole and shows no dead search box", async (program) => {
  const page = await opened(program, "index.html", { script: false });
  expect(await page.locator("#search").isVisible()).toBe(false);
  expect(await page.locator(".entry").count()).toBe(allFunctions.length);
  await page.context().close();
});
