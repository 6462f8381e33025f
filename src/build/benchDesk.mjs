/**
 * What a person waits for on the desk, in Chromium: from a chosen file to its
 * total, from Enter to the frame that shows the new figures, and the memory
 * that the page holds; for jobs of several sizes. Enter is held against the
 * same key in a page with one input.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { performance } from "node:perf_hooks";
import { inBrowser, shown } from "./benchBrowser.mjs";
import { project } from "./install.mjs";

const SIZES = [
  { outlets: 240, enterBudget: "50 ms", openBudget: "1 s" },
  { outlets: 10_000, enterBudget: "1 s", openBudget: "7 s" },
];
const KEYS = 7;
const MEBIBYTE = 1024 * 1024;

const median = (times) => [...times].sort((a, b) => a - b)[times.length >> 1];

/** In the page: how long each Enter takes from its key to the frame that is on the screen after it. */
const WATCH = `
  window.enterTimes = [];
  window.addEventListener("keydown", ({ key, timeStamp }) => {
    if (key !== "Enter") return;
    // A timer that is set within a frame comes after that frame was painted.
    requestAnimationFrame(() => setTimeout(() => window.enterTimes.push(performance.now() - timeStamp)));
  }, true);
`;

async function entered(page, text) {
  const before = await page.evaluate("window.enterTimes.length");
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await page.waitForFunction(`window.enterTimes.length > ${before}`);
  return page.evaluate("window.enterTimes.at(-1)");
}

async function enterTimes(page) {
  const times = [];
  for (let key = 0; key < KEYS; key++) times.push(await entered(page, String(12 + key)));
  return median(times);
}

async function chooseRuns(page) {
  await page.locator(".o-sheet", { hasText: "Rooms" }).first().click();
  const box = page.locator(".o-named-range-selector input");
  await box.click();
  await box.fill("H6");
  await box.press("Enter");
  await page.waitForFunction('document.activeElement?.closest(".o-grid") !== null');
}

async function memory(page) {
  const client = await page.context().newCDPSession(page);
  await client.send("HeapProfiler.collectGarbage");
  return (await page.evaluate("performance.memory.usedJSHeapSize")) / MEBIBYTE;
}

/** The workbook of a job of so many outlets, and its total. */
function written(folder, outlets) {
  const file = path.join(folder, `job-${outlets}.xlsx`);
  const bench = path.join(project, "dist", "bench.js");
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [bench, "--write-job", String(outlets), file],
    {
      encoding: "utf8",
    },
  );
  if (status !== 0) throw new Error(stderr);
  return { file, total: stdout.trim() };
}

async function opened(page, { file, total }) {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.locator("#bar button", { hasText: "Open .xlsx" }).click(),
  ]);
  const start = performance.now();
  await chooser.setFiles(file);
  await page.waitForFunction(`[...document.querySelectorAll(".desk-figure")].some(
    ({ innerText }) => innerText.replace(/[^0-9.]/g, "") === "${total}")`);
  return performance.now() - start;
}

async function measured({ address, page, bare }) {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-bench-"));
  try {
    await page.goto(bare);
    await page.evaluate(WATCH);
    await page.locator("input").click();
    const bareEnter = await enterTimes(page);
    const bareMemory = await memory(page);
    for (const { outlets, enterBudget, openBudget } of SIZES) {
      const job = written(folder, outlets);
      await page.goto(address);
      await shown(page);
      await page.evaluate(WATCH);
      const openMs = await opened(page, job);
      await chooseRuns(page);
      const enterMs = await enterTimes(page);
      const megabytes = await memory(page);
      console.log(
        [
          `${outlets} outlets: from the chosen file to its total ${openMs.toFixed(0)} ms (budget ${openBudget})`,
          `from Enter to the painted frame ${enterMs.toFixed(0)} ms (budget ${enterBudget}), ${(enterMs / bareEnter).toFixed(1)} x the key in a page with one input (${bareEnter.toFixed(0)} ms)`,
          `memory of the page ${megabytes.toFixed(0)} MiB, ${(megabytes / bareMemory).toFixed(0)} x that page`,
        ].join("; "),
      );
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export const benchDesk = () => inBrowser("The desk in a browser", measured);
