/** The browser of the benches that need one. */
import { existsSync } from "node:fs";
import path from "node:path";
import { chromium } from "playwright-core";

const program = (process.env.CHROMIUM ? [process.env.CHROMIUM] : ["chromium", "chromium-browser"])
  .flatMap((name) => [
    name,
    ...(process.env.PATH ?? "").split(path.delimiter).map((one) => path.join(one, name)),
  ])
  .find((file) => path.isAbsolute(file) && existsSync(file));

/** Waits until the page shows a job's total. */
export const shown = (page) => page.locator(".desk-figure", { hasText: "Total" }).first().waitFor();

/**
 * @param what is left out where there is no Chromium
 * @param measure is given a page of a browser of its own
 */
export async function inBrowser(what, measure) {
  if (!program) return console.log(`${what} is left out: Chromium is missing.`);
  const browser = await chromium.launch({ executablePath: program, args: ["--no-sandbox"] });
  try {
    await measure(await browser.newPage({ viewport: { width: 1366, height: 768 } }));
  } finally {
    await browser.close();
  }
}
