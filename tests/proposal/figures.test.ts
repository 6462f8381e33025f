/** Every figure of a proposal is a cell's: it stands there as it does here, and changes with it. */
import { address } from "../../src/formula/address";
import { formattedIn } from "../../src/hosts/headless/formattedIn";
import { shownIn } from "../../src/proposal/shown";
import type { Book } from "../../src/workbooks/book";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { estimate } from "../../src/workbooks/multiRoom/names";
import { MONEY_FORMAT } from "../../src/workbooks/looks";
import { changedJob } from "../support/pictureJobs";
import { computedJob, madeOf, wordsIn } from "../support/proposals";

const discounted = changedJob({ fields: { discount_share: 0.05, discount_reason: "three houses together" } });
const JOBS = { guestHouse, hostel, apartmentBlock, discounted };
const books = new Map(Object.entries(JOBS).map(([name, job]) => [name, computedJob(job)]));
const WITHOUT_PICTURES = { parts: { without: ["diagram", "sky"] } } as const;

/** A figure, with its signs; names of rooms and outlets have some as well. */
const FIGURE = /[-−]?\d(?:[\d.,]*\d)?%?/g;
const figuresIn = (text: string): string[] => text.match(FIGURE) ?? [];

/** What a customer may read beside the Quote: what was entered of the job itself, and two sums that the Quote is made of. */
const { site, slots, dishes, rooms, types, price } = estimate;
const BESIDE_THE_QUOTE = [
  ...[site.tax, site.dish, price.taxable, price.before],
  ...[slots.slot, slots.service],
  ...[dishes.name, dishes.size, dishes.location, dishes.mounting],
  ...[rooms.floor_used, rooms.room_used, rooms.outlet_used, rooms.receiver_used, rooms.quantity_used],
  ...[types.name, types.used, types.receiver],
  ...[estimate.provisional.name, estimate.provisional.sum, estimate.payment.text, estimate.warranty.text],
  ...[estimate.proposal.registration, estimate.proposal.tax_number],
];

function shownToCustomers(book: Book): Set<string> {
  const { down } = shownIn(book, formattedIn(book));
  const quote = book.sheets.find(({ name }) => name === "Quote")!;
  const cells = [];
  for (let row = 0; row < quote.rowCount; row++)
    for (let column = 0; column < quote.columnCount; column++) cells.push(address(row, column));
  const everyCell: Book = {
    ...book,
    names: cells.map((at) => ({ name: at, sheet: "Quote", range: at })),
  };
  const ofQuote = shownIn(everyCell, formattedIn(book));
  return new Set(
    [...cells.map((name) => ofQuote.at({ name })), ...BESIDE_THE_QUOTE.flatMap(down)].flatMap(figuresIn),
  );
}

test.each(Object.keys(JOBS))("%s: each figure stands in a cell that a customer may read", (name) => {
  const book = books.get(name)!;
  const { document } = madeOf(book, WITHOUT_PICTURES);
  const { foot, ...rest } = document;
  const withoutMark = { ...rest, foot: foot.slice(0, foot.lastIndexOf("·")) };
  const known = shownToCustomers(book);
  const figures = wordsIn(withoutMark).flatMap(figuresIn);
  expect(figures.length).toBeGreaterThan(60);
  expect(figures.filter((figure) => !known.has(figure))).toEqual([]);
});

/** Every sum of money on these sheets is twice what it was, so that they still add up. */
function doubled(book: Book): Book {
  const isMoney = (look: number | undefined): boolean => book.looks[look ?? -1]?.format === MONEY_FORMAT;
  const twice = <Value>(value: Value): Value => (typeof value === "number" ? value * 2 : value) as Value;
  return {
    ...book,
    sheets: book.sheets.map((sheet) =>
      ["Quote", "Price", "Terms"].includes(sheet.name)
        ? {
            ...sheet,
            cells: Object.fromEntries(
              Object.entries(sheet.cells).map(([at, cell]) => [
                at,
                isMoney(cell.look) && cell.value !== undefined ? { ...cell, value: twice(cell.value) } : cell,
              ]),
            ),
            results: Object.fromEntries(
              Object.entries(sheet.results).map(([at, result]) => [
                at,
                isMoney(sheet.cells[at]?.look) ? twice(result) : result,
              ]),
            ),
          }
        : sheet,
    ),
  };
}

const MONEY = /^-?[\d,]+\.\d\d$/;
const sumIn = (text: string): number => Math.round(Number(text.replace(/,/g, "")) * 100);

test.each(Object.keys(JOBS))("%s: with its cells each sum changes, and nothing else", (name) => {
  const book = books.get(name)!;
  const [once, twice] = [book, doubled(book)].map((one) => {
    const { document } = madeOf(one, WITHOUT_PICTURES);
    return document.parts.flatMap((part) =>
      part.kind === "table" ? part.rows.flatMap(({ cells }) => cells) : [],
    );
  }) as [string[], string[]];
  expect(twice).toHaveLength(once.length);
  const sums = once.flatMap((cell, at) =>
    MONEY.test(cell) ? [[sumIn(cell), sumIn(twice[at]!)] as const] : [],
  );
  expect(sums.length).toBeGreaterThan(10);
  expect(sums.filter(([before, after]) => after !== 2 * before)).toEqual([]);
  // The taxed sum stands in a label.
  const rest = (cells: readonly string[]) =>
    cells.filter((cell) => !MONEY.test(cell) && !cell.startsWith("Tax, "));
  expect(rest(twice)).toEqual(rest(once));
});

/** Each by itself, where the sums do not hang on it. */
test.each([
  ["customer", estimate.quote.customer],
  ["number and revision", estimate.quote.number],
  ["date", estimate.quote.date],
  ["scope", estimate.quote.scope],
  ["tax rate", site.tax],
  ["taxed sum", price.taxable],
])("the %s is that of its cell", (_, of) => {
  const book = books.get("guestHouse")!;
  const { sheet, range } = book.names.find(({ name }) => name === of.name)!;
  const value = typeof valueAt(book, sheet, range) === "number" ? 47000.25 : "Otherwise 4711";
  const changed: Book = {
    ...book,
    sheets: book.sheets.map((one) =>
      one.name === sheet ? { ...one, results: { ...one.results, [range]: value } } : one,
    ),
  };
  const shown = shownIn(changed, formattedIn(changed)).at(of);
  expect(shown).not.toBe(shownIn(book, formattedIn(book)).at(of));
  const words = wordsIn(madeOf(changed, WITHOUT_PICTURES).document).join("\n");
  expect(words).toContain(shown);
});

function valueAt(book: Book, sheet: string, at: string): unknown {
  const found = book.sheets.find(({ name }) => name === sheet)!;
  return found.results[at] ?? found.cells[at]?.value;
}
