/** Settings kept in the browser's storage, refused storage, and storage that holds nonsense. */
import type { PaneHost } from "../../../src/pane/host";

/** The browser's storage. */
class Stored {
  private readonly items = new Map<string, string>();
  getItem = (key: string): string | null => this.items.get(key) ?? null;
  setItem = (key: string, value: string): void => void this.items.set(key, String(value));
}

const refusing = {
  getItem: () => {
    throw new Error("SecurityError");
  },
  setItem: () => {
    throw new Error("QuotaExceededError");
  },
};

/** Each page has a class of its own for what is refused. */
async function sentenceOf(work: Promise<void>): Promise<string> {
  const error = await work.then(
    () => undefined,
    (reason: unknown) => reason as Error,
  );
  expect(error?.constructor.name).toBe("HostTrouble");
  return error!.message;
}

/** A page as it is loaded afresh, with the browser's storage. */
async function page(localStorage: () => unknown): Promise<PaneHost> {
  const window = { navigator: { userAgent: "" }, location: { search: "", href: "" } };
  Object.defineProperty(window, "localStorage", { get: localStorage });
  (globalThis as Record<string, unknown>).window = window;
  let host: PaneHost | undefined;
  await jest.isolateModulesAsync(async () => {
    const { ExcelHost } = await import("../../../src/hosts/excel/excelHost");
    host = new ExcelHost();
  });
  return host!;
}
afterEach(() => void delete (globalThis as Record<string, unknown>).window);

const DEFAULTS = { lengthUnit: "m", currency: "" };

test("kept from one page to the next", async () => {
  const stored = new Stored();
  expect(await (await page(() => stored)).preferences()).toEqual(DEFAULTS);
  await (await page(() => stored)).keepPreferences({ lengthUnit: "ft", currency: "USD" });
  expect(await (await page(() => stored)).preferences()).toEqual({ lengthUnit: "ft", currency: "USD" });
  expect(stored.getItem("@rigsheet/preferences")).toBe('{"lengthUnit":"ft","currency":"USD"}');
});

test.each([
  ["no storage", () => undefined],
  [
    "storage that may not be touched",
    () => {
      throw new Error("SecurityError");
    },
  ],
  ["storage that refuses each item", () => refusing],
])("%s: said in a sentence, and the settings hold until the page closes", async (_, storage) => {
  const host = await page(storage);
  expect(await host.preferences()).toEqual(DEFAULTS);
  expect(await sentenceOf(host.keepPreferences({ lengthUnit: "ft", currency: "NOK" }))).toMatch(
    /does not let settings be kept.*Allow site data/,
  );
  expect(await host.preferences()).toEqual({ lengthUnit: "ft", currency: "NOK" });
});

test.each([
  ["not JSON", "{"],
  ["another shape", "[1,2]"],
  ["wrong values", '{"lengthUnit":"furlong","currency":12}'],
  ["a currency without end", JSON.stringify({ lengthUnit: "m", currency: "x".repeat(99) })],
])("what is stored is %s: the defaults hold", async (_, text) => {
  const stored = new Stored();
  stored.setItem("@rigsheet/preferences", text);
  expect(await (await page(() => stored)).preferences()).toEqual(DEFAULTS);
});
