/**
 * A list held against the offers that are kept, and what of it is told: shares and factors by arithmetic, sentences by
 * what a person needs to decide.
 */
import {
  compareOffers,
  type ComparedLine,
  type Comparison,
  type Offer,
} from "../../../src/workbooks/prices/compareOffers";
import type { ListedPrice, ListQuestion } from "../../../src/workbooks/prices/list";
import { likelyList, nearestParts } from "../../../src/workbooks/prices/nearestParts";
import { offerInUse, offersOf } from "../../../src/workbooks/prices/offerInUse";
import { othersInWords, partChangesInWords } from "../../../src/workbooks/prices/partChanges";
import { priceBook } from "../../../src/workbooks/prices/priceBook";
import type { PricesFound } from "../../../src/workbooks/prices/pricesOf";
import {
  holdsInWords,
  KINDS,
  lineInWords,
  lineName,
  percentOf,
  previewText,
  priceInWords,
  summaryOf,
} from "../../../src/workbooks/prices/priceWords";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { TODAY, without } from "./typedLists";

const offer = (more: Partial<Offer> = {}): Offer => ({
  row: 0,
  part: "drop",
  supplier: "Alpha",
  article: "K-1",
  description: "indoor drop",
  unit: "m",
  pack: 100,
  perUnit: 0.4,
  perPack: 40,
  currency: "EUR",
  pinned: false,
  ...more,
});
const listed = (more: Partial<ListedPrice> = {}): ListedPrice => ({
  line: 2,
  article: "K-1",
  description: "indoor drop",
  unit: "m",
  pack: 100,
  perUnit: 0.5,
  perPack: 50,
  currency: "EUR",
  doubts: [],
  ...more,
});
const comparison = (
  lines: readonly ListedPrice[],
  offers: readonly Offer[],
  {
    own = "EUR",
    questions = [],
  }: { readonly own?: string; readonly questions?: readonly ListQuestion[] } = {},
): Comparison =>
  compareOffers(
    { source: "text", columns: [], lines, questions, notes: [] },
    offers,
    "alpha",
    own === "" ? undefined : own,
  );
const compared = (...of: Parameters<typeof comparison>): ComparedLine => comparison(...of).lines[0]!;

describe("one line and what is kept", () => {
  test("dearer: before, now and the share of what was", () => {
    const [line, kept] = [listed(), offer()];
    expect(compared([line], [kept])).toStrictEqual({
      listed: line,
      offers: [kept],
      kind: "changed",
      before: 0.4,
      now: 0.5,
      // 0.1 of 0.4.
      share: (0.5 - 0.4) / 0.4,
      taken: true,
    });
  });

  test("the same price is the same; with another pack it is changed, and said", () => {
    expect(compared([listed({ perUnit: 0.4 })], [offer()])).toMatchObject({
      kind: "same",
      share: 0,
      taken: true,
    });
    expect(compared([listed({ perUnit: 0.4 })], [offer()])).not.toHaveProperty("said");
    expect(compared([listed({ perUnit: 0.4, pack: 250 })], [offer()])).toMatchObject({
      kind: "changed",
      said: "A pack or reel held 100, and now holds 250.",
      taken: true,
    });
    expect(compared([without(listed({ perUnit: 0.4 }), "pack")], [offer()])).toMatchObject({ kind: "same" });
    expect(compared([listed({ perUnit: 0.4 })], [without(offer(), "pack")])).toMatchObject({ kind: "same" });
  });

  test.each<[string, number, string, string | undefined]>([
    ["five times as much", 2, "suspicious", "0.4 became 2, 5 times as much."],
    ["nearly five times", 1.99, "changed", undefined],
    ["a fifth", 0.08, "suspicious", "0.4 became 0.08, 5 times less."],
    ["more than a fifth", 0.081, "changed", undefined],
    ["a hundred times", 40, "suspicious", "0.4 became 40, 100 times as much."],
  ])("%s", (_, perUnit, kind, said) => {
    const found = compared([listed({ perUnit })], [offer()]);
    expect(found).toMatchObject({ kind, taken: kind === "changed", before: 0.4, now: perUnit });
    expect(found.said).toBe(
      said && `${said} Look at its unit and its pack; it is not taken unless you tick it.`,
    );
  });

  test("what is left, asked, or in another currency is not taken", () => {
    expect(compared([listed({ left: "It is older.", doubts: ["Which?"] })], [offer()])).toMatchObject({
      kind: "left",
      said: "It is older.",
      taken: false,
    });
    expect(compared([listed({ doubts: ["Which?", "When?"], currency: "GBP" })], [offer()])).toMatchObject({
      kind: "asked",
      said: "Which? When?",
      taken: false,
    });
    expect(compared([listed()], [offer()], { questions: [{ id: "tax", sentence: "Tax?" }] })).toMatchObject({
      kind: "asked",
      said: "Answer first what is asked of the whole list.",
      taken: false,
    });
    expect(
      compared([listed()], [offer()], { questions: [{ id: "basis", sentence: "For what?", ofLines: true }] }),
    ).toMatchObject({ kind: "changed" });
    expect(compared([listed({ currency: "GBP" })], [offer()])).toMatchObject({
      kind: "currency",
      said: "Its price is in GBP, and prices here are in EUR. It is not taken: put a list in EUR in its place.",
      taken: false,
    });
    expect(compared([listed()], [offer()], { own: "€" })).toMatchObject({ kind: "changed" });
    // Where either has none nothing can differ.
    expect(compared([listed({ currency: "GBP" })], [offer()], { own: "" })).toMatchObject({
      kind: "changed",
    });
    expect(compared([without(listed(), "currency")], [offer()])).toMatchObject({ kind: "changed" });
  });

  test("a price that has ended, or is older than the one kept, waits for a tick", () => {
    const until = sheetDate(2026, 11, 28);
    expect(compared([listed({ expired: true, until })], [offer()])).toMatchObject({
      kind: "changed",
      said: "Its price ended on 2026-11-28.",
      taken: false,
    });
    expect(compared([listed({ expired: true, until })], [])).toMatchObject({
      kind: "new",
      said: "Its price ended on 2026-11-28.",
      taken: false,
    });
    const [from, priced] = [sheetDate(2026, 1, 1), sheetDate(2026, 2, 1)];
    expect(compared([listed({ from })], [offer({ priced })])).toMatchObject({
      kind: "changed",
      said: "It is of 2026-01-01, older than the one kept, of 2026-02-01.",
      taken: false,
    });
    expect(compared([listed({ from: priced })], [offer({ priced })])).toMatchObject({ taken: true });
    expect(compared([listed({ from })], [offer()])).toMatchObject({ taken: true });
    expect(compared([listed({ from, expired: true, until, pack: 50 })], [offer({ priced })]).said).toBe(
      "Its price ended on 2026-11-28. It is of 2026-01-01, older than the one kept, of 2026-02-01. A pack or reel held 100, and now holds 50.",
    );
  });

  test("a new line is taken", () => {
    const line = listed({ article: "K-2", description: "trunk" });
    expect(compared([line], [offer()])).toStrictEqual({ listed: line, offers: [], kind: "new", taken: true });
  });

  test.each<[string, Partial<ListedPrice>, Partial<Offer>, readonly [number, number] | undefined]>([
    // A foot is 0.3048 m: 0.3048 for a foot is 1 for a metre.
    ["feet against metres", { unit: "ft", perUnit: 0.3048 }, { unit: "m", perUnit: 0.8 }, [0.8, 1]],
    ["metres against feet", { unit: "m", perUnit: 1 }, { unit: "ft", perUnit: 0.4 }, [0.4, 0.3048]],
    ["sets against pieces", { unit: "set", perUnit: 5 }, { unit: "piece", perUnit: 4 }, [4, 5]],
    ["pieces against pairs", { unit: "pc", perUnit: 5 }, { unit: "pair", perUnit: 4 }, [4, 5]],
    ["metres against nothing", { unit: "m", perUnit: 0.5 }, { unit: "", perUnit: 0.4 }, [0.4, 0.5]],
    ["metres against pieces, by their reels", { unit: "m" }, { unit: "piece" }, [40, 50]],
    ["metres against pieces, of other reels", { unit: "m", pack: 250 }, { unit: "piece" }, undefined],
    ["a price that is 0 against reels", {}, { perUnit: 0 }, [40, 50]],
    ["neither unit nor reel", {}, { perUnit: 0, perPack: 0 }, undefined],
  ])("%s", (_, line, kept, wanted) => {
    const found = compared([listed(line)], [offer(kept)]);
    if (!wanted) {
      expect(found).toMatchObject({ kind: "unit", taken: false });
      return;
    }
    expect(found.before).toBeCloseTo(wanted[0], 10);
    expect(found.now).toBeCloseTo(wanted[1], 10);
    expect(found.kind).toBe("changed");
  });

  test("where nothing leads from one unit to the other both are named", () => {
    expect(compared([listed({ unit: "m", pack: 250 })], [offer({ unit: "piece" })]).said).toBe(
      "Its price is per m, and the one kept is per piece. Tick it if the new one is meant.",
    );
    expect(compared([without(listed(), "unit", "perUnit", "perPack")], [offer({ unit: "" })]).said).toBe(
      "Its price is per unit, and the one kept is per unit. Tick it if the new one is meant.",
    );
  });

  test("packs without a quantity of one of them are compared", () => {
    const packs = (line: ListedPrice, kept: Offer): (number | undefined)[] => {
      const { before, now } = compared([line], [kept]);
      return [before, now];
    };
    expect(packs(without(listed(), "perUnit"), offer())).toEqual([40, 50]);
    expect(packs(without(listed(), "perUnit", "pack"), offer())).toEqual([40, 50]);
    expect(packs(listed(), without(offer(), "perUnit", "pack"))).toEqual([40, 50]);
    expect(packs(without(listed({ pack: 50 }), "perUnit"), offer())).toEqual([undefined, undefined]);
    expect(packs(without(listed(), "perUnit"), without(offer(), "perPack"))).toEqual([undefined, undefined]);
  });
});

describe("which offer a line is of", () => {
  const partsOf = (line: Partial<ListedPrice>, ...offers: Partial<Offer>[]): string[] =>
    compared(
      [listed(line)],
      offers.map((one) => offer(one)),
    ).offers.map(({ part }) => part);

  test("by its article, whatever case, blanks and dashes", () => {
    expect(partsOf({ article: "k 1", description: "" }, { article: "K1" })).toEqual(["drop"]);
    expect(partsOf({ article: "K\u20131" }, { article: "k-1" })).toEqual(["drop"]);
    expect(partsOf({ article: "K-2" }, {})).toEqual([]);
  });

  test("of several parts all", () => {
    expect(partsOf({}, { part: "drop" }, { part: "other drop", row: 1 })).toEqual(["drop", "other drop"]);
  });

  test("by its words where either has no article", () => {
    expect(partsOf({ article: "", description: "Indoor  DROP" }, {})).toEqual(["drop"]);
    expect(partsOf({ article: "K-2" }, { article: "" })).toEqual(["drop"]);
    expect(partsOf({ article: "", description: "" }, { article: "", description: "" })).toEqual([]);
  });

  test("never of another supplier", () => {
    expect(partsOf({}, { supplier: "Beta" })).toEqual([]);
    expect(partsOf({}, { supplier: " ALPHA " })).toEqual(["drop"]);
  });

  test.each([
    ["3-16", "16.3.2026"],
    ["3-16", "16-Mar"],
    ["3-16", "Mar 16"],
    ["3/16", "16. March"],
    ["12-05", "5.12"],
    ["0815", "815"],
    ["007", "7"],
    ["120000", "1.2E+05"],
    ["120000", "1,2E5"],
  ])("%s may have become %s, and is asked", (kept, article) => {
    const found = comparison([listed({ article, description: "other" })], [offer({ article: kept })]);
    expect(found.lines[0]).toMatchObject({
      kind: "asked",
      offers: [],
      said: `The article ${article} can be ${kept} of “drop”, which a workbook program has spoilt. Put the number right in the list, or leave the line out.`,
    });
    expect(found.gone).toEqual([]);
    expect(found.ended).toEqual([]);
  });

  test.each([
    ["3-16", "4-16"],
    ["3-16", "3-16-7"],
    ["0815", "816"],
    ["K-1", "K-2"],
    ["3-16", "foo 16"],
    ["3-16", "Apr 16"],
  ])("%s is not %s", (kept, article) => {
    expect(compared([listed({ article, description: "other" })], [offer({ article: kept })])).toMatchObject({
      kind: "new",
    });
  });
});

describe("what the list no longer has", () => {
  test("an offer on no line is gone; one that never came from a list is not", () => {
    const [kept, other, typed] = [
      offer(),
      offer({ row: 1, article: "K-2", description: "" }),
      offer({ row: 2, article: "", description: "" }),
    ];
    const words = offer({ row: 3, article: "", description: "tape" });
    const { gone, ended } = comparison(
      [listed()],
      [kept, other, typed, words, offer({ supplier: "Beta", article: "K-9" })],
    );
    expect(gone).toStrictEqual([
      { offer: other, said: "It is not in the list any more." },
      { offer: words, said: "It is not in the list any more." },
    ]);
    expect(ended).toEqual([]);
  });

  test("one whose line has no price is ended with its words, unless another line of it has one", () => {
    const [kept, gone] = [
      offer(),
      without(listed({ state: "discontinued", left: "No longer." }), "perUnit", "perPack"),
    ];
    expect(comparison([gone], [kept])).toMatchObject({
      gone: [],
      ended: [{ offer: kept, said: "No longer." }],
    });
    expect(comparison([without(gone, "left")], [kept]).ended[0]!.said).toBe("discontinued");
    expect(comparison([gone, listed({ line: 3 })], [kept]).ended).toEqual([]);
  });
});

describe("which offer is in use", () => {
  const terms = { currency: "EUR", unit: "m", date: TODAY } as const;
  const held = (more: Partial<Offer> = {}): Offer => offer({ until: TODAY, ...more });
  const used = (...offers: Offer[]): number | undefined => offerInUse(offers, terms)?.row;
  test("the cheapest that holds, of equal ones the upper", () => {
    expect(
      used(held({ row: 1, perUnit: 0.4 }), held({ row: 2, perUnit: 0.3 }), held({ row: 3, perUnit: 0.3 })),
    ).toBe(2);
    // A millionth is no difference.
    expect(used(held({ row: 1, perUnit: 0.4 }), held({ row: 2, perUnit: 0.3999995 }))).toBe(1);
    expect(used(held({ row: 1, perUnit: 0.4 }), held({ row: 2, perUnit: 0.399 }))).toBe(2);
    expect(used()).toBeUndefined();
  });

  test("one that is pinned goes before any, though it has ended", () => {
    expect(used(held({ row: 1 }), offer({ row: 2, perUnit: 9, pinned: true, until: 1 }))).toBe(2);
    expect(used(held({ row: 1, pinned: true, perUnit: 2 }), held({ row: 2, pinned: true, perUnit: 1 }))).toBe(
      2,
    );
  });

  test.each<[string, Offer, boolean]>([
    ["on its last day", held(), true],
    ["the day after", held({ until: TODAY - 1 }), false],
    ["without a last day", offer(), false],
    ["without a price", without(held(), "perUnit") as Offer, false],
    ["for nothing", held({ perUnit: 0 }), false],
    ["in the unit's other word", held({ unit: "metres" }), true],
    ["in no unit", held({ unit: "" }), true],
    ["in another unit", held({ unit: "ft" }), false],
    ["in another currency", held({ currency: "GBP" }), false],
    ["in the currency's sign", held({ currency: "€" }), true],
    ["in no currency", held({ currency: "" }), true],
  ])("%s", (_, one, isUsed) => {
    expect(used(one) !== undefined).toBe(isUsed);
  });

  test("where the workbook has no currency every one will do", () => {
    expect(offerInUse([held({ currency: "GBP" })], { ...terms, currency: undefined })).toBeDefined();
  });

  test("the offers of a part go by its name", () => {
    expect(
      offersOf([offer(), offer({ part: " DROP ", row: 1 }), offer({ part: "trunk" })], "Drop").map(
        ({ row }) => row,
      ),
    ).toEqual([0, 1]);
  });
});

describe("in words", () => {
  test.each<[Partial<ListedPrice>, string]>([
    [{}, "line 2, K-1"],
    [{ article: "" }, "line 2, indoor drop"],
    [{ article: "", description: "" }, "line 2"],
    [{ article: "", description: "x".repeat(50) }, `line 2, ${"x".repeat(40)}`],
  ])("a line's name: %j", (more, name) => {
    expect(lineName(listed(more))).toBe(name);
  });

  test.each([
    [0.026, "+2.6 %"],
    [-0.5, "−50.0 %"],
    [0, "0.0 %"],
  ])("a share of %d is %s", (share, words) => {
    expect(percentOf(share)).toBe(words);
  });

  test.each<[ListedPrice, string]>([
    [listed(), "0.5 per m, 100 m for 50"],
    [listed({ unit: "ft" }), "0.5 per ft, 100 ft for 50"],
    [listed({ unit: "pc", pack: 10 }), "0.5 each, 10 for 50"],
    [listed({ unit: "set", pack: 1 }), "0.5 per set"],
    [without(listed(), "unit"), "0.5 each, 100 for 50"],
    [without(listed(), "perPack"), "0.5 per m"],
    [without(listed(), "pack"), "0.5 per m"],
    [without(listed(), "perUnit"), "100 m for 50"],
    [without(listed(), "perUnit", "perPack"), ""],
  ])("a price: %#", (line, words) => {
    expect(priceInWords(line)).toBe(words);
  });

  test.each<[Partial<ListedPrice>, string]>([
    [{}, ""],
    [{ from: TODAY }, "from 2026-11-29"],
    [{ until: TODAY }, "until 2026-11-29"],
    [{ from: TODAY - 1, until: TODAY }, "from 2026-11-28 until 2026-11-29"],
  ])("how long it holds: %j", (more, words) => {
    expect(holdsInWords(listed(more))).toBe(words);
  });

  test("a compared line", () => {
    expect(lineInWords(compared([listed()], [offer(), offer({ part: "other", row: 1 })]))).toStrictEqual({
      line: 2,
      kind: "changed",
      name: "K-1",
      description: "indoor drop",
      part: "drop, other",
      price: "0.5 per m, 100 m for 50",
      change: "0.4 → 0.5, +25.0 %",
      said: "",
      taken: true,
      open: true,
    });
    expect(
      lineInWords(compared([listed({ article: "", perUnit: 0.4, note: "It stands twice." })], [offer()])),
    ).toMatchObject({
      name: "line 2",
      change: "as before",
      said: "It stands twice.",
    });
    const both = compared([listed({ perUnit: 0.4, pack: 50, note: "It stands twice." })], [offer()]);
    expect(lineInWords(both).said).toBe("A pack or reel held 100, and now holds 50. It stands twice.");
    expect(lineInWords(compared([listed({ perUnit: 1 / 3 })], [offer()])).change).toBe(
      "0.4 → 0.333333, −16.7 %",
    );
    expect(lineInWords(compared([listed()], [])).change).toBe("");
  });

  test("a person decides of what can be taken, and of nothing else", () => {
    const one = compared([listed()], [offer()]);
    const open = KINDS.map(([kind]) => kind).filter((kind) => lineInWords({ ...one, kind }).open);
    expect([...open].sort()).toEqual(["changed", "new", "same", "suspicious", "unit"]);
  });

  const foundOf = (
    comparison_: Comparison,
    questions: readonly ListQuestion[] = [],
    notes: readonly string[] = [],
  ): PricesFound => ({
    list: {
      source: "text, semicolons",
      columns: [
        { index: 0, head: "Art.", key: "article", meaning: { currencies: [] } },
        { index: 1, head: "", meaning: { currencies: [] } },
      ],
      lines: [],
      questions,
      notes: ["said of the list"],
    },
    comparison: comparison_,
    answers: {},
    table: { source: "text", lines: [] },
    notes,
  });

  test("a summary counts each kind, and what is missing", () => {
    const none: Comparison = { lines: [], gone: [], ended: [] };
    expect(summaryOf(foundOf(none))).toBe("0 lines with a price: none.");
    const gone = { offer: offer(), said: "" };
    const one = compared([listed()], [offer()]);
    expect(summaryOf(foundOf({ lines: [one], gone: [gone], ended: [gone, gone] }))).toBe(
      "1 line with a price: 1 changed; 1 offer not in the list any more; 2 offers without a price.",
    );
    const fresh = { ...one, kind: "new" } as const;
    expect(summaryOf(foundOf({ lines: [one, fresh, fresh], gone: [gone, gone], ended: [] }))).toBe(
      "3 lines with a price: 1 changed; 2 new; 2 offers not in the list any more.",
    );
  });

  const book = priceBook({ blocks: { cables: [{ name: "indoor drop" }, { name: "trunk" }] } }, true, TODAY);

  test("what the command prints", () => {
    const offers = [
      offer(),
      offer({ row: 1, article: "K-8", part: "gone" }),
      offer({ row: 2, article: "", description: "was", part: "bare" }),
      offer({ row: 3, article: "K-9", part: "over" }),
    ];
    const lines = [
      listed({ note: "It stands twice." }),
      listed({ line: 3, article: "K-2", description: "indoor drops" }),
      without(
        listed({ line: 4, article: "K-9", state: "request", left: "Ask for it." }),
        "perUnit",
        "perPack",
      ),
      listed({ line: 5, article: "", description: "odd one", doubts: ["Which?"] }),
    ];
    const questions: ListQuestion[] = [{ id: "basis", sentence: "For what?", ofLines: true }];
    expect(
      previewText(
        foundOf(comparison(lines, offers, { questions }), questions, ["read as before"]),
        book,
        "Alpha",
      ).split("\n"),
    ).toEqual([
      "Alpha: read as text, semicolons. 4 lines with a price: 1 changed; 1 new; 1 asked, and left out until they are answered; 1 passed over; 2 offers not in the list any more; 1 offer without a price.",
      "",
      "Asked of some of its lines:",
      "  For what?",
      "",
      "Columns:",
      "  Art.: Article number",
      "  (no head): not used",
      "",
      "Notes:",
      "  read as before",
      "  said of the list",
      "",
      "1 line changed:",
      "  line 2, K-1 (drop): 0.4 → 0.5, +25.0 %. It stands twice.",
      "",
      "1 line new:",
      "  line 3, K-2 indoor drops: 0.5 per m, 100 m for 50. Nearest: “indoor drop”.",
      "",
      "1 line asked, and left out until they are answered:",
      "  line 5, odd one: 0.5 per m, 100 m for 50. Which?",
      "",
      "1 line passed over:",
      "  line 4, K-9 (over): Ask for it.",
      "",
      "Not in the list any more; they stay unless you end them:",
      "  “gone”, K-8",
      "  “bare”",
      "",
      "In the list without a price; they stay unless you end them:",
      "  “over”: Ask for it.",
    ]);
  });

  test("what is asked of the whole list stands first; what is as before is not shown", () => {
    const questions: ListQuestion[] = [{ id: "tax", sentence: "Tax?" }];
    const same: Comparison = {
      lines: [compared([listed({ perUnit: 0.4 })], [offer()])],
      gone: [],
      ended: [],
    };
    const text = previewText(foundOf(same, questions), book, "Alpha");
    expect(text).toContain("\n\nAsked of the whole list; nothing is taken before it is answered:\n  Tax?\n");
    expect(text).not.toContain("Asked of some");
    expect(text).not.toContain("K-1");
  });

  test("of a kind 40 lines are shown, and the rest counted", () => {
    const many = (count: number): string =>
      previewText(
        foundOf(
          comparison(
            Array.from({ length: count }, (_, at) => listed({ line: at + 2, article: `N-${at}` })),
            [],
          ),
        ),
        book,
        "Alpha",
      );
    expect(many(40)).not.toContain("more");
    expect(many(40)).toContain("N-39");
    expect(many(41)).toContain("\n41 lines new:\n");
    expect(many(41)).toMatch(/N-39.*\n {2}and 1 more$/);
    expect(many(41)).not.toContain("N-40");
  });

  test("what a merge does to Parts", () => {
    const change = {
      part: "drop",
      list: "cables",
      before: 40,
      after: 50,
      supplier: "Alpha",
      wasSupplier: "Alpha",
    };
    expect(
      partChangesInWords([
        change,
        { ...change, wasSupplier: "Beta" },
        without(change, "wasSupplier"),
        without(change, "before"),
        { ...change, before: 0 },
        { ...change, before: 3, after: 1 },
        { ...change, before: 3, after: 10 / 3 },
      ]),
    ).toEqual([
      "Parts, “drop”: 40 → 50, +25.0 %",
      "Parts, “drop”: 40 → 50, +25.0 %; Alpha, not Beta",
      "Parts, “drop”: 40 → 50, +25.0 %",
      "Parts, “drop”: 50, none before",
      "Parts, “drop”: 50, none before",
      "Parts, “drop”: 3 → 1, −66.7 %",
      "Parts, “drop”: 3 → 3.3333333, +11.1 %",
    ]);
    const other = { part: "drop", supplier: "Beta", price: 38, here: 41, pinned: false };
    expect(othersInWords([other, { ...other, pinned: true }])).toEqual([
      "“drop” stays with Beta at 38, the cheaper one; this list has 41.",
      "“drop” stays with Beta at 38, which is pinned; this list has 41.",
    ]);
  });
});

describe("parts near to a supplier's words", () => {
  test.each<[string, readonly string[], readonly string[]]>([
    [
      "the likeliest first",
      ["drop", "indoor drop cable", "indoor drop"],
      ["indoor drop", "drop", "indoor drop cable"],
    ],
    ["half of the words will do", ["indoor thing", "indoor other thing"], ["indoor thing"]],
    ["a letter changed in a long word", ["indaor"], ["indaor"]],
    ["a letter left out", ["indor"], ["indor"]],
    ["a letter put in", ["indooor"], ["indooor"]],
    ["two letters", ["indaar"], []],
    ["a letter in a short word", ["drup"], []],
    ["a plural", ["drops"], ["drops"]],
    ["a name without words", ["!"], []],
  ])("%s", (_, names, wanted) => {
    expect(nearestParts("Indoor drop", names)).toEqual(wanted);
  });

  test("numbers are exact, but for the kind of decimal sign", () => {
    expect(nearestParts("dish 0,9 m", ["dish 0.9 m", "dish 1.1 m"])).toEqual(["dish 0.9 m"]);
    expect(nearestParts("dish", ["dish 0.9 m"])).toEqual([]);
    expect(nearestParts("dish with mount", ["dish 0.9"])).toEqual(["dish 0.9"]);
    expect(nearestParts("boxes", ["box"])).toEqual(["box"]);
  });

  test("three at most, or as many as are wanted", () => {
    const names = ["drop a", "drop b", "drop c", "drop d"];
    expect(nearestParts("drop", names)).toHaveLength(3);
    expect(nearestParts("drop", names, 1)).toEqual(["drop a"]);
  });

  test.each([
    ["F connector", "fittings"],
    ["Erdungsschelle", "fittings"],
    ["wall plate", "plates"],
    ["Antennendose", "plates"],
    ["toma final", "plates"],
    ["end resistor", "resistors"],
    ["Abschlusswiderstand", "resistors"],
    ["4-way splitter", "passives"],
    ["Verteiler 4-fach", "passives"],
    ["répartiteur", "passives"],
    ["multiswitch", "units"],
    ["Netzteil", "supplies"],
    ["fuente", "supplies"],
    ["wideband feed", "feeds"],
    ["coaxial cable", "cables"],
    ["Koaxkabel", "cables"],
    ["whatever", "fittings"],
  ])("%s goes into %s", (words, list) => {
    expect(likelyList(words)).toBe(list);
  });
});
