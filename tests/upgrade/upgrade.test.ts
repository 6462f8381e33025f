/** Older workbooks that people have worked in, and that another program has saved, as workbooks of today's template. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { inputsIn } from "../../src/review/inputsIn";
import { namedCells } from "../../src/review/namedCells";
import type { Book, BookCell } from "../../src/workbooks/book";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { templateOf, templates } from "../../src/workbooks/templates";
import { upgrade, type Upgrade } from "../../src/upgrade/upgrade";
import { asksForALook, inWords } from "../../src/upgrade/words";

const LONG_MS = 120_000;
const folder = path.join(__dirname, "../fixtures/upgrade");
const read = async (name: string): Promise<Book> => readXlsx(readFileSync(path.join(folder, `${name}.xlsx`)));

function done(book: Book): Upgrade {
  const made = upgrade(book, recalculate);
  if ("sentence" in made) throw new Error(made.sentence);
  return made;
}

const said = (book: Book): string => {
  const made = upgrade(book, recalculate);
  return "sentence" in made ? made.sentence : "upgraded";
};

/** Puts something into a name's cell, counted from its top. */
function set(book: Book, name: string, index: number, content: BookCell): string {
  const { sheet, cell } = namedCells(book, name)[index]!.place;
  const { cells, results } = book.sheets.find((one) => one.name === sheet)!;
  const { look } = cells[cell] ?? {};
  cells[cell] = { ...(look !== undefined && { look }), ...content };
  delete results[cell];
  return `${sheet} ${cell}`;
}

/** Every filled input that both have, by its name and its place in it, as the old one and as the new one holds it. */
function pairs(old: Book, { book, template }: Upgrade): [where: string, before: unknown, after: unknown][] {
  return inputsIn(book, templateOf(template)!.definition).flatMap(({ name }) => {
    const before = namedColumn(old, name);
    const after = namedColumn(book, name);
    return before.flatMap((value, index): [string, unknown, unknown][] =>
      value === undefined || value === "" ? [] : [[`${name} ${index}`, value, after[index]]],
    );
  });
}

const others = (all: readonly [string, unknown, unknown][]): string[] =>
  // A name is text now, also where the older workbook held it as a number; an answer of the list is worded anew.
  all
    .filter(
      ([, before, after]) => (before === "not here" ? "not applicable" : String(before)) !== String(after),
    )
    .map(([where]) => where);

describe("only opened and saved by another program", () => {
  test.each(["single-drop-88f41e58-plain", "alignment-card-88f41e58-plain", "quote-review-fd2a551e-plain"])(
    "%s: every input has its place, and nothing is left behind",
    async (name) => {
      const old = await read(name);
      const made = done(old);
      expect(made).toMatchObject({ from: "1", to: "3", notCarried: [] });
      const inputs = pairs(old, made);
      expect(inputs.length).toBeGreaterThan(10);
      expect(others(inputs)).toEqual([]);
    },
    LONG_MS,
  );

  test("the oldest estimate: all inputs, the file's own price to the cent, what is new begins with usual figures", async () => {
    const old = await read("multi-room-da9a13aa-plain");
    const made = done(old);
    expect(made).toMatchObject({ from: "1", to: templates[0]!.definition.version, notCarried: [] });
    const inputs = pairs(old, made);
    expect(inputs.length).toBeGreaterThan(400);
    expect(others(inputs)).toEqual([]);
    // As that workbook's file shows it.
    expect(namedValue(old, "quote_total")).toBe(6799.57);
    expect(made.figures.knownBy[0]).toMatchObject({
      label: "Total",
      before: 6799.57,
      after: 6799.57,
      difference: 0,
    });
    expect(made.begun).toContain("Site, Tax is on");
    expect(namedValue(made.book, "site_tax_on")).toBe("materials and labour");
    expect(inWords(made).figures[0]).toMatch(/^Total: 6799\.57 .*, as before$/);
  });
});

test(
  "rows far beyond the prepared ones, one at the top, and parts of their own go along",
  async () => {
    const old = await read("multi-room-88f41e58-busy");
    const made = done(old);
    expect(made.notCarried).toEqual([]);
    expect(others(pairs(old, made))).toEqual([]);
    const outlets = namedColumn(made.book, "rooms_outlet").filter(
      (value) => value !== undefined && value !== "",
    );
    // 24 of the demonstration, 30 below and 1 above.
    expect(outlets).toHaveLength(55);
    expect([outlets[0], outlets.at(-1)]).toEqual(["T-1", "X-30"]);
    expect(namedColumn(made.book, "rooms_note")).toContain('ladder 9 m; <ask> & "call" first');
    const cables = namedColumn(made.book, "cables_name");
    expect(namedColumn(made.book, "cables_price")[cables.indexOf("own cable, red drum")]).toBe(1.234);
    expect(namedValue(made.book, "site_margin")).toBe(0.21);
  },
  LONG_MS,
);

describe.each([
  ["multi-room-88f41e58-odd", "1"],
  ["multi-room-9b2a84cf-odd", "2"],
])("%s", (name, version) => {
  test(
    "what has no place is listed, and the template's own formulas and words are not",
    async () => {
      const old = await read(name);
      const made = done(old);
      expect(made.from).toBe(version);
      const listed = made.notCarried.map(({ sheet, value }) => `${sheet}: ${value}`);
      const planted = [
        "Site: 20",
        "Rooms: =12+3.5",
        "Rooms: “18,5”",
        "Trunks: the sheet's name",
        "Rooms: “below the block”",
        "Rooms: columns F",
        "Rooms: rows 9",
        "Price: =price_direct*0.1+5",
        "My sums: 2 filled cells",
        "My sums: the name my_reserve for B1",
      ];
      // The number far to the right fell on a head of the later template, which is wider.
      expect(listed.filter((one) => one !== "Rooms: 4711").sort()).toEqual([...planted].sort());
      // Receivers that feed were rows of supplies from version 2 on; what became of them is told.
      const told = /^(?:supplies_\w+ 1|heads_supply [123])$/;
      const missing = others(pairs(old, made));
      expect(missing.filter((one) => !told.test(one))).toEqual([
        "site_tax 0",
        expect.stringMatching(/^rooms_run /),
      ]);
      expect(made.elsewhere.filter(({ value }) => value === "“receiver, 13 V”")).toHaveLength(
        version === "1" ? 0 : 4,
      );
      expect(namedColumn(made.book, "rooms_run")).toContain(15.5);
      expect(asksForALook(made)).toBe(true);
    },
    LONG_MS,
  );
});

describe("one thing at a time, in an estimate of version 1", () => {
  const fresh = (): Promise<Book> => read("multi-room-88f41e58-odd");
  const reasonFor = (made: Upgrade, place: string): string | undefined =>
    made.notCarried.find(({ sheet, cell }) => `${sheet} ${cell}` === place)?.why;

  test(
    "a value over a calculated cell, of one that is no more too, a truth value, a note",
    async () => {
      const old = await fresh();
      const over = set(old, "work_sum", 2, { value: 99 });
      const truth = set(old, "rooms_run", 2, { value: true });
      const gone = set(old, "rooms_longer", 2, { value: 0.25 });
      set(old, "rooms_room", 2, { value: "Hall", note: "ask the owner" });
      const stray = set(old, "rooms_verdict", 2, { note: "looks odd" });
      const made = done(old);
      expect(reasonFor(made, over)).toMatch(/typed over a calculated cell/);
      expect(reasonFor(made, truth)).toMatch(/refuses it. It takes: a number/);
      expect(reasonFor(made, gone)).toMatch(
        /typed over a calculated cell, which today's template has no more/,
      );
      expect(reasonFor(made, stray)).toMatch(/note of your own on a cell that is no input/);
      const { sheet, cell } = namedCells(made.book, "rooms_room")[2]!.place;
      expect(made.book.sheets.find((one) => one.name === sheet)!.cells[cell]).toMatchObject({
        value: "Hall",
        note: "ask the owner",
      });
    },
    LONG_MS,
  );

  test(
    "a total that the inputs no longer come to, and one that moves, are told",
    async () => {
      const old = await read("multi-room-da9a13aa-plain");
      set(old, "site_margin", 0, { value: 0.5 });
      const made = done(old);
      expect(made.figures.price).toBe("out of date");
      expect(made.figures.knownBy[0]).toMatchObject({ before: 6799.57 });
      expect(made.figures.knownBy[0]!.difference).toBeGreaterThan(1000);
      expect(inWords(made).figures[0]).toMatch(/^Total: 6799\.57 -> \d+\.\d\d .*difference \+\d/);
      expect(made.figures.moved.map(({ name }) => name)).toContain("price_profit");
    },
    LONG_MS,
  );

  test("without anything to compute with, the inputs go along and no figure after is made up", async () => {
    const made = upgrade(await read("multi-room-da9a13aa-plain")) as Upgrade;
    expect(made.carried).toBeGreaterThan(400);
    expect(made.figures.knownBy[0]).toMatchObject({ before: 6799.57 });
    expect(made.figures.knownBy[0]).not.toHaveProperty("after");
    expect(made.figures.moved).toEqual([]);
  });
});

describe("nothing to upgrade is a sentence", () => {
  const today = templateOf("single-drop")!.empty();
  test.each([
    ["today's", today, /of version 3 of .* already, which is today's/],
    [
      "a newer one",
      { ...today, templateVersion: "9" },
      /version 9 .*this Rigsheet is older and knows version 3\. Nothing was changed/,
    ],
    ["not ours", { ...today, template: "", names: [], sheets: [] }, /not made from one of our templates/],
    ["of a template that is not known", { ...today, template: "boat" }, /“boat”, which is not known here/],
    [
      "without its names",
      { ...today, templateVersion: "1", names: [] },
      /names by which its inputs are found are gone/,
    ],
  ])("%s", (_, book, sentence) => {
    expect(said(book)).toMatch(sentence);
  });
});
