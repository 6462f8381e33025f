/**
 * What a price list writes into a workbook's rows, and what the workbook keeps of how lists are read. Small invented
 * workbooks; the rows are worked out by hand. `toStrictEqual`, so that a cell that stays blank is absent.
 */
import type { JobInputs } from "../../../src/workbooks/definition";
import type { ComparedLine, Comparison, Offer } from "../../../src/workbooks/prices/compareOffers";
import type { ListedPrice, PriceAnswers } from "../../../src/workbooks/prices/list";
import {
  isTaken,
  planPrices,
  type NewPlace,
  type PriceChoices,
  type PriceMerge,
  type PricePlan,
} from "../../../src/workbooks/prices/planPrices";
import {
  ON_PARTS,
  PART_LISTS,
  priceBook,
  supplierIn,
  supplierNames,
  type PriceBook,
} from "../../../src/workbooks/prices/priceBook";
import { pricesOf } from "../../../src/workbooks/prices/pricesOf";
import { rememberedAnswers, rememberedText } from "../../../src/workbooks/prices/remembered";
import { takesPrices } from "../../../src/workbooks/prices/takesPrices";
import type { PriceColumn } from "../../../src/workbooks/prices/priceColumns";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { standardsWorkbook } from "../../../src/workbooks/standards/definition";
import { tableOf, TODAY, without } from "./typedLists";

type Row = Readonly<Record<string, number | string>>;
const UNTIL = TODAY + 365;
const bookOf = (
  blocks: Readonly<Record<string, readonly Row[]>>,
  fields: Row = {},
  hasOffers = true,
): PriceBook =>
  priceBook(
    {
      fields: { site_currency: "EUR", standards_edition: 3, standards_date: TODAY, ...fields },
      blocks: blocks as JobInputs["blocks"] & object,
    },
    hasOffers,
    TODAY,
  );

describe("what a workbook keeps of prices", () => {
  test("its terms", () => {
    expect(bookOf({})).toMatchObject({
      currency: "EUR",
      lengths: "m",
      date: TODAY,
      edition: 3,
      hasOffers: true,
    });
    expect(bookOf({}, { site_unit: "ft", standards_date: 5 })).toMatchObject({ lengths: "ft", date: 5 });
    const bare = priceBook({}, true, TODAY);
    expect(bare).toStrictEqual({
      inputs: {},
      hasOffers: true,
      lengths: "m",
      date: TODAY,
      parts: [],
      offers: [],
    });
    expect(priceBook({ fields: { site_currency: "  " } }, true, TODAY)).not.toHaveProperty("currency");
    expect(priceBook({ fields: { site_currency: " GBP " } }, true, TODAY).currency).toBe("GBP");
  });

  test("its parts: for how many units the price of each is", () => {
    const all = { supplier: "Alpha", article: "K-1", price: 40, priced: 1, until: 2 };
    const { parts } = bookOf({
      cables: [{ name: "drop", reel: 100, ...all }, {}, { name: "  " }, { name: "trunk" }],
      fittings: [
        { name: " plug ", pack: 50, supplier: " " },
        { name: "clip", pack: 0 },
      ],
      plates: [{ name: "outlet", pack: 7, reel: 8, price: "dear" }],
    });
    expect(parts).toStrictEqual([
      { list: "cables", row: 0, name: "drop", amount: 100, ...all },
      { list: "cables", row: 3, name: "trunk", amount: 1 },
      { list: "plates", row: 0, name: "outlet", amount: 1 },
      { list: "fittings", row: 0, name: "plug", amount: 50 },
      { list: "fittings", row: 1, name: "clip", amount: 1 },
    ]);
    expect(PART_LISTS).toContain("resistors");
  });

  test("its offers: the price of one is the pack's divided, and what stands on Parts alone is one too", () => {
    const { offers } = bookOf({
      cables: [
        { name: "drop", reel: 100, supplier: "Alpha", article: "K-1", price: 40, priced: 1, until: 2 },
        { name: "trunk", reel: 150, supplier: "Beta" },
        { name: "thin" },
      ],
      fittings: [{ name: "plug", pack: 1, supplier: "Alpha", price: 3 }],
      offers: [
        {
          part: "drop",
          supplier: "beta",
          words: "a drop",
          article: "B-1",
          each: 9,
          unit: "m",
          pack: 250,
          pack_price: 100,
          currency: "GBP",
          priced: 3,
          until: 4,
          pinned: "yes",
        },
        { part: "" },
        { part: "DROP", supplier: " Gamma ", each: 0.5, pinned: "no" },
        { part: "trunk", supplier: "BETA", pack_price: 7 },
      ],
    });
    const blank = { article: "", description: "", unit: "", currency: "EUR", pinned: false };
    expect(offers).toStrictEqual([
      {
        row: 0,
        part: "drop",
        supplier: "beta",
        article: "B-1",
        description: "a drop",
        unit: "m",
        pack: 250,
        perUnit: 0.4,
        perPack: 100,
        currency: "GBP",
        priced: 3,
        until: 4,
        pinned: true,
      },
      { ...blank, row: 2, part: "DROP", supplier: "Gamma", perUnit: 0.5 },
      { ...blank, row: 3, part: "trunk", supplier: "BETA", perUnit: 7, perPack: 7 },
      {
        ...blank,
        row: ON_PARTS,
        part: "drop",
        supplier: "Alpha",
        article: "K-1",
        unit: "m",
        pack: 100,
        perUnit: 0.4,
        perPack: 40,
        priced: 1,
        until: 2,
      },
      { ...blank, row: ON_PARTS, part: "plug", supplier: "Alpha", unit: "piece", perUnit: 3, perPack: 3 },
    ]);
    const feet = bookOf({ cables: [{ name: "drop", supplier: "Alpha" }] }, { site_unit: "ft" });
    expect(feet.offers[0]!.unit).toBe("ft");
  });

  test("a job has no offers but its parts", () => {
    const job = bookOf(
      { cables: [{ name: "drop", supplier: "A" }], offers: [{ part: "drop", supplier: "B" }] },
      {},
      false,
    );
    expect(job.offers.map(({ supplier }) => supplier)).toEqual(["A"]);
  });

  const SUPPLIERS = bookOf({
    suppliers: [
      { name: "Alpha", currency: " GBP ", columns: "unit = U" },
      {},
      { name: "Beta", contact: "x" },
    ],
    cables: [{ name: "drop", supplier: "alpha" }, { name: "trunk", supplier: "Gamma" }, { name: "thin" }],
  });
  test("its suppliers, each once", () => {
    expect(supplierIn(SUPPLIERS, " ALPHA ")).toStrictEqual({ row: 0, currency: "GBP", columns: "unit = U" });
    expect(supplierIn(SUPPLIERS, "beta")).toStrictEqual({ row: 2 });
    expect(supplierIn(SUPPLIERS, "Gamma")).toBeUndefined();
    expect(supplierIn(bookOf({}), "Gamma")).toBeUndefined();
    expect(supplierNames(SUPPLIERS).map((name) => name.toLowerCase())).toEqual(["alpha", "beta", "gamma"]);
    expect(supplierNames(bookOf({}))).toEqual([]);
  });

  test("which workbooks take a list", () => {
    expect(takesPrices(standardsWorkbook.id)).toEqual({ definition: standardsWorkbook, hasOffers: true });
    expect(takesPrices(multiRoom.id)).toEqual({ definition: multiRoom, hasOffers: false });
    expect(takesPrices("another")).toBeUndefined();
    expect(takesPrices(undefined)).toBeUndefined();
  });
});

const listed = (more: Partial<ListedPrice> = {}): ListedPrice => ({
  line: 2,
  article: "K-1",
  description: "a drop",
  unit: "m",
  pack: 100,
  perUnit: 0.4,
  perPack: 40,
  currency: "EUR",
  doubts: [],
  ...more,
});
const CHOICES: PriceChoices = {
  taken: new Map(),
  placed: new Map(),
  pinned: new Set(),
  ended: new Set(),
  until: UNTIL,
};
const MERGE: PriceMerge = { supplier: "Alpha", file: "a.csv", today: TODAY, columns: "article number = A" };
const NONE: Comparison = { lines: [], gone: [], ended: [] };

const lineOf = (
  price: ListedPrice,
  offers: readonly Offer[] = [],
  more: Partial<ComparedLine> = {},
): ComparedLine => ({
  listed: price,
  kind: offers.length > 0 ? "changed" : "new",
  offers,
  taken: true,
  ...more,
});
/** One line into the place. */
const placed = (
  book: PriceBook,
  price: ListedPrice,
  place: NewPlace,
  choices: Partial<PriceChoices> = {},
  merge: Partial<PriceMerge> = {},
): PricePlan =>
  planPrices(
    book,
    { ...NONE, lines: [lineOf(price)] },
    { ...CHOICES, placed: new Map([[price.line, place]]), ...choices },
    { ...MERGE, ...merge },
  );
/** The lines over the offers that the book has of Alpha. */
const updated = (
  book: PriceBook,
  price: ListedPrice,
  choices: Partial<PriceChoices> = {},
  merge: Partial<PriceMerge> = {},
): PricePlan =>
  planPrices(
    book,
    {
      ...NONE,
      lines: [
        lineOf(
          price,
          book.offers.filter(({ supplier }) => supplier === "Alpha"),
        ),
      ],
    },
    { ...CHOICES, ...choices },
    { ...MERGE, ...merge },
  );
const rows = ({ inputs }: PricePlan, name: string): readonly Row[] => inputs.blocks?.[name] ?? [];

const DROP = { name: "drop", reel: 100 };

describe("a line that becomes an offer", () => {
  const PLAIN = { part: "drop", supplier: "Alpha", unit: "m", priced: TODAY, until: UNTIL };
  test("all that the line says", () => {
    const plan = placed(bookOf({ cables: [DROP] }), listed({ from: 7, until: 8 }), { part: "drop" });
    expect(rows(plan, "offers")).toStrictEqual([
      {
        ...PLAIN,
        article: "K-1",
        words: "a drop",
        each: 0.4,
        pack: 100,
        pack_price: 40,
        priced: 7,
        until: 8,
      },
    ]);
    expect(plan).toMatchObject({ written: 1, added: 1, newParts: 0, ended: 0, refused: [] });
  });

  test("what it does not say stays blank", () => {
    const bare = without(
      listed({ article: "", description: "" }),
      "pack",
      "perUnit",
      "perPack",
      "unit",
      "currency",
    );
    expect(rows(placed(bookOf({ cables: [DROP] }), bare, { part: "drop" }), "offers")).toStrictEqual([PLAIN]);
    const noPack = without(listed(), "pack");
    expect(
      rows(placed(bookOf({ cables: [DROP] }), noPack, { part: "drop" }), "offers")[0],
    ).not.toHaveProperty("pack_price");
    const noPrice = without(listed(), "perPack");
    expect(
      rows(placed(bookOf({ cables: [DROP] }), noPrice, { part: "drop" }), "offers")[0],
    ).not.toHaveProperty("pack_price");
  });

  test("the day of the list where the line has none; another currency than the workbook's", () => {
    const [row] = rows(
      placed(bookOf({ cables: [DROP] }), listed({ currency: "GBP" }), { part: "drop" }, {}, { from: 9 }),
      "offers",
    );
    expect(row).toMatchObject({ priced: 9, currency: "GBP" });
    const euro = bookOf({ cables: [DROP] }, { site_currency: "€" });
    expect(rows(placed(euro, listed(), { part: "drop" }), "offers")[0]).not.toHaveProperty("currency");
  });

  // A foot is 0.3048 m: 100 m are 328.08399 ft, and 0.4 for a metre is 0.12192 for a foot.
  test("metres into feet, and feet into metres", () => {
    const feet = bookOf({ cables: [DROP] }, { site_unit: "ft" });
    const [row] = rows(placed(feet, listed(), { part: "drop" }), "offers");
    expect(row).toMatchObject({ unit: "ft", pack_price: 40 });
    expect(row!.pack).toBeCloseTo(100 / 0.3048, 8);
    expect(row!.each).toBeCloseTo(0.4 * 0.3048, 8);
    const [metres] = rows(
      placed(bookOf({ cables: [DROP] }), listed({ unit: "ft" }), { part: "drop" }),
      "offers",
    );
    expect(metres!.pack).toBeCloseTo(30.48, 8);
    expect(metres!.each).toBeCloseTo(0.4 / 0.3048, 8);
  });

  test.each<[string, string, Partial<ListedPrice>, string]>([
    [
      "a cable by the piece",
      "cables",
      { unit: "pc" },
      "“x” is a cable, and its line is priced by the piece without a length. Put the length of a reel into the list.",
    ],
    [
      "a cable by the set",
      "cables",
      { unit: "set" },
      "“x” is a cable, and its line is priced by the set without a length. Put the length of a reel into the list.",
    ],
    [
      "a plate by the metre",
      "plates",
      { unit: "m" },
      "“x” is counted by the piece, and its line is priced by the m. Choose a cable, or leave it out.",
    ],
    [
      "a fitting by the foot",
      "fittings",
      { unit: "ft" },
      "“x” is counted by the piece, and its line is priced by the ft. Choose a cable, or leave it out.",
    ],
  ])("%s is refused", (_, list, more, said) => {
    const plan = placed(bookOf({ [list]: [{ name: "x" }] }), listed(more), { part: "X" });
    expect(plan).toMatchObject({ written: 0, refused: [{ line: 2, said }] });
  });

  test("a part that is not there is refused", () => {
    const plan = placed(bookOf({ cables: [DROP] }), listed(), { part: "nothing" });
    expect(plan.refused).toEqual([
      { line: 2, said: "“nothing” is no part of this workbook, so the line was left." },
    ]);
    expect(plan.said).toBe("0 prices of Alpha; 0 prices on Parts changed.");
  });

  test("behind the last row that is filled", () => {
    const book = bookOf({ cables: [DROP], offers: [{}, { part: "other", supplier: "B" }, {}, {}] });
    expect(rows(placed(book, listed(), { part: "drop" }), "offers").map(({ part }) => part)).toEqual([
      undefined,
      "other",
      "drop",
      undefined,
    ]);
  });

  test("over the offer that is there, of which the rest stays", () => {
    const book = bookOf({
      cables: [DROP],
      offers: [{ part: "drop", supplier: "Alpha", article: "K-1", each: 9, pinned: "no" }],
    });
    const plan = updated(book, listed());
    expect(rows(plan, "offers")).toStrictEqual([
      { ...PLAIN, article: "K-1", words: "a drop", each: 0.4, pack: 100, pack_price: 40, pinned: "no" },
    ]);
    expect(plan).toMatchObject({ written: 1, added: 0 });
  });
});

describe("new parts", () => {
  test.each<[string, string, Partial<ListedPrice>, Row]>([
    ["a cable with its reel", "cables", {}, { name: "n", reel: 100 }],
    ["a cable by the metre", "cables", { pack: 1 }, { name: "n" }],
    ["a fitting with its pack", "fittings", { unit: "pc", pack: 50 }, { name: "n", pack: 50 }],
    ["a plate without any", "plates", { unit: "pc", pack: 50 }, { name: "n" }],
  ])("%s", (_, list, more, wanted) => {
    const plan = placed(bookOf({ [list]: [{}, { name: "old" }, {}] }), listed(more), { list, name: "n" });
    expect(plan).toMatchObject({ newParts: 1, written: 1, added: 1 });
    const row = rows(plan, list)[2]!;
    for (const key of ["name", "reel", "pack"]) expect(row[key]).toBe(wanted[key]);
    expect(rows(plan, list)).toHaveLength(3);
  });

  test("a fitting whose pack nobody says is one piece", () => {
    const price = without(listed({ unit: "pc" }), "pack", "perPack");
    expect(rows(placed(bookOf({}), price, { list: "fittings", name: "n" }), "fittings")[0]).toMatchObject({
      pack: 1,
      price: 0.4,
    });
  });

  test("its price is for its reel or its pack", () => {
    expect(rows(placed(bookOf({}), listed(), { list: "cables", name: "n" }), "cables")[0]).toMatchObject({
      reel: 100,
      price: 40,
    });
    const [feet] = rows(placed(bookOf({}), listed({ unit: "ft" }), { list: "cables", name: "n" }), "cables");
    expect(feet!.reel).toBeCloseTo(30.48, 8);
    expect(feet!.price).toBeCloseTo(40, 8);
  });

  test("a name that is there already is the part that is meant", () => {
    const plan = placed(bookOf({ cables: [DROP] }), listed(), { list: "cables", name: "DROP" });
    expect(plan.newParts).toBe(0);
    expect(rows(plan, "cables")).toHaveLength(1);
  });

  test("two lines of one new part make one", () => {
    const lines = [lineOf(listed()), lineOf(listed({ line: 3, article: "K-2" }))];
    const place = { list: "cables", name: "n" };
    const plan = planPrices(
      bookOf({}),
      { ...NONE, lines },
      {
        ...CHOICES,
        placed: new Map([
          [2, place],
          [3, place],
        ]),
      },
      MERGE,
    );
    expect(plan).toMatchObject({ newParts: 1, written: 2 });
    expect(rows(plan, "cables")).toHaveLength(1);
  });
});

describe("what is taken", () => {
  const [offer] = bookOf({ cables: [{ ...DROP, supplier: "Alpha" }] }).offers;
  const at = (more: Partial<ComparedLine>, choices: Partial<PriceChoices> = {}): boolean =>
    isTaken(lineOf(listed(), [offer!], more), { ...CHOICES, ...choices });
  test("by itself, or by a person's tick", () => {
    expect(at({})).toBe(true);
    expect(at({ taken: false })).toBe(false);
    expect(at({ taken: false }, { taken: new Map([[2, true]]) })).toBe(true);
    expect(at({}, { taken: new Map([[2, false]]) })).toBe(false);
    expect(at({}, { taken: new Map([[3, false]]) })).toBe(true);
  });
  test.each(["asked", "left", "currency"] as const)("never what is %s", (kind) => {
    expect(at({ kind }, { taken: new Map([[2, true]]) })).toBe(false);
  });
  test("only what has a place", () => {
    expect(at({ offers: [] })).toBe(false);
    expect(at({ offers: [] }, { placed: new Map([[2, { part: "drop" }]]) })).toBe(true);
    expect(at({ offers: [] }, { placed: new Map([[3, { part: "drop" }]]) })).toBe(false);
  });
});

describe("which offer a part takes over", () => {
  const offerOf = (supplier: string, each: number, more: Row = {}): Row => ({
    part: "drop",
    supplier,
    each,
    unit: "m",
    until: UNTIL,
    ...more,
  });
  const withOffers = (part: Row, ...offers: Row[]): PriceBook =>
    bookOf({ cables: [{ ...DROP, ...part }], offers });
  const ON = { supplier: "Alpha", article: "K-1", price: 50 };

  test("the cheaper: its price, supplier, article and days", () => {
    const plan = updated(withOffers(ON, offerOf("Alpha", 0.5)), listed());
    expect(rows(plan, "cables")[0]).toStrictEqual({ ...DROP, ...ON, price: 40, priced: TODAY, until: UNTIL });
    expect(plan.parts).toStrictEqual([
      { part: "drop", list: "cables", before: 50, after: 40, supplier: "Alpha", wasSupplier: "Alpha" },
    ]);
    expect(plan.others).toEqual([]);
  });

  test("what it had none of is not told", () => {
    const plan = updated(withOffers({}, offerOf("Alpha", 0.5)), listed());
    expect(plan.parts).toStrictEqual([{ part: "drop", list: "cables", after: 40, supplier: "Alpha" }]);
  });

  test("an article number of the last one does not stay with another that has none", () => {
    const plan = updated(withOffers(ON, offerOf("Alpha", 0.5)), listed({ article: "" }));
    expect(rows(plan, "cables")[0]).not.toHaveProperty("article");
  });

  test.each<[string, Row, boolean]>([
    ["the same", { price: 40 }, false],
    ["the same but for what lists round", { price: 40.0004 }, false],
    ["a little else", { price: 40.0006 }, true],
    ["another article", { price: 40, article: "K-9" }, true],
    ["another dash in the article", { price: 40, article: "k–1" }, false],
    ["another supplier", { price: 40, supplier: "Beta" }, true],
  ])("%s is a change or none", (_, part, isChange) => {
    const plan = updated(withOffers({ ...ON, ...part }, offerOf("Alpha", 0.5)), listed());
    expect(plan.parts).toHaveLength(isChange ? 1 : 0);
    // A price that is the same is left as it stands.
    expect(rows(plan, "cables")[0]!.price).toBe(isChange ? 40 : part.price);
  });

  test("another supplier's that is cheaper stays, and both prices are told", () => {
    const plan = updated(
      withOffers({ ...ON, supplier: "Beta" }, offerOf("Alpha", 0.5), offerOf("Beta", 0.3)),
      listed(),
    );
    expect(plan.others).toStrictEqual([
      { part: "drop", supplier: "Beta", price: 30, here: 40, pinned: false },
    ]);
    const pinned = updated(
      withOffers({}, offerOf("Alpha", 0.5), offerOf("Beta", 0.9, { pinned: "yes" })),
      listed(),
    );
    expect(pinned.others).toStrictEqual([
      { part: "drop", supplier: "Beta", price: 90, here: 40, pinned: true },
    ]);
  });

  test("one that is pinned now, and no other of the part any more", () => {
    const other = { part: "trunk", supplier: "Beta", pinned: "yes" };
    const book = withOffers({}, offerOf("Alpha", 0.5), offerOf("Beta", 0.3, { pinned: "yes" }), other);
    const plan = updated(book, listed(), { pinned: new Set([2]) });
    expect(rows(plan, "offers").map(({ pinned }) => pinned)).toEqual(["yes", "no", "yes"]);
    expect(rows(plan, "cables")[0]).toMatchObject({ price: 40, supplier: "Alpha" });
  });

  test("where no offer holds the part stays as it is", () => {
    const plan = updated(withOffers(ON, offerOf("Alpha", 0.5)), listed({ until: TODAY - 1 }));
    expect(rows(plan, "cables")[0]).toStrictEqual({ ...DROP, ...ON });
    expect(plan).toMatchObject({ written: 1, parts: [] });
  });

  test("what another supplier asks on Parts alone becomes an offer too", () => {
    const book = bookOf({
      cables: [{ ...DROP, supplier: "Beta", article: "B-1", price: 30, priced: 1, until: UNTIL }],
    });
    const plan = placed(book, listed(), { part: "drop" });
    expect(rows(plan, "offers")[0]).toStrictEqual({
      part: "drop",
      supplier: "Beta",
      article: "B-1",
      each: 0.3,
      unit: "m",
      pack: 100,
      pack_price: 30,
      priced: 1,
      until: UNTIL,
    });
    expect(plan.others).toHaveLength(1);
    const bare = placed(
      bookOf({ plates: [{ name: "x", supplier: "Beta", price: 3 }] }),
      listed({ unit: "pc" }),
      { part: "x" },
    );
    expect(rows(bare, "offers")[0]).toStrictEqual({ part: "x", supplier: "Beta", each: 3, unit: "piece" });
    for (const supplier of ["Alpha", ""])
      expect(
        rows(
          placed(bookOf({ cables: [{ ...DROP, supplier, price: 30 }] }), listed(), { part: "drop" }),
          "offers",
        ),
      ).toHaveLength(1);
    const unpriced = bookOf({ cables: [{ ...DROP, supplier: "Beta" }] });
    expect(rows(placed(unpriced, listed(), { part: "drop" }), "offers")).toHaveLength(1);
  });
});

describe("what a merge leaves besides", () => {
  test("a line in the log", () => {
    const plan = placed(bookOf({ cables: [DROP] }), listed(), { part: "drop" });
    expect(rows(plan, "log")).toStrictEqual([
      {
        date: TODAY,
        what: "1 price of Alpha, 1 of them new; 1 price on Parts changed.",
        why: "price list a.csv",
      },
    ]);
    expect(plan.said).toBe("1 price of Alpha, 1 of them new; 1 price on Parts changed.");
    const long = placed(
      bookOf({ cables: [DROP] }),
      listed(),
      { part: "drop" },
      {},
      { file: "f".repeat(300) },
    );
    expect(rows(long, "log")[0]!.why).toHaveLength(250);
  });

  test("the supplier, and how its list is read", () => {
    const fresh = placed(bookOf({ cables: [DROP] }), listed(), { part: "drop" });
    expect(rows(fresh, "suppliers")).toStrictEqual([{ name: "Alpha", columns: "article number = A" }]);
    const abroad = placed(bookOf({ cables: [DROP] }), listed(), { part: "drop" }, {}, { currency: "GBP" });
    expect(rows(abroad, "suppliers")[0]).toMatchObject({ currency: "GBP" });
    const home = placed(bookOf({ cables: [DROP] }), listed(), { part: "drop" }, {}, { currency: "EUR" });
    expect(rows(home, "suppliers")[0]).not.toHaveProperty("currency");
    const known = bookOf({
      cables: [DROP],
      suppliers: [{ name: "Beta" }, { name: "alpha", contact: "c", columns: "old" }],
    });
    expect(
      rows(placed(known, listed(), { part: "drop" }, {}, { currency: "GBP" }), "suppliers"),
    ).toStrictEqual([{ name: "Beta" }, { name: "alpha", contact: "c", columns: "article number = A" }]);
  });

  test.each<[string, Row, number | undefined]>([
    ["of yesterday", { standards_date: TODAY - 1 }, 4],
    ["of today", { standards_date: TODAY }, undefined],
    ["to come", { standards_date: TODAY + 1 }, undefined],
  ])("an edition %s", (_, fields, edition) => {
    const plan = placed(bookOf({ cables: [DROP] }, fields), listed(), { part: "drop" });
    expect(plan.edition).toBe(edition);
    expect(Object.hasOwn(plan, "edition")).toBe(edition !== undefined);
    expect(plan.inputs.fields).toMatchObject({
      site_currency: "EUR",
      standards_edition: edition ?? 3,
      standards_date: edition === undefined ? fields.standards_date! : TODAY,
    });
    expect(plan.said.includes("edition 4")).toBe(edition !== undefined);
  });

  test("standards without an edition get none", () => {
    const { inputs } = bookOf({ cables: [DROP] }, { standards_date: 5 });
    const book = priceBook(
      { ...inputs, fields: without(inputs.fields as Record<string, number>, "standards_edition") },
      true,
      TODAY,
    );
    const plan = placed(book, listed(), { part: "drop" });
    expect(plan).not.toHaveProperty("edition");
    expect(plan.inputs.fields).toMatchObject({ standards_date: 5 });
  });

  test("parts of which the new day ends an offer take the next one over", () => {
    const offers = [
      { part: "outlet", supplier: "Beta", each: 3, until: TODAY - 1 },
      { part: "outlet", supplier: "Gamma", each: 4, until: UNTIL },
    ];
    const plates = [{ name: "outlet", supplier: "Beta", price: 3 }];
    const moved = placed(
      bookOf({ cables: [DROP], plates, offers }, { standards_date: TODAY - 9 }),
      listed(),
      { part: "drop" },
    );
    expect(rows(moved, "plates")[0]).toMatchObject({ supplier: "Gamma", price: 4 });
    expect(moved.parts.map(({ part }) => part)).toEqual(["drop", "outlet"]);
    const still = placed(bookOf({ cables: [DROP], plates, offers }), listed(), { part: "drop" });
    expect(still.parts.map(({ part }) => part)).toEqual(["drop"]);
  });

  test("what a person ends holds until yesterday, or as long as it did", () => {
    const ended = (row: Row, names = ["drop"], kind: "gone" | "ended" = "gone") => {
      const book = bookOf({ cables: [DROP], offers: [{ part: "drop", supplier: "Alpha", ...row }] });
      return planPrices(
        book,
        { ...NONE, [kind]: [{ offer: book.offers[0]!, said: "" }] },
        { ...CHOICES, ended: new Set(names) },
        MERGE,
      );
    };
    expect(rows(ended({}), "offers")[0]!.until).toBe(TODAY - 1);
    expect(rows(ended({}, ["drop"], "ended"), "offers")[0]!.until).toBe(TODAY - 1);
    expect(rows(ended({ until: UNTIL }), "offers")[0]!.until).toBe(TODAY - 1);
    expect(rows(ended({ until: 5 }), "offers")[0]!.until).toBe(5);
    expect(ended({})).toMatchObject({
      ended: 1,
      written: 0,
      said: "0 prices of Alpha; 1 offer ended; 0 prices on Parts changed.",
    });
    expect(ended({}, [])).toMatchObject({ ended: 0 });
    expect(ended({}, ["other"])).toMatchObject({ ended: 0, parts: [], others: [] });
  });

  test("one that stands on Parts alone ends there", () => {
    const book = bookOf({ cables: [{ ...DROP, supplier: "Alpha", price: 40 }] });
    const plan = planPrices(
      book,
      { ...NONE, gone: [{ offer: book.offers[0]!, said: "" }] },
      { ...CHOICES, ended: new Set(["drop"]) },
      MERGE,
    );
    expect(rows(plan, "cables")[0]).toMatchObject({ price: 40, until: TODAY - 1 });
  });

  test("where nothing is taken the workbook is the same", () => {
    const book = bookOf({ cables: [DROP] });
    const plan = planPrices(book, { ...NONE, lines: [lineOf(listed())] }, CHOICES, MERGE);
    expect(plan.inputs).toBe(book.inputs);
    expect(plan).toStrictEqual({
      inputs: book.inputs,
      parts: [],
      others: [],
      written: 0,
      added: 0,
      newParts: 0,
      ended: 0,
      refused: [],
      said: "0 prices of Alpha; 0 prices on Parts changed.",
    });
  });

  test("counts in words", () => {
    const lines = [lineOf(listed()), lineOf(listed({ line: 3, article: "K-2" }))];
    const two = new Map<number, NewPlace>([
      [2, { list: "cables", name: "a" }],
      [3, { list: "cables", name: "b" }],
    ]);
    expect(planPrices(bookOf({}), { ...NONE, lines }, { ...CHOICES, placed: two }, MERGE).said).toBe(
      "2 prices of Alpha, 2 of them new; 2 new parts; 2 prices on Parts changed.",
    );
  });

  test("the book that was read is not changed", () => {
    const book = bookOf({
      cables: [{ ...DROP, supplier: "Alpha", price: 50 }],
      offers: [{ part: "drop", supplier: "Alpha", each: 0.5 }],
    });
    const before = JSON.stringify(book);
    updated(book, listed());
    expect(JSON.stringify(book)).toBe(before);
  });
});

describe("a job", () => {
  const job = (part: Row): PriceBook =>
    bookOf({ cables: [{ ...DROP, supplier: "Alpha", ...part }] }, {}, false);
  test("its part takes the line: the price of its own reel from the pack's", () => {
    const plan = updated(job({ price: 50, reel: 250 }), listed({ from: 7, until: 8 }));
    // 40 for 100 m are 100 for 250 m.
    expect(rows(plan, "cables")).toStrictEqual([
      { name: "drop", reel: 250, supplier: "Alpha", article: "K-1", price: 100, priced: 7, until: 8 },
    ]);
    expect(plan.parts).toStrictEqual([
      { part: "drop", list: "cables", before: 50, after: 100, supplier: "Alpha", wasSupplier: "Alpha" },
    ]);
    expect(plan.others).toEqual([]);
    expect(rows(plan, "offers")).toEqual([]);
    expect(rows(plan, "suppliers")).toEqual([]);
    expect(plan).not.toHaveProperty("edition");
  });

  test("from the price of one where there is no pack", () => {
    expect(rows(updated(job({}), without(listed(), "pack", "perPack")), "cables")[0]).toMatchObject({
      price: 40,
    });
    expect(updated(job({}), listed()).parts[0]).not.toHaveProperty("before");
  });

  test("the same price is no change; another supplier than before is told", () => {
    expect(updated(job({ price: 40 }), listed()).parts).toEqual([]);
    const none = bookOf({ cables: [DROP] }, {}, false);
    expect(placed(none, listed(), { part: "drop" }).parts).toStrictEqual([
      { part: "drop", list: "cables", after: 40, supplier: "Alpha" },
    ]);
    const beta = bookOf({ cables: [{ ...DROP, supplier: "Beta", price: 1 }] }, {}, false);
    expect(placed(beta, listed(), { part: "drop" }).parts[0]).toMatchObject({
      wasSupplier: "Beta",
      supplier: "Alpha",
    });
    expect(rows(placed(beta, listed({ article: "" }), { part: "drop" }), "cables")[0]).not.toHaveProperty(
      "article",
    );
  });

  test("its edition is none of its own", () => {
    const old = bookOf({ cables: [DROP] }, { standards_date: 5 }, false);
    expect(placed(old, listed(), { part: "drop" })).not.toHaveProperty("edition");
  });
});

describe("how a list is read, as a line of text", () => {
  const column = (index: number, head: string, key?: PriceColumn["key"]): PriceColumn => ({
    index,
    head,
    meaning: { currencies: [] },
    ...(key && { key }),
  });
  const COLUMNS = [column(0, "Art.", "article"), column(1, "Text"), column(2, "Price", "price")];

  test.each<[string, readonly PriceColumn[], string]>([
    ["by their heads", COLUMNS, "article number = Art.; price = Price"],
    [
      "without one",
      [column(0, "", "article"), column(2, "Price", "price")],
      "article number = A; price = Price",
    ],
    [
      "with signs of this text",
      [column(0, "a;b", "article"), column(1, "c=d", "price")],
      "article number = A; price = B",
    ],
    [
      "two of one name, in whatever case",
      [column(0, "Code", "article"), column(1, "code"), column(2, "Price", "price")],
      "article number = A; price = Price",
    ],
    [
      "longer than a cell",
      [column(0, "x".repeat(240), "article"), column(1, "Price", "price")],
      "article number = A; price = B",
    ],
    ["just as long", [column(0, "x".repeat(233), "article")], `article number = ${"x".repeat(233)}`],
  ])("columns %s", (_, columns, text) => {
    expect(rememberedText(columns, {})).toBe(text);
  });

  const ALL: PriceAnswers = {
    currency: "GBP",
    decimal: ",",
    order: "mdy",
    basis: "pack",
    tax: 0.2,
    discount: 0,
    surcharge: "none",
    sheet: "Prices",
  };
  const ALL_TEXT =
    "prices in = GBP; decimals = ,; days = second; prices for = pack; tax = 0.2; less = 0; surcharge = none; sheet = Prices";

  test("answers, there and back", () => {
    expect(rememberedText([], ALL)).toBe(ALL_TEXT);
    expect(rememberedAnswers(ALL_TEXT, COLUMNS)).toStrictEqual({ answers: ALL, missing: [] });
    expect(rememberedText([], { order: "dmy" })).toBe("days = first");
    expect(rememberedText([], { sheet: "a;b=c" })).toBe("sheet = a b c");
  });

  test.each<[string, PriceAnswers]>([
    ["", {}],
    ["nothing of the kind", {}],
    ["decimals = .", { decimal: "." }],
    ["decimals = x", {}],
    ["days = first", { order: "dmy" }],
    ["days = third", {}],
    ["prices for = unit", { basis: "unit" }],
    ["prices for = all", {}],
    ["tax = 0", { tax: 0 }],
    ["tax = 0.99", { tax: 0.99 }],
    ["tax = 1", {}],
    ["tax = -0.1", {}],
    ["tax = much", {}],
    ["less = 0.4", { discount: 0.4 }],
    ["surcharge = some", {}],
    ["prices in =", {}],
    ["sheet =", {}],
    ["  TAX =0.2 ;; Decimals=, ", { tax: 0.2, decimal: "," }],
  ])("%j says %j", (text, answers) => {
    expect(rememberedAnswers(text, COLUMNS)).toStrictEqual({ answers, missing: [] });
  });

  test.each<[string, readonly (readonly [number, string])[], readonly string[]]>([
    [
      "article number = Art.; price = PRICE",
      [
        [0, "article"],
        [2, "price"],
        [1, ""],
      ],
      [],
    ],
    [
      "article number = a; price = C",
      [
        [0, "article"],
        [2, "price"],
        [1, ""],
      ],
      [],
    ],
    // Where one is missing, the rest is guessed.
    ["article number = Art.; price = Cost", [[0, "article"]], ["Cost"]],
  ])("%s", (text, columns, missing) => {
    const found = rememberedAnswers(text, COLUMNS);
    expect(found.answers.columns).toEqual(new Map(columns));
    expect(found.missing).toEqual(missing);
  });

  test("none of the heads", () => {
    expect(rememberedAnswers("price = Cost", COLUMNS)).toStrictEqual({ answers: {}, missing: ["Cost"] });
  });
});

describe("a supplier's file against a workbook", () => {
  const LIST = "Article;Description;Unit;Price A;Price B\nK-1;a drop;m;0,40;0,50";
  const kept = (columns: string, more: Row = {}): PriceBook =>
    bookOf({ cables: [DROP], suppliers: [{ name: "Alpha", columns, ...more }] });
  const foundIn = (book: PriceBook, said: PriceAnswers = {}, text = LIST) =>
    pricesOf({ tables: [tableOf(text)], chosen: 0, sheets: [] }, book, "alpha", said, TODAY);

  test("is read as the last one was, and that is said", () => {
    const found = foundIn(kept("article number = Article; price per unit = Price B; prices in = EUR"));
    expect(found.notes).toEqual(["Read as this supplier's last list was."]);
    expect(found.list.lines[0]).toMatchObject({ perUnit: 0.5, currency: "EUR" });
    expect(found.answers).toMatchObject({ currency: "EUR" });
    expect(found.list.questions).toEqual([]);
  });

  test("but for heads that it lacks", () => {
    expect(foundIn(kept("article number = Nr; price per unit = Cost")).notes).toEqual([
      "Read as this supplier's last list was, but for “Nr”, “Cost”, which this one does not have: look at the columns again.",
    ]);
  });

  test("what is said now goes before it, column by column", () => {
    const book = kept("article number = Article; price per unit = Price B; prices in = EUR");
    const said: PriceAnswers = {
      currency: "GBP",
      columns: new Map([
        [3, "perUnit"],
        [4, ""],
      ]),
    };
    const { answers, list } = foundIn(book, said);
    expect(answers.currency).toBe("GBP");
    expect(answers.columns).toEqual(
      new Map([
        [0, "article"],
        [3, "perUnit"],
        [4, ""],
        [1, ""],
        [2, ""],
      ]),
    );
    expect(list.lines[0]).toMatchObject({ perUnit: 0.4, currency: "GBP" });
    expect(foundIn(kept("prices in = EUR"), { columns: new Map([[4, ""]]) }).answers.columns).toEqual(
      new Map([[4, ""]]),
    );
    expect(foundIn(kept("prices in = EUR")).answers).not.toHaveProperty("columns");
  });

  test("nothing is said where nothing was kept; the supplier's currency counts", () => {
    const found = foundIn(bookOf({ suppliers: [{ name: "Alpha", currency: "GBP" }] }));
    expect(found.notes).toEqual([]);
    expect(found.answers).toEqual({});
    expect(found.list.currency).toBe("GBP");
  });

  test("the sheet that is meant: said, remembered, or the one that reads best", () => {
    const tables = ["One", "Two", "Three"].map((sheet) => ({ ...tableOf(LIST), source: sheet, sheet }));
    const sheetOf = (book: PriceBook, said: PriceAnswers = {}): string =>
      pricesOf({ tables, chosen: 1, sheets: ["One", "Two", "Three"] }, book, "alpha", said, TODAY).list
        .source;
    expect(sheetOf(kept(""))).toBe("Two");
    expect(sheetOf(kept("tax = 0; sheet = Three"))).toBe("Three");
    expect(sheetOf(kept("sheet = Three"), { sheet: "One" })).toBe("One");
    expect(sheetOf(kept("sheet = Four"))).toBe("Two");
  });

  test("what is gone, and in which currency the workbook is, comes from it", () => {
    const book = bookOf(
      { cables: [DROP], offers: [{ part: "drop", supplier: "Alpha", article: "K-9" }] },
      { site_currency: "GBP" },
    );
    const found = foundIn(book, {}, "Article;Description;Unit;Price EUR\nK-1;a drop;m;0,40");
    expect(found.comparison.gone).toHaveLength(1);
    expect(found.comparison.lines[0]).toMatchObject({ kind: "currency" });
  });
});
