/** The ribbon's Help on the built page: in every Excel there is a way to the help, and the ribbon is never left waiting. */
import type { Frame, Page } from "playwright-core";
import { BUNDLE_MS } from "../../pane/inChromium";
import type { StandInOptions } from "../../support/excelStandIn";
import { BUILD_MS, buildDesk } from "../desk/desk";
import { closeFrames, standInScript, withFramedPane, type FramedPane } from "./framedPane";
import type { StandInPage } from "./standInPage";

let script = "";

beforeAll(async () => {
  buildDesk();
  script = await standInScript();
}, BUILD_MS + BUNDLE_MS);
afterAll(() => closeFrames());

const HELP = /\/help\/index\.html$/;

/** Presses Help on the ribbon. @returns what Excel was asked for, once the command was completed */
const help = (page: Page): Promise<{ opened: readonly string[]; panesShown: number }> =>
  page.evaluate(async () => {
    const { excel } = (globalThis as unknown as { standInPage: StandInPage }).standInPage;
    await new Promise<void>((completed) => excel.commands.get("openHelp")!({ completed }));
    return { opened: excel.opened, panesShown: excel.panesShown };
  });

const inExcel = (
  name: string,
  options: StandInOptions,
  work: (framed: FramedPane, inside: Frame) => Promise<void>,
): void =>
  withFramedPane(
    name,
    () => script,
    () => options,
    async (framed) => {
      const inside = framed.page.frames().at(-1)!;
      await work(framed, inside);
    },
  );

inExcel("Excel that opens browser windows is asked to", { opensBrowserWindows: true }, async ({ page }) => {
  const { opened, panesShown } = await help(page);
  expect(opened).toEqual([expect.stringMatching(HELP)]);
  expect(panesShown).toBe(0);
  expect(page.context().pages()).toHaveLength(1);
});

inExcel(
  "Excel on the web, which can't: the browser that it runs in opens the help",
  {},
  async ({ page, pane }) => {
    const [popup, { panesShown }] = await Promise.all([page.context().waitForEvent("page"), help(page)]);
    await popup.waitForURL(HELP);
    expect(await popup.locator("h1").first().innerText()).toMatch(/help/i);
    // It can't reach back into the add-in's page.
    expect(await popup.evaluate(() => opener as unknown)).toBeNull();
    expect(panesShown).toBe(0);
    expect(await pane.locator("#notice").innerText()).toBe("");
  },
);

inExcel(
  "a browser that lets no window open by itself: the pane comes up with a link, which a click opens",
  {},
  async ({ page, pane }, inside) => {
    await inside.evaluate(() => {
      globalThis.open = () => null;
    });
    expect(await help(page)).toEqual({ opened: [], panesShown: 1 });
    const notice = pane.locator("#notice");
    expect(await notice.innerText()).toMatch(
      /^The browser did not let the help open by itself\. Open the help$/,
    );
    const [popup] = await Promise.all([
      page.context().waitForEvent("page"),
      notice.getByRole("link", { name: "Open the help" }).click(),
    ]);
    await popup.waitForURL(HELP);
    // The next command's word takes the link's place.
    await page.evaluate(async () => {
      const { excel } = (globalThis as unknown as { standInPage: StandInPage }).standInPage;
      await new Promise<void>((completed) => excel.commands.get("enterAgain")!({ completed }));
    });
    expect(await notice.innerText()).toMatch(/^No Rigsheet formula shows #NAME\?/);
  },
);
