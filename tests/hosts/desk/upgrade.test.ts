/** An older job on the desk: told of when it opens, upgraded in its place, frozen before, its file never touched. */
import { copyFileSync, readFileSync } from "node:fs";
import path from "node:path";
import { chromium } from "playwright-core";
import type { ShelfList } from "../../../src/hosts/desk/protocol";
import { FLAGS, onPath, openView } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import { askJson, BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder } from "./desk";

const OLDER = path.join(__dirname, "../../fixtures/upgrade/multi-room-da9a13aa-plain.xlsx");

beforeAll(buildDesk, BUILD_MS);

withChromium("version 1 becomes today's, and Restore brings it back", async (program) => {
  const folder = temporaryFolder();
  const file = path.join(folder, "job.xlsx");
  copyFileSync(OLDER, file);
  const desk = await startDesk("--data", path.join(folder, "data"), "--port", String(await freePort()), file);
  const browser = await chromium.launch({ executablePath: onPath(program), args: FLAGS });
  try {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    const bar = page.getByRole("toolbar", { name: "Job" });
    const pane = page.locator("#pane");
    const notice = page.locator(".desk-notice p");
    const total = page.locator(".desk-figure").first();
    await page.goto(desk.address);
    await notice
      .filter({ hasText: /^This job is of version 1 of .* see under Pane, Start, Upgrade/ })
      .waitFor();
    // As the file itself has it.
    expect(await total.innerText()).toBe("Total 6,799.57");

    await bar.getByRole("button", { name: "Pane", exact: true }).click();
    await openView(page, "Upgrade");
    await pane.getByText(/Read what an upgrade does/).waitFor();
    expect(await pane.innerText()).toMatch(/Total: 6799\.57 demonstration money, as before/);
    await pane.locator("section:visible").getByRole("button", { name: "Upgrade", exact: true }).click();
    await notice.filter({ hasText: /^The job is of version \d+ now\..*job\.xlsx is as it was/ }).waitFor();
    expect(await total.innerText()).toBe("Total 6,799.57");
    expect(await page.locator(".desk-file").innerText()).toBe("");
    expect(readFileSync(file)).toEqual(readFileSync(OLDER));

    const { jobs } = await askJson<ShelfList>(desk.address, "jobs");
    expect(jobs.map(({ revisions, file: of }) => [revisions.map(({ why }) => why), of])).toEqual([
      [[expect.stringMatching(/^before the upgrade from version 1 to \d+$/)], undefined],
    ]);
    await bar.getByRole("button", { name: "Jobs", exact: true }).click();
    await page
      .locator("#jobs")
      .getByRole("button", { name: /^Restore/ })
      .first()
      .click();
    await notice.filter({ hasText: /^Revision 1 is restored/ }).waitFor();
  } finally {
    await browser.close();
    await desk.kill();
    remove(folder);
  }
});
