/** Names that lead elsewhere are found and put back; those that moved with their rows are left alone. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { namesPutBack } from "../../src/review/namesPutBack";
import { review } from "../../src/review/review";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { namedValue } from "../../src/workbooks/named";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { mendedGuestHouse } from "./cleanJobs";

const original = layOut(multiRoom, mendedGuestHouse());
const withName = (name: string, change: ((range: string) => string) | undefined): Book => ({
  ...original,
  names: original.names.flatMap((one) =>
    one.name !== name ? [one] : change ? [{ ...one, range: change(one.range) }] : [],
  ),
});
const rangeOf = (book: Book, name: string): string | undefined =>
  book.names.find((one) => one.name === name)?.range;

test("nothing is put back in jobs of other sizes", () => {
  for (const inputs of [mendedGuestHouse(), hostel])
    expect(namesPutBack(layOut(multiRoom, inputs), multiRoom).troubles).toEqual([]);
});

test.each([
  [
    "one that leads to the row above",
    "site_margin",
    (range: string) => range.replace(/\d+/, (row) => String(Number(row) - 1)),
  ],
  [
    "one that ends too soon",
    "rooms_run",
    (range: string) => range.replace(/\d+$/, (row) => String(Number(row) - 12)),
  ],
  ["one that is gone", "site_tax", undefined],
])("%s", (_, name, change) => {
  const { troubles, book } = namesPutBack(withName(name, change), multiRoom);
  expect(troubles.map((one) => one.name)).toEqual([name]);
  expect(rangeOf(book, name)).toBe(rangeOf(original, name));
});

test("the review names it with its right cells and both totals, and nothing that follows from it", () => {
  const spoilt = withName("site_margin", (range) => range.replace(/\d+/, (row) => String(Number(row) - 1)));
  const stored = recalculate(spoilt);
  const findings = review(stored, recalculate).filter(({ weight }) => weight !== "worth knowing");
  expect(findings.map(({ rule }) => rule)).toEqual(["name changed"]);
  const [{ message, effect }] = findings as [(typeof findings)[number]];
  expect(message).toContain(`'Site'!$B$${/\d+/.exec(rangeOf(original, "site_margin")!)![0]}`);
  const total = (book: Book): string => Number(namedValue(book, "quote_total")).toFixed(2);
  expect(effect).toContain(total(stored));
  expect(effect).toContain(total(recalculate(original)));
});

test("names moved by inserted rows are where they belong", () => {
  const moved: Book = {
    ...original,
    names: original.names.map((one) => {
      if (one.sheet !== "Terms") return one;
      return {
        ...one,
        range: one.range.replace(/\d+/g, (row) => String(Number(row) + (Number(row) > 20 ? 3 : 0))),
      };
    }),
    sheets: original.sheets.map((sheet) =>
      sheet.name !== "Terms"
        ? sheet
        : {
            ...sheet,
            cells: Object.fromEntries(
              Object.entries(sheet.cells).map(([at, cell]) => [
                at.replace(/\d+/, (row) => String(Number(row) + (Number(row) > 20 ? 3 : 0))),
                cell,
              ]),
            ),
          },
    ),
  };
  expect(namesPutBack(moved, multiRoom).troubles).toEqual([]);
});
