/** The browser's stand of the storage, in a browser: through every fault of its database, a page that is closed, and two tabs. */
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";
import { chromium, type Browser, type BrowserContext, type Page } from "playwright-core";
import type { BrowserStorage } from "../../src/hosts/storage/browserStorage";
import type { Log } from "../../src/jobs/log";
import type { Storage } from "../../src/jobs/storage";
import { bundled, FLAGS, onPath } from "../pane/inChromium";
import { withChromium } from "../support/tools";

interface Exposed {
  readonly everyFault: () => Promise<{ runs: number; calls: number; wrong: string[] }>;
  readonly BrowserStorage: typeof BrowserStorage;
  readonly Log: typeof Log;
}

let browser: Browser | undefined;
let server: Server;
let address: string;

beforeAll(async () => {
  const script = await bundled(path.join(__dirname, "storagePage.ts"));
  server = createServer((request, response) => {
    const isScript = request.url === "/page.js";
    response.setHeader("Content-Type", isScript ? "text/javascript" : "text/html");
    response.end(isScript ? script : `<!doctype html><title>Storage</title><script src="page.js"></script>`);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}, 120_000);
afterAll(async () => {
  await browser?.close();
  server.close();
});

function withContext(name: string, work: (context: BrowserContext) => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const context = await browser.newContext();
    await work(context);
    await context.close();
  });
}
async function opened(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(address);
  return page;
}

withContext(
  "every call of the database fails once: nothing confirmed is lost, nothing is half",
  async (context) => {
    const page = await opened(context);
    const { runs, calls, wrong } = await page.evaluate(() => (window as unknown as Exposed).everyFault());
    expect(wrong).toEqual([]);
    expect(calls).toBeGreaterThan(15);
    expect(runs).toBe(1 + 3 * calls);
  },
);

withContext(
  "a page that is closed in the middle: each piece that it had confirmed is there, whole",
  async (context) => {
    const watcher = await opened(context);
    for (let turn = 0; turn < 8; turn++) {
      const page = await opened(context);
      const confirmed: number[] = [];
      await page.exposeFunction("confirmed", (piece: number) => void confirmed.push(piece));
      const working = page
        .evaluate(async (name) => {
          const { BrowserStorage, confirmed: tell } = window as unknown as Exposed & {
            confirmed: (piece: number) => Promise<void>;
          };
          const storage = await BrowserStorage.open("closed");
          await storage.create(name, Uint8Array.of(255));
          for (let piece = 0; ; piece++) {
            await storage.append(name, new Uint8Array(10_000).fill(piece % 200));
            await tell(piece);
          }
        }, `job ${turn}`)
        .catch(() => undefined);
      await new Promise((resolve) => setTimeout(resolve, 60 + turn * 25));
      await page.close();
      await working;
      // Looked at there: megabytes take a minute to come over here.
      const found = await watcher.evaluate(async (name) => {
        const storage = await (window as unknown as Exposed).BrowserStorage.open("closed");
        const bytes = await storage.read(name);
        storage.close();
        return (
          bytes && {
            length: bytes.length,
            wrong: bytes.findIndex(
              (byte, at) => byte !== (at === 0 ? 255 : Math.floor((at - 1) / 10_000) % 200),
            ),
          }
        );
      }, `job ${turn}`);
      const pieces = ((found?.length ?? 1) - 1) / 10_000;
      expect(Number.isInteger(pieces)).toBe(true);
      expect(pieces).toBeGreaterThanOrEqual(confirmed.length);
      expect(found?.wrong ?? -1).toBe(-1);
    }
  },
);

withContext(
  "two tabs that add at once: what one has not seen it does not write behind; all that was confirmed is there, in order",
  async (context) => {
    const tabs = [await opened(context), await opened(context)];
    await tabs[0]!.evaluate(async () => {
      const storage = await (window as unknown as Exposed).BrowserStorage.open("two");
      await storage.create("job", new Uint8Array());
    });
    const refused = await Promise.all(
      tabs.map((tab, which) =>
        tab.evaluate(async (mark) => {
          const storage = await (window as unknown as Exposed).BrowserStorage.open("two");
          const sentences: string[] = [];
          await storage.read("job");
          for (let count = 0; count < 50;) {
            try {
              await storage.append("job", Uint8Array.of(mark, count));
              count++;
            } catch (error) {
              sentences.push(String(error));
              await storage.read("job");
            }
          }
          return sentences;
        }, which),
      ),
    );
    for (const sentence of refused.flat())
      expect(sentence).toMatch(/^WrittenElsewhere: Another window has written to job meanwhile\./);
    const bytes = await tabs[0]!.evaluate(async () => {
      const storage = await (window as unknown as Exposed).BrowserStorage.open("two");
      return [...(await storage.read("job"))!];
    });
    expect(bytes).toHaveLength(2 * 2 * 50);
    for (const mark of [0, 1]) {
      const counts = bytes.filter((_, index) => index % 2 === 1 && bytes[index - 1] === mark);
      expect(counts).toEqual(Array.from({ length: 50 }, (_, count) => count));
    }
  },
);

withContext(
  "one that did not see the other's piece, or that it is gone, adds nothing; once it has looked, it does",
  async (context) => {
    const page = await opened(context);
    const found = await page.evaluate(async () => {
      const { BrowserStorage } = window as unknown as Exposed;
      const [first, second] = [await BrowserStorage.open("seen"), await BrowserStorage.open("seen")];
      const add = (storage: Storage, byte: number): Promise<string> =>
        storage.append("job", Uint8Array.of(byte)).then(
          () => "added",
          (error: Error) => error.name,
        );
      await first.create("job", Uint8Array.of(0));
      const seen: unknown[] = [
        await second.create("job", Uint8Array.of(9)).catch((error: Error) => error.name),
      ];
      await second.read("job");
      seen.push(await add(first, 1), await add(second, 2), await add(second, 2), await add(first, 3));
      await second.read("job");
      seen.push(await add(second, 4), await add(first, 5), [...(await first.read("job"))!]);
      await second.moveAside("job", "damaged/job");
      seen.push(await add(first, 6), await first.list());
      return JSON.stringify(seen);
    });
    const refused = "WrittenElsewhere";
    expect(found).toBe(
      JSON.stringify([
        refused,
        ...["added", refused, refused, "added"],
        ...["added", refused, [0, 1, 3, 4]],
        ...["Error", ["damaged/job"]],
      ]),
    );
  },
);

withContext(
  "two tabs that have one log open: the second to write is refused for good, and hides nothing of the first's",
  async (context) => {
    const tabs = [await opened(context), await opened(context)];
    await tabs[0]!.evaluate(async () => {
      const { BrowserStorage, Log } = window as unknown as Exposed;
      await (await Log.begin<string, string>(await BrowserStorage.open("log"), "job", "a")).append(["1"]);
    });
    const open = async (tab: Page): Promise<void> =>
      tab.evaluate(async () => {
        const { BrowserStorage, Log } = window as unknown as Exposed;
        const isText = (value: unknown): value is string => typeof value === "string";
        const log = await Log.open<string, string>(await BrowserStorage.open("log"), "job", isText);
        Object.assign(window, { log });
      });
    const append = async (tab: Page, entry: string): Promise<string> =>
      tab.evaluate(async (what) => {
        const { log } = window as unknown as { log: Log<string, string> };
        return log.append([what]).then(
          () => JSON.stringify(log.content.entries),
          (error: Error) => error.name,
        );
      }, entry);
    for (const tab of tabs) await open(tab);
    expect(await append(tabs[0]!, "first")).toBe('["1","first"]');
    for (let turn = 0; turn < 3; turn++) expect(await append(tabs[1]!, "second")).toBe("WrittenElsewhere");
    expect(await append(tabs[0]!, "more")).toBe('["1","first","more"]');
    await open(tabs[1]!);
    expect(await append(tabs[1]!, "second")).toBe('["1","first","more","second"]');
  },
);

withContext("what is listed, moved aside, dropped, and refused", async (context) => {
  const page = await opened(context);
  const found = await page.evaluate(async () => {
    const storage = await (window as unknown as Exposed).BrowserStorage.open("verbs");
    const refused = (work: Promise<unknown>): Promise<boolean> =>
      work.then(
        () => false,
        () => true,
      );
    await storage.create("b", Uint8Array.of(1));
    await storage.append("b", Uint8Array.of(2));
    await storage.create("a", Uint8Array.of(3));
    const seen: unknown[] = [await storage.list()];
    seen.push(
      await refused(storage.create("a", Uint8Array.of(4))),
      await refused(storage.append("c", Uint8Array.of(4))),
    );
    await storage.moveAside("b", "damaged/b");
    await storage.moveAside("gone", "damaged/gone");
    await storage.drop("a");
    seen.push(await storage.list(), [...(await storage.read("damaged/b"))!], await storage.read("a"));
    return JSON.stringify(seen);
  });
  expect(found).toBe(JSON.stringify([["a", "b"], true, true, ["damaged/b"], [1, 2], undefined]));
});
