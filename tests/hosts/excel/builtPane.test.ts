/**
 * Every button of the pane, really pressed, on the add-in as it is built: what
 * reads or writes a file does it in a browser, where nothing of Node is there.
 * The files that come out are read by a program of other people's.
 */
import path from "node:path";
import { mkdtempSync, rmSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import type { Console } from "../../../src/cli/console";
import { pdfOfDocument } from "../../../src/cli/pdfOfDocument";
import { printJob } from "../../../src/cli/printJob";
import { proposalJob } from "../../../src/cli/proposalJob";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { copyOf, type CopyKind } from "../../../src/hosts/file/copy/copyOf";
import { writeJob } from "../../../src/hosts/file/writeJob";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { trainingSets } from "../../../src/training/sets/all";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { trainerKey } from "../../../src/training/trainerKey";
import { RIGSHEET_VERSION } from "../../../src/version";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue, placeOfName } from "../../../src/workbooks/named";
import { singleDrop } from "../../../src/workbooks/singleDrop/definition";
import { pagesOf } from "../../support/pdfPages";
import { undoOf } from "../../support/excel/undoSupport";
import { setOfMember } from "../../support/excel/requirementSets";
import { readBySomebodyElse } from "../../support/readBySomebodyElse";
import { withChromium } from "../../support/tools";
import { BUNDLE_MS, openView } from "../../pane/inChromium";
import { BUILD_MS, buildDesk } from "../desk/desk";
import { askedOfExcel, closeFrames, standInScript, withFramedPane, type FramedPane } from "./framedPane";
import type { StandInPage } from "./standInPage";

let script = "";
let file: Uint8Array;
let surveyBook: Uint8Array;
const job = recalculate(layOut(multiRoom, guestHouse));

const SURVEY: readonly (readonly (string | number)[])[] = [
  ["Outlet", "Receiver", "Fed from", "Cable", "Length (ft)", "Wall plate"],
  ["S-1", "receiver", "H2", "indoor drop", 45.5, "single outlet"],
  ["S-2", "receiver", "H2", "indoor drop", 61.25, "single outlet"],
];

beforeAll(async () => {
  buildDesk();
  script = await standInScript();
  file = await writeJob(job);
  surveyBook = await surveyWorkbook();
}, BUILD_MS + BUNDLE_MS);
afterAll(() => closeFrames());

/** A survey as another program writes it: shared strings, a style sheet of its own. */
async function surveyWorkbook(): Promise<Uint8Array> {
  const { Workbook } = await import("@cj-tech-master/excelts");
  const workbook = new Workbook();
  workbook.addWorksheet("Survey").addRows(SURVEY.map((row) => [...row]));
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

const framed = (name: string, work: (pane: FramedPane) => Promise<void>): void =>
  withFramedPane(
    name,
    () => script,
    () => ({ file, book: job }),
    work,
  );

const press = ({ pane }: FramedPane, name: string | RegExp): Promise<void> =>
  pane.locator("section:not([hidden]), dialog").getByRole("button", { name, exact: true }).first().click();

/** Waits for the sentence; "Not done" with whatever reason is said at once. */
async function said({ pane }: FramedPane, wanted: RegExp): Promise<string> {
  const status = pane.locator(".pane-status");
  await status.filter({ hasText: new RegExp(`${wanted.source}|^Not done`) }).waitFor({ timeout: 120_000 });
  const text = await status.innerText();
  expect(text).toMatch(wanted);
  return text;
}

const stateOf = ({ page }: FramedPane): Promise<Book> =>
  page
    .evaluate(() =>
      JSON.stringify((globalThis as unknown as { standInPage: StandInPage }).standInPage.excel.book()),
    )
    .then((text) => JSON.parse(text) as Book);

const select = ({ page }: FramedPane, { sheet, at }: { sheet: string; at: string }): Promise<void> =>
  page.evaluate(
    ([where, cell]) =>
      (globalThis as unknown as { standInPage: StandInPage }).standInPage.excel.choose(where, cell),
    [sheet, at] as const,
  );

const withoutDay = (book: Book): Book =>
  JSON.parse(JSON.stringify(book).replace(/made \d{4}-\d\d-\d\d \d\d:\d\d UTC/g, "made … UTC")) as Book;

describe("copies", () => {
  const COPIES = [
    ["office", "Make a copy without add-in", /^The copy without add-in is made/],
    ["sealed", "Make a values-only copy", /^The values-only copy is made/],
    ["cards", "Make the cards", /^The cards are made/],
  ] as const satisfies readonly (readonly [CopyKind, string, RegExp])[];

  framed("all three are sound workbooks, and what Node makes of the same file", async (pane) => {
    await openView(pane.pane, "Copies");
    for (const [, button, sentence] of COPIES) {
      await press(pane, button);
      await said(pane, sentence);
    }
    const created = await pane.created();
    expect(created).toHaveLength(COPIES.length);
    const total = namedValue(job, "quote_total");
    const place = placeOfName(job, "quote_total")!;
    for (const [index, [kind]] of COPIES.entries()) {
      const bytes = created[index]!;
      const facts = { now: new Date(), version: RIGSHEET_VERSION };
      const made = copyOf(await readXlsx(file), kind, facts);
      const inNode = await writeXlsx(made, kind === "office" ? { frozen: true } : { sealed: true });
      expect(withoutDay(await readXlsx(bytes))).toEqual(withoutDay(await readXlsx(inNode)));

      const read = await readBySomebodyElse(bytes);
      const formulas = read.flatMap(({ cells }) => [...cells.values()].flatMap((cell) => cell.formula ?? []));
      if (kind === "cards") {
        expect(read.map(({ name }) => name)).toEqual(["Dish cards", "Head unit cards", "Outlet cards"]);
        const texts = [...read.at(-1)!.cells.values()].map(({ value }) => String(value)).join("\n");
        for (const { outlet } of guestHouse.blocks!.rooms!) expect(texts).toContain(String(outlet));
      } else {
        expect(read.map(({ name }) => name)).toEqual(job.sheets.map(({ name }) => name));
        if (kind === "office") {
          expect(read.find(({ name }) => name === place.sheet)!.cells.get(place.at)!.value).toBe(total);
        }
      }
      expect(formulas.length > 0).toBe(kind === "office");
      expect(formulas.filter((formula) => /RIG[._]/i.test(formula))).toEqual([]);
    }
  });
});

framed("the proposal and the quote are the pages that the command writes of the same file", async (pane) => {
  await openView(pane.pane, "Copies");
  for (const [button, name, run] of [
    ["Print as PDF", /Quote\.pdf$/, printJob],
    [
      "Proposal as PDF",
      /proposal\.pdf$/,
      (words: string[], console: Console) => proposalJob(words, console, pdfOfDocument),
    ],
  ] as const) {
    const [download] = await Promise.all([pane.page.waitForEvent("download"), press(pane, button)]);
    expect(download.suggestedFilename()).toMatch(name);
    const pages = pagesOf(await download.path());
    const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-pane-pdf-"));
    const [given, out] = ["job.xlsx", "out.pdf"].map((one) => path.join(folder, one)) as [string, string];
    await writeFile(given, file);
    await run([given, "--out", out], {
      out: () => undefined,
      err: () => undefined,
      readInput: async () => "",
    });
    expect(pages.map(({ lines }) => lines)).toEqual(pagesOf(out).map(({ lines }) => lines));
    rmSync(folder, { recursive: true });
    await said(pane, /is made/);
  }
});

describe("surveys", () => {
  const csv = SURVEY.map((row) => row.join(",")).join("\n");
  const FILES = [
    ["text", () => ({ name: "survey.csv", mimeType: "text/csv", buffer: Buffer.from(csv) })],
    [
      "a workbook",
      () => ({
        name: "survey.xlsx",
        mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        buffer: Buffer.from(surveyBook),
      }),
    ],
  ] as const;
  for (const [kind, chosen] of FILES) {
    framed(`${kind}: its outlets are on Rooms`, async (pane) => {
      await openView(pane.pane, "Survey");
      await pane.pane.getByLabel("File, .csv or .xlsx").setInputFiles(chosen());
      await said(pane, /^The preview shows what was understood/);
      await press(pane, "Add 2 outlets to Rooms");
      await said(pane, /^2 outlets added to Rooms/);
      const book = await stateOf(pane);
      const at = namedColumn(book, "rooms_outlet").indexOf("S-1");
      // 45.5 ft and 61.25 ft at 0.3048 m, worked by hand.
      expect(namedColumn(book, "rooms_run").slice(at, at + 2)).toEqual([13.8684, 18.669]);
    });
  }

  framed("an old workbook under the new ending is refused with its sentence", async (pane) => {
    await openView(pane.pane, "Survey");
    // The first bytes of the older container ([MS-CFB] 2.2), and the name that an encrypted one holds.
    const protectedFile = Buffer.concat([
      Buffer.from("d0cf11e0a1b11ae1", "hex"),
      Buffer.alloc(504),
      Buffer.from("EncryptedPackage", "utf16le"),
    ]);
    for (const [buffer, sentence] of [
      [protectedFile, /^Not done\. The file is protected with a password/],
      [protectedFile.subarray(0, 512), /^Not done\. The file is an old Excel workbook/],
    ] as const) {
      await pane.pane
        .getByLabel("File, .csv or .xlsx")
        .setInputFiles({ name: "survey.xlsx", mimeType: "application/octet-stream", buffer });
      await said(pane, sentence);
    }
  });
});

framed("training: the sheets and the key are those that Node makes", async (pane) => {
  await openView(pane.pane, "Training");
  await pane.pane.getByLabel("Trainees", { exact: true }).fill("Anna Berg\nBo");
  await pane.pane.getByLabel("Seed, a whole number").fill("2026");
  await press(pane, "Draw");
  await said(pane, /^2 sheets and the key can be made/);
  for (const [button, sentence] of [
    ["1 Anna Berg", /^The sheet of Anna Berg is made/],
    ["2 Bo", /^The sheet of Bo is made/],
    ["Trainer's key", /^The key is made/],
  ] as const) {
    await press(pane, button);
    await said(pane, sentence);
  }
  const set = trainingSets[0]!;
  const trainees = ["Anna Berg", "Bo"].map((name) => ({ name, occurrence: 1 }));
  const wanted = [
    ...trainees.map((trainee) => traineeSheet(set, 2026, trainee)),
    trainerKey({ set, seed: 2026, trainees }),
  ];
  const created = await pane.created();
  expect(created).toHaveLength(wanted.length);
  for (const [index, book] of wanted.entries()) {
    expect(await readXlsx(created[index]!)).toEqual(await readXlsx(await writeXlsx(book)));
    const read = await readBySomebodyElse(created[index]!);
    expect(read.map(({ name }) => name)).toEqual(book.sheets.map(({ name }) => name));
  }
});

withFramedPane(
  "in an empty workbook, Start puts the template's sheets into it",
  () => script,
  () => ({}),
  async (pane) => {
    await pane.pane.getByLabel("Template").selectOption({ label: singleDrop.title });
    await pane.pane.getByLabel("As sheets of this workbook, not as a new one").check();
    await press(pane, "Demonstration");
    await said(pane, /^The demonstration is ready/);
    const sheets = (await stateOf(pane)).sheets.map(({ name }) => name);
    expect(sheets).toEqual(["Sheet1", ...singleDrop.sheets.map(({ name }) => name)]);
  },
);

function filledRun(): { sheet: string; at: string } {
  const { sheet, at } = placeOfName(job, "rooms_run")!;
  return { sheet, at: at.replace(/\d+/, (row) => String(Number(row) + 2)) };
}

/** What each button of a view is to say; a view's own preparation comes first. */
const BUTTONS: Readonly<
  Record<
    string,
    {
      prepare?: (pane: FramedPane) => Promise<void>;
      say: readonly (readonly [button: RegExp, sentence: RegExp])[];
    }
  >
> = {
  "New workbook": {
    say: [
      [/^Empty$/, /^The empty workbook is ready/],
      [/^Demonstration$/, /^The demonstration is ready/],
      [/^Show an invented one$/, /^The demonstration is ready/],
      [/^Take the text$/, /^Read: .*7 lines/],
    ],
    prepare: async ({ pane }) =>
      void (await pane.locator("summary", { hasText: "somebody else's quote" }).click()),
  },
  // An older workbook is upgraded in tests/pane/pane.test.ts; this one is of today's version.
  Upgrade: {
    prepare: async (pane) => void (await said(pane, /There is nothing to upgrade\.$/)),
    say: [[/^Look again$/, /There is nothing to upgrade\.$/]],
  },
  Settings: { say: [[/^Keep$/, /^Kept\./]] },
  // This workbook is a job: the demonstrations stay out of it.
  "Try this Excel": {
    say: [
      [/^Try it$/, /^Tried: /],
      [/^Copy$/, /^The page is on the clipboard|^The text is marked/],
      [/^As a workbook$/, /^The page is open as a workbook/],
    ],
  },
  Steps: {
    prepare: async (pane) => void (await said(pane, /sheets have all that they need/)),
    say: [[/^Look again$/, /sheets have all that they need/]],
  },
  "Add rows": { say: [[/^Add rows$/, /^10 rows added at the end of Outlets/]] },
  Survey: { say: [] },
  Floors: {
    prepare: async ({ pane }) => void (await pane.getByLabel("To the floors").fill("tower")),
    say: [
      [/^Preview$/, /^The preview shows/],
      [/^Add \d+ outlets/, /added\./],
    ],
  },
  Standards: {
    // Of another currency than the job's: told, and nothing to press.
    prepare: async (pane) => {
      await pane.pane
        .getByLabel("The firm's standards, .xlsx", { exact: true })
        .setInputFiles(path.join(__dirname, "../../../templates/standards-demonstration.xlsx"));
      await said(pane, /^Not done\. This workbook is in .* and the standards are in EUR\. Nothing was taken/);
    },
    say: [],
  },
  // Of a file that is chosen; tests/pane has it.
  "Price list": { say: [] },
  Findings: {
    prepare: async (pane) => {
      await said(pane, /^Found: /);
      await press(pane, /^Settle…$/);
      await pane.pane.getByLabel("Why it may stay as it is").fill("as agreed with the customer");
      await press(pane, /^Settle$/);
      await said(pane, /^Settled\./);
      await pane.pane.getByText(/; 1 settled$/).waitFor();
    },
    say: [
      [/^Check again$/, /^Found: /],
      [/^Next$/, /is selected\.$/],
      [/^Back$/, /is selected\.$/],
      [/^Settle…$/, /is selected\.$/],
      [/^Cancel$/, /is selected\.$/],
      [/^[A-Z][a-z ]+ [A-Z]+\d+/, /is selected\.$/],
    ],
  },
  "Why?": {
    prepare: async (pane) => {
      await said(pane, /is shown\.$|as it was entered/);
      await select(pane, placeOfName(job, "quote_total")!);
    },
    say: [
      [/^Why .*\?$/, /is shown\.$/],
      [/\([A-Z][A-Za-z ]+ [A-Z]+\d+\)$/, /is shown\.$|as it was entered/],
    ],
  },
  "Read as table": {
    prepare: async (pane) => void (await said(pane, /is shown as a table: \d+ rows?\.$/)),
    say: [
      [/^Read the rows around/, /is shown as a table: \d+ rows?\.$/],
      [/, go to row \d+$/, /is selected\.$/],
    ],
  },
  Diagnose: {
    prepare: async (pane) => void (await said(pane, /measured/)),
    say: [
      [/^Diagnose again$/, /measured/],
      [/^Enter readings$/, /^Enter lowest frequency, highest frequency and volts/],
    ],
  },
  "Repair formulas": { say: [[/^Repair formulas$/, /^No Rigsheet formula shows #NAME\?/]] },
  Copies: {
    say: [
      [/^Make a copy without add-in$/, /^The copy without add-in is made/],
      [/^Make a values-only copy$/, /^The values-only copy is made/],
      [/^Make the cards$/, /^The cards are made/],
      [/^Proposal as PDF$/, / - proposal\.pdf is made: \d+ pages\./],
      [/^Print as PDF$/, / - Quote\.pdf is made: 1 page\./],
    ],
  },
  Pictures: {
    prepare: async (pane) => void (await said(pane, /drawn from the workbook/)),
    say: [
      [/^Distribution$/, /^Distribution drawn/],
      [/^Levels$/, /^Levels drawn/],
      [/^Slots and obstacles$/, /^Slots and obstacles drawn/],
      // The picture large has nothing to say, and is closed again.
      [/^Show it large$/, /^Slots and obstacles drawn/],
      [/^Close$/, /^Slots and obstacles drawn/],
    ],
  },
  Functions: {
    prepare: async (framedPane) => {
      await select(framedPane, filledRun());
      const { pane } = framedPane;
      await pane.getByLabel("What do you want to know?").fill("azimuth");
      await pane.locator("summary", { hasText: "RIG.AZIMUTH" }).click();
    },
    say: [
      [/^Put the example/, /is not empty: replace it/],
      [/^Keep the cell$/, /^The cell was left as it is/],
      [/^Put the example/, /is not empty: replace it/],
      [/^Replace it$/, /^The example is in/],
    ],
  },
  "Show calculation": {
    prepare: async (pane) => void (await said(pane, /is shown\.$|no calculation/)),
    say: [[/^Show the calculation/, /is shown\.$|no calculation/]],
  },
  Training: {
    prepare: ({ pane }) => pane.getByLabel("Trainees", { exact: true }).fill("Anna"),
    say: [
      [/^Draw$/, /^1 sheets? and the key can be made/],
      [/^1 Anna$/, /^The sheet of Anna is made/],
      [/^Trainer's key$/, /^The key is made/],
    ],
  },
  Cautions: { say: [] },
};

framed("every button of every view is pressed, and does what it says", async (pane) => {
  await select(pane, filledRun());
  const views = await pane.pane.locator(".pane-tabs button").allInnerTexts();
  expect(views).toEqual(Object.keys(BUTTONS));
  for (const [view, { prepare, say }] of Object.entries(BUTTONS)) {
    await openView(pane.pane, view);
    await prepare?.(pane);
    for (const [button, sentence] of say) {
      await press(pane, button);
      await said(pane, sentence);
    }
    const shown = pane.pane.locator("section:not([hidden]) button:visible");
    const names = await shown.evaluateAll((all) => all.map((one) => one.ariaLabel ?? one.textContent));
    const unpressed = names.filter((text) => !say.some(([button]) => button.test(text)));
    expect({ view, unpressed }).toEqual({ view, unpressed: [] });
  }
});

withFramedPane(
  "in an empty workbook the whole trial is good, and its page is handed over",
  () => script,
  () => ({ oddities: {} }),
  async (pane) => {
    await openView(pane.pane, "Try this Excel");
    await press(pane, "Try it");
    const summary = await said(pane, /^Tried: /);
    const page = await pane.pane.getByLabel("Text, to copy into a mail or a file").inputValue();
    expect({ summary, page }).toMatchObject({ summary: expect.stringMatching(/^Tried: good /) as string });
    expect(page).toContain("Demonstration totals: Quote review");
    const picture = process.env.SHOTS;
    if (picture) {
      await pane.page.addStyleTag({ content: "iframe { height: 6000px; }" });
      await pane.page.setViewportSize({ width: 320, height: 6000 });
      await pane.page.screenshot({ path: `${picture}/try-excel.png` });
    }
    await press(pane, "As a workbook");
    await said(pane, /^The page is open as a workbook/);
    const [, handed] = await pane.created();
    const [sheet] = await readBySomebodyElse(handed!);
    const texts = [...sheet!.cells.values()].map(({ value }) => String(value));
    expect(texts).toEqual(expect.arrayContaining(["Blank in a range", "Left nothing behind"]));
    if (picture) await writeFile(`${picture}/try-excel.xlsx`, handed!);
    expect((await stateOf(pane)).sheets.map(({ name }) => name)).toEqual(["Sheet1"]);
  },
);

/** Without spilling formulas nothing works, so the pane refuses an Excel that lacks this set before it asks for more. */
const NEEDED_SET = "1.12";
/** What came later is looked for before it is used. */
const LOOKED_FOR: Readonly<Record<string, string>> = {
  "notes.add": "1.18",
  "workbook.insertWorksheetsFromBase64": "1.13",
};
/** What Excel on the web takes in one request (Office add-ins documentation, "Resource limits"). */
const MOST_BYTES = 5 * 1024 * 1024;

withChromium(
  "what all of this asked of Excel is in the sets that it needs or looks for, and no request is large",
  () => {
    const later = (one: string, other: string): boolean =>
      Number(one.split(".")[1]) > Number(other.split(".")[1]);
    const counts = new Map<string, number>();
    for (const { members } of askedOfExcel.values())
      for (const [member, count] of members) counts.set(member, (counts.get(member) ?? 0) + count);
    const unknown: string[] = [];
    const rows = [...counts].map(([member, count]) => {
      const set = setOfMember(member);
      if (set === "unknown") unknown.push(member);
      return { member, set, count };
    });
    expect(unknown).toEqual([]);
    const bySet = new Map<string, number>();
    for (const { set = "common", count } of rows) bySet.set(set, (bySet.get(set) ?? 0) + count);
    const kept = rows.filter(({ member }) => undoOf(member) !== "yes");
    const requests = [...askedOfExcel].map(([name, one]) => ({
      name,
      trips: one.requests.length,
      calls: Math.max(0, ...one.requests.map(({ calls }) => calls)),
      bytes: Math.max(0, ...one.requests.map(({ bytes }) => bytes)),
    }));
    process.stdout.write(
      [
        `Asked of Excel: ${rows.length} members; calls by set of ExcelApi: ${[...bySet]
          .sort()
          .map(([set, count]) => `${set} ${count}`)
          .join(", ")}`,
        `  can't be taken back: ${kept.map(({ member, count }) => `${member} ${count} (${undoOf(member)})`).join(", ") || "none"}; all others can`,
        ...requests.map(
          ({ name, trips, calls, bytes }) =>
            `  ${name}: ${trips} round trips, at most ${calls} calls and ${(bytes / 1024).toFixed(0)} kB in one`,
        ),
        "",
      ].join("\n"),
    );
    // The whole pane was pressed.
    expect(rows.length).toBeGreaterThan(40);
    expect(
      rows.filter(({ member, set }) => set !== undefined && later(set, LOOKED_FOR[member] ?? NEEDED_SET)),
    ).toEqual([]);
    expect(requests.filter(({ bytes }) => bytes >= MOST_BYTES)).toEqual([]);
  },
);
