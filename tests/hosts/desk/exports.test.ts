/** All jobs exported by a click and brought in by another, in a real browser: shown anew, said, nothing doubled. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Locator } from "playwright-core";
import { unzipSync } from "fflate";
import { bringIn, exportOf } from "../../../src/hosts/file/jobsArchive";
import { JOBS_LIST } from "../../../src/hosts/file/jobsFile";
import type { Shelf } from "../../../src/jobs/shelf";
import { newShelf } from "../../jobs/onShelf";
import { complaints, button, choose, folder, forget, notice, page, saved, type, withPage } from "./onDesk";
import { until } from "../../support/until";

const view = (): Locator => page.getByRole("region", { name: "Jobs" });
const rows = (): Promise<number> => view().getByRole("row").count();
const inView = (name: string): Locator => view().getByRole("button", { name, exact: true });
const said = (): Locator => view().locator(".jobs-said");
/** The list, with the open job chosen in it. */
async function openJobs(): Promise<void> {
  await button("Jobs").click();
  // What was asked for last is asked for still, and the open job is chosen only where it is shown.
  await view().getByLabel("Show", { exact: true }).selectOption("all");
  await inView("Close").click();
  await button("Jobs").click();
  await view().getByText("Open in this window.").waitFor();
}
const openId = (): Promise<string> => page.evaluate(() => location.hash.slice(1));
const message = (words: RegExp): Promise<unknown> =>
  until(
    () => said().innerText(),
    (text) => words.test(text),
  );
async function shot(name: string): Promise<void> {
  if (process.env.SHOTS) await page.screenshot({ path: path.join(process.env.SHOTS, `${name}.png`) });
}

/** What the browser downloads by a click, under the name that it has there. */
async function downloaded(click: Locator): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent("download"), click.click()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

async function chosen(click: Locator, name: string, buffer: Buffer): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), click.click()]);
  await chooser.setFiles({ name, mimeType: "application/zip", buffer });
}

const idsIn = (bytes: Uint8Array): string[] =>
  (JSON.parse(Buffer.from(unzipSync(bytes)[JOBS_LIST]!).toString()) as { jobs: { id: string }[] }).jobs.map(
    ({ id }) => id,
  );

/** What another browser makes of an export. */
async function elsewhere(bytes: Buffer, work: (shelf: Shelf) => Promise<unknown>): Promise<Buffer> {
  const { shelf } = await newShelf();
  await bringIn(shelf, bytes);
  await work(shelf);
  return Buffer.from(await exportOf(shelf));
}

/** The whole of a job put down anew, with other words in it. */
const renamed = async (shelf: Shelf, id: string, name: string): Promise<string> => {
  const { document, changes } = await shelf.held(id);
  const text = JSON.stringify(document).replaceAll("Guest house, 24 outlets", name);
  const revisionId = `${name} elsewhere`;
  return shelf.fold(
    id,
    { ...(JSON.parse(text) as typeof document), revisionId },
    changes.at(-1)?.nextRevisionId ?? document.revisionId,
  );
};

withPage("all exported, and brought in again: there already; edited since: kept", async () => {
  await button("Jobs").click();
  const { name, bytes } = await downloaded(inView("Export all…"));
  expect(name).toMatch(/^rigsheet jobs \d{4}-\d\d-\d\d\.zip$/);
  const ids = idsIn(bytes);
  expect(ids).toContain(await openId());
  await message(/^\d+ jobs? (?:is|are) in rigsheet jobs .*\.zip, where the browser puts its downloads\.$/);
  await shot("exported-1366");

  await chosen(inView("Bring in…"), name, bytes);
  await message(/^\d+ jobs? there already\.$/);
  await inView("Close").click();
  await choose("Rooms", "D7");
  await type("9.5");
  await saved();
  await button("Jobs").click();
  await chosen(inView("Bring in…"), name, bytes);
  await message(/1 (?:job )?newer here and kept\.$/);
  await until(rows, (count) => count > 1);

  await page.setViewportSize({ width: 390, height: 844 });
  for (const label of ["Bring in…", "Export all…", "Close"])
    expect(await inView(label).isVisible()).toBe(true);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await shot("exported-390");
  await page.setViewportSize({ width: 1366, height: 768 });
  await inView("Close").click();
});

withPage(
  "the open job went on elsewhere: it is shown anew; on both sides: the other stands beside",
  async () => {
    await button("Jobs").click();
    const { bytes } = await downloaded(inView("Export all…"));
    const id = await openId();
    const newer = await elsewhere(bytes, async (shelf) => {
      await renamed(shelf, id, "Inn elsewhere");
      await shelf.note(id, { state: "checked" });
    });
    await chosen(inView("Bring in…"), "from elsewhere.zip", newer);
    await message(
      /1 (?:job )?newer than here and taken, what was here is a revision.* The job that is open is one of them, and is shown as it is now\.$/,
    );
    await inView("Close").click();
    await page.locator(".desk-title", { hasText: "Inn elsewhere" }).waitFor();
    expect(await openId()).toBe(id);
    // It can be edited as it is now.
    await choose("Rooms", "D7");
    await type("8.5");
    await saved();

    await button("Jobs").click();
    const both = await elsewhere(newer, (shelf) => renamed(shelf, id, "Lodge elsewhere"));
    await chosen(inView("Bring in…"), "from elsewhere.zip", both);
    await message(/changed on both sides: it stands beside\./);
    await shot("beside-1366");
    const before = await until(rows, (count) => count > 1);
    await chosen(inView("Bring in…"), "from elsewhere.zip", both);
    await message(/there already\.$/);
    await until(rows, (count) => count === before);
    // The one that stands beside is chosen, and can be compared.
    await view().getByLabel("Show", { exact: true }).selectOption("conflicting");
    await view().getByRole("row").nth(1).dblclick();
    await page.locator("#strip", { hasText: "was changed" }).waitFor();
    await page.locator("#strip").getByRole("button", { name: "Compare" }).click();
    await page.getByRole("dialog").waitFor();
    await shot("compared-1366");
    await page.keyboard.press("Escape");
  },
);

withPage(
  "one job by itself, named after it; dropped on the page it goes in; opened as a workbook it says where it goes",
  async () => {
    await button("Jobs").click();
    // The test before has left the list narrowed.
    await view().getByLabel("Show", { exact: true }).selectOption("all");
    await view()
      .getByRole("row")
      .filter({ has: page.getByText("open", { exact: true }) })
      .click();
    await view().getByText("Open in this window.").waitFor();
    const { name, bytes } = await downloaded(inView("Export as it is"));
    expect(name).toMatch(/^D-24, revision 1, Guest house.*\.zip$/);
    expect(idsIn(bytes)).toEqual([await openId()]);
    await inView("Close").click();

    await page.evaluate(
      ([file, base64]) => {
        const data = new DataTransfer();
        data.items.add(new File([Uint8Array.from(atob(base64!), (one) => one.charCodeAt(0))], file!));
        for (const type of ["dragover", "drop"])
          document
            .querySelector("#grid")!
            .dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
      },
      [name, bytes.toString("base64")],
    );
    await message(/^1 job there already\.$/);
    await inView("Close").click();

    const file = path.join(folder, "jobs.zip");
    writeFileSync(file, bytes);
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Open .xlsx…").click()]);
    await chooser.setFiles(file);
    await until(
      () => notice().innerText(),
      (text) => /export of Rigsheet's jobs, not a workbook\. Under Jobs, “Bring in…”/.test(text),
    );
    // The browser tells of the refusal too.
    expect(complaints.splice(0)).toEqual([expect.stringContaining("422")]);
  },
);

withPage("a file that is no export: a sentence under Jobs, and all is as it was", async () => {
  await openJobs();
  const before = await until(rows, (count) => count > 1);
  await chosen(inView("Bring in…"), "photos.zip", Buffer.from("no archive at all"));
  await until(
    () => view().getByRole("alert").innerText(),
    (text) => /^Not done: The file is plain text, not an export of Rigsheet's jobs\./.test(text),
  );
  forget("422");
  await until(rows, (count) => count === before);
  await inView("Close").click();
});
