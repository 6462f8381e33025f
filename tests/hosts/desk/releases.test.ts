/**
 * Another release of the static folder on the server: what is offered, what is
 * taken, and what goes on. The stories and the old workers were made by someone
 * who had not seen the code.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import type { Files } from "../../../src/build/static/deskFiles";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import {
  closeBrowsers,
  inBoth,
  saved,
  started,
  toGrid,
  type Shown,
  mostlyInChromium,
  toJobs,
  remarks,
} from "./bothBrowsers";
import { isMost } from "../../support/tries";
import { BUILD_MS, buildDesk } from "./desk";
import { serveFolder, type FolderServer } from "./folderServer";
import { chooseCell } from "./gridOnPage";
import { markedRelease } from "./otherReleases";

const CELL = placeOfName(layOut(multiRoom), "site_customer")!.at;
const OLD_WORKERS = path.join(__dirname, "..", "..", "fixtures", "workers");
const CHROMIUM = { kinds: ["chromium"] } as const;
/** In both in the long runs. */
const IN_MOST = isMost ? ({ kinds: ["chromium", "firefox"] } as const) : CHROMIUM;

let first: Files;
let second: Files;
let third: Files;
const servers: FolderServer[] = [];
beforeAll(async () => {
  buildDesk();
  first = await markedRelease("first", "0.1.0");
  second = await markedRelease("second", "0.2.0");
  third = await markedRelease("third", "0.3.0");
}, BUILD_MS);
afterEach(async () => {
  for (const server of servers.splice(0)) await server.stop();
});
afterAll(closeBrowsers);

async function serve(files: Files, under?: string): Promise<FolderServer> {
  const server = await serveFolder(files, under);
  servers.push(server);
  return server;
}

async function opened(shown: Shown, address: string): Promise<Page> {
  const page = await shown.page();
  await page.goto(address);
  await started(page);
  return page;
}

/** From here on the page works without a network. */
const kept = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null);

const markOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.mark);

/** As a browser does on its own after a while. */
const looks = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update().catch(() => undefined);
  });

const isOffered = (page: Page, version: string): Promise<void> =>
  remarks(page).getByText(`Rigsheet ${version}`).waitFor({ state: "attached" });
const button = (page: Page, name: string) => remarks(page).getByRole("button", { name, exact: true });

/** Nothing is offered, though there was time for it. */
async function isQuiet(page: Page): Promise<void> {
  await toJobs(page);
  await page.waitForTimeout(1500);
  expect(await button(page, "Not now").count()).toBe(0);
}

async function typed(page: Page, customer: string): Promise<void> {
  await toGrid(page);
  await chooseCell(page, "Site", CELL);
  await page.keyboard.type(customer);
  await page.keyboard.press("Enter");
  await saved(page);
}

const isThere = async (page: Page, customer: string): Promise<void> => {
  await toJobs(page);
  await page.locator(".desk-jobs").getByText(customer).first().waitFor();
};

/** Closed altogether, and opened once more with the server stopped. */
async function withoutNetwork(shown: Shown, server: FolderServer): Promise<Page> {
  for (const page of shown.context.pages()) await page.close();
  await server.stop();
  return opened(shown, server.address);
}

inBoth("an offer interrupts nothing; agreed to, the same job stands at the same place", async (shown) => {
  const server = await serve(first);
  const page = await opened(shown, server.address);
  await kept(page);
  await typed(page, "Möwe – Anbau");
  await chooseCell(page, "Rooms", "A2");
  await page.keyboard.type("Ki");
  server.files = second;
  await looks(page);
  await isOffered(page, "0.2.0");
  expect(await markOf(page)).toBe("first");
  await page.keyboard.type("tchen");
  await page.keyboard.press("Enter");
  await saved(page);
  const address = page.url();
  await page.keyboard.press("Control+j");
  await button(page, "Change to it").click();
  await page.waitForFunction(() => document.documentElement.dataset.mark === "second");
  await started(page);
  expect(page.url()).toBe(address);
  await isThere(page, "Möwe – Anbau");
  await isQuiet(page);
  const again = await withoutNetwork(shown, server);
  expect(await markOf(again)).toBe("second");
  await isThere(again, "Möwe – Anbau");
});

mostlyInChromium(
  "an offer that is turned down is quiet, and no closing of windows takes it",
  async (shown) => {
    const server = await serve(first);
    let page = await opened(shown, server.address);
    await kept(page);
    server.files = second;
    await looks(page);
    await isOffered(page, "0.2.0");
    await button(page, "Not now").click();
    await isQuiet(page);
    for (let start = 0; start < 2; start++) {
      await page.close();
      page = await opened(shown, server.address);
      expect(await markOf(page)).toBe("first");
      await isQuiet(page);
    }
    page = await withoutNetwork(shown, server);
    expect(await markOf(page)).toBe("first");
    await server.start();
    server.files = third;
    await looks(page);
    await isOffered(page, "0.3.0");
    await button(page, "Change to it").click();
    await page.waitForFunction(() => document.documentElement.dataset.mark === "third");
    await started(page);
    expect(await markOf(await withoutNetwork(shown, server))).toBe("third");
  },
);

mostlyInChromium("an offer outlives a reload", async (shown) => {
  const server = await serve(first);
  const page = await opened(shown, server.address);
  await kept(page);
  server.files = second;
  await looks(page);
  await isOffered(page, "0.2.0");
  await page.reload();
  await started(page);
  expect(await markOf(page)).toBe("first");
  await isOffered(page, "0.2.0");
  await toJobs(page);
  // What is thrown away at a start is none of it.
  await page.waitForTimeout(1500);
  await server.stop();
  await button(page, "Change to it").click();
  await page.waitForFunction(() => document.documentElement.dataset.mark === "second");
  await started(page);
});

mostlyInChromium("with two windows, neither is changed until the other is closed", async (shown) => {
  const server = await serve(first);
  const one = await opened(shown, server.address);
  await kept(one);
  await typed(one, "Tannenblick");
  const two = await opened(shown, server.address);
  server.files = second;
  await looks(two);
  await isOffered(two, "0.2.0");
  await button(two, "Change to it").click();
  await two
    .getByText(/another window/)
    .first()
    .waitFor();
  expect([await markOf(one), await markOf(two)]).toEqual(["first", "first"]);
  await one.close();
  await button(two, "Change to it").click();
  await two.waitForFunction(() => document.documentElement.dataset.mark === "second");
  await started(two);
  await isThere(two, "Tannenblick");
});

mostlyInChromium("a half-copied folder is not taken, and said", async (shown) => {
  const server = await serve(first);
  const page = await opened(shown, server.address);
  await kept(page);
  // The worker's list is there already, the scripts and the page are still the old ones.
  server.files = new Map([...first, ["sw.js", second.get("sw.js")!]]);
  await looks(page);
  await remarks(page)
    .getByText(/half copied|answers 404/)
    .waitFor({ timeout: 60_000 });
  expect(await button(page, "Change to it").count()).toBe(0);
  const again = await withoutNetwork(shown, server);
  expect(await markOf(again)).toBe("first");
  await server.start();
  server.files = second;
  await looks(again);
  await isOffered(again, "0.2.0");
});

mostlyInChromium(
  "an update that breaks off leaves the release whole",
  async (shown) => {
    const server = await serve(first);
    const page = await opened(shown, server.address);
    await kept(page);
    server.files = second;
    server.habits = { missing: /\/pane\.css$/ };
    await looks(page);
    await remarks(page)
      .getByText(/pane\.css/)
      .waitFor({ timeout: 60_000 });
    expect(await markOf(await withoutNetwork(shown, server))).toBe("first");
  },
  CHROMIUM,
);

mostlyInChromium(
  "the folder of an older release is offered as what it is",
  async (shown) => {
    const server = await serve(first);
    const page = await opened(shown, server.address);
    await kept(page);
    await typed(page, "Schulhaus");
    server.files = await markedRelease("older", "0.0.9");
    await looks(page);
    await page.keyboard.press("Control+j");
    await remarks(page)
      .getByText(/older release, Rigsheet 0\.0\.9/)
      .waitFor();
    await button(page, "Change to it").click();
    await page.waitForFunction(() => document.documentElement.dataset.mark === "older");
    await started(page);
    await isThere(page, "Schulhaus");
  },
  CHROMIUM,
);

mostlyInChromium(
  "another build of the grid, put in its place as the folder's README says, works without a network",
  async (shown) => {
    const server = await serve(first);
    const page = await opened(shown, server.address);
    await kept(page);
    const grid = [...first.keys()].find((name) => name.endsWith("/o_spreadsheet.js"))!;
    const script = Buffer.from(first.get(grid)!).toString();
    const worker = Buffer.from(first.get("sw.js")!).toString();
    server.files = new Map([
      ...first,
      [grid, Buffer.from(`document.documentElement.dataset.grid = "ours";\n${script}`)],
      ["sw.js", Buffer.from(worker.replace(/("edition": ")./, "$1x"))],
    ]);
    await looks(page);
    await isOffered(page, "0.1.0");
    await button(page, "Change to it").click();
    await page.waitForFunction(() => document.documentElement.dataset.grid === "ours");
    await started(page);
    await looks(page);
    await isQuiet(page);
    expect(await button(page, "Change to it").count()).toBe(0);
    const again = await withoutNetwork(shown, server);
    expect(await again.evaluate(() => document.documentElement.dataset.grid)).toBe("ours");
  },
);

mostlyInChromium("two folders at one address leave each other alone", async (shown) => {
  const server = await serve(new Map([...prefixed(first, "real/"), ...prefixed(second, "test/")]), "/tools/");
  const real = await opened(shown, `${server.address}real/`);
  await kept(real);
  const trial = await opened(shown, `${server.address}test/`);
  await kept(trial);
  server.files = new Map([...prefixed(first, "real/"), ...prefixed(third, "test/")]);
  await looks(trial);
  await isOffered(trial, "0.3.0");
  await button(trial, "Change to it").click();
  await trial.waitForFunction(() => document.documentElement.dataset.mark === "third");
  await started(trial);
  await server.stop();
  await real.reload();
  await started(real);
  expect([await markOf(real), await markOf(trial)]).toEqual(["first", "third"]);
});

const prefixed = (files: Files, prefix: string): Files =>
  new Map([...files].map(([name, bytes]) => [`${prefix}${name}`, bytes]));

for (const { name, file, entry, kinds } of [
  { name: "cache-first-forever", file: "sw.js", entry: "", ...CHROMIUM },
  // Firefox looks for another worker by itself only after a day.
  { name: "cache-first-forever", file: "sw.js", entry: "index.html", kinds: ["firefox"] },
  // Its page is of last year for ever; the page's whole address is one that it does not know.
  { name: "cache-first-forever", file: "old.js", entry: "index.html", ...IN_MOST },
  // Under another name nothing that a folder holds could reach it.
  { name: "throws", file: "sw.js", entry: "", ...IN_MOST },
] as const)
  mostlyInChromium(
    `a worker of last year, ${name}, as ${file}, gives way`,
    async (shown) => {
      const old = readFileSync(path.join(OLD_WORKERS, `sw-${name}.txt`));
      const server = await serve(new Map([...first, [file, old]]));
      const page = await shown.page();
      // As its page did: ours would bring its own worker at once.
      await page.goto(`${server.address}README.txt`);
      await page.evaluate(async (script) => {
        await navigator.serviceWorker.register(script);
        await navigator.serviceWorker.ready;
      }, `/tools/rigsheet/${file}`);
      server.files = second;
      for (let start = 0; start < 2; start++) {
        await page.goto(`${server.address}${entry}`).catch(() => undefined);
        await page.waitForTimeout(4000);
        await page.goto("about:blank");
        await page.waitForTimeout(500);
      }
      await page.goto(server.address);
      await started(page);
      await kept(page);
      expect(await markOf(await withoutNetwork(shown, server))).toBe("second");
    },
    { kinds },
  );

for (const name of ["install-fails", "broken-syntax", "is-html"])
  mostlyInChromium(
    `where the worker is ${name}, it is said, and the next visit is as if it had not been`,
    async (shown) => {
      const bad = readFileSync(path.join(OLD_WORKERS, `sw-${name}.txt`));
      const server = await serve(new Map([...first, ["sw.js", bad]]));
      const page = await opened(shown, server.address);
      await remarks(page)
        .getByText(/without a network/)
        .waitFor({ timeout: 20_000 });
      expect(await remarks(page).innerText()).not.toContain("Kept in this browser");
      await typed(page, "Tannenblick");
      server.files = first;
      await page.reload();
      await started(page);
      await kept(page);
      await isThere(await withoutNetwork(shown, server), "Tannenblick");
    },
    CHROMIUM,
  );
