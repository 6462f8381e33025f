/** The quote review sheet filled from an estimate of ours: a sound one has nothing to look at, a spoilt one has. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { namedValue } from "../../src/workbooks/named";
import { quoteReview } from "../../src/workbooks/quoteReview/definition";
import { fromEstimate } from "../../src/workbooks/quoteReview/fromEstimate";
import { mendedGuestHouse } from "../review/cleanJobs";

const WORDS = ["heads", "materials", "labour", "cost", "price", "net", "tax", "total"] as const;
const wordsOf = (estimate: Book): Record<string, unknown> => {
  const sheet = recalculate(layOut(quoteReview, fromEstimate(recalculate(estimate))));
  return Object.fromEntries(WORDS.map((key) => [key, namedValue(sheet, `review_${key}_word`)]));
};
const ALL_OK = Object.fromEntries(WORDS.map((key) => [key, "ok"]));

/** The guest house with a figure typed over a formula. */
function typedOver(name: string, value: number): Book {
  const book = layOut(multiRoom, mendedGuestHouse());
  const { sheet, range } = book.names.find((one) => one.name === name)!;
  book.sheets.find((one) => one.name === sheet)!.cells[range] = { value };
  return book;
}

test.each([
  ["guest house", () => mendedGuestHouse()],
  ["hostel, with two rates of tax", () => hostel],
])("%s: every sum comes out again, and there are head units enough", (_, job) => {
  expect(wordsOf(layOut(multiRoom, job()))).toEqual(ALL_OK);
});

test("a discount and an option are in what is added to the selling price", () => {
  const job = mendedGuestHouse();
  job.blocks.options!.forEach((row) => (row.chosen = "yes"));
  expect(wordsOf(layOut(multiRoom, { ...job, fields: { ...job.fields, discount_sum: 30 } }))).toEqual(ALL_OK);
});

test("a cost, a price without tax or a total that was typed is looked at", () => {
  expect(wordsOf(typedOver("price_cost", 5000)).cost).toBe("look");
  expect(wordsOf(typedOver("quote_net", 9000)).net).toBe("look");
  expect(wordsOf(typedOver("quote_total", 10_000)).total).toBe("look");
});

test("too few head units for the tuners are looked at", () => {
  const job = mendedGuestHouse();
  // 24 outlets with two recorders of 2 tuners: 96 tuners want 6 head units of 16 user bands, and there are 3.
  for (const row of job.blocks.rooms!) Object.assign(row, { receiver: "recorder, 2 tuners", quantity: 2 });
  expect(wordsOf(layOut(multiRoom, job)).heads).toBe("look");
});
