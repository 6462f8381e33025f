/** What goes wrong on a sheet is said in the sheet's words, wherever it is read; only `calc` has an argument's name. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { allFunctions } from "../../src/functions/all";
import { wordsFor } from "../../src/hosts/desk/page/cellLine";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { quietly } from "../../src/hosts/headless/loadLibrary";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { workOf } from "../../src/pane/workOf";
import { review } from "../../src/review/review";
import { address, parseAddress, parseRange } from "../../src/formula/address";
import { isBookError, type Book, type BookResult } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue, placeOfName } from "../../src/workbooks/named";
import { templates } from "../../src/workbooks/templates";
import { DeskInNode } from "../hosts/desk/openDesk";
import { runCommand } from "../support/fakeConsole";

type Row = Record<string, number | string>;
interface Job {
  fields: Row;
  blocks: Record<string, Row[]>;
}
const laidOut = (change: (job: Job) => void): Book => {
  const job = JSON.parse(JSON.stringify(guestHouse)) as Job;
  change(job);
  return layOut(multiRoom, job as JobInputs);
};
const sentenceOf = (result: BookResult | undefined): string =>
  isBookError(result) ? (result.message ?? result.error) : `no error: ${String(result)}`;
const sentences = (book: Book, name: string): string[] =>
  namedColumn(book, name).filter(isBookError).map(sentenceOf);
/** What is said in a row whose trouble is no error in a cell. */
const rowSentences = (book: Book): string[] =>
  ["rooms_check_trouble", "branches_check_trouble", "heads_check_trouble"]
    .flatMap((name) => namedColumn(book, name))
    .filter((said): said is string => typeof said === "string" && said !== "");
const everySentence = (book: Book): string[] => [
  ...new Set(
    book.sheets.flatMap(({ results }) =>
      Object.values(results).flatMap((result) =>
        isBookError(result) && result.message ? [result.message] : [],
      ),
    ),
  ),
];

const ARGUMENTS = [...new Set(allFunctions.flatMap(({ parameters }) => parameters.map(({ name }) => name)))];
/** An argument's name where a sentence speaks of it. */
const SPOKEN_OF = new RegExp(
  `(?:^|[.:] |above |of |in )(?:${ARGUMENTS.join("|")})(?:,|:| is | are | has | holds | lists | which )|(?:Row|Run|Entry) \\d+ of`,
);

/** The second head unit's lead is longer than any reel. */
const longLead = (): Book => laidOut(({ blocks }) => (blocks.heads![1]!.length = 400));
const HEAD = String(guestHouse.blocks!.heads![1]!.id);
const LONG_LEAD = new RegExp(`^Length of ${HEAD} \\(Head units F\\d+\\) is 400, cut at [\\d.]+ with slack`);

describe("a run that no reel holds, from a list of another sheet", () => {
  const book = recalculate(longLead());

  test("has the sheet, the column, the row's name and the cell; totals hand it on as it is", () => {
    const [said] = sentences(book, "cables_bought_quantity");
    expect(said).toMatch(LONG_LEAD);
    expect(sentenceOf(namedValue(book, "price_total"))).toBe(said);
    // The customer's page shows no error.
    expect(namedValue(book, "quote_total")).toBe("open");
  });

  test("on the desk: the line of the cell; it follows the row's name", () => {
    const desk = new DeskInNode(longLead());
    const placeOf = (name: string, below = 0) => {
      const { sheet, at } = placeOfName(book, name)!;
      const { row, column: col } = parseAddress(at)!;
      return { sheetId: desk.model.getters.getSheetIdByName(sheet)!, row: row + below, col };
    };
    const line = (): string => wordsFor(desk.model, placeOf("price_total")).text;
    expect(wordsFor(desk.model, placeOf("price_total")).kind).toBe("error");
    expect(line()).toMatch(LONG_LEAD);
    quietly(() => desk.model.dispatch("UPDATE_CELL", { ...placeOf("heads_id", 1), content: "Attic" }));
    expect(line()).toMatch(/^Length of Attic \(Head units F\d+\) is 400/);
  });

  test("review names the cause at its cell, in its own words, and folds the sentences that follow", () => {
    const message = review(book, recalculate);
    expect(message).toContainEqual(
      expect.objectContaining({
        rule: "run longer than its reel",
        place: { sheet: "Head units", cell: "F9" },
        message: expect.stringMatching(new RegExp(`^${HEAD}: 400 of trunk is cut at [\\d.]+ with slack`)),
      }),
    );
    expect(message.filter((one) => SPOKEN_OF.test(one.message))).toEqual([]);
  });

  test("review, from the file and from a host that hands out codes without sentences", () => {
    // A sentence that no other rule stands in for.
    const late = recalculate(laidOut(({ fields }) => void (fields.site_date = 60_000)));
    const said = /Date of the quote \(Site B\d+\) is 2064-04-08; the magnetic model/;
    expect(review(late, recalculate).some(({ message }) => said.test(message))).toBe(true);
    const bare = JSON.parse(JSON.stringify(late)) as Book;
    for (const { results } of bare.sheets)
      for (const [at, result] of Object.entries(results))
        if (isBookError(result)) results[at] = { error: result.error };
    expect(review(bare).some(({ message }) => said.test(message))).toBe(true);
  });

  test("review says what a row says of itself", () => {
    const clock = recalculate(laidOut(({ blocks }) => void (blocks.rooms![0]!.receiver = "wall clock")));
    expect(review(clock, recalculate)).toContainEqual(
      expect.objectContaining({
        rule: "row that cannot be worked out",
        message: expect.stringMatching(/^G-01: "G-01" names the receiver "wall clock", which has no row\./),
      }),
    );
  });

  test("price", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "words-"));
    try {
      const file = path.join(folder, "job.xlsx");
      const bad = laidOut(({ blocks }) => {
        blocks.rooms![0]!.run = -3;
        blocks.rooms![1]!.receiver = "wall clock";
      });
      writeFileSync(file, await writeXlsx(bad));
      const { out } = await runCommand(["price", file]);
      const outlet = String(guestHouse.blocks!.rooms![0]!.outlet);
      expect(out).toMatch(new RegExp(`Run of ${outlet} \\(Rooms H\\d+\\) is -3; it must be from 0`));
      expect(out).not.toMatch(/\b(?:length|receivers) is (?:-3|")|of lengths/);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test("calc, which has no sheet, names the argument", async () => {
    const { out } = await runCommand(["calc", 'RIG.REELS({60;400},100,0,0,{"a";"a"},"a")']);
    expect(out).toContain("Run 2 of lengths is 400");
  });
});

describe("the pane's working of a cell", () => {
  test("says what is wrong in the sheet's words", () => {
    const book = recalculate(laidOut(({ blocks }) => (blocks.slots![1]!.slot = "somewhere")));
    const { sheet, range } = book.names.find(({ name }) => name === "sight_angles")!;
    const zone = parseRange(range)!;
    const row = namedColumn(book, "sight_angles").findIndex(isBookError);
    const work = workOf(book, sheet, address(zone.top + row, zone.left));
    expect(typeof work === "string" ? work : work.why).toMatch(
      /^Orbital slot \(Site A\d+\) is "somewhere", which is not an orbital slot/,
    );
  });
});

describe("fields, whole columns and tables", () => {
  test.each<[string, (job: Job) => void, RegExp]>([
    [
      "a field",
      ({ fields }) => (fields.site_slack = -1),
      /^Slack added to each run \(Site B\d+\) is -1; it must be/,
    ],
    [
      "two fields",
      ({ fields }) => (fields.site_level_low = 90),
      /^Minimum level at an outlet \(Site B\d+\) is 90 dBµV, above Maximum level at an outlet \(Site B\d+\), which is 77/,
    ],
    [
      "a choice",
      ({ fields }) => (fields.site_rounding = "up"),
      /^Rounding of a tie \(Site B\d+\) is "up"; it must be one of/,
    ],
    [
      "a date",
      ({ fields }) => (fields.site_date = 60_000),
      /^Date of the quote \(Site B\d+\) is 2064-04-08; the magnetic model/,
    ],
    [
      "a reel of nothing",
      ({ blocks }) => (blocks.cables![0]!.reel = 0),
      /^Reel[^()]* of [^()]+ \(Parts [A-Z]+\d+\) is 0; it must be more than 0/,
    ],
    [
      "a rate of words",
      ({ fields }) => (fields.site_margin = 1),
      /^Margin \(Site B\d+\) is 1; it must be from 0 to less than 1/,
    ],
  ])("%s", (_, change, sentence) => {
    const said = everySentence(recalculate(laidOut(change)));
    expect(said.filter((one) => sentence.test(one)).length).toBeGreaterThan(0);
    expect(said.filter((one) => SPOKEN_OF.test(one))).toEqual([]);
  });
});

describe("rows of the distribution say what is wrong with them, by name and column", () => {
  test.each<[string, (job: Job) => void, RegExp]>([
    [
      "a receiver",
      ({ blocks }) => (blocks.rooms![0]!.receiver = "wall clock"),
      /^"G-01" names the receiver "wall clock", which has no row\. Known are .*"receiver"\. Check the spelling, or add its row\.$/,
    ],
    [
      "a cable's name",
      ({ blocks }) => (blocks.rooms![0]!.cable = "string"),
      /^"G-01": There is no cable "string"\. Known are "indoor drop"/,
    ],
    ["a blank length", ({ blocks }) => delete blocks.rooms![0]!.run, /^"G-01": run is missing\./],
    [
      "a negative length",
      ({ blocks }) => (blocks.branches![1]!.length = -9),
      /^"G1": length is -9; it must be from 0/,
    ],
    [
      "a kind of head unit",
      ({ blocks }) => (blocks.heads![2]!.type = "mystery"),
      /^"H3" names the kind of head unit "mystery", which has no row\./,
    ],
  ])("%s", (_, change, sentence) => {
    expect(rowSentences(recalculate(laidOut(change))).filter((one) => sentence.test(one))).toHaveLength(1);
  });
});

describe.each(templates.map((template) => [template.id, template] as const))("%s", (_, template) => {
  const BAD: readonly (number | string | undefined)[] = ["no", -1e12, 1e12, undefined];

  test("whatever is typed into its inputs, no sentence names an argument", () => {
    const seen = new Set<string>();
    for (const bad of BAD) {
      // One sheet at a time, or the first fault would hide the others.
      for (const { name } of template.definition.sheets) {
        const book = template.demonstration();
        let changed = 0;
        const sheet = book.sheets.find((one) => one.name === name)!;
        for (const { range, rule } of sheet.validations) {
          if (rule.kind === "text" && bad !== undefined) continue;
          const { top, left, bottom } = parseRange(range)!;
          // A row of its own for each column, so that each is heard.
          const row = bottom > top ? top + 1 + (changed % 3) : top;
          const at = `${left >= 26 ? String.fromCharCode(64 + Math.floor(left / 26)) : ""}${String.fromCharCode(65 + (left % 26))}${row + 1}`;
          const cell = sheet.cells[at];
          if (!cell || cell.formula !== undefined || cell.value === undefined) continue;
          if (bad === undefined) delete cell.value;
          else cell.value = bad;
          changed++;
        }
        if (changed > 0) for (const one of everySentence(recalculate(book))) seen.add(one);
      }
    }
    expect([...seen].filter((one) => SPOKEN_OF.test(one))).toEqual([]);
    // These two ask our functions for next to nothing.
    if (!["quote-review", "standards"].includes(template.id)) expect(seen.size).toBeGreaterThan(5);
  });
});
