/** The firm's standards on the desk's page: New draws on those among the jobs, the pane brings the job up to date with them. */
import { openView, statusIs } from "../../pane/inChromium";
import { button, choose, page, saved, textIs, total, type, withPage } from "./onDesk";

/** A job like the demonstration's standards, which is kept among the jobs from then on. */
async function startStandards(): Promise<void> {
  await button("New").click();
  await page.getByLabel("Template", { exact: true }).selectOption("standards");
  await page.getByRole("button", { name: "Demonstration", exact: true }).click();
  await textIs(page.locator(".desk-title"), "standards, edition 3, Invented firm (demonstration)");
  await saved();
}

withPage(
  "a new job is two actions from the standards, and follows their next edition when it is told to, in one step",
  async () => {
    await startStandards();
    await button("New").click();
    await page.getByLabel("Firm's standards, for a multi-room estimate").waitFor();
    await page.getByRole("button", { name: "From the standards" }).click();
    await total().waitFor();
    await saved();
    const before = await total().innerText();

    await startStandards();
    await choose("Standards", "B6");
    await type("4");
    await type("2027-01-04");
    await choose("Standards", "B29");
    await type("25%");
    await textIs(page.locator(".desk-title"), "standards, edition 4, Invented firm (demonstration)");
    await saved();

    await button("Jobs").click();
    await page
      .getByRole("row", { name: /Multi-room estimate/ })
      .first()
      .dblclick();
    await textIs(total(), before);
    await button("Pane").click();
    await openView(page, "Standards");
    // The latest edition stands first.
    const latest = page.getByRole("button", { name: /^With standards, edition/ }).first();
    await textIs(latest, "With standards, edition 4, Invented firm (demonstration), 2027-01-04");
    await latest.click();
    expect(await statusIs(page, /margin/)).toBe("margin 22 % → 25 %.");
    await page.getByLabel("Margin: 22 % → 25 %").uncheck();
    const [, figure] = /^Total (.*)$/.exec(before)!;
    await page.getByText(`Total ${figure} → ${figure} (+0.00) EUR.`).waitFor();
    await page.getByLabel("Margin: 22 % → 25 %").check();
    if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/standards-differences.png` });
    await page.getByRole("button", { name: "Bring up to date", exact: true }).click();
    await statusIs(page, /^The job is up to date with the standards; its Log says what was taken/);
    // The price is cost / (1 - margin): × 0.78 / 0.75, each of its lines rounded.
    const after = Number(/[\d.]+$/.exec(await total().innerText())![0]);
    expect(Math.abs(after - (Number(figure) * 0.78) / 0.75)).toBeLessThan(0.05);
    await button("Undo").click();
    await textIs(total(), before);
  },
);
