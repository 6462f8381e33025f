/**
 * What a person waits for on the desk, as `rigsheet desk` serves it, in Chromium: from a chosen file to its total,
 * from Enter on a changed length to the frame that shows the new total; and the memory that the page then holds.
 * Each is held against a page that only reads the file, or only shows what was typed.
 */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { inBrowser, shown } from "./benchBrowser.mjs";
import { project } from "./install.mjs";

const SIZES = [
  { outlets: 240, enterBudget: "50 ms" },
  { outlets: 10_000, enterBudget: "1 s" },
];
const TURNS = 6;
const MEBIBYTE = 1024 * 1024;
const PATIENCE_MS = 120_000;

/** It shows what was typed, or how many bytes were read, where the desk shows its total. */
const BARE = `<div><p class="desk-figure">Total 0</p></div><input id="length"><input id="file" type="file"><script>
  const show = (what) => (document.querySelector("p").textContent = "Total " + what);
  const box = document.getElementById("length");
  box.addEventListener("keydown", ({ key }) => {
    if (key === "Enter") show(box.value);
    if (key === "ArrowUp") box.value = "";
  });
  document.getElementById("file").addEventListener("change", async ({ target }) =>
    show((await target.files[0].arrayBuffer()).byteLength));
</script>`;

/**
 * In the page: the time from a key, or from the choice of a file, to the second frame after the total has changed:
 * when that comes, the first one is on the screen.
 */
const WATCH = `
  window.waits = [];
  let since;
  addEventListener("keydown", ({ key, timeStamp }) => { if (key === "Enter") since = timeStamp; }, true);
  addEventListener("change", ({ target, timeStamp }) => { if (target.type === "file") since = timeStamp; }, true);
  const bar = document.querySelector(".desk-figure").parentElement;
  const total = () => /Total [0-9.,]+/.exec(bar.innerText)?.[0];
  let before = total();
  const frame = () => new Promise(requestAnimationFrame);
  new MutationObserver(async () => {
    const [begun, now] = [since, total()];
    if (begun === undefined || now === undefined || now === before) return;
    [since, before] = [undefined, now];
    await frame();
    await frame();
    window.waits.push(performance.now() - begun);
  }).observe(bar, { subtree: true, childList: true, characterData: true });
`;

const dist = (file) => path.join(project, "dist", file);
const least = (times) => Math.min(...times);
const median = (times) => [...times].sort((a, b) => a - b)[times.length >> 1];

const freePort = () =>
  new Promise((resolve) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });

/** The desk as a process of its own. @returns its address, and what ends it */
async function served(folder) {
  const words = ["desk", "--no-open", "--data", folder, "--port", String(await freePort())];
  const desk = spawn(process.execPath, [dist("rigsheet.js"), ...words], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const address = await new Promise((resolve, reject) => {
    let printed = "";
    desk.stdout.on("data", (part) => {
      printed += part;
      const found = /^http:\S+$/m.exec(printed);
      if (found) resolve(found[0]);
    });
    desk.on("exit", () => reject(new Error(`The desk ended: ${printed}`)));
  });
  return { address, end: () => desk.kill() };
}

/** The workbook of a job of so many outlets, the cell of its first length, and two lengths with different totals. */
function written(folder, outlets) {
  const file = path.join(folder, `job-${outlets}.xlsx`);
  const words = [dist("bench.js"), "--write-job", String(outlets), file];
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return { file, ...JSON.parse(stdout) };
}

/** @returns the wait that an act of the person's brings about */
async function waited(page, act) {
  const before = await page.evaluate("window.waits.length");
  await act();
  await page.waitForFunction(`window.waits.length > ${before}`, undefined, {
    timeout: PATIENCE_MS,
    polling: 50,
  });
  return page.evaluate("window.waits.at(-1)");
}

async function enterTimes(page, lengths) {
  const times = [];
  for (let turn = 0; turn < TURNS; turn++) {
    for (const length of lengths) {
      await page.keyboard.type(length);
      times.push(await waited(page, () => page.keyboard.press("Enter")));
      await page.keyboard.press("ArrowUp");
    }
  }
  return times;
}

async function chooseCell(page, { sheet, cell }) {
  await page.locator(".o-sheet", { hasText: sheet }).first().click();
  const box = page.locator(".o-named-range-selector input");
  await box.click();
  await box.fill(cell);
  await box.press("Enter");
  await page.waitForFunction("document.activeElement?.closest('.o-grid') !== null");
}

async function opened(page, file) {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Open .xlsx" }).click(),
  ]);
  return waited(page, () => chooser.setFiles(file));
}

async function heap(page) {
  const client = await page.context().newCDPSession(page);
  await client.send("HeapProfiler.collectGarbage");
  const { usedSize } = await client.send("Runtime.getHeapUsage");
  await client.detach();
  return usedSize / MEBIBYTE;
}

/** A page of two inputs. */
async function bare(page, { file, lengths }) {
  await page.goto("about:blank");
  await page.setContent(BARE);
  await page.evaluate(WATCH);
  const openMs = await waited(page, () => page.locator("#file").setInputFiles(file));
  await page.locator("#length").click();
  return { openMs, enterMs: await enterTimes(page, lengths), megabytes: await heap(page) };
}

async function onDesk(page, address, job) {
  await page.goto(address);
  await shown(page);
  await page.evaluate(WATCH);
  const openMs = await opened(page, job.file);
  await chooseCell(page, job);
  return { openMs, enterMs: await enterTimes(page, job.lengths), megabytes: await heap(page) };
}

function print(what, value, unit, baseline, than, budget) {
  const ratio = (value / baseline).toFixed(1).padStart(8);
  console.log(
    `${what.padEnd(58)} ${value.toFixed(1).padStart(9)} ${unit}  ${ratio} × ${than} (${baseline.toFixed(2)} ${unit})${budget ? `  budget ${budget}` : ""}`,
  );
}

async function measure(page) {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-bench-"));
  const desk = await served(path.join(folder, "jobs"));
  try {
    // The browser's own picker can't be answered from outside; a page without it has a file input.
    await page.addInitScript('Reflect.deleteProperty(window, "showOpenFilePicker")');
    for (const { outlets, enterBudget } of SIZES) {
      const job = written(folder, outlets);
      const base = await bare(page, job);
      const found = await onDesk(page, desk.address, job);
      print(
        `from a chosen .xlsx to its total, ${outlets} outlets`,
        ...[found.openMs, "ms", base.openMs, "just reading the file"],
      );
      print(
        `from Enter to the frame with the new total, ${outlets} outlets`,
        ...[median(found.enterMs), "ms", median(base.enterMs), "just showing what was typed"],
        `${enterBudget}; at best ${least(found.enterMs).toFixed(0)} ms`,
      );
      print(
        `memory of the page's script, ${outlets} outlets`,
        ...[found.megabytes, "MiB", base.megabytes, "a page of two inputs"],
      );
    }
  } finally {
    desk.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

export const benchDesk = () => inBrowser("The desk in a browser", measure);
