/**
 * The add-in's page in Chromium, from the built folder, under its own content
 * policy: outside Excel, without a network, and with a small stand-in for
 * office.js in the place of Microsoft's.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { OFFICE_ADDRESS } from "../../../src/hosts/excel/taskpaneHtml";
import { RIGSHEET_VERSION } from "../../../src/version";
import { withChromium } from "../../support/tools";
import { FLAGS, onPath } from "../../pane/inChromium";
import { BUILD_MS, buildDesk } from "../desk/desk";

const folder = path.join(__dirname, "../../../dist/addin");
const ADDRESS = "https://addins.example.com";
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".png": "image/png",
};

/** As much of office.js as the page needs to start: an Excel with nothing in it. */
const OFFICE_JS = `
  const refused = () => Promise.reject(Object.assign(new Error("no cell"), { code: "InvalidSelection" }));
  globalThis.asked = { commands: [], associated: 0, shown: 0 };
  globalThis.Excel = { run: refused };
  globalThis.CustomFunctions = { associate: () => { asked.associated += 1; } };
  globalThis.Office = {
    HostType: { Excel: "Excel" },
    onReady: () => Promise.resolve({ host: "Excel" }),
    context: { requirements: { isSetSupported: () => true } },
    actions: { associate: (name, run) => { asked.commands.push(name); asked[name] = run; } },
    addin: { showAsTaskpane: () => { asked.shown += 1; return Promise.resolve(); } },
  };
`;

interface Asked {
  commands: string[];
  associated: number;
  shown: number;
}

async function opened(
  program: string,
  office: string | "abort",
  look: (page: Page, requests: string[], complaints: string[]) => Promise<void>,
): Promise<void> {
  const browser: Browser = await chromium.launch({ executablePath: onPath(program), args: FLAGS });
  try {
    const page = await browser.newPage({ viewport: { width: 320, height: 720 } });
    const requests: string[] = [];
    const complaints: string[] = [];
    page.on("pageerror", (error) => complaints.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") complaints.push(message.text());
    });
    await page.route("**/*", async (route) => {
      const url = new URL(route.request().url());
      requests.push(url.origin + url.pathname);
      if (url.origin === OFFICE_ADDRESS) {
        await (office === "abort"
          ? route.abort()
          : route.fulfill({ contentType: "text/javascript", body: office }));
        return;
      }
      const file = path.join(folder, url.pathname);
      await route.fulfill({ contentType: TYPES[path.extname(file)], body: readFileSync(file) });
    });
    await page.goto(`${ADDRESS}/taskpane.html`);
    await page.locator(".pane, #pane *").first().waitFor();
    await look(page, requests, complaints);
  } finally {
    await browser.close();
  }
}

beforeAll(buildDesk, BUILD_MS);

withChromium(
  "in Excel: functions registered, commands answered, nothing else fetched, no policy broken",
  (program) =>
    opened(program, OFFICE_JS, async (page, requests, complaints) => {
      await page.waitForFunction(
        () => (globalThis as unknown as { asked: Asked }).asked.commands.length === 3,
      );
      const asked = await page.evaluate(() => (globalThis as unknown as { asked: Asked }).asked);
      expect(asked.associated).toBeGreaterThan(40);
      expect([...asked.commands].sort()).toEqual(["addRow", "enterAgain", "openHelp"]);
      const version = await page.evaluate(
        () => (globalThis as unknown as { rigsheetFunctionsVersion: string }).rigsheetFunctionsVersion,
      );
      expect(version).toBe(RIGSHEET_VERSION);
      expect([...new Set(requests)].sort()).toEqual(
        [
          `${OFFICE_ADDRESS}/lib/1/hosted/office.js`,
          ...[
            "functions.js",
            "pane.css",
            "taskpane.css",
            "taskpane.html",
            "taskpane.js",
            "icons/icon-32.png",
          ].map((name) => `${ADDRESS}/${name}`),
        ]
          .filter((url) => !url.endsWith("icon-32.png") || requests.includes(url))
          .sort(),
      );
      expect(complaints).toEqual([]);
    }),
);

withChromium("a command that is refused opens the pane and says why", (program) =>
  opened(program, OFFICE_JS, async (page) => {
    await page.waitForFunction(() => (globalThis as unknown as { asked: Asked }).asked.commands.length === 3);
    const completed = await page.evaluate(
      () =>
        new Promise<boolean>((resolve) => {
          const { asked } = globalThis as unknown as {
            asked: Record<string, (event: { completed: () => void }) => void>;
          };
          asked.addRow!({ completed: () => resolve(true) });
        }),
    );
    expect(completed).toBe(true);
    expect(await page.locator("#notice").textContent()).toMatch(/No cell is chosen\. Click a cell/);
    expect(await page.evaluate(() => (globalThis as unknown as { asked: Asked }).asked.shown)).toBe(1);
  }),
);

withChromium(
  "outside Excel, and without a network: the pane says so and still looks things up",
  async (program) => {
    for (const [office, sentence] of [
      ["abort", "office.js could not be loaded"],
      [
        "globalThis.Office = { HostType: { Excel: 'Excel' }, onReady: () => Promise.resolve({ host: null }) };",
        "There is no workbook beside this page",
      ],
    ] as const) {
      await opened(program, office, async (page, _, complaints) => {
        await page.getByText(sentence).click();
        if (office === "abort") await page.getByText(`It comes from ${OFFICE_ADDRESS}.`).waitFor();
        expect(complaints.filter((text) => !/Failed to load resource/.test(text))).toEqual([]);
      });
    }
  },
);

withChromium("the policy lets no other address in", (program) =>
  opened(program, OFFICE_JS, async (page) => {
    const refused = await page.evaluate(async () => {
      try {
        await fetch("https://elsewhere.example.com/");
        return false;
      } catch {
        return true;
      }
    });
    expect(refused).toBe(true);
  }),
);
