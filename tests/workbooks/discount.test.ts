/**
 * A discount on Terms: taken off the price without tax, printed with its reason,
 * and no tax on it. Held to sums worked by hand, to the reference pricing and to
 * LibreOffice.
 */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedValue, placeOfName } from "../../src/workbooks/named";
import { referencePrice, type Job } from "../support/referencePrice";
import { recalculated, withLibreOffice } from "../support/tools";

type Fields = NonNullable<JobInputs["fields"]>;

const REASON = "three houses ordered together (demonstration)";
const SUM = { discount_sum: 250, discount_reason: REASON };
const SHARE = { discount_share: 0.05, discount_reason: REASON };

const job = (fields: Fields, blocks: JobInputs["blocks"] = {}): JobInputs => ({
  fields: { ...guestHouse.fields, ...fields },
  blocks: { ...guestHouse.blocks, ...blocks },
});
const computed = (inputs: JobInputs): Book => recalculate(layOut(multiRoom, inputs));
const money = (book: Book, name: string): string => Number(namedValue(book, name)).toFixed(2);
const quoted = (book: Book): Record<string, string> => ({
  net: money(book, "quote_net"),
  tax: money(book, "quote_tax"),
  total: money(book, "quote_total"),
});
const reference = (inputs: JobInputs): Record<string, string> => {
  const { net, tax, total } = referencePrice(inputs as unknown as Job);
  return { net, tax, total };
};

describe("by hand", () => {
  /** A few rooms, made up by a provisional sum to 7855.70 before the discount. */
  const rooms = guestHouse.blocks!.rooms!.slice(0, 8);
  const madeUp = (fields: Fields): JobInputs => {
    const rest = { ...fields, site_tax: 0.1, site_tax_on: "materials and labour" };
    const provisional = (sum: number): JobInputs["blocks"] => ({
      rooms,
      provisional: [{ name: "made up to the sum (demonstration)", sum }],
    });
    const { net } = referencePrice(job({ site_tax: 0.1 }, provisional(0)) as unknown as Job);
    return job(rest, provisional(Math.round(785_570 - Number(net) * 100) / 100));
  };

  test.each<[string, Fields, Record<string, string>]>([
    // 7855.70 - 250.00 = 7605.70; 10 % of it 760.57; 7605.70 + 760.57 = 8366.27.
    ["a sum of 250", SUM, { net: "7605.70", tax: "760.57", total: "8366.27" }],
    // 5 % of 7855.70 is 392.785, a tie: 392.79 away from nothing. 7462.91; 10 % 746.291; 8209.20.
    [
      "5 %, a tie rounded away",
      { ...SHARE, site_rounding: "half away" },
      { net: "7462.91", tax: "746.29", total: "8209.20" },
    ],
    // The same tie to the even cent: 392.78. 7462.92; 10 % 746.292; 8209.21.
    [
      "5 %, a tie rounded to even",
      { ...SHARE, site_rounding: "half even" },
      { net: "7462.92", tax: "746.29", total: "8209.21" },
    ],
  ])("%s off 7855.70, tax of 10 %", (_, fields, expected) => {
    const inputs = madeUp(fields);
    expect(quoted(computed(inputs))).toEqual(expected);
    expect(reference(inputs)).toEqual(expected);
  });
});

describe("against the reference pricing, to the cent", () => {
  const bases = ["materials and labour", "materials only", "labour only"];
  const rules = ["half away", "half even"];
  const discounts: Fields[] = [
    SUM,
    SHARE,
    { ...SHARE, discount_share: 0.0333 },
    { ...SUM, discount_sum: 0.01 },
  ];
  const all = bases.flatMap((on) =>
    rules.flatMap((rule) =>
      discounts.map((discount): [string, Fields] => [
        `${String(discount.discount_sum ?? discount.discount_share)} off, tax on ${on}, ${rule}`,
        { ...discount, site_tax_on: on, site_rounding: rule, site_tax: 0.0775 },
      ]),
    ),
  );
  // A few, so that each base, each rule and each discount comes.
  test.each(all.filter((_, index) => index % 5 === 0))("%s", (_, fields) => {
    const inputs = job(fields);
    const book = computed(inputs);
    expect(quoted(book)).toEqual(reference(inputs));
    // No sum of the quote is at odds with another; what is wrong in the demonstration stays.
    expect(summarise(book).verdict).toBe("2 checks need attention");
  });
});

describe("on the Quote", () => {
  const labelOf = (book: Book, name: string): unknown => {
    const { sheet, at } = placeOfName(book, name)!;
    return book.sheets.find((one) => one.name === sheet)!.results[at.replace(/^[A-Z]+/, "A")];
  };
  const lineOf = (book: Book, name: string): unknown[] => [labelOf(book, name), namedValue(book, name)];

  test("a line of its own with its minus and its reason; the lines, the discount and the tax add up to the total", () => {
    const book = computed(job(SUM));
    expect(lineOf(book, "quote_discount")).toEqual(["Discount", -250]);
    expect(lineOf(book, "quote_discount_reason")).toEqual(["Reason for the discount", REASON]);
    const lines = ["reception", "cable", "fittings", "labour", "provisional", "options", "discount", "tax"];
    const cents = lines.reduce(
      (sum, line) => sum + Math.round(Number(namedValue(book, `quote_${line}`) || 0) * 100),
      0,
    );
    expect((cents / 100).toFixed(2)).toBe(money(book, "quote_total"));
  });

  test("without a discount neither a line nor a word of it", () => {
    const book = computed(guestHouse);
    expect(lineOf(book, "quote_discount")).toEqual(["", ""]);
    expect(lineOf(book, "quote_discount_reason")).toEqual(["", ""]);
  });
});

describe("a tax of 0 is printed with its reason from Terms", () => {
  const why = (blocks: JobInputs["blocks"]): unknown[] => {
    const book = computed(job({ site_tax: 0 }, blocks));
    return [money(book, "quote_tax"), namedValue(book, "quote_tax_reason")];
  };
  test("with one", () =>
    expect(why({ onpurpose: [{ what: "Tax", why: "the customer accounts for it" }] })).toEqual([
      "0.00",
      "the customer accounts for it",
    ]));
  test("without one", () => expect(why({})).toEqual(["0.00", ""]));
  test("with a blank one", () => expect(why({ onpurpose: [{ what: "Tax" }] })).toEqual(["0.00", ""]));
});

describe("what cannot be a discount is refused by name", () => {
  test.each<[string, Fields, RegExp]>([
    ["without a reason", { discount_sum: 250 }, /Terms: Reason for the discount/],
    ["negative", { ...SUM, discount_sum: -250 }, /Terms: Discount as a sum/],
    ["20 for 20 %", { ...SHARE, discount_share: 20 }, /Terms: Discount as a share/],
    [
      "more than the price",
      { ...SUM, discount_sum: 20_000 },
      /Terms, discount as a sum, discount as a share/,
    ],
    ["a sum and a share", { ...SUM, ...SHARE }, /Terms, discount as a sum, discount as a share/],
    ["a reason without one", { discount_reason: REASON }, /Terms, discount as a sum, discount as a share/],
  ])("%s", (_, fields, where) => {
    const failing = summarise(computed(job(fields))).checks.filter(({ result }) => result === "look");
    expect(failing.map((line) => line.where)).toContainEqual(expect.stringMatching(where));
  });
});

withLibreOffice(
  "LibreOffice recalculates the frozen file of a job with a discount to the same sums",
  async () => {
    for (const fields of [
      { ...SUM, site_tax_on: "labour only", discount_sum: 333.33 },
      { ...SHARE, site_rounding: "half even" },
    ]) {
      const inputs = job(fields);
      const again = await readXlsx(
        await recalculated(await writeXlsx(computed(inputs), { frozen: true }), { to: "xlsx" }),
      );
      expect(quoted(again)).toEqual(reference(inputs));
      expect(namedValue(again, "checks_failed")).toBe(2);
    }
  },
);
