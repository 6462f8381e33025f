/** What the benches in a browser share: Chromium, the static folder behind a server, and a page of one line beside it. */
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import path from "node:path";
import { chromium } from "playwright-core";
import { project } from "./install.mjs";
import { writeStatic } from "./static.mjs";

const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml" };
const BARE = "<p>Total</p><input>";

const program = (process.env.CHROMIUM ? [process.env.CHROMIUM] : ["chromium", "chromium-browser"])
  .flatMap((name) => [
    name,
    ...(process.env.PATH ?? "").split(path.delimiter).map((one) => path.join(one, name)),
  ])
  .find((file) => path.isAbsolute(file) && existsSync(file));

export const least = (times) => Math.min(...times);

/** Waits until the page shows a job's total. */
export const shown = (page) => page.locator(".desk-figure", { hasText: "Total" }).first().waitFor();

/**
 * @param measured is given the folder's address, a page, and the address of a page of one line
 * @param what is left out where there is no Chromium
 */
export async function inBrowser(what, measured) {
  if (!program) return console.log(`${what} is left out: Chromium is missing.`);
  if (!(await writeStatic())) throw new Error("The folder could not be written.");
  const root = path.join(project, "dist", "static");
  const server = createServer(({ url }, response) => {
    const { pathname } = new URL(url, "http://x");
    const file = path.join(root, pathname.endsWith("/") ? `${pathname}index.html` : pathname);
    response.setHeader("Content-Type", TYPES[path.extname(file)] ?? "application/octet-stream");
    if (pathname === "/bare") return response.setHeader("Content-Type", "text/html").end(BARE);
    if (!existsSync(file)) return response.writeHead(404).end();
    response.end(readFileSync(file));
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = `http://127.0.0.1:${server.address().port}/`;
  const browser = await chromium.launch({
    executablePath: program,
    args: ["--no-sandbox", "--enable-precise-memory-info"],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    await measured({ address, page, bare: `${address}bare` });
  } finally {
    await browser.close();
    server.close();
  }
}
