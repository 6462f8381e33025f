/** The pane's pictures in a real browser: drawn, described, reached by keyboard, without barriers, their text within its place. */
import type { Page } from "playwright-core";
import { levelsPicture } from "../../src/pictures/levelsPicture";
import { oneLineDiagram } from "../../src/pictures/oneLineDiagram";
import { slotsPicture } from "../../src/pictures/slotsPicture";
import { bookOf, emptySheet } from "../support/books";
import { computed, withRow } from "../support/pictureJobs";
import {
  barriers,
  BUNDLE_MS,
  bundled,
  closeBrowser,
  openView,
  statusIs,
  withPane,
  type Looks,
} from "./inChromium";
import type { FakeOptions } from "./fakeHost";

const NASTY = `<img src=x onerror="document.title='taken'">`;
const book = computed({ blocks: { rooms: withRow("outlet", "G-01", { room: NASTY }) } });
const KINDS = ["Distribution", "Levels", "Slots and obstacles"] as const;

let script = "";
beforeAll(async () => {
  script = await bundled();
}, BUNDLE_MS);
afterAll(() => closeBrowser());

const open = (
  name: string,
  work: (page: Page) => Promise<void>,
  looks: Looks = {},
  options: Partial<FakeOptions> = {},
): void =>
  withPane(
    name,
    () => script,
    () => ({ book, ...options }),
    looks,
    async (page) => {
      await openView(page, "Pictures");
      await work(page);
    },
  );

const choose = async (page: Page, kind: (typeof KINDS)[number]): Promise<void> => {
  await page.getByRole("group", { name: "Which picture" }).getByRole("button", { name: kind }).click();
  await statusIs(page, new RegExp(`^${kind} drawn`));
};

for (const theme of ["light", "dark", "high contrast"] as const) {
  open(
    `nothing to find for axe in any of the three, ${theme}`,
    async (page) => {
      await statusIs(page, /^Distribution drawn/);
      for (const kind of KINDS) {
        await choose(page, kind);
        expect([kind, await barriers(page)]).toEqual([kind, []]);
        const pressed = page.getByRole("button", { name: kind, pressed: true });
        expect(await pressed.count()).toBe(1);
        // It is seen, too: the other two look alike, and not like it.
        const looks = await page
          .getByRole("group", { name: "Which picture" })
          .getByRole("button")
          .evaluateAll((buttons) =>
            buttons.map((one) => `${getComputedStyle(one).boxShadow} ${getComputedStyle(one).borderWidth}`),
          );
        const own = looks.filter((look) => look === looks[KINDS.indexOf(kind)]);
        expect([kind, own.length, new Set(looks).size]).toEqual([kind, 1, 2]);
      }
    },
    { theme },
  );
}

open("each has its name, its words inside and beside it, and can be scrolled by keyboard", async (page) => {
  for (const [kind, { title, description }] of [
    ["Distribution", oneLineDiagram(book)],
    ["Levels", levelsPicture(book)],
    ["Slots and obstacles", slotsPicture(book)],
  ] as const) {
    await choose(page, kind);
    const image = page.getByRole("img", { name: `${title}. ${description}`, exact: true });
    expect(await image.count()).toBe(1);
    expect(await page.locator(".pane-view:visible p", { hasText: description }).count()).toBe(1);
    const region = page.getByRole("region", { name: title, exact: true });
    await region.focus();
    await page.keyboard.press("ArrowRight");
    await page.waitForFunction((element) => element!.scrollLeft > 0, await region.elementHandle());
  }
});

open("what a person typed stays text", async (page) => {
  await statusIs(page, /^Distribution drawn/);
  expect(await page.locator(".pane-picture text", { hasText: NASTY }).count()).toBe(1);
  expect(await page.locator(".pane-picture img").count()).toBe(0);
  expect(await page.title()).toBe("Pane");
});

open("large in a dialog that Escape closes, with the focus back where it was", async (page) => {
  await choose(page, "Levels");
  const button = page.getByRole("button", { name: "Show it large" });
  await button.click();
  const dialog = page.getByRole("dialog");
  expect(await dialog.getByRole("img").count()).toBe(1);
  expect(await barriers(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  expect(await button.evaluate((element) => element === document.activeElement)).toBe(true);
});

open("drawn anew each time that it comes up", async (page) => {
  await statusIs(page, /^Distribution drawn/);
  const before = await page.evaluate(
    () => (globalThis as never as { panePage: { host: { calls: unknown[][] } } }).panePage.host.calls.length,
  );
  await openView(page, "Cautions");
  // The group comes up with the view that was shown of it last.
  await page.getByRole("navigation").getByRole("button", { name: "Hand over", exact: true }).click();
  await statusIs(page, /^Distribution drawn/);
  const after = await page.evaluate(
    () => (globalThis as never as { panePage: { host: { calls: unknown[][] } } }).panePage.host.calls.length,
  );
  expect(after).toBe(before + 1);
});

open(
  "a workbook that is no estimate: a sentence",
  async (page) => {
    await statusIs(page, /^There is nothing to draw: this workbook is no multi-room estimate/);
    expect(await page.locator(".pane-picture").count()).toBe(0);
  },
  {},
  { book: bookOf(emptySheet("S")) },
);

open("no text of a picture runs out of it, or into its neighbour in a row", async (page) => {
  for (const kind of KINDS) {
    await choose(page, kind);
    const wrong = await page.evaluate(() => {
      const svg = document.querySelector<SVGSVGElement>(".pane-picture svg")!;
      const { width, height } = svg.viewBox.baseVal;
      const texts = [...svg.querySelectorAll("text")].map((text) => ({
        words: text.textContent!,
        group: text.parentNode,
        box: text.getBBox(),
      }));
      const outside = texts.filter(
        ({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height,
      );
      const crowded = texts.filter(({ box, group }, index) =>
        texts.some(
          (other, place) =>
            place > index &&
            other.group === group &&
            box.x < other.box.x + other.box.width &&
            other.box.x < box.x + box.width &&
            box.y + 3 < other.box.y + other.box.height &&
            other.box.y + 3 < box.y + box.height,
        ),
      );
      return [...outside, ...crowded].map(({ words }) => words);
    });
    expect([kind, wrong]).toEqual([kind, []]);
  }
});
