/**
 * How long the static folder takes from its address to a job on the screen, on
 * a first and on later visits, and the one file; against a page of one line in
 * the same browser. Needs Chromium, and is left out without it.
 */
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import path from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";
import { inBrowser, shown } from "./benchBrowser.mjs";
import { project } from "./install.mjs";
import { writeStatic } from "./static.mjs";

const VISITS = 5;
const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml" };

const least = (times) => Math.min(...times);

async function once(page, address, ready) {
  const start = performance.now();
  await page.goto(address);
  await ready(page);
  return performance.now() - start;
}

async function measured(page) {
  if (!(await writeStatic())) throw new Error("The folder could not be written.");
  const root = path.join(project, "dist", "static");
  const server = createServer(({ url }, response) => {
    const { pathname } = new URL(url, "http://x");
    const file = path.join(root, pathname.endsWith("/") ? `${pathname}index.html` : pathname);
    response.setHeader("Content-Type", TYPES[path.extname(file)] ?? "application/octet-stream");
    if (pathname === "/bare") return response.setHeader("Content-Type", "text/html").end("<p>Total");
    if (!existsSync(file)) return response.writeHead(404).end();
    response.end(readFileSync(file));
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = `http://127.0.0.1:${server.address().port}/`;
  const bare = [];
  for (let visit = 0; visit < VISITS; visit++)
    bare.push(await once(page, `${address}bare`, (one) => one.locator("p").waitFor()));
  const first = await once(page, address, shown);
  await page.evaluate("navigator.serviceWorker.ready.then(() => true)");
  const later = [];
  for (let visit = 0; visit < VISITS; visit++) later.push(await once(page, address, shown));
  const file = [];
  const one = pathToFileURL(path.join(project, "dist", "rigsheet.html")).href;
  for (let visit = 0; visit < VISITS; visit++) file.push(await once(page, one, shown));
  server.close();
  const bareMs = least(bare);
  for (const [what, ms] of [
    ["static folder, first visit", first],
    ["static folder, a later visit (at most 3 s asked)", least(later)],
    ["the one file from a disk", least(file)],
  ])
    console.log(
      `${what}: ${ms.toFixed(0)} ms, ${(ms / bareMs).toFixed(0)} x a page of one line (${bareMs.toFixed(0)} ms)`,
    );
}

export const benchStart = () => inBrowser("The start in a browser", measured);
