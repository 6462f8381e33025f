/**
 * The lodge of 56 outlets, from its surveyor's file and its supplier's list as they came, priced from the firm's
 * standards to a quote in which no check fails; each action is counted. An action is a command, a dialog confirmed, a
 * paste, or a cell or a field of a dialog that is typed. Going to a cell is none.
 */
import path from "node:path";
import type { Book } from "../../../src/workbooks/book";
import { checkLines } from "../../../src/workbooks/checkLines";
import { checks } from "../../../src/workbooks/checkNames";
import { address, parseRange } from "../../../src/formula/address";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { namedColumn, namedValue, placeOfName } from "../../../src/workbooks/named";
import { BUILD_MS } from "./desk";
import { bookOnPage, button, choose, notice, page, saved, total, type, withPage } from "./onDesk";
import { until } from "../../support/until";

jest.setTimeout(BUILD_MS);

const SURVEY = path.join(__dirname, "../../fixtures/fieldSurveys/lodge.csv");
const PRICES = path.join(__dirname, "../../fixtures/priceLists/lodge-prices.csv");
/** Of a listed supplier, in whose name the list is taken. */
const SUPPLIER = "first supplier (demonstration)";

/**
 * Measured on 2026-11-29; a new user took about 70 before, with a catalogue to type. Six of them are pastes of what the
 * planner drew up beside the survey: 104 cells of rows in the order of the sheets.
 */
const MOST_ACTIONS = 21;

/** With nothing pasted but what was copied on the desk, and without the bond, which no check asks for. */
const MOST_TYPED = 56;

const FIELDS: Readonly<Record<string, string>> = {
  site_job: "Lodge at the lake (invented)",
  site_customer: "Invented lodge (demonstration)",
  site_place: "1 Invented Lane",
  site_prepared_by: "demonstration",
  site_quote: "L-56",
  site_latitude: "39.5",
  site_longitude: "-98.25",
  site_height: "420",
};

/** From the roof down, as the surveyor calls what feeds the outlets; each has a head unit of its own under the roof. */
const BOXES = ["3A", "3B", "2A", "2B", "1A", "1B", "GA", "GB"] as const;
/** Two chains of head units from the dish, so that the last of each still gets enough; metres by floor. */
const CHAIN = 4;
const LEADS: Readonly<Record<string, string>> = { "3": "14", "2": "17", "1": "20", G: "23" };
const isFirst = (index: number): boolean => index % CHAIN === 0;
const isLast = (index: number): boolean => index % CHAIN === CHAIN - 1;

type Row = Readonly<Record<string, string>>;
/** What the planner drew up beside the survey, pasted block by block. */
const BLOCKS: readonly (readonly [block: string, rows: readonly Row[]])[] = [
  [
    "slots",
    [
      {
        slot: "97W",
        service: "main programmes",
        obstacle: "20",
        eirp: "50",
        symbol_rate: "27.5",
        modulation: "8PSK 2/3",
      },
    ],
  ],
  ["dishes", [{ name: "D1", feed: "wideband feed, 4 outputs", part: "dish 1.1 m with mount" }]],
  [
    "feeders",
    BOXES.map((box, index) => ({
      from: isFirst(index) ? "D1" : `H${BOXES[index - 1]}`,
      to: `H${box}`,
      cable: "outdoor drop",
      length: isFirst(index) ? "12" : "3",
    })),
  ],
  [
    "heads",
    BOXES.map((box, index) => ({
      id: `H${box}`,
      type: "head unit, 16 bands",
      ...(isLast(index) && { supply: "mains pack 18 V, 2.5 A" }),
    })),
  ],
  [
    "branches",
    BOXES.map((box) => ({
      id: box,
      from: `H${box}`,
      device: "8-way splitter",
      cable: "outdoor drop",
      length: LEADS[box[0]!]!,
    })),
  ],
  [
    "bonds",
    [
      {
        where: "mast of dish D1 to the earth bar",
        dish: "D1",
        kind: "mast earthing, copper",
        size: "16",
        length: "9",
      },
    ],
  ],
];

const taken: string[] = [];
const action = (what: string): void => void taken.push(what);

async function command(name: string): Promise<void> {
  action(`command: ${name}`);
  await button(name).click();
}

async function chooseFile(name: string, file: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await command(name);
  await (await chooser).setFiles(file);
}

/** @returns the sheet, the first cell and the text that fills the rows from there on */
function laidOut(
  book: Book,
  block: string,
  rows: readonly Row[],
): { sheet: string; at: string; text: string } {
  const keys = Object.keys(Object.assign({}, ...rows) as Row);
  const column = new Map(
    keys.map((key) => {
      const { range } = book.names.find(({ name }) => name === `${block}_${key}`)!;
      return [parseRange(range)!.left, key] as const;
    }),
  );
  const [left, right] = [Math.min(...column.keys()), Math.max(...column.keys())];
  const { sheet, at } = placeOfName(book, `${block}_${column.get(left)!}`)!;
  const text = rows.map((row) =>
    Array.from({ length: right - left + 1 }, (_, index) => row[column.get(left + index) ?? ""] ?? "").join(
      "\t",
    ),
  );
  return { sheet, at: address(parseRange(at)!.top, left), text: `${text.join("\n")}\n` };
}

async function standardsAmongJobs(): Promise<void> {
  await button("New").click();
  await page.getByLabel("Template", { exact: true }).selectOption("standards");
  await page.getByRole("button", { name: "Demonstration", exact: true }).click();
  await page.locator(".desk-title", { hasText: "standards, edition 3" }).waitFor();
  await saved();
}

/** A job of the standards with the list's prices, the survey's outlets and its own fields. @returns the book then */
async function begun(): Promise<Book> {
  taken.length = 0;
  // Set up once for a firm: not counted.
  await standardsAmongJobs();

  await command("New");
  await page.getByLabel("Firm's standards, for a multi-room estimate").waitFor();
  action("dialog confirmed: From the standards");
  await page.getByRole("button", { name: "From the standards" }).click();
  await total().waitFor();
  await saved();

  await chooseFile("Price list…", PRICES);
  const prices = page.getByRole("dialog", { name: "Price list" });
  await prices.waitFor();
  action("typed: the supplier of the list");
  await prices.getByLabel("Supplier, as this workbook names it").fill(SUPPLIER);
  await page.keyboard.press("Tab");
  const take = prices.locator("button[value=take]");
  await until(
    () => take.isEnabled(),
    (enabled) => enabled,
  );
  action("dialog confirmed: Take the prices");
  await take.click();
  await until(
    () => notice().innerText(),
    (text) => text.includes(`prices of ${SUPPLIER}`),
  );

  await chooseFile("Import survey…", SURVEY);
  const survey = page.getByRole("dialog", { name: "Import survey" });
  await survey.waitFor();
  action("dialog confirmed: Add 56 outlets");
  await survey.getByRole("button", { name: "Add 56 outlets to Rooms" }).click();
  await saved();

  const empty = await bookOnPage();
  for (const [name, text] of Object.entries(FIELDS)) {
    const { sheet, at } = placeOfName(empty, name)!;
    await choose(sheet, at);
    action(`typed: ${name}`);
    await type(text);
  }
  return empty;
}

/** @param most actions that it may take */
async function isPriced(most: number): Promise<void> {
  await until(
    async () => namedValue(recalculate(await bookOnPage()), checks.verdict.name),
    (verdict) => verdict === "all checks pass",
  );
  const book = recalculate(await bookOnPage());
  console.info(`${taken.length} actions:\n${taken.join("\n")}`);
  expect(checkLines(book).filter(({ result }) => result === "look" || result === "error")).toEqual([]);
  expect(namedColumn(book, "rooms_outlet").filter((name) => name)).toHaveLength(56);
  expect(Number(namedValue(book, estimate.quote.total.name))).toBeGreaterThan(0);
  expect(taken.length).toBeLessThanOrEqual(most);
}

withPage("the lodge is priced from the standards, and no check fails", async () => {
  const empty = await begun();
  for (const [block, rows] of BLOCKS) {
    const { sheet, at, text } = laidOut(empty, block, rows);
    await page.evaluate((plain) => navigator.clipboard.writeText(plain), text);
    await choose(sheet, at);
    action(`paste: ${block}, ${rows.reduce((all, row) => all + Object.keys(row).length, 0)} cells`);
    await page.keyboard.press("Control+V");
    await saved();
  }
  await isPriced(MOST_ACTIONS);
});

withPage("the same with nothing drawn up beside it: typed, copied and filled down on the desk", async () => {
  const empty = await begun();
  /** By numbers of rows, counted from 1. */
  const range = (from: string, first: number, to = from, last = first): [sheet: string, range: string] => {
    const [one, other] = [from, to].map((name) => placeOfName(empty, name)!);
    const { top, left } = parseRange(one!.at)!;
    const { left: right } = parseRange(other!.at)!;
    return [one!.sheet, `${address(top + first - 1, left)}:${address(top + last - 1, right)}`];
  };
  const put = async (name: string, row: number, text: string): Promise<void> => {
    await choose(...range(name, row));
    action(`typed: ${name}, row ${row}`);
    await type(text);
  };
  const key = async (what: string, keys: string, ...at: Parameters<typeof range>): Promise<void> => {
    await choose(...range(...at));
    action(`${what}: ${at[0]}`);
    await page.keyboard.press(keys);
    await saved();
  };
  const last = BOXES.length;
  await put("slots_slot", 1, "97W");
  await put("slots_obstacle", 1, "20");
  await put("dishes_name", 1, "D1");
  await put("dishes_feed", 1, "wideband feed, 4 outputs");
  await put("dishes_part", 1, "dish 1.1 m with mount");
  for (let row = 1; row <= last; row++) await put("feeders_to", row, `H${row}`);
  await put("feeders_from", 1, "D1");
  await key("command: copied", "Control+C", "feeders_to", 1, "feeders_to", last - 1);
  await key("paste", "Control+V", "feeders_from", 2);
  await put("feeders_from", CHAIN + 1, "D1");
  await put("feeders_cable", 1, "outdoor drop");
  await put("feeders_length", 1, "3");
  await key("command: filled down", "Control+d", "feeders_cable", 1, "feeders_length", last);
  await put("feeders_length", 1, "12");
  await put("feeders_length", CHAIN + 1, "12");
  await key("command: copied", "Control+C", "feeders_to", 1, "feeders_to", last);
  await key("paste", "Control+V", "heads_id", 1);
  await key("paste", "Control+V", "branches_from", 1);
  await put("heads_type", 1, "head unit, 16 bands");
  await key("command: filled down", "Control+d", "heads_type", 1, "heads_type", last);
  await put("heads_supply", CHAIN, "mains pack 18 V, 2.5 A");
  await put("heads_supply", last, "mains pack 18 V, 2.5 A");
  for (const [index, box] of BOXES.entries()) await put("branches_id", index + 1, box);
  await put("branches_device", 1, "8-way splitter");
  await put("branches_cable", 1, "outdoor drop");
  // To each floor the longest of them.
  await put("branches_length", 1, LEADS.G!);
  await key("command: filled down", "Control+d", "branches_device", 1, "branches_length", last);
  await isPriced(MOST_TYPED);
});
