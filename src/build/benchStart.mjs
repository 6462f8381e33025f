/**
 * How long the static folder takes from its address to a job on the screen, on
 * a first and on later visits, and the one file; against a page of one line in
 * the same browser. Needs Chromium, and is left out without it.
 */
import path from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";
import { inBrowser, least, shown } from "./benchBrowser.mjs";
import { project } from "./install.mjs";

const VISITS = 5;

async function once(page, address, ready) {
  const start = performance.now();
  await page.goto(address);
  await ready(page);
  return performance.now() - start;
}

async function measured({ address, page, bare: bareAddress }) {
  const bare = [];
  for (let visit = 0; visit < VISITS; visit++)
    bare.push(await once(page, bareAddress, (one) => one.locator("p").waitFor()));
  const first = await once(page, address, shown);
  await page.evaluate("navigator.serviceWorker.ready.then(() => true)");
  const later = [];
  for (let visit = 0; visit < VISITS; visit++) later.push(await once(page, address, shown));
  const file = [];
  const one = pathToFileURL(path.join(project, "dist", "rigsheet.html")).href;
  for (let visit = 0; visit < VISITS; visit++) file.push(await once(page, one, shown));
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
