/** What is said of margins, discounts and the log's last total, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import type { Rule } from "../../src/review/rule";
import { discountEntry } from "../../src/review/rules/discountEntry";
import { discounts } from "../../src/review/rules/discounts";
import { loggedTotal } from "../../src/review/rules/loggedTotal";
import { margin } from "../../src/review/rules/margin";
import type { Book, BookResult } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";
import { at, atField, found, smallBook, type Row } from "./smallBook";

type Fields = Parameters<typeof smallBook>[1];
const of =
  (rule: Rule, blocks: Parameters<typeof smallBook>[0] = {}) =>
  (fields: Fields, more: Parameters<typeof smallBook>[0] = {}): Finding[] =>
    found(rule, smallBook({ ...blocks, ...more }, fields));

describe("a discount that cannot be", () => {
  const entry = of(discountEntry);
  const ONE = { expected: "One discount, with its reason." };
  const price = { price_before: 7095, price_discount: 250 };
  test("as a sum and as a share", () =>
    expect(
      entry({ ...price, discount_sum: 250, discount_share: 0.05, discount_reason: "5 % off" }),
    ).toStrictEqual([
      {
        ...ONE,
        weight: "wrong",
        place: atField("discount_share"),
        message: "The discount is 250 as a sum and 0.05 as a share; the share is taken.",
        remedy: "Clear the one that is not meant.",
      },
    ]));
  test("a reason without a sum", () => {
    expect(
      entry({ ...price, discount_sum: "", discount_share: "", discount_reason: "second job" }),
    ).toStrictEqual([
      {
        ...ONE,
        weight: "doubtful",
        place: atField("discount_sum"),
        message: "A discount has its reason and no sum.",
        remedy: "Enter the discount, as a sum or a share; or clear the reason.",
      },
    ]);
    expect(entry({ ...price, discount_sum: "", discount_share: "", discount_reason: "" })).toEqual([]);
  });
  const REASON = {
    ...ONE,
    weight: "doubtful",
    remedy: "Enter what was agreed, or correct the reason.",
    isGuess: true,
  };
  test("a reason that says another", () => {
    expect(entry({ ...price, discount_sum: 250, discount_reason: "500 off, second job" })).toStrictEqual([
      {
        ...REASON,
        place: atField("discount_sum"),
        message: "The discount is 250; its reason says “500 off, second job”.",
        meant: 500,
      },
    ]);
    expect(entry({ ...price, discount_share: 0.5, discount_reason: "5 % off" })).toStrictEqual([
      {
        ...REASON,
        place: atField("discount_share"),
        message: "The discount is 50 %; its reason says “5 % off”.",
        meant: 0.05,
      },
    ]);
  });
  test.each<[string, Fields, number | string | undefined]>([
    ["with a comma", { discount_sum: 250, discount_reason: "less 12,5 less" }, 12.5],
    ["in words", { discount_share: 0.5, discount_reason: "5 per cent DISCOUNT" }, 0.05],
    ["in one word", { discount_share: 0.5, discount_reason: "5percent off" }, 0.05],
    ["the same sum", { discount_sum: 250, discount_reason: "250 off" }, undefined],
    ["more than half a cent off", { discount_sum: 250, discount_reason: "250.006 off" }, 250.006],
    ["less than half a cent off", { discount_sum: 250, discount_reason: "250.004 off" }, undefined],
    ["the same share", { discount_share: 0.05, discount_reason: "5 % off" }, undefined],
    ["a share near it", { discount_share: 0.05, discount_reason: "5.004 % off" }, undefined],
    ["a share beside it", { discount_share: 0.05, discount_reason: "5.006 % off" }, 0.05006],
    ["a share for a sum", { discount_sum: 250, discount_reason: "5 % off" }, undefined],
    ["a sum for a share", { discount_share: 0.05, discount_reason: "250 off" }, undefined],
    ["two of them", { discount_sum: 250, discount_reason: "500 off, 300 off" }, undefined],
    ["another figure", { discount_sum: 250, discount_reason: "job 500 of the office" }, undefined],
    ["nothing off", { discount_sum: 250, discount_reason: "0 off" }, undefined],
    ["no number given", { discount_sum: "some", discount_reason: "500 off" }, undefined],
  ])("a reason %s", (_, fields, meant) => {
    const [finding] = entry({ ...price, ...fields });
    if (meant === undefined) expect(finding).toBeUndefined();
    else expect(finding!.meant).toBeCloseTo(meant as number, 9);
  });
  test("of more than the price", () => {
    const more = (fields: Fields) =>
      entry({ discount_sum: 9000, price_before: 7095, price_discount: 9000, ...fields });
    expect(more({})).toStrictEqual([
      {
        ...ONE,
        weight: "wrong",
        place: atField("discount_sum"),
        message: "The discount of 9000 is more than the price of 7095.",
        remedy: "Correct the discount.",
      },
    ]);
    expect(more({ discount_sum: "", discount_share: 1.2 })[0]!.place).toEqual(atField("discount_share"));
    expect(more({ price_discount: 7095.004 })).toEqual([]);
    expect(more({ price_discount: 7095.006 })).toHaveLength(1);
    for (const unknown of [{ price_before: "" }, { price_discount: { error: "#N/A" } }])
      expect(more(unknown)).toEqual([]);
  });
});

describe("a discount given twice", () => {
  const twice = of(discounts);
  const AGAIN = {
    weight: "doubtful",
    expected: "One discount.",
    effect: "The price is reduced twice.",
    remedy: "Take one of them back, or say under Assumptions that both are meant.",
  };
  test("under its own heading, as an option and as a provisional sum", () =>
    expect(
      twice(
        { discount_sum: 250, discount_share: 0.05 },
        {
          options: [{ name: "Mast" }, { name: "Rebate for two", each: -50 }],
          provisional: [{ name: "Price off", sum: -10 }],
        },
      ),
    ).toStrictEqual([
      {
        ...AGAIN,
        place: at("options_name", 2),
        undoing: [{ place: at("options_name", 2) }, { place: at("options_each", 2) }],
        isGuess: true,
        message: "A second discount: Rebate for two. The first is 250 under Discount on Terms.",
      },
      {
        ...AGAIN,
        place: at("provisional_name", 1),
        undoing: [{ place: at("provisional_name", 1) }, { place: at("provisional_sum", 1) }],
        isGuess: true,
        message: "A second discount: Price off. The first is 250 under Discount on Terms.",
      },
    ]));
  test("one alone, both ways of one, or one of nothing: nothing", () => {
    expect(twice({ discount_sum: 250 })).toEqual([]);
    expect(twice({ discount_sum: 250, discount_share: 0.05 })).toEqual([]);
    expect(twice({ discount_sum: 0 }, { options: [{ name: "discount" }] })).toEqual([]);
    expect(twice({}, { options: [{ name: "discount" }] })).toEqual([]);
    expect(twice({ discount_share: 0.05 }, { options: [{ name: "discount" }] })).toHaveLength(1);
  });
});

describe("a margin", () => {
  const job: { rooms: Row[] } = { rooms: [{ outlet: "a" }] };
  const under = of(margin, job);
  const LOW = { weight: "doubtful", expected: "5 % or more.", effect: "The job earns less than the floor." };
  test("under the floor", () =>
    expect(under({ site_margin: 0.022 })).toStrictEqual([
      {
        ...LOW,
        place: atField("site_margin"),
        message: "The margin is 2.2 %.",
        remedy:
          "Raise the margin, or have the low one agreed and list it, with the reason, on Terms among what is on purpose.",
      },
    ]));
  test("at the floor, none, without a job or on purpose: nothing", () => {
    for (const value of [0.05, 0.22, "", "low"]) expect(under({ site_margin: value })).toEqual([]);
    expect(under({ site_margin: 0.022 }, { rooms: [{ outlet: "" }] })).toEqual([]);
    expect(under({ site_margin: 0.022 }, { onpurpose: [{ what: "Margin", why: "first job" }] })).toEqual([]);
  });
  // Cost 950, price 1250: 240 off leaves 60 of 1010, 5.94 %; 250 off leaves 50 of 1000, 5 %.
  const sold = (off: BookResult, fields: Fields = {}) =>
    under({
      site_margin: 0.24,
      discount_sum: 240,
      price_cost: 950,
      price_sell: 1250,
      price_discount: off,
      ...fields,
    });
  test("under the floor by a discount, and under cost", () => {
    const less = {
      ...LOW,
      place: atField("discount_sum"),
      remedy:
        "Lower the discount, or have the low margin agreed and list it, with the reason, on Terms among what is on purpose.",
    };
    // 270 off leaves 30 of 980; 350 off -50 of 900.
    expect(sold(270)).toStrictEqual([{ ...less, message: "The discount leaves a margin of 3.06 %." }]);
    expect(sold(350)).toStrictEqual([
      { ...less, message: "With the discount the job is sold under its cost: the margin is -5.56 %." },
    ]);
    expect(sold(300)).toStrictEqual([{ ...less, message: "The discount leaves a margin of 0 %." }]);
  });
  test("at the floor after the discount, or where it cannot be told: nothing", () => {
    expect([sold(240), sold(250), sold(251).length]).toEqual([[], [], 1]);
    expect(sold(270, { discount_sum: "", discount_share: 0.2 })[0]!.place).toEqual(atField("discount_share"));
    for (const unknown of [
      { discount_sum: "" },
      { price_cost: "" },
      { price_sell: "" },
      { price_discount: "" },
    ])
      expect(sold(270, unknown)).toEqual([]);
    // With no price left there is no share of it.
    expect([sold(1250), sold(1300)]).toEqual([[], []]);
  });
  test("low in itself is told once", () => expect(sold(270, { site_margin: 0.01 })).toHaveLength(1));
});

describe("the log's last total", () => {
  const logged = (totals: (number | string)[], total: BookResult) =>
    found(loggedTotal, smallBook({ log: totals.map((after) => ({ after })) }, { quote_total: total }));
  test("that is not the job's", () =>
    expect(logged([11127.46, 11727.46, ""], 11127.46)).toStrictEqual([
      {
        weight: "worth knowing",
        place: at("log_after", 2),
        message: "The last total on the log is 11727.46; the job's is 11127.46.",
        expected: "The same, or an entry for what was changed since.",
        effect: "Nobody can say what moved the price.",
        remedy: "Write the change down, or correct the entry.",
      },
    ]));
  test("to half a cent the same, or not known: nothing", () => {
    expect([logged([1, 100.004], 100), logged([], 100), logged(["open"], 100), logged([99], "")]).toEqual([
      [],
      [],
      [],
      [],
    ]);
    expect(logged([100.006], 100)).toHaveLength(1);
    expect(logged([99.994], 100)).toHaveLength(1);
  });
});

test("without a cell of the kind nothing is said", () => {
  const empty: Book = bookOf(emptySheet("S"));
  for (const rule of [discountEntry, discounts, loggedTotal, margin]) expect(found(rule, empty)).toEqual([]);
});
