/** Printing on the desk: what is asked, and what stands on the pages. */
import { libreOffice } from "../../support/libreOffice";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { apartmentBlock } from "../../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { namedColumn, namedValue, placeOfName } from "../../../src/workbooks/named";
import { barriers } from "../../pane/inChromium";
import { bookOf, emptySheet } from "../../support/books";
import { onePixel } from "../pdf/onePixel";
import { referencePrice, type Job } from "../../support/referencePrice";
import { BUILD_MS } from "./desk";
import {
  bookOnPage,
  button,
  choose,
  crash,
  forget,
  notice,
  page,
  saved,
  type,
  withPage,
  withPageAndPdf,
} from "./onDesk";
import { isTrue, until } from "../../support/until";
import {
  boxes,
  byCommand,
  byLibreOffice,
  cutTexts,
  dialog,
  expectWithinPages,
  linesOf,
  onPaper,
  open,
  preview,
  previewed,
  printButton,
  printed,
  proposalByCommand,
  quoteByCommand,
  savedPdf,
  takePages,
  wordsOf,
  type Handed,
} from "./printedPages";

jest.setTimeout(BUILD_MS);

const filled = (change: (inputs: Required<JobInputs>) => void): Book => {
  const inputs = JSON.parse(JSON.stringify(guestHouse)) as Required<JobInputs>;
  change(inputs);
  return recalculate(layOut(multiRoom, inputs));
};

const money = (amount: number | string): string =>
  Number(amount).toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });

const inGrid = (): Promise<boolean> =>
  until(
    () => page.evaluate(() => document.activeElement?.closest(".o-grid, .o-spreadsheet") !== null),
    (is) => is,
  );

describe("the quote", () => {
  withPage("has the reference's sums, and lines that add up to them; nothing is cut", async () => {
    const html = await printed();
    const pages = await onPaper(html);
    expect(pages).toHaveLength(1);
    // A4, 210 by 297 mm (ISO 216).
    expect([pages[0]!.width, pages[0]!.height].map(Math.round)).toEqual([595, 842]);
    const { net, tax, total: sum } = referencePrice(guestHouse as unknown as Job);
    const lines = linesOf(pages);
    expect(lines).toContain(`Price without tax ${money(net)}`);
    expect(lines).toContain(`Tax ${money(tax)}`);
    expect(lines).toContain(`Total ${money(sum)}`);
    const from = lines.indexOf("Price") + 1;
    const amounts = lines
      .slice(from, lines.indexOf(`Price without tax ${money(net)}`))
      .map((line) => Number(/ ([\d,]+\.\d\d)$/.exec(line)![1]!.replace(/,/g, "")));
    expect(amounts).toHaveLength(6);
    expect(amounts.reduce((all, one) => all + one, 0).toFixed(2)).toBe(net);
    expect(lines.at(-1)).toBe("Quote Page 1 of 1 D-24, revision 1, 2026-11-02");
    expectWithinPages(pages);
    expect(await cutTexts(html)).toEqual([]);
  });

  withPage("shows no cost and no margin; Price does, and is asked for with a caution", async () => {
    const book = await bookOnPage();
    const figures = ["price_cost", "price_margin_money", "price_direct"]
      .map((name) => namedValue(book, name))
      .filter((value) => typeof value === "number");
    expect(figures.length).toBeGreaterThan(1);
    const costs = figures.map(money);
    const html = await printed();
    for (const cost of costs) expect(html).not.toContain(cost);
    expect(linesOf(await onPaper(html)).join("\n")).not.toMatch(/cost|margin|overhead(?! lines)/i);

    await page.keyboard.press("Control+p");
    const caution = dialog().getByText(/costs and margin/);
    expect(await caution.count()).toBe(0);
    await dialog().getByRole("checkbox", { name: "Price" }).check();
    await caution.waitFor();
    await page.keyboard.press("Escape");
    const price = await printed(["Price"]);
    for (const cost of costs) expect(price).toContain(cost);
  });
});

// An outsider's cases pr-32, pr-08, pr-10 and pr-25: what is to be known of the customer's page is said before it is made.
describe("the customer's page of a job that is not ready", () => {
  const doubts = () => dialog().getByRole("list", { name: "Before it goes out" });
  const ask = async (): Promise<string> => {
    await page.keyboard.press("Control+p");
    await doubts().waitFor();
    return doubts().innerText();
  };
  const selected = () => page.locator(".o-named-range-selector input").inputValue();

  withPage(
    "checks fail: it is a draft and says so, without a word on checks; not so where it may be",
    async () => {
      // By the definition of the demonstration two things are wrong.
      expect(await ask()).toMatch(/marked as a draft: 2 checks need attention/);
      expect(await barriers(page, ".print-dialog")).toEqual([]);
      await dialog().getByRole("button", { name: "Go to Checks A1" }).click();
      await page.locator(".o-sheet.active", { hasText: "Checks" }).waitFor();
      const text = linesOf(await onPaper(await printed())).join("\n");
      expect(text).toContain("Draft: not to be sent");
      expect(text).not.toMatch(/checks?\b/i);

      await takePages();
      await ask();
      await dialog().getByLabel("No draft, although checks fail").check();
      const { pages } = await savedPdf(() => dialog().getByRole("button", { name: "Save PDF" }).click());
      expect(linesOf(pages).join("\n")).not.toMatch(/Draft|checks?\b/i);
    },
  );

  withPage("made again under the same revision with another sum, that is told, with both", async () => {
    const sum = (await page.getByText(/^Total /).innerText()).replace("Total ", "");
    await ask();
    await previewed(/^Page 1 of 1$/);
    await savedPdf(() => dialog().getByRole("button", { name: "Save PDF" }).click());
    await choose("Rooms", "H9");
    await type("44");
    await saved();
    const now = (await page.getByText(/^Total /).innerText()).replace("Total ", "");
    expect(now).not.toBe(sum);
    const said = await ask();
    expect(said).toContain(sum);
    expect(said).toContain(now);
    expect(said).toContain("Raise “Revision” on Site");
    await dialog()
      .getByRole("button", { name: /^Go to Site / })
      .first()
      .click();
    await until(selected, (name) => /^(B\d+|site_revision)$/.test(name));
    await page.keyboard.press("Control+z");
    await saved();
  });

  withPage(
    "without a customer, and empty: what is missing, and the way there; no list without a line",
    async () => {
      await open(
        filled(({ fields }) => delete (fields as Record<string, unknown>)[estimate.site.customer.name]),
      );
      expect(await ask()).toContain("Site: Customer is blank.");
      await dialog()
        .getByRole("listitem")
        .filter({ hasText: "Customer is blank" })
        .getByRole("button")
        .click();
      await until(selected, (name) => /^(B6|site_customer)$/.test(name));

      await open(recalculate(layOut(multiRoom)));
      expect(await ask()).toMatch(/There is no price to print yet\. Site comes first\./);
      await page.keyboard.press("Escape");
      const text = linesOf(await onPaper(await printed())).join("\n");
      expect(text).not.toMatch(/Tax at other rates|^Options and alternates$/m);
    },
  );
});

const withBoth = libreOffice().path === undefined ? test.skip : withPage;

const signsOf = (pages: Parameters<typeof wordsOf>[0]): string =>
  [...wordsOf(pages).join("")].sort().join("");

describe("against what LibreOffice prints of the same workbook's file", () => {
  withBoth("the demonstration's quote: the same words in the same rows, on as many pages", async () => {
    const ours = await onPaper(await printed());
    const theirs = await byLibreOffice(await bookOnPage(), ["Quote"]);
    expect(ours).toHaveLength(theirs.length);
    expect(linesOf(ours)).toEqual(linesOf(theirs));
    expect(linesOf(await byCommand(await bookOnPage(), ["Quote"]))).toEqual(linesOf(theirs));
  });

  withBoth("every other sheet of it, and the cards: the same words, on as many pages", async () => {
    await page.keyboard.press("Control+p");
    // The list is read at once and as it stands: on a busy machine the dialog opens before it.
    await dialog().locator("bdi").first().waitFor();
    const names = await dialog().locator("bdi").allInnerTexts();
    await page.keyboard.press("Escape");
    const sheets = names.filter((name) => !/^(D-24|Quote|About|Pictures|Cards)/.test(name));
    expect(sheets.length).toBeGreaterThan(15);
    const book = await bookOnPage();
    for (const [chosen, words] of [
      [sheets, sheets],
      [["Cards"], "cards"],
    ] as const) {
      const html = await printed(chosen);
      const ours = await onPaper(html);
      const theirs = await byLibreOffice(book, words);
      expect(ours).toHaveLength(theirs.length);
      // In what order wrapped heads and long rows are read from a page is pdftotext's guess.
      expect(wordsOf(ours).sort()).toEqual(wordsOf(theirs).sort());
      const commands = await byCommand(book, words);
      expect(commands).toHaveLength(theirs.length);
      // Where figures stand close to each other, a reader takes them for one word on one paper and for two on another.
      expect(signsOf(commands)).toBe(signsOf(theirs));
      expectWithinPages(ours);
      expect(await cutTexts(html)).toEqual([]);
    }
  });
});

describe("long and odd jobs", () => {
  withPage("240 outlets: the heads on every page, every outlet once, nothing beyond the paper", async () => {
    const book = recalculate(layOut(multiRoom, apartmentBlock));
    await open(book);
    for (const [paper, across] of [
      ["A4", 842],
      ["Letter", 792],
    ] as const) {
      const html = await printed(["Rooms"], paper);
      const pages = await onPaper(html, "rooms");
      expect(pages.length).toBeGreaterThan(2);
      expect(new Set(pages.map(({ width }) => Math.round(width)))).toEqual(new Set([across]));
      for (const { lines, words } of pages) {
        expect(lines.join("\n")).toMatch(/Floor Room Outlet Receiver/);
        expect(words.map(({ text }) => text)).toEqual(
          expect.arrayContaining(["Wall", "Verdict", "Strongest"]),
        );
      }
      const outlets = namedColumn(book, "rooms_outlet").filter((name) => name) as string[];
      expect(outlets).toHaveLength(240);
      const shown = pages.flatMap(({ words }) => words.map(({ text }) => text));
      for (const outlet of outlets) expect(shown.filter((word) => word === outlet)).toHaveLength(1);
      expectWithinPages(pages);
      expect(await cutTexts(html)).toEqual([]);
      const last = pages.at(-1)!;
      expect(last.lines.at(-1)).toMatch(new RegExp(`^Rooms Page ${pages.length} of ${pages.length} D-240`));
    }
  });

  const LONG = "Holiday homes at the far end of the old railway embankment, building of the northern wing";

  withPage("long names: whole on paper, and the page no wider for them", async () => {
    await open(
      filled(({ fields, blocks }) => {
        Object.assign(fields, { site_job: LONG, site_customer: LONG, site_quote: 'Q&A <24> "b"' });
        Object.assign(blocks.rooms![0]!, { room: LONG, note: LONG });
      }),
    );
    const html = await printed(["Quote", "Rooms"]);
    const pages = await onPaper(html, "long");
    expect(pages.map(({ width }) => Math.round(width))).toEqual([595, 842]);
    expectWithinPages(pages);
    expect(await cutTexts(html)).toEqual([]);
    const words = pages.map(({ lines }) => lines.join(" "));
    expect(words[0]!.split(LONG)).toHaveLength(3);
    expect(words[0]).toContain('Q&A <24> "b", revision 1');
    for (const word of LONG.split(" ")) expect(words[1]).toContain(word);
  });

  withPage("a job without prices prints no sum, and says so; a renamed job prints its new name", async () => {
    await open(
      filled(({ blocks }) => {
        for (const rows of Object.values(blocks))
          for (const row of rows as Record<string, unknown>[])
            for (const key of ["price", "cost", "rate"]) delete row[key];
      }),
    );
    await choose("Site", "A1");
    const { sheet, at } = placeOfName(await bookOnPage(), "site_job")!;
    await choose(sheet, at);
    await type("Mill, annexe");
    await page.getByText("Mill, annexe").first().waitFor();
    const html = await printed();
    const lines = linesOf(await onPaper(html, "bare"));
    expect(lines).toContain("Job Mill, annexe");
    expect(html).toContain("<title>D-24, revision 1, Mill, annexe</title>");
    expect(lines.join("\n")).toMatch(/^Draft: not to be sent Entries are missing or wrong: see Checks$/m);
    expect(lines.join("\n")).not.toMatch(/#(?:VALUE|N\/A|NAME|REF|DIV)|NaN|undefined/);
  });
});

describe("the dialog", () => {
  withPage(
    "Ctrl+P asks, a second one does not ask again, Esc leaves, Enter prints; the grid has the keys again",
    async () => {
      await takePages();
      await choose("Rooms", "C8");
      await page.keyboard.press("Control+p");
      await dialog().waitFor();
      // The grid library has printing of its own, of the grid as it stands.
      expect(await page.locator(".o-spreadsheet-print").count()).toBe(0);
      expect(await dialog().locator("bdi").nth(1).innerText()).toBe("Quote");
      const chosen = await boxes().evaluateAll((all) => all.map((box) => (box as HTMLInputElement).checked));
      expect(chosen.slice(0, 2)).toEqual([true, false]);
      expect(chosen.filter((one) => one)).toHaveLength(1);
      await page.keyboard.press("Control+p");
      expect(await page.locator("dialog").count()).toBe(1);
      await page.keyboard.press("Escape");
      await dialog().waitFor({ state: "detached" });
      await inGrid();
      expect(await page.evaluate(() => (window as Handed).rigsheetPages)).toBeUndefined();

      // Faster than any hand: what was left may not have come to its end.
      await until(async () => {
        await page.keyboard.press("Control+p");
        return dialog().isVisible();
      }, isTrue);
      await page.keyboard.press("Enter");
      await dialog().waitFor({ state: "detached" });
      await until(
        () => page.evaluate(() => (window as Handed).rigsheetPages ?? ""),
        (html) => html.includes("Terms and safety"),
      );
      await inGrid();
      expect(await page.locator(".o-named-range-selector input").inputValue()).toBe("C8");
    },
  );

  withPage("nothing chosen is not printed; the library's menu and the bar ask the same", async () => {
    await button("Print…").click();
    await dialog().waitFor();
    await boxes().first().uncheck();
    await printButton().click();
    expect(
      await boxes()
        .first()
        .evaluate((box) => (box as HTMLInputElement).validationMessage),
    ).toBe("Choose at least one sheet to print.");
    await page.keyboard.press("Escape");
    await page.locator(".o-topbar-menu", { hasText: "File" }).click();
    await page.locator(".o-menu .o-menu-item", { hasText: "Print" }).click();
    await dialog().waitFor();
    await page.keyboard.press("Escape");
  });

  withPage("the paper that was chosen last is offered first, though nothing was printed then", async () => {
    await page.evaluate(() => localStorage.removeItem("rigsheet.paper"));
    const shown = async (): Promise<string> => {
      await button("Print…").click();
      return dialog().getByLabel("Paper").locator("option:checked").innerText();
    };
    expect(await shown()).toBe("A4");
    await dialog().getByLabel("Paper").selectOption({ label: "Letter" });
    await page.keyboard.press("Escape");
    await dialog().waitFor({ state: "detached" });
    expect(await shown()).toBe("Letter");
    await page.keyboard.press("Escape");
    await page.evaluate(() => localStorage.removeItem("rigsheet.paper"));
  });

  withPage("has no barrier, and fits a window of 390 pixels", async () => {
    await page.setViewportSize({ width: 390, height: 700 });
    try {
      await page.keyboard.press("Control+p");
      await dialog().getByRole("checkbox", { name: "Price" }).check();
      expect(await barriers(page, "dialog")).toEqual([]);
      const { width, wide } = await dialog().evaluate((box) => ({
        width: box.getBoundingClientRect().width,
        wide: box.scrollWidth > box.clientWidth,
      }));
      expect(width).toBeLessThanOrEqual(390);
      expect(wide).toBe(false);
      // Without scrolling.
      const { y, height } = (await printButton().boundingBox())!;
      expect(y + height).toBeLessThan(700);
      await page.keyboard.press("Escape");
    } finally {
      await page.setViewportSize({ width: 1366, height: 768 });
    }
  });
});

/** A PNG of one pixel, half of it to be seen through: it is taken apart before it gets into a PDF. */
const TRANSPARENT = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
  "base64",
);

describe("as a PDF", () => {
  const saveButton = () => dialog().getByRole("button", { name: "Save PDF" });
  const wordsShown = (): Promise<string> =>
    preview()
      .locator("svg text")
      .evaluateAll((all) => all.map(({ textContent }) => textContent).join(" "));

  withPageAndPdf(
    "the quote by mouse: named after the job, shown before, and the command's own bytes",
    async () => {
      await button("Print…").click();
      await previewed(/^Page 1 of 1$/);
      const seen = await wordsShown();
      const { name, bytes, pages, at } = await savedPdf(() => saveButton().click());
      await dialog().waitFor({ state: "detached" });
      expect(name).toBe("D-24, revision 1, Guest house, 24 outlets (demonstration) - Quote.pdf");
      const { total: sum } = referencePrice(guestHouse as unknown as Job);
      expect(linesOf(pages)).toContain(`Total ${money(sum)}`);
      for (const word of wordsOf(pages)) expect(seen).toContain(word);
      await until(
        () => notice().innerText(),
        (text) => text === `Saved as ${name} where the browser puts its downloads.`,
      );
      expect(bytes.equals(await quoteByCommand(await bookOnPage(), at))).toBe(true);
    },
  );

  withPageAndPdf("the proposal by keyboard: its pages turn, and it is the command's own", async () => {
    await page.keyboard.press("Control+p");
    await dialog().getByRole("radio", { name: "Sheets and cards" }).focus();
    await page.keyboard.press("ArrowDown");
    await previewed(/^Page 1 of \d+$/);
    expect(await wordsShown()).toContain("Proposal");
    await page.keyboard.press("PageDown");
    await previewed(/^Page 2 of/);
    await preview().getByRole("button", { name: "Previous page" }).click();
    await previewed(/^Page 1 of/);
    await page.keyboard.press("PageUp");
    await previewed(/^Page 1 of/);
    await preview().getByRole("group").focus();
    await page.keyboard.press("End");
    const count = Number((await preview().locator(".preview-told").innerText()).split(" ").at(-1));
    await previewed(new RegExp(`^Page ${count} of ${count}$`));
    const last = await wordsShown();
    expect(await barriers(page, "dialog")).toEqual([]);
    await saveButton().focus();
    const { name, bytes, pages, at } = await savedPdf(() => page.keyboard.press("Enter"));
    expect(name).toBe("D-24, revision 1, Guest house, 24 outlets (demonstration) - proposal.pdf");
    expect(pages).toHaveLength(count);
    for (const word of wordsOf([pages.at(-1)!])) expect(last).toContain(word);
    const { total: sum } = referencePrice(guestHouse as unknown as Job);
    expect(linesOf(pages).join("\n")).toContain(money(sum));
    expect(linesOf(pages)).toContain("Warranty");
    expect(bytes.equals(await proposalByCommand(await bookOnPage(), at))).toBe(true);
  });

  withPage("the browser prints the proposal's very pages", async () => {
    await takePages();
    await page.keyboard.press("Control+p");
    await dialog().getByRole("radio", { name: "Proposal" }).check();
    await previewed(/^Page 1 of \d+$/);
    const count = Number((await preview().locator(".preview-told").innerText()).split(" ").at(-1));
    await printButton().click();
    await dialog().waitFor({ state: "detached" });
    const html = await until(
      () => page.evaluate(() => (window as Handed).rigsheetPages ?? ""),
      (pages) => pages.includes("<svg"),
    );
    const pages = await onPaper(`<!doctype html>${html}`, "proposal");
    expect(pages).toHaveLength(count);
    expect(pages.map(({ width, height }) => [width, height].map(Math.round))).toEqual(
      Array.from({ length: count }, () => [595, 842]),
    );
    expectWithinPages(pages);
  });

  withPageAndPdf(
    "a logo: refused in a sentence, kept for the next time, taken away; a part left out",
    async () => {
      await page.keyboard.press("Control+p");
      await dialog().getByRole("radio", { name: "Proposal" }).check();
      const logo = dialog().getByLabel(/^Logo: PNG or JPEG/);
      const give = (name: string, buffer: Uint8Array): Promise<void> =>
        logo.setInputFiles({ name, mimeType: "", buffer: Buffer.from(buffer) });
      const said = dialog().locator(".logo-said");
      for (const [name, bytes, sentence] of [
        ["sign.svg", Buffer.from("<svg xmlns='x'/>"), /^sign\.svg: this is an SVG, which is not taken/],
        ["cut.png", onePixel.slice(0, 40), /^cut\.png: the PNG file is damaged/],
        ["large.png", new Uint8Array(2_000_001), /^large\.png: a logo of 2001 kB is too large/],
      ] as const) {
        await give(name, bytes);
        await said.filter({ hasText: sentence }).waitFor();
      }
      await give("sign.png", TRANSPARENT);
      await dialog().getByRole("img", { name: "The logo: sign.png" }).waitFor();
      await previewed(/^Page 1 of/);
      await preview().locator("image").waitFor({ state: "attached" });
      await page.keyboard.press("Escape");
      await dialog().waitFor({ state: "detached" });
      await page.keyboard.press("Control+p");
      await dialog().getByRole("radio", { name: "Proposal" }).check();
      await dialog().getByRole("img", { name: "The logo: sign.png" }).waitFor();
      await dialog().getByRole("button", { name: "Remove the logo" }).click();
      await previewed(/^Page 1 of/);
      await until(
        () => preview().locator("image").count(),
        (count) => count === 0,
      );
      const warranty = dialog().getByRole("checkbox", { name: "Warranty" });
      expect(await warranty.isChecked()).toBe(true);
      await warranty.uncheck();
      await previewed(/^Page 1 of/);
      const { pages } = await savedPdf(() => saveButton().click());
      expect(linesOf(pages)).not.toContain("Warranty");
    },
  );

  withPage("what the type does not have is told by its cell, and a proposal of it is a draft", async () => {
    await open(filled(({ fields }) => Object.assign(fields, { site_customer: "山田 مرحبا" })));
    await page.keyboard.press("Control+p");
    await previewed(/^Page 1 of 1$/);
    await dialog()
      .getByText(/Quote![A-Z]+\d+ holds .*山田 مرحبا/)
      .waitFor();
    await dialog().getByRole("radio", { name: "Proposal" }).check();
    await dialog()
      .getByText(/“Customer” holds .*山田 مرحبا/)
      .waitFor();
    await previewed(/^Page 1 of/);
    expect(await wordsShown()).toContain("Draft: not to be sent");
    await page.keyboard.press("Escape");
  });

  withPage(
    "what needs a look is said before it is saved; a job without a price has no proposal",
    async () => {
      await open(filled(({ fields }) => Object.assign(fields, { site_customer: "" })));
      await page.keyboard.press("Control+p");
      await dialog().getByRole("radio", { name: "Proposal" }).check();
      await dialog()
        .getByText("“Customer” on Site is blank, and a proposal must say it. Fill it in.")
        .waitFor();
      await page.keyboard.press("Escape");
      await dialog().waitFor({ state: "detached" });
      await open(recalculate(layOut(multiRoom)));
      await page.keyboard.press("Control+p");
      await dialog().getByRole("radio", { name: "Proposal" }).check();
      await dialog()
        .getByText(/^The price can't be relied on/)
        .first()
        .waitFor();
      await saveButton().click();
      expect(await dialog().count()).toBe(1);
      await page.keyboard.press("Escape");
    },
  );

  withPage(
    "a script that does not come: a sentence; the browser still prints, and the next try loads it",
    async () => {
      await page.route("**/pdf.js", (route) => route.fulfill({ status: 404, body: "gone" }));
      await page.reload();
      await saved();
      await page.keyboard.press("Control+p");
      await previewed(/The part of Rigsheet that writes PDF .* can't be loaded/);
      await saveButton().click();
      expect(await dialog().count()).toBe(1);
      await page.keyboard.press("Escape");
      const html = await printed();
      expect(html).toContain("Terms and safety");
      await page.unroute("**/pdf.js");
      await page.keyboard.press("Control+p");
      await previewed(/^Page 1 of 1$/);
      await page.keyboard.press("Escape");
      forget("Failed to load resource");
      forget("Refused to execute script");
    },
  );

  withPage("pages that are being made can be stopped", async () => {
    await page.keyboard.press("Control+p");
    await boxes().first().waitFor();
    for (const box of await boxes().all()) await box.check();
    await preview().getByRole("button", { name: "Stop" }).click();
    await previewed(/^Stopped\./);
    await boxes().nth(1).uncheck();
    await previewed(/^Page 1 of \d\d$/);
    await page.keyboard.press("Escape");
  });
});

describe("what goes wrong", () => {
  withPage("a browser that prints nothing, and one that refuses: a sentence and a way on", async () => {
    const refused = /printed nothing.*Save the workbook as \.xlsx/;
    for (const how of ["silent", "throws", "missing"]) {
      await page.evaluate((kind) => ((window as { refuses?: string }).refuses = kind), how);
      await page.addInitScript(() => {
        const { refuses } = window.top as { refuses?: string };
        if (refuses === undefined) return;
        if (refuses === "missing") Object.assign(window, { print: undefined });
        else
          window.print = () => {
            if (refuses === "throws") throw new DOMException("Printing is off.", "NotAllowedError");
          };
      });
      await page.keyboard.press("Control+p");
      await printButton().click();
      await until(
        () => notice().innerText(),
        (text) => refused.test(text),
      );
      await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
    }
    await page.evaluate(() => delete (window as { refuses?: string }).refuses);
  });

  withPage("a workbook with nothing on it: a sentence, and no dialog", async () => {
    await open(bookOf(emptySheet("Empty")));
    await page.keyboard.press("Control+p");
    await until(
      () => notice().innerText(),
      (text) =>
        text.startsWith("There is nothing to print: every sheet of this workbook is empty or hidden."),
    );
    expect(await page.locator("dialog").count()).toBe(0);
  });

  withPage("what is being typed is told of: it is not printed", async () => {
    await choose("Site", "B6");
    await page.keyboard.type("not yet");
    await page.keyboard.press("Control+p");
    await dialog()
      .getByText("What is being typed into Site B6 is not entered yet, and is not printed.")
      .waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  });

  withPage("the server stopped and the network denied: what was typed since prints", async () => {
    const startAgain = await crash();
    await page.context().setOffline(true);
    try {
      const { sheet, at } = placeOfName(layOut(multiRoom, guestHouse), "site_customer")!;
      await choose(sheet, at);
      await type("Typed without a server");
      const html = await printed();
      expect(html).toContain("Typed without a server");
    } finally {
      await page.context().setOffline(false);
      await startAgain();
    }
    await saved();
    forget("Failed to load resource");
  });
});
